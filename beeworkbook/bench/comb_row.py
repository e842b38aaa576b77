"""The combs of a box as two rows of small pictures, side A above side B, in hive order.

Painted by hand: a number and its marks above each comb, what was typed below. It knows values only and
says what was chosen, pointed at or typed.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRect, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QFontMetricsF, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from beeworkbook.bench.comb_pictures import CombPictures
from beeworkbook.bench.on_show import CombOnShow
from beeworkbook.colony.records import FrameId, Mark
from beeworkbook.comb.contents import Face, MarkKind
from beeworkbook.comb.orientation import seam_of, sides_of_seam
from beeworkbook.qt import theme
from beeworkbook.qt.comb_painter import paint_bare
from beeworkbook.qt.marks import mark_name, paint_small_sign
from beeworkbook.qt.palette import Palette
from beeworkbook.words import say

MOST_ACROSS: Final = 12
"""Above so many combs the row scrolls."""
HEAD_PX: Final = 21
FOOT_PX: Final = 18
GAP_PX: Final = 4
_BETWEEN_PX: Final = 3
_SIGN_PX: Final = 15
_LEAST_PITCH: Final = 64
_MOST_SIGNS: Final = 3
TYPING: Final = ".=?-/"
"""Signs besides letters and digits that begin a typed comb."""


@dataclass(frozen=True)
class RowSizes:
    """Width of a comb with its gap, and width and height of one small picture. Units: the window's pixels."""

    pitch: float
    width: int
    height: int

    @classmethod
    def fitted(cls, room: int, combs: int, proportion: float, most_high: int) -> "RowSizes":
        """As wide as the room gives; proportion is height ÷ width of the combs."""
        across = max(1, min(combs, MOST_ACROSS))
        pitch = max(float(_LEAST_PITCH), room / max(across, 6))
        width = int(pitch) - GAP_PX
        height = round(width * proportion)
        if height > most_high:
            height, width = most_high, max(24, round(most_high / proportion))
        return cls(pitch, width, height)

    @property
    def row_height(self) -> int:
        """Of the numbers, both rows of pictures and the text below."""
        return HEAD_PX + 2 * self.height + _BETWEEN_PX + FOOT_PX


