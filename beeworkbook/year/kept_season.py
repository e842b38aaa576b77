"""The figures of a colony's visits, kept while the keeper works, so that a stroke reads one visit anew.

For the ruler, which is in sight while combs are painted.
"""

from datetime import date
from typing import Final

from beeworkbook.colony.figures import VisitFigures, visit_figures
from beeworkbook.colony.records import (
    Answer,
    ColonyId,
    Frame,
    FrameStay,
    Hive,
    Housing,
    OwnFrame,
    Part,
    PartStay,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.colony.timeline import SeasonPoint, season
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.story import brood_frame, season_figures
from beeworkbook.workbook.workbook import Workbook

_FIGURED: Final = (Visit, Side, Answer)
"""The records of a visit that its figures are made of."""
_HIVE: Final = (Hive, Housing, Part, PartStay, Frame, FrameStay, OwnFrame)
"""The records that change what the figures of any visit mean."""


class KeptSeason:
    """A colony's visits from one day on and before another, with their figures."""

    def __init__(self, book: Workbook, colony_id: ColonyId, since: date, until: date) -> None:
        """Read them all once."""
        self._book = book
        self.colony_id = colony_id
        self.since = since
        self.until = until
        self._figures: dict[VisitId, VisitFigures] = {}
        self._points: tuple[SeasonPoint, ...] | None = None
        self._read_all()

    @property
    def points(self) -> tuple[SeasonPoint, ...]:
        """A point a visit, by day."""
        if self._points is None:
            self._points = season(self._figures.values())
        return self._points

    def figures(self, visit_id: VisitId) -> VisitFigures | None:
        """The figures of a visit, or None if it is none of these."""
        return self._figures.get(visit_id)

    def before(self, day: date) -> tuple[SeasonPoint, ...]:
        """The points before a day."""
        return tuple(point for point in self.points if point.day < day)

    def from_day(self, day: date) -> tuple[SeasonPoint, ...]:
        """The points from a day on."""
        return tuple(point for point in self.points if point.day >= day)

    def take(self, changes: Changes) -> bool:
        """Follow a commit; whether any figure may be another now."""
        if changes.everything or any(changes.touches(kind) for kind in _HIVE):
            self._read_all()
            return True
        if not any(changes.touches(kind) for kind in _FIGURED):
            return False
        touched = [visit_id for visit_id in changes.visits if self._read_one(visit_id)]
        self._points = None if touched else self._points
        return bool(touched)

    def _read_all(self) -> None:
        pairs = season_figures(self._book.read, self.colony_id, self.since, self.until)
        self._figures = {visit.id: figures for visit, figures in pairs}
        self._points = None

    def _read_one(self, visit_id: VisitId) -> bool:
        read = self._book.read
        visit = read.get(Visit, visit_id)
        known = self._figures.pop(visit_id, None) is not None
        if visit is None or visit.colony_id != self.colony_id or not self.since <= visit.day < self.until:
            return known
        frame = brood_frame(read, read.hive_day(self.colony_id, visit.day))
        self._figures[visit_id] = visit_figures(read.visit_totals(visit_id), frame)
        return True
