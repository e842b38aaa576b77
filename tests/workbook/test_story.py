"""What is known of a colony on a day, gathered for sentences, soft notes and offers."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from beeworkbook.colony.records import (
    Arrival,
    Colony,
    ColonyId,
    DueKind,
    EventKind,
    PartKind,
    QueenId,
    Question,
    VisitId,
)
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.colony.sentences import page_rows, read_back, read_back_text
from beeworkbook.comb.contents import Content, Face, MarkKind
from beeworkbook.workbook import story as told
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony
from beeworkbook.workbook.edits.events import AddEvent, QueenSpec
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft, SetHeft
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.marks import AddMark
from beeworkbook.workbook.edits.place import SetSetting
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit, ChangeRound, PassOver, SetAnswer, SetNext
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, LAST, NONE, make_orchard


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Workbook]:
    made = make_orchard(tmp_path / "orchard.beebook", ("Wall",))
    yield made
    made.close()


def _colony(book: Workbook) -> Colony:
    colony = book.read.standing(book.read.apiaries()[0].id, DAY)[0].colony
    assert colony is not None
    return colony


def _visit(book: Workbook, typed: str = "y", day: date = DAY) -> VisitId:
    edit = SetAnswer(NONE, Question.EGGS, typed)
    return VisitId(int(str(book.do(OnLine(book.read.apiaries()[0].id, _colony(book).id, day, (edit,))))))


def test_the_north_is_taken_until_the_keeper_says_otherwise(book: Workbook) -> None:
    assert told.hemisphere_of(book) is Hemisphere.NORTH
    book.do(SetSetting("hemisphere", "south"))
    assert told.hemisphere_of(book) is Hemisphere.SOUTH


def test_the_queen_of_a_day_is_the_last_that_was_known_and_has_not_gone(book: Workbook) -> None:
    colony = _colony(book)
    first = told.queen_on(book.read, colony.id, DAY)
    assert first is not None
    assert first.mark_colour == "yellow"
    book.do(AddEvent(colony.id, date(2026, 5, 10), EventKind.QUEEN_GONE))
    assert told.queen_on(book.read, colony.id, DAY) is None
    assert told.queen_on(book.read, colony.id, LAST) == first
    book.do(AddEvent(colony.id, DAY, EventKind.QUEEN_CAME, queen=QueenSpec(mark_colour="blue")))
    later = told.queen_on(book.read, colony.id, DAY)
    assert later is not None
    assert later.mark_colour == "blue"
    assert later.id != QueenId(first.id)


def test_a_story_holds_all_that_was_noted_that_day(book: Workbook) -> None:
    colony = _colony(book)
    visit_id = _visit(book)
    feed = book.read.feeds(colony.id)[0]
    book.do(SetFeedLeft(feed.id, "0.5", DAY, visit_id))
    book.do(GiveFeed(colony.id, DAY, "1L 1:1", visit_id))
    book.do(GiveFeed(colony.id, DAY, "2 kg fondant"))
    book.do(SetHeft(colony.id, DAY, 14.0, 15.0, visit_id))
    book.do(AddEvent(colony.id, DAY, EventKind.NOTE, "a tree fell"))
    hive = book.read.hive_day(colony.id, DAY)
    assert hive is not None
    frame = hive.boxes[0].frames[3].frame
    assert frame is not None
    book.do(AddMark(visit_id, MarkKind.QUEEN, frame.id))
    story = told.visit_story(book.read, visit_id)
    assert [held.given_litres for held in story.feeds] == [1.0, None]
    assert [held.id for held in story.left] == [feed.id]
    assert [event.kind for event in story.events] == [EventKind.HEFT, EventKind.NOTE]
    assert story.places == {frame.id: 4}
    assert story.figures.visit_id == visit_id
    assert story.queen is not None


def test_a_line_becomes_an_area_by_the_frame_of_the_brood_box(book: Workbook) -> None:
    figures = told.season_figures(book.read, _colony(book).id, LAST, DAY)
    ((visit, of_visit),) = figures
    assert visit.day == LAST
    assert of_visit.brood is not None
    assert of_visit.brood.amount is not None
    frame = told.brood_frame(book.read, book.read.hive_day(_colony(book).id, LAST))
    assert frame is not None
    assert of_visit.brood.amount.dm2 == pytest.approx(2.6 * 2 * frame.area_dm2)
    assert told.brood_frame(book.read, None) is None


def test_the_last_look_is_the_last_at_which_the_hive_was_opened(book: Workbook) -> None:
    colony = _colony(book)
    shut = date(2026, 5, 13)
    book.do(PassOver(colony.id, shut))
    last = told.last_look(book.read, colony.id, DAY)
    assert last is not None
    assert last.day == LAST
    assert told.last_look(book.read, colony.id, date(2025, 1, 1)) is None


def test_a_situation_knows_the_round_the_feed_and_the_last_look(book: Workbook) -> None:
    visit_id = _visit(book)
    held = book.read.rounds(book.read.apiaries()[0].id)[-1]
    book.do(ChangeRound(replace(held, temperature_c=9.0)))
    known = told.situation(book, told.visit_story(book.read, visit_id))
    assert (known.temperature_c, known.opened, known.last_look) == (9.0, True, LAST)
    assert known.clipped is False
    assert [feed.day for feed in known.feeds] == [LAST]
    alone = VisitId(int(str(book.do(BeginVisit(_colony(book).id, DAY + timedelta(days=1))))))
    assert told.situation(book, told.visit_story(book.read, alone)).temperature_c is None


def test_what_is_offered_follows_the_cells_and_the_feed(book: Workbook) -> None:
    visit_id = _visit(book)
    plain = told.offered(book, told.visit_story(book.read, visit_id))
    assert [(due.kind, due.day - DAY) for due in plain] == [(DueKind.LOOK, timedelta(days=7))]
    book.do(SetAnswer(visit_id, Question.CELLS, "1C 5B"))
    book.do(GiveFeed(_colony(book).id, DAY, "1L 1:1", visit_id))
    offers = told.offered(book, told.visit_story(book.read, visit_id))
    assert [due.kind for due in offers] == [DueKind.FEED_LOOK, DueKind.LOOK]
    assert offers[1].day < plain[0].day


def test_on_the_page_of_an_arrival_nothing_is_offered_that_its_plan_has(book: Workbook) -> None:
    spec = ArrivalSpec(
        "Quince", Arrival.SWARM, DAY, apiary_id=book.read.apiaries()[0].id, stand_name="9", fed="2L 1:1"
    )
    colony_id = ColonyId(int(str(book.do(ArriveColony(spec)))))
    visit = book.read.visits(colony_id)[0]
    assert told.offered(book, told.visit_story(book.read, visit.id)) == ()
    week = DAY + timedelta(days=7)
    edit = OnLine(book.read.apiaries()[0].id, colony_id, week, (SetAnswer(NONE, Question.EGGS, "y"),))
    later = VisitId(int(str(book.do(edit))))
    offers = told.offered(book, told.visit_story(book.read, later))
    assert [offer.day for offer in offers] == [week + timedelta(days=7)]
    assert "swarm season" not in offers[0].reason
    book.do(SetAnswer(later, Question.SEAMS, "10"))
    full = told.offered(book, told.visit_story(book.read, later))
    assert "swarm season" in full[0].reason


def test_combs_of_two_brood_boxes_are_told_apart_on_page_and_in_the_read_back(book: Workbook) -> None:
    colony = _colony(book)
    hive = book.read.hive_day(colony.id, LAST)
    assert hive is not None
    added = AddPart(
        hive.hive.id, PartKind.BROOD_BOX, LAST, None, "", "bs_deep", 11, new_frames=Content.FOUNDATION
    )
    book.do(added)
    visit_id = VisitId(int(str(book.do(BeginVisit(colony.id, DAY)))))
    now = book.read.hive_day(colony.id, DAY)
    assert now is not None
    lower, upper = ([placed.frame for placed in box.frames] for box in now.brood_boxes)
    for frames, places in ((lower, (4, 5, 6)), (upper, (5,))):
        for place in places:
            frame = frames[place - 1]
            assert frame is not None
            book.do(LayOutComb(visit_id, frame.id, "E1O2S3H2"))
    above = upper[4]
    assert above is not None
    book.do(AddMark(visit_id, MarkKind.QUEEN, above.id, Face.A))
    held = told.visit_story(book.read, visit_id)
    rows = {row.label: row.value for row in page_rows(held)}
    assert rows["Eggs"] == "seen, on 4 to 6 in the lower box and 5 in the upper box"
    assert rows["Queen"] == "seen on 5A in the upper box"
    assert rows["Brood"].startswith("on 4 combs")
    text = read_back_text("Wall", read_back(held))
    assert "eggs on 4 to 6 in the lower box and 5 in the upper box" in text
    assert "queen seen on 5A in the upper box" in text


def test_an_offer_is_that_of_the_last_visit_and_gone_once_a_next_day_is_noted(book: Workbook) -> None:
    colony = _colony(book)
    visit_id = _visit(book)
    book.do(SetAnswer(visit_id, Question.CELLS, "1 charged 5"))
    offer = told.offered_next(book, colony.id)
    assert offer is not None
    assert (offer.kind, offer.day) == (DueKind.LOOK, DAY + timedelta(days=3))
    assert told.situation(book, told.visit_story(book.read, visit_id)).today == book.today
    book.do(SetNext(visit_id, DAY + timedelta(days=2)))
    assert told.offered_next(book, colony.id) is None
