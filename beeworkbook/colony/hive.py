"""The hive of any day, rebuilt from dated stays: its parts from the ground up and the frames in each.

Pure: it is handed the records and the day. Where records contradict each other, the later stay wins
and nothing is hidden; the store's check reports the contradiction.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Protocol

from beeworkbook.colony.records import (
    BOXES,
    Frame,
    FrameId,
    FrameStay,
    Hive,
    Housing,
    Part,
    PartId,
    PartKind,
    PartStay,
)


class Stay(Protocol):
    """Whatever holds from one day until another."""

    @property
    def since(self) -> date:
        """The first day it holds."""

    @property
    def until(self) -> date | None:
        """The first day it no longer holds; None while it still does."""


def holds_on(stay: Stay, day: date) -> bool:
    """Whether a stay holds on this day: from its first day on, and no longer on its last."""
    return stay.since <= day and (stay.until is None or day < stay.until)


def overlap(first: Stay, second: Stay) -> bool:
    """Whether two stays share a day. A stay that ended the day it began holds on none."""
    return all(
        one.until is None or (other.since < one.until and one.since < one.until)
        for one, other in ((first, second), (second, first))
    )


@dataclass(frozen=True, slots=True)
class PlacedFrame:
    """One frame place of a box and what hangs in it; frame and stay are None when it is free."""

    place: int
    frame: Frame | None
    stay: FrameStay | None


@dataclass(frozen=True, slots=True)
class PartDay:
    """One part as it stood on the day. `frames` has every place of a box, 1 first; else it is empty."""

    part: Part
    stay: PartStay
    frames: tuple[PlacedFrame, ...] = ()

    @property
    def is_box(self) -> bool:
        """Whether this part holds frames."""
        return self.part.kind in BOXES


@dataclass(frozen=True, slots=True)
class HiveDay:
    """A colony's hive on one day; `stack` is from the ground up."""

    day: date
    hive: Hive
    housing: Housing
    stack: tuple[PartDay, ...]

    @property
    def boxes(self) -> tuple[PartDay, ...]:
        """The parts that hold frames, from the ground up."""
        return tuple(part for part in self.stack if part.is_box)

    @property
    def brood_boxes(self) -> tuple[PartDay, ...]:
        """Brood boxes and nucleus boxes, from the ground up."""
        return tuple(part for part in self.boxes if part.part.kind is not PartKind.SUPER)

    def part_day(self, part_id: PartId) -> PartDay | None:
        """This part as it stood that day, or None if it did not stand here."""
        return next((part for part in self.stack if part.part.id == part_id), None)

    def frames_of(self, part_id: PartId) -> tuple[PlacedFrame, ...]:
        """The places of a box that day; empty for any other part."""
        found = self.part_day(part_id)
        return found.frames if found else ()

    def place_of(self, frame_id: FrameId) -> tuple[PartDay, int] | None:
        """The box and the place a frame hung in that day, or None if it hung elsewhere."""
        for part in self.boxes:
            for placed in part.frames:
                if placed.frame is not None and placed.frame.id == frame_id:
                    return part, placed.place
        return None


def hive_on(  # noqa: PLR0917 - one argument a kind of record
    day: date,
    hive: Hive,
    housing: Housing,
    parts: Iterable[Part],
    part_stays: Iterable[PartStay],
    frames: Iterable[Frame],
    frame_stays: Iterable[FrameStay],
) -> HiveDay:
    """The hive as it stood on this day; records of other hives and other days are passed over."""
    part_by_id = {part.id: part for part in parts}
    frame_by_id = {frame.id: frame for frame in frames}
    hanging = _hanging(day, frame_stays, frame_by_id)
    standing: dict[PartId, PartStay] = {}
    for stay in sorted(part_stays, key=lambda stay: (stay.since, stay.id)):
        if stay.hive_id == hive.id and stay.part_id in part_by_id and holds_on(stay, day):
            standing[stay.part_id] = stay
    stays = sorted(standing.values(), key=lambda stay: (stay.level, stay.id))
    stack = tuple(
        PartDay(part, stay, _places(part, hanging.get(part.id, {}), frame_by_id))
        for stay in stays
        for part in (part_by_id[stay.part_id],)
    )
    return HiveDay(day, hive, housing, stack)


def _hanging(
    day: date, stays: Iterable[FrameStay], frames: Mapping[FrameId, Frame]
) -> dict[PartId, dict[int, FrameStay]]:
    """By box and place, the stay that holds that day."""
    hanging: dict[PartId, dict[int, FrameStay]] = {}
    for stay in sorted(stays, key=lambda stay: (stay.since, stay.id)):
        if stay.frame_id in frames and holds_on(stay, day):
            hanging.setdefault(stay.part_id, {})[stay.place] = stay
    return hanging


def _places(
    part: Part, hanging: Mapping[int, FrameStay], frames: Mapping[FrameId, Frame]
) -> tuple[PlacedFrame, ...]:
    """Every place of a box; a frame recorded beyond the last place is shown there all the same."""
    if part.kind not in BOXES:
        return ()
    last = max([part.places, *hanging])
    placed = []
    for place in range(1, last + 1):
        stay = hanging.get(place)
        placed.append(PlacedFrame(place, frames[stay.frame_id] if stay else None, stay))
    return tuple(placed)
