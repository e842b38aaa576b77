"""Which boxes are named in sentences, and how."""

from datetime import date

import pytest

from beeworkbook.colony.box_names import box_of_frames, box_title
from beeworkbook.colony.hive import HiveDay, PartDay, PlacedFrame
from beeworkbook.colony.records import (
    ColonyId,
    Frame,
    FrameId,
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

DAY = date(2026, 5, 16)
BROOD, SUPER, NUCLEUS = PartKind.BROOD_BOX, PartKind.SUPER, PartKind.NUCLEUS_BOX


def hive(*boxes: tuple[PartKind, str]) -> HiveDay:
    """A hive with a floor and these boxes from the ground up, one frame in each."""
    stack = [
        PartDay(Part(PartId(99), PartKind.FLOOR), PartStay(PartStayId(99), PartId(99), HiveId(1), 0, DAY))
    ]
    for level, (kind, name) in enumerate(boxes, start=1):
        part = Part(PartId(level), kind, name, "zander", 1)
        stay = PartStay(PartStayId(level), part.id, HiveId(1), level, DAY)
        stack.append(PartDay(part, stay, (PlacedFrame(1, Frame(FrameId(level), "zander"), None),)))
    housing = Housing(HousingId(1), ColonyId(1), HiveId(1), StandId(1), DAY)
    return HiveDay(DAY, Hive(HiveId(1), "Green"), housing, tuple(stack))


@pytest.mark.parametrize(
    ("boxes", "words"),
    [
        ([(BROOD, "")], {}),
        ([(NUCLEUS, "")], {}),
        ([(BROOD, ""), (BROOD, "")], {1: "in the lower box", 2: "in the upper box"}),
        ([(BROOD, ""), (NUCLEUS, ""), (BROOD, "")], {1: "in box 1", 2: "in box 2", 3: "in box 3"}),
        ([(BROOD, ""), (SUPER, "")], {2: "in the super"}),
        ([(BROOD, ""), (SUPER, ""), (SUPER, "")], {2: "in super 1", 3: "in super 2"}),
        ([(BROOD, "Oak"), (BROOD, "")], {1: "in Oak", 2: "in the upper box"}),
        ([(BROOD, "Oak"), (SUPER, "Ash")], {2: "in Ash"}),
    ],
)
def test_boxes_are_named_where_a_number_alone_may_be_two_combs(
    boxes: list[tuple[PartKind, str]], words: dict[int, str]
) -> None:
    assert box_of_frames(hive(*boxes)) == words


@pytest.mark.parametrize(
    ("boxes", "titles"),
    [
        ([(BROOD, "")], ["brood box"]),
        ([(NUCLEUS, "")], ["nucleus box"]),
        (
            [(BROOD, ""), (BROOD, ""), (SUPER, "")],
            ["lower brood box", "upper brood box", "super"],
        ),
        ([(BROOD, ""), (BROOD, ""), (NUCLEUS, "")], ["brood box 1", "brood box 2", "nucleus box 3"]),
        ([(BROOD, "Oak"), (SUPER, ""), (SUPER, "Ash")], ["Oak", "super 1", "Ash"]),
    ],
)
def test_a_box_has_the_name_it_goes_by_in_its_hive(
    boxes: list[tuple[PartKind, str]], titles: list[str]
) -> None:
    held = hive(*boxes)
    assert [box_title(held, box.part.id) for box in held.boxes] == titles


def test_without_a_hive_there_is_nothing_to_name() -> None:
    assert box_of_frames(None) == {}
