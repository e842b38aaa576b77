"""Days: what is due across the apiaries, by day, and why.

Opening its page does nothing yet: what is noted there ticks it off, or the keeper's word that it is done.
Any can be moved or dropped.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.colony.records import (
    Apiary,
    Colony,
    Due,
    DueId,
    DueKind,
    Stand,
    Visit,
)
from beeworkbook.qt.desk import Desk, View
from beeworkbook.window.dialogs.form import DayLine, Form
from beeworkbook.words import date_words, say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.dues import DoDue, DropDue, MoveDue

_WITHOUT_PAGE: Final = frozenset({DueKind.BRING, DueKind.LEAVE_SHUT})
"""What is not done at the hive, so that no page need be opened for it."""
_LEFTMOST: Final = 9
_ARROWS: Final = frozenset({Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right})


@dataclass(frozen=True)
class DueLine:
    """One line of the Days."""

    due: Due
    where: str
    colony: str
    overdue: bool


class _LineButton(QPushButton):
    """A button of a line; the arrows go along the lines and are not its own."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave the arrows to the Days."""
        if event.key() in _ARROWS:
            event.ignore()
        else:
            super().keyPressEvent(event)


def day_words(day: date, today: date) -> str:
    """A day as the Days head it: today, tomorrow, or the day itself."""
    if day == today:
        return say("Today, {day}", day=date_words(day, "weekday"))
    if day == today + timedelta(days=1):
        return say("Tomorrow, {day}", day=date_words(day, "weekday"))
    return date_words(day, "weekday" if day.year == today.year else "weekday_year")


