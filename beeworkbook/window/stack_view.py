"""Stack: the hive from stand to roof on a day.

Parts are added and taken by dragging or by keys, and dated.
"""

from typing import Final

from PySide6.QtCore import QMimeData, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QDrag,
    QDragEnterEvent,
    QDragMoveEvent,
    QDropEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
)
from PySide6.QtWidgets import (
    QApplication,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.bench.quiet_label import QuietLabel
from beeworkbook.colony.hive import HiveDay, PartDay
from beeworkbook.colony.records import BOXES, PartId, PartKind
from beeworkbook.comb.contents import Content
from beeworkbook.comb.hives import HIVE_KINDS
from beeworkbook.qt import theme
from beeworkbook.qt.desk import HIVE_FACTS, Desk, View
from beeworkbook.qt.icons import PART_HEIGHTS, paint_part, part_rects
from beeworkbook.window.dialogs.form import Choice, DayLine, FieldError, Form, NumberLine, TextLine
from beeworkbook.window.dialogs.frame_choice import frame_options
from beeworkbook.words import date_words, say, say_count
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.hive import AddPart, MovePart, TakePart

PART_MIME: Final = "application/x-beeworkbook-part"
KIND_MIME: Final = "application/x-beeworkbook-kind"

PART_WORDS: Final[dict[PartKind, str]] = {kind: kind.value.replace("_", " ") for kind in PartKind}


def part_words(part: PartDay) -> str:
    """A part in words: its kind, its name, its frames."""
    words = say(PART_WORDS[part.part.kind])
    if part.part.name:
        words = f"{words} {part.part.name}"
    if part.part.kind in BOXES:
        held = sum(place.frame is not None for place in part.frames)
        return say_count(
            part.part.places,
            "{words}: {held} of {n} place",
            "{words}: {held} of {n} places",
            words=words,
            held=held,
        )
    return words


class StackView(QWidget):
    """The stack drawn large, with what can be put on beside it."""

    def __init__(self, desk: Desk) -> None:
        """The stack of the desk's colony on its day."""
        super().__init__()
        self.setObjectName("ground")
        self._desk = desk
        self.head = QuietLabel("name")
        self.lead = QLabel()
        self.lead.setObjectName("small")
        self.picture = StackPicture(desk)
        self.picture.opened.connect(self._open_box)
        self.picture.taken.connect(self.take)
        self.picture.moved.connect(self.move_part)
        self.picture.kind_dropped.connect(self.add)
        shelf = QVBoxLayout()
        shelf.setSpacing(5)
        words = QLabel(say("Put on: drag a part to its place, or press its button"))
        words.setObjectName("small")
        words.setWordWrap(True)
        shelf.addWidget(words)
        self.kind_buttons: dict[PartKind, PartButton] = {}
        for kind in reversed(PartKind):
            button = PartButton(desk, kind)
            button.clicked.connect(lambda _on=False, kind=kind: self.add(kind, None))
            self.kind_buttons[kind] = button
            shelf.addWidget(button)
        shelf.addStretch(1)
        keys = QLabel(
            say(
                "Up and Down choose a part, Ctrl+Up and Ctrl+Down move it, "
                "Delete takes it off, Enter opens a box."
            )
        )
        keys.setObjectName("small")
        keys.setWordWrap(True)
        shelf.addWidget(keys)
        side = QWidget()
        side.setObjectName("ground")
        side.setLayout(shelf)
        side.setFixedWidth(220)
        row = QHBoxLayout()
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setWidget(self.picture)
        row.addWidget(scroll, 1)
        row.addWidget(side)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 10, 16, 12)
        column.addWidget(self.head)
        column.addWidget(self.lead)
        column.addLayout(row, 1)
        desk.spot_changed.connect(lambda _spot: self.refill())
        desk.book_changed.connect(self._changed)
        desk.palette_changed.connect(lambda _p: self.picture.update())
        self.refill()

    def refill(self) -> None:
        """Show the hive of the desk's day."""
        colony, hive = self._desk.colony, self._desk.hive_day()
        self.head.say(colony.name if colony else say("No colony"))
        if hive is None:
            self.lead.setText(say("It stood in no hive on this day."))
        else:
            day = date_words(self._desk.spot.day, "long_year")
            self.lead.setText(
                say(
                    "{hive} as it stood on {day}. Full boxes are heavy: lift in two, "
                    "or take half the frames out first.",
                    hive=hive.hive.name or say("The hive"),
                    day=day,
                )
            )
        self.picture.show_hive(hive)

    def take_focus(self) -> None:
        """Put the keyboard on the stack."""
        self.picture.setFocus(Qt.FocusReason.OtherFocusReason)

    def add(self, kind: PartKind, level: int | None) -> None:
        """Put a part on from a day; a box is asked for its frames."""
        hive = self._desk.hive_day()
        if hive is None or self._desk.book.read_only:
            return
        form = Form(self, say("Put on: {part}", part=say(PART_WORDS[kind])), say("It is on"))
        day = form.add(DayLine(say("From day"), self._desk.spot.day, self._desk.today))
        name = form.add(TextLine(say("Its name"), blank=say("left blank, it has none")))
        box = _BoxFields(form, self._desk, hive, kind) if kind in BOXES else None

        def put_on() -> object:
            self._needs_the_hive(day)
            edit = AddPart(
                hive.hive.id,
                kind,
                day.day,
                level=level,
                name=name.text,
                frame_type=box.frame_type if box else "",
                places=box.places if box else 0,
                new_frames=box.holds if box else None,
            )
            return self._desk.book.do(edit, source=self)

        if form.ask(put_on) and isinstance(form.made, int):
            self.picture.choose_part(PartId(form.made))

    def _needs_the_hive(self, day: DayLine) -> None:
        colony_id = self._desk.spot.colony_id
        if colony_id is None or self._desk.book.read.hive_day(colony_id, day.day) is None:
            raise FieldError(say("The hive did not stand here on that day."), day)

    def take(self, part_id: PartId) -> None:
        """Take a part off from the desk's day on."""
        self._desk.do(TakePart(part_id, self._desk.spot.day), source=self)

    def move_part(self, part_id: PartId, level: int) -> None:
        """Move a part to another level of the stack."""
        self._desk.do(MovePart(part_id, self._desk.spot.day, level), source=self)

    def _open_box(self, part_id: PartId) -> None:
        self._desk.go(part_id=part_id, frame_id=None, view=View.BOX)

    def _changed(self, changes: Changes) -> None:
        if changes.everything or any(changes.touches(fact) for fact in HIVE_FACTS):
            self.refill()


