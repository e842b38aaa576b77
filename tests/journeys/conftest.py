"""What a journey stands on: the window on a workbook, and fingers that count every key and click."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.qt import theme
from beeworkbook.qt.memory import Memory
from beeworkbook.qt.palette import LIGHT
from beeworkbook.window.shell import Shell
from tests.window.conftest import Answerer, hand


class Fingers:
    """Types where the keyboard is, shortcuts and all, and counts."""

    def __init__(self) -> None:
        self.count = 0

    def press(
        self, key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier, times: int = 1
    ) -> QWidget:
        target = hand()
        for _ in range(times):
            target = hand()
            QTest.keyClick(target, key, modifier)
            self.count += 1
        return target

    def type(self, text: str) -> None:
        """Type letters; a tab and a line's end are their keys."""
        for letter in text:
            if letter == "\t":
                self.press(Qt.Key.Key_Tab)
            elif letter == "\n":
                self.press(Qt.Key.Key_Return)
            else:
                QTest.keyClicks(hand(), letter)
                self.count += 1

    def draw(self, on: QWidget, places: list[QPoint]) -> None:
        """Press, move along the places, and let go: one click for the count."""
        left = Qt.MouseButton.LeftButton
        QTest.mousePress(on, left, pos=places[0])
        for place in places[1:]:
            QTest.mouseMove(on, place)
        QTest.mouseRelease(on, left, pos=places[-1])
        self.count += 1


@pytest.fixture
def fingers() -> Fingers:
    return Fingers()


@pytest.fixture
def memory(tmp_path: Path) -> Memory:
    return Memory(tmp_path / "settings.json")


@pytest.fixture
def shell(qtbot: QtBot, memory: Memory) -> Shell:
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    theme.load_fonts()
    theme.apply_theme(app, LIGHT)
    made = Shell(memory)
    qtbot.addWidget(made)
    made.setWindowState(Qt.WindowState.WindowNoState)
    made.resize(1366, 705)
    with qtbot.waitActive(made):
        made.show()
    return made


@pytest.fixture
def answer(qtbot: QtBot) -> Iterator[Answerer]:  # noqa: ARG001  # a timer needs a program
    made = Answerer()
    yield made
    made.finish()
