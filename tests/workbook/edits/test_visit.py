from datetime import time

import pytest

from beeworkbook.colony.records import (
    Answer,
    Due,
    DueKind,
    DueState,
    Level,
    Question,
    Reply,
    Round,
    RoundId,
    Visit,
    VisitId,
)
from beeworkbook.workbook.edits import (
    BeginRound,
    BeginVisit,
    ChangeRound,
    PassOver,
    SetAnswer,
    SetLevel,
    SetNext,
    SetNote,
    SetTime,
    SetWho,
)
from beeworkbook.workbook.errors import GoneError, NotReadableError, RefusedError
from tests.workbook.keeping import LATER, LOOK, Keeping, as_int, days_on


def test_a_round_of_a_day_is_gone_on_with(keeping: Keeping) -> None:
    apiary = keeping.book.read.apiaries()[0]
    first = keeping.book.do(BeginRound(apiary.id, LATER, weather="fine", temperature_c=18, left_out="signs"))
    assert keeping.book.do(BeginRound(apiary.id, LATER)) == first
    found = keeping.book.read.rounds(apiary.id)
    assert [(each.weather, each.temperature_c, each.left_out) for each in found] == [("fine", 18, "signs")]
    second = keeping.book.do(BeginRound(apiary.id, days_on(LATER, 7)))
    assert second != first


def test_a_rounds_field_is_typed_as_one_step(keeping: Keeping) -> None:
    from dataclasses import replace

    apiary = keeping.book.read.apiaries()[0]
    round_id = RoundId(as_int(keeping.book.do(BeginRound(apiary.id, LATER))))
    steps = len(keeping.book._history)
    for text in ("f", "fi", "fine"):
        found = keeping.book.read.get(Round, round_id)
        assert found is not None
        keeping.book.do(ChangeRound(replace(found, weather=text), "weather"))
    assert len(keeping.book._history) == steps + 1
    other = RoundId(as_int(keeping.book.do(BeginRound(apiary.id, LOOK))))
    moved = keeping.book.read.get(Round, other)
    assert moved is not None
    with pytest.raises(RefusedError, match="already"):
        keeping.book.do(ChangeRound(replace(moved, day=LATER)))


def test_a_visit_of_a_day_is_gone_on_with_and_joins_the_round(keeping: Keeping) -> None:
    apiary = keeping.book.read.apiaries()[0]
    round_id = RoundId(as_int(keeping.book.do(BeginRound(apiary.id, LOOK))))
    assert keeping.book.do(BeginVisit(keeping.colony, LOOK, round_id)) == keeping.visit
    assert keeping.noted().round_id == round_id
    with pytest.raises(GoneError):
        keeping.book.do(BeginVisit(keeping.colony, LATER, RoundId(99)))
    with pytest.raises(GoneError, match="This colony"):
        keeping.book.do(BeginVisit(keeping.colony + 99, LATER))  # type: ignore[arg-type]


def test_a_visit_can_be_entered_for_an_earlier_day(keeping: Keeping) -> None:
    early = keeping.book.do(BeginVisit(keeping.colony, days_on(LOOK, -4), at=time(14, 30), who="A. Helper"))
    visits = keeping.book.read.visits(keeping.colony)
    assert [visit.id for visit in visits][1] == early
    assert visits[1].at == time(14, 30)


def test_an_answer_is_kept_as_typed_and_as_understood(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.BROOD, "7/4.2"))
    answer = keeping.book.read.answers(keeping.visit)[Question.BROOD]
    assert (answer.typed, answer.reply, answer.number, answer.second) == ("7/4.2", Reply.YES, 7, 4.2)
    place = keeping.book.undo()
    assert place is not None
    assert (place.visit_id, place.question) == (keeping.visit, Question.BROOD)
    assert keeping.book.read.answers(keeping.visit) == {}


def test_blank_is_no_answer_and_not_no(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "n"))
    assert keeping.book.read.answers(keeping.visit)[Question.EGGS].reply is Reply.NO
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "-"))
    assert keeping.book.read.answers(keeping.visit)[Question.EGGS].reply is Reply.NOT_LOOKED
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "  "))
    assert keeping.book.read.find(Answer) == ()
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, ""))
    assert keeping.book.read.find(Answer) == ()


def test_an_answer_that_cannot_be_read_loses_nothing(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.STORES, "8 kg"))
    before = keeping.everything()
    with pytest.raises(NotReadableError):
        keeping.book.do(SetAnswer(keeping.visit, Question.STORES, "plenty?!"))
    assert keeping.everything() == before


def test_typing_an_answer_is_one_step_within_a_pause_and_two_after_it(keeping: Keeping) -> None:
    steps = len(keeping.book._history)
    for typed in ("1", "14", "14 kg"):
        keeping.clock.seconds += 1.5
        keeping.book.do(SetAnswer(keeping.visit, Question.STORES, typed))
    assert len(keeping.book._history) == steps + 1
    keeping.clock.seconds += 2.5
    keeping.book.do(SetAnswer(keeping.visit, Question.STORES, "15 kg"))
    assert len(keeping.book._history) == steps + 2
    keeping.book.end_merge()
    keeping.book.do(SetAnswer(keeping.visit, Question.STORES, "16 kg"))
    assert len(keeping.book._history) == steps + 3


