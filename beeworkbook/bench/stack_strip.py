"""The hive in elevation beside the box, from stand to roof: the box looked into, and a way to others."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from beeworkbook.colony.hive import HiveDay, PartDay
from beeworkbook.colony.records import PartKind
from beeworkbook.qt import theme
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.icons import PART_HEIGHTS, paint_part, part_rects, stack_height
from beeworkbook.words import say

STRIP_PX: Final = 84
_HIVE_PX: Final = 40
_LEAST_LABEL_PX: Final = 11.0
_TALLEST: Final = 4.4
_NAMES: Final[dict[PartKind, str]] = {
    PartKind.STAND: "stand",
    PartKind.FLOOR: "floor",
    PartKind.NUCLEUS_BOX: "nucleus",
    PartKind.BROOD_BOX: "brood",
    PartKind.EXCLUDER: "excl.",
    PartKind.SUPER: "super",
    PartKind.CLEARER_BOARD: "clearer",
    PartKind.CROWN_BOARD: "crown",
    PartKind.FEEDER: "feeder",
    PartKind.LIFT: "lift",
    PartKind.ROOF: "roof",
}


class StackStrip(QWidget):
    """The stack of the hive, small. A click on a box, or the arrows, looks into it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The strip of a desk, with no hive yet."""
        super().__init__(parent)
        self.desk = desk
        self._stack: tuple[PartDay, ...] = ()
        self.setFixedWidth(STRIP_PX)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(say("the hive from stand to roof"))
        self.setToolTip(say("The hive from stand to roof: click a box to look into it"))

    def show_hive(self, hive: HiveDay | None) -> None:
        """Show a hive."""
        self._stack = hive.stack if hive is not None else ()
        names = ", ".join(say(_NAMES[part.part.kind]) for part in self._stack)
        self.setAccessibleDescription(names)
        self.update()

    def _rects(self) -> list[QRectF]:
        kinds = [part.part.kind for part in self._stack]
        wide = part_rects(QRectF(2, 0, _HIVE_PX, 4 * _HIVE_PX), kinds)
        bottom = self.height() - 6.0
        # A little taller than it measures, so that the names beside the parts have room.
        unit = min((bottom - 4) / (stack_height(kinds) or 1.0), _TALLEST)
        made = []
        for kind, rect in zip(kinds, wide, strict=True):
            height = PART_HEIGHTS[kind] * unit
            made.append(QRectF(rect.left(), bottom - height, rect.width(), height))
            bottom -= height
        return made

    def part_at(self, at: QPointF) -> PartDay | None:
        """The part at a height of the strip."""
        for part, rect in zip(self._stack, self._rects(), strict=True):
            if rect.top() <= at.y() <= rect.bottom():
                return part
        return None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Look into the box that is clicked."""
        part = self.part_at(event.position())
        if part is not None and part.is_box:
            self.desk.go(part_id=part.part.id, frame_id=None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and down go from box to box."""
        steps = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}
        boxes = [part.part.id for part in self._stack if part.is_box]
        if event.key() not in steps or self.desk.spot.part_id not in boxes:
            super().keyPressEvent(event)
            return
        at = boxes.index(self.desk.spot.part_id) + steps[Qt.Key(event.key())]
        if 0 <= at < len(boxes):
            self.desk.go(part_id=boxes[at], frame_id=None)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The parts in elevation, the box looked into in the focus colour."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.desk.palette
        for part, rect in zip(self._stack, self._rects(), strict=True):
            chosen = part.part.id == self.desk.spot.part_id
            pen = QPen(QColor(palette.focus if chosen else palette.edge), 2.0 if chosen else 1.2)
            paint_part(
                painter, rect, part.part.kind, pen, QColor(palette.selection if chosen else palette.board)
            )
        self._paint_names(painter, self._rects())
        if self.hasFocus():
            painter.setPen(QPen(QColor(palette.focus), 2.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))
        painter.end()

    def _paint_names(self, painter: QPainter, rects: Sequence[QRectF]) -> None:
        """Names beside the parts; where they would run into one another the boxes' names stay."""
        palette = self.desk.palette
        taken: list[float] = []
        order = sorted(zip(self._stack, rects, strict=True), key=lambda pair: not pair[0].is_box)
        for part, rect in order:
            y = rect.center().y()
            if any(abs(y - other) < _LEAST_LABEL_PX for other in taken):
                continue
            taken.append(y)
            chosen = part.part.id == self.desk.spot.part_id
            painter.setFont(theme.sans(theme.LABEL_PX, bold=chosen))
            painter.setPen(QColor(palette.ink if chosen else palette.second_ink))
            painter.drawText(
                QRectF(_HIVE_PX + 7, y - 9, STRIP_PX - _HIVE_PX - 7, 18),
                Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft,
                say(_NAMES[part.part.kind]),
            )
