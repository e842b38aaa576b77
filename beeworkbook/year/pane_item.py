"""One pane of the chart as a single item: its rules, bands, curves, gaps, dots and labels.

The item lives in the pane's own units; it paints on pixels, so that lines, dots and patterns keep their size.
"""

from typing import Any, Final

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPolygonF

from beeworkbook.colony.timeline import MarkSort
from beeworkbook.qt import theme
from beeworkbook.words import say
from beeworkbook.year.bands import Field, label_bands, label_curves, paint_bands, paint_curves, paint_plate
from beeworkbook.year.inks import Inks
from beeworkbook.year.panes import DotShape, Pane, PaneKey, PlacedMark, Values
from beeworkbook.year.signs import paint_dot, paint_whisker

_LEAST_GAP_PX: Final = 64.0


def fast_polygon(x: Values, y: Values) -> QPolygonF:
    """A polygon of these corners, copied as one block. Shapes: x and y (n,)."""
    made: QPolygonF = pg.functions.arrayToQPolygonF(x, y)
    return made


class PaneItem(pg.GraphicsObject):
    """All that stands in one pane."""

    def __init__(
        self,
        pane: Pane,
        days: int,
        ticks: tuple[float, ...],
        months: tuple[float, ...],
        marks: tuple[PlacedMark, ...],
        inks: Inks,
        *,
        stacked: bool,
    ) -> None:
        """The item of `pane` on an axis of so many days, with rules at these amounts and months."""
        super().__init__()
        self._pane = pane
        self._days = days
        self._ticks = ticks
        self._months = months
        self._marks = marks
        self._inks = inks
        self._stacked = stacked and pane.key is PaneKey.BROOD

    def boundingRect(self) -> QRectF:
        """The whole pane in its own units."""
        return QRectF(0, self._pane.low, self._days, self._pane.high - self._pane.low)

    def paint(self, painter: QPainter, *_args: Any) -> None:
        """Everything, back to front."""
        rect = painter.transform().mapRect(self.boundingRect())
        field = Field(rect, 0.0, float(self._days), self._pane.low, self._pane.high)
        painter.save()
        painter.resetTransform()
        self._paint_rules(painter, field)
        paint_bands(painter, self._pane.bands, field, self._inks, fast_polygon)
        paint_curves(
            painter, self._pane.curves, field, self._inks, stacked=self._stacked, polygon=fast_polygon
        )
        self._paint_gaps(painter, field)
        self._paint_dots(painter, field)
        label_bands(painter, self._pane.bands, field, self._inks)
        label_curves(painter, self._pane.curves, field, self._inks)
        self._paint_heading(painter, field)
        painter.restore()

    def _paint_rules(self, painter: QPainter, field: Field) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
        rect = field.rect
        faint = QColor(self._inks.chrome.rule)
        faint.setAlphaF(0.55)
        painter.setPen(faint)
        for place in self._months:
            x = round(field.x(place))
            painter.drawLine(QPointF(x, rect.top()), QPointF(x, rect.bottom()))
        for tick in self._ticks:
            y = round(field.y(tick))
            painter.setPen(self._inks.hair("edge") if tick == 0 else faint)
            painter.drawLine(QPointF(rect.left(), y), QPointF(rect.right(), y))
        pen = self._inks.hair("edge")
        pen.setDashPattern([1.0, 3.0])
        painter.setPen(pen)
        for mark in self._marks:
            if mark.sort is MarkSort.OTHER:
                continue  # a heft or a note changes no curve
            x = round(field.x(mark.x))
            painter.drawLine(QPointF(x, rect.top()), QPointF(x, rect.bottom()))

    def _paint_gaps(self, painter: QPainter, field: Field) -> None:
        painter.setFont(theme.sans(theme.LABEL_PX, italic=True))
        painter.setPen(QColor(self._inks.chrome.second_ink))
        flags = int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap)
        for gap in self._pane.gaps:
            left, right = field.x(gap.left) + 8, field.x(gap.right) - 8
            if right - left < _LEAST_GAP_PX:
                continue
            wide = min(right - left, 190.0)
            room = QRectF((left + right - wide) / 2, field.y(0) - 74, wide, 68)
            painter.drawText(room, flags, gap.text)

    def _paint_dots(self, painter: QPainter, field: Field) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ground = QColor(self._inks.chrome.board)
        ink = QColor(self._inks.chrome.ink)
        placed = [
            (dot, field.x(dot.x), ink if dot.style is None else self._inks.line_colour(dot.style))
            for dot in self._pane.dots
        ]
        for dot, x, colour in placed:
            # A narrow band beside several curves is only noise: there the dot alone stands.
            if dot.shape is not DotShape.FULL or dot.style is None:
                high = None if dot.high is None else field.y(dot.high)
                low = field.y(dot.y if dot.high is None else dot.low)
                paint_whisker(painter, x, low, high, dot.shape, colour)
        for dot, x, colour in placed:
            paint_dot(painter, QPointF(x, field.y(dot.y)), dot.shape, colour, ground)

    def _paint_heading(self, painter: QPainter, field: Field) -> None:
        pane = self._pane
        heading = say("{name}, {unit}", name=pane.name, unit=pane.unit) if pane.unit else pane.name
        painter.setFont(theme.sans(theme.LABEL_PX, bold=True))
        width = painter.fontMetrics().horizontalAdvance(heading) + 10
        paint_plate(
            painter, QRectF(field.rect.left() + 2, field.rect.top() + 1, width, 17), heading, self._inks
        )
