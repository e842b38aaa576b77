import pytest

from beeworkbook.colony.records import Due, DueId, DueKind, DueState, VisitId
from beeworkbook.workbook.edits.do_in_visit import DoInVisit
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import LATER, Keeping, as_int


def test_the_due_is_done_and_its_visit_begun_as_one_step(keeping: Keeping) -> None:
    due_id = DueId(as_int(keeping.book.do(AddDue(DueKind.LOOK, LATER, "see", keeping.colony))))
    before = keeping.everything()
    visit_id = VisitId(as_int(keeping.book.do(DoInVisit(due_id, LATER))))
    due = keeping.book.read.get(Due, due_id)
    assert due is not None
    assert (due.state, due.done_visit_id) == (DueState.DONE, visit_id)
    assert [visit.id for visit in keeping.book.read.visits(keeping.colony)][-1] == visit_id
    keeping.book.undo()
    assert keeping.everything() == before


def test_what_is_due_for_no_colony_has_no_visit(keeping: Keeping) -> None:
    apiary = keeping.book.read.apiaries()[0]
    due = keeping.book.do(AddDue(DueKind.BRING, LATER, "straps", apiary_id=apiary.id))
    with pytest.raises(RefusedError):
        keeping.book.do(DoInVisit(DueId(as_int(due)), LATER))