class CombRow(QWidget):
    """The row of combs. It takes the keyboard: arrows choose, letters begin to type."""

    chosen = Signal(int, object)
    """A place and a Face."""
    opened = Signal(int, object)
    """A double click on a side: a place and a Face."""
    typed = Signal(str)
    """The first sign of a typed comb."""
    next_asked = Signal()
    """Enter: the next comb."""
    entered = Signal()
    """The row has the keyboard now."""

    def __init__(self, palette: Palette, parent: QWidget | None = None) -> None:
        """An empty row."""
        super().__init__(parent)
        self._palette = palette
        self._combs: tuple[CombOnShow, ...] = ()
        self._place: int | None = None
        self._face = Face.A
        self._seam: int | None = None
        self._lit: frozenset[FrameId] = frozenset()
        self._sizes = RowSizes(88.0, 84, 47)
        self.pictures = CombPictures()
        self._is_stale = False
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(say("combs of the box"))
        self.setToolTip(say("Arrows choose comb and side, letters and digits type it, F6 goes to the bench"))

    # --- what is shown --------------------------------------------------------------------------

    def show_combs(self, combs: Sequence[CombOnShow]) -> None:
        """Show these combs; only pictures that differ are drawn again."""
        self._combs = tuple(combs)
        self._is_stale = True
        self._resize()
        self._say_it()
        self.update()

    def draw(self) -> None:
        """Draw the pictures that are due; they wait until they are seen."""
        self._is_stale = False
        ratio = self.devicePixelRatioF()
        self.pictures.show(self._combs, self._sizes.width, self._sizes.height, ratio, self._palette)

    def show_comb(self, comb: CombOnShow) -> None:
        """One comb has changed: only what differs of it is painted again."""
        if self._is_stale:
            self.draw()
        before = self._combs[comb.place - 1]
        self._combs = tuple(comb if held.place == comb.place else held for held in self._combs)
        changed = self.pictures.show_comb(comb, self._palette)
        ratio = self.devicePixelRatioF()
        for face, rect in changed.items():
            picture = self.picture_rect(comb.place, face)
            if not rect.isEmpty():
                picture = QRectF(
                    picture.left() + rect.left() / ratio,
                    picture.top() + rect.top() / ratio,
                    rect.width() / ratio,
                    rect.height() / ratio,
                )
            self.update(picture.adjusted(-1, -1, 1, 1).toAlignedRect())
        if (before.word, before.marks) != (comb.word, comb.marks):
            self.update(self.column(comb.place).toAlignedRect())
        self._say_it()

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self._palette = palette
        self.show_combs(self._combs)

    def set_sizes(self, sizes: RowSizes) -> None:
        """Take other sizes."""
        if sizes != self._sizes:
            self._sizes = sizes
            self.show_combs(self._combs)

    def choose(self, place: int | None, face: Face) -> None:
        """Show which comb and side the keeper is at."""
        if (place, face) != (self._place, self._face):
            before, self._place, self._face = self._place, place, face
            for at in (before, place):
                if at is not None:
                    self.update(self.column(at).toAlignedRect())
            self._say_it()

    @property
    def combs(self) -> tuple[CombOnShow, ...]:
        """What is shown."""
        return self._combs

    @property
    def seam(self) -> int | None:
        """The seam that is lit, None while the pointer is elsewhere."""
        return self._seam

    def light_combs(self, frames: Collection[FrameId]) -> None:
        """Light these combs, as a sentence of the Page leads to them; none puts the light out."""
        lit = frozenset(frames)
        for comb in self._combs:
            if comb.frame is not None and (comb.frame.id in lit) != (comb.frame.id in self._lit):
                self.update(self.column(comb.place).toAlignedRect())
        self._lit = lit

    @property
    def lit(self) -> frozenset[FrameId]:
        """The combs that are lit."""
        return self._lit

    def _resize(self) -> None:
        self.setFixedSize(max(1, int(self._sizes.pitch * len(self._combs))), self._sizes.row_height + 3)

    def _say_it(self) -> None:
        comb = next((comb for comb in self._combs if comb.place == self._place), None)
        if comb is not None:
            self.setAccessibleDescription(_said(comb, self._face))

    # --- where things are -------------------------------------------------------------------------

    def column(self, place: int) -> QRectF:
        """The column of a comb."""
        return QRectF((place - 1) * self._sizes.pitch, 0, self._sizes.pitch, self.height())

    def picture_rect(self, place: int, face: Face) -> QRectF:
        """The small picture of a side, on whole pixels."""
        left = round((place - 1) * self._sizes.pitch + (self._sizes.pitch - self._sizes.width) / 2)
        top = HEAD_PX + 1 + (self._sizes.height + _BETWEEN_PX if face is Face.B else 0)
        return QRectF(left, top, self._sizes.width, self._sizes.height)

    def side_at(self, at: QPointF) -> tuple[int, Face] | None:
        """The comb and side at a place of the row; the number belongs to A, the text to B."""
        place = int(at.x() // self._sizes.pitch) + 1
        if not 1 <= place <= len(self._combs):
            return None
        return place, Face.A if at.y() < HEAD_PX + self._sizes.height + _BETWEEN_PX / 2 else Face.B

    def seam_at(self, at: QPointF) -> int | None:
        """The seam nearest to a place of the row."""
        side = self.side_at(at)
        if side is None:
            return None
        place, _face = side
        half = at.x() / self._sizes.pitch - (place - 1)
        return seam_of(place, Face.A if half < 0.5 else Face.B)

    # --- mouse ------------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the side."""
        side = self.side_at(event.position())
        if side is not None and event.button() is Qt.MouseButton.LeftButton:
            self.chosen.emit(*side)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Lift the comb out on to the bench."""
        side = self.side_at(event.position())
        if side is not None:
            self.opened.emit(*side)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Light the seam under the pointer."""
        self._light(self.seam_at(event.position()))
        side = self.side_at(event.position())
        if side is not None and self._seam is not None:
            place, face = side
            seam = say("Seam {seam}", seam=f"{self._seam}|{self._seam + 1}")
            self.setToolTip(f"{seam}. {_said(self._combs[place - 1], face)}")

    def leaveEvent(self, event: QEvent) -> None:
        """No seam is pointed at."""
        self._light(None)
        super().leaveEvent(event)

    def _light(self, seam: int | None) -> None:
        if seam != self._seam:
            before, self._seam = self._seam, seam
            for lit in (before, seam):
                if lit is not None:
                    self.update(self._seam_rect(lit))

    def _seam_rect(self, seam: int) -> QRect:
        left = (seam - 1) * self._sizes.pitch
        return QRectF(left - 2, 0, 2 * self._sizes.pitch + 4, self.height()).toAlignedRect()

    # --- keys -------------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows choose comb and side, Enter the next comb, letters and digits begin to type."""
        key, text = event.key(), event.text()
        plain = not event.modifiers() & (
            Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        )
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        if key in steps:
            self._step(steps[Qt.Key(key)])
        elif key in {Qt.Key.Key_Home, Qt.Key.Key_End}:
            self._go_to_end(last=key == Qt.Key.Key_End)
        elif key in {Qt.Key.Key_Up, Qt.Key.Key_Down}:
            if self._place is not None:
                self.chosen.emit(self._place, Face.A if key == Qt.Key.Key_Up else Face.B)
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.next_asked.emit()
        elif plain and text and (text.isalnum() or text in TYPING):
            self.typed.emit(text.upper())
        else:
            super().keyPressEvent(event)

    def _step(self, step: int) -> None:
        places = [comb.place for comb in self._combs if comb.frame is not None]
        if not places:
            return
        if self._place not in places:
            self.chosen.emit(places[0], self._face)
            return
        at = places.index(self._place) + step
        if 0 <= at < len(places):
            self.chosen.emit(places[at], self._face)

    def _go_to_end(self, *, last: bool) -> None:
        places = [comb.place for comb in self._combs if comb.frame is not None]
        if places:
            self.chosen.emit(places[-1 if last else 0], self._face)

    def focusInEvent(self, event: object) -> None:
        """The keeper turned to the box."""
        self.entered.emit()
        self.update()
        super().focusInEvent(event)  # type: ignore[arg-type]

    def focusOutEvent(self, event: object) -> None:
        """Draw without the keyboard's frame."""
        self.update()
        super().focusOutEvent(event)  # type: ignore[arg-type]

    def sizeHint(self) -> QSize:
        """As large as its combs."""
        return self.size()

    # --- painting -----------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """The columns in view."""
        if self._is_stale:
            self.draw()
        painter = QPainter(self)
        for comb in self._combs:
            if self.column(comb.place).intersects(QRectF(event.rect())):
                self._paint_column(painter, comb)
        if self._seam is not None:
            self._paint_seam(painter, self._seam)
        painter.end()

    def _paint_column(self, painter: QPainter, comb: CombOnShow) -> None:
        column = self.column(comb.place)
        is_chosen = comb.place == self._place
        if is_chosen:
            self._paint_chosen(painter, column)
        self._paint_head(painter, comb, column, is_chosen=is_chosen)
        for face in Face:
            self._paint_side(painter, comb, face)
            if comb.is_comb and comb.frame is not None and comb.frame.id in self._lit:
                self._paint_light(painter, self.picture_rect(comb.place, face))
        colour = self._palette.focus if is_chosen else self._palette.second_ink
        painter.setFont(theme.sans(theme.LABEL_PX, bold=is_chosen, italic=comb.is_emphatic and not is_chosen))
        painter.setPen(QColor(colour))
        room = QRectF(column.left() + 2, self.height() - FOOT_PX - 3, column.width() - 4, FOOT_PX)
        text = painter.fontMetrics().elidedText(comb.word, Qt.TextElideMode.ElideRight, int(room.width()))
        painter.drawText(room, Qt.AlignmentFlag.AlignCenter, text)

    def _paint_chosen(self, painter: QPainter, column: QRectF) -> None:
        band = column.adjusted(0, 0, 0, -1)
        painter.fillRect(band, QColor(self._palette.selection))
        focus = QColor(self._palette.focus)
        painter.fillRect(QRectF(band.left(), 0, band.width(), 2), focus)
        painter.fillRect(QRectF(band.left(), band.bottom() - 2, band.width(), 3), focus)
        if self.hasFocus():
            painter.setPen(QPen(focus, 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(band.adjusted(1, 1, -1, -1))

    def _paint_head(self, painter: QPainter, comb: CombOnShow, column: QRectF, *, is_chosen: bool) -> None:
        painter.setFont(theme.sans(theme.BODY_PX, bold=is_chosen))
        painter.setPen(QColor(self._palette.focus if is_chosen else self._palette.ink))
        head = QRectF(column.left(), 3, column.width(), HEAD_PX - 4)
        number = str(comb.place)
        painter.drawText(head, Qt.AlignmentFlag.AlignCenter, number)
        half = QFontMetricsF(painter.font()).horizontalAdvance(number) / 2 + 5
        queens = [mark for mark in comb.marks if mark.kind is MarkKind.QUEEN]
        others = [mark for mark in comb.marks if mark.kind is not MarkKind.QUEEN]
        top = head.top() + 1
        for at, mark in enumerate(queens[:_MOST_SIGNS]):
            x = column.center().x() - half - (at + 1) * _SIGN_PX
            self._paint_sign(painter, mark, QRectF(x, top, _SIGN_PX, _SIGN_PX))
        for at, mark in enumerate(others[:_MOST_SIGNS]):
            self._paint_sign(
                painter, mark, QRectF(column.center().x() + half + at * _SIGN_PX, top, _SIGN_PX, _SIGN_PX)
            )

    def _paint_sign(self, painter: QPainter, mark: Mark, rect: QRectF) -> None:
        paint_small_sign(painter, rect, mark.kind, mark.cell_kind, QColor(self._palette.ink))

    def _paint_side(self, painter: QPainter, comb: CombOnShow, face: Face) -> None:
        rect = self.picture_rect(comb.place, face)
        shown = comb.sides.get(face)
        if shown is None:
            painter.setPen(QPen(QColor(self._palette.rule), 1.0))
            painter.setBrush(QColor(self._palette.sunk) if comb.frame is not None else Qt.BrushStyle.NoBrush)
            painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
            return
        image = self.pictures.image(comb, face)
        if image is None:
            paint_bare(painter, rect, self._palette)
        else:
            painter.drawImage(rect.topLeft(), image)
            painter.setPen(QPen(QColor(self._palette.edge), 1.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
        if comb.place == self._place and face is self._face:
            painter.setPen(QPen(QColor(self._palette.focus), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(rect.adjusted(-1, -1, 1, 1))

    def _paint_seam(self, painter: QPainter, seam: int) -> None:
        """Both sides that look into a seam, lit together, and its name between their numbers."""
        facing = [side for side in sides_of_seam(seam, len(self._combs)) if self._combs[side[0] - 1].is_comb]
        for place, face in facing:
            self._paint_light(painter, self.picture_rect(place, face))

    def _paint_light(self, painter: QPainter, rect: QRectF) -> None:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for colour, width in ((self._palette.board, 4.0), (self._palette.soon, 2.0)):
            painter.setPen(QPen(QColor(colour), width))
            painter.drawRect(rect.adjusted(1, 1, -1, -1))


def _said(comb: CombOnShow, face: Face) -> str:
    """A comb to be read aloud."""
    marks = [mark_name(mark.kind, mark.cell_kind, mark.text) for mark in comb.marks]
    parts = [say("comb {place}, side {face}", place=comb.place, face=face.value), comb.word, *marks]
    if face in comb.sides:
        parts.insert(1, comb.sides[face].word)
    return ", ".join(dict.fromkeys(part for part in parts if part))
