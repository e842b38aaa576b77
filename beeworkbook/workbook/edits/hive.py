"""The hive and its parts, each change dated: added, taken, moved, numbered anew, the colony moved."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from beeworkbook.colony.hive import holds_on, overlap
from beeworkbook.colony.records import (
    BOXES,
    Colony,
    ColonyId,
    Event,
    EventId,
    EventKind,
    FrameId,
    FrameStay,
    Hive,
    HiveId,
    Housing,
    HousingId,
    Mark,
    Part,
    PartId,
    PartKind,
    PartStay,
    Side,
    Stand,
    StandId,
    Visit,
    Way,
)
from beeworkbook.comb.contents import Content
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.exchanging import swap_faces
from beeworkbook.workbook.edits.frames import fill_box
from beeworkbook.workbook.edits.hanging import change_from
from beeworkbook.workbook.edits.stack import Order, restack, stack_on
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import frame_type_of, stay_of_frame, the
from beeworkbook.workbook.place import Done, Place, SingleEdit

_USUAL: Final = tuple(PartKind)
MOST_PLACES: Final = 40
"""More frames than any box holds; a slip of the keyboard is asked about. From memory, no source."""

_PART_WORDS: Final[dict[PartKind, str]] = {
    PartKind.STAND: "hive stand",
    PartKind.FLOOR: "floor",
    PartKind.NUCLEUS_BOX: "nucleus box",
    PartKind.BROOD_BOX: "brood box",
    PartKind.EXCLUDER: "queen excluder",
    PartKind.SUPER: "super",
    PartKind.CLEARER_BOARD: "clearer board",
    PartKind.CROWN_BOARD: "crown board",
    PartKind.FEEDER: "feeder",
    PartKind.LIFT: "lift",
    PartKind.ROOF: "roof",
}


def part_words(kind: PartKind) -> str:
    """What a part is called: "brood box"."""
    return say(_PART_WORDS[kind])


def usual_level(kinds: list[PartKind], kind: PartKind) -> int:
    """Where such a part usually stands in a stack: above all that belong under it or beside it."""
    rank = _USUAL.index(kind)
    below = [level for level, other in enumerate(kinds) if _USUAL.index(other) <= rank]
    return max(below, default=-1) + 1


@dataclass(frozen=True)
class AddPart(SingleEdit):
    """A part comes on the hive. `new_frames` fills a box with frames of foundation or drawn comb."""

    hive_id: HiveId
    kind: PartKind
    day: date
    level: int | None = None
    name: str = ""
    frame_type: str = ""
    places: int = 0
    new_frames: Content | None = None

    def apply(self, tx: Transaction) -> Done:
        """Gives the PartId. Errors: GoneError; RefusedError if a box has no frame type or places."""
        the(tx, Hive, self.hive_id)
        part = add_part(
            tx,
            self.hive_id,
            Part(PartId(0), self.kind, self.name, self.frame_type, self.places),
            self.day,
            level=self.level,
        )
        if self.new_frames is not None:
            visits = _visits_in(tx, self.hive_id, self.day)
            fill_box(tx, part, self.day, holds=self.new_frames, visit=visits[0] if visits else None)
        label = say("add the {part} on {day}", part=part_words(self.kind), day=date_words(self.day))
        return Done(part.id, label, _place_in(tx, self.hive_id, self.day, part.id))


def add_part(tx: Transaction, hive_id: HiveId, part: Part, day: date, *, level: int | None = None) -> Part:
    """Make a part and put it on the stack from a day on, at its usual place or this level.

    Errors: RefusedError if a box has no frame type or places, or another part has any.
    """
    if part.kind in BOXES:
        frame_type_of(tx, part.frame_type)
        if not 1 <= part.places <= MOST_PLACES:
            raise RefusedError(say("A box has from 1 to {most} frame places.", most=MOST_PLACES))
    elif part.places or part.frame_type:
        raise RefusedError(say("Only a box holds frames."))
    made = tx.add(part)
    restack(tx, hive_id, day, _inserted(tx, hive_id, made, day, level))
    return made


def _inserted(
    tx: Transaction, hive_id: HiveId, part: Part, day: date, level: int | None
) -> Callable[[Order], Order]:
    """How to put a part into the stack of any day: above the part it comes upon on the first."""
    stack = [each for each in stack_on(tx.find(PartStay, hive_id=hive_id), day) if each != part.id]
    if level is None:
        level = usual_level([the(tx, Part, part_id).kind for part_id in stack], part.kind)
    level = max(0, min(level, len(stack)))
    below = stack[:level]

    def insert(order: Order) -> Order:
        others = [each for each in order if each != part.id]
        at = next((others.index(each) + 1 for each in reversed(below) if each in others), 0)
        return [*others[:at], part.id, *others[at:]]

    return insert


@dataclass(frozen=True)
class TakePart(SingleEdit):
    """A part comes off the hive, with the frames in it."""

    part_id: PartId
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if it stood on no hive that day."""
        part = the(tx, Part, self.part_id)
        stay = _stay_of_part(tx, self.part_id, self.day)
        place = _place_in(tx, stay.hive_id, self.day, part.id)
        restack(tx, stay.hive_id, self.day, lambda order: [each for each in order if each != part.id])
        label = say("take the {part} off on {day}", part=part_words(part.kind), day=date_words(self.day))
        return Done(None, label, place)


