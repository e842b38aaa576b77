"""The pieces the Page is put together from: dues, events, soft notes, the keeper's own note.

They are told what to say and keep their labels, so that a stroke on the bench costs no new widgets.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QTextCursor,
)
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QPlainTextEdit, QSizePolicy, QVBoxLayout, QWidget

from beeworkbook.colony.phrases import titled
from beeworkbook.colony.sentences import PageRow
from beeworkbook.colony.soft_notes import SoftNote
from beeworkbook.qt.icons import State, paint_state
from beeworkbook.qt.palette import Palette
from beeworkbook.words import say

_PAUSE_MS = 300
"""Typing that rests so long is kept; it is kept at once when the field is left."""


def label(name: str, text: str = "", *, wrap: bool = True) -> QLabel:
    """A label in one of the book's ways of writing: name, head, small, note, strong."""
    made = QLabel(text)
    made.setObjectName(name)
    made.setWordWrap(wrap)
    made.setTextFormat(Qt.TextFormat.PlainText)
    return made


def rule(name: str = "rule") -> QFrame:
    """A thin line across."""
    made = QFrame()
    made.setObjectName(name)
    return made


@dataclass(frozen=True)
class Told:
    """One line of a list: a sign, what, and why small below it."""

    what: str
    why: str = ""
    state: State = State.PLAIN


class ToldList(QWidget):
    """Dues, events or soft notes under one another, each with its sign and its reason."""

    def __init__(self, palette: Palette, *, ruled: bool = True) -> None:
        """An empty list."""
        super().__init__()
        self._palette = palette
        self._ruled = ruled
        self._lines: tuple[Told, ...] | None = None
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(4)

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self._palette = palette
        held, self._lines = self._lines, None
        self.show_lines(held or ())

    def show_lines(self, lines: Iterable[Told]) -> None:
        """Show these lines; nothing is done if they are there."""
        wanted = tuple(lines)
        if wanted == self._lines:
            return
        self._lines = wanted
        while (item := self._column.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for line in wanted:
            if self._ruled:
                self._column.addWidget(rule())
            self._column.addWidget(
                _Line(line, self._palette, signed=self._ruled or line.state is not State.PLAIN)
            )
        self.setVisible(bool(wanted))

    def texts(self) -> list[tuple[str, str]]:
        """What stands in it."""
        return [(line.what, line.why) for line in self._lines or ()]


class _Line(QWidget):
    def __init__(self, line: Told, palette: Palette, *, signed: bool) -> None:
        super().__init__()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(6)
        grid.setVerticalSpacing(0)
        grid.setColumnStretch(1, 1)
        what = label("value", line.what)
        if signed:
            grid.addWidget(_Sign(line.state, palette), 0, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(what, 0, 1)
        if line.why:
            grid.addWidget(label("small", line.why), 1, 1)
        self.setAccessibleName(say("{what}: {why}", what=line.what, why=line.why) if line.why else line.what)


class _Sign(QWidget):
    """The sign of a state, or the room for one."""

    def __init__(self, state: State, palette: Palette) -> None:
        super().__init__()
        self._state = state
        self._colour = QColor(
            {State.OVERDUE: palette.propolis, State.SOON: palette.soon, State.DONE: palette.well}.get(
                state, palette.second_ink
            )
        )
        self.setFixedSize(11, 18)

    def sizeHint(self) -> QSize:
        """Small."""
        return QSize(11, 18)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Tick, triangle, dot or square."""
        painter = QPainter(self)
        paint_state(painter, QRectF(0, 4, 11, 11), self._state, self._colour)


def blanks_gathered(rows: Iterable[PageRow]) -> tuple[PageRow, ...]:
    """The rows with all that is blank in one, so that the note and the next day stay in sight below them."""
    kept = [row for row in rows if row.recorded or row.value != say("not recorded")]
    blank = [row for row in rows if row not in kept]
    if not blank:
        return tuple(kept)
    names = ", ".join(row.label[:1].lower() + row.label[1:] for row in blank)
    return (*kept, PageRow(titled(say("not recorded")), names, blank[0].target, recorded=False))


def note_lines(notes: Iterable[SoftNote]) -> tuple[Told, ...]:
    """Soft notes as lines of a list."""
    return tuple(Told(note.text, note.reason, State.SOON) for note in notes)


class NoteEdit(QPlainTextEdit):
    """The keeper's own words, kept while they are typed; as tall as they are long."""

    rested = Signal()
    """Typing rested, or the field was left: what stands there is to be kept."""

    _LEAST, _MOST = 58, 240

    def __init__(self) -> None:
        """An empty note."""
        super().__init__()
        self.setObjectName("note")
        self.setTabChangesFocus(True)
        self.setPlaceholderText(say("In your own words"))
        self.setAccessibleName(say("Note of this day"))
        self.setToolTip(say("Your own words about this day; kept while you type"))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._loading = False
        self.touched = False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_PAUSE_MS)
        self._timer.timeout.connect(self.rested)
        self.textChanged.connect(self._changed)

    def load(self, text: str) -> None:
        """What the book says; the cursor stays where it is if that is what stands here."""
        self._timer.stop()
        self.touched = False
        if text != self.text():  # a blank just typed at the end is not taken from under the hand
            self._loading = True
            self.setPlainText(text)
            self.moveCursor(QTextCursor.MoveOperation.End)
            self._loading = False
        self._fit()

    def text(self) -> str:
        """What is written, without blanks at its end."""
        return self.toPlainText().rstrip()

    def keep_now(self) -> None:
        """Ask to keep what was typed, if anything was."""
        self._timer.stop()
        if self.touched:
            self.rested.emit()

    def let_go(self) -> None:
        """What could not be kept is not asked to be kept again."""
        self._timer.stop()
        self.touched = False

    def event(self, event: QEvent) -> bool:
        """Undo is the field's own only while it has something to take back."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.ShortcutOverride:
            undo = event.matches(QKeySequence.StandardKey.Undo) and not self.document().isUndoAvailable()
            redo = event.matches(QKeySequence.StandardKey.Redo) and not self.document().isRedoAvailable()
            if undo or redo:
                event.ignore()
                return False
        return super().event(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Left, it is kept."""
        super().focusOutEvent(event)
        self.keep_now()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width breaks the lines elsewhere."""
        super().resizeEvent(event)
        if event.oldSize().width() != event.size().width():
            self._fit()

    def _changed(self) -> None:
        self._fit()
        if not self._loading:
            self.touched = True
            self._timer.start()

    def _fit(self) -> None:
        lines = self.document().size().height()
        height = int(lines * self.fontMetrics().lineSpacing()) + 26
        self.setFixedHeight(max(self._LEAST, min(self._MOST, height)))
