import pytest

from beeworkbook.colony.records import EventKind, HiveId, Part, PartId, PartKind, PartStay, Way
from beeworkbook.comb.contents import Content, Face, MarkKind
from beeworkbook.workbook.edits import (
    AddMark,
    AddPart,
    AddStand,
    LayOutComb,
    MoveColony,
    MovePart,
    NumberFromOtherEnd,
    SetWay,
    TakePart,
)
from beeworkbook.workbook.edits.hive import part_words, usual_level
from beeworkbook.workbook.errors import GoneError, RefusedError
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, as_int, days_on


def _kinds(keeping: Keeping, day: object = LOOK) -> list[PartKind]:
    hive = keeping.book.read.hive_day(keeping.colony, day)  # type: ignore[arg-type]
    assert hive is not None
    return [part.part.kind for part in hive.stack]


def _hive(keeping: Keeping) -> HiveId:
    hive = keeping.book.read.hive_day(keeping.colony, LOOK)
    assert hive is not None
    return hive.hive.id


def _add(keeping: Keeping, kind: PartKind, day: object, **more: object) -> PartId:
    return PartId(as_int(keeping.book.do(AddPart(_hive(keeping), kind, day, **more))))  # type: ignore[arg-type]


SUPER = {"frame_type": "bs_shallow", "places": 10}
STACK = [
    PartKind.STAND,
    PartKind.FLOOR,
    PartKind.BROOD_BOX,
    PartKind.CROWN_BOARD,
    PartKind.FEEDER,
    PartKind.ROOF,
]


def test_a_part_goes_to_its_usual_place_from_its_day_on(keeping: Keeping) -> None:
    assert _kinds(keeping) == STACK
    _add(keeping, PartKind.SUPER, LATER, **SUPER)
    _add(keeping, PartKind.EXCLUDER, LATER)
    assert _kinds(keeping, days_on(LATER, -1)) == STACK
    assert _kinds(keeping, LATER) == [*STACK[:3], PartKind.EXCLUDER, PartKind.SUPER, *STACK[3:]]
    assert keeping.book.undo_label == "add the queen excluder on 16 May"


def test_an_earlier_change_goes_through_to_later_days(keeping: Keeping) -> None:
    _add(keeping, PartKind.SUPER, LATER, **SUPER)
    _add(keeping, PartKind.EXCLUDER, days_on(LATER, -4))
    assert _kinds(keeping, days_on(LATER, -3)) == [*STACK[:3], PartKind.EXCLUDER, *STACK[3:]]
    assert _kinds(keeping, LATER) == [*STACK[:3], PartKind.EXCLUDER, PartKind.SUPER, *STACK[3:]]


def test_put_on_and_taken_off_on_one_day_leaves_no_stay(keeping: Keeping) -> None:
    before = keeping.book.read.find(PartStay)
    part = _add(keeping, PartKind.SUPER, LATER, **SUPER)
    keeping.book.do(TakePart(part, LATER))
    stays = keeping.book.read.find(PartStay)
    assert stays == before
    assert _kinds(keeping, LATER) == STACK


def test_a_part_taken_off_stood_there_till_then(keeping: Keeping) -> None:
    part = _add(keeping, PartKind.SUPER, LOOK, **SUPER)
    keeping.book.do(TakePart(part, LATER))
    assert PartKind.SUPER in _kinds(keeping, days_on(LATER, -1))
    assert PartKind.SUPER not in _kinds(keeping, LATER)
    with pytest.raises(RefusedError, match="no hive"):
        keeping.book.do(TakePart(part, LATER))


def test_levels_rise_and_a_move_is_dated(keeping: Keeping) -> None:
    part = _add(keeping, PartKind.SUPER, LOOK, **SUPER)
    keeping.book.do(MovePart(part, LATER, 2))
    assert _kinds(keeping, LATER).index(PartKind.SUPER) == 2
    assert _kinds(keeping, days_on(LATER, -1)).index(PartKind.SUPER) == 3
    hive = keeping.book.read.hive_day(keeping.colony, LATER)
    assert hive is not None
    levels = [part.stay.level for part in hive.stack]
    assert levels == sorted(set(levels))


def test_a_part_moves_to_another_hive(keeping: Keeping) -> None:
    other = keeping.another()
    part = _add(keeping, PartKind.SUPER, LOOK, **SUPER)
    there = keeping.book.read.hive_day(other, LATER)
    assert there is not None
    keeping.book.do(MovePart(part, LATER, 3, there.hive.id))
    assert PartKind.SUPER not in _kinds(keeping, LATER)
    after = keeping.book.read.hive_day(other, LATER)
    assert after is not None
    assert after.stack[3].part.id == part
    keeping.book.do(TakePart(part, LATER))
    keeping.book.do(MovePart(part, LATER, 3, _hive(keeping)))
    assert PartKind.SUPER in _kinds(keeping, LATER)
    keeping.book.do(TakePart(part, LATER))
    with pytest.raises(RefusedError, match="no hive"):
        keeping.book.do(MovePart(part, LATER, 3))


def test_a_box_needs_frames_and_nothing_else_has_them(keeping: Keeping) -> None:
    with pytest.raises(GoneError):
        _add(keeping, PartKind.SUPER, LOOK, places=10)
    with pytest.raises(RefusedError, match="from 1 to"):
        _add(keeping, PartKind.SUPER, LOOK, frame_type="bs_shallow", places=0)
    with pytest.raises(RefusedError, match="Only a box"):
        _add(keeping, PartKind.ROOF, LOOK, places=3)


