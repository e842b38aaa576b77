"""The one line editor of a round, moved from field to field; it knows keys, not colonies.

A key that is a whole answer moves on by itself while the field is fresh; a Tab pressed after it out of habit
does not skip the field it led to. Backspace in an empty field goes
back to the one before, to type more to an answer that moved on too soon.
"""

from typing import Final

from PySide6.QtCore import QEvent, Qt, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QLineEdit, QWidget

from beeworkbook.rounds.walk import Step

_KEPT_OPEN: Final = frozenset(
    {
        Qt.FocusReason.PopupFocusReason,
        Qt.FocusReason.ActiveWindowFocusReason,
        Qt.FocusReason.MenuBarFocusReason,
    }
)
_HABIT_MS: Final = 600
"""How soon after an answer that moved on a Tab is still meant for it. Chosen by hand, no source."""


class FieldEditor(QLineEdit):
    """A field being typed."""

    stepped = Signal(object)
    """A Step out of the field by Tab, Enter, an arrow, or an answer of one key."""
    put_back = Signal()
    """Escape: the field as it was."""
    went_deeper = Signal()
    """Ctrl+Enter: from the line down into its box."""
    went_back = Signal()
    """Backspace in an empty field."""
    was_left = Signal(bool)
    """The keyboard went elsewhere; True if the field is only covered for a while."""

    def __init__(self, parent: QWidget) -> None:
        """An editor without a field yet."""
        super().__init__(parent)
        self._one_keys: frozenset[str] = frozenset()
        self._fresh = True
        self._loaded = ""
        self._just_moved = QTimer(self)
        self._just_moved.setSingleShot(True)
        self._just_moved.setInterval(_HABIT_MS)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.setMaxLength(2000)
        self.textEdited.connect(self._edited)

    def load(self, text: str, one_keys: frozenset[str], *, at_end: bool = False) -> None:
        """Show a field's text, chosen as a whole so that typing replaces it, or with the cursor behind it."""
        self._just_moved.stop()
        self._one_keys = one_keys
        self._loaded = text
        self.setText(text)
        self._fresh = not at_end
        if at_end:
            self.end(False)
        else:
            self.selectAll()

    @property
    def touched(self) -> bool:
        """Whether the text is not what was loaded."""
        return self.text() != self._loaded

    def reset(self) -> None:
        """The text as it was loaded."""
        self.load(self._loaded, self._one_keys)

    def event(self, event: QEvent) -> bool:
        """Tab steps through the line; undo is the field's own only while something was typed into it."""
        if isinstance(event, QKeyEvent):
            if event.type() == QEvent.Type.KeyPress and event.key() in {Qt.Key.Key_Tab, Qt.Key.Key_Backtab}:
                back = (
                    event.key() == Qt.Key.Key_Backtab or event.modifiers() & Qt.KeyboardModifier.ShiftModifier
                )
                by_habit = self._just_moved.isActive() and not back
                self._just_moved.stop()
                if not by_habit:
                    self.stepped.emit(Step.BACK if back else Step.ON)
                return True
            if event.type() == QEvent.Type.ShortcutOverride and not self.touched and _is_history(event):
                event.ignore()
                return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter ends the line, the upright arrows go to the lines above and below, Escape puts back."""
        key, control = event.key(), event.modifiers() & Qt.KeyboardModifier.ControlModifier
        if key in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            if control:
                self.went_deeper.emit()
            else:
                self.stepped.emit(Step.NEXT_COLONY)
        elif key in {Qt.Key.Key_Up, Qt.Key.Key_Down} and not control:
            self.stepped.emit(Step.UP if key == Qt.Key.Key_Up else Step.DOWN)
        elif key == Qt.Key.Key_Escape:
            self.put_back.emit()
        elif key == Qt.Key.Key_Backspace and not self.text() and self._fresh:
            self.went_back.emit()
        elif _is_history(event) and not self.touched:
            event.ignore()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """What was typed is finished when the keyboard goes elsewhere."""
        super().focusOutEvent(event)
        self._just_moved.stop()
        self.was_left.emit(event.reason() in _KEPT_OPEN)

    def _edited(self, text: str) -> None:
        self._just_moved.stop()
        fresh, self._fresh = self._fresh, False
        if fresh and text.casefold() in self._one_keys:
            self.stepped.emit(Step.ON)
            if self._fresh:  # it led to another field, and was not refused
                self._just_moved.start()


def _is_history(event: QKeyEvent) -> bool:
    return event.matches(QKeySequence.StandardKey.Undo) or event.matches(QKeySequence.StandardKey.Redo)
