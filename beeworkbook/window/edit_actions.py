"""Undo, redo, and other names."""

from PySide6.QtWidgets import QApplication

from beeworkbook.window.dialogs.naming import ask_names
from beeworkbook.window.field_keys import redo_in, undo_in
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import say


def undo(window: MainWindow) -> None:
    """Undo in the field being typed, else the last step of the book."""
    if undo_in(QApplication.focusWidget()):
        return
    label = window.desk.book.undo_label
    window.desk.undo()
    if label and window.desk.book.redo_label == label:
        window.tell(say("Taken back: {step}", step=label))


def redo(window: MainWindow) -> None:
    """Redo in the field being typed, else the step last taken back."""
    if redo_in(QApplication.focusWidget()):
        return
    label = window.desk.book.redo_label
    window.desk.redo()
    if label and window.desk.book.undo_label == label:
        window.tell(say("Done again: {step}", step=label))


def rename(window: MainWindow) -> None:
    """Other names for what is under the keeper's hand: colony, hive, stand, apiary, box, comb, queen."""
    ask_names(window, window.desk)
