"""What the ruler shows, as plain values: a bar a visit, last year's curve, the day that is due next."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from beeworkbook.colony.figures import VisitFigures
from beeworkbook.colony.records import Level, VisitId
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.colony.sentences import level_words
from beeworkbook.colony.timeline import SeasonPoint
from beeworkbook.words import date_words, say, two_figures
from beeworkbook.year.choice import Measure
from beeworkbook.year.day_axis import DayAxis, season_axis
from beeworkbook.year.panes import LAST_YEAR_STYLE, Band, Curve, DotShape
from beeworkbook.year.readings import point_words
from beeworkbook.year.stacking import Sample, brood_sample, curves, drone_bands, samples, stage_bands

_LEAST_DM2 = 10.0
"""A season's highest bar is never less than this, so that a handful of eggs does not fill the ruler."""


@dataclass(frozen=True)
class Bar:
    """One visit. height None: nobody noted how much brood there was; shape None then too."""

    visit_id: VisitId
    day: date
    x: float
    height: float | None
    shape: DotShape | None


@dataclass(frozen=True, eq=False)
class RulerModel:
    """One colony's season on the ruler. Units: days along it, dm² of worker brood up it."""

    axis: DayAxis
    bars: tuple[Bar, ...]
    last_year: tuple[Curve, ...]
    high: float
    due: date | None = None
    bands: tuple[Band, ...] = ()
    line: tuple[Curve, ...] = ()
    dots: tuple[Sample, ...] = ()

    def bar_at(self, place: float, within: float) -> Bar | None:
        """The bar nearest to a place, if it is no further than `within` days."""
        nearest = min(self.bars, key=lambda bar: abs(bar.x - place), default=None)
        return nearest if nearest is not None and abs(nearest.x - place) <= within else None


def ruler_model(
    year: int,
    hemisphere: Hemisphere,
    points: Sequence[SeasonPoint],
    before: Sequence[SeasonPoint],
    shown: Sequence[date] = (),
    due: date | None = None,
) -> RulerModel:
    """The ruler of a season; `shown` are days it must reach to, `before` are last year's points."""
    axis = season_axis(year, hemisphere, [*(point.day for point in points), *shown])
    folded = DayAxis(axis.since, axis.until, hemisphere, folded=True)
    read = brood_sample(Measure.AREA)
    held, last = samples(points, axis, read), samples(before, folded, read)
    drones = drone_bands(points, axis, Measure.AREA)
    tops = [sample.y for sample in (*held, *last)]
    return RulerModel(
        axis=axis,
        bars=tuple(_bar(point, axis) for point in points),
        last_year=curves(last, LAST_YEAR_STYLE),
        high=max(_LEAST_DM2, *tops) if tops else _LEAST_DM2,
        due=due if due is not None and axis.shows(due) else None,
        bands=(*stage_bands(points, axis, Measure.AREA), *drones),
        line=curves(held, 0),
        dots=held,
    )


def _bar(point: SeasonPoint, axis: DayAxis) -> Bar:
    if point.worker is None or point.doubt is None:
        return Bar(point.visit_id, point.day, axis.place(point.day), None, None)
    shape = DotShape.OPEN if point.at_least else DotShape.HOLLOW if point.coarse else DotShape.FULL
    return Bar(point.visit_id, point.day, axis.place(point.day), point.worker.dm2, shape)


def visit_words(point: SeasonPoint, figures: VisitFigures | None) -> str:
    """A visit in a few lines: its day, what was found, and how well anybody looked."""
    lines = [date_words(point.day, "weekday_year")]
    if point.level in {Level.NOT_OPENED, Level.PASSED_OVER}:
        lines.append(level_words(point.level))
    else:
        lines.append(say("brood: {words}", words=point_words(point, Measure.AREA)))
    if point.at_least and figures is not None:
        lines.append(say("{seen} of {all} combs", seen=figures.combs_seen, all=figures.combs_in_hive))
    elif point.coarse:
        lines.append(say("said in one line"))
    if point.stores_kg is not None:
        lines.append(say("stores about {kg} kg", kg=two_figures(point.stores_kg)))
    return "\n".join(lines)