@dataclass(frozen=True)
class MovePart(SingleEdit):
    """A part stands at another level from a day on, of this hive or another. Level 0 is on the ground."""

    part_id: PartId
    day: date
    level: int
    hive_id: HiveId | None = None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if it stood on no hive that day and no hive is named."""
        part = the(tx, Part, self.part_id)
        if self.hive_id is None:
            new = _stay_of_part(tx, part.id, self.day).hive_id
        else:
            new = the(tx, Hive, self.hive_id).id
        for stay in tx.find(PartStay, part_id=part.id):
            if holds_on(stay, self.day) and stay.hive_id != new:
                restack(tx, stay.hive_id, self.day, lambda order: [each for each in order if each != part.id])
        restack(tx, new, self.day, self._moved(tx, new, part), moved=part.id)
        label = say("move the {part} on {day}", part=part_words(part.kind), day=date_words(self.day))
        return Done(None, label, _place_in(tx, new, self.day, part.id))

    def _moved(self, tx: Transaction, hive_id: HiveId, part: Part) -> Callable[[Order], Order]:
        """Where the part stands of the days to come; within its hive, on those it stands there at all."""
        insert = _inserted(tx, hive_id, part, self.day, self.level)
        if not any(holds_on(stay, self.day) for stay in tx.find(PartStay, part_id=part.id, hive_id=hive_id)):
            return insert
        return lambda order: insert(order) if part.id in order else order


@dataclass(frozen=True)
class SetWay(SingleEdit):
    """How the combs of a hive stand to the entrance."""

    hive_id: HiveId
    way: Way

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        hive = the(tx, Hive, self.hive_id)
        if hive.way is not self.way:
            tx.put(replace(hive, way=self.way))
        warm = self.way is Way.WARM
        return Done(None, say("set the combs the warm way") if warm else say("set the combs the cold way"))


@dataclass(frozen=True)
class NumberFromOtherEnd(SingleEdit):
    """From a day on the combs of a box are counted from its other end; what was A is then B.

    The drawings from that day on stay with their combs and keep what they show.
    """

    part_id: PartId
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if it is no box."""
        part = the(tx, Part, self.part_id)
        if part.kind not in BOXES:
            raise RefusedError(say("Only a box has combs to be numbered."))
        stays = tx.find(FrameStay, part_id=part.id)
        for stay in stays:
            if stay.until is not None and stay.until <= self.day:
                continue
            place = part.places + 1 - stay.place
            change_from(tx, stay, max(self.day, stay.since), place=place, turned=not stay.turned)
        for frame_id in sorted({stay.frame_id for stay in stays}):
            self._mirror(tx, part, frame_id)
        label = say("number the box from the other end on {day}", day=date_words(self.day))
        return Done(None, label, Place(part_id=part.id))

    def _mirror(self, tx: Transaction, part: Part, frame_id: FrameId) -> None:
        """Turn round what was noted of one comb while it hung in this box, from the day on."""
        noted = {side.visit_id for side in tx.find(Side, frame_id=frame_id)}
        noted |= {mark.visit_id for mark in tx.find(Mark, frame_id=frame_id)}
        for visit in [the(tx, Visit, visit_id) for visit_id in sorted(noted)]:
            if visit.day < self.day or not _noted_in(tx, visit, frame_id, part.id):
                continue
            swap_faces(tx, visit.id, frame_id)
            for side in tx.find(Side, visit_id=visit.id, frame_id=frame_id):
                tx.put(replace(side, place=part.places + 1 - side.place))


