"""Finding what an edit speaks of: a record or a clear refusal, a frame's type, where a comb hangs.

Only reads. What is here looks through the transaction, so that an edit sees what it has just done.
"""

from datetime import date
from typing import Final, TypeVar

from beeworkbook.colony.hive import holds_on
from beeworkbook.colony.records import (
    BOXES,
    Answer,
    Apiary,
    Colony,
    ColonyId,
    Due,
    Event,
    Feed,
    Frame,
    FrameId,
    FrameStay,
    Hive,
    Housing,
    Mark,
    OwnFrame,
    Part,
    PartId,
    PartStay,
    Queen,
    Record,
    Round,
    Setting,
    Sheet,
    Side,
    Stand,
    Visit,
    VisitId,
    Way,
)
from beeworkbook.comb.contents import Face
from beeworkbook.comb.frames import FrameType
from beeworkbook.store.errors import NoSuchRecordError
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.errors import GoneError, RefusedError

_Kept = TypeVar("_Kept", bound=Record)

_NAMES: Final[dict[type, str]] = {
    Apiary: "This apiary",
    Stand: "This stand",
    Colony: "This colony",
    Hive: "This hive",
    Housing: "This stay of a colony",
    Part: "This part of the hive",
    Frame: "This comb",
    Queen: "This queen",
    Round: "This round",
    Visit: "This visit",
    Side: "This side",
    Mark: "This mark",
    Event: "This event",
    Feed: "This feed",
    Due: "What was due",
    Sheet: "This sheet",
    OwnFrame: "This frame type",
    Answer: "This answer",
    PartStay: "This stay of a part",
    FrameStay: "This stay of a comb",
    Setting: "This setting",
}


def held(tx: Transaction, cls: type[_Kept], record_id: int | str) -> _Kept | None:
    """The record, or None if there is none."""
    return tx.find_one(cls, record_id)


def the(tx: Transaction, cls: type[_Kept], record_id: int | str) -> _Kept:
    """The record.

    Errors: GoneError if there is none.
    """
    found = held(tx, cls, record_id)
    if found is None:
        raise GoneError(say(_NAMES[cls]))
    return found


def frame_type_of(tx: Transaction, frame_type: str) -> FrameType:
    """A shipped frame type or one of the keeper's own.

    Errors: GoneError if it is neither.
    """
    try:
        return tx.frame_type(frame_type)
    except NoSuchRecordError as error:
        raise GoneError(say(_NAMES[OwnFrame])) from error


def stay_of_frame(tx: Transaction, frame_id: FrameId, day: date) -> FrameStay | None:
    """Where a frame hung on a day, None if it hung nowhere."""
    return next((stay for stay in tx.find(FrameStay, frame_id=frame_id) if holds_on(stay, day)), None)


def frame_in(tx: Transaction, part_id: PartId, place: int, day: date) -> FrameStay | None:
    """What hung in this place of this box on a day."""
    stays = tx.find(FrameStay, part_id=part_id, place=place)
    return next((stay for stay in stays if holds_on(stay, day)), None)


def boxes_of(tx: Transaction, colony_id: ColonyId, day: date) -> tuple[Part, ...]:
    """The boxes of a colony's hive on a day, from the ground up; none if it lived nowhere."""
    homes = [home for home in tx.find(Housing, colony_id=colony_id) if holds_on(home, day)]
    if not homes:
        return ()
    stays = [stay for stay in tx.find(PartStay, hive_id=homes[0].hive_id) if holds_on(stay, day)]
    parts = [the(tx, Part, stay.part_id) for stay in sorted(stays, key=lambda stay: (stay.level, stay.id))]
    return tuple(part for part in parts if part.kind in BOXES)


def way_of(tx: Transaction, part_id: PartId, day: date) -> Way:
    """How the combs of the hive a box stood in that day stand to the entrance; cold way if in none."""
    stays = [stay for stay in tx.find(PartStay, part_id=part_id) if holds_on(stay, day)]
    return the(tx, Hive, stays[0].hive_id).way if stays else Way.COLD


def side_of(tx: Transaction, visit_id: VisitId, frame_id: FrameId, face: Face) -> Side | None:
    """What was noted of this side in this visit."""
    return next(iter(tx.find(Side, visit_id=visit_id, frame_id=frame_id, face=face)), None)


def place_of_comb(tx: Transaction, visit: Visit, frame_id: FrameId) -> tuple[PartId, int]:
    """The box and place a comb hung in at this visit, as noted then or else as its stays say.

    Errors: RefusedError if it hung nowhere that day.
    """
    noted = tx.find(Side, visit_id=visit.id, frame_id=frame_id)
    if noted:
        return noted[0].part_id, noted[0].place
    stay = stay_of_frame(tx, frame_id, visit.day)
    if stay is None:
        the(tx, Frame, frame_id)
        raise RefusedError(say("This comb hung in no hive on that day, so nothing can be noted of it."))
    return stay.part_id, stay.place


def comb_name(tx: Transaction, frame_id: FrameId | None, day: date, face: Face | None = None) -> str:
    """A comb as the keeper says it: its place, and the side: "5", "5A"; "?" if it hangs nowhere."""
    if frame_id is None:
        return ""
    stay = stay_of_frame(tx, frame_id, day)
    return f"{stay.place if stay else '?'}{face or ''}"
