import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.colony.records import (
    Due,
    DueState,
    Event,
    EventKind,
    Feed,
    Level,
    Question,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.comb.contents import Content, Face, MarkKind, Origin
from beeworkbook.workbook.edits import (
    AddEvent,
    AddMark,
    BeginRound,
    BeginVisit,
    GiveFeed,
    LayOutComb,
    MirrorDrawings,
    MoveDrawing,
    MoveVisit,
    RemoveVisit,
    SetAnswer,
    SetFeedLeft,
    SetNext,
    SetNote,
    SwapSides,
    TakeFrame,
)
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, as_int, days_on


def _begin(keeping: Keeping, day: object, colony: object = None) -> VisitId:
    return VisitId(as_int(keeping.book.do(BeginVisit(colony or keeping.colony, day))))  # type: ignore[arg-type]


def _draw(keeping: Keeping) -> None:
    """Something on both sides of comb 5, and the queen on a cell of A."""
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4 / H8"))
    keeping.paint(5, Face.A, Content.EGGS)
    keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, keeping.frame(5), Face.A, 17))


def test_swapped_sides_keep_cells_and_marks_and_swapping_again_is_nothing(keeping: Keeping) -> None:
    _draw(keeping)
    a, b, before = keeping.side(5, Face.A), keeping.side(5, Face.B), keeping.everything()
    keeping.book.do(SwapSides(keeping.visit, keeping.frame(5)))
    swapped = keeping.side(5, Face.B), keeping.side(5, Face.A)
    assert a is not None
    assert b is not None
    for side, was in zip(swapped, (a, b), strict=True):
        assert side is not None
        assert (side.cells, side.origin, side.typed) == (was.cells, was.origin, was.typed)
    assert keeping.book.read.marks(keeping.visit)[0].face is Face.B
    assert keeping.book.undo_label == "swap the sides of comb 5"
    keeping.book.do(SwapSides(keeping.visit, keeping.frame(5)))
    assert keeping.everything() == before


def test_one_side_alone_goes_to_the_other_face(keeping: Keeping) -> None:
    keeping.paint(5, Face.A)
    keeping.book.do(SwapSides(keeping.visit, keeping.frame(5)))
    assert keeping.side(5, Face.A) is None
    assert keeping.side(5, Face.B) is not None
    with pytest.raises(RefusedError, match="Nothing was noted"):
        keeping.book.do(SwapSides(keeping.visit, keeping.frame(6)))


