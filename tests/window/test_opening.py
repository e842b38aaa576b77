"""Opening: what is asked, the last, the sample; each trouble its own sentence and the file untouched."""

import os
import shutil
import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtWidgets import QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Colony
from beeworkbook.qt.desk import View
from beeworkbook.qt.memory import Memory
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener, bring_forward, server_name
from beeworkbook.window.shell import Shell
from beeworkbook.window.told_line import ToldLine
from beeworkbook.workbook.edits.place import RenameRecord
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.sample_copy import SAMPLE_NAME, make_sample
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, make_orchard
from tests.window.conftest import Answerer

SECOND_START = """
import datetime, sys
from pathlib import Path
from beeworkbook.app import run
sys.exit(run(Path(sys.argv[1]), lambda: datetime.date(2026, 5, 16)))
"""


class Sentences:
    """Reads the sentence of a box and closes it."""

    def __init__(self, answer: Answerer) -> None:
        self.read: list[str] = []
        self._answer = answer

    def expect(self) -> None:
        self._answer(self._look)

    def _look(self, box: QWidget) -> None:
        assert isinstance(box, QMessageBox)
        self.read.append(box.text())
        box.accept()


@pytest.fixture
def sentences(answer: Answerer) -> Sentences:
    return Sentences(answer)


def test_the_first_start_opens_a_copy_of_the_sample_and_never_writes_over_it(
    opener: Opener, home: Path
) -> None:
    assert opener.begin(None)
    window = opener.window
    assert window is not None
    path = home / SAMPLE_NAME
    assert window.desk.book.path == path
    assert window.desk.book.is_sample
    assert "ample" in window.shell.windowTitle()
    colony = window.desk.colony
    assert colony is not None
    window.desk.do(_renamed(colony.id, "Mine now"))
    opener.put_away()
    assert opener.open_sample()
    assert opener.window is not None
    assert "Mine now" in {card.name for card in opener.window.stands.cards()}


def _renamed(colony_id: int, name: str) -> RenameRecord:
    return RenameRecord(Colony, colony_id, name)


def test_a_later_start_opens_the_last_workbook(opener: Opener, orchard: Path, memory: Memory) -> None:
    memory.put("last_workbook", str(orchard))
    assert opener.begin(None)
    assert opener.window is not None
    assert opener.window.desk.book.path == orchard


def test_a_last_workbook_that_is_gone_gives_way_to_the_sample(
    opener: Opener, tmp_path: Path, memory: Memory
) -> None:
    memory.put("last_workbook", str(tmp_path / "gone.beebook"))
    assert opener.begin(None)
    assert opener.window is not None
    assert opener.window.desk.book.is_sample


def _foreign(path: Path) -> None:
    base = sqlite3.connect(path)
    base.execute("CREATE TABLE something (x)")
    base.commit()
    base.close()


def _newer(path: Path) -> None:
    make_orchard(path).close()
    base = sqlite3.connect(path)
    base.execute("PRAGMA user_version = 9999")
    base.commit()
    base.close()


def _damaged(path: Path) -> None:
    make_orchard(path).close()
    held = bytearray(path.read_bytes())
    held[4096:40000] = b"\x5a" * (40000 - 4096)
    path.write_bytes(held)


def _no_database(path: Path) -> None:
    path.write_bytes(b"this is a letter to my aunt\n" * 200)


SPOILT = {"foreign": _foreign, "newer": _newer, "damaged": _damaged, "no database": _no_database}


def test_each_trouble_has_its_own_sentence_and_the_file_is_not_touched(
    opener: Opener, orchard: Path, tmp_path: Path, sentences: Sentences
) -> None:
    assert opener.begin(orchard)
    before = opener.window
    for name, spoil in SPOILT.items():
        path = tmp_path / f"{name}.beebook"
        spoil(path)
        held = path.read_bytes()
        sentences.expect()
        assert not opener.open(path), name
        assert path.read_bytes() == held, name
        assert not list(tmp_path.glob(f"{name}.beebook-*")), name
    sentences.expect()
    assert not opener.open(tmp_path / "not there.beebook")
    assert not (tmp_path / "not there.beebook").exists()
    assert len(set(sentences.read)) == len(SPOILT) + 1
    assert all(sentence.endswith(".") for sentence in sentences.read)
    assert opener.window is before, "the workbook that lay open still does"
    assert before is not None
    assert before.desk.colony is not None


def test_a_workbook_that_may_not_be_written_opens_for_looking(
    opener: Opener, orchard: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "access", lambda _path, mode: mode != os.W_OK)
    assert opener.begin(orchard)
    assert opener.window is not None
    assert opener.window.desk.book.read_only
    assert not opener.window.actions_by_name["add_colony"].isEnabled()
    opener.window.go_to(View.BOX)
    assert opener.window.desk.visit_to_write() is None
    assert "looking only" in opener.window.told_line.sentence


