import tempfile
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.colony.records import Level, Side, VisitId
from beeworkbook.comb.contents import Content, Face, MarkKind, Origin
from beeworkbook.comb.side import CellPatch, PatchMismatchError, blank_cells
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits import (
    AddFrame,
    AddMark,
    AddPart,
    BeginVisit,
    ClearSide,
    CopySide,
    LayOutComb,
    PaintCells,
    SetCovered,
    SetLevel,
    TakeFrame,
)
from beeworkbook.workbook.errors import GoneError, RefusedError
from tests.workbook.keeping import LATER, LOOK, Keeping, as_int


def test_the_first_stroke_makes_a_painted_side_and_names_itself(keeping: Keeping) -> None:
    keeping.paint(5, Face.A, Content.SEALED)
    side = keeping.side(5)
    assert side is not None
    assert (side.origin, side.grain, side.place, side.typed) == (Origin.PAINTED, Origin.PAINTED, 5, "")
    assert np.count_nonzero(keeping.cells(5) == Content.SEALED) == 40
    assert np.count_nonzero(keeping.cells(5)) == 40
    assert keeping.book.undo_label == "paint sealed brood on 5A"
    assert keeping.noted().level is Level.PAINTED


def test_erasing_says_so_and_a_label_of_ones_own_is_kept(keeping: Keeping) -> None:
    keeping.paint(5)
    keeping.paint(5, content=Content.NOT_RECORDED)
    assert keeping.book.undo_label == "erase on 5A"
    patch = CellPatch.painting(keeping.cells(5), np.arange(7), Content.OPEN)
    keeping.book.do(PaintCells(keeping.visit, keeping.frame(5), Face.A, patch))
    assert keeping.book.undo_label == "paint on 5A"
    patch = CellPatch.painting(keeping.cells(5), np.arange(7), Content.EGGS)
    keeping.book.do(PaintCells(keeping.visit, keeping.frame(5), Face.A, patch, label="fill eggs on 5A"))
    assert keeping.book.undo_label == "fill eggs on 5A"


def test_a_stroke_on_other_cells_than_are_kept_changes_nothing(keeping: Keeping) -> None:
    keeping.paint(5)
    before = keeping.everything()
    lattice = keeping.book.read.frame_type("bs_deep").lattice
    stale = CellPatch.painting(blank_cells(lattice), np.arange(10), Content.OPEN)
    with pytest.raises(PatchMismatchError):
        keeping.book.do(PaintCells(keeping.visit, keeping.frame(5), Face.A, stale, Content.OPEN))
    assert keeping.everything() == before
    assert keeping.book.undo_label == "paint eggs on 5A"


@settings(max_examples=20)
@given(st.lists(st.tuples(st.sampled_from(Content), st.integers(0, 2000), st.integers(1, 300)), max_size=6))
def test_paint_and_undo_is_nothing(strokes: list[tuple[Content, int, int]]) -> None:
    with tempfile.TemporaryDirectory() as folder, Keeping(Path(folder) / "trial.beebook") as kept:
        before, steps = kept.everything(), len(kept.book._history)
        for content, first, count in strokes:
            kept.paint(4, Face.B, content, first, count)
        while len(kept.book._history) > steps:
            kept.book.undo()
        assert kept.everything() == before


def test_painting_on_a_laid_out_side_makes_it_painted(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "E1O2S4H1"))
    keeping.paint(5, Face.A, Content.POLLEN)
    a, b = keeping.side(5, Face.A), keeping.side(5, Face.B)
    assert a is not None
    assert b is not None
    assert (a.origin, a.grain, a.typed, a.copied_from) == (Origin.PAINTED, Origin.PAINTED, "", None)
    assert (b.origin, b.typed) == (Origin.EIGHTHS, "E1O2S4H1")


def test_painting_never_lowers_and_undo_brings_the_level_back(keeping: Keeping) -> None:
    keeping.book.do(SetLevel(keeping.visit, Level.NOT_OPENED))
    keeping.paint(5)
    assert keeping.noted().level is Level.PAINTED
    keeping.book.undo()
    assert keeping.noted().level is Level.NOT_OPENED
    keeping.book.redo()
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(6), "S4"))
    assert keeping.noted().level is Level.PAINTED


def _assume_later(keeping: Keeping) -> VisitId:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S8"))
    later = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    keeping.book.do(LayOutComb(later, keeping.frame(5), "?"))
    return later


def test_of_an_assumed_side_only_what_is_painted_was_seen(keeping: Keeping) -> None:
    later = _assume_later(keeping)
    before = keeping.everything()
    heard: list[Changes] = []
    keeping.book.subscribe(heard.append)
    side_id = keeping.paint(5, Face.A, Content.EGGS, 100, 30, later)
    cells, side = keeping.cells(5, Face.A, later), keeping.side(5, Face.A, later)
    assert side is not None
    assert (side.origin, side.copied_from) == (Origin.PAINTED, None)
    assert np.flatnonzero(cells).tolist() == list(range(100, 130))
    assert len(heard[0].cells[side_id]) == len(cells)
    keeping.book.undo()
    assert keeping.everything() == before


