"""Who stood where on a day: apiaries and their stands, a colony's home, its hive of that day.

Questions are asked of the dated stays, so any past day answers as well as today.
"""

from dataclasses import dataclass
from datetime import date
from itertools import accumulate
from typing import Any, Final

from beeworkbook.colony.hive import HiveDay, hive_on
from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Colony,
    ColonyId,
    Frame,
    FrameStay,
    Hive,
    HiveId,
    Housing,
    Part,
    PartStay,
    Round,
    Stand,
)
from beeworkbook.store.link import Link
from beeworkbook.store.lookup import find_one, record_of, records_of
from beeworkbook.store.rows import form_of
from beeworkbook.store.texts import text


@dataclass(frozen=True, slots=True)
class Standing:
    """One stand on one day, and who stood on it; the last three are None when it was free."""

    stand: Stand
    colony: Colony | None = None
    hive: Hive | None = None
    housing: Housing | None = None


_STANDING: Final[tuple[type[Any], ...]] = (Stand, Colony, Hive, Housing)


def apiaries(link: Link) -> tuple[Apiary, ...]:
    """All apiaries, in their order."""
    return records_of(link, Apiary, link.rows(text("apiaries")))


def stands(link: Link, apiary_id: ApiaryId) -> tuple[Stand, ...]:
    """The stands of an apiary, in the order of the walk."""
    return records_of(link, Stand, link.rows(text("stands"), {"apiary_id": apiary_id}))


def rounds(link: Link, apiary_id: ApiaryId) -> tuple[Round, ...]:
    """The rounds of an apiary, by day."""
    return records_of(link, Round, link.rows(text("rounds"), {"apiary_id": apiary_id}))


def standing(link: Link, apiary_id: ApiaryId, day: date) -> tuple[Standing, ...]:
    """Every stand of an apiary on a day and who stood on it, in the order of the walk."""
    rows = link.rows(text("standing"), {"apiary_id": apiary_id, "day": day.isoformat()})
    stand, colony, hive, _ = accumulate(len(form_of(cls).names) for cls in _STANDING)
    return tuple(
        Standing(record_of(link, Stand, row[:stand]))
        if row[stand] is None
        else Standing(
            record_of(link, Stand, row[:stand]),
            record_of(link, Colony, row[stand:colony]),
            record_of(link, Hive, row[colony:hive]),
            record_of(link, Housing, row[hive:]),
        )
        for row in rows
    )


def home(link: Link, colony_id: ColonyId, day: date) -> Housing | None:
    """Where a colony lived on a day, or None."""
    row = link.row(text("home"), {"colony_id": colony_id, "day": day.isoformat()})
    return None if row is None else record_of(link, Housing, row)


def hive_day(link: Link, colony_id: ColonyId, day: date) -> HiveDay | None:
    """The hive a colony lived in on a day, as it stood then, or None."""
    with link.reading():
        housing = home(link, colony_id, day)
        hive = None if housing is None else find_one(link, Hive, housing.hive_id)
        if housing is None or hive is None:
            return None
        parts, part_stays = _pairs(link, (Part, PartStay), text("stack"), hive.id, day)
        frames, frame_stays = _pairs(link, (Frame, FrameStay), text("hanging"), hive.id, day)
    return hive_on(day, hive, housing, parts, part_stays, frames, frame_stays)


def _pairs(
    link: Link, classes: tuple[Any, Any], asked: str, hive_id: HiveId, day: date
) -> tuple[list[Any], list[Any]]:
    """The records of two classes out of rows that hold one of each."""
    first, second = classes
    cut = len(form_of(first).names)
    rows = link.rows(asked, {"hive_id": hive_id, "day": day.isoformat()})
    return [record_of(link, first, row[:cut]) for row in rows], [
        record_of(link, second, row[cut:]) for row in rows
    ]
