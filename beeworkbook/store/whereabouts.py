"""Who stood where on a day: apiaries and their stands, a colony's home, its hive of that day.

Questions are asked of the dated stays, so any past day answers as well as today.
"""

from dataclasses import dataclass
from datetime import date
from itertools import accumulate
from typing import Any, Final

from sqlalchemy import ColumnElement, FromClause, bindparam, or_, select

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
from beeworkbook.store import schema
from beeworkbook.store.link import Link
from beeworkbook.store.lookup import find_one, record_of, records_of
from beeworkbook.store.rows import form_of
from beeworkbook.store.statements import chosen, once, text_of


@dataclass(frozen=True, slots=True)
class Standing:
    """One stand on one day, and who stood on it; the last three are None when it was free."""

    stand: Stand
    colony: Colony | None = None
    hive: Hive | None = None
    housing: Housing | None = None


_STANDING: Final[tuple[type[Any], ...]] = (Stand, Colony, Hive, Housing)


def holds(stay: FromClause, day: ColumnElement[Any]) -> ColumnElement[bool]:
    """Whether a dated stay holds on a day: from its first day on and no longer on its last."""
    return (stay.c.since <= day) & or_(stay.c.until.is_(None), stay.c.until > day)


def _day() -> ColumnElement[Any]:
    return bindparam("day")


@once
def _apiaries_text() -> str:
    table = schema.apiary
    return text_of(chosen(Apiary).order_by(table.c.position, table.c.id))


@once
def _stands_text() -> str:
    table = schema.stand
    asked = chosen(Stand).where(table.c.apiary_id == bindparam("apiary_id"))
    return text_of(asked.order_by(table.c.position, table.c.id))


@once
def _rounds_text() -> str:
    table = schema.round_
    asked = chosen(Round).where(table.c.apiary_id == bindparam("apiary_id"))
    return text_of(asked.order_by(table.c.day, table.c.id))


@once
def _standing_text() -> str:
    """Stands with what stood on them; a stand with two hives comes twice, a free one with blanks."""
    stand, housing, colony, hive = schema.stand, schema.housing, schema.colony, schema.hive
    columns = [
        table.c[name]
        for cls, table in zip(_STANDING, (stand, colony, hive, housing), strict=True)
        for name in form_of(cls).names
    ]
    here = stand.outerjoin(housing, (housing.c.stand_id == stand.c.id) & holds(housing, _day()))
    asked = select(*columns).select_from(
        here.outerjoin(colony, colony.c.id == housing.c.colony_id).outerjoin(
            hive, hive.c.id == housing.c.hive_id
        )
    )
    return text_of(
        asked.where(stand.c.apiary_id == bindparam("apiary_id")).order_by(
            stand.c.position, stand.c.id, housing.c.since, housing.c.id
        )
    )


@once
def _home_text() -> str:
    table = schema.housing
    asked = chosen(Housing).where(table.c.colony_id == bindparam("colony_id"), holds(table, _day()))
    return text_of(asked.order_by(table.c.since.desc(), table.c.id.desc()))


@once
def _stack_text() -> str:
    part, stay = schema.part, schema.part_stay
    columns = (
        *(part.c[name] for name in form_of(Part).names),
        *(stay.c[name] for name in form_of(PartStay).names),
    )
    asked = select(*columns).join_from(stay, part, part.c.id == stay.c.part_id)
    return text_of(asked.where(stay.c.hive_id == bindparam("hive_id"), holds(stay, _day())))


@once
def _hanging_text() -> str:
    frame, stay, part_stay = schema.frame, schema.frame_stay, schema.part_stay
    columns = (
        *(frame.c[name] for name in form_of(Frame).names),
        *(stay.c[name] for name in form_of(FrameStay).names),
    )
    asked = select(*columns).select_from(
        part_stay.join(stay, stay.c.part_id == part_stay.c.part_id).join(frame, frame.c.id == stay.c.frame_id)
    )
    here = part_stay.c.hive_id == bindparam("hive_id")
    return text_of(asked.where(here, holds(part_stay, _day()), holds(stay, _day())))


def apiaries(link: Link) -> tuple[Apiary, ...]:
    """All apiaries, in their order."""
    return records_of(link, Apiary, link.rows(_apiaries_text()))


def stands(link: Link, apiary_id: ApiaryId) -> tuple[Stand, ...]:
    """The stands of an apiary, in the order of the walk."""
    return records_of(link, Stand, link.rows(_stands_text(), {"apiary_id": apiary_id}))


def rounds(link: Link, apiary_id: ApiaryId) -> tuple[Round, ...]:
    """The rounds of an apiary, by day."""
    return records_of(link, Round, link.rows(_rounds_text(), {"apiary_id": apiary_id}))


def standing(link: Link, apiary_id: ApiaryId, day: date) -> tuple[Standing, ...]:
    """Every stand of an apiary on a day and who stood on it, in the order of the walk."""
    rows = link.rows(_standing_text(), {"apiary_id": apiary_id, "day": day.isoformat()})
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
    row = link.row(_home_text(), {"colony_id": colony_id, "day": day.isoformat()})
    return None if row is None else record_of(link, Housing, row)


def hive_day(link: Link, colony_id: ColonyId, day: date) -> HiveDay | None:
    """The hive a colony lived in on a day, as it stood then, or None."""
    with link.reading():
        housing = home(link, colony_id, day)
        hive = None if housing is None else find_one(link, Hive, housing.hive_id)
        if housing is None or hive is None:
            return None
        parts, part_stays = _pairs(link, (Part, PartStay), _stack_text(), hive.id, day)
        frames, frame_stays = _pairs(link, (Frame, FrameStay), _hanging_text(), hive.id, day)
    return hive_on(day, hive, housing, parts, part_stays, frames, frame_stays)


def _pairs(
    link: Link, classes: tuple[Any, Any], text: str, hive_id: HiveId, day: date
) -> tuple[list[Any], list[Any]]:
    """The records of two classes out of rows that hold one of each."""
    first, second = classes
    cut = len(form_of(first).names)
    rows = link.rows(text, {"hive_id": hive_id, "day": day.isoformat()})
    return [record_of(link, first, row[:cut]) for row in rows], [
        record_of(link, second, row[cut:]) for row in rows
    ]
