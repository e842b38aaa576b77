"""The Page shows the right leaf, follows the desk, and has the keyboard when it is asked to."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Level, Question
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK
from beeworkbook.window.page import PageView
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import SetAnswer
from tests.rounds.orchard import DAY, LAST, make_orchard


@pytest.fixture
def desk(tmp_path: Path, qtbot: QtBot) -> Iterator[Desk]:
    del qtbot
    book = make_orchard(tmp_path / "orchard.beebook", ("Wall", "Gate"))
    made = Desk(book)
    made.go(view=View.BOX, day=DAY)
    yield made
    made.close()
    book.close()


@pytest.fixture
def page(desk: Desk, qtbot: QtBot) -> PageView:
    made = PageView(desk)
    qtbot.addWidget(made)
    made.setFixedWidth(276)
    made.resize(276, 500)
    with qtbot.waitExposed(made):
        made.show()
    return made


def test_beside_a_round_it_is_another_leaf(page: PageView, desk: Desk) -> None:
    assert page.day.isVisible()
    assert not page.round.isVisible()
    assert not page.levels.isVisible()
    desk.go(view=View.ROUND)
    assert page.round.isVisible()
    assert page.levels.isVisible()
    assert not page.day.isVisible()


def test_it_follows_the_desk_and_the_book(page: PageView, desk: Desk) -> None:
    desk.go(day=LAST)
    assert dict(page.day.table.texts())["Temper"] == "quiet"
    desk.do(SetAnswer(desk.spot.visit_id, Question.TEMPER, "l"))  # type: ignore[arg-type]
    assert dict(page.day.table.texts())["Temper"] == "lively"
    desk.go(view=View.ROUND)
    assert page.levels.level is Level.ONE_LINE


def test_how_far_the_look_went_is_said_by_a_click(page: PageView, desk: Desk) -> None:
    desk.go(view=View.ROUND)
    assert desk.visit is None
    QTest.mouseClick(page.levels.keys[Level.NOT_OPENED], Qt.MouseButton.LeftButton)
    assert desk.visit is not None
    assert desk.visit.level is Level.NOT_OPENED
    assert desk.visit.round_id is not None
    assert page.levels.level is Level.NOT_OPENED
    desk.undo()
    assert desk.visit is None
    assert page.levels.level is None


def test_a_hive_whose_combs_were_noted_was_opened(page: PageView, desk: Desk, qtbot: QtBot) -> None:
    desk.go(view=View.ROUND, day=LAST)
    visit, frame = desk.visit, desk.spot.frame_id
    assert visit is not None
    assert frame is not None
    desk.do(LayOutComb(visit.id, frame, "S4H4"))
    with qtbot.waitSignal(desk.told) as told:
        QTest.mouseClick(page.levels.keys[Level.NOT_OPENED], Qt.MouseButton.LeftButton)
    assert told.args == ["Combs were noted in this visit, so the hive was opened."]
    assert page.levels.level is Level.BY_COMB


def test_a_sentence_leads_to_the_first_comb_it_came_from(page: PageView, desk: Desk, qtbot: QtBot) -> None:
    desk.go(day=LAST)
    visit, box = desk.visit, desk.box()
    assert visit is not None
    assert box is not None
    frames = [place.frame.id for place in box.frames if place.frame is not None]
    for at in (6, 3):
        desk.do(LayOutComb(visit.id, frames[at], "E1O2S4H1"))
    row = next(line.row for line in page.day.table._lines if line.row and line.row.label == "In cells")
    assert row.frames == {frames[3], frames[6]}
    with qtbot.waitSignal(page.pointed) as told:
        page.day.table.pointed.emit(row.frames)
    assert told.args == [row.frames]
    page.day.table.chosen.emit(row)
    assert desk.spot.frame_id == frames[3]
    assert desk.spot.view is View.BOX


def test_a_sentence_without_combs_asks_for_its_field(page: PageView, desk: Desk, qtbot: QtBot) -> None:
    desk.go(day=LAST)
    row = next(line.row for line in page.day.table._lines if line.row and line.row.label == "Temper")
    with qtbot.waitSignal(page.field_asked) as told:
        page.day.table.chosen.emit(row)
    assert told.args == [Question.TEMPER]


def test_unseen_it_waits_and_is_right_when_it_is_seen_again(page: PageView, desk: Desk) -> None:
    page.hide()
    desk.go(day=LAST)
    assert page.day.heading.text() == "Saturday 16 May"
    page.show()
    assert page.day.heading.text() == "Saturday 9 May"


def test_the_keyboard_comes_to_the_note(page: PageView, desk: Desk, qtbot: QtBot) -> None:
    page.take_focus()
    qtbot.waitUntil(page.day.note.hasFocus)
    desk.go(view=View.ROUND)
    page.take_focus()
    qtbot.waitUntil(page.scroller.hasFocus)


def test_going_to_the_round_or_closing_keeps_the_note(page: PageView, desk: Desk) -> None:
    page.take_focus()
    QTest.keyClicks(page.day.note, "calm")
    page.finish()
    assert desk.visit is not None
    assert desk.visit.note == "calm"
    QTest.keyClicks(page.day.note, ", flying")
    desk.go(view=View.ROUND)
    assert desk.visit is not None
    assert desk.visit.note == "calm, flying"


def test_it_goes_dark_with_the_desk_and_fits_its_width(page: PageView, desk: Desk) -> None:
    desk.go(day=LAST)
    light = page.grab().toImage()
    desk.set_palette(DARK)
    assert page.grab().toImage().size() == light.size()
    assert page.day.width() <= 276
    assert page.levels._palette == DARK
