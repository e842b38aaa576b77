"""What is due is done by what answers it, and by nothing less."""

from collections.abc import Callable
from datetime import date

import pytest

from beeworkbook.colony.records import (
    Due,
    DueId,
    DueKind,
    DueState,
    Level,
    PartKind,
    Question,
    VisitId,
)
from beeworkbook.comb.contents import Content, Face, MarkKind
from beeworkbook.workbook.edits.combs import ClearSide
from beeworkbook.workbook.edits.dues import AddDue, DoDue
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft, SetHeft
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.in_visit import NO_VISIT
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.marks import AddMark
from beeworkbook.workbook.edits.mend import RemoveVisit
from beeworkbook.workbook.edits.place import SetSetting
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit, SetAnswer, SetLevel, SetNext, SetNote
from beeworkbook.workbook.noted import is_noted
from beeworkbook.workbook.place import Edit
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, as_int, days_on

WINTER = date(2026, 12, 20)


def put(keeping: Keeping, kind: DueKind, day: date = LOOK) -> DueId:
    return DueId(as_int(keeping.book.do(AddDue(kind, day, "why", keeping.colony))))


def state(keeping: Keeping, due_id: DueId) -> DueState:
    due = keeping.book.read.get(Due, due_id)
    assert due is not None
    return due.state


def planned(keeping: Keeping, kind: DueKind) -> DueId:
    return next(due.id for due in keeping.book.read.find(Due) if due.kind is kind)


def test_a_page_that_was_only_opened_does_nothing(keeping: Keeping) -> None:
    first, feed = planned(keeping, DueKind.FIRST_LOOK), planned(keeping, DueKind.FEED_LOOK)
    keeping.book.do(BeginVisit(keeping.colony, LATER))
    keeping.book.do(SetNote(keeping.visit, "passed by, flying well"))
    assert (state(keeping, first), state(keeping, feed)) == (DueState.OPEN, DueState.OPEN)


@pytest.mark.parametrize(
    "noting",
    [
        lambda keeping: SetAnswer(keeping.visit, Question.EGGS, "y"),
        lambda keeping: LayOutComb(keeping.visit, keeping.frame(4), "S4"),
        lambda keeping: AddMark(keeping.visit, MarkKind.QUEEN, keeping.frame(4)),
    ],
)
def test_a_look_is_done_by_what_was_seen_and_due_again_without_it(
    keeping: Keeping, noting: Callable[[Keeping], Edit]
) -> None:
    first, look, bring = (
        planned(keeping, DueKind.FIRST_LOOK),
        put(keeping, DueKind.LOOK),
        put(keeping, DueKind.BRING),
    )
    later = put(keeping, DueKind.LOOK, LATER)
    keeping.book.do(noting(keeping))
    assert (state(keeping, first), state(keeping, look)) == (DueState.DONE, DueState.DONE)
    assert (state(keeping, bring), state(keeping, later)) == (DueState.OPEN, DueState.OPEN)
    keeping.book.undo()
    assert (state(keeping, first), state(keeping, look)) == (DueState.OPEN, DueState.OPEN)
    keeping.book.redo()
    keeping.book.do(RemoveVisit(keeping.visit))
    assert (state(keeping, first), state(keeping, look)) == (DueState.OPEN, DueState.OPEN)


def test_what_is_taken_away_is_due_again(keeping: Keeping) -> None:
    first = planned(keeping, DueKind.FIRST_LOOK)
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(4), "S4/-"))
    assert state(keeping, first) is DueState.DONE
    keeping.book.do(ClearSide(keeping.visit, keeping.frame(4), Face.A))
    assert state(keeping, first) is DueState.OPEN


def test_an_assumed_side_is_no_look(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(4), "S4"))
    look = put(keeping, DueKind.LOOK, LATER)
    later = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    keeping.book.do(LayOutComb(later, keeping.frame(4), "?"))
    assert state(keeping, look) is DueState.OPEN


def test_a_hive_that_was_not_opened_has_its_looks_still_due(keeping: Keeping) -> None:
    first = planned(keeping, DueKind.FIRST_LOOK)
    apiary = keeping.book.read.apiaries()[0].id
    edits = (
        SetAnswer(NO_VISIT, Question.OPENED, "n"),
        SetHeft(keeping.colony, LATER, 14.0, 15.0, NO_VISIT),
        SetNext(NO_VISIT, days_on(LATER, 7), "look again"),
    )
    keeping.book.do(OnLine(apiary, keeping.colony, LATER, edits))
    assert state(keeping, first) is DueState.OPEN
    assert [due.reason for due in keeping.book.read.dues(colony_id=keeping.colony)][-1] == "look again"