def test_a_new_box_is_filled_and_its_foundation_noted_in_the_days_visit(keeping: Keeping) -> None:
    part = _add(keeping, PartKind.SUPER, LOOK, new_frames=Content.FOUNDATION, **SUPER)
    sides = [side for side in keeping.book.read.sides(keeping.visit) if side.part_id == part]
    assert len(sides) == 20
    assert {side.typed for side in sides} == {"F"}
    bare = _add(keeping, PartKind.SUPER, LATER, new_frames=Content.FOUNDATION, **SUPER)
    assert len(keeping.places(LATER, bare)) == 10


def test_the_way_of_the_combs_is_set(keeping: Keeping) -> None:
    keeping.book.do(SetWay(_hive(keeping), Way.WARM))
    hive = keeping.book.read.hive_day(keeping.colony, LOOK)
    assert hive is not None
    assert hive.hive.way is Way.WARM
    assert keeping.book.undo_label == "set the combs the warm way"
    keeping.book.do(SetWay(_hive(keeping), Way.COLD))
    assert keeping.book.undo_label == "set the combs the cold way"


def test_numbering_from_the_other_end_mirrors_places_faces_and_drawings(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(4), "S4 / H8"))
    frame = keeping.frame(4)
    a, b = keeping.side(4, Face.A), keeping.side(4, Face.B)
    keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, frame, Face.A, 11))
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(7), "/ Q"))
    before, places = keeping.everything(), keeping.places(LOOK)
    keeping.book.do(NumberFromOtherEnd(keeping.box.id, LOOK))
    assert keeping.places(LOOK) == {12 - place: frame_id for place, frame_id in places.items()}
    assert keeping.places(CAME) == places
    mirrored = keeping.side(8, Face.B), keeping.side(8, Face.A)
    assert a is not None
    assert b is not None
    for side, was in zip(mirrored, (a, b), strict=True):
        assert side is not None
        assert (side.cells, side.typed, side.frame_id, side.place) == (was.cells, was.typed, frame, 8)
    marks = [(mark.face, mark.cell) for mark in keeping.book.read.marks(keeping.visit)]
    assert marks == [(Face.B, 11), (Face.A, None)]
    keeping.book.do(NumberFromOtherEnd(keeping.box.id, LOOK))
    assert keeping.places(LOOK) == places
    again = keeping.side(4, Face.A)
    assert again is not None
    assert again.cells == a.cells
    keeping.book.undo()
    keeping.book.undo()
    assert keeping.everything() == before
    with pytest.raises(RefusedError, match="Only a box"):
        keeping.book.do(NumberFromOtherEnd(keeping.book.read.find(Part, kind=PartKind.ROOF)[0].id, LOOK))


def test_a_colony_moves_to_another_stand_on_a_day(keeping: Keeping) -> None:
    stand = as_int(keeping.book.do(AddStand(keeping.book.read.apiaries()[0].id, "by the wall")))
    keeping.book.do(MoveColony(keeping.colony, stand, LATER))  # type: ignore[arg-type]
    home, was = keeping.book.read.home(keeping.colony, LATER), keeping.book.read.home(keeping.colony, LOOK)
    assert home is not None
    assert was is not None
    assert home.stand_id == stand
    assert was.until == LATER
    event = keeping.book.read.events(keeping.colony)[-1]
    assert (event.kind, event.day, event.text) == (EventKind.MOVED, LATER, "to by the wall")
    steps = len(keeping.book._history)
    keeping.book.do(MoveColony(keeping.colony, stand, LATER))  # type: ignore[arg-type]
    assert len(keeping.book._history) == steps
    keeping.book.do(MoveColony(keeping.colony, was.stand_id, LATER))
    again = keeping.book.read.home(keeping.colony, LATER)
    assert again is not None
    assert again.since == LATER


def test_two_colonies_never_live_in_one_hive(keeping: Keeping) -> None:
    other = keeping.another()
    home, mine = keeping.book.read.home(other, LATER), keeping.book.read.home(keeping.colony, LATER)
    assert home is not None
    assert mine is not None
    with pytest.raises(RefusedError, match="Another colony"):
        keeping.book.do(MoveColony(other, home.stand_id, LATER, mine.hive_id))
    with pytest.raises(RefusedError, match="no hive"):
        keeping.book.do(MoveColony(other, home.stand_id, days_on(CAME, -9)))


def test_every_part_has_a_name_and_a_usual_place() -> None:
    assert len({part_words(kind) for kind in PartKind}) == len(PartKind)
    assert usual_level([], PartKind.ROOF) == 0
    assert usual_level([PartKind.FLOOR, PartKind.BROOD_BOX, PartKind.ROOF], PartKind.BROOD_BOX) == 2


def test_a_super_put_on_and_taken_off_leaves_the_others_where_they_stood(keeping: Keeping) -> None:
    """The roof, the feeder and the crown board are there since the bees came, not since the super did."""
    stays = {stay.part_id: stay.since for stay in keeping.book.read.find(PartStay)}
    level = keeping.noted().level
    part = _add(keeping, PartKind.SUPER, LOOK, new_frames=Content.FOUNDATION, **SUPER)
    assert keeping.noted().level is level
    after = {stay.part_id: stay.since for stay in keeping.book.read.find(PartStay)}
    assert after == {**stays, part: LOOK}
    keeping.book.do(TakePart(part, LATER))
    assert {stay.part_id: stay.since for stay in keeping.book.read.find(PartStay)} == after
    assert len(keeping.book.read.find(PartStay)) == len(after)


def test_a_part_moved_within_its_hive_stays_away_once_it_is_off(keeping: Keeping) -> None:
    part = _add(keeping, PartKind.SUPER, LOOK, **SUPER)
    keeping.book.do(TakePart(part, days_on(LATER, 5)))
    keeping.book.do(MovePart(part, LATER, 2))
    assert PartKind.SUPER in _kinds(keeping, LATER)
    assert PartKind.SUPER not in _kinds(keeping, days_on(LATER, 5))