def test_a_network_drive_is_named_as_a_risk(
    opener: Opener, orchard: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Workbook, "warning", "This file lies on a network drive.")
    assert opener.begin(orchard)
    assert opener.window is not None
    assert opener.window.told_line.sentence == "This file lies on a network drive."


def test_opening_what_lies_open_changes_nothing(opener: Opener, orchard: Path) -> None:
    assert opener.begin(orchard)
    before = opener.window
    assert opener.open(orchard)
    assert opener.window is before


def test_another_workbook_takes_the_place_of_the_one_before(opener: Opener, orchard: Path) -> None:
    assert opener.begin(orchard)
    other = orchard.with_name("other.beebook")
    make_orchard(other, names=("Reed",)).close()
    assert opener.open(other)
    window = opener.window
    assert window is not None
    assert [card.name for card in window.stands.cards()] == ["Reed"]
    assert window.shell.centralWidget() is window
    bar = window.shell.menuBar()
    assert len(bar.actions()) == 9
    assert [line for line in bar.findChildren(ToldLine) if line.isVisible()] == [window.told_line]
    assert not orchard.with_name(orchard.name + "-wal").exists()
    Workbook.open(orchard, today=DAY).close()


def test_an_empty_workbook_is_made_where_nothing_is(
    opener: Opener, tmp_path: Path, orchard: Path, sentences: Sentences
) -> None:
    assert opener.create(tmp_path / "mine.beebook", "My bees")
    assert opener.window is not None
    assert opener.window.shell.windowTitle() == "My bees"
    held = orchard.read_bytes()
    sentences.expect()
    assert not opener.create(orchard, "Over it")
    assert orchard.read_bytes() == held
    assert opener.window.shell.windowTitle() == "My bees"


def test_a_copy_takes_the_place_of_the_workbook_and_can_be_taken_back(opener: Opener, orchard: Path) -> None:
    assert opener.begin(orchard)
    window = opener.window
    assert window is not None
    assert window.desk.colony is not None
    window.desk.do(_renamed(window.desk.colony.id, "Plum Tree"))
    copies = window.desk.book.copies()
    assert len(copies) == 1
    opener.restore(copies[0])
    again = opener.window
    assert again is not None
    assert again.desk.book.path == orchard
    assert again.stands.cards()[0].name == "Pear Tree"
    before = next(copy for copy in again.desk.book.copies() if copy.day is None and copy.form is None)
    opener.restore(before)
    assert opener.window is not None
    assert "Plum Tree" in {card.name for card in opener.window.stands.cards()}


def test_a_second_start_on_the_same_file_brings_the_first_window_forward(
    window: MainWindow, shell: Shell, qtbot: QtBot, home: Path
) -> None:
    shell.showMinimized()
    assert shell.isMinimized()
    path = window.desk.book.path
    started = subprocess.run(
        [sys.executable, "-c", SECOND_START, str(path)],
        env={**os.environ, "BEEWORKBOOK_HOME": str(home), "QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert (started.returncode, started.stderr) == (0, "")
    qtbot.waitUntil(lambda: not shell.isMinimized())
    assert window.desk.colony is not None


def test_a_file_held_by_a_program_that_does_not_answer_is_said_in_a_sentence(
    opener: Opener, orchard: Path, sentences: Sentences
) -> None:
    held = Workbook.open(orchard, today=DAY)
    sentences.expect()
    assert not opener.begin(orchard)
    held.close()
    assert len(sentences.read) == 1
    assert opener.begin(orchard)


def test_nobody_answers_for_a_file_that_is_not_open(orchard: Path) -> None:
    assert not bring_forward(orchard)
    assert server_name(orchard) == server_name(orchard.parent / "x" / ".." / orchard.name)
    assert server_name(orchard) != server_name(orchard.with_name("other.beebook"))


def test_the_sample_that_cannot_be_copied_is_said(
    opener: Opener, sentences: Sentences, monkeypatch: pytest.MonkeyPatch, home: Path
) -> None:
    def no_room(_path: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("beeworkbook.window.opening.make_sample", no_room)
    sentences.expect()
    assert not opener.begin(None)
    assert "No space left" in sentences.read[0]
    assert not (home / SAMPLE_NAME).exists()


def test_make_sample_refuses_to_write_over(tmp_path: Path) -> None:
    path = tmp_path / "new" / "sample.beebook"
    make_sample(path)
    shutil.copy(path, tmp_path / "before")
    with pytest.raises(RefusedError):
        make_sample(path)
    assert path.read_bytes() == (tmp_path / "before").read_bytes()


def test_the_window_closes_and_leaves_one_file(opener: Opener, orchard: Path, shell: Shell) -> None:
    assert opener.begin(orchard)
    assert opener.window is not None
    assert opener.window.desk.colony is not None
    opener.window.desk.do(_renamed(opener.window.desk.colony.id, "Plum Tree"))
    shell.close()
    assert opener.window is None
    assert not [path for path in orchard.parent.iterdir() if path.name.startswith("orchard.beebook-")]