class PartButton(QPushButton):
    """A part that can be put on: pressed, or dragged to its place."""

    def __init__(self, desk: Desk, kind: PartKind) -> None:
        """The button of a kind of part."""
        super().__init__(say(PART_WORDS[kind]))
        self._kind = kind
        self._pressed: QPointF | None = None
        self.setToolTip(say("Put a {part} on; drag it to say where", part=say(PART_WORDS[kind])))
        self.setEnabled(not desk.book.read_only)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Remember where a drag would begin."""
        self._pressed = event.position()
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Begin a drag once the pointer has moved a little."""
        start = self._pressed
        held = start is not None and event.buttons() & Qt.MouseButton.LeftButton
        if start is None or not held or _is_near(event.position(), start):
            super().mouseMoveEvent(event)
            return
        self._pressed = None
        self.setDown(False)
        drag = QDrag(self)
        content = QMimeData()
        content.setData(KIND_MIME, self._kind.value.encode("ascii"))
        drag.setMimeData(content)
        drag.setPixmap(_drag_picture(self._kind, self.palette().buttonText().color()))
        drag.exec(Qt.DropAction.CopyAction)


class StackPicture(QWidget):
    """The stack itself, painted; one part is chosen."""

    opened = Signal(object)
    taken = Signal(object)
    moved = Signal(object, int)
    kind_dropped = Signal(object, object)

    def __init__(self, desk: Desk) -> None:
        """An empty picture until a hive is shown."""
        super().__init__()
        self.setObjectName("ground")
        self._desk = desk
        self._hive: HiveDay | None = None
        self._at = 0
        self._gap: int | None = None
        self._pressed: QPointF | None = None
        self.setAcceptDrops(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMinimumSize(QSize(360, 320))

    def show_hive(self, hive: HiveDay | None) -> None:
        """Show a hive; the chosen part stays chosen, of another hive its lowest box is."""
        held = self.chosen.part.id if self.chosen is not None else None
        self._hive = hive
        ids = [part.part.id for part in hive.stack] if hive else []
        if held in ids:
            self._at = ids.index(held)
        else:
            boxes = [level for level, part in enumerate(hive.stack) if part.is_box] if hive else []
            self._at = boxes[0] if boxes else 0
        self._announce()
        self.update()

    def choose_part(self, part_id: PartId) -> None:
        """Choose a part of the hive that is shown."""
        for level, part in enumerate(self._hive.stack if self._hive else ()):
            if part.part.id == part_id:
                self._choose(level)

    @property
    def chosen(self) -> PartDay | None:
        """The chosen part."""
        return self._hive.stack[self._at] if self._hive and self._hive.stack else None

    def rects(self) -> list[QRectF]:
        """Where the parts are drawn, from the ground up."""
        if self._hive is None:
            return []
        kinds = [part.part.kind for part in self._hive.stack]
        area = QRectF(self.rect()).adjusted(20, 16, -20, -18)
        area.setWidth(min(area.width() * 0.45, 380))
        return part_rects(area, kinds)

    def level_at(self, y: float) -> int:
        """The level a part dropped at `y` would take: 0 on the ground."""
        return sum(rect.center().y() > y for rect in self.rects())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The parts with their words, the chosen one marked, the gap a drag would fill lit."""
        p = self._desk.palette
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rects = self.rects()
        if not rects or self._hive is None:
            return
        ground = max(rect.bottom() for rect in rects) + 3
        painter.setPen(QPen(QColor(p.edge), 2))
        painter.drawLine(QPointF(10, ground), QPointF(rects[0].right() + 30, ground))
        for level, (part, rect) in enumerate(zip(self._hive.stack, rects, strict=True)):
            chosen = level == self._at
            ink = QColor(p.focus if chosen else p.edge)
            fill = QColor(p.selection if chosen else p.board)
            paint_part(painter, rect, part.part.kind, QPen(ink, 2.2 if chosen else 1.4), fill)
            self._paint_words(painter, part, rect, chosen=chosen)
        if self._gap is not None:
            edges = [rects[0].bottom(), *(rect.top() for rect in rects)]
            y = edges[min(self._gap, len(edges) - 1)]
            painter.setPen(QPen(QColor(p.focus), 4))
            painter.drawLine(QPointF(rects[0].left() - 12, y), QPointF(rects[0].right() + 12, y))
        if self.hasFocus():
            painter.setPen(QPen(QColor(p.focus), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and Down choose, with Ctrl they move; Delete takes off; Enter opens a box."""
        part = self.chosen
        key = event.key()
        if part is None or self._hive is None:
            super().keyPressEvent(event)
            return
        step = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}.get(Qt.Key(key), 0)
        writes = not self._desk.book.read_only
        if step and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            target = self._at + step
            if writes and 0 <= target < len(self._hive.stack):
                self.moved.emit(part.part.id, target)
        elif step:
            self._choose(self._at + step)
        elif key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace} and writes:
            self.taken.emit(part.part.id)
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and part.part.kind in BOXES:
            self.opened.emit(part.part.id)
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Choose the part under the pointer."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        self._pressed = None
        for level, rect in enumerate(self.rects()):
            if rect.adjusted(-4, 0, self.width(), 0).contains(event.position()):
                self._choose(level)
                self._pressed = event.position()

    def mouseDoubleClickEvent(self, _event: QMouseEvent) -> None:
        """Open the box."""
        part = self.chosen
        if part is not None and part.part.kind in BOXES:
            self.opened.emit(part.part.id)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag the chosen part."""
        part = self.chosen
        if part is None or self._pressed is None or self._desk.book.read_only:
            return
        if _is_near(event.position(), self._pressed):
            return
        self._pressed = None
        drag = QDrag(self)
        content = QMimeData()
        content.setData(PART_MIME, str(part.part.id).encode("ascii"))
        drag.setMimeData(content)
        drag.setPixmap(_drag_picture(part.part.kind, QColor(self._desk.palette.ink)))
        drag.exec(Qt.DropAction.MoveAction)
        self._gap = None
        self.update()

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Parts and kinds of part may be dropped here."""
        if event.mimeData().hasFormat(PART_MIME) or event.mimeData().hasFormat(KIND_MIME):
            event.acceptProposedAction()

    def dragMoveEvent(self, event: QDragMoveEvent) -> None:
        """Light the gap the part would go into."""
        self._gap = self.level_at(event.position().y())
        event.acceptProposedAction()
        self.update()

    def dragLeaveEvent(self, _event: object) -> None:
        """No gap is lit any more."""
        self._gap = None
        self.update()

    def dropEvent(self, event: QDropEvent) -> None:
        """A part of the stack is moved, a new kind is put on; a part dropped far aside is taken off."""
        level = self.level_at(event.position().y())
        self._gap = None
        content = event.mimeData()
        if content.hasFormat(KIND_MIME):
            kind = PartKind(bytes(content.data(KIND_MIME).data()).decode("ascii"))
            # Asked once the drag is over: a dialog within it would hold the system's own drag up.
            QTimer.singleShot(0, self, lambda: self.kind_dropped.emit(kind, level))
        elif content.hasFormat(PART_MIME):
            part_id = PartId(int(bytes(content.data(PART_MIME).data()).decode("ascii")))
            self._drop_part(part_id, level, event.position())
        event.acceptProposedAction()
        self.update()

    def _drop_part(self, part_id: PartId, level: int, where: QPointF) -> None:
        rects = self.rects()
        if rects and where.x() > rects[0].right() + rects[0].width():
            self.taken.emit(part_id)
            return
        if level > self._at:
            level -= 1
        if level != self._at:
            self.moved.emit(part_id, level)

    def _choose(self, level: int) -> None:
        if self._hive is not None and 0 <= level < len(self._hive.stack):
            self._at = level
            self._announce()
            self.update()

    def _announce(self) -> None:
        part = self.chosen
        self.setAccessibleName(say("Stack: {part}", part=part_words(part)) if part else say("Stack"))

    def _paint_words(self, painter: QPainter, part: PartDay, rect: QRectF, *, chosen: bool) -> None:
        p = self._desk.palette
        painter.setFont(theme.sans(14, bold=chosen))
        painter.setPen(QColor(p.ink))
        left = max(each.right() for each in self.rects()) + 24
        where = QRectF(left, rect.center().y() - 10, self.width() - left - 8, 20)
        since = say("since {day}", day=date_words(part.stay.since, "day_year"))
        words = painter.fontMetrics().elidedText(
            part_words(part), Qt.TextElideMode.ElideRight, int(where.width() * 0.7)
        )
        painter.drawText(where, Qt.AlignmentFlag.AlignVCenter, words)
        left = painter.fontMetrics().horizontalAdvance(words) + 12
        painter.setFont(theme.sans(12))
        painter.setPen(QColor(p.second_ink))
        painter.drawText(where.adjusted(left, 0, 0, 0), Qt.AlignmentFlag.AlignVCenter, since)