def test_typed_and_emptied_again_within_a_pause_is_no_step(keeping: Keeping) -> None:
    before, steps = keeping.everything(), len(keeping.book._history)
    keeping.book.do(SetNote(keeping.visit, "x"))
    keeping.book.do(SetNote(keeping.visit, ""))
    assert len(keeping.book._history) == steps
    assert keeping.everything() == before


def test_not_opened_lowers_the_level_only_where_no_comb_says_more(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.OPENED, "n"))
    assert keeping.noted().level is Level.NOT_OPENED
    keeping.book.do(SetAnswer(keeping.visit, Question.OPENED, "y"))
    assert keeping.noted().level is Level.ONE_LINE
    keeping.paint(5)
    keeping.book.do(SetAnswer(keeping.visit, Question.OPENED, "n"))
    assert keeping.noted().level is Level.PAINTED


def test_words_of_a_visit(keeping: Keeping) -> None:
    keeping.book.do(SetNote(keeping.visit, "dark comb in 4"))
    keeping.book.do(SetWho(keeping.visit, "A. Helper"))
    keeping.book.do(SetTime(keeping.visit, time(17, 0)))
    visit = keeping.noted()
    assert (visit.note, visit.who, visit.at) == ("dark comb in 4", "A. Helper", time(17, 0))
    steps = len(keeping.book._history)
    keeping.book.do(SetTime(keeping.visit, time(17, 0)))
    assert len(keeping.book._history) == steps


def _looks(keeping: Keeping) -> dict[int, tuple[DueKind, DueState]]:
    kinds = {DueKind.LOOK, DueKind.FIRST_LOOK}
    return {due.id: (due.kind, due.state) for due in keeping.book.read.find(Due) if due.kind in kinds}


def test_the_next_day_keeps_its_due_in_step(keeping: Keeping) -> None:
    keeping.book.do(SetNext(keeping.visit, LATER, "eight days, she is laying"))
    due = keeping.book.read.find(Due, visit_id=keeping.visit)[0]
    assert (due.day, due.reason, due.kind) == (LATER, "eight days, she is laying", DueKind.LOOK)
    keeping.book.do(SetNext(keeping.visit, days_on(LATER, 1), ""))
    assert keeping.book.read.find(Due, visit_id=keeping.visit)[0].day == days_on(LATER, 1)
    keeping.book.do(SetNext(keeping.visit, None))
    assert keeping.book.read.find(Due, visit_id=keeping.visit) == ()
    assert keeping.noted().next_day is None
    with pytest.raises(RefusedError, match="later day"):
        keeping.book.do(SetNext(keeping.visit, LOOK))


def test_a_look_that_was_due_is_done_by_looking_and_due_again_if_it_was_not_opened(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "y"))
    first = next(due for due in keeping.book.read.find(Due) if due.kind is DueKind.FIRST_LOOK)
    assert (first.state, first.done_visit_id) == (DueState.DONE, keeping.visit)
    keeping.book.do(SetLevel(keeping.visit, Level.NOT_OPENED))
    assert _looks(keeping)[first.id] == (DueKind.FIRST_LOOK, DueState.OPEN)
    keeping.book.do(SetLevel(keeping.visit, Level.ONE_LINE))
    assert _looks(keeping)[first.id] == (DueKind.FIRST_LOOK, DueState.DONE)


def test_a_new_next_day_takes_the_place_of_earlier_ones(keeping: Keeping) -> None:
    keeping.book.do(SetNext(keeping.visit, days_on(LATER, 3), "a week"))
    old = keeping.book.read.find(Due, visit_id=keeping.visit)[0]
    later = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    keeping.book.do(SetNext(later, days_on(LATER, 7), "a week"))
    done = keeping.book.read.get(Due, old.id)
    assert done is not None
    assert (done.state, done.done_visit_id) == (DueState.DONE, later)
    keeping.book.do(SetNext(later, None))
    again = keeping.book.read.get(Due, old.id)
    assert again is not None
    assert again.state is DueState.OPEN


def test_an_older_visit_entered_late_leaves_what_a_newer_one_asked_for(keeping: Keeping) -> None:
    later = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    keeping.book.do(SetNext(later, days_on(LATER, 7), "a week"))
    keeping.book.do(SetNext(keeping.visit, days_on(LOOK, 7), "a week"))
    due = keeping.book.read.find(Due, visit_id=later)[0]
    assert due.state is DueState.OPEN


def test_a_colony_passed_over_is_a_fact_and_not_a_look(keeping: Keeping) -> None:
    made = VisitId(as_int(keeping.book.do(PassOver(keeping.colony, LATER, reason="rain"))))
    visit = keeping.book.read.get(Visit, made)
    assert visit is not None
    assert (visit.level, visit.note) == (Level.PASSED_OVER, "rain")
    assert keeping.book.undo_label == "pass Wall over"
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "y"))
    with pytest.raises(RefusedError, match="not passed over"):
        keeping.book.do(PassOver(keeping.colony, LOOK))
