"""What was noted in visits: visits themselves, sides, answers, marks, and what hangs on a colony by day."""

from collections.abc import Mapping
from datetime import date

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
from beeworkbook.store.link import Link
from beeworkbook.store.lookup import find, find_one, record_of, records_of
from beeworkbook.store.texts import text

_QUESTION_ORDER = {question: at for at, question in enumerate(Question)}


def visits(link: Link, colony_id: ColonyId) -> tuple[Visit, ...]:
    """The visits to a colony, by day."""
    return records_of(link, Visit, link.rows(text("visits"), {"colony_id": colony_id}))


def visit_before(link: Link, visit: Visit) -> Visit | None:
    """The visit to the same colony before this one, or None."""
    asked = {"colony_id": visit.colony_id, "day": visit.day.isoformat(), "id": visit.id}
    row = link.row(text("visit before"), asked)
    return None if row is None else record_of(link, Visit, row)


def visits_on(link: Link, apiary_id: ApiaryId, day: date) -> tuple[Visit, ...]:
    """The visits of a day to colonies that stood in this apiary or were looked at in a round of it."""
    rows = link.rows(text("visits on"), {"apiary_id": apiary_id, "day": day.isoformat()})
    return tuple(dict.fromkeys(records_of(link, Visit, rows)))


def sides(link: Link, visit_id: VisitId) -> tuple[Side, ...]:
    """The sides of a visit, by box, place and face."""
    return records_of(link, Side, link.rows(text("sides"), {"visit_id": visit_id}))


def side(link: Link, visit_id: VisitId, frame_id: FrameId, face: Face) -> Side | None:
    """What was noted of one side in a visit, or None."""
    row = link.row(text("side"), {"visit_id": visit_id, "frame_id": frame_id, "face": face.value})
    return None if row is None else record_of(link, Side, row)


def last_sides(link: Link, frame_id: FrameId, visit: Visit, *, seen: bool) -> dict[Face, Side]:
    """What was last noted before a visit of each face, as the frame hangs at that visit.

    A frame turned round since shows its other letter.
    """
    stays = find(link, FrameStay, {"frame_id": frame_id})
    now = _turned(stays, visit.day)
    asked = {"frame_id": frame_id, "day": visit.day.isoformat(), "id": visit.id}
    wanted: dict[Face, SideId] = {}
    for side_id, letter, day, origin in link.rows(text("earlier sides"), asked):
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
    given = {"state": state and state.value, "apiary_id": apiary_id, "colony_id": colony_id}
    asked = {name: value for name, value in given.items() if value is not None}
    return records_of(link, Due, link.rows(text(" ".join(("dues", *asked))), asked))


def events(link: Link, colony_id: ColonyId) -> tuple[Event, ...]:
    """What happened to a colony, by day."""
    return records_of(link, Event, link.rows(text("events"), {"colony_id": colony_id}))


def feeds(link: Link, colony_id: ColonyId) -> tuple[Feed, ...]:
    """What a colony was fed, by day."""
    return records_of(link, Feed, link.rows(text("feeds"), {"colony_id": colony_id}))
