"""Undo in a field being typed is the field's own; in a field with nothing to take back it is the book's.

Qt gives a line of text every undo key, also when it has nothing to undo; then the key would be dead.
"""

from PySide6.QtCore import QEvent, QObject
from PySide6.QtGui import QKeyEvent, QKeySequence
from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit, QTextEdit, QWidget
from shiboken6 import isValid


def can_undo(field: QWidget | None) -> bool:
    """Whether a field has typing of its own to take back."""
    if isinstance(field, QLineEdit):
        return not field.isReadOnly() and field.isUndoAvailable()
    if isinstance(field, (QPlainTextEdit, QTextEdit)):
        return not field.isReadOnly() and field.document().isUndoAvailable()
    return False


def can_redo(field: QWidget | None) -> bool:
    """Whether a field has typing of its own to do again."""
    if isinstance(field, QLineEdit):
        return not field.isReadOnly() and field.isRedoAvailable()
    if isinstance(field, (QPlainTextEdit, QTextEdit)):
        return not field.isReadOnly() and field.document().isRedoAvailable()
    return False


def undo_in(field: QWidget | None) -> bool:
    """Take back the typing in a field; False if it has none of its own."""
    if not can_undo(field):
        return False
    if isinstance(field, (QLineEdit, QPlainTextEdit, QTextEdit)):
        field.undo()
    return True


def redo_in(field: QWidget | None) -> bool:
    """Do the typing in a field again; False if it has none of its own."""
    if not can_redo(field):
        return False
    if isinstance(field, (QLineEdit, QPlainTextEdit, QTextEdit)):
        field.redo()
    return True


class FieldKeys(QObject):
    """Watches the field that has the keyboard, and only that one."""

    def __init__(self, parent: QObject) -> None:
        """Watch the fields of the program from now on."""
        super().__init__(parent)
        self._watched: QWidget | None = None
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.focusChanged.connect(self._focus_changed)
            self._focus_changed(None, app.focusWidget())

    def _focus_changed(self, _before: QWidget | None, now: QWidget | None) -> None:
        if self._watched is not None and isValid(self._watched):
            self._watched.removeEventFilter(self)
        self._watched = None
        if isinstance(now, (QLineEdit, QPlainTextEdit, QTextEdit)):
            now.installEventFilter(self)
            self._watched = now

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the window have the undo and redo keys the field has no use for."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            field = watched if isinstance(watched, QWidget) else None
            undo = event.matches(QKeySequence.StandardKey.Undo) and not can_undo(field)
            redo = event.matches(QKeySequence.StandardKey.Redo) and not can_redo(field)
            if undo or redo:
                event.ignore()
                return True
        return super().eventFilter(watched, event)
