import pytest

from beeworkbook.colony.records import Side, SideId, VisitId
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.workbook.edits import BeginVisit, LayOutComb
from beeworkbook.workbook.edits.sides import (
    cells_in,
    copied,
    last_side,
    other_frames,
    place_of_side,
    put_side,
    side_name,
    side_or_blank,
)
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import LATER, Keeping, as_int, days_on


def test_a_side_nobody_noted_is_blank_and_has_no_id(keeping: Keeping) -> None:
    with keeping.book._base.write() as tx:
        side = side_or_blank(tx, keeping.noted(), keeping.frame(5), Face.B)
        assert (side.id, side.place, side.face, side.part_id) == (0, 5, Face.B, keeping.box.id)
        assert cells_in(tx, side) == keeping.book.read.frame_type("bs_deep").lattice.cells
        kept = put_side(tx, side)
        assert kept.id > 0
        assert side_or_blank(tx, keeping.noted(), keeping.frame(5), Face.B) == kept
        steps = len(tx.journal)
        assert put_side(tx, kept) == kept
        assert len(tx.journal) == steps
    assert side_name(kept) == "5B"
    assert place_of_side(keeping.noted(), kept).frame_id == keeping.frame(5)


def test_the_last_side_is_the_latest_before_and_the_latest_seen_if_asked(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4"))
    second = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    keeping.book.do(LayOutComb(second, keeping.frame(5), "?"))
    third = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, days_on(LATER, 7)))))
    from beeworkbook.colony.records import Visit

    visit = keeping.book.read.get(Visit, third)
    assert visit is not None
    with keeping.book._base.write() as tx:
        any_side = last_side(tx, visit, keeping.frame(5), Face.A, seen=False)
        seen = last_side(tx, visit, keeping.frame(5), Face.A, seen=True)
        none = last_side(tx, keeping.noted(), keeping.frame(5), Face.A, seen=True)
    assert any_side is not None
    assert seen is not None
    assert (any_side.visit_id, any_side.origin) == (second, Origin.ASSUMED)
    assert (seen.visit_id, none) == (keeping.visit, None)


def test_a_copy_is_refused_across_frame_types(keeping: Keeping) -> None:
    keeping.paint(5)
    source = keeping.side(5)
    assert source is not None
    from dataclasses import replace

    other: Side = replace(source, id=SideId(0), frame_type="zander")
    with keeping.book._base.write() as tx:
        assert "does not fit" in other_frames(tx, "bs_deep", "zander")
        with pytest.raises(RefusedError, match="does not fit"):
            copied(tx, other, source, Origin.UNCHANGED)
