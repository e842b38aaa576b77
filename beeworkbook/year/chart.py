"""The chart put together: a scene with a pane above another on one axis of days, painted onto anything.

It has no widget: the window, a picture and the command line paint the same scene.
"""

import math
from dataclasses import dataclass
from typing import Final

import pyqtgraph as pg
from PySide6.QtCore import QRectF, QSizeF
from PySide6.QtGui import QColor, QPainter

from beeworkbook.year.bands import Field
from beeworkbook.year.inks import Inks
from beeworkbook.year.pane_item import PaneItem
from beeworkbook.year.panes import ChartModel, Pane, PaneKey
from beeworkbook.year.rows import AmountAxis, KeyRow, MarkRow, MonthRow, TitleRow

AXIS_PX: Final = 54.0
_RIGHT_PX: Final = 18.0
_SHARES: Final = {PaneKey.BROOD: 10, PaneKey.DRONES: 3, PaneKey.STORES: 4, PaneKey.BEES: 4}
_TICK_PX: Final = 46.0
_MOST_TICKS: Final = 10


@dataclass(frozen=True)
class ChartSize:
    """How large a chart is painted, in pixels of the window; titled where it leaves the window."""

    width: float
    height: float
    titled: bool = False
    margin: float = 12.0


class Chart:
    """One chart, laid out and ready to be painted."""

    def __init__(self, model: ChartModel, inks: Inks, size: ChartSize) -> None:
        """Lay the chart out."""
        self.model = model
        self._inks = inks
        self._size = size
        self._scene = pg.GraphicsScene()
        self._boxes: list[tuple[Pane, pg.ViewBox]] = []
        self._layout = pg.GraphicsLayout()
        self._layout.setContentsMargins(size.margin, 4, _RIGHT_PX, size.margin / 2)
        self._layout.setSpacing(0)
        self._scene.addItem(self._layout)
        self._furnish()
        whole = QRectF(0, 0, size.width, size.height)
        self._scene.setSceneRect(whole)
        self._layout.setGeometry(whole)
        self._layout.layout.activate()
        self._scene.prepareForPaint()

    def paint(self, painter: QPainter) -> None:
        """The whole chart on its board, its top left corner at the painter's origin."""
        whole = QRectF(0, 0, self._size.width, self._size.height)
        painter.fillRect(whole, QColor(self._inks.chrome.board))
        self._scene.render(painter, whole, whole)

    @property
    def size(self) -> QSizeF:
        """How large it is."""
        return QSizeF(self._size.width, self._size.height)

    def fields(self) -> tuple[tuple[Pane, Field], ...]:
        """Each pane and how its values lie on the pixels of the chart."""
        return tuple(
            (pane, Field(box.sceneBoundingRect(), 0.0, float(self.model.axis.days), pane.low, pane.high))
            for pane, box in self._boxes
        )

    def plot(self) -> QRectF:
        """From the top of the first pane to the bottom of the last."""
        rects = [field.rect for _, field in self.fields()]
        return rects[0].united(rects[-1])

    def _furnish(self) -> None:
        model, size = self.model, self._size
        wide = size.width - size.margin - _RIGHT_PX - AXIS_PX
        row = 0
        if size.titled:
            self._layout.addItem(TitleRow(model, self._inks), row, 0, 1, 2)
            row += 1
        self._layout.addItem(MarkRow(model.marks, model.axis.days, self._inks, wide), row, 1)
        room = size.height - 80 - (34 if size.titled else 0)
        whole = sum(_SHARES[pane.key] for pane in model.panes)
        for pane in model.panes:
            row += 1
            self._add_pane(pane, row, room * _SHARES[pane.key] / whole)
        self._layout.addItem(MonthRow(model.axis, self._inks), row + 1, 1)
        self._layout.addItem(KeyRow(model, self._inks, wide), row + 2, 1)

    def _add_pane(self, pane: Pane, row: int, height: float) -> None:
        model = self.model
        most = max(2, min(_MOST_TICKS, int(height / _TICK_PX)))
        ticks = nice_ticks(pane.low, pane.high, most)
        box = pg.ViewBox(enableMouse=False, enableMenu=False, defaultPadding=0)
        months = tuple(month.place for month in model.axis.months())
        box.addItem(
            PaneItem(pane, model.axis.days, ticks, months, model.marks, self._inks, stacked=model.stacked),
            ignoreBounds=True,
        )
        box.setRange(xRange=(0, model.axis.days), yRange=(pane.low, pane.high), padding=0)
        axis = AmountAxis(pane, ticks, self._inks, AXIS_PX)
        axis.linkToView(box)
        self._layout.addItem(axis, row, 0)
        self._layout.addItem(box, row, 1)
        self._layout.layout.setRowStretchFactor(row, _SHARES[pane.key])
        if row > 1:
            self._layout.layout.setRowSpacing(row - 1, 6)
        self._boxes.append((pane, box))


def nice_ticks(low: float, high: float, most: int) -> tuple[float, ...]:
    """Round amounts from low to high, one to so many above nought, nought always among them."""
    top = max(high, 1e-9)
    power = 10.0 ** math.floor(math.log10(top))
    # From the largest round step that still fits below the top to ever finer ones, as long as few enough fit.
    steps = [factor * power / down for down in (1, 10, 100) for factor in (5, 2, 1)]
    fitting = [step for step in steps if step <= top * (1 + 1e-9)]
    step = fitting[0]
    for finer in fitting:
        if math.floor(top / finer + 1e-9) > most:
            break
        step = finer
    first, last = math.ceil(low / step - 1e-9), math.floor(top / step + 1e-9)
    return tuple(round(at * step, 9) for at in range(min(first, 0), last + 1))