def test_what_was_copied_from_a_side_follows_it(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4 / H8"))
    later = _begin(keeping, LATER)
    keeping.book.do(LayOutComb(later, keeping.frame(5), "="))
    b = keeping.side(5, Face.B)
    keeping.book.do(SwapSides(keeping.visit, keeping.frame(5)))
    copy = keeping.side(5, Face.A, later)
    assert copy is not None
    assert b is not None
    assert copy.copied_from == b.id
    source = keeping.book.read.get(Side, b.id)
    assert source is not None
    assert source.cells == copy.cells


@settings(max_examples=15)
@given(
    st.integers(1, 11),
    st.integers(1, 11),
    st.sampled_from(Face),
    st.integers(0, 2000),
    st.sampled_from([LOOK, LATER, days_on(LOOK, -3)]),
)
def test_a_moved_drawing_keeps_its_cells_and_marks(
    place: int, to: int, face: Face, cell: int, day: object
) -> None:
    with tempfile.TemporaryDirectory() as folder, Keeping(Path(folder) / "trial.beebook") as kept:
        kept.paint(place, face, Content.SEALED, cell, 300)
        kept.book.do(AddMark(kept.visit, MarkKind.QUEEN, kept.frame(place), face, cell))
        cells, before = kept.cells(place, face), kept.everything()
        move = MoveDrawing(kept.visit, kept.frame(place), kept.frame(to), to_day=day)  # type: ignore[arg-type]
        if (place, LOOK) == (to, day):
            with pytest.raises(RefusedError, match="there already"):
                kept.book.do(move)
        else:
            visit = VisitId(as_int(kept.book.do(move)))
            moved = kept.side(to, face, visit)
            assert moved is not None
            assert (moved.place, moved.origin) == (to, Origin.PAINTED)
            assert (kept.cells(to, face, visit) == cells).all()
            mark = kept.book.read.marks(visit)[0]
            assert (mark.frame_id, mark.face, mark.cell) == (kept.frame(to), face, cell)
            assert kept.side(place, face) is None
            kept.book.undo()
        assert kept.everything() == before


def test_two_drawings_change_places(keeping: Keeping) -> None:
    _draw(keeping)
    keeping.paint(7, Face.A, Content.POLLEN)
    five = [keeping.cells(5, face) for face in Face]
    seven = keeping.cells(7, Face.A)
    keeping.book.do(MoveDrawing(keeping.visit, keeping.frame(5), keeping.frame(7)))
    assert all((keeping.cells(7, face) == cells).all() for face, cells in zip(Face, five, strict=True))
    assert (keeping.cells(5, Face.A) == seven).all()
    assert keeping.side(5, Face.B) is None
    assert keeping.book.undo_label == "move the drawing of comb 5 to comb 7"
    keeping.book.do(MoveDrawing(keeping.visit, keeping.frame(5), keeping.frame(7)))
    assert (keeping.cells(7, Face.A) == seven).all()


def test_a_drawing_goes_to_another_colony_and_makes_its_visit(keeping: Keeping) -> None:
    _draw(keeping)
    other = keeping.another()
    hive = keeping.book.read.hive_day(other, LOOK)
    assert hive is not None
    target = hive.brood_boxes[0].frames[3].frame
    assert target is not None
    made = VisitId(
        as_int(keeping.book.do(MoveDrawing(keeping.visit, keeping.frame(5), target.id, to_colony_id=other)))
    )
    visit = keeping.book.read.get(Visit, made)
    assert visit is not None
    assert (visit.colony_id, visit.day, visit.level) == (other, LOOK, Level.PAINTED)
    assert len(keeping.book.read.sides(made)) == 2
    with pytest.raises(RefusedError, match="did not hang in the hive of this colony"):
        keeping.book.do(MoveDrawing(made, target.id, keeping.frame(5), to_visit_id=made))


def test_frames_of_two_types_are_told_apart_in_words(keeping: Keeping) -> None:
    _draw(keeping)
    other = keeping.another(frame_type="zander", places=9, combs=())
    hive = keeping.book.read.hive_day(other, LOOK)
    assert hive is not None
    target = hive.brood_boxes[0].frames[3].frame
    assert target is not None
    before = keeping.everything()
    with pytest.raises(RefusedError, match="does not fit"):
        keeping.book.do(MoveDrawing(keeping.visit, keeping.frame(5), target.id, to_colony_id=other))
    with pytest.raises(RefusedError, match="does not fit"):
        keeping.book.do(MoveVisit(keeping.visit, other, LATER))
    assert keeping.everything() == before


def test_a_box_noted_from_the_other_end_is_mirrored_and_mirrored_again_is_nothing(keeping: Keeping) -> None:
    _draw(keeping)
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(6), "E8 / S8"))
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(7), "P8"))
    cells, before = keeping.cells(5, Face.A), keeping.everything()
    middle = keeping.cells(6, Face.A)
    keeping.book.do(MirrorDrawings(keeping.visit, keeping.box.id))
    assert (keeping.cells(7, Face.B) == cells).all()
    assert (keeping.cells(6, Face.B) == middle).all()
    assert keeping.places(LOOK) == keeping.places(LATER)
    mark = keeping.book.read.marks(keeping.visit)[0]
    assert (mark.frame_id, mark.face) == (keeping.frame(7), Face.B)
    keeping.book.do(MirrorDrawings(keeping.visit, keeping.box.id))
    after = keeping.everything()
    shown = {(s.frame_id, s.face): s.cells for s in after[Side] if isinstance(s, Side)}
    assert shown == {(s.frame_id, s.face): s.cells for s in before[Side] if isinstance(s, Side)}
    keeping.book.do(TakeFrame(keeping.frame(7), LOOK))
    keeping.book.do(MoveDrawing(keeping.visit, keeping.frame(7, days_on(LOOK, -1)), keeping.frame(8)))
    with pytest.raises(RefusedError, match="opposite comb 5"):
        keeping.book.do(MirrorDrawings(keeping.visit, keeping.box.id))


def _fill(keeping: Keeping) -> None:
    _draw(keeping)
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "y"))
    keeping.book.do(SetNote(keeping.visit, "steady on the comb"))
    keeping.book.do(GiveFeed(keeping.colony, LOOK, "1L 1:1", keeping.visit))
    keeping.book.do(AddEvent(keeping.colony, LOOK, EventKind.QUEEN_SEEN, visit_id=keeping.visit))
    keeping.book.do(SetNext(keeping.visit, days_on(LATER, 5), "first look done"))


