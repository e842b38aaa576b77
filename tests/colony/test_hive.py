from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.hive import HiveDay, PlacedFrame, hive_on, holds_on, overlap
from beeworkbook.colony.records import (
    ColonyId,
    Frame,
    FrameId,
    FrameStay,
    FrameStayId,
    Hive,
    HiveId,
    Housing,
    HousingId,
    Part,
    PartId,
    PartKind,
    PartStay,
    PartStayId,
    StandId,
)

START = date(2026, 4, 1)
HIVE = Hive(HiveId(1), "Green")
HOUSING = Housing(HousingId(1), ColonyId(1), HIVE.id, StandId(1), START)
FLOOR = Part(PartId(1), PartKind.FLOOR)
BOX = Part(PartId(2), PartKind.BROOD_BOX, frame_type="zander", places=3)
SUPER = Part(PartId(3), PartKind.SUPER, frame_type="zander", places=2)
ROOF = Part(PartId(4), PartKind.ROOF)
ELSEWHERE = Part(PartId(5), PartKind.NUCLEUS_BOX, places=1)
PARTS = (ROOF, BOX, FLOOR, SUPER, ELSEWHERE)
FRAMES = tuple(Frame(FrameId(number), "zander") for number in range(1, 5))


def day(after: int) -> date:
    return START + timedelta(days=after)


def part_stay(number: int, part: Part, level: int, since: int = 0, until: int | None = None) -> PartStay:
    end = None if until is None else day(until)
    return PartStay(PartStayId(number), part.id, HIVE.id, level, day(since), end)


def frame_stay(
    number: int, frame: Frame, part: Part, place: int, since: int = 0, until: int | None = None
) -> FrameStay:
    end = None if until is None else day(until)
    return FrameStay(FrameStayId(number), frame.id, part.id, place, day(since), end)


PART_STAYS = (
    part_stay(1, FLOOR, 0),
    part_stay(2, BOX, 1),
    part_stay(3, SUPER, 2, 10, 20),
    part_stay(4, ROOF, 2, 0, 10),
    part_stay(5, ROOF, 3, 10),
    PartStay(PartStayId(6), ELSEWHERE.id, HiveId(2), 0, START),
)
FRAME_STAYS = (
    frame_stay(1, FRAMES[0], BOX, 1),
    frame_stay(2, FRAMES[1], BOX, 3, 0, 10),
    frame_stay(3, FRAMES[1], SUPER, 2, 10),
    frame_stay(4, FRAMES[2], BOX, 3, 12),
    frame_stay(5, FRAMES[3], ELSEWHERE, 1),
)


def on(after: int) -> HiveDay:
    return hive_on(day(after), HIVE, HOUSING, PARTS, PART_STAYS, FRAMES, FRAME_STAYS)


def kinds(hive: HiveDay) -> list[PartKind]:
    return [part.part.kind for part in hive.stack]


def places(hive: HiveDay, part: Part) -> list[FrameId | None]:
    return [placed.frame.id if placed.frame else None for placed in hive.frames_of(part.id)]


def test_the_stack_is_rebuilt_from_the_ground_up_for_any_day() -> None:
    assert kinds(on(0)) == [PartKind.FLOOR, PartKind.BROOD_BOX, PartKind.ROOF]
    assert kinds(on(10)) == [PartKind.FLOOR, PartKind.BROOD_BOX, PartKind.SUPER, PartKind.ROOF]
    assert kinds(on(20)) == [PartKind.FLOOR, PartKind.BROOD_BOX, PartKind.ROOF]
    assert kinds(on(-1)) == []


def test_boxes_and_brood_boxes() -> None:
    hive = on(10)
    assert [part.part for part in hive.boxes] == [BOX, SUPER]
    assert [part.part for part in hive.brood_boxes] == [BOX]
    nucleus = hive_on(START, Hive(HiveId(2), "Small"), HOUSING, PARTS, PART_STAYS, FRAMES, FRAME_STAYS)
    assert [part.part for part in nucleus.brood_boxes] == [ELSEWHERE]
    assert places(nucleus, ELSEWHERE) == [FRAMES[3].id]


def test_frames_hang_where_their_stays_say_and_free_places_are_there() -> None:
    assert places(on(0), BOX) == [1, None, 2]
    assert places(on(10), BOX) == [1, None, None]
    assert places(on(10), SUPER) == [None, 2]
    assert places(on(12), BOX) == [1, None, 3]
    assert places(on(0), FLOOR) == []
    assert places(on(0), SUPER) == []
    assert on(0).frames_of(BOX.id)[1] == PlacedFrame(2, None, None)


def test_a_frame_is_found_by_its_place() -> None:
    hive = on(10)
    box = hive.part_day(SUPER.id)
    assert hive.place_of(FRAMES[1].id) == (box, 2)
    assert hive.place_of(FRAMES[3].id) is None
    assert hive.part_day(ELSEWHERE.id) is None


def test_of_two_frames_in_one_place_the_later_is_shown_and_one_beyond_the_box_too() -> None:
    stays = (
        frame_stay(1, FRAMES[0], BOX, 1, 5),
        frame_stay(2, FRAMES[1], BOX, 1, 0),
        frame_stay(3, FRAMES[2], BOX, 5, 0),
    )
    hive = hive_on(day(6), HIVE, HOUSING, PARTS, PART_STAYS, FRAMES, stays)
    assert places(hive, BOX) == [1, None, None, None, 3]


def test_of_two_stays_of_one_part_the_later_counts() -> None:
    stays = (part_stay(2, FLOOR, 4, 3), part_stay(1, FLOOR, 0))
    hive = hive_on(day(5), HIVE, HOUSING, PARTS, stays, (), ())
    assert [(part.part, part.stay.level) for part in hive.stack] == [(FLOOR, 4)]


def test_a_stay_without_its_record_is_passed_over() -> None:
    hive = hive_on(day(0), HIVE, HOUSING, [BOX], PART_STAYS, FRAMES[:1], FRAME_STAYS)
    assert kinds(hive) == [PartKind.BROOD_BOX]
    assert places(hive, BOX) == [1, None, None]


spans = st.tuples(st.integers(0, 12), st.none() | st.integers(0, 12))


@given(spans, spans)
def test_two_stays_overlap_when_and_only_when_they_share_a_day(
    first: tuple[int, int | None], second: tuple[int, int | None]
) -> None:
    one, other = (part_stay(1, BOX, 0, *span) for span in (first, second))
    shared = any(holds_on(one, day(after)) and holds_on(other, day(after)) for after in range(30))
    assert overlap(one, other) == overlap(other, one) == shared
