"""What stands round the panes: the title, the row of marks above, the months below, and the key."""

from typing import Any, Final

import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter

from beeworkbook.qt import theme
from beeworkbook.words import number, say
from beeworkbook.year.day_axis import DayAxis
from beeworkbook.year.inks import Inks
from beeworkbook.year.panes import ChartModel, DotShape, Pane, PlacedMark
from beeworkbook.year.signs import dot_words, paint_dot, paint_sort

SIGN_PX: Final = 15.0
LANE_PX: Final = 18.0
_LANES: Final = 3
_WIDEST_WORDS: Final = 150.0
_KEY_ROW_PX: Final = 20.0


class AmountAxis(pg.AxisItem):
    """The axis at the left of a pane: short ticks, and what hangs below nought told as an amount too."""

    def __init__(self, pane: Pane, ticks: tuple[float, ...], inks: Inks, width: float) -> None:
        """The axis of `pane` with exactly these ticks."""
        super().__init__("left", pen=QColor(inks.chrome.edge), textPen=QColor(inks.chrome.second_ink))
        self._pane, self._ticks = pane, ticks
        self.setWidth(width)
        self.setStyle(tickFont=theme.sans(theme.LABEL_PX))

    def generateDrawSpecs(self, _painter: QPainter) -> tuple[Any, Any, Any]:
        """Where its line, ticks and figures stand; there is no view to ask, the scene is painted as it is."""
        rect, pane = self.rect(), self._pane
        scale = rect.height() / (pane.high - pane.low)
        right, places = rect.right(), [rect.bottom() - (tick - pane.low) * scale for tick in self._ticks]
        line = (self.pen(), QPointF(right, rect.top()), QPointF(right, rect.bottom()))
        ticks = [(self.pen(), QPointF(right - 4, y), QPointF(right, y)) for y in places]
        flags = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextDontClip
        texts = [
            (QRectF(rect.left(), y - 8, rect.width() - 8, 16), flags, number(abs(tick)))
            for y, tick in zip(places, self._ticks, strict=True)
        ]
        return line, ticks, texts


class TitleRow(pg.GraphicsWidget):
    """The colony's name and what is shown of it, for pictures that leave the window."""

    def __init__(self, model: ChartModel, inks: Inks) -> None:
        """The title of a chart."""
        super().__init__()
        self._model, self._inks = model, inks
        self.setFixedHeight(34)

    def paint(self, painter: QPainter, *_args: Any) -> None:
        """The name in the book's letter, the rest small beside it."""
        painter.setFont(theme.serif(theme.NAME_PX, bold=True))
        painter.setPen(QColor(self._inks.chrome.ink))
        painter.drawText(QPointF(0, 24), self._model.title)
        left = QFontMetricsF(painter.font()).horizontalAdvance(self._model.title) + 12
        painter.setFont(theme.sans(13))
        painter.setPen(QColor(self._inks.chrome.second_ink))
        painter.drawText(QPointF(left, 24), self._model.subtitle)


class MarkRow(pg.GraphicsWidget):
    """What happened, by day: a drawn sign each, with its words where they fit."""

    def __init__(self, marks: tuple[PlacedMark, ...], days: int, inks: Inks, width: float) -> None:
        """The row over an axis of so many days, so many pixels wide."""
        super().__init__()
        self._inks = inks
        self._placed = lay_marks(marks, days, width)
        lanes = max((lane for _, _, lane, _ in self._placed), default=0) + 1
        self.setFixedHeight(lanes * LANE_PX + 4 if marks else 6)

    def paint(self, painter: QPainter, *_args: Any) -> None:
        """Signs and words."""
        painter.setFont(theme.sans(theme.LABEL_PX))
        ink, words = QColor(self._inks.chrome.ink), QColor(self._inks.chrome.second_ink)
        for mark, x, lane, text in self._placed:
            top = lane * LANE_PX + 2
            paint_sort(painter, QRectF(x - SIGN_PX / 2, top, SIGN_PX, SIGN_PX), mark.sort, ink)
            if text:
                painter.setPen(words)
                room = QRectF(x + SIGN_PX / 2 + 3, top, _WIDEST_WORDS + 4, SIGN_PX)
                painter.drawText(room, int(Qt.AlignmentFlag.AlignVCenter), text)