def test_a_whole_visit_moves_to_another_day(keeping: Keeping) -> None:
    _fill(keeping)
    before = keeping.everything()
    assert keeping.book.do(MoveVisit(keeping.visit, keeping.colony, days_on(LOOK, 2))) == keeping.visit
    day = days_on(LOOK, 2)
    assert keeping.noted().day == day
    assert {event.day for event in keeping.book.read.find(Event, visit_id=keeping.visit)} == {day}
    assert {feed.day for feed in keeping.book.read.find(Feed, visit_id=keeping.visit)} == {day}
    assert len(keeping.book.read.sides(keeping.visit)) == 2
    keeping.book.undo()
    assert keeping.everything() == before
    with pytest.raises(RefusedError, match="there already"):
        keeping.book.do(MoveVisit(keeping.visit, keeping.colony, LOOK))
    with pytest.raises(RefusedError, match="would be before it"):
        keeping.book.do(MoveVisit(keeping.visit, keeping.colony, days_on(LATER, 6)))


def test_a_whole_visit_moves_to_the_same_combs_of_another_colony(keeping: Keeping) -> None:
    _fill(keeping)
    cells = keeping.cells(5, Face.A)
    other = keeping.another()
    keeping.book.do(MoveVisit(keeping.visit, other, LOOK))
    hive = keeping.book.read.hive_day(other, LOOK)
    assert hive is not None
    frame = hive.brood_boxes[0].frames[4].frame
    assert frame is not None
    side = keeping.book.read.side(keeping.visit, frame.id, Face.A)
    assert side is not None
    assert (side.place, side.part_id) == (5, hive.brood_boxes[0].part.id)
    from beeworkbook.comb.codec import unpack

    assert (unpack(side.cells, cells=len(cells)) == cells).all()
    assert {due.colony_id for due in keeping.book.read.find(Due, visit_id=keeping.visit)} == {other}
    assert [mark.frame_id for mark in keeping.book.read.marks(keeping.visit)] == [frame.id]


def test_a_visit_joins_another_that_speaks_of_other_things(keeping: Keeping) -> None:
    later = _begin(keeping, LATER)
    keeping.book.do(SetAnswer(later, Question.POLLEN, "y"))
    keeping.book.do(LayOutComb(later, keeping.frame(3), "H8"))
    _draw(keeping)
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "y"))
    keeping.book.do(SetNote(keeping.visit, "steady"))
    keeping.book.do(AddMark(keeping.visit, MarkKind.NOTE, text="of no comb"))
    feed = keeping.book.read.feeds(keeping.colony)[0]
    keeping.book.do(SetFeedLeft(feed.id, "0", LOOK, keeping.visit))
    before = keeping.everything()
    assert keeping.book.do(MoveVisit(keeping.visit, keeping.colony, LATER)) == later
    joined, left = keeping.book.read.get(Visit, later), keeping.book.read.get(Feed, feed.id)
    assert joined is not None
    assert left is not None
    assert (joined.note, left.left_day, left.left_visit_id) == ("steady", LATER, later)
    assert "of no comb" in {mark.text for mark in keeping.book.read.marks(later)}
    assert keeping.book.read.get(Visit, keeping.visit) is None
    assert set(keeping.book.read.answers(later)) == {Question.EGGS, Question.POLLEN}
    assert len(keeping.book.read.sides(later)) == 4
    keeping.book.undo()
    assert keeping.everything() == before
    keeping.book.do(SetAnswer(later, Question.EGGS, "n"))
    with pytest.raises(RefusedError, match="speaks of the same"):
        keeping.book.do(MoveVisit(keeping.visit, keeping.colony, LATER))


def test_a_visit_goes_to_the_round_of_its_new_day_and_to_none_without_a_home(keeping: Keeping) -> None:
    apiary = keeping.book.read.apiaries()[0]
    held = keeping.book.do(BeginRound(apiary.id, LATER))
    keeping.book.do(MoveVisit(keeping.visit, keeping.colony, LATER))
    assert keeping.noted().round_id == held
    keeping.book.do(MoveVisit(keeping.visit, keeping.colony, days_on(CAME, -30)))
    assert keeping.noted().round_id is None


def test_a_removed_visit_takes_all_it_noted_and_comes_back_whole(keeping: Keeping) -> None:
    _fill(keeping)
    before = keeping.everything()
    first_look = next(due for due in keeping.book.read.find(Due) if due.done_visit_id == keeping.visit)
    keeping.book.do(RemoveVisit(keeping.visit))
    assert keeping.book.read.get(Visit, keeping.visit) is None
    for cls in (Event, Feed, Due):
        assert keeping.book.read.find(cls, visit_id=keeping.visit) == ()
    opened = keeping.book.read.get(Due, first_look.id)
    assert opened is not None
    assert opened.state is DueState.OPEN
    assert keeping.book.undo_label == "remove the visit of 8 May 2026"
    keeping.book.undo()
    assert keeping.everything() == before
