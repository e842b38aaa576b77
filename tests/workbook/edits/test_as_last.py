"""A side as it was last time."""

import pytest

from beeworkbook.colony.records import VisitId
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.workbook.edits.as_last import AsLastTime
from beeworkbook.workbook.edits.in_visit import NO_VISIT, InVisit
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import LATER, Keeping


def test_it_copies_the_look_before_and_begins_the_visit_with_it(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(3), "S4H4"))
    keeping.book.do(InVisit(keeping.colony, LATER, AsLastTime(NO_VISIT, keeping.frame(3), Face.A)))
    visit = keeping.book.read.visits(keeping.colony)[-1]
    side = keeping.side(3, Face.A, visit.id)
    before = keeping.side(3, Face.A)
    assert side is not None
    assert before is not None
    assert (side.origin, side.grain, side.cells) == (Origin.UNCHANGED, Origin.EIGHTHS, before.cells)
    assert keeping.side(3, Face.B, visit.id) is None


def test_a_side_nobody_looked_at_is_refused_and_begins_nothing(keeping: Keeping) -> None:
    before = keeping.everything()
    with pytest.raises(RefusedError, match="not looked at before"):
        keeping.book.do(InVisit(keeping.colony, LATER, AsLastTime(VisitId(0), keeping.frame(5), Face.A)))
    assert keeping.everything() == before