def lay_marks(
    marks: tuple[PlacedMark, ...], days: int, width: float
) -> tuple[tuple[PlacedMark, float, int, str], ...]:
    """Where each sign stands: its pixel, its lane, and its words, empty where there is no room for them.

    Every sign gets a place; only when all lanes are taken do two signs lie over one another.
    """
    metrics = QFontMetricsF(theme.sans(theme.LABEL_PX))
    ends = [-SIGN_PX] * _LANES
    made: list[tuple[PlacedMark, float, int, str]] = []
    places = [mark.x / days * width for mark in marks]
    for at, (mark, x) in enumerate(zip(marks, places, strict=True)):
        free = [lane for lane in range(_LANES) if ends[lane] <= x - SIGN_PX / 2]
        lane = free[0] if free else min(range(_LANES), key=lambda number: ends[number])
        text = metrics.elidedText(mark.text, Qt.TextElideMode.ElideRight, _WIDEST_WORDS)
        end = x + SIGN_PX / 2 + 3 + metrics.horizontalAdvance(text) + 10
        # Words give way to signs: they must leave a lane free for each of the next few marks.
        coming = sum(x <= later < end for later in places[at + 1 :])
        crowded = coming >= sum(ends[other] <= x - SIGN_PX / 2 for other in range(_LANES))
        if end > width or (crowded and coming) or not free:
            text, end = "", x + SIGN_PX / 2 + 2
        ends[lane] = end
        made.append((mark, x, lane, text))
    return tuple(made)


class MonthRow(pg.GraphicsWidget):
    """The months below the panes, each name beside its tick."""

    def __init__(self, axis: DayAxis, inks: Inks) -> None:
        """The months of an axis."""
        super().__init__()
        self._axis, self._inks = axis, inks
        self.setFixedHeight(24)

    def paint(self, painter: QPainter, *_args: Any) -> None:
        """Ticks and names; the year where it begins."""
        width, axis = self.rect().width(), self._axis
        metrics = QFontMetricsF(theme.sans(theme.LABEL_PX))
        after = -1.0
        for month in axis.months():
            x = month.place / axis.days * width
            painter.setPen(self._inks.hair("edge"))
            painter.drawLine(QPointF(x, 0), QPointF(x, 5))
            text = month.name if month.year is None else f"{month.name} {month.year}"
            if x + 4 < after or x + 4 + metrics.horizontalAdvance(text) > width + 10:
                continue
            painter.setFont(theme.sans(theme.LABEL_PX))
            painter.setPen(QColor(self._inks.chrome.second_ink))
            painter.drawText(QPointF(x + 4, 16), text)
            after = x + 4 + metrics.horizontalAdvance(text) + 6


class KeyRow(pg.GraphicsWidget):
    """What the dots mean, and why something is not drawn."""

    def __init__(self, model: ChartModel, inks: Inks, width: float) -> None:
        """The key of a chart, in as many lines as its words need."""
        super().__init__()
        self._inks = inks
        self._items: list[tuple[DotShape | None, str, QPointF]] = []
        metrics = QFontMetricsF(theme.sans(theme.LABEL_PX))
        words: list[tuple[DotShape | None, str]] = [
            (shape, dot_words(shape)) for shape in DotShape if shape in model.shapes
        ]
        if model.assumes:
            words.append(
                (None, say("fainter: said in one line, the stages assumed from the looks beside it"))
            )
        if model.note:
            words.append((None, model.note))
        x, row = 0.0, 0
        for shape, text in words:
            need = metrics.horizontalAdvance(text) + (18 if shape else 0)
            if x and x + need > width:
                x, row = 0.0, row + 1
            self._items.append((shape, text, QPointF(x, row * _KEY_ROW_PX)))
            x += need + 22
        self.setFixedHeight((row + 1) * _KEY_ROW_PX if self._items else 0)

    def paint(self, painter: QPainter, *_args: Any) -> None:
        """A dot and its words, one after the other."""
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(theme.sans(theme.LABEL_PX))
        ink, ground = QColor(self._inks.chrome.ink), QColor(self._inks.chrome.board)
        for shape, text, at in self._items:
            left = at.x()
            if shape is not None:
                paint_dot(painter, QPointF(left + 6, at.y() + 10), shape, ink, ground)
                left += 18
            painter.setPen(QColor(self._inks.chrome.second_ink))
            painter.drawText(QPointF(left, at.y() + 14), text)


def empty_words() -> str:
    """What an empty chart says."""
    return say("Nothing has been noted here yet. A visit with brood, stores or seams makes the first point.")
