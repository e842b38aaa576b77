"""Brood this season as small bars, a bar a visit, in full combs: solid from combs, hollow from a line.

What was not recorded has no bar. The large form of it is the Year.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from PySide6.QtCore import QLineF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from beeworkbook.colony.worth import worth_words
from beeworkbook.qt import theme
from beeworkbook.qt.palette import Palette
from beeworkbook.words import date_words, month_name, say

_HEIGHT = 92
_FOOT = 18
_HEAD = 16
_BAR = 11.0
_LEAST_COMBS = 4.0


@dataclass(frozen=True)
class BroodBar:
    """One visit's brood: so many full combs, from a line or only of some combs if hollow."""

    day: date
    worth: float
    hollow: bool = False
    at_least: bool = False


class BroodBars(QWidget):
    """The bars of a season; the day's own bar stands out and says its figure."""

    def __init__(self, palette: Palette) -> None:
        """No bars yet."""
        super().__init__()
        self._palette = palette
        self._bars: tuple[BroodBar, ...] = ()
        self._day: date | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self._palette = palette
        self.update()

    def show_bars(self, bars: Sequence[BroodBar], day: date) -> None:
        """Show a season; `day` is the one that stands out."""
        self._bars, self._day = tuple(bars), day
        said = [
            say("{day} {worth}", day=date_words(bar.day), worth=worth_words(bar.worth)) for bar in self._bars
        ]
        self.setAccessibleName(say("Brood this season in full combs"))
        self.setAccessibleDescription(", ".join(said))
        self.setToolTip("\n".join(said[-12:]))
        self.update()

    def sizeHint(self) -> QSize:
        """As tall as six lines of small print."""
        return QSize(240, _HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """It may be narrow."""
        return QSize(120, _HEIGHT)

    def bar_rects(self) -> list[QRectF]:
        """Where each bar stands."""
        if not self._bars:
            return []
        most = max(_LEAST_COMBS, *(bar.worth for bar in self._bars))
        first = min(bar.day for bar in self._bars).replace(day=1)
        days = max(60, (max(bar.day for bar in self._bars) - first).days)
        width = min(_BAR, (self.width() - _BAR) / max(1, len(self._bars)) - 1)
        room = self.height() - _FOOT - _HEAD
        rects = []
        for bar in self._bars:
            left = 4 + (self.width() - 10 - _BAR) * (bar.day - first).days / days
            height = max(1.0, room * bar.worth / most)
            rects.append(QRectF(left, self.height() - _FOOT - height, width, height))
        return rects

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The bars on their ground, the months below."""
        p = self._palette
        painter = QPainter(self)
        ground = self.height() - _FOOT
        for bar, rect in zip(self._bars, self.bar_rects(), strict=True):
            chosen = bar.day == self._day
            self._paint_bar(painter, bar, rect, QColor(p.focus if chosen else p.edge))
            if chosen:
                painter.setFont(theme.sans(theme.LABEL_PX, bold=True))
                painter.setPen(QColor(p.focus))
                words = worth_words(bar.worth) + ("+" if bar.at_least else "")
                over = QRectF(rect.center().x() - 30, rect.top() - 17, 60, 16)
                over.moveRight(min(over.right(), self.width() - 1.0))
                aligned = Qt.AlignmentFlag.AlignHCenter
                if over.right() >= self.width() - 1.0:
                    aligned = Qt.AlignmentFlag.AlignRight
                painter.drawText(over, aligned | Qt.AlignmentFlag.AlignBottom, words)
        painter.fillRect(QRectF(0, ground, self.width(), 1), QColor(p.edge))
        self._paint_months(painter, ground)

    @staticmethod
    def _paint_bar(painter: QPainter, bar: BroodBar, rect: QRectF, colour: QColor) -> None:
        if not (bar.hollow or bar.at_least):
            painter.fillRect(rect, colour)
            return
        painter.setPen(QPen(colour, 1.25))
        inner = rect.adjusted(0.6, 0.6, -0.6, 0)
        painter.drawLines(
            [
                QLineF(inner.bottomLeft(), inner.topLeft()),
                QLineF(inner.bottomRight(), inner.topRight()),
            ]
        )
        if not bar.at_least:  # one that is "at least" stays open upwards
            painter.drawLine(QLineF(inner.topLeft(), inner.topRight()))

    def _paint_months(self, painter: QPainter, ground: int) -> None:
        painter.setFont(theme.sans(theme.LABEL_PX))
        painter.setPen(QColor(self._palette.second_ink))
        clear = -1.0
        months: set[tuple[int, int]] = set()
        for bar, rect in zip(self._bars, self.bar_rects(), strict=True):
            month = (bar.day.year, bar.day.month)
            if month in months or rect.left() < clear:
                continue
            months.add(month)
            words = month_name(bar.day.month, short=True)
            clear = rect.left() + painter.fontMetrics().horizontalAdvance(words) + 8
            painter.drawText(QRectF(rect.left() - 2, ground + 2, 60, _FOOT - 2), 0, words)