class _BoxFields:
    """What is asked of a box beyond its day and name."""

    def __init__(self, form: Form, desk: Desk, hive: HiveDay, kind: PartKind) -> None:
        frame_type, count = _usual_frames(hive, kind)
        self._kind = form.add(Choice(say("Frames"), frame_options(desk.book), frame_type))
        self._kind.combo.setMaximumWidth(330)
        self._places = form.add(NumberLine(say("Frame places"), count))
        options: list[tuple[str, object]] = [
            (say("frames of foundation"), Content.FOUNDATION),
            (say("drawn comb"), Content.EMPTY),
            (say("no frames yet"), None),
        ]
        self._holds = form.add(Choice(say("They hold"), options))

    @property
    def frame_type(self) -> str:
        return str(self._kind.value)

    @property
    def places(self) -> int:
        return self._places.whole or 0

    @property
    def holds(self) -> Content | None:
        return self._holds.value if isinstance(self._holds.value, Content) else None


def _usual_frames(hive: HiveDay, kind: PartKind) -> tuple[str, int]:
    """The frame type and count a new box of this hive usually has: as one it has, else as its kind says."""
    for part in reversed(hive.stack):
        if part.part.kind is kind and part.part.frame_type:
            return part.part.frame_type, part.part.places
    usual = HIVE_KINDS.get(hive.hive.hive_kind)
    if usual is not None and kind is PartKind.SUPER:
        return usual.super_frame or usual.brood_frame, usual.super_frames or usual.brood_frames
    if usual is not None:
        return usual.brood_frame, usual.brood_frames
    first = hive.boxes[0].part
    return first.frame_type, first.places


def _is_near(one: QPointF, other: QPointF) -> bool:
    """Whether a hand that only clicks may have slipped from one to the other."""
    return (one - other).manhattanLength() < QApplication.startDragDistance()


def _drag_picture(kind: PartKind, ink: QColor) -> QPixmap:
    height = max(6, int(PART_HEIGHTS[kind] * 4))
    made = QPixmap(100, height + 4)
    made.fill(Qt.GlobalColor.transparent)
    painter = QPainter(made)
    paint_part(painter, QRectF(4, 2, 92, height), kind, QPen(ink, 1.5), QColor(255, 255, 255, 150))
    painter.end()
    return made
