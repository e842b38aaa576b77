import numpy as np
import pytest

from beeworkbook.colony.records import Level, Mark
from beeworkbook.comb.contents import Content, Face, MarkKind, Origin
from beeworkbook.comb.regions import mirror
from beeworkbook.workbook.edits import AddMark, LayOutComb, MirrorSide
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import Keeping


def test_a_mirrored_side_keeps_its_origin_and_its_marks_go_with_their_cells(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "E1O2S3P1H1"))
    keeping.paint(5, Face.A, Content.DRONE, first=3, count=2)
    keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, keeping.frame(5), Face.A, 3))
    keeping.book.do(AddMark(keeping.visit, MarkKind.NOTE, keeping.frame(5), Face.A, text="patchy"))
    lattice = keeping.book.read.frame_type(keeping.box.frame_type).lattice
    cells, other, before = keeping.cells(5), keeping.cells(5, Face.B), keeping.everything()
    keeping.book.do(MirrorSide(keeping.visit, keeping.frame(5), Face.A))
    assert np.array_equal(keeping.cells(5), mirror(lattice, cells))
    assert np.array_equal(keeping.cells(5, Face.B), other)
    opposite = lattice.cell(0, lattice.first_row - 1 - 3)
    assert {mark.cell for mark in keeping.book.read.find(Mark)} == {opposite, None}
    assert keeping.cells(5)[opposite] == Content.DRONE
    assert keeping.book.undo_label == "mirror 5A"
    keeping.book.undo()
    assert keeping.everything() == before


def test_mirrored_twice_a_side_is_itself_and_a_laid_out_one_is_still_laid_out(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "E1O2S3P1H1"))
    before, level = keeping.cells(5), keeping.noted().level
    for _ in range(2):
        keeping.book.do(MirrorSide(keeping.visit, keeping.frame(5), Face.A))
        side = keeping.side(5)
        assert side is not None
        assert (side.origin, side.typed) == (Origin.EIGHTHS, "E1O2S3P1H1")
    assert np.array_equal(keeping.cells(5), before)
    assert keeping.noted().level is level is Level.BY_COMB


def test_a_side_of_which_nothing_was_noted_cannot_be_mirrored(keeping: Keeping) -> None:
    with pytest.raises(RefusedError, match="nothing to mirror"):
        keeping.book.do(MirrorSide(keeping.visit, keeping.frame(5), Face.A))
