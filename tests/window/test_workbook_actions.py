"""What the Workbook menu does, on real files in a folder of its own."""

import csv
import json
import sqlite3
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QMessageBox, QWidget

from beeworkbook.colony.records import Colony
from beeworkbook.qt.desk import View
from beeworkbook.store.copies import CopyKind
from beeworkbook.window.dialogs.form import Form
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.window.workbook_actions import copy_words
from beeworkbook.workbook.edits.place import RenameRecord
from beeworkbook.workbook.workbook import Copy, Workbook
from tests.rounds.orchard import DAY, make_orchard
from tests.window.conftest import ALT, CTRL, SHIFT, Answerer, press, write


class Chosen:
    """The files a person chooses in the system's own dialogs, in order."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.files: list[Path | None] = []
        self.offered: list[str] = []
        monkeypatch.setattr(QFileDialog, "getSaveFileName", self._next)
        monkeypatch.setattr(QFileDialog, "getOpenFileName", self._next)

    def _next(self, _parent: object, _title: str, offered: str, kinds: str) -> tuple[str, str]:
        self.offered.append(offered)
        path = self.files.pop(0)
        return ("" if path is None else str(path)), kinds


@pytest.fixture
def chosen(monkeypatch: pytest.MonkeyPatch) -> Chosen:
    return Chosen(monkeypatch)


def test_a_new_workbook_asks_its_name_and_where(
    window: MainWindow, opener: Opener, answer: Answerer, chosen: Chosen, tmp_path: Path
) -> None:
    chosen.files = [tmp_path / "heath"]
    answer(lambda _form: (write("Heath bees"), press(Qt.Key.Key_Return)))
    press(Qt.Key.Key_B, CTRL | SHIFT)
    assert chosen.offered[0].endswith("Heath bees.beebook")
    assert opener.window is not None
    assert opener.window is not window
    assert opener.window.desk.book.path == tmp_path / "heath.beebook"
    assert opener.window.desk.spot.view is View.FIRST


def test_giving_up_at_either_question_leaves_all_as_it_was(
    window: MainWindow, opener: Opener, answer: Answerer, chosen: Chosen
) -> None:
    answer(lambda _form: press(Qt.Key.Key_Escape))
    press(Qt.Key.Key_B, CTRL | SHIFT)
    chosen.files = [None]
    answer(lambda _form: press(Qt.Key.Key_Return))
    press(Qt.Key.Key_B, CTRL | SHIFT)
    chosen.files = [None]
    press(Qt.Key.Key_O, CTRL)
    chosen.files = [None]
    press(Qt.Key.Key_I, CTRL)
    assert opener.window is window


def test_another_workbook_is_opened(
    window: MainWindow, opener: Opener, chosen: Chosen, tmp_path: Path
) -> None:
    other = tmp_path / "other.beebook"
    make_orchard(other, names=("Reed",)).close()
    chosen.files = [other]
    press(Qt.Key.Key_O, CTRL)
    assert opener.window is not None
    assert opener.window is not window
    assert opener.window.stands.cards()[0].name == "Reed"


def test_a_copy_is_written_and_never_over_a_file(
    window: MainWindow, answer: Answerer, chosen: Chosen, tmp_path: Path
) -> None:
    copy = tmp_path / "copy.beebook"
    chosen.files = [copy]
    press(Qt.Key.Key_S, CTRL | SHIFT)
    assert str(copy) in window.told_line.sentence
    held = copy.read_bytes()
    book = Workbook.open(copy, today=DAY)
    assert len(book.read.find(Colony)) == 4
    book.close()
    assert window.desk.book.path.name == "orchard.beebook"
    chosen.files = [copy]
    seen: list[str] = []
    answer(lambda box: seen.append(box.text()) if isinstance(box, QMessageBox) else None)
    press(Qt.Key.Key_S, CTRL | SHIFT)
    assert seen
    assert copy.read_bytes() == held


def test_restoring_lists_the_copies_in_words_and_goes_back(
    window: MainWindow, opener: Opener, answer: Answerer
) -> None:
    desk = window.desk
    assert desk.colony is not None
    desk.do(RenameRecord(Colony, desk.colony.id, "Plum Tree"))

    def choose(form: object) -> None:
        assert isinstance(form, Form)
        combo = form.fields[0].widget
        assert combo.itemText(0).startswith("of Sat 16 May 2026, at the first change, ")  # type: ignore[attr-defined]
        press(Qt.Key.Key_Return)

    answer(choose)
    press(Qt.Key.Key_R, CTRL | ALT)
    assert opener.window is not None
    assert opener.window.stands.cards()[0].name == "Pear Tree"


def test_without_a_copy_restoring_says_when_one_is_made(window: MainWindow) -> None:
    press(Qt.Key.Key_R, CTRL | ALT)
    assert "first change of a day" in window.told_line.sentence


def test_a_copy_in_words() -> None:
    path = Path("x")
    of_a_day = Copy(path, CopyKind.DAY, DAY, None, 81_000)
    assert copy_words(of_a_day) == "of Sat 16 May 2026, at the first change, 81 kB"
    of_a_form = Copy(path, CopyKind.FORM, None, 1, 10)
    assert copy_words(of_a_form) == "before the file was brought up from form 1, 1 kB"
    assert copy_words(Copy(path, CopyKind.BEFORE, None, None, 10)) == "before another copy was restored, 1 kB"


def test_everything_goes_out_and_comes_in_again(
    window: MainWindow, opener: Opener, chosen: Chosen, tmp_path: Path
) -> None:
    written, again = tmp_path / "all.json", tmp_path / "again.json"
    chosen.files = [written]
    press(Qt.Key.Key_E, CTRL)
    assert "Everything is written" in window.told_line.sentence
    assert json.loads(written.read_text(encoding="utf-8"))
    chosen.files = [written, tmp_path / "in.beebook"]
    press(Qt.Key.Key_I, CTRL)
    assert opener.window is not None
    assert opener.window.desk.book.path == tmp_path / "in.beebook"
    chosen.files = [again]
    press(Qt.Key.Key_E, CTRL)
    assert again.read_bytes() == written.read_bytes()


def test_hostile_input_is_refused_with_its_place_and_the_book_stays(
    window: MainWindow, opener: Opener, answer: Answerer, chosen: Chosen, tmp_path: Path
) -> None:
    bad = tmp_path / "bad.json"
    bad.write_text('{"format": "something else", "x": [[[[[[[[', encoding="utf-8")
    chosen.files = [bad, tmp_path / "in.beebook"]
    seen: list[str] = []
    answer(lambda box: seen.append(box.text()) if isinstance(box, QMessageBox) else None)
    press(Qt.Key.Key_I, CTRL)
    assert seen
    assert opener.window is window
    assert not (tmp_path / "in.beebook").exists()


def test_totals_go_out_as_a_table(window: MainWindow, chosen: Chosen, tmp_path: Path) -> None:
    table = tmp_path / "totals.csv"
    chosen.files = [table]
    press(Qt.Key.Key_E, CTRL | SHIFT)
    rows = list(csv.reader(table.read_text(encoding="utf-8").splitlines()))
    assert len(rows) == 1 + 8
    assert "The totals lie at" in window.told_line.sentence


def test_a_place_that_cannot_be_written_is_said(
    window: MainWindow, answer: Answerer, chosen: Chosen, tmp_path: Path
) -> None:
    seen: list[str] = []

    def read(box: QWidget) -> None:
        assert isinstance(box, QMessageBox)
        seen.append(box.text())

    chosen.files = [tmp_path / "nowhere" / "totals.csv"]
    answer(read)
    press(Qt.Key.Key_E, CTRL | SHIFT)
    chosen.files = [tmp_path / "nowhere" / "all.json"]
    answer(read)
    press(Qt.Key.Key_E, CTRL)
    assert len(seen) == 2
    assert window.desk.colony is not None


def test_the_check_finds_nothing_wrong_and_says_so(window: MainWindow) -> None:
    press(Qt.Key.Key_K, CTRL | ALT)
    assert window.told_line.sentence == "The check found nothing wrong."


def test_the_check_says_what_it_found(window: MainWindow, answer: Answerer) -> None:
    base = sqlite3.connect(window.desk.book.path)
    columns = [row[1] for row in base.execute("PRAGMA table_info(tally)")]
    counted = next(name for name in columns if not name.endswith("id") and name != "content")
    base.execute(f"UPDATE tally SET {counted} = {counted} + 1")
    base.commit()
    base.close()
    seen: list[str] = []
    answer(lambda box: seen.append(box.text()) if isinstance(box, QMessageBox) else None)
    press(Qt.Key.Key_K, CTRL | ALT)
    assert seen


def test_the_sample_opens_and_closing_keeps_everything(window: MainWindow, opener: Opener) -> None:
    press(Qt.Key.Key_O, CTRL | SHIFT)
    assert opener.window is not None
    assert opener.window is not window
    assert opener.window.desk.book.is_sample
    press(Qt.Key.Key_Q, CTRL)
    assert opener.window is None
