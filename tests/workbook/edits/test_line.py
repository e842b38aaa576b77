"""What is typed into the line of a round begins what it needs, and leaves nothing empty behind."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Arrival,
    ColonyId,
    Due,
    DueKind,
    DueState,
    Level,
    Question,
    Round,
    Visit,
    VisitId,
)
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.edits.feed import GiveFeed
from beeworkbook.workbook.edits.line import ClearOnLine, OnLine
from beeworkbook.workbook.edits.visit import SetAnswer, SetNote
from beeworkbook.workbook.errors import NotReadableError
from beeworkbook.workbook.place import Edit
from beeworkbook.workbook.workbook import Workbook

DAY = date(2026, 5, 16)
NONE = VisitId(0)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Workbook]:
    with Workbook.create(tmp_path / "one.beebook", "One", today=DAY) as made:
        spec = ArrivalSpec(
            "Wall", Arrival.UNKNOWN, date(2025, 5, 1), apiary_name="Orchard", stand_name="1", places=5
        )
        made.do(ArriveColony(spec))
        yield made


def _ids(book: Workbook) -> tuple[ApiaryId, ColonyId]:
    apiary = book.read.find(Apiary)[0]
    return apiary.id, book.read.standing(apiary.id, DAY)[0].colony.id  # type: ignore[union-attr]


def _write(book: Workbook, *edits: Edit, left_out: str = "") -> VisitId:
    return VisitId(int(str(book.do(OnLine(*_ids(book), DAY, edits, left_out)))))


def _visit(book: Workbook, visit_id: VisitId) -> Visit:
    visit = book.read.get(Visit, visit_id)
    assert visit is not None
    return visit


def test_the_first_answer_begins_round_and_visit_as_one_step(book: Workbook) -> None:
    visit = _visit(book, _write(book, SetAnswer(NONE, Question.OPENED, "y"), left_out="signs"))
    rounds = book.read.rounds(_ids(book)[0])
    assert [(made.day, made.left_out) for made in rounds] == [(DAY, "signs")]
    assert (visit.round_id, visit.level) == (rounds[0].id, Level.ONE_LINE)
    place = book.undo()
    assert place is not None
    assert place.question is Question.OPENED
    assert not book.read.find(Round)
    assert not [left for left in book.read.find(Visit) if left.day == DAY]


def test_a_second_answer_goes_on_with_both(book: Workbook) -> None:
    first = _write(book, SetAnswer(NONE, Question.OPENED, "y"))
    assert _write(book, SetAnswer(NONE, Question.EGGS, "4-6")) == first
    assert set(book.read.answers(first)) == {Question.OPENED, Question.EGGS}
    assert len(book.read.find(Round)) == 1


def test_feed_alone_does_not_say_that_the_hive_was_opened(book: Workbook) -> None:
    _, colony_id = _ids(book)
    book.do(AddDue(DueKind.LOOK, DAY, "look", colony_id))
    feed = _write(book, GiveFeed(colony_id, DAY, "2L 1:1", NONE))
    assert _visit(book, feed).level is Level.NOT_OPENED
    assert [due.reason for due in book.read.dues(colony_id=colony_id) if due.day == DAY] == ["look"]
    assert book.read.feeds(colony_id)[0].visit_id == feed


@pytest.mark.parametrize(
    ("question", "typed", "level"),
    [
        (Question.EGGS, "y", Level.ONE_LINE),
        (Question.EGGS, "-", Level.NOT_OPENED),
        (Question.POLLEN, "y", Level.NOT_OPENED),
        (Question.SEAMS, "8", Level.ONE_LINE),
    ],
)
def test_what_is_seen_inside_says_that_it_was_opened(
    book: Workbook, question: Question, typed: str, level: Level
) -> None:
    assert _visit(book, _write(book, SetAnswer(NONE, question, typed))).level is level


def test_an_answer_no_is_believed_whatever_else_is_typed(book: Workbook) -> None:
    visit = _write(book, SetAnswer(NONE, Question.OPENED, "n"))
    _write(book, SetAnswer(NONE, Question.STORES, "8"))
    assert _visit(book, visit).level is Level.NOT_OPENED


def test_a_refused_answer_begins_nothing(book: Workbook) -> None:
    with pytest.raises(NotReadableError):
        _write(book, SetAnswer(NONE, Question.SEAMS, "many"))
    assert not book.read.find(Round)
    assert not [visit for visit in book.read.find(Visit) if visit.day == DAY]


def test_emptied_again_the_visit_goes_and_what_it_settled_is_due_again(book: Workbook) -> None:
    _, colony_id = _ids(book)
    due_id = book.do(AddDue(DueKind.LOOK, DAY, "look", colony_id))
    visit = _write(book, SetAnswer(NONE, Question.EGGS, "y"))
    done = book.read.get(Due, due_id)
    assert done is not None
    assert done.state is DueState.DONE
    assert book.do(ClearOnLine(visit, SetAnswer(visit, Question.EGGS, ""))) is None
    assert book.read.get(Visit, visit) is None
    again = book.read.get(Due, due_id)
    assert again is not None
    assert again.state is DueState.OPEN
    book.undo()
    assert book.read.get(Visit, visit) is not None


def test_a_visit_that_still_says_something_stays(book: Workbook) -> None:
    visit = _write(book, SetAnswer(NONE, Question.EGGS, "y"), SetNote(NONE, "calm"))
    assert book.do(ClearOnLine(visit, SetAnswer(visit, Question.EGGS, ""))) == visit
    assert _visit(book, visit).note == "calm"


def test_typing_in_one_field_is_one_step(book: Workbook) -> None:
    first = OnLine(*_ids(book), DAY, (SetNote(NONE, "c"),))
    assert first.merge_key == OnLine(*_ids(book), DAY, (SetNote(NONE, "calm"),)).merge_key
    assert OnLine(*_ids(book), DAY, (SetNote(NONE, "c"), SetNote(NONE, "d"))).merge_key is None
    clear = ClearOnLine(NONE, SetNote(NONE, ""))
    assert clear.merge_key == SetNote(NONE, "").merge_key
