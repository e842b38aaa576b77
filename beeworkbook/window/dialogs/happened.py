"""What happened to a colony: every dated line of it, the latest first, to be changed or taken out."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.colony.feeding import write_feed, write_left
from beeworkbook.colony.hive import overlap
from beeworkbook.colony.records import Colony, Event, Feed, Housing, Part, PartKind, PartStay, Queen
from beeworkbook.colony.timeline import event_text
from beeworkbook.qt.desk import Desk
from beeworkbook.window.dialogs.event_form import EventForm
from beeworkbook.window.dialogs.feed_form import FeedForm
from beeworkbook.words import date_words, say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.events import RemoveEvent
from beeworkbook.workbook.edits.hive import part_words
from beeworkbook.workbook.edits.place import RemoveRecord


@dataclass(frozen=True)
class Happened:
    """One dated line."""

    day: date
    words: str
    record: Event | Feed | Part


_SHOWN_PARTS: Final = frozenset({PartKind.SUPER, PartKind.EXCLUDER})


def happened_to(desk: Desk, colony: Colony) -> tuple[Happened, ...]:
    """All dated lines of a colony, the latest first."""
    read = desk.book.read
    lines = [Happened(event.day, _event_words(desk, event), event) for event in read.events(colony.id)]
    lines += [Happened(feed.day, _feed_words(feed), feed) for feed in read.feeds(colony.id)]
    lines += _parts_put_on(desk, colony)
    return tuple(sorted(lines, key=lambda line: (line.day, line.record.id), reverse=True))


def _event_words(desk: Desk, event: Event) -> str:
    queen = desk.book.read.get(Queen, event.queen_id) if event.queen_id else None
    return event_text(event, queen)


def _parts_put_on(desk: Desk, colony: Colony) -> list[Happened]:
    """Supers and excluders put on and taken off while the colony lived there; the Stack changes them."""
    read = desk.book.read
    lines = []
    for home in read.find(Housing, colony_id=colony.id):
        for stay in _joined(read.find(PartStay, hive_id=home.hive_id)):
            part = read.get(Part, stay.part_id)
            if part is None or part.kind not in _SHOWN_PARTS or not overlap(stay, home):
                continue
            words = part_words(part.kind)
            if home.since <= stay.since:
                lines.append(Happened(stay.since, say("{part} put on", part=words), part))
            if stay.until is not None and (home.until is None or stay.until <= home.until):
                lines.append(Happened(stay.until, say("{part} taken off", part=words), part))
    return lines


def _joined(stays: Iterable[PartStay]) -> list[PartStay]:
    """Stays without those that a change of level cut in two: the part stood there all the time."""
    made: list[PartStay] = []
    for stay in sorted(stays, key=lambda stay: (stay.part_id, stay.since)):
        if made and (made[-1].part_id, made[-1].until) == (stay.part_id, stay.since):
            made[-1] = replace(made[-1], until=stay.until)
        else:
            made.append(stay)
    return made


def _feed_words(feed: Feed) -> str:
    words = say("fed {feed}", feed=write_feed(feed))
    if feed.left_day is None:
        return words
    left = say("{left} left on {day}", left=write_left(feed), day=date_words(feed.left_day, "day"))
    return say("{fed}, {left}", fed=words, left=left)


_TOLD: Final = (Event, Feed, PartStay, Queen)


class HappenedDialog(QDialog):
    """The dated lines of one colony. What is done here is undone by the same keys as everywhere."""

    def __init__(self, parent: QWidget | None, desk: Desk, colony: Colony) -> None:
        """The lines of a colony."""
        super().__init__(parent)
        self._desk, self._colony = desk, colony
        self._lines: tuple[Happened, ...] = ()
        self.setWindowTitle(say("What happened to {colony}", colony=colony.name))
        self.resize(600, 460)
        head = QLabel(self.windowTitle())
        head.setObjectName("head")
        self.list = QListWidget()
        self.list.setAccessibleName(say("Dated lines, the latest first"))
        self.list.setToolTip(say("Enter changes a line, Delete takes it out, Ctrl+Z brings it back"))
        self.list.itemDoubleClicked.connect(lambda _item: self.change())
        self.nothing = QLabel(say("Nothing is noted yet."))
        column = QVBoxLayout(self)
        column.setContentsMargins(22, 18, 22, 18)
        column.setSpacing(12)
        column.addWidget(head)
        column.addWidget(self.nothing)
        column.addWidget(self.list, 1)
        column.addLayout(self._buttons())
        desk.book_changed.connect(self._changed)
        self.refill()

    def _buttons(self) -> QHBoxLayout:
        row = QHBoxLayout()
        self.add_button = self._button(say("Something happened…"), say("Note a new line"), self.add_event)
        self.feed_button = self._button(say("Feed…"), say("Note feed given"), self.add_feed)
        self.change_button = self._button(say("Change…"), say("Change this line (Enter)"), self.change)
        self.remove_button = self._button(
            say("Take out"), say("It did not happen; undo brings it back (Delete)"), self.remove
        )
        self.close_button = self._button(say("Close"), say("Back to the book (Escape)"), self.accept)
        for button in (self.add_button, self.feed_button, self.change_button, self.remove_button):
            row.addWidget(button)
            button.setEnabled(not self._desk.book.read_only)
        row.addStretch(1)
        row.addWidget(self.close_button)
        return row

    def _button(self, words: str, tip: str, act: object) -> QPushButton:
        made = QPushButton(words)
        made.setToolTip(tip)
        made.setAutoDefault(False)
        made.clicked.connect(act)
        return made

    def refill(self) -> None:
        """Show the lines as they are now; the row in hand stays in hand."""
        at = self.list.currentRow()
        self._lines = happened_to(self._desk, self._colony)
        self.list.clear()
        for line in self._lines:
            day = date_words(line.day, "weekday_year")
            self.list.addItem(QListWidgetItem(say("{day}: {words}", day=day, words=line.words)))
        self.list.setCurrentRow(max(0, min(at, len(self._lines) - 1)))
        self.nothing.setVisible(not self._lines)
        for button in (self.change_button, self.remove_button):
            button.setEnabled(bool(self._lines) and not self._desk.book.read_only)

    @property
    def chosen(self) -> Event | Feed | Part | None:
        """The line in hand; of a super or an excluder, the part."""
        at = self.list.currentRow()
        return self._lines[at].record if 0 <= at < len(self._lines) else None

    # --- doing ------------------------------------------------------------------------------------

    def change(self) -> None:
        """Change the line in hand."""
        record = self.chosen
        if record is None or self._desk.book.read_only:
            return
        if isinstance(record, Part):
            self._lead_to_the_stack()
        elif isinstance(record, Feed):
            FeedForm(self, self._desk, self._colony, record).ask_and_keep()
        else:
            EventForm(self, self._desk, self._colony, record).ask_and_keep()

    def remove(self) -> None:
        """Take the line in hand out; undo brings it back."""
        record = self.chosen
        if record is None or self._desk.book.read_only:
            return
        if isinstance(record, Part):
            self._lead_to_the_stack()
            return
        edit = RemoveRecord(Feed, record.id) if isinstance(record, Feed) else RemoveEvent(record.id)
        self._desk.do(edit, source=self)

    def _lead_to_the_stack(self) -> None:
        self._desk.tell(say("What stands on the hive is put on and taken off in the Stack."))

    def add_event(self) -> None:
        """Note something new."""
        EventForm(self, self._desk, self._colony).ask_and_keep()

    def add_feed(self) -> None:
        """Note feed given."""
        FeedForm(self, self._desk, self._colony).ask_and_keep()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter changes, Delete takes out; undo and redo as everywhere."""
        if event.matches(QKeySequence.StandardKey.Undo):
            self._desk.undo()
        elif event.matches(QKeySequence.StandardKey.Redo):
            self._desk.redo()
        elif self.list.hasFocus() and event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.change()
        elif self.list.hasFocus() and event.key() == Qt.Key.Key_Delete:
            self.remove()
        elif event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            held = self.focusWidget()
            if isinstance(held, QPushButton):
                held.click()
        else:
            super().keyPressEvent(event)

    def _changed(self, changes: Changes) -> None:
        if changes.everything or any(changes.touches(kind) for kind in _TOLD):
            self.refill()
