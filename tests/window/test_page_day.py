"""The Page of a day: what was noted, the note being written, what is offered next."""

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import DueKind, EventKind, Level, Question, Visit
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK
from beeworkbook.window.page_day import DayLeaf
from beeworkbook.workbook.edits.events import AddEvent, QueenSpec
from beeworkbook.workbook.edits.feed import GiveFeed
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginRound, BeginVisit, SetAnswer
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
def leaf(desk: Desk, qtbot: QtBot) -> DayLeaf:
    made = DayLeaf(desk)
    qtbot.addWidget(made)
    made.resize(276, 700)
    with qtbot.waitExposed(made):
        made.show()
    desk.spot_changed.connect(made.show_spot)
    desk.book_changed.connect(lambda _changes: made.refill())
    made.show_spot(desk.spot)
    return made


def _rows(leaf: DayLeaf) -> dict[str, str]:
    return dict(leaf.table.texts())


def test_a_day_without_a_visit_says_so(leaf: DayLeaf) -> None:
    assert leaf.heading.text() == "Saturday 16 May"
    assert leaf.below.text() == "Nothing was noted on this day."
    assert _rows(leaf) == {}
    assert leaf.next_head.isHidden()


def test_a_line_is_told_in_rows(leaf: DayLeaf, desk: Desk) -> None:
    desk.go(day=LAST)
    assert leaf.below.text() == "One line."
    rows = _rows(leaf)
    assert rows["Eggs"] == "seen, on 4 and 5"
    assert rows["Brood"] == "on 6 combs, worth 2.6"
    assert rows["Temper"] == "quiet"
    assert rows["Feed"].startswith("2 L 1:1")
    assert rows["Not recorded"].startswith("queen")
    assert leaf.note.toPlainText() == "Super to go on next time"
    desk.go(day=date(2025, 5, 1))
    assert leaf.heading.text() == "Thursday 1 May 2025"


def test_weather_and_level_stand_below_the_day(leaf: DayLeaf, desk: Desk) -> None:
    made = desk.do(
        BeginRound(desk.spot.apiary_id, DAY, weather="fine", temperature_c=18.0, who="Ada")  # type: ignore[arg-type]
    )
    visit = desk.do(BeginVisit(desk.spot.colony_id, DAY, made))  # type: ignore[arg-type]
    desk.go(visit_id=visit)
    assert leaf.below.text() == "One line. Fine, 18 °C, with Ada."


def test_combs_speak_in_plain_sentences_as_they_are_noted(leaf: DayLeaf, desk: Desk) -> None:
    visit = desk.visit_to_write()
    hive = desk.hive_day()
    assert hive is not None
    assert visit is not None
    frame = hive.boxes[0].frames[4].frame
    assert frame is not None
    desk.do(LayOutComb(visit, frame.id, "E1O2S4H1"))
    rows = _rows(leaf)
    assert rows["Brood"] == "on 1 comb or more, worth 0.88 or more"
    assert rows["In cells"].startswith("about ")
    assert leaf.below.text() == "By comb."


def test_events_of_the_day_are_told(leaf: DayLeaf, desk: Desk) -> None:
    assert desk.spot.colony_id is not None
    desk.visit_to_write()
    assert leaf.events_head.isHidden()
    desk.do(AddEvent(desk.spot.colony_id, DAY, EventKind.QUEEN_MARKED, "yellow dot"))
    assert leaf.events.texts() == [("Queen marked, yellow dot", "")]
    desk.do(AddEvent(desk.spot.colony_id, DAY, EventKind.QUEEN_CAME, queen=QueenSpec("", "white", year=2026)))
    assert leaf.events.texts()[1] == ("Queen came, of 2026, marked white", "")
    assert not leaf.events_head.isHidden()


