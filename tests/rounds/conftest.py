"""A round on a screen nobody sees."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.qt.desk import Desk, View
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import make_orchard


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Workbook]:
    made = make_orchard(tmp_path / "orchard.beebook")
    yield made
    made.close()


@pytest.fixture
def desk(book: Workbook, qtbot: QtBot) -> Iterator[Desk]:  # noqa: ARG001 - a desk is an object of Qt
    made = Desk(book)
    made.go(view=View.ROUND, day=book.today)
    yield made
    made.close()


@pytest.fixture
def view(desk: Desk, qtbot: QtBot) -> RoundView:
    made = RoundView(desk)
    made.resize(1090, 640)
    qtbot.addWidget(made)
    with qtbot.waitExposed(made):
        made.show()
    made.take_focus()
    return made


class Keys:
    """Types as a hand does, and counts the keys."""

    def __init__(self, view: RoundView) -> None:
        self.view = view
        self.count = 0

    def press(self, key: Qt.Key, modifier: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        QTest.keyClick(self.view.sheet.editor, key, modifier)
        self.count += 1

    def pause(self) -> None:
        """Wait until a Tab is no longer taken for a habit, as a hand does that reads the new field."""
        QTest.qWait(0)
        while self.view.sheet.editor._just_moved.isActive():
            QTest.qWait(20)

    def type(self, text: str) -> None:
        for letter in text:
            if letter == "\t":
                self.pause()
                self.press(Qt.Key.Key_Tab)
            elif letter == "\n":
                self.press(Qt.Key.Key_Return)
            else:
                QTest.keyClicks(self.view.sheet.editor, letter)
                self.count += 1


@pytest.fixture
def keys(view: RoundView) -> Keys:
    return Keys(view)
