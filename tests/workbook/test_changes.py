import numpy as np

from beeworkbook.colony.records import Answer, Colony, Mark, Question, Side, SideId, Visit
from beeworkbook.comb.contents import Content, Face
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits import ClearSide, LayOutComb, RenameRecord, SetAnswer, SwapSides
from tests.workbook.keeping import Keeping


def _hear(keeping: Keeping) -> list[Changes]:
    heard: list[Changes] = []
    keeping.book.subscribe(heard.append)
    return heard


def test_a_stroke_names_its_side_its_cells_and_its_visit(keeping: Keeping) -> None:
    heard = _hear(keeping)
    side = keeping.paint(5, Face.A, Content.EGGS, 100, 25)
    keeping.paint(5, Face.A, Content.OPEN, 110, 30)
    first, second = heard
    assert first.cells[side].tolist() == list(range(100, 125))
    assert second.cells[side].tolist() == list(range(110, 140))
    assert not second.cells[side].flags.writeable
    assert second.visits == {keeping.visit}
    assert second.colonies == {keeping.colony}
    assert second.touches(Side)
    assert not second.touches(Mark)
    assert (Side, side) in second.steps
    keeping.book.undo()
    assert heard[-1].cells[side].tolist() == list(range(110, 140))


def test_a_side_that_went_held_what_it_held(keeping: Keeping) -> None:
    side = keeping.paint(5, count=7)
    heard = _hear(keeping)
    keeping.book.do(ClearSide(keeping.visit, keeping.frame(5), Face.A))
    assert heard[0].cells[side].tolist() == list(range(7))


def test_a_side_whose_cells_did_not_change_has_none(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4"))
    heard = _hear(keeping)
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4W3"))
    assert all(len(cells) == 0 for cells in heard[0].cells.values())
    assert len(heard[0].cells) == 2


def test_swapped_sides_name_the_cells_that_differ(keeping: Keeping) -> None:
    keeping.paint(5, Face.A, count=10)
    keeping.paint(5, Face.B, first=5, count=10)
    heard = _hear(keeping)
    keeping.book.do(SwapSides(keeping.visit, keeping.frame(5)))
    expected = [*range(5), *range(10, 15)]
    assert [cells.tolist() for cells in heard[0].cells.values()] == [expected, expected]


def test_a_side_that_became_one_of_another_frame_is_wholly_changed(keeping: Keeping) -> None:
    from dataclasses import replace

    from beeworkbook.comb.codec import pack
    from beeworkbook.comb.frames import FRAME_TYPES
    from beeworkbook.comb.side import blank_cells
    from beeworkbook.store.transaction import Step
    from beeworkbook.workbook.changes import changes_of

    side_id = keeping.paint(5)
    before = keeping.side(5)
    assert before is not None
    lattice = FRAME_TYPES["bs_shallow"].lattice
    after = replace(before, frame_type="bs_shallow", cells=pack(blank_cells(lattice)))
    changes = changes_of(
        [Step(Side, side_id, before, after)],
        lambda _visit: None,
        lambda side: FRAME_TYPES[side.frame_type].lattice.cells,
    )
    assert len(changes.cells[side_id]) == FRAME_TYPES["bs_deep"].lattice.cells


def test_the_colony_is_known_through_the_visit_and_the_source_is_passed_on(keeping: Keeping) -> None:
    heard = _hear(keeping)
    me = object()
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "y"), source=me)
    assert heard[0].source is me
    assert heard[0].colonies == {keeping.colony}
    assert heard[0].touches(Answer)
    assert heard[0].cells == {}
    keeping.book.do(RenameRecord(Colony, keeping.colony, "Elder"))
    assert heard[1].colonies == {keeping.colony}
    assert not heard[1].visits


def test_everything_touches_everything() -> None:
    assert Changes(everything=True).touches(Visit)
    assert not Changes().touches(Visit)
    assert Changes(cells={SideId(1): np.arange(3)}).cells[SideId(1)].tolist() == [0, 1, 2]
