"""Closing with something that could not be kept: it is told, the way back leads there, or it is let go."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox, QWidget

from beeworkbook.colony.records import Question
from beeworkbook.qt.desk import View
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.rounds.walk import Spot
from beeworkbook.window.leaving import left_behind, may_leave
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.window.shell import Shell
from tests.window.conftest import Answerer, hand, press, write


def _round(window: MainWindow) -> RoundView:
    window.go_to(View.ROUND)
    view = window.face(View.ROUND)
    assert isinstance(view, RoundView)
    return view


def _refuse_one(window: MainWindow) -> Spot:
    """Type something into a field that it cannot take, twice, so that the hand may go on."""
    view = _round(window)
    spot = Spot(view.rows[0].colony.id, Question.SEAMS)
    view.sheet.go(spot)
    view.sheet.editor.clear()
    write("many")
    press(Qt.Key.Key_Tab, times=2)
    assert view.sheet.spot != spot
    return spot


def _click(dialog: QWidget, words: str) -> None:
    assert isinstance(dialog, QMessageBox)
    next(button for button in dialog.buttons() if button.text() == words).click()


def test_with_nothing_left_the_window_closes_without_a_word(window: MainWindow, shell: Shell) -> None:
    _round(window)
    assert left_behind(window) == ()
    assert may_leave(window)
    assert shell.close()


def test_a_refused_field_is_told_and_going_back_leads_to_it(
    window: MainWindow, shell: Shell, answer: Answerer
) -> None:
    spot = _refuse_one(window)
    window.go_to(View.BOX)
    told: list[str] = []

    def go_back(dialog: QWidget) -> None:
        assert isinstance(dialog, QMessageBox)
        told.append(dialog.informativeText())
        press(Qt.Key.Key_Escape, on=dialog)

    answer(go_back)
    assert not shell.close()
    assert told[0].startswith("Pear Tree, 16 May, seams: “many” – ")
    view = _round(window)
    assert view.sheet.spot == spot
    assert view.sheet.editor.text() == "many"
    assert shell.isVisible()


def test_closed_anyway_the_window_closes(window: MainWindow, shell: Shell, answer: Answerer) -> None:
    _refuse_one(window)
    answer(lambda dialog: _click(dialog, "Close anyway"))
    assert shell.close()
    assert answer.seen == ["Not everything is kept"]


def test_a_field_mended_since_is_no_longer_told(window: MainWindow) -> None:
    spot = _refuse_one(window)
    view = _round(window)
    view.sheet.go(spot)
    view.sheet.editor.clear()
    write("7")
    assert may_leave(window)
    assert view.untaken == ()


def test_a_comb_that_cannot_be_read_is_told_and_leads_back(window: MainWindow, answer: Answerer) -> None:
    window.go_to(View.BOX)
    write("s9")
    frame_id = window.desk.spot.frame_id
    window.desk.step_comb(1)
    window.go_to(View.DAYS)
    told: list[str] = []

    def go_back(dialog: QWidget) -> None:
        assert isinstance(dialog, QMessageBox)
        told.append(dialog.informativeText())
        _click(dialog, "Go back")

    answer(go_back)
    assert not may_leave(window)
    assert told == ["Pear Tree, 16 May, comb 1: “S9”"]
    assert (window.desk.spot.view, window.desk.spot.frame_id) == (View.BOX, frame_id)
    assert hand() is window.key_line.field
    assert window.key_line.field.text() == "S9"


@pytest.mark.parametrize("way", ["open", "create"])
def test_another_workbook_is_not_opened_over_what_could_not_be_kept(
    window: MainWindow, opener: Opener, answer: Answerer, tmp_path: Path, way: str
) -> None:
    _refuse_one(window)
    other = tmp_path / "other.beebook"
    answer(lambda dialog: _click(dialog, "Go back"))
    assert not (opener.open(other) if way == "open" else opener.create(other, "Other"))
    assert opener.window is window
    assert not other.exists()


def test_a_note_the_book_did_not_take_is_told(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    window.go_to(View.BOX)
    window.page.take_focus()
    monkeypatch.setattr(window.page.day, "_do", lambda _edit: False)
    write("quiet")
    assert [left.where for left in left_behind(window)] == ["the note"]
