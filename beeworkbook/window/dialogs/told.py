"""One sentence in a small window: for what the world did, and for what nobody foresaw."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMessageBox, QPushButton, QWidget

from beeworkbook.places import log_path
from beeworkbook.words import say


def show_sentence(parent: QWidget | None, title: str, sentence: str) -> None:
    """Show a sentence and wait until it is read."""
    box = QMessageBox(QMessageBox.Icon.NoIcon, title, sentence, parent=parent)
    read = box.addButton(say("Go on"), QMessageBox.ButtonRole.AcceptRole)
    box.setDefaultButton(read)
    box.setEscapeButton(read)
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    box.exec()


def show_unforeseen(parent: QWidget | None, details: str) -> None:
    """An error of our own: a sentence, where the log lies, and a way to copy the details. Nothing is sent."""
    box = QMessageBox(QMessageBox.Icon.NoIcon, say("Something went wrong in the program"), "", parent=parent)
    box.setTextFormat(Qt.TextFormat.PlainText)
    box.setText(
        say(
            "The last step may not have been done; everything before it is kept. "
            "The details are in the log at {place}. Nothing is sent anywhere.",
            place=log_path(),
        )
    )
    copy = QPushButton(say("Copy details"))
    copy.setToolTip(say("Put the details on the clipboard, to send them to somebody yourself"))
    box.addButton(copy, QMessageBox.ButtonRole.ActionRole)
    go_on = box.addButton(say("Go on"), QMessageBox.ButtonRole.AcceptRole)
    box.setDefaultButton(go_on)
    box.setEscapeButton(go_on)
    copy.clicked.disconnect()
    copy.clicked.connect(lambda: QGuiApplication.clipboard().setText(details))
    box.exec()
