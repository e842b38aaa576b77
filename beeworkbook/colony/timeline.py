"""A season as a series: a point a visit, and marks for what happened; for charts, papers and the ruler.

Missing is None. What cannot be seen is not joined: joined() gives the runs a curve may be drawn through.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from itertools import pairwise
from typing import Final

from beeworkbook.colony.feeding import write_feed
from beeworkbook.colony.figures import Amount, Doubt, VisitFigures
from beeworkbook.colony.queens import queen_words
from beeworkbook.colony.records import (
    Colony,
    Event,
    EventId,
    EventKind,
    Feed,
    FeedId,
    Level,
    Part,
    PartKind,
    PartStay,
    Queen,
    VisitId,
)
from beeworkbook.colony.seasons import Hemisphere, day_of_season, season_year
from beeworkbook.comb.contents import Content
from beeworkbook.words import number, say

GAP_DAYS: Final = 45
"""Two visits further apart than this are not joined. Source: common practice, no source: twice 21 days."""


@dataclass(frozen=True)
class SeasonPoint:
    """One visit on the year's axis; None anywhere is not recorded.

    The stages add up to `worker`; `brood` is worker brood whose age nobody noted; `drone` is apart.
    `doubt` is of the worker brood in dm². Units: cells and dm²; kg; bees.
    """

    day: date
    visit_id: VisitId
    level: Level
    eggs: Amount | None = None
    open: Amount | None = None
    sealed: Amount | None = None
    brood: Amount | None = None
    drone: Amount | None = None
    worker: Amount | None = None
    doubt: Doubt | None = None
    combs: int | None = None
    worth: float | None = None
    stores_kg: float | None = None
    stores_doubt: Doubt | None = None
    bees: float | None = None
    bees_doubt: Doubt | None = None

    @property
    def coarse(self) -> bool:
        """Whether its brood was said in a line: a hollow point."""
        return self.doubt is not None and self.doubt.coarse

    @property
    def at_least(self) -> bool:
        """Whether combs are missing: a hollow point open upwards."""
        return self.doubt is not None and self.doubt.at_least

    @property
    def low_dm2(self) -> float | None:
        """The lower end of the band of worker brood."""
        return self.doubt.low if self.doubt is not None else None

    @property
    def high_dm2(self) -> float | None:
        """The upper end of that band; None where it is open upwards."""
        return self.doubt.high if self.doubt is not None and not self.doubt.at_least else None

    @property
    def low_cells(self) -> float | None:
        """The lower end of the band in cells."""
        return self._in_cells(self.low_dm2)

    @property
    def high_cells(self) -> float | None:
        """The upper end of the band in cells."""
        return self._in_cells(self.high_dm2)

    def _in_cells(self, dm2: float | None) -> float | None:
        if dm2 is None or self.worker is None or not self.worker.dm2:
            return dm2 if dm2 == 0 else None
        return dm2 * self.worker.cells / self.worker.dm2


def season(figures: Iterable[VisitFigures]) -> tuple[SeasonPoint, ...]:
    """A point a visit, by day."""
    return tuple(sorted(map(_point, figures), key=lambda point: (point.day, point.visit_id)))


def _point(visit: VisitFigures) -> SeasonPoint:
    brood, stores, bees = visit.brood, visit.stores, visit.bees
    known = brood is not None and brood.amount is not None
    stages = brood.stages if brood is not None else {}
    return SeasonPoint(
        visit.day,
        visit.visit_id,
        visit.level,
        eggs=stages.get(Content.EGGS),
        open=stages.get(Content.OPEN),
        sealed=stages.get(Content.SEALED),
        brood=stages.get(Content.BROOD),
        drone=brood.drone if brood is not None else None,
        worker=brood.amount if brood is not None else None,
        doubt=brood.doubt if brood is not None and known else None,
        combs=brood.combs if brood is not None else None,
        worth=brood.worth if brood is not None else None,
        stores_kg=stores.kg if stores is not None else None,
        stores_doubt=stores.doubt if stores is not None else None,
        bees=bees.bees if bees is not None else None,
        bees_doubt=bees.doubt if bees is not None else None,
    )


def joined(points: Sequence[SeasonPoint], most_days: int = GAP_DAYS) -> tuple[tuple[SeasonPoint, ...], ...]:
    """The runs of points a curve of brood may join, in order of day.

    Visits without a brood area and visits that are only "at least" are left out; a long silence parts
    two runs. Source: GAP_DAYS.
    """
    told = [point for point in points if point.worker is not None and not point.at_least]
    if not told:
        return ()
    runs = [[told[0]]]
    for before, point in pairwise(told):
        if (point.day - before.day).days > most_days:
            runs.append([])
        runs[-1].append(point)
    return tuple(map(tuple, runs))


@dataclass(frozen=True)
class YearPoints:
    """One year's points and their places on the axis of days, 1 to 365; the two go in step."""

    year: int
    places: tuple[int, ...]
    points: tuple[SeasonPoint, ...]


