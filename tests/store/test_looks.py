from dataclasses import replace
from datetime import date, timedelta

from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Due,
    DueId,
    DueKind,
    DueState,
    EventKind,
    FrameStay,
    FrameStayId,
    Level,
    Question,
    Reply,
    Visit,
    VisitId,
)
from beeworkbook.comb.contents import Face
from beeworkbook.store.database import Database
from tests.store.small_apiary import SPRING, SUMMER, SmallApiary

DAY = timedelta(days=1)


def test_visits_follow_each_other_by_day(database: Database, small: SmallApiary) -> None:
    read = database.reader
    with database.write() as tx:
        between = tx.add(Visit(VisitId(0), small.colony.id, SPRING + DAY, Level.NOT_OPENED))
    assert read.visits(small.colony.id) == (small.first, between, small.second)
    assert read.visit_before(small.second) == between
    assert read.visit_before(between) == small.first
    assert read.visit_before(small.first) is None
    assert read.visits(small.daughter.id) == ()


def test_a_day_in_an_apiary_shows_its_visits_in_stand_order(database: Database, small: SmallApiary) -> None:
    read = database.reader
    with database.write() as tx:
        other = tx.add(Visit(VisitId(0), small.daughter.id, SUMMER, Level.ONE_LINE))
        own = tx.add(Visit(VisitId(0), small.colony.id, SUMMER, Level.ONE_LINE))
        elsewhere = tx.add(Apiary(ApiaryId(0), "Heath"))
        # A colony with no home that day is still found through its round.
        homeless = tx.add(replace(small.first, id=VisitId(0), colony_id=small.daughter.id))
    assert read.visits_on(small.apiary.id, SUMMER) == (own, other)
    assert read.visits_on(small.apiary.id, SPRING) == (homeless, small.first)
    assert read.visits_on(elsewhere.id, SUMMER) == ()
    assert [asked.day for asked in read.rounds(small.apiary.id)] == [SPRING]


def test_sides_of_a_visit(database: Database, small: SmallApiary) -> None:
    read = database.reader
    assert read.sides(small.first.id) == small.sides[:3]
    assert read.side(small.first.id, small.frames[0].id, Face.B) == small.sides[1]
    assert read.side(small.first.id, small.frames[2].id, Face.B) is None


def test_the_last_sides_of_a_frame(database: Database, small: SmallApiary) -> None:
    read, frame = database.reader, small.frames[0].id
    with database.write() as tx:
        third = tx.add(Visit(VisitId(0), small.colony.id, SUMMER, Level.BY_COMB))
    assert read.last_sides(frame, third.id) == {Face.A: small.sides[3], Face.B: small.sides[1]}
    assert read.last_sides(frame, third.id, seen=False) == {Face.A: small.sides[3], Face.B: small.sides[4]}
    assert read.last_sides(frame, small.first.id) == {}
    assert read.last_sides(frame, VisitId(99)) == {}


def test_a_turned_frame_shows_its_other_letter(database: Database, small: SmallApiary) -> None:
    frame = small.frames[0].id
    with database.write() as tx:
        (stay,) = tx.find(FrameStay, frame_id=frame)
        tx.put(replace(stay, until=SUMMER))
        tx.add(FrameStay(FrameStayId(0), frame, small.box.id, 1, SUMMER, turned=True))
        third = tx.add(Visit(VisitId(0), small.colony.id, SUMMER, Level.BY_COMB))
    assert database.reader.last_sides(frame, third.id) == {Face.B: small.sides[3], Face.A: small.sides[1]}


def test_what_was_noted_at_a_visit(database: Database, small: SmallApiary) -> None:
    read = database.reader
    answers = read.answers(small.first.id)
    assert list(answers) == [Question.EGGS, Question.SEAMS]
    assert answers[Question.EGGS].reply is Reply.YES
    assert read.answers(small.second.id) == {}
    assert [mark.text for mark in read.marks(small.first.id)] == ["", "a wasp"]
    kinds = [event.kind for event in read.events(small.colony.id)]
    assert kinds == [EventKind.QUEEN_SEEN, EventKind.HEFT, EventKind.SPLIT]
    assert [feed.typed for feed in read.feeds(small.colony.id)] == ["2L 1:1"]


def test_dues_of_an_apiary_of_a_colony_and_in_a_state(database: Database, small: SmallApiary) -> None:
    read = database.reader
    look, bring = read.dues()
    assert (look.kind, bring.kind) == (DueKind.LOOK, DueKind.BRING)
    with database.write() as tx:
        done = tx.add(replace(look, id=DueId(0), state=DueState.DONE))
        heath = tx.add(Apiary(ApiaryId(0), "Heath"))
        early = tx.add(Due(DueId(0), DueKind.OTHER, date(2020, 1, 1), "", small.colony.id))
    assert read.dues(DueState.DONE) == (done,)
    assert read.dues(None) == (early, look, done, bring)
    assert read.dues(colony_id=small.colony.id) == (early, look)
    assert read.dues(apiary_id=small.apiary.id) == (look, bring)
    assert read.dues(apiary_id=small.apiary.id, colony_id=small.colony.id) == (look,)
    assert read.dues(apiary_id=heath.id) == ()
