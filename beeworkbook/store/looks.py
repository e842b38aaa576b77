"""What was noted in visits: visits themselves, sides, answers, marks, and what hangs on a colony by day."""

from collections.abc import Mapping
from datetime import date
from typing import Any

from sqlalchemy import bindparam, or_, select

from beeworkbook.colony.hive import holds_on
from beeworkbook.colony.records import (
    Answer,
    ApiaryId,
    ColonyId,
    Due,
    DueState,
    Event,
    Feed,
    FrameId,
    FrameStay,
    Mark,
    Question,
    Side,
    SideId,
    Visit,
    VisitId,
)
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.store import schema
from beeworkbook.store.link import Link
from beeworkbook.store.lookup import find, find_one, record_of, records_of
from beeworkbook.store.rows import TABLES, R
from beeworkbook.store.statements import chosen, once, text_of
from beeworkbook.store.whereabouts import holds

_QUESTION_ORDER = {question: at for at, question in enumerate(Question)}


@once
def _of_colony_text(cls: type[Any]) -> str:
    table = TABLES[cls]
    asked = chosen(cls).where(table.c.colony_id == bindparam("colony_id"))
    return text_of(asked.order_by(table.c.day, table.c.id))


@once
def _visit_before_text() -> str:
    table = schema.visit
    earlier = or_(
        table.c.day < bindparam("day"), (table.c.day == bindparam("day")) & (table.c.id < bindparam("id"))
    )
    asked = chosen(Visit).where(table.c.colony_id == bindparam("colony_id"), earlier)
    return text_of(asked.order_by(table.c.day.desc(), table.c.id.desc()))


@once
def _visits_on_text() -> str:
    visit, housing, stand, round_ = schema.visit, schema.housing, schema.stand, schema.round_
    lived = visit.outerjoin(housing, (housing.c.colony_id == visit.c.colony_id) & holds(housing, visit.c.day))
    where = lived.outerjoin(stand, stand.c.id == housing.c.stand_id).outerjoin(
        round_, round_.c.id == visit.c.round_id
    )
    here = or_(stand.c.apiary_id == bindparam("apiary_id"), round_.c.apiary_id == bindparam("apiary_id"))
    asked = chosen(Visit).select_from(where).where(visit.c.day == bindparam("day"), here)
    return text_of(asked.order_by(stand.c.position, visit.c.id))


@once
def _sides_text() -> str:
    table = schema.side
    asked = chosen(Side).where(table.c.visit_id == bindparam("visit_id"))
    return text_of(asked.order_by(table.c.part_id, table.c.place, table.c.face, table.c.id))


@once
def _earlier_sides_text() -> str:
    """The sides of a frame before a visit, the latest first, without their drawings."""
    side, visit = schema.side, schema.visit
    earlier = or_(
        visit.c.day < bindparam("day"), (visit.c.day == bindparam("day")) & (visit.c.id < bindparam("id"))
    )
    asked = select(side.c.id, side.c.face, visit.c.day, side.c.origin).join_from(
        side, visit, visit.c.id == side.c.visit_id
    )
    return text_of(
        asked.where(side.c.frame_id == bindparam("frame_id"), earlier).order_by(
            visit.c.day.desc(), visit.c.id.desc(), side.c.id.desc()
        )
    )


@once
def _dues_text(*, state: bool, apiary: bool, colony: bool) -> str:
    due, housing, stand = schema.due, schema.housing, schema.stand
    asked = chosen(Due)
    if state:
        asked = asked.where(due.c.state == bindparam("state"))
    if colony:
        asked = asked.where(due.c.colony_id == bindparam("colony_id"))
    if apiary:
        lived = select(housing.c.id).join_from(housing, stand, stand.c.id == housing.c.stand_id)
        there = lived.where(
            housing.c.colony_id == due.c.colony_id,
            stand.c.apiary_id == bindparam("apiary_id"),
            holds(housing, due.c.day),
        )
        asked = asked.where(or_(due.c.apiary_id == bindparam("apiary_id"), there.exists()))
    return text_of(asked.order_by(due.c.day, due.c.id))


