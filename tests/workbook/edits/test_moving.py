import pytest

from beeworkbook.colony.records import Due, DueState, Visit
from beeworkbook.comb.contents import MarkKind
from beeworkbook.workbook.edits import AddMark, AddPart, LayOutComb, MoveDrawing, MoveFrame, MoveVisit
from beeworkbook.workbook.edits.moving import bring, combs_of, reopen_dues
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import LATER, LOOK, Keeping, as_int


def test_the_combs_of_a_visit_are_those_with_sides_or_marks(keeping: Keeping) -> None:
    keeping.paint(5)
    keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, keeping.frame(7)))
    keeping.book.do(AddMark(keeping.visit, MarkKind.NOTE, text="loose"))
    with keeping.book._base.write() as tx:
        found = combs_of(tx, keeping.noted())
    assert found == {(keeping.frame(5), keeping.box.id), (keeping.frame(7), keeping.box.id)}


def test_what_a_visit_had_done_is_due_again(keeping: Keeping) -> None:
    with keeping.book._base.write() as tx:
        reopen_dues(tx, keeping.noted())
    assert {due.state for due in keeping.book.read.find(Due)} == {DueState.OPEN}


def test_on_another_day_a_comb_is_where_it_hung_then(keeping: Keeping) -> None:
    five = keeping.frame(5)
    keeping.paint(5)
    keeping.book.do(MoveFrame(five, keeping.box.id, 9, LATER))
    keeping.book.do(MoveVisit(keeping.visit, keeping.colony, LATER))
    assert [(side.frame_id, side.place) for side in keeping.book.read.sides(keeping.visit)] == [(five, 9)]


def test_a_comb_of_an_upper_box_needs_an_upper_box_there(keeping: Keeping) -> None:
    from beeworkbook.colony.records import PartKind
    from beeworkbook.comb.contents import Content

    hive = keeping.book.read.hive_day(keeping.colony, LOOK)
    assert hive is not None
    part = as_int(
        keeping.book.do(
            AddPart(
                hive.hive.id,
                PartKind.SUPER,
                LOOK,
                frame_type="bs_shallow",
                places=3,
                new_frames=Content.EMPTY,
            )
        )
    )
    assert part
    other = keeping.another()
    before = keeping.everything()
    with pytest.raises(RefusedError, match="no comb in place"):
        keeping.book.do(MoveVisit(keeping.visit, other, LATER))
    assert keeping.everything() == before


def test_a_visit_brought_where_there_is_none_keeps_its_id(keeping: Keeping) -> None:
    with keeping.book._base.write() as tx:
        moved = bring(tx, keeping.noted(), keeping.colony, LATER, None)
    assert moved.id == keeping.visit
    assert keeping.book.read.get(Visit, keeping.visit) == moved


def test_a_drawing_typed_and_moved_leaves_its_text(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4"))
    keeping.book.do(MoveDrawing(keeping.visit, keeping.frame(5), keeping.frame(6)))
    side = keeping.side(6)
    assert side is not None
    assert side.typed == "S4"
