"""From the book and the keeper's choice to a whole chart as values."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Final

from beeworkbook.colony.seasons import Hemisphere, season_bounds, season_year
from beeworkbook.colony.timeline import MarkSort, SeasonPoint, YearPoints, overlaid
from beeworkbook.words import number, say
from beeworkbook.workbook.story import hemisphere_of
from beeworkbook.workbook.workbook import Workbook
from beeworkbook.year.choice import Arrangement, Choice, Measure
from beeworkbook.year.day_axis import DayAxis, folded_axis, row_axis, season_axis
from beeworkbook.year.gathered import ColonySeason, gather
from beeworkbook.year.panes import LAST_YEAR_STYLE, ChartModel, Entry, Pane, PaneKey, PlacedMark, Stop
from beeworkbook.year.stacking import (
    Reading,
    Sample,
    bees_sample,
    brood_sample,
    curves,
    dots,
    drone_bands,
    drone_sample,
    gaps,
    samples,
    stage_bands,
    stores_sample,
)

SAME_DAYS: Final = 4
"""Visits of other colonies or years this near to a stop are read with it. Source: our own."""
_ROOM: Final = 1.08
_BELOW: Final = 0.035
_BELOW_DRONES: Final = 0.06
"""Room for a dot on the axis, and for the name under a thin band of drones, as a share of the pane."""
_LEAST: Final = {PaneKey.BROOD: 10.0, PaneKey.DRONES: 2.0, PaneKey.STORES: 5.0, PaneKey.BEES: 5000.0}
_LEAST_CELLS: Final = {PaneKey.BROOD: 4000.0, PaneKey.DRONES: 500.0}

Series = tuple[str, int, ColonySeason, tuple[SeasonPoint, ...]]
"""A name, a style, whose it is, and the points of one line."""


def build(book: Workbook, choice: Choice) -> ChartModel | None:
    """The chart of a choice; None where there is no colony to show."""
    hemisphere = hemisphere_of(book)
    since, until = _reach(choice, hemisphere)
    gathered = tuple(
        found
        for colony_id in choice.colony_ids
        if (found := gather(book, colony_id, since, until)) is not None
    )
    return model_of(gathered, choice, hemisphere, book.today) if gathered else None


def _reach(choice: Choice, hemisphere: Hemisphere) -> tuple[date, date]:
    if choice.arrangement is not Arrangement.SEASON:
        return date.min, date.max
    since, until = season_bounds(choice.year, hemisphere)
    return (season_bounds(choice.year - 1, hemisphere)[0], until) if choice.last_year else (since, until)


def model_of(
    gathered: Sequence[ColonySeason], choice: Choice, hemisphere: Hemisphere, today: date
) -> ChartModel:
    """The chart of what was gathered. Errors: ValueError if nothing was."""
    if not gathered:
        raise ValueError("a chart needs a colony")
    axis = _axis(gathered, choice, hemisphere, today)
    series = _series(gathered, choice, hemisphere, axis)
    stacked = len(gathered) == 1 and choice.arrangement is not Arrangement.YEARS
    panes = _panes(series, choice, axis, stacked=stacked)
    if stacked and choice.arrangement is Arrangement.SEASON and choice.last_year:
        panes = (_with_last_year(panes[0], gathered[0], choice, hemisphere, axis), *panes[1:])
    return ChartModel(
        title=", ".join(found.colony.name for found in gathered),
        subtitle=_subtitle(choice, hemisphere, axis),
        axis=axis,
        panes=panes,
        marks=_marks(gathered, choice, hemisphere, axis),
        stops=_stops(series, gathered, axis, stacked=stacked),
        stacked=stacked,
        names=() if stacked else tuple((name, style) for name, style, _, _ in series),
        note=_note(series),
    )


def _axis(gathered: Sequence[ColonySeason], choice: Choice, hemisphere: Hemisphere, today: date) -> DayAxis:
    days = [point.day for found in gathered for point in found.points]
    if choice.arrangement is Arrangement.YEARS:
        return folded_axis(hemisphere, days)
    days += [mark.day for found in gathered for mark in found.marks]
    if choice.arrangement is Arrangement.ROW:
        return row_axis(days or [today], hemisphere)
    return season_axis(choice.year, hemisphere, days)


def _series(
    gathered: Sequence[ColonySeason], choice: Choice, hemisphere: Hemisphere, axis: DayAxis
) -> tuple[Series, ...]:
    """A line a colony, or a line a year and colony; the latest year has the first style."""
    if choice.arrangement is not Arrangement.YEARS:
        return tuple(
            (found.colony.name, style, found, tuple(p for p in found.points if axis.shows(p.day)))
            for style, found in enumerate(gathered)
        )
    held = [(found, year) for found in gathered for year in reversed(overlaid(found.points, hemisphere))]
    return tuple(
        (_year_name(found, year, many=len(gathered) > 1), style, found, year.points)
        for style, (found, year) in enumerate(held)
    )


def _year_name(found: ColonySeason, year: YearPoints, *, many: bool) -> str:
    return f"{found.colony.name} {year.year}" if many else f"{year.year}"


# --- panes ------------------------------------------------------------------------------------


def _panes(series: Sequence[Series], choice: Choice, axis: DayAxis, *, stacked: bool) -> tuple[Pane, ...]:
    measure = choice.measure
    made = [
        _stacked_brood(series[0][3], choice, axis)
        if stacked
        else _lines(PaneKey.BROOD, say("worker brood"), measure.unit, brood_sample(measure), series, axis)
    ]
    if choice.drones and not stacked:
        made.append(
            _lines(PaneKey.DRONES, say("drone brood"), measure.unit, drone_sample(measure), series, axis)
        )
    if choice.stores:
        made.append(_lines(PaneKey.STORES, say("stores"), say("kg"), stores_sample, series, axis))
    if choice.bees:
        made.append(_lines(PaneKey.BEES, say("bees"), "", bees_sample, series, axis))
    return tuple(_with_least(pane, measure) for pane in made)


def _stacked_brood(points: Sequence[SeasonPoint], choice: Choice, axis: DayAxis) -> Pane:
    measure = choice.measure
    held = samples(points, axis, brood_sample(measure))
    below = drone_bands(points, axis, measure) if choice.drones else ()
    deepest = min((float(band.low.min()) for band in below), default=0.0)
    return Pane(
        PaneKey.BROOD,
        say("worker brood"),
        measure.unit,
        low=deepest,
        high=_highest(held),
        bands=(*stage_bands(points, axis, measure), *below),
        curves=curves(held, 0),
        dots=dots(held),
        gaps=gaps(held),
    )


def _lines(
    key: PaneKey, name: str, unit: str, reading: Reading, series: Sequence[Series], axis: DayAxis
) -> Pane:
    held = [(line, style, samples(points, axis, reading)) for line, style, _, points in series]
    alone = len(series) == 1
    return Pane(
        key,
        name,
        unit,
        low=0.0,
        high=max(_highest(found) for _, _, found in held),
        curves=tuple(
            curve for line, style, found in held for curve in curves(found, style, "" if alone else line)
        ),
        dots=tuple(dot for _, style, found in held for dot in dots(found, style)),
        gaps=gaps(held[0][2]) if alone and key is PaneKey.BROOD else (),
    )


def _with_least(pane: Pane, measure: Measure) -> Pane:
    """An axis that does not blow a single cell up to the whole pane, with a little room below nought."""
    least = {**_LEAST, **(_LEAST_CELLS if measure is Measure.CELLS else {})}[pane.key]
    high = max(pane.high, least)
    below = _BELOW_DRONES if pane.low < 0 else _BELOW
    return replace(pane, low=pane.low * _ROOM - below * high, high=high)


def _with_last_year(
    pane: Pane, found: ColonySeason, choice: Choice, hemisphere: Hemisphere, axis: DayAxis
) -> Pane:
    folded = DayAxis(axis.since, axis.until, hemisphere, folded=True)
    before = [p for p in found.points if season_year(p.day, hemisphere) == choice.year - 1]
    held = samples(before, folded, brood_sample(choice.measure))
    lines = curves(held, LAST_YEAR_STYLE, say("last year"))
    if not lines:
        return pane
    return replace(pane, curves=(*lines, *pane.curves), high=max(pane.high, _highest(held)))


def _highest(held: Iterable[Sample]) -> float:
    tops = [max(sample.y, sample.high or 0.0) for sample in held]
    return max(tops, default=0.0) * _ROOM


# --- marks, stops, words ------------------------------------------------------------------------


def _marks(
    gathered: Sequence[ColonySeason], choice: Choice, hemisphere: Hemisphere, axis: DayAxis
) -> tuple[PlacedMark, ...]:
    """What happened, one sign a day and sort; on a folded axis of the chosen year."""
    many = len(gathered) > 1
    said: dict[tuple[date, MarkSort], list[str]] = {}
    for found in gathered:
        for mark in found.marks:
            chosen = not axis.folded or season_year(mark.day, hemisphere) == choice.year
            if chosen and axis.shows(mark.day):
                text = f"{found.colony.name}: {mark.text}" if many else mark.text
                said.setdefault((mark.day, mark.sort), []).append(text)
    made = [PlacedMark(axis.place(day), day, sort, _counted(texts)) for (day, sort), texts in said.items()]
    return tuple(sorted(made, key=lambda mark: mark.x))


def _counted(texts: Sequence[str]) -> str:
    """Several texts as one: "2 × super off; heft 14 + 13 kg"."""
    counts = Counter(texts)
    return "; ".join(
        text if count == 1 else say("{n} × {text}", n=count, text=text) for text, count in counts.items()
    )


def _stops(
    series: Sequence[Series], gathered: Sequence[ColonySeason], axis: DayAxis, *, stacked: bool
) -> tuple[Stop, ...]:
    entries = [
        Entry(found.colony.id, name, style, point, found.figures[point.visit_id])
        for name, style, found, points in series
        for point in points
    ]
    entries.sort(key=lambda entry: (axis.place(entry.point.day), entry.style))
    happened: dict[tuple[int, date], list[str]] = {}
    for found in gathered:
        for mark in found.marks:
            happened.setdefault((int(found.colony.id), mark.day), []).append(mark.text)
    return tuple(
        Stop(
            axis.place(entry.point.day),
            entry.point.day,
            (entry, *(() if stacked else _near(entry, entries, axis))),
            tuple(dict.fromkeys(happened.get((int(entry.colony_id), entry.point.day), ()))),
        )
        for entry in entries
    )


def _near(entry: Entry, entries: Sequence[Entry], axis: DayAxis) -> tuple[Entry, ...]:
    """Of each other line the visit nearest to this one, if it is near at all."""
    place = axis.place(entry.point.day)
    nearest: dict[int, tuple[float, Entry]] = {}
    for other in entries:
        away = abs(axis.place(other.point.day) - place)
        if other.style != entry.style and away <= SAME_DAYS:
            held = nearest.get(other.style)
            if held is None or away < held[0]:
                nearest[other.style] = (away, other)
    return tuple(other for _, (_, other) in sorted(nearest.items()))


def _subtitle(choice: Choice, hemisphere: Hemisphere, axis: DayAxis) -> str:
    if choice.arrangement is Arrangement.YEARS:
        year = year_words(choice.year, hemisphere)
        return say("brood, the years laid over one another; the signs are those of {year}", year=year)
    last = axis.until - timedelta(days=1)
    if choice.arrangement is Arrangement.ROW:
        return say("brood from {since} to {until}", since=axis.since.year, until=last.year)
    return say("brood over the season {year}", year=year_words(choice.year, hemisphere))


def year_words(year: int, hemisphere: Hemisphere) -> str:
    """A season's year as it is named: "2026", in the south "2026/27"."""
    return f"{year}/{(year + 1) % 100:02d}" if hemisphere is Hemisphere.SOUTH else f"{year}"


def _note(series: Sequence[Series]) -> str:
    """How many visits have no dot, so that a curve never looks fuller than the book."""
    without = sum(point.worker is None for _, _, _, points in series for point in points)
    if not without:
        return ""
    if without == 1:
        return say("1 visit without a figure for brood is not shown")
    return say("{n} visits without a figure for brood are not shown", n=number(without, 0))
