"""Pauses: the place is remembered, and the file itself holds what was noted."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QObject
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Colony
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.memory import Memory
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.while_idle import WhileIdle
from beeworkbook.workbook.edits.place import RenameRecord
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, make_orchard


class Waiting(QObject):
    """A desk, and what is seen to while it rests."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.book = make_orchard(path)
        self.desk = Desk(self.book)
        self.remembered = 0
        self.busy = False
        self.idle = WhileIdle(self.desk, self.remember, lambda: self.busy, self)

    def remember(self) -> None:
        self.remembered += 1

    def name_in_a_copy(self) -> str:
        """What the first colony is called in a copy of the one file, made as it lies."""
        copy = self.book.path.with_name("copied.beebook")
        shutil.copyfile(self.book.path, copy)
        with Workbook.open(copy, today=DAY, read_only=True) as copied:
            name = copied.read.find(Colony)[0].name
        copy.unlink()
        return name


@pytest.fixture
def waiting(tmp_path: Path, qtbot: QtBot) -> Iterator[Waiting]:  # noqa: ARG001  # timers need a program
    made = Waiting(tmp_path / "idle.beebook")
    made.idle.settle()
    made.idle.stop()
    yield made
    made.idle.stop()
    made.desk.close()
    made.book.close()


def rename(waiting: Waiting, name: str) -> None:
    waiting.desk.do(RenameRecord(Colony, waiting.book.read.find(Colony)[0].id, name))


def test_after_a_pause_a_copy_of_the_one_file_is_whole(waiting: Waiting, qtbot: QtBot) -> None:
    waiting.idle.settling.setInterval(5)
    rename(waiting, "Plum Tree")
    assert waiting.name_in_a_copy() == "Pear Tree"
    qtbot.waitUntil(lambda: waiting.name_in_a_copy() == "Plum Tree")
    assert not waiting.idle.settling.isActive()


def test_while_a_stroke_is_made_the_file_waits(waiting: Waiting) -> None:
    rename(waiting, "Plum Tree")
    waiting.busy = True
    waiting.idle.settle()
    assert waiting.idle.settling.isActive()
    assert waiting.name_in_a_copy() == "Pear Tree"
    waiting.busy = False
    waiting.idle.settle()
    assert waiting.name_in_a_copy() == "Plum Tree"


def test_leafing_on_is_remembered_once_the_keeper_rests(waiting: Waiting, qtbot: QtBot) -> None:
    waiting.idle.remembering.setInterval(30)
    for colony in waiting.book.read.find(Colony):
        waiting.desk.go(colony_id=colony.id)
    assert waiting.remembered == 0
    qtbot.waitUntil(lambda: waiting.remembered == 1)


def test_where_the_keeper_is_outlives_a_window_that_was_killed(
    window: MainWindow, memory: Memory, qtbot: QtBot
) -> None:
    """Nothing closes the window here: what is kept must be in the memory's own file by then."""
    desk = window.desk
    gate = next(colony for colony in desk.book.read.find(Colony) if colony.name == "Gate")
    window.while_idle.remembering.setInterval(5)
    desk.go(colony_id=gate.id)
    kept = memory._path
    qtbot.waitUntil(lambda: not window.while_idle.remembering.isActive())
    held = Memory(kept).get("spots")[str(desk.book.path)]
    assert (held["colony_id"], held["view"]) == (gate.id, desk.spot.view.value)


def test_what_the_disk_refuses_is_tried_again_and_stops_nobody(
    waiting: Waiting, monkeypatch: pytest.MonkeyPatch
) -> None:
    from beeworkbook.store.errors import DiskFullError

    def refuse() -> None:
        raise DiskFullError(waiting.book.path)

    rename(waiting, "Plum Tree")
    monkeypatch.setattr(waiting.book._base, "settle", refuse)
    waiting.idle.settle()
    monkeypatch.undo()
    waiting.idle.settle()
    assert waiting.name_in_a_copy() == "Plum Tree"