class DaysView(QScrollArea):
    """All open dues of the workbook under the day they fall on."""

    def __init__(self, desk: Desk) -> None:
        """The Days of the desk's book."""
        super().__init__()
        self._desk = desk
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(say("Days"))
        self.page_buttons: dict[DueId, QPushButton] = {}
        self.do_buttons: dict[DueId, QPushButton] = {}
        self._buttons: list[tuple[QPushButton, ...]] = []
        """By line, from the right to the left, since not every due has a page to open."""
        desk.book_changed.connect(self._changed)
        self.refill()

    def lines(self) -> list[DueLine]:
        """What is due, the oldest first."""
        read, today = self._desk.book.read, self._desk.today
        made = []
        for due in sorted(read.dues(), key=lambda due: (due.day, due.id)):
            colony = read.get(Colony, due.colony_id) if due.colony_id else None
            home = read.home(due.colony_id, today) if due.colony_id else None
            stand = read.get(Stand, home.stand_id) if home else None
            apiary_id = stand.apiary_id if stand else due.apiary_id
            apiary = read.get(Apiary, apiary_id) if apiary_id else None
            last = due.until or due.day
            made.append(
                DueLine(due, apiary.name if apiary else "", colony.name if colony else "", last < today)
            )
        return made

    def refill(self) -> None:
        """Show the book's dues anew."""
        held = self._in_hand()
        height = self.verticalScrollBar().value()
        page = QWidget()
        page.setObjectName("ground")
        column = QVBoxLayout(page)
        column.setContentsMargins(16, 12, 16, 16)
        column.setSpacing(6)
        head = QLabel(say("Days"))
        head.setObjectName("name")
        column.addWidget(head)
        self.page_buttons, self.do_buttons = {}, {}
        self._buttons = []
        lines = self.lines()
        if not lines:
            column.addWidget(
                QLabel(say("Nothing is due. A visit's next day and an arrival's plan come to stand here."))
            )
        overdue = [line for line in lines if line.overdue]
        if overdue:
            self._add_day(column, say("Over"), overdue, overdue=True)
        rest = [line for line in lines if not line.overdue]
        for day in sorted({max(line.due.day, self._desk.today) for line in rest}):
            that_day = [line for line in rest if max(line.due.day, self._desk.today) == day]
            self._add_day(column, day_words(day, self._desk.today), that_day)
        column.addStretch(1)
        before = self.takeWidget()
        self.setWidget(page)
        if before is not None:
            # Not at once: one of its buttons may be what is being pressed.
            before.hide()
            before.deleteLater()
        self.verticalScrollBar().setValue(height)
        if held is not None:
            self._put_hand(*held)

    def _in_hand(self) -> tuple[int, int] | None:
        """The line of the button that has the keyboard, and its column counted from the right."""
        for row, buttons in enumerate(self._buttons):
            for at, button in enumerate(buttons):
                if button.hasFocus():
                    return row, at
        return None

    def _put_hand(self, row: int, at: int) -> None:
        if self._buttons:
            buttons = self._buttons[min(row, len(self._buttons) - 1)]
            button = buttons[min(at, len(buttons) - 1)]
            button.setFocus(Qt.FocusReason.OtherFocusReason)
            self.ensureWidgetVisible(button)
        else:
            self.setFocus(Qt.FocusReason.OtherFocusReason)

    def take_focus(self) -> None:
        """Put the keyboard on the first due."""
        self._put_hand(0, _LEFTMOST)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go along the dues and what can be done with one."""
        step = {Qt.Key.Key_Down: (1, 0), Qt.Key.Key_Up: (-1, 0), Qt.Key.Key_Right: (0, -1)}
        step[Qt.Key.Key_Left] = (0, 1)
        by = step.get(Qt.Key(event.key()))
        held = self._in_hand()
        if by is None:
            super().keyPressEvent(event)
        elif held is not None:
            row, at = held[0] + by[0], held[1] + by[1]
            if 0 <= row < len(self._buttons) and at >= 0:
                self._put_hand(row, at)

    # --- doing ------------------------------------------------------------------------------------

    def open_page(self, due: Due) -> None:
        """Go to the colony's line of today; nothing is noted and nothing ticked off by that."""
        self._desk.go(colony_id=due.colony_id, day=self._desk.today, view=View.ROUND)

    def do_due(self, due: Due) -> None:
        """The keeper says that it is done; undo brings it back."""
        self._desk.do(DoDue(due.id), source=self)

    def move_due(self, due: Due) -> None:
        """Another day."""
        form = Form(self, say("Another day"), say("Move it"), due.reason)
        day = form.add(DayLine(say("Day"), due.day, self._desk.today, ahead=True))
        form.ask(lambda: self._desk.book.do(MoveDue(due.id, day.day), source=self))

    def drop_due(self, due: Due) -> None:
        """It will not be done; undo brings it back."""
        self._desk.do(DropDue(due.id), source=self)

    # --- building ---------------------------------------------------------------------------------

    def _add_day(
        self, column: QVBoxLayout, words: str, lines: list[DueLine], *, overdue: bool = False
    ) -> None:
        head = QLabel(words)
        head.setObjectName("overduehead" if overdue else "head")
        column.addSpacing(8)
        column.addWidget(head)
        rule = QFrame()
        rule.setObjectName("rule")
        column.addWidget(rule)
        grid = QGridLayout()
        grid.setHorizontalSpacing(14)
        grid.setVerticalSpacing(4)
        grid.setColumnMinimumWidth(0, 150)
        grid.setColumnStretch(1, 1)
        for row, line in enumerate(lines):
            self._add_line(grid, row, line)
        column.addLayout(grid)

    def _add_line(self, grid: QGridLayout, row: int, line: DueLine) -> None:
        due = line.due
        who = QLabel(line.colony or line.where)
        who.setObjectName("strong")
        reason = due.reason
        if due.until is not None:
            reason = say("{reason} (till {day})", reason=reason, day=date_words(due.until, "weekday"))
        elif line.overdue:
            reason = say("{reason} (was {day})", reason=reason, day=date_words(due.day, "weekday"))
        why = QLabel(f"{reason}   {line.where}" if line.colony else reason)
        why.setWordWrap(True)
        page = _LineButton(say("Open the page"))
        page.setToolTip(say("Go to the line of today; what is noted there ticks this off"))
        page.setAccessibleName(say("{what}: {who}, {why}", what=page.text(), who=who.text(), why=reason))
        page.setAutoDefault(True)
        page.clicked.connect(lambda: self.open_page(due))
        page.setEnabled(due.colony_id is not None and due.kind not in _WITHOUT_PAGE)
        done = _LineButton(say("Done"))
        done.setToolTip(say("It is done, whatever was noted; undo brings it back"))
        done.setAccessibleName(say("{what}: {who}, {why}", what=done.text(), who=who.text(), why=reason))
        done.setAutoDefault(True)
        done.clicked.connect(lambda: self.do_due(due))
        move = _LineButton(say("Another day…"))
        move.setObjectName("quiet")
        move.setToolTip(say("Move it to another day"))
        move.setAccessibleName(say("Another day for {who}", who=who.text()))
        move.clicked.connect(lambda: self.move_due(due))
        drop = _LineButton(say("Drop"))
        drop.setObjectName("quiet")
        drop.setToolTip(say("It will not be done; undo brings it back"))
        drop.setAccessibleName(say("Drop: {who}, {why}", who=who.text(), why=reason))
        drop.clicked.connect(lambda: self.drop_due(due))
        if self._desk.book.read_only:
            for button in (done, move, drop):
                button.setEnabled(False)
        for at, widget in enumerate((who, why, page, done, move, drop)):
            grid.addWidget(widget, row, at)
        page.setVisible(page.isEnabled())
        self.page_buttons[due.id], self.do_buttons[due.id] = page, done
        self._buttons.append((drop, move, done, page) if page.isEnabled() else (drop, move, done))

    def _changed(self, changes: Changes) -> None:
        if changes.everything or any(changes.touches(kind) for kind in (Due, Colony, Apiary, Stand, Visit)):
            self.refill()
