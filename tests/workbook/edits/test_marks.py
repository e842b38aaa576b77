from dataclasses import replace

import pytest

from beeworkbook.colony.records import Mark, MarkId
from beeworkbook.comb.contents import CellFate, CellKind, Face, MarkKind
from beeworkbook.workbook.edits import AddMark, ChangeMark, MoveMark, RemoveMark
from beeworkbook.workbook.edits.marks import check_mark, mark_words
from beeworkbook.workbook.errors import GoneError, RefusedError
from tests.workbook.keeping import Keeping, as_int


def _mark(keeping: Keeping, mark_id: object) -> Mark:
    found = keeping.book.read.get(Mark, mark_id)
    assert found is not None
    return found


def test_a_mark_has_the_place_that_was_seen_and_no_other(keeping: Keeping) -> None:
    five = keeping.frame(5)
    on_cell = keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, five, Face.A, 17))
    assert keeping.book.undo_label == "mark the queen on 5A"
    on_comb = keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN_CELL, five, cell_kind=CellKind.CHARGED))
    assert keeping.book.undo_label == "mark a charged queen cell on 5"
    on_visit = keeping.book.do(AddMark(keeping.visit, MarkKind.NOTE, text="smoke not needed"))
    assert keeping.book.undo_label == "mark a note"
    places = [(mark.frame_id, mark.face, mark.cell) for mark in keeping.book.read.marks(keeping.visit)]
    assert places == [(five, Face.A, 17), (five, None, None), (None, None, None)]
    assert len({on_cell, on_comb, on_visit}) == 3


def test_a_place_that_is_not_there_is_refused(keeping: Keeping) -> None:
    five = keeping.frame(5)
    for edit in (
        AddMark(keeping.visit, MarkKind.QUEEN, five, Face.A, 10**6),
        AddMark(keeping.visit, MarkKind.QUEEN, five, None, 3),
        AddMark(keeping.visit, MarkKind.QUEEN, None, Face.A),
        AddMark(keeping.visit, MarkKind.QUEEN, five, Face.A, -1),
    ):
        with pytest.raises(RefusedError):
            keeping.book.do(edit)
    with pytest.raises(GoneError):
        keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, five + 999, Face.A, 1))  # type: ignore[arg-type]


def test_a_mark_is_dragged_changed_and_taken_away(keeping: Keeping) -> None:
    made = MarkId(
        as_int(keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN_CELL, keeping.frame(5), Face.A, 17)))
    )
    keeping.book.do(MoveMark(made, keeping.frame(6), Face.B, 40))
    moved = _mark(keeping, made)
    assert (moved.frame_id, moved.face, moved.cell) == (keeping.frame(6), Face.B, 40)
    assert keeping.book.undo_label == "move a queen cell on 6B"
    keeping.book.do(ChangeMark(replace(moved, cell_kind=CellKind.SEALED, fate=CellFate.KNOCKED_DOWN)))
    assert _mark(keeping, made).fate is CellFate.KNOCKED_DOWN
    steps = len(keeping.book._history)
    for text in ("l", "lo", "low"):
        keeping.book.do(ChangeMark(replace(_mark(keeping, made), text=text), "text"))
    assert len(keeping.book._history) == steps + 1
    place = keeping.book.undo()
    assert place is not None
    assert (place.frame_id, place.face) == (keeping.frame(6), Face.B)
    keeping.book.do(RemoveMark(made))
    assert keeping.book.undo_label == "take a sealed queen cell away"
    with pytest.raises(GoneError, match="This mark"):
        keeping.book.do(RemoveMark(made))


def test_a_mark_without_a_comb_needs_no_check(keeping: Keeping) -> None:
    mark = Mark(MarkId(0), keeping.visit, MarkKind.NOTE)
    with keeping.book._base.write() as tx:
        check_mark(tx, mark)
    assert mark_words(mark) == "a note"
