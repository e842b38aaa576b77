import pytest

from beeworkbook.colony.records import Frame, FrameMake, FrameStay
from beeworkbook.comb.contents import Content
from beeworkbook.workbook.edits import AddFrame, MoveFrame, OrderFrames, TakeFrame, TurnFrame
from beeworkbook.workbook.errors import GoneError, RefusedError
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, as_int, days_on


def test_a_frame_comes_out_on_a_day_and_hung_there_till_then(keeping: Keeping) -> None:
    frame = keeping.frame(5)
    keeping.book.do(TakeFrame(frame, LATER))
    assert frame in keeping.places(days_on(LATER, -1)).values()
    assert 5 not in keeping.places(LATER)
    assert keeping.book.undo_label == "take comb 5 out on 16 May"
    with pytest.raises(RefusedError, match="no hive"):
        keeping.book.do(TakeFrame(frame, LATER))


def test_a_new_frame_needs_a_free_place_that_is_there(keeping: Keeping) -> None:
    box = keeping.box.id
    with pytest.raises(RefusedError, match="taken"):
        keeping.book.do(AddFrame(box, 5, LATER))
    with pytest.raises(RefusedError, match="no place 12"):
        keeping.book.do(AddFrame(box, 12, LATER))
    keeping.book.do(TakeFrame(keeping.frame(11), LATER))
    made = keeping.book.do(AddFrame(box, 11, LATER, make=FrameMake.DUMMY))
    frame = keeping.book.read.get(Frame, made)
    assert frame is not None
    assert (frame.make, frame.frame_type) == (FrameMake.DUMMY, "bs_deep")
    assert keeping.book.undo_label == "add a dummy board in place 11"
    with pytest.raises(GoneError):
        keeping.book.do(AddFrame(box, 11, days_on(LATER, 1), frame_type="no such frame"))


def test_an_earlier_frame_that_would_meet_a_later_one_is_refused_with_the_day(keeping: Keeping) -> None:
    keeping.book.do(TakeFrame(keeping.frame(11), LOOK))
    keeping.book.do(AddFrame(keeping.box.id, 11, LATER))
    before = keeping.everything()
    with pytest.raises(RefusedError, match="16 May 2026"):
        keeping.book.do(AddFrame(keeping.box.id, 11, days_on(LOOK, 2)))
    assert keeping.everything() == before


def test_a_moved_frame_changes_places_with_the_one_that_was_there(keeping: Keeping) -> None:
    five, six = keeping.frame(5), keeping.frame(6)
    keeping.book.do(MoveFrame(five, keeping.box.id, 6, LATER))
    assert keeping.places(LATER)[6] == five
    assert keeping.places(LATER)[5] == six
    assert keeping.places(LOOK)[5] == five
    keeping.book.do(MoveFrame(five, keeping.box.id, 5, LATER))
    assert keeping.places(LATER) == keeping.places(LOOK)
    assert len(keeping.book.read.find(FrameStay, frame_id=five)) == 1


def test_a_frame_from_the_shed_takes_a_free_place_and_pushes_nobody_out(keeping: Keeping) -> None:
    five = keeping.frame(5)
    keeping.book.do(TakeFrame(five, LOOK))
    with pytest.raises(RefusedError, match="taken"):
        keeping.book.do(MoveFrame(five, keeping.box.id, 6, LATER))
    keeping.book.do(MoveFrame(five, keeping.box.id, 5, LATER))
    assert keeping.places(LATER)[5] == five
    steps = len(keeping.book._history)
    keeping.book.do(MoveFrame(five, keeping.box.id, 5, LATER))
    assert len(keeping.book._history) == steps


def test_an_earlier_move_lasts_until_the_next_one_known(keeping: Keeping) -> None:
    five = keeping.frame(5)
    for place in (1, 9):
        keeping.book.do(TakeFrame(keeping.frame(place), LOOK))
    keeping.book.do(MoveFrame(five, keeping.box.id, 1, LATER))
    keeping.book.do(MoveFrame(five, keeping.box.id, 9, LOOK))
    assert keeping.places(CAME)[5] == five
    assert keeping.places(LOOK)[9] == five
    assert keeping.places(LATER)[1] == five


def test_an_earlier_move_that_leaves_another_no_place_later_is_refused(keeping: Keeping) -> None:
    five = keeping.frame(5)
    keeping.book.do(MoveFrame(five, keeping.box.id, 1, LATER))
    before = keeping.everything()
    with pytest.raises(RefusedError, match="place 5 from 16 May 2026"):
        keeping.book.do(MoveFrame(five, keeping.box.id, 9, LOOK))
    assert keeping.everything() == before


def test_the_order_of_a_box_is_set_at_once(keeping: Keeping) -> None:
    frames = [keeping.frame(place) for place in range(1, 12)]
    order = (frames[3], None, *frames[4:8], frames[0])
    keeping.book.do(OrderFrames(keeping.box.id, order, LATER))
    assert keeping.places(LATER) == {
        place: frame for place, frame in enumerate(order, start=1) if frame is not None
    }
    assert keeping.places(LOOK) == dict(enumerate(frames, start=1))
    with pytest.raises(RefusedError, match="one place only"):
        keeping.book.do(OrderFrames(keeping.box.id, (frames[0], frames[0]), LATER))
    spare = as_int(keeping.book.do(AddFrame(keeping.box.id, 11, LATER)))
    keeping.book.do(TakeFrame(spare, LATER))  # type: ignore[arg-type]
    keeping.book.do(OrderFrames(keeping.box.id, (spare,), LATER))  # type: ignore[arg-type]
    assert keeping.places(LATER) == {1: spare}


def test_a_frame_is_turned_on_a_day_and_turned_back_leaves_one_stay(keeping: Keeping) -> None:
    five = keeping.frame(5)
    keeping.book.do(TurnFrame(five, LATER))
    assert [stay.turned for stay in keeping.book.read.find(FrameStay, frame_id=five)] == [False, True]
    keeping.book.do(TurnFrame(five, LATER))
    assert [stay.turned for stay in keeping.book.read.find(FrameStay, frame_id=five)] == [False]


def test_the_flank_of_a_nucleus_is_noted_on_the_day_it_came(keeping: Keeping) -> None:
    visit = keeping.book.read.visits(keeping.colony)[0]
    sides = keeping.book.read.sides(visit.id)
    assert visit.day == CAME
    assert {side.place for side in sides} == {1, 2, 9, 10, 11}
    assert all((keeping.cells(side.place, side.face, visit.id) == Content.FOUNDATION).all() for side in sides)
