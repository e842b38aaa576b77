"""A colony's seasons as the chart needs them, read from the book: points, figures by visit, and marks.

The series themselves come from colony/timeline.py; nothing is computed of bees here.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date

from beeworkbook.colony.figures import VisitFigures
from beeworkbook.colony.hive import overlap
from beeworkbook.colony.records import Colony, ColonyId, Housing, Part, PartKind, PartStay, Visit, VisitId
from beeworkbook.colony.timeline import SeasonMark, SeasonPoint, season, season_marks
from beeworkbook.workbook.story import season_figures
from beeworkbook.workbook.workbook import Workbook


@dataclass(frozen=True)
class ColonySeason:
    """One colony: a point a visit by day, the figures behind each, and what happened."""

    colony: Colony
    points: tuple[SeasonPoint, ...]
    figures: Mapping[VisitId, VisitFigures]
    visits: Mapping[VisitId, Visit]
    marks: tuple[SeasonMark, ...]


def gather(book: Workbook, colony_id: ColonyId, since: date, until: date) -> ColonySeason | None:
    """A colony from `since` on and before `until`; None if there is no such colony."""
    read = book.read
    colony = read.get(Colony, colony_id)
    if colony is None:
        return None
    pairs = season_figures(read, colony_id, since, until)
    marks = season_marks(colony, read.events(colony_id), read.feeds(colony_id), super_stays(book, colony_id))
    return ColonySeason(
        colony,
        season(figures for _, figures in pairs),
        {visit.id: figures for visit, figures in pairs},
        {visit.id: visit for visit, _ in pairs},
        tuple(mark for mark in marks if since <= mark.day < until),
    )


def super_stays(book: Workbook, colony_id: ColonyId) -> tuple[tuple[Part, PartStay], ...]:
    """The supers that stood over this colony, each with its stay as long as the colony lived under it."""
    read = book.read
    made = []
    for home in read.find(Housing, colony_id=colony_id):
        for stay in read.find(PartStay, hive_id=home.hive_id):
            part = read.get(Part, stay.part_id)
            if part is not None and part.kind is PartKind.SUPER and overlap(stay, home):
                made.append((part, replace(stay, since=max(stay.since, home.since))))
    return tuple(made)