def overlaid(points: Iterable[SeasonPoint], hemisphere: Hemisphere) -> tuple[YearPoints, ...]:
    """The points by year, to be laid over one another by day of year; the earliest year first.

    In the south a year runs from July to June. Source: seasons.season_year.
    """
    years: dict[int, list[SeasonPoint]] = {}
    for point in sorted(points, key=lambda point: (point.day, point.visit_id)):
        years.setdefault(season_year(point.day, hemisphere), []).append(point)
    return tuple(
        YearPoints(year, tuple(day_of_season(point.day, hemisphere) for point in found), tuple(found))
        for year, found in sorted(years.items())
    )


class MarkSort(StrEnum):
    """What a mark on the year is about, for its icon."""

    ARRIVAL = "arrival"
    QUEEN = "queen"
    FEED = "feed"
    SUPER = "super"
    SWARM = "swarm"
    END = "end"
    OTHER = "other"


@dataclass(frozen=True)
class SeasonMark:
    """Something that happened on a day, with its words and what it comes from."""

    day: date
    sort: MarkSort
    text: str
    event_id: EventId | None = None
    feed_id: FeedId | None = None
    visit_id: VisitId | None = None


_SORTS: Final = {
    EventKind.ARRIVED: MarkSort.ARRIVAL,
    EventKind.QUEEN_CAME: MarkSort.QUEEN,
    EventKind.QUEEN_SEEN: MarkSort.QUEEN,
    EventKind.QUEEN_MARKED: MarkSort.QUEEN,
    EventKind.QUEEN_GONE: MarkSort.QUEEN,
    EventKind.SWARMED: MarkSort.SWARM,
    EventKind.SPLIT: MarkSort.SWARM,
    EventKind.UNITED: MarkSort.END,
    EventKind.DIED: MarkSort.END,
    EventKind.SOLD: MarkSort.END,
}


_TELLS_HER: Final = frozenset({EventKind.QUEEN_CAME, EventKind.QUEEN_MARKED})


def season_marks(
    colony: Colony | None = None,
    events: Iterable[Event] = (),
    feeds: Iterable[Feed] = (),
    super_stays: Iterable[tuple[Part, PartStay]] = (),
) -> tuple[SeasonMark, ...]:
    """What happened to a colony, by day: arrival, queen, feed, supers put on and taken off, and the rest.

    Parts that are no supers are passed over; an arrival on record stands for the colony's own day.
    """
    marks = [event_mark(event) for event in events]
    if colony is not None and all(mark.sort is not MarkSort.ARRIVAL for mark in marks):
        marks.append(SeasonMark(colony.came_on, MarkSort.ARRIVAL, say("came")))
    marks += [
        SeasonMark(
            feed.day,
            MarkSort.FEED,
            say("{feed} given", feed=write_feed(feed)),
            feed_id=feed.id,
            visit_id=feed.visit_id,
        )
        for feed in feeds
    ]
    for part, stay in super_stays:
        if part.kind is PartKind.SUPER:
            marks.append(SeasonMark(stay.since, MarkSort.SUPER, say("super on")))
            if stay.until is not None:
                marks.append(SeasonMark(stay.until, MarkSort.SUPER, say("super off")))
    return tuple(sorted(marks, key=lambda mark: mark.day))


def event_mark(event: Event) -> SeasonMark:
    """An event as a mark on the year."""
    sort = _SORTS.get(event.kind, MarkSort.OTHER)
    return SeasonMark(event.day, sort, event_text(event), event_id=event.id, visit_id=event.visit_id)


def event_text(event: Event, queen: Queen | None = None) -> str:
    """An event in words, with its queen and what was written to it: "swarmed, hung in the plum tree".

    queen: the one it speaks of, told where she came or was marked: "queen came, of 2026, marked white".
    """
    said = event_words(event.kind)
    if event.kind is EventKind.HEFT:
        pulls = [number(kg) for kg in (event.left_kg, event.right_kg) if kg is not None]
        said = say("heft {pulls} kg", pulls=" + ".join(pulls)) if pulls else said
    if event.kind is EventKind.NOTE and event.text:
        return event.text
    her = queen_words(queen) if queen is not None and event.kind in _TELLS_HER else ""
    return ", ".join(filter(None, (said, her, event.text)))


def event_words(kind: EventKind) -> str:
    """A kind of event in words: "queen marked"."""
    words = {
        EventKind.ARRIVED: say("came"),
        EventKind.QUEEN_CAME: say("queen came"),
        EventKind.QUEEN_SEEN: say("queen seen"),
        EventKind.QUEEN_MARKED: say("queen marked"),
        EventKind.QUEEN_GONE: say("queen gone"),
        EventKind.SWARMED: say("swarmed"),
        EventKind.SPLIT: say("split"),
        EventKind.UNITED: say("united"),
        EventKind.DIED: say("died"),
        EventKind.SOLD: say("sold"),
        EventKind.HEFT: say("heft"),
        EventKind.MOVED: say("moved"),
        EventKind.NOTE: say("note"),
    }
    return words[kind]
