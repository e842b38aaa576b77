"""Days: what is due across the apiaries, by day, and why.

Doing one opens its visit; any can be moved or dropped.
"""

from dataclasses import dataclass
from datetime import date, timedelta

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
    VisitId,
)
from beeworkbook.qt.desk import Desk, View
from beeworkbook.window.dialogs.form import DayLine, Form
from beeworkbook.words import date_words, say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.dues import DoDue, DropDue, MoveDue
from beeworkbook.workbook.edits.visit import BeginVisit


@dataclass(frozen=True)
class DueLine:
    """One line of the Days."""

    due: Due
    where: str
    colony: str
    overdue: bool


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
        self.setAccessibleName(say("Days"))
        self.do_buttons: dict[DueId, QPushButton] = {}
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
        page = QWidget()
        page.setObjectName("ground")
        column = QVBoxLayout(page)
        column.setContentsMargins(16, 12, 16, 16)
        column.setSpacing(6)
        head = QLabel(say("Days"))
        head.setObjectName("name")
        column.addWidget(head)
        self.do_buttons = {}
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
        self.setWidget(page)

    def take_focus(self) -> None:
        """Put the keyboard on the first due."""
        first = next(iter(self.do_buttons.values()), None)
        (first or self).setFocus(Qt.FocusReason.OtherFocusReason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and down go along the dues."""
        if event.key() in {Qt.Key.Key_Down, Qt.Key.Key_Up}:
            buttons = list(self.do_buttons.values())
            at = next((i for i, button in enumerate(buttons) if button.hasFocus()), -1)
            target = at + (1 if event.key() == Qt.Key.Key_Down else -1)
            if 0 <= target < len(buttons):
                buttons[target].setFocus(Qt.FocusReason.TabFocusReason)
                self.ensureWidgetVisible(buttons[target])
            return
        super().keyPressEvent(event)

    # --- doing ------------------------------------------------------------------------------------

    def do_due(self, due: Due) -> None:
        """Doing one opens its visit: the visit of today, begun if there is none."""
        desk = self._desk
        if due.colony_id is None or due.kind in {DueKind.BRING, DueKind.LEAVE_SHUT}:
            desk.do(DoDue(due.id), source=self)
            return
        made = desk.do(BeginVisit(due.colony_id, desk.today), source=self)
        if made is None:
            return
        visit_id = VisitId(int(str(made)))
        desk.do(DoDue(due.id, visit_id), source=self)
        desk.go(colony_id=due.colony_id, visit_id=visit_id, view=View.ROUND)

    def move_due(self, due: Due) -> None:
        """Another day."""
        form = Form(self, say("Another day"), say("Move it"), due.reason)
        day = form.add(DayLine(say("Day"), due.day, self._desk.today, ahead=True))
        if form.ask():
            self._desk.do(MoveDue(due.id, day.day), source=self)

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
        done = QPushButton(
            say("Open the page") if due.colony_id and due.kind is not DueKind.LEAVE_SHUT else say("Done")
        )
        done.setToolTip(say("Do it now: the visit of today opens (Enter)"))
        done.setAccessibleName(say("{what}: {who}, {why}", what=done.text(), who=who.text(), why=reason))
        done.setAutoDefault(True)
        done.clicked.connect(lambda: self.do_due(due))
        move = QPushButton(say("Another day…"))
        move.setObjectName("quiet")
        move.setToolTip(say("Move it to another day"))
        move.setAccessibleName(say("Another day for {who}", who=who.text()))
        move.clicked.connect(lambda: self.move_due(due))
        drop = QPushButton(say("Drop"))
        drop.setObjectName("quiet")
        drop.setToolTip(say("It will not be done; undo brings it back"))
        drop.setAccessibleName(say("Drop: {who}, {why}", who=who.text(), why=reason))
        drop.clicked.connect(lambda: self.drop_due(due))
        if self._desk.book.read_only:
            for button in (done, move, drop):
                button.setEnabled(False)
        for at, widget in enumerate((who, why, done, move, drop)):
            grid.addWidget(widget, row, at)
        self.do_buttons[due.id] = done

    def _changed(self, changes: Changes) -> None:
        if changes.everything or any(changes.touches(kind) for kind in (Due, Colony, Apiary, Visit)):
            self.refill()
