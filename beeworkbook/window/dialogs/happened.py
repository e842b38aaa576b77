"""What happened to a colony: every dated line of it, the latest first, to be changed or taken out."""

from dataclasses import dataclass
from datetime import date

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
from beeworkbook.colony.records import Colony, Event, Feed
from beeworkbook.colony.timeline import event_text
from beeworkbook.qt.desk import Desk
from beeworkbook.window.dialogs.event_form import EventForm
from beeworkbook.window.dialogs.feed_form import FeedForm
from beeworkbook.words import date_words, say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.events import RemoveEvent
from beeworkbook.workbook.edits.place import RemoveRecord


@dataclass(frozen=True)
class Happened:
    """One dated line."""

    day: date
    words: str
    record: Event | Feed


def happened_to(desk: Desk, colony: Colony) -> tuple[Happened, ...]:
    """All dated lines of a colony, the latest first."""
    read = desk.book.read
    lines = [Happened(event.day, event_text(event), event) for event in read.events(colony.id)]
    lines += [Happened(feed.day, _feed_words(feed), feed) for feed in read.feeds(colony.id)]
    return tuple(sorted(lines, key=lambda line: (line.day, line.record.id), reverse=True))


def _feed_words(feed: Feed) -> str:
    words = say("fed {feed}", feed=write_feed(feed))
    if feed.left_day is None:
        return words
    left = say("{left} left on {day}", left=write_left(feed), day=date_words(feed.left_day, "day"))
    return say("{fed}, {left}", fed=words, left=left)


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
    def chosen(self) -> Event | Feed | None:
        """The line in hand."""
        at = self.list.currentRow()
        return self._lines[at].record if 0 <= at < len(self._lines) else None

    # --- doing ------------------------------------------------------------------------------------

    def change(self) -> None:
        """Change the line in hand."""
        record = self.chosen
        if record is None or self._desk.book.read_only:
            return
        if isinstance(record, Feed):
            FeedForm(self, self._desk, self._colony, record).ask_and_keep()
        else:
            EventForm(self, self._desk, self._colony, record).ask_and_keep()

    def remove(self) -> None:
        """Take the line in hand out; undo brings it back."""
        record = self.chosen
        if record is None or self._desk.book.read_only:
            return
        edit = RemoveRecord(Feed, record.id) if isinstance(record, Feed) else RemoveEvent(record.id)
        self._desk.do(edit, source=self)

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
        if changes.everything or changes.touches(Event) or changes.touches(Feed):
            self.refill()
