"""The totals of many visits at once, from what is stored beside the drawings: no drawing is decoded."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from typing import Any, Final

from beeworkbook.colony.records import (
    Answer,
    ColonyId,
    PartKind,
    Question,
    Visit,
    VisitId,
)
from beeworkbook.colony.totals import NOTHING, SideTotals, VisitTotals
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.store.errors import DamagedWorkbookError
from beeworkbook.store.link import Link, Row
from beeworkbook.store.lookup import records_of
from beeworkbook.store.tallies import Tallied, tallied
from beeworkbook.store.texts import text

_KINDS: Final = {kind.value: kind for kind in PartKind}
_FACES: Final = {face.value: face for face in Face}
_ORIGINS: Final = {origin.value: origin for origin in Origin}
_FIRST_TALLY: Final = 11
"""Behind ten columns of the side and the kind of its part (SEASON_SIDE in statements.py)."""
_NOT_COUNTED: Final[Tallied] = (NOTHING, NOTHING, 0.0, 0.0)


def visit_totals(link: Link, visit_id: VisitId) -> VisitTotals | None:
    """The stored totals of one visit, or None if there is no such visit."""
    found = _totals(link, {"visit_id": visit_id}, scope="visit")
    return found[0] if found else None


def season(link: Link, colony_ids: Iterable[ColonyId], since: date, until: date) -> tuple[VisitTotals, ...]:
    """The stored totals of these colonies' visits from one day on and before another, by day."""
    days = {"since": since.isoformat(), "until": until.isoformat()}
    with link.reading():
        found = [
            totals
            for colony_id in dict.fromkeys(colony_ids)
            for totals in _totals(link, {"colony_id": colony_id, **days}, scope="season")
        ]
    return tuple(sorted(found, key=lambda totals: (totals.visit.day, totals.visit.id)))


def _totals(link: Link, asked: Mapping[str, Any], *, scope: str) -> list[VisitTotals]:
    with link.reading():
        visits = records_of(link, Visit, link.rows(text(f"{scope} visits"), asked))
        answers = records_of(link, Answer, link.rows(text(f"{scope} answers"), asked))
        sides = link.rows(text(f"{scope} sides"), asked)
        hung = link.rows(text(f"{scope} combs"), asked)
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
            amounts = _NOT_COUNTED if row[_FIRST_TALLY] is None else next(counted)
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
                *amounts,
            )
    except KeyError as error:
        raise DamagedWorkbookError(link.path, f"a side holds {error}") from error