def test_bees_seen_on_an_assumed_side_leave_its_contents_unseen(keeping: Keeping) -> None:
    later = _assume_later(keeping)
    keeping.book.do(SetCovered(later, keeping.frame(5), Face.A, 4))
    side = keeping.side(5, Face.A, later)
    assert side is not None
    assert (side.origin, side.covered, side.typed) == (Origin.EIGHTHS, 4, "")
    assert not keeping.cells(5, Face.A, later).any()


def test_an_empty_patch_on_a_side_that_is_there_is_no_step(keeping: Keeping) -> None:
    keeping.paint(5)
    patch = CellPatch.painting(keeping.cells(5), np.arange(40), Content.EGGS)
    steps = len(keeping.book._history)
    keeping.book.do(PaintCells(keeping.visit, keeping.frame(5), Face.A, patch, Content.EGGS))
    assert patch.is_empty
    assert len(keeping.book._history) == steps


def test_a_comb_that_hung_nowhere_cannot_be_painted(keeping: Keeping) -> None:
    frame = keeping.frame(5)
    keeping.book.do(TakeFrame(frame, LOOK))
    patch = CellPatch.painting(
        blank_cells(keeping.book.read.frame_type("bs_deep").lattice), np.arange(3), Content.EGGS
    )
    with pytest.raises(RefusedError, match="hung in no hive"):
        keeping.book.do(PaintCells(keeping.visit, frame, Face.A, patch, Content.EGGS))
    with pytest.raises(GoneError):
        keeping.book.do(PaintCells(keeping.visit, frame + 900, Face.A, patch))  # type: ignore[arg-type]


def test_bees_are_noted_in_eighths_and_blank_is_not_nought(keeping: Keeping) -> None:
    frame = keeping.frame(5)
    keeping.book.do(SetCovered(keeping.visit, frame, Face.A, None))
    assert keeping.side(5) is None
    keeping.book.do(SetCovered(keeping.visit, frame, Face.A, 5))
    side = keeping.side(5)
    assert side is not None
    assert side.covered == 5
    assert not keeping.cells(5).any()
    with pytest.raises(RefusedError):
        keeping.book.do(SetCovered(keeping.visit, frame, Face.A, 9))
    keeping.book.do(SetCovered(keeping.visit, frame, Face.A, None))
    again = keeping.side(5)
    assert again is not None
    assert again.covered is None


def test_a_copied_side_is_as_coarse_as_what_it_copies(keeping: Keeping) -> None:
    keeping.paint(5)
    source = keeping.side(5)
    assert source is not None
    later = keeping.book.do(CopySide(keeping.visit, keeping.frame(6), Face.B, source.id))
    side = keeping.side(6, Face.B)
    assert side is not None
    assert side.id == later
    assert (side.origin, side.grain, side.copied_from) == (Origin.UNCHANGED, Origin.PAINTED, source.id)
    assert (keeping.cells(6, Face.B) == keeping.cells(5)).all()
    with pytest.raises(RefusedError, match="side itself"):
        keeping.book.do(CopySide(keeping.visit, keeping.frame(5), Face.A, source.id))


def test_a_drawing_of_another_frame_type_is_refused_in_words(keeping: Keeping) -> None:
    keeping.paint(5)
    source = keeping.side(5)
    assert source is not None
    hive = keeping.book.read.hive_day(keeping.colony, LOOK)
    assert hive is not None
    from beeworkbook.colony.records import PartKind

    made = keeping.book.do(AddPart(hive.hive.id, PartKind.SUPER, LOOK, frame_type="bs_shallow", places=2))
    shallow = keeping.book.do(AddFrame(made, 1, LOOK))  # type: ignore[arg-type]
    with pytest.raises(RefusedError, match="does not fit"):
        keeping.book.do(CopySide(keeping.visit, shallow, Face.A, source.id))  # type: ignore[arg-type]


def test_clearing_a_side_takes_the_marks_on_its_cells_along(keeping: Keeping) -> None:
    keeping.paint(5)
    frame = keeping.frame(5)
    keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, frame, Face.A, 17))
    loose = keeping.book.do(AddMark(keeping.visit, MarkKind.NOTE, frame, text="dark comb"))
    keeping.book.do(ClearSide(keeping.visit, frame, Face.A))
    assert keeping.side(5) is None
    assert [mark.id for mark in keeping.book.read.marks(keeping.visit)] == [loose]
    with pytest.raises(RefusedError, match="nothing to clear"):
        keeping.book.do(ClearSide(keeping.visit, frame, Face.A))
    keeping.book.undo()
    assert keeping.side(5) is not None


def test_drone_comb_is_remembered_by_the_side(keeping: Keeping) -> None:
    from beeworkbook.workbook.edits import SetDroneCells

    keeping.book.do(SetDroneCells(keeping.frame(5), drone_cells=True))
    keeping.paint(5)
    side = keeping.side(5)
    assert side is not None
    assert side.drone_cells
    keeping.book.do(SetDroneCells(keeping.frame(5), drone_cells=False, visit_id=keeping.visit))
    assert keeping.side(5) == replace(side, drone_cells=False)
    assert keeping.book.read.find(Side, frame_id=keeping.frame(5, LATER))
