"""The bare window: it remembers its place, and may be kept from closing."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from beeworkbook.qt.memory import Memory
from beeworkbook.window.shell import LEAST, Shell


def make(qtbot: QtBot, path: Path) -> Shell:
    made = Shell(Memory(path))
    qtbot.addWidget(made)
    return made


def test_it_comes_back_where_it_was(qtbot: QtBot, tmp_path: Path) -> None:
    first = make(qtbot, tmp_path / "settings.json")
    first.setWindowState(Qt.WindowState.WindowNoState)
    first.resize(1111, 666)
    with qtbot.waitExposed(first):
        first.show()
    first.close()
    # The off-screen screen is narrower than the window, so only its height can come back whole.
    assert make(qtbot, tmp_path / "settings.json").height() == 666


def test_a_spoilt_memory_gives_the_usual_size(qtbot: QtBot, tmp_path: Path) -> None:
    path = tmp_path / "settings.json"
    Memory(path).put("geometry", "not base 64 of anything")
    assert make(qtbot, path).size().width() >= LEAST.width()
    Memory(path).put("geometry", 7)
    assert make(qtbot, path).size().width() >= LEAST.width()


def test_what_stands_in_it_may_ask_it_to_stay(qtbot: QtBot, tmp_path: Path) -> None:
    shell = make(qtbot, tmp_path / "settings.json")
    with qtbot.waitExposed(shell):
        shell.show()
    shell.on_close = lambda: False
    assert not shell.close()
    assert shell.isVisible()
    shell.on_close = lambda: True
    assert shell.close()


def test_bare_it_says_what_it_waits_for(qtbot: QtBot, tmp_path: Path) -> None:
    shell = make(qtbot, tmp_path / "settings.json")
    shell.menuBar().addMenu("One")
    shell.bare("No workbook lies open")
    middle = shell.centralWidget()
    assert isinstance(middle, QLabel)
    assert middle.text() == "No workbook lies open"
    assert shell.menuBar().actions() == []
