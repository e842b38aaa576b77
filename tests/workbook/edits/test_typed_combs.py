from collections import Counter
from dataclasses import replace

import numpy as np
import pytest

from beeworkbook.colony.records import Level, Side, VisitId
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind, Origin
from beeworkbook.workbook.edits import AddMark, BeginVisit, LayOutComb, SetCovered, TurnFrame
from beeworkbook.workbook.errors import NotReadableError
from tests.workbook.keeping import LATER, Keeping, as_int, days_on


def _type(keeping: Keeping, place: int, typed: str, visit: VisitId | None = None) -> None:
    keeping.book.do(LayOutComb(visit or keeping.visit, keeping.frame(place), typed))


def _next_visit(keeping: Keeping) -> VisitId:
    return VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))


def test_both_sides_alike_are_laid_out_with_the_asked_cells(keeping: Keeping) -> None:
    _type(keeping, 5, "E1O2S4H1")
    for face in Face:
        side, cells = keeping.side(5, face), keeping.cells(5, face)
        assert side is not None
        assert (side.origin, side.grain, side.typed) == (Origin.EIGHTHS, Origin.EIGHTHS, "E1O2S4H1")
        counts = np.bincount(cells, minlength=12)
        assert abs(counts[Content.SEALED] - len(cells) / 2) <= 1
        assert abs(counts[Content.EGGS] - len(cells) / 8) <= 1
    assert (keeping.cells(5, Face.A) != keeping.cells(5, Face.B)).any()
    assert keeping.noted().level is Level.BY_COMB
    assert keeping.book.undo_label == "type comb 5"


def test_each_side_on_its_own_raises_the_level_further(keeping: Keeping) -> None:
    _type(keeping, 5, "S4 / S2O2")
    a, b = keeping.side(5, Face.A), keeping.side(5, Face.B)
    assert a is not None
    assert b is not None
    assert (a.typed, b.typed) == ("S4", "S2O2")
    assert keeping.noted().level is Level.BY_SIDE


def test_the_same_text_lays_out_the_same_comb(keeping: Keeping) -> None:
    _type(keeping, 5, "E1O2S4H1")
    first = keeping.cells(5)
    _type(keeping, 5, "S8")
    _type(keeping, 5, "e1 o2 s4 h1")
    assert (keeping.cells(5) == first).all()
    steps = len(keeping.book._history)
    keeping.book.end_merge()
    _type(keeping, 5, "E1O2S4H1")
    assert len(keeping.book._history) == steps


def test_looked_at_and_unchanged_copies_with_the_grain_and_the_chain(keeping: Keeping) -> None:
    keeping.paint(5, Face.A)
    _type(keeping, 5, "S4 / S2O2")
    keeping.paint(5, Face.A)
    visit = _next_visit(keeping)
    _type(keeping, 5, "=", visit)
    for face, grain in ((Face.A, Origin.PAINTED), (Face.B, Origin.EIGHTHS)):
        before, side = keeping.side(5, face), keeping.side(5, face, visit)
        assert before is not None
        assert side is not None
        assert (side.origin, side.grain, side.copied_from) == (Origin.UNCHANGED, grain, before.id)
        assert side.cells == before.cells
        assert side.typed == "="


def test_not_looked_at_is_assumed_and_never_taken_for_seen(keeping: Keeping) -> None:
    _type(keeping, 5, "S4")
    visit = _next_visit(keeping)
    _type(keeping, 5, "?", visit)
    side = keeping.side(5, Face.A, visit)
    assert side is not None
    assert side.origin is Origin.ASSUMED
    found = keeping.book.read.get(type(keeping.noted()), visit)
    assert found is not None
    assert found.level is Level.ONE_LINE
    third = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, days_on(LATER, 7)))))
    _type(keeping, 5, "=", third)
    again, first = keeping.side(5, Face.A, third), keeping.side(5, Face.A)
    assert again is not None
    assert first is not None
    assert again.copied_from == first.id


def test_a_comb_never_noted_cannot_be_as_last_time(keeping: Keeping) -> None:
    before = keeping.everything()
    with pytest.raises(NotReadableError, match="5B was not noted before") as refusal:
        _type(keeping, 5, "S4 / =")
    assert refusal.value.position == 5
    assert keeping.everything() == before


def test_a_slip_points_at_its_letter_and_loses_nothing(keeping: Keeping) -> None:
    _type(keeping, 5, "S4")
    before = keeping.everything()
    with pytest.raises(NotReadableError) as refusal:
        _type(keeping, 5, "S4X2")
    assert refusal.value.position == 2
    assert keeping.everything() == before


def test_a_turned_frame_shows_what_its_other_letter_showed(keeping: Keeping) -> None:
    _type(keeping, 5, "S4 / H8")
    keeping.book.do(TurnFrame(keeping.frame(5), LATER))
    visit = _next_visit(keeping)
    _type(keeping, 5, "=", visit)
    a, b = keeping.side(5, Face.A), keeping.side(5, Face.B)
    turned = keeping.side(5, Face.A, visit)
    assert a is not None
    assert b is not None
    assert turned is not None
    assert turned.copied_from == b.id
    assert turned.cells == b.cells


