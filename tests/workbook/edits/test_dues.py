import pytest

from beeworkbook.colony.records import Due, DueId, DueKind, DueState
from beeworkbook.workbook.edits import AddDue, DoDue, DropDue, MoveDue, SetNext, UndoDue
from beeworkbook.workbook.errors import GoneError, RefusedError
from tests.workbook.keeping import LATER, LOOK, Keeping, as_int, days_on


def _add(keeping: Keeping, **more: object) -> DueId:
    edit = AddDue(DueKind.BRING, LATER, "bring a super", keeping.colony, **more)  # type: ignore[arg-type]
    return DueId(as_int(keeping.book.do(edit)))


def _due(keeping: Keeping, due_id: DueId) -> Due:
    found = keeping.book.read.get(Due, due_id)
    assert found is not None
    return found


def test_a_due_is_put_down_done_and_open_again(keeping: Keeping) -> None:
    due_id = _add(keeping)
    assert keeping.book.undo_label == "put down for 16 May: bring a super"
    keeping.book.do(DoDue(due_id))
    assert (_due(keeping, due_id).state, _due(keeping, due_id).done_visit_id) == (DueState.DONE, None)
    keeping.book.do(UndoDue(due_id))
    assert (_due(keeping, due_id).state, _due(keeping, due_id).done_visit_id) == (DueState.OPEN, None)
    keeping.book.do(DropDue(due_id))
    assert _due(keeping, due_id).state is DueState.DROPPED
    with pytest.raises(GoneError):
        keeping.book.do(DoDue(DueId(99)))


def test_a_moved_range_keeps_its_length(keeping: Keeping) -> None:
    due_id = _add(keeping, until=days_on(LATER, 10))
    keeping.book.do(MoveDue(due_id, days_on(LATER, 3)))
    due = _due(keeping, due_id)
    assert (due.day, due.until) == (days_on(LATER, 3), days_on(LATER, 13))
    with pytest.raises(RefusedError, match="ends before"):
        _add(keeping, until=LOOK)


def test_the_visits_next_day_moves_along(keeping: Keeping) -> None:
    keeping.book.do(SetNext(keeping.visit, LATER, "why"))
    due = keeping.book.read.find(Due, visit_id=keeping.visit)[0]
    keeping.book.do(MoveDue(due.id, days_on(LATER, 1)))
    assert keeping.noted().next_day == days_on(LATER, 1)
    keeping.book.do(MoveDue(due.id, LOOK))
    assert keeping.noted().next_day == days_on(LATER, 1)
    steps = len(keeping.book._history)
    keeping.book.do(MoveDue(due.id, LOOK))
    assert len(keeping.book._history) == steps