def test_a_next_day_takes_the_place_of_an_earlier_visits_and_of_no_plans(keeping: Keeping) -> None:
    first = planned(keeping, DueKind.FIRST_LOOK)
    keeping.book.do(SetNext(keeping.visit, days_on(LATER, 3), "a week"))
    old = keeping.book.read.find(Due, visit_id=keeping.visit)[0].id
    later = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    keeping.book.do(SetNext(later, days_on(LATER, 7), "a week"))
    assert (state(keeping, old), state(keeping, first)) == (DueState.DONE, DueState.OPEN)
    keeping.book.do(SetNext(later, None))
    assert state(keeping, old) is DueState.OPEN


def test_in_winter_to_heft_is_the_look(keeping: Keeping) -> None:
    look, first = put(keeping, DueKind.LOOK, WINTER), put(keeping, DueKind.FIRST_LOOK, WINTER)
    visit = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, WINTER, level=Level.NOT_OPENED))))
    keeping.book.do(SetHeft(keeping.colony, WINTER, 14.0, 15.0, visit))
    assert (state(keeping, look), state(keeping, first)) == (DueState.DONE, DueState.OPEN)
    keeping.book.do(SetHeft(keeping.colony, WINTER, None, None, visit))
    assert state(keeping, look) is DueState.OPEN
    keeping.book.do(SetSetting("hemisphere", "south"))
    keeping.book.do(SetHeft(keeping.colony, WINTER, 14.0, 15.0, visit))
    assert state(keeping, look) is DueState.OPEN


def test_a_feed_look_is_done_by_what_was_left_or_given(keeping: Keeping) -> None:
    look = planned(keeping, DueKind.FEED_LOOK)
    feed = keeping.book.read.feeds(keeping.colony)[0]
    keeping.book.do(SetAnswer(keeping.visit, Question.STORES, "5"))
    assert state(keeping, look) is DueState.OPEN
    keeping.book.do(SetFeedLeft(feed.id, "0.5", LOOK, keeping.visit))
    assert state(keeping, look) is DueState.DONE
    keeping.book.do(SetFeedLeft(feed.id, "", LOOK, keeping.visit))
    assert state(keeping, look) is DueState.OPEN
    keeping.book.do(GiveFeed(keeping.colony, LOOK, "1L 1:1", keeping.visit))
    assert state(keeping, look) is DueState.DONE


def test_where_no_feed_was_on_their_stores_answer_it(keeping: Keeping) -> None:
    other = keeping.another()
    look = next(due.id for due in keeping.book.read.dues(colony_id=other) if due.kind is DueKind.FEED_LOOK)
    visit = VisitId(as_int(keeping.book.do(BeginVisit(other, LOOK))))
    keeping.book.do(SetAnswer(visit, Question.EGGS, "y"))
    assert state(keeping, look) is DueState.OPEN
    keeping.book.do(SetAnswer(visit, Question.STORES, "5"))
    assert state(keeping, look) is DueState.DONE


def test_a_cage_is_looked_at_when_she_or_her_eggs_are_spoken_of(keeping: Keeping) -> None:
    cage = put(keeping, DueKind.QUEEN_CAGE)
    keeping.book.do(SetAnswer(keeping.visit, Question.STORES, "5"))
    assert state(keeping, cage) is DueState.OPEN
    keeping.book.do(SetAnswer(keeping.visit, Question.QUEEN, "y"))
    assert state(keeping, cage) is DueState.DONE


def test_what_was_ticked_off_by_hand_stays_so(keeping: Keeping) -> None:
    look = put(keeping, DueKind.LOOK)
    keeping.book.do(DoDue(look))
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "y"))
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, ""))
    keeping.book.do(SetLevel(keeping.visit, Level.NOT_OPENED))
    assert state(keeping, look) is DueState.DONE
    assert CAME < LOOK


def test_a_super_of_foundation_is_no_look(keeping: Keeping) -> None:
    first = planned(keeping, DueKind.FIRST_LOOK)
    hive = keeping.book.read.hive_day(keeping.colony, LOOK)
    assert hive is not None
    level = keeping.noted().level
    more = {"frame_type": "bs_shallow", "places": 10, "new_frames": Content.FOUNDATION}
    keeping.book.do(AddPart(hive.hive.id, PartKind.SUPER, LOOK, **more))  # type: ignore[arg-type]
    assert len(keeping.book.read.sides(keeping.visit)) == 20
    assert keeping.noted().level is level
    assert state(keeping, first) is DueState.OPEN
    assert not is_noted(keeping.book.read, keeping.noted())