def by_day(link: Link, cls: type[R], colony_id: ColonyId) -> tuple[R, ...]:
    """The visits, events or feeds of a colony, by day."""
    return records_of(link, cls, link.rows(_of_colony_text(cls), {"colony_id": colony_id}))


def visit_before(link: Link, visit: Visit) -> Visit | None:
    """The visit to the same colony before this one, or None."""
    asked = {"colony_id": visit.colony_id, "day": visit.day.isoformat(), "id": visit.id}
    row = link.row(_visit_before_text(), asked)
    return None if row is None else record_of(link, Visit, row)


def visits_on(link: Link, apiary_id: ApiaryId, day: date) -> tuple[Visit, ...]:
    """The visits of a day to colonies that stood in this apiary or were looked at in a round of it."""
    rows = link.rows(_visits_on_text(), {"apiary_id": apiary_id, "day": day.isoformat()})
    return tuple(dict.fromkeys(records_of(link, Visit, rows)))


def sides(link: Link, visit_id: VisitId) -> tuple[Side, ...]:
    """The sides of a visit, by box, place and face."""
    return records_of(link, Side, link.rows(_sides_text(), {"visit_id": visit_id}))


def last_sides(link: Link, frame_id: FrameId, visit: Visit, *, seen: bool) -> dict[Face, Side]:
    """What was last noted before a visit of each face, as the frame hangs at that visit.

    A frame turned round since shows its other letter.
    """
    stays = find(link, FrameStay, {"frame_id": frame_id})
    now = _turned(stays, visit.day)
    asked = {"frame_id": frame_id, "day": visit.day.isoformat(), "id": visit.id}
    wanted: dict[Face, SideId] = {}
    for side_id, letter, day, origin in link.rows(_earlier_sides_text(), asked):
        if seen and origin == Origin.ASSUMED.value:
            continue
        face = Face(letter) if _turned(stays, date.fromisoformat(day)) == now else Face(letter).other
        wanted.setdefault(face, side_id)
        if len(wanted) == len(Face):
            break
    found = ((face, find_one(link, Side, side_id)) for face, side_id in wanted.items())
    return {face: side for face, side in found if side is not None}


def _turned(stays: tuple[FrameStay, ...], day: date) -> bool:
    return any(stay.turned for stay in stays if holds_on(stay, day))


def answers(link: Link, visit_id: VisitId) -> Mapping[Question, Answer]:
    """The answers of a visit by question, in the order they are asked."""
    found = find(link, Answer, {"visit_id": visit_id})
    ordered = sorted(found, key=lambda answer: _QUESTION_ORDER[answer.question])
    return {answer.question: answer for answer in ordered}


def marks(link: Link, visit_id: VisitId) -> tuple[Mark, ...]:
    """The marks of a visit, in the order they were made."""
    return find(link, Mark, {"visit_id": visit_id})


def dues(
    link: Link, state: DueState | None, apiary_id: ApiaryId | None, colony_id: ColonyId | None
) -> tuple[Due, ...]:
    """What is due, by day, in this state, apiary and colony where one is given.

    A due of a colony belongs to the apiary the colony stands in on the day it is due.
    """
    text = _dues_text(state=state is not None, apiary=apiary_id is not None, colony=colony_id is not None)
    given = {"state": state and state.value, "apiary_id": apiary_id, "colony_id": colony_id}
    asked = {name: value for name, value in given.items() if value is not None}
    return records_of(link, Due, link.rows(text, asked))


def events(link: Link, colony_id: ColonyId) -> tuple[Event, ...]:
    """What happened to a colony, by day."""
    return by_day(link, Event, colony_id)


def feeds(link: Link, colony_id: ColonyId) -> tuple[Feed, ...]:
    """What a colony was fed, by day."""
    return by_day(link, Feed, colony_id)
