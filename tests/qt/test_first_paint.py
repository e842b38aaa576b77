from PySide6.QtGui import QPaintEvent
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.qt import first_paint
from beeworkbook.qt.first_paint import when_painted


class Noting(QWidget):
    """A widget that notes its paintings in a list it shares."""

    def __init__(self, noted: list[str]) -> None:
        super().__init__()
        self.noted = noted

    def paintEvent(self, event: QPaintEvent) -> None:
        del event
        self.noted.append("painted")


def test_what_follows_comes_once_and_after_the_painting(qtbot: QtBot) -> None:
    noted: list[str] = []
    widget = Noting(noted)
    qtbot.addWidget(widget)
    when_painted(widget, lambda: noted.append("followed"))
    assert noted == []
    widget.show()
    qtbot.waitUntil(lambda: "followed" in noted)
    assert noted == ["painted", "followed"]
    widget.repaint()
    qtbot.wait(first_paint.MOST_MS + 50)
    assert noted.count("followed") == 1


def test_a_widget_that_is_never_painted_is_not_waited_for(qtbot: QtBot) -> None:
    noted: list[str] = []
    widget = Noting(noted)
    qtbot.addWidget(widget)
    when_painted(widget, lambda: noted.append("followed"))
    qtbot.waitUntil(lambda: noted == ["followed"])


def test_nothing_follows_a_widget_that_is_gone(qtbot: QtBot) -> None:
    noted: list[str] = []
    widget = Noting(noted)
    when_painted(widget, lambda: noted.append("followed"))
    widget.deleteLater()
    qtbot.wait(first_paint.MOST_MS + 50)
    assert noted == []
