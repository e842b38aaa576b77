"""The legend as keys: every content with its letter, colour and pattern; a click takes it in the hand."""

from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QGridLayout, QSizePolicy, QWidget

from beeworkbook.comb.contents import KEY_LETTERS, Content, MarkKind
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.names import content_name
from beeworkbook.qt import theme
from beeworkbook.qt.comb_painter import swatch
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.marks import DISC_GROUND, DISC_INK, paint_small_sign
from beeworkbook.qt.palette import Palette
from beeworkbook.words import say

_ROWS: Final = 7
_KEY_PX: Final = 18
_SWATCH_PX: Final = 22
_SHORT: Final[dict[Content, str]] = {
    Content.BROOD: "brood",
    Content.NECTAR: "nectar",
    Content.STORES: "stores",
    Content.GAP: "gap",
}


class LegendKey(QAbstractButton):
    """One key: its letter, a swatch, a name."""

    def __init__(self, letter: str, name: str, tip: str, palette: Palette) -> None:
        """A key that shows a content or a mark."""
        super().__init__()
        self.letter = letter
        self.content: Content | None = None
        self.mark: MarkKind | None = None
        self._palette = palette
        self.setText(name)
        self.setToolTip(say("{what} ({key})", what=tip, key=letter))
        self.setAccessibleName(say("{what}, key {key}", what=tip, key=letter))
        self.setFixedHeight(_KEY_PX + 6)
        self.setMinimumWidth(84)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self._palette = palette
        self.update()

    def sizeHint(self) -> QSize:
        """Two columns beside one another on the page."""
        return QSize(118, _KEY_PX + 6)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Key cap, swatch, name; the one in the hand on the selection's ground."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.isChecked() or self.underMouse():
            ground = QColor(self._palette.selection)
            if not self.isChecked():
                ground.setAlpha(110)
            painter.fillRect(self.rect(), ground)
        self._paint_cap(painter, QRectF(4.5, 3.5, _KEY_PX - 1, _KEY_PX - 1))
        self._paint_swatch(painter, QRectF(_KEY_PX + 8, 3, _SWATCH_PX, _KEY_PX))
        painter.setFont(theme.sans(theme.LABEL_PX, bold=self.isChecked()))
        painter.setPen(QColor(self._palette.ink))
        room = QRectF(_KEY_PX + _SWATCH_PX + 13, 0, self.width() - _KEY_PX - _SWATCH_PX - 14, self.height())
        name = painter.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, int(room.width()))
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, name)
        if self.hasFocus():
            painter.setPen(QPen(QColor(self._palette.focus), 2.0))
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))
        painter.end()

    def _paint_cap(self, painter: QPainter, rect: QRectF) -> None:
        colour = QColor(self._palette.focus if self.isChecked() else self._palette.edge)
        painter.setPen(QPen(colour, 1.0))
        painter.setBrush(QColor(self._palette.board))
        painter.drawRoundedRect(rect, 2, 2)
        painter.setPen(QColor(self._palette.focus if self.isChecked() else self._palette.ink))
        painter.setFont(theme.sans(theme.LABEL_PX, bold=True))
        painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, self.letter)

    def _paint_swatch(self, painter: QPainter, rect: QRectF) -> None:
        if self.content is not None:
            image = swatch(
                self.content, int(rect.width()), int(rect.height()), self._palette, self.devicePixelRatioF()
            )
            painter.drawImage(rect.topLeft(), image)
            return
        painter.setPen(QPen(QColor(self._palette.edge), 1.0))
        painter.setBrush(DISC_GROUND)
        painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
        if self.mark is not None:
            paint_small_sign(painter, rect, self.mark, None, DISC_INK)
        else:
            _paint_bees(painter, rect)


class LegendKeys(QWidget):
    """All keys in two columns, in the order of the letters."""

    content_chosen = Signal(object)
    """A Content was clicked."""
    letter_chosen = Signal(str)
    """The key of bees, the queen or a queen cell was clicked: its letter, as if it had been typed."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The legend of a desk."""
        super().__init__(parent)
        self.desk = desk
        self.keys: dict[Content, LegendKey] = {}
        self.mark_keys: list[LegendKey] = []
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        grid = QGridLayout(self)
        grid.setContentsMargins(10, 8, 10, 10)
        grid.setHorizontalSpacing(6)
        grid.setVerticalSpacing(0)
        for at, key in enumerate([*self._content_keys(), *self._other_keys()]):
            grid.addWidget(key, at % _ROWS, at // _ROWS)
        self.setAccessibleName(say("legend and keys"))
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        desk.palette_changed.connect(self._palette_changed)

    def show_content(self, content: Content | None) -> None:
        """Show what is in the hand; None is nothing."""
        if content in self.keys:
            self.keys[content].setChecked(True)
        elif content is None:
            self._group.setExclusive(False)
            for key in self.keys.values():
                key.setChecked(False)
            self._group.setExclusive(True)

    def _content_keys(self) -> list[LegendKey]:
        letters = installed_letters().contents
        for content in KEY_LETTERS:
            name = say(_SHORT[content]) if content in _SHORT else content_name(content)
            key = LegendKey(letters[content], name, content_name(content), self.desk.palette)
            key.content = content
            key.setCheckable(True)
            key.clicked.connect(lambda _on=False, content=content: self.content_chosen.emit(content))
            self._group.addButton(key)
            self.keys[content] = key
        return list(self.keys.values())

    def _other_keys(self) -> list[LegendKey]:
        letters = installed_letters()
        for letter, name, tip, mark in (
            (letters.bees, say("bees"), say("bees covering this side"), None),
            (letters.queen, say("queen"), say("queen seen here"), MarkKind.QUEEN),
            (letters.queen_cell, say("queen cell"), say("queen cell here"), MarkKind.QUEEN_CELL),
        ):
            key = LegendKey(letter, name, tip, self.desk.palette)
            key.mark = mark
            key.clicked.connect(lambda _on=False, letter=letter: self.letter_chosen.emit(letter))
            self.mark_keys.append(key)
        return self.mark_keys

    def _palette_changed(self, palette: Palette) -> None:
        for key in [*self.keys.values(), *self.mark_keys]:
            key.set_palette(palette)


def _paint_bees(painter: QPainter, rect: QRectF) -> None:
    """Some bees seen from far: short strokes beside one another."""
    painter.setPen(QPen(DISC_INK, 1.6))
    for x, y in ((5.0, 5.0), (11.0, 4.0), (16.5, 6.0), (7.0, 10.0), (13.0, 10.0), (5.5, 14.5), (15.5, 13.5)):
        at = rect.topLeft() + QPointF(x, y)
        painter.drawLine(at - QPointF(1.5, 0.6), at + QPointF(1.5, 0.6))
