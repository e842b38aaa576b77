"""Undo, redo and rename."""

from PySide6.QtWidgets import QApplication, QLineEdit, QPlainTextEdit

from beeworkbook.colony.records import Apiary, Colony, Hive, Stand
from beeworkbook.window.dialogs.form import Form, TextLine
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import say
from beeworkbook.workbook.edits.place import RenameRecord
from beeworkbook.workbook.edits.together import Together


def undo(window: MainWindow) -> None:
    """Undo in the field being typed, else the last step of the book."""
    field = QApplication.focusWidget()
    if (isinstance(field, QLineEdit) and field.isUndoAvailable()) or (
        isinstance(field, QPlainTextEdit) and field.document().isUndoAvailable()
    ):
        field.undo()
    else:
        label = window.desk.book.undo_label
        window.desk.undo()
        if label:
            window.tell(say("Taken back: {step}", step=label))


def redo(window: MainWindow) -> None:
    """Redo in the field being typed, else the step last taken back."""
    field = QApplication.focusWidget()
    if (isinstance(field, QLineEdit) and field.isRedoAvailable()) or (
        isinstance(field, QPlainTextEdit) and field.document().isRedoAvailable()
    ):
        field.redo()
    else:
        label = window.desk.book.redo_label
        window.desk.redo()
        if label:
            window.tell(say("Done again: {step}", step=label))


def rename(window: MainWindow) -> None:
    """Other names for the colony, its hive, its stand and the apiary."""
    desk = window.desk
    colony, apiary, hive = desk.colony, desk.apiary, desk.hive_day()
    stand = desk.book.read.get(Stand, hive.housing.stand_id) if hive else None
    held: list[tuple[str, type, int, str]] = []
    if colony:
        held.append((say("Colony"), Colony, colony.id, colony.name))
    if hive:
        held.append((say("Hive"), Hive, hive.hive.id, hive.hive.name))
    if stand:
        held.append((say("Stand"), Stand, stand.id, stand.name))
    if apiary:
        held.append((say("Apiary"), Apiary, apiary.id, apiary.name))
    if not held:
        return
    form = Form(window, say("Rename"), say("Rename"))
    fields = [form.add(TextLine(label, name)) for label, _kind, _id, name in held]
    if not form.ask():
        return
    edits = tuple(
        RenameRecord(kind, record_id, field.text)
        for (_label, kind, record_id, name), field in zip(held, fields, strict=True)
        if field.text and field.text != name
    )
    if edits:
        desk.do(Together(edits, say("rename")), source=window)
