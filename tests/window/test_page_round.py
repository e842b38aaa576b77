"""The Page beside a round: the colony in a few words, its season, last time, and what is next."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Arrival, DueKind, Feed, Level, PartKind, Queen, Question
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.window.page_round import LevelsLegend, RoundLeaf, hive_words
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.place import ChangeRecord, RemoveRecord
from beeworkbook.workbook.edits.visit import SetAnswer, SetNext, SetNote
from tests.rounds.orchard import DAY, LAST, NONE, make_orchard


@pytest.fixture
def desk(tmp_path: Path, qtbot: QtBot) -> Iterator[Desk]:
    del qtbot
    book = make_orchard(tmp_path / "orchard.beebook", ("Wall",))
    made = Desk(book)
    made.go(view=View.ROUND, day=DAY)
    yield made
    made.close()
    book.close()


@pytest.fixture
def leaf(desk: Desk, qtbot: QtBot) -> RoundLeaf:
    made = RoundLeaf(desk)
    qtbot.addWidget(made)
    made.resize(276, 700)
    made.show()
    made.show_spot(desk.spot)
    return made


def _write(desk: Desk, leaf: RoundLeaf, typed: dict[Question, str], day: date = DAY) -> None:
    edits = tuple(SetAnswer(NONE, question, text) for question, text in typed.items())
    desk.do(OnLine(desk.spot.apiary_id, desk.spot.colony_id, day, edits))  # type: ignore[arg-type]
    desk.go(day=DAY)
    leaf.show_spot(desk.spot)


def test_before_the_line_is_written_last_times_figures_stand_with_their_day(leaf: RoundLeaf) -> None:
    assert leaf.heading.text() == "Wall"
    assert leaf.below.text() == "stand 1, one box of 11 combs"
    rows = dict(leaf.table.texts())
    assert rows["Eggs"] == "7 days ago, on 9 May"
    assert rows["Brood"] == "on 6 combs, worth 2.6 (9 May)"
    assert rows["Bees"].endswith("(9 May)")
    assert rows["Queen"] == "not seen on record"
    assert rows["Mark"] == "yellow, so perhaps 2022"
    assert leaf.last_head.text() == "Last time, 9 May"
    assert leaf.last_note.text() == "Super to go on next time"


def test_what_is_written_now_takes_its_place(leaf: RoundLeaf, desk: Desk) -> None:
    _write(desk, leaf, {Question.EGGS: "3-6", Question.BROOD: "5/2.9", Question.QUEEN: "4A"})
    rows = dict(leaf.table.texts())
    assert rows["Eggs"] == "seen today, on 3 to 6"
    assert rows["Brood"] == "on 5 combs, worth 2.9"
    assert rows["Queen"] == "last seen today, 4A"
    assert leaf.bars.bar_rects()
    assert leaf.bars.accessibleDescription() == "9 May 2.6, 16 May 2.9"


def test_offers_stand_under_the_dues_and_say_that_they_are_not_noted(leaf: RoundLeaf, desk: Desk) -> None:
    desk.do(AddDue(DueKind.BRING, DAY, "a super", desk.spot.colony_id))
    desk.do(AddDue(DueKind.FEED_LOOK, date(2026, 5, 11), "feed given on 9 May", desk.spot.colony_id))
    desk.do(
        AddDue(
            DueKind.OTHER,
            date(2026, 5, 12),
            "a look at the fence",
            desk.spot.colony_id,
            until=date(2026, 5, 13),
        )
    )
    _write(desk, leaf, {Question.OPENED: "y"})
    lines = dict(leaf.next.texts())
    assert lines["Today"] == "a super"
    assert lines["Over since Mon 11 May"] == "feed given on 9 May"
    assert lines["Sat 23 May"].startswith("seven days")
    assert "Over since Wed 13 May" in lines
    assert "Offered, not noted" in leaf.how.text()
    desk.do(SetNext(desk.visit.id, date(2026, 5, 20)))  # type: ignore[union-attr]
    leaf.refill()
    assert leaf.how.isHidden()
    assert "Wed 20 May" in dict(leaf.next.texts())


def test_a_known_year_is_not_guessed(leaf: RoundLeaf, desk: Desk) -> None:
    queen = desk.book.read.find(Queen)[0]
    desk.do(ChangeRecord(replace(queen, year=2021)))
    leaf.refill()
    assert dict(leaf.table.texts())["Mark"] == "yellow, of 2021"
    desk.do(ChangeRecord(replace(queen, year=2021, mark_colour="")))
    leaf.refill()
    assert dict(leaf.table.texts())["Mark"] == "unmarked, of 2021"


def test_last_time_without_a_note_is_told_by_its_line(leaf: RoundLeaf, desk: Desk) -> None:
    last = next(visit for visit in desk.visits() if visit.day == LAST)
    desk.do(SetNote(last.id, ""))
    leaf.refill()
    assert leaf.last_told.text().startswith("Eggs on 4 and 5")
    assert leaf.last_told.text().endswith(" given.")
    assert leaf.last_note.isHidden()


def test_last_time_is_told_by_its_line_and_its_note_below_it(leaf: RoundLeaf, desk: Desk) -> None:
    assert leaf.last_told.text().startswith("Eggs on 4 and 5")
    assert "Super to go on" not in leaf.last_told.text()
    assert leaf.last_note.text() == "Super to go on next time"
    last = next(visit for visit in desk.visits() if visit.day == LAST)
    for question in Question:
        desk.do(SetAnswer(last.id, question, ""))
    desk.do(RemoveRecord(Feed, desk.book.read.feeds(last.colony_id)[0].id))
    leaf.refill()
    assert leaf.last_told.isHidden()
    desk.do(SetNote(last.id, ""))
    leaf.refill()
    assert leaf.last_told.text() == "nothing noted"


def test_what_is_next_stands_in_the_order_of_its_days(leaf: RoundLeaf, desk: Desk) -> None:
    desk.do(AddDue(DueKind.BRING, date(2026, 5, 25), "a super", desk.spot.colony_id))
    _write(desk, leaf, {Question.OPENED: "y"})
    assert [what for what, _ in leaf.next.texts()] == ["Sat 23 May", "Mon 25 May"]


def test_what_there_is_to_mention_is_mentioned(leaf: RoundLeaf, desk: Desk) -> None:
    _write(desk, leaf, {Question.STORES: "2"})
    assert any("Less than 4.5 kg in store" in what for what, _ in leaf.mention.texts())
    leaf.set_palette(DARK)
    assert any("Less than 4.5 kg in store" in what for what, _ in leaf.mention.texts())


def test_a_hive_is_told_in_a_few_words(desk: Desk) -> None:
    colony = desk.colony
    assert colony is not None
    swarm = replace(colony, arrival=Arrival.SWARM)
    assert hive_words(swarm, None, None) == "swarm of 2025"
    hive = desk.hive_day()
    assert hive is not None
    desk.do(AddPart(hive.hive.id, PartKind.SUPER, DAY, frame_type="bs_shallow", places=10))
    desk.do(AddPart(hive.hive.id, PartKind.BROOD_BOX, DAY, frame_type="bs_deep", places=11))
    assert hive_words(swarm, None, desk.hive_day()) == "2 boxes of 11 combs, a super, swarm of 2025"


def test_how_far_the_look_went_stands_out(qtbot: QtBot) -> None:
    legend = LevelsLegend(LIGHT)
    qtbot.addWidget(legend)
    legend.show_level(Level.BY_COMB)
    assert legend.level is Level.BY_COMB
    names = [key.accessibleName() for key in legend.keys.values()]
    assert names == ["not opened", "one line", "by comb, as here", "by side", "painted"]
    assert [level for level, key in legend.keys.items() if key.isChecked()] == [Level.BY_COMB]
    legend.show_level(None)
    assert not any(key.isChecked() for key in legend.keys.values())


def test_a_level_is_chosen_by_click_or_by_its_digit_and_stands_out_once_it_is_kept(qtbot: QtBot) -> None:
    legend = LevelsLegend(LIGHT)
    qtbot.addWidget(legend)
    legend.show_level(Level.ONE_LINE)
    with qtbot.waitActive(legend):
        legend.show()
    chosen: list[Level] = []
    legend.level_chosen.connect(chosen.append)
    QTest.mouseClick(legend.keys[Level.BY_SIDE], Qt.MouseButton.LeftButton)
    QTest.keyClick(legend, Qt.Key.Key_4, Qt.KeyboardModifier.AltModifier)
    qtbot.waitUntil(lambda: chosen == [Level.BY_SIDE, Level.PAINTED])
    assert [level for level, key in legend.keys.items() if key.isChecked()] == [Level.ONE_LINE]
    assert legend.keys[Level.PAINTED].toolTip().endswith("(Alt+4)")