def test_a_note_begins_a_visit_with_its_first_words_and_is_kept(leaf: DayLeaf, desk: Desk) -> None:
    leaf.note.setFocus()
    QTest.keyClicks(leaf.note, "Flying well")
    leaf.note.keep_now()
    visit = desk.visit
    assert visit is not None
    assert (visit.note, visit.level, visit.day) == ("Flying well", Level.NOT_OPENED, DAY)
    QTest.keyClicks(leaf.note, ", pollen in")
    leaf.note.keep_now()
    assert desk.visit is not None
    assert desk.visit.note == "Flying well, pollen in"
    assert leaf.note.textCursor().atEnd()


def test_typing_in_one_pause_is_one_step(leaf: DayLeaf, desk: Desk) -> None:
    desk.do(SetAnswer(desk.visit_to_write(), Question.EGGS, "y"))  # type: ignore[arg-type]
    leaf.note.setFocus()
    for word in ("Flying ", "well"):
        QTest.keyClicks(leaf.note, word)
        leaf.note.rested.emit()
    desk.undo()
    assert leaf.note.toPlainText() == ""
    assert desk.book.undo_label == "answer eggs"


def test_a_note_taken_away_takes_an_empty_visit_with_it(leaf: DayLeaf, desk: Desk) -> None:
    leaf.note.setFocus()
    QTest.keyClicks(leaf.note, "x")
    leaf.note.keep_now()
    QTest.keyClick(leaf.note, Qt.Key.Key_Backspace)
    leaf.note.keep_now()
    assert desk.visit is None
    assert not [visit for visit in desk.book.read.find(Visit) if visit.day == DAY]


def test_going_on_keeps_the_note_where_it_was_typed(leaf: DayLeaf, desk: Desk) -> None:
    here = desk.spot.colony_id
    leaf.note.setFocus()
    QTest.keyClicks(leaf.note, "belongs to Wall")
    other = next(
        place.colony.id
        for place in desk.book.read.standing(desk.spot.apiary_id, DAY)  # type: ignore[arg-type]
        if place.colony is not None and place.colony.id != here
    )
    desk.go(colony_id=other, day=DAY)
    notes = {visit.colony_id: visit.note for visit in desk.book.read.find(Visit) if visit.day == DAY}
    assert notes == {here: "belongs to Wall"}
    assert leaf.note.toPlainText() == ""


def test_an_offered_day_can_be_taken(leaf: DayLeaf, desk: Desk) -> None:
    visit = desk.visit_to_write()
    desk.do(GiveFeed(desk.spot.colony_id, DAY, "1L 1:1", visit))  # type: ignore[arg-type]
    assert "Offered: Sat 23 May, seven days" in leaf.offered.text()
    assert leaf.offered.text().startswith("Offered: Mon 18 May")
    assert "?." not in leaf.offered.text()
    assert "left?" in leaf.offered.text()
    leaf.take.click()
    assert [what for what, _ in leaf.next.texts()] == ["Monday 18 May", "Saturday 23 May"]
    assert leaf.take.isHidden()
    kinds = {due.kind for due in desk.book.read.dues(colony_id=desk.spot.colony_id) if due.visit_id == visit}
    assert kinds == {DueKind.LOOK, DueKind.FEED_LOOK}


def test_what_there_is_to_mention_has_its_reason(leaf: DayLeaf, desk: Desk) -> None:
    desk.do(SetAnswer(desk.visit_to_write(), Question.STORES, "2"))  # type: ignore[arg-type]
    assert any("kg in store, 2 L 1:1 given on 9 May" in what and why for what, why in leaf.mention.texts())


def test_it_goes_dark(leaf: DayLeaf, desk: Desk) -> None:
    desk.go(day=LAST)
    leaf.set_palette(DARK)
    assert _rows(leaf)["Temper"] == "quiet"


def test_what_happened_on_a_day_without_a_visit_is_told(desk: Desk, leaf: DayLeaf) -> None:
    colony_id = desk.spot.colony_id
    assert colony_id is not None
    day = DAY - timedelta(days=40)
    desk.do(AddEvent(colony_id, day, EventKind.NOTE, "a tree fell"))
    desk.go(day=day)
    assert desk.spot.visit_id is None
    assert leaf.below.text() == "No visit on this day."
    assert len(leaf.events.texts()) == 1
    assert "a tree fell" in leaf.events.texts()[0][0].casefold()
