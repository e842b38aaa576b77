"""What the world did is a sentence; what nobody foresaw a sentence, the log's place and a way to copy it."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QMessageBox, QPushButton, QWidget

from beeworkbook.places import log_path
from beeworkbook.window.dialogs.told import show_sentence, show_unforeseen
from tests.window.conftest import Answerer, press


def test_a_sentence_is_read_and_closed_by_enter(answer: Answerer) -> None:
    def read(box: QWidget) -> None:
        assert isinstance(box, QMessageBox)
        assert box.text() == "The file <b>x</b> is not there."
        assert box.textFormat() is Qt.TextFormat.PlainText
        press(Qt.Key.Key_Return)
        assert not box.isVisible()

    answer(read)
    show_sentence(None, "Not opened", "The file <b>x</b> is not there.")


def test_the_details_go_to_the_clipboard_and_the_box_stays(answer: Answerer) -> None:
    def read(box: QWidget) -> None:
        assert isinstance(box, QMessageBox)
        assert str(log_path()) in box.text()
        assert "Nothing is sent anywhere" in box.text()
        copy = next(button for button in box.findChildren(QPushButton) if button.text() == "Copy details")
        copy.setFocus()
        press(Qt.Key.Key_Space)
        assert box.isVisible()
        assert QGuiApplication.clipboard().text() == "Traceback: everything"
        press(Qt.Key.Key_Escape)

    answer(read)
    show_unforeseen(None, "Traceback: everything")
