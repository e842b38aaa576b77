"""The totals of many visits at once, from what is stored beside the drawings: no drawing is decoded."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from typing import Any, Final

from sqlalchemy import ColumnElement, Select, bindparam, case, func, select

from beeworkbook.colony.records import (
    BOXES,
    Answer,
    ColonyId,
    FrameMake,
    PartKind,
    Question,
    Visit,
    VisitId,
)
from beeworkbook.colony.totals import NOTHING, SideTotals, VisitTotals
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.store import schema
from beeworkbook.store.errors import DamagedWorkbookError
from beeworkbook.store.link import Link, Row
from beeworkbook.store.lookup import records_of
from beeworkbook.store.statements import chosen, once, text_of
from beeworkbook.store.tallies import COLUMNS, tallied
from beeworkbook.store.whereabouts import holds

_SIDE_COLUMNS: Final = (
    "id",
    "visit_id",
    "frame_id",
    "part_id",
    "place",
    "face",
    "frame_type",
    "origin",
    "grain",
)
_KINDS: Final = {kind.value: kind for kind in PartKind}
_FACES: Final = {face.value: face for face in Face}
_ORIGINS: Final = {origin.value: origin for origin in Origin}
_FIRST_TALLY: Final = len(_SIDE_COLUMNS) + 2
"""Behind the side's own columns lie covered and the kind of the part."""


def _scope(*, one_visit: bool) -> tuple[ColumnElement[bool], ...]:
    visit = schema.visit
    if one_visit:
        return (visit.c.id == bindparam("visit_id"),)
    return (
        visit.c.colony_id == bindparam("colony_id"),
        visit.c.day >= bindparam("since"),
        visit.c.day < bindparam("until"),
    )


@once
def visits_text(*, one_visit: bool) -> str:
    """The visits in question, by day."""
    visit = schema.visit
    return text_of(chosen(Visit).where(*_scope(one_visit=one_visit)).order_by(visit.c.day, visit.c.id))


@once
def answers_text(*, one_visit: bool) -> str:
    """Their answers."""
    visit, answer = schema.visit, schema.answer
    asked = chosen(Answer).join_from(visit, answer, answer.c.visit_id == visit.c.id)
    return text_of(asked.where(*_scope(one_visit=one_visit)).order_by(answer.c.id))


@once
def sides_text(*, one_visit: bool) -> str:
    """Their sides with what was counted, which is blank for an assumed one."""
    visit, side, tally, part = schema.visit, schema.side, schema.tally, schema.part
    columns = (
        *(side.c[name] for name in _SIDE_COLUMNS),
        side.c.covered,
        part.c.kind,
        *(tally.c[name] for name in COLUMNS),
    )
    joined = (
        visit.join(side, side.c.visit_id == visit.c.id)
        .join(part, part.c.id == side.c.part_id)
        .outerjoin(tally, tally.c.side_id == side.c.id)
    )
    asked: Select[Any] = select(*columns).select_from(joined).where(*_scope(one_visit=one_visit))
    return text_of(asked.order_by(visit.c.id, side.c.part_id, side.c.place, side.c.face))


@once
def combs_text(*, one_visit: bool) -> str:
    """How many frames, dummies apart, hung in the hive that day, and how many of them not in supers."""
    visit, housing, part, frame = schema.visit, schema.housing, schema.part, schema.frame
    part_stay, frame_stay = schema.part_stay, schema.frame_stay
    boxes = sorted(kind.value for kind in BOXES)
    joined = (
        visit.join(housing, (housing.c.colony_id == visit.c.colony_id) & holds(housing, visit.c.day))
        .join(part_stay, (part_stay.c.hive_id == housing.c.hive_id) & holds(part_stay, visit.c.day))
        .join(part, (part.c.id == part_stay.c.part_id) & part.c.kind.in_([_literal(kind) for kind in boxes]))
        .join(frame_stay, (frame_stay.c.part_id == part.c.id) & holds(frame_stay, visit.c.day))
        .join(
            frame, (frame.c.id == frame_stay.c.frame_id) & (frame.c.make == _literal(FrameMake.FRAME.value))
        )
    )
    below = case((part.c.kind != _literal(PartKind.SUPER.value), frame.c.id))
    counted = select(visit.c.id, func.count(frame.c.id.distinct()), func.count(below.distinct())).select_from(
        joined
    )
    return text_of(counted.where(*_scope(one_visit=one_visit)).group_by(visit.c.id))


def _literal(word: str) -> ColumnElement[str]:
    from sqlalchemy import literal_column

    return literal_column(f"'{word}'")


def visit_totals(link: Link, visit_id: VisitId) -> VisitTotals | None:
    """The stored totals of one visit, or None if there is no such visit."""
    found = _totals(link, {"visit_id": visit_id}, one_visit=True)
    return found[0] if found else None


def season(link: Link, colony_ids: Iterable[ColonyId], since: date, until: date) -> tuple[VisitTotals, ...]:
    """The stored totals of these colonies' visits from one day on and before another, by day."""
    days = {"since": since.isoformat(), "until": until.isoformat()}
    with link.reading():
        found = [
            totals
            for colony_id in dict.fromkeys(colony_ids)
            for totals in _totals(link, {"colony_id": colony_id, **days}, one_visit=False)
        ]
    return tuple(sorted(found, key=lambda totals: (totals.visit.day, totals.visit.id)))


def _totals(link: Link, asked: Mapping[str, Any], *, one_visit: bool) -> list[VisitTotals]:
    with link.reading():
        visits = records_of(link, Visit, link.rows(visits_text(one_visit=one_visit), asked))
        answers = records_of(link, Answer, link.rows(answers_text(one_visit=one_visit), asked))
        sides = link.rows(sides_text(one_visit=one_visit), asked)
        hung = link.rows(combs_text(one_visit=one_visit), asked)
    combs = {visit_id: (every, below) for visit_id, every, below in hung}
    by_visit: defaultdict[VisitId, list[SideTotals]] = defaultdict(list)
    for side in _side_totals(link, sides):
        by_visit[side.visit_id].append(side)
    answered: defaultdict[VisitId, dict[Question, Answer]] = defaultdict(dict)
    for answer in answers:
        answered[answer.visit_id][answer.question] = answer
    return [
        VisitTotals(visit, answered[visit.id], tuple(by_visit[visit.id]), *combs.get(visit.id, (0, 0)))
        for visit in visits
    ]


def _side_totals(link: Link, rows: list[Row]) -> Iterator[SideTotals]:
    counted = iter(tallied([row[_FIRST_TALLY:] for row in rows if row[_FIRST_TALLY] is not None]))
    try:
        for row in rows:
            side_id, visit_id, frame_id, part_id, place, face, frame_type, origin, grain, covered, kind = row[
                :_FIRST_TALLY
            ]
            cells, area_dm2, side_dm2 = (
                (NOTHING, NOTHING, 0.0) if row[_FIRST_TALLY] is None else next(counted)
            )
            yield SideTotals(
                side_id,
                visit_id,
                frame_id,
                part_id,
                _KINDS[kind],
                place,
                _FACES[face],
                frame_type,
                _ORIGINS[origin],
                _ORIGINS[grain],
                covered,
                cells,
                area_dm2,
                side_dm2,
            )
    except KeyError as error:
        raise DamagedWorkbookError(link.path, f"a side holds {error}") from error
