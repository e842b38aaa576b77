import pytest

from beeworkbook.colony.records import RECORD_TYPES, Colony, Way
from beeworkbook.comb.contents import Face
from beeworkbook.workbook.edits import MoveFrame, SetWay, TakeFrame
from beeworkbook.workbook.errors import GoneError, RefusedError
from beeworkbook.workbook.found import (
    boxes_of,
    comb_name,
    frame_in,
    frame_type_of,
    held,
    place_of_comb,
    side_of,
    stay_of_frame,
    the,
    way_of,
)
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, days_on


def test_what_is_gone_is_refused_by_its_name(keeping: Keeping) -> None:
    with keeping.book._base.write() as tx:
        assert the(tx, Colony, keeping.colony) == held(tx, Colony, keeping.colony)
        for cls in RECORD_TYPES:
            assert held(tx, cls, 9999) is None
            with pytest.raises(GoneError, match="no longer in this workbook"):
                the(tx, cls, 9999)


def test_a_frame_type_is_known_or_refused(keeping: Keeping) -> None:
    with keeping.book._base.write() as tx:
        assert frame_type_of(tx, "bs_deep").id == "bs_deep"
        with pytest.raises(GoneError, match="This frame type"):
            frame_type_of(tx, "nobody's")


def test_a_comb_is_found_where_it_hung_and_named_by_its_place(keeping: Keeping) -> None:
    five = keeping.frame(5)
    keeping.book.do(MoveFrame(five, keeping.box.id, 9, LATER))
    with keeping.book._base.write() as tx:
        found = stay_of_frame(tx, five, LATER)
        assert found is not None
        assert (found.place, comb_name(tx, five, LATER, Face.B)) == (9, "9B")
        assert comb_name(tx, five, LOOK) == "5"
        assert comb_name(tx, five, days_on(CAME, -1), Face.A) == "?A"
        assert comb_name(tx, None, LOOK) == ""
        assert frame_in(tx, keeping.box.id, 9, LATER) == found
        assert frame_in(tx, keeping.box.id, 40, LATER) is None


def test_a_noted_comb_hung_where_it_was_noted(keeping: Keeping) -> None:
    five = keeping.frame(5)
    keeping.paint(5)
    keeping.book.do(TakeFrame(five, CAME))
    with keeping.book._base.write() as tx:
        assert place_of_comb(tx, keeping.noted(), five) == (keeping.box.id, 5)
        assert side_of(tx, keeping.visit, five, Face.A) is not None
        assert side_of(tx, keeping.visit, five, Face.B) is None
        keeping_six = keeping.frame(6)
        assert place_of_comb(tx, keeping.noted(), keeping_six) == (keeping.box.id, 6)
        with pytest.raises(GoneError):
            place_of_comb(tx, keeping.noted(), five + 999)  # type: ignore[arg-type]
    keeping.book.undo()
    keeping.book.undo()
    keeping.book.do(TakeFrame(five, LOOK))
    with keeping.book._base.write() as tx, pytest.raises(RefusedError, match="no hive on that day"):
        place_of_comb(tx, keeping.noted(), five)


def test_the_boxes_and_the_way_of_a_hive_of_a_day(keeping: Keeping) -> None:
    hive = keeping.book.read.hive_day(keeping.colony, LOOK)
    assert hive is not None
    keeping.book.do(SetWay(hive.hive.id, Way.WARM))
    with keeping.book._base.write() as tx:
        assert [part.id for part in boxes_of(tx, keeping.colony, LOOK)] == [keeping.box.id]
        assert boxes_of(tx, keeping.colony, days_on(CAME, -1)) == ()
        assert way_of(tx, keeping.box.id, LOOK) is Way.WARM
        assert way_of(tx, keeping.box.id, days_on(CAME, -1)) is Way.COLD