def test_empty_text_takes_away_what_was_typed_but_not_what_was_painted(keeping: Keeping) -> None:
    _type(keeping, 5, "S4W3Q")
    keeping.paint(5, Face.A)
    _type(keeping, 5, "")
    assert keeping.side(5, Face.A) is not None
    assert keeping.side(5, Face.B) is None
    assert keeping.book.read.marks(keeping.visit) == ()


def test_not_looked_at_removes_the_side(keeping: Keeping) -> None:
    keeping.paint(5, Face.B)
    _type(keeping, 5, "S4 / -")
    assert keeping.side(5, Face.A) is not None
    assert keeping.side(5, Face.B) is None


def test_bees_alone_make_a_side_without_contents_and_leave_a_drawing(keeping: Keeping) -> None:
    keeping.paint(5, Face.A)
    _type(keeping, 5, "W5")
    a, b = keeping.side(5, Face.A), keeping.side(5, Face.B)
    assert a is not None
    assert b is not None
    assert (a.covered, b.covered) == (5, 5)
    assert a.origin is Origin.PAINTED
    assert np.count_nonzero(keeping.cells(5, Face.A)) == 40
    assert not keeping.cells(5, Face.B).any()


def test_bees_typed_over_eighths_leave_no_eighths(keeping: Keeping) -> None:
    _type(keeping, 5, "S4")
    _type(keeping, 5, "W5")
    side = keeping.side(5)
    assert side is not None
    assert (side.typed, side.covered, side.origin) == ("W5", 5, Origin.EIGHTHS)
    assert not keeping.cells(5).any()


def test_bees_noted_apart_stay_and_typed_ones_go_with_their_text(keeping: Keeping) -> None:
    frame = keeping.frame(5)
    keeping.book.do(SetCovered(keeping.visit, frame, Face.A, 6))
    _type(keeping, 5, "S4")
    side = keeping.side(5)
    assert side is not None
    assert side.covered == 6
    _type(keeping, 5, "S4W2")
    _type(keeping, 5, "S5")
    again = keeping.side(5)
    assert again is not None
    assert again.covered is None


def test_typed_marks_replace_typed_ones_and_leave_those_on_cells(keeping: Keeping) -> None:
    frame = keeping.frame(5)
    on_cell = keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN_CELL, frame, Face.A, 9, CellKind.SEALED))
    note = keeping.book.do(AddMark(keeping.visit, MarkKind.NOTE, frame, text="old"))
    _type(keeping, 5, "S4QKC / S2KCKC")
    marks = keeping.book.read.marks(keeping.visit)
    typed = Counter(
        (mark.face, mark.kind, mark.cell_kind) for mark in marks if mark.id not in {on_cell, note}
    )
    assert typed == {
        (Face.A, MarkKind.QUEEN, None): 1,
        (Face.A, MarkKind.QUEEN_CELL, CellKind.CHARGED): 1,
        (Face.B, MarkKind.QUEEN_CELL, CellKind.CHARGED): 2,
    }
    kept = {mark.id for mark in marks if mark.face is Face.A}
    _type(keeping, 5, "S4QKC")
    marks = keeping.book.read.marks(keeping.visit)
    assert {on_cell, note} <= {mark.id for mark in marks}
    assert Counter(mark.face for mark in marks if mark.id not in {on_cell, note}) == {None: 2}
    _type(keeping, 5, "S4QKC / S2KCKC")
    assert kept - {mark.id for mark in keeping.book.read.marks(keeping.visit)} <= kept


def test_a_mark_alone_does_not_claim_that_the_side_was_read(keeping: Keeping) -> None:
    _type(keeping, 5, "S3 / Q")
    assert keeping.side(5, Face.B) is None
    assert [mark.face for mark in keeping.book.read.marks(keeping.visit)] == [Face.B]


def test_a_rest_is_empty_comb(keeping: Keeping) -> None:
    _type(keeping, 5, "S6.")
    cells = keeping.cells(5)
    assert abs(np.count_nonzero(cells == Content.EMPTY) - len(cells) / 4) <= 1
    side = keeping.side(5)
    assert side is not None
    assert side.typed == "S6."


def test_typing_goes_on_as_one_step_within_a_pause(keeping: Keeping) -> None:
    steps = len(keeping.book._history)
    before = keeping.everything()
    for typed in ("S", "S4", "S4O2", "S4O2H2"):
        keeping.clock.seconds += 1
        _type(keeping, 5, typed)
    assert len(keeping.book._history) == steps + 1
    keeping.book.undo()
    assert keeping.everything() == before
    keeping.book.redo()
    side = keeping.side(5)
    assert side is not None
    assert side.typed == "S4O2H2"


def test_typing_over_a_copy_lets_go_of_its_source(keeping: Keeping) -> None:
    _type(keeping, 5, "S4")
    visit = _next_visit(keeping)
    _type(keeping, 5, "=", visit)
    copy = keeping.side(5, Face.A, visit)
    assert copy is not None
    _type(keeping, 5, "S5", visit)
    side = keeping.book.read.get(Side, copy.id)
    assert side is not None
    assert side == replace(copy, origin=Origin.EIGHTHS, cells=side.cells, copied_from=None, typed="S5")