def _noted_in(tx: Transaction, visit: Visit, frame_id: FrameId, part_id: PartId) -> bool:
    """Whether a comb hung in this box at a visit, as noted then or else as its stays say."""
    sides = tx.find(Side, visit_id=visit.id, frame_id=frame_id)
    if sides:
        return sides[0].part_id == part_id
    stay = stay_of_frame(tx, frame_id, visit.day)
    return stay is not None and stay.part_id == part_id


@dataclass(frozen=True)
class MoveColony(SingleEdit):
    """A colony lives on another stand from a day on, and in another hive if one is named."""

    colony_id: ColonyId
    stand_id: StandId
    day: date
    hive_id: HiveId | None = None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if it lived nowhere that day or the hive is taken."""
        colony, stand = the(tx, Colony, self.colony_id), the(tx, Stand, self.stand_id)
        homes = tx.find(Housing, colony_id=colony.id)
        home = next((home for home in homes if holds_on(home, self.day)), None)
        if home is None:
            raise RefusedError(say("This colony lived in no hive on that day."))
        hive_id = home.hive_id if self.hive_id is None else the(tx, Hive, self.hive_id).id
        moved = replace(home, stand_id=stand.id, hive_id=hive_id)
        label = say("move {colony} to {stand}", colony=colony.name, stand=stand.name)
        if moved == home:
            return Done(None, label, Place(colony_id=colony.id))
        _rehouse(tx, home, moved, self.day)
        text = say("to {stand}", stand=stand.name)
        tx.add(Event(EventId(0), colony.id, self.day, EventKind.MOVED, text))
        return Done(None, label, Place(colony_id=colony.id))


def _rehouse(tx: Transaction, home: Housing, moved: Housing, day: date) -> None:
    """The new home from this day on, the old one till then; no empty stay."""
    if home.since == day:
        tx.put(moved)
    else:
        tx.put(replace(home, until=day))
        moved = tx.add(replace(moved, id=HousingId(0), since=day))
    for other in tx.find(Housing, hive_id=moved.hive_id):
        if other.id != moved.id and other.colony_id != moved.colony_id and overlap(other, moved):
            raise RefusedError(say("Another colony lives in that hive then."))


def _stay_of_part(tx: Transaction, part_id: PartId, day: date) -> PartStay:
    stay = next((stay for stay in tx.find(PartStay, part_id=part_id) if holds_on(stay, day)), None)
    if stay is None:
        raise RefusedError(say("This part stood on no hive on that day."))
    return stay


def _visits_in(tx: Transaction, hive_id: HiveId, day: date) -> tuple[Visit, ...]:
    """The visits of a day to the colony in this hive."""
    homes = [home for home in tx.find(Housing, hive_id=hive_id) if holds_on(home, day)]
    return tx.find(Visit, colony_id=homes[0].colony_id, day=day) if homes else ()


def _place_in(tx: Transaction, hive_id: HiveId, day: date, part_id: PartId) -> Place:
    homes = [home for home in tx.find(Housing, hive_id=hive_id) if holds_on(home, day)]
    return Place(colony_id=homes[0].colony_id if homes else None, part_id=part_id)
