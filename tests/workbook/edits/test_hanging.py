from dataclasses import replace

import pytest

from beeworkbook.colony.records import FrameStay, FrameStayId
from beeworkbook.workbook.edits.hanging import change_from, check_alone, check_place, end_on, hang, put_in
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, days_on


def test_a_stay_changed_on_its_first_day_is_changed_whole(keeping: Keeping) -> None:
    stay = keeping.book.read.find(FrameStay, frame_id=keeping.frame(5))[0]
    with keeping.book._base.write() as tx:
        assert change_from(tx, stay, CAME) == stay
        changed = change_from(tx, stay, CAME, turned=True)
    assert changed == replace(stay, turned=True)
    assert keeping.book.read.find(FrameStay, frame_id=stay.frame_id) == (changed,)


def test_a_stay_changed_later_is_parted_there(keeping: Keeping) -> None:
    stay = keeping.book.read.find(FrameStay, frame_id=keeping.frame(5))[0]
    with keeping.book._base.write() as tx:
        change_from(tx, stay, LATER, place=3)
    first, second = keeping.book.read.find(FrameStay, frame_id=stay.frame_id)
    assert first == replace(stay, until=LATER)
    assert (second.place, second.since, second.until) == (3, LATER, None)


def test_an_ended_stay_that_never_was_goes(keeping: Keeping) -> None:
    stay = keeping.book.read.find(FrameStay, frame_id=keeping.frame(5))[0]
    with keeping.book._base.write() as tx:
        end_on(tx, stay, CAME)
    assert keeping.book.read.find(FrameStay, frame_id=stay.frame_id) == ()


def test_a_frame_hung_earlier_hangs_until_it_is_known_elsewhere(keeping: Keeping) -> None:
    frame = keeping.frame(5)
    with keeping.book._base.write() as tx:
        early = hang(tx, frame, keeping.box.id, 3, days_on(CAME, -9))
    assert early.until == CAME


def test_a_place_has_to_be_there_and_free(keeping: Keeping) -> None:
    stay = keeping.book.read.find(FrameStay, frame_id=keeping.frame(5))[0]
    with pytest.raises(RefusedError, match="places 1 to 11"):
        check_place(keeping.box, 0)
    with keeping.book._base.write() as tx:
        check_alone(tx, stay)
        with pytest.raises(RefusedError, match="place 6"):
            check_alone(tx, replace(stay, id=FrameStayId(999), place=6))
        with pytest.raises(RefusedError):
            put_in(tx, stay.frame_id, keeping.box, 99, LOOK)
