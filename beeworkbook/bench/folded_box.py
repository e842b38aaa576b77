"""A box that is not the one looked into, folded to a strip: its name and its combs as a row of slips."""

from typing import Final

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QColor, QFontMetrics, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from beeworkbook.bench.comb_pictures import CombPictures
from beeworkbook.bench.on_show import CombOnShow
from beeworkbook.colony.hive import PartDay
from beeworkbook.colony.records import PartId
from beeworkbook.comb.contents import Face
from beeworkbook.qt import theme
from beeworkbook.qt.palette import Palette
from beeworkbook.words import say, say_count

FOLDED_PX: Final = 30
_NAME_PX: Final = 130
_MOST_NAME_PX: Final = 170
_SLIP_PX: Final = 20
_MOST_SLIP_PX: Final = 60


class FoldedBox(QWidget):
    """A strip that unfolds when it is clicked or Enter is pressed on it."""

    opened = Signal(object)
    """The PartId of the box to look into."""

    def __init__(self, palette: Palette, parent: QWidget | None = None) -> None:
        """A strip of no box yet."""
        super().__init__(parent)
        self._palette = palette
        self._part_id: PartId | None = None
        self._text = ""
        self._combs: tuple[CombOnShow, ...] = ()
        self._pictures = CombPictures()
        self.setFixedHeight(FOLDED_PX)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_box(self, box: PartDay, combs: tuple[CombOnShow, ...], name: str) -> None:
        """Show a box under its name in the hive."""
        self._part_id = box.part.id
        self._combs = combs
        count = sum(comb.is_comb for comb in combs)
        self._text = say(
            "{box}, {combs}",
            box=name,
            combs=say_count(count, "{n} comb", "{n} combs"),
        )
        self.setAccessibleName(self._text)
        self.setToolTip(say("Look into this box: {box}", box=name))
        self._draw()

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self._palette = palette
        self._draw()

    @property
    def _name_px(self) -> int:
        """The room of the name; the same for all boxes but those with a long one."""
        wanted = QFontMetrics(theme.sans(theme.LABEL_PX)).horizontalAdvance(self._text) + 12
        return max(_NAME_PX, min(_MOST_NAME_PX, wanted))

    def _slip(self, place: int) -> QRectF:
        name = self._name_px
        pitch = min((self.width() - name) / max(1, len(self._combs)), _MOST_SLIP_PX + 4.0)
        return QRectF(round(name + (place - 1) * pitch), 5, max(4, round(pitch - 4)), _SLIP_PX)

    def _draw(self) -> None:
        if self._combs:
            slip = self._slip(1)
            self._pictures.show(
                self._combs, int(slip.width()), int(slip.height()), self.devicePixelRatioF(), self._palette
            )
        self.update()

    def resizeEvent(self, event: object) -> None:
        """The slips take the room there is."""
        self._draw()
        super().resizeEvent(event)  # type: ignore[arg-type]

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Unfold it."""
        if event.button() is Qt.MouseButton.LeftButton and self._part_id is not None:
            self.opened.emit(self._part_id)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter or Space unfolds it."""
        keys = {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space}
        if event.key() in keys and self._part_id is not None:
            self.opened.emit(self._part_id)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Name and slips."""
        del event
        painter = QPainter(self)
        painter.setFont(theme.sans(theme.LABEL_PX))
        painter.setPen(QColor(self._palette.second_ink))
        room = self._name_px - 8
        painter.drawText(
            QRectF(4, 0, room, FOLDED_PX),
            Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft,
            painter.fontMetrics().elidedText(self._text, Qt.TextElideMode.ElideRight, room),
        )
        for comb in self._combs:
            self._paint_slip(painter, comb)
        if self.hasFocus():
            painter.setPen(QPen(QColor(self._palette.focus), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))
        painter.end()

    def _paint_slip(self, painter: QPainter, comb: CombOnShow) -> None:
        rect, image = self._slip(comb.place), self._pictures.image(comb, Face.A)
        pen = QPen(QColor(self._palette.edge if image is not None else self._palette.rule), 1.0)
        if image is not None:
            painter.drawImage(rect.topLeft(), image)
        elif comb.is_comb:
            pen.setDashPattern([3.0, 3.0])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))
