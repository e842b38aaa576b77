from PySide6.QtWidgets import QMainWindow
from pytestqt.qtbot import QtBot

from beeworkbook.window.told_line import TOLD_MS, ToldLine


def line_in_a_bar(qtbot: QtBot) -> tuple[QMainWindow, ToldLine]:
    window = QMainWindow()
    qtbot.addWidget(window)
    for name in ("One", "Two", "Three"):
        window.menuBar().addMenu(name)
    window.resize(900, 400)
    line = ToldLine(window.menuBar())
    with qtbot.waitExposed(window):
        window.show()
    return window, line


def test_it_takes_the_room_the_menus_leave_at_every_width(qtbot: QtBot) -> None:
    window, line = line_in_a_bar(qtbot)
    bar = window.menuBar()
    for width in (900, 500, 260, 1400):
        window.resize(width, 400)
        line.fit()
        assert line.geometry().right() == window.width() - 1
        assert line.x() > bar.actionGeometry(bar.actions()[-1]).right()
        assert line.height() >= bar.sizeHint().height()


def test_a_sentence_goes_after_a_while_and_the_time_of_keeping_stays(qtbot: QtBot) -> None:
    _window, line = line_in_a_bar(qtbot)
    line.say_kept("kept 17:04:12")
    line.tell("Taken back: rename")
    assert line.told.text() == "Taken back: rename"
    assert TOLD_MS >= 5000
    line._timer.setInterval(1)
    line._timer.start()
    qtbot.waitUntil(lambda: line.sentence == "")
    assert line.told.text() == ""
    assert line.kept.text() == "kept 17:04:12"
    assert line.kept.accessibleName() == "kept 17:04:12"


def test_what_does_not_fit_stands_in_the_tooltip(qtbot: QtBot) -> None:
    window, line = line_in_a_bar(qtbot)
    window.resize(420, 400)
    line.fit()
    sentence = "A sentence that is far too long for the room beside the menus of this narrow window."
    line.tell(sentence)
    qtbot.waitUntil(lambda: line.told.text().endswith("…"))
    assert line.told.toolTip() == sentence
