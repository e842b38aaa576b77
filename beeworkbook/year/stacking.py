"""From a season's points to bands, curves, dots and gaps. What was not seen is neither drawn nor joined.

Bands by stage run from one visit that knows the stages to the next. A visit of one line between them says
how much but not how old: there the stages are assumed and paler; before the first and after the last
such visit the brood has no age.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

import numpy as np

from beeworkbook.colony.figures import Amount, Doubt
from beeworkbook.colony.records import VisitId
from beeworkbook.colony.timeline import GAP_DAYS, SeasonPoint, joined
from beeworkbook.comb.contents import Content
from beeworkbook.words import say_count
from beeworkbook.year.choice import Measure
from beeworkbook.year.day_axis import DayAxis
from beeworkbook.year.panes import Band, Curve, Dot, DotShape, Gap, Values

STAGES: Final = (Content.EGGS, Content.OPEN, Content.SEALED, Content.BROOD)
"""From the axis upwards, the youngest first."""
_NAMES: Final = ("eggs", "open", "sealed", "brood")
ALONE_DAYS: Final = 1.2
"""How far to either side the bar of a visit reaches that stands alone."""


@dataclass(frozen=True)
class Sample:
    """One visit's value in one pane."""

    x: float
    y: float
    low: float
    high: float | None
    shape: DotShape
    visit_id: VisitId


Reading = Callable[[SeasonPoint, DayAxis], Sample | None]


def stage_bands(points: Sequence[SeasonPoint], axis: DayAxis, measure: Measure) -> tuple[Band, ...]:
    """Worker brood stacked by stage, run by run."""
    made: list[Band] = []
    for run in joined(points):
        stretches = tuple(_stretches(run))
        for stretch in stretches:
            made += _stack(_Stack(stretch, axis, measure))
        for point in _seen_alone(stretches):
            made += _stack(_Stack(_Stretch((point,), staged=True), axis, measure))
    return tuple(made)


def drone_bands(points: Sequence[SeasonPoint], axis: DayAxis, measure: Measure) -> tuple[Band, ...]:
    """Drone brood, hanging below the axis: apart from the workers and in the same scale.

    A line says nothing of drones: over it they go straight from one look to the next, assumed.
    """
    made: list[Band] = []
    for run in joined(points):
        stretches = tuple(_stretches(run))
        for stretch in stretches:
            if stretch.staged:
                ends = dict.fromkeys((stretch.points[0], stretch.points[-1]))
                made += _hanging(tuple(ends), axis, measure, assumed=len(stretch.points) > 2)
        for point in _seen_alone(stretches):
            made += _hanging((point,), axis, measure)
    return tuple(made)


def _hanging(
    part: Sequence[SeasonPoint], axis: DayAxis, measure: Measure, *, assumed: bool = False
) -> Iterable[Band]:
    depth = -_amounts(part, "drone", measure)
    if depth.any():
        x, depth = _at_least_a_bar(_places(part, axis), depth)
        yield Band(Content.DRONE, x, depth, np.zeros_like(depth), assumed)


@dataclass(frozen=True)
class _Stretch:
    """Visits that follow one another. staged: the ends know the stages; else the brood has no age."""

    points: Sequence[SeasonPoint]
    staged: bool


def _stretches(run: Sequence[SeasonPoint]) -> Iterable[_Stretch]:
    """The run cut at the visits that know the stages; neighbouring stretches share a visit."""
    known = [at for at, point in enumerate(run) if _staged(point)]
    if len(run) == 1 or not known:
        yield _Stretch(run, bool(known))
        return
    if known[0] > 0:
        yield _Stretch(run[: known[0] + 1], staged=False)
    for first, last in pairwise(known):
        near = (run[last].day - run[first].day).days <= GAP_DAYS
        yield _Stretch(run[first : last + 1], near)
    if known[-1] < len(run) - 1:
        yield _Stretch(run[known[-1] :], staged=False)


def _seen_alone(stretches: Iterable[_Stretch]) -> Iterable[SeasonPoint]:
    """Visits that know the stages beside visits that do not: a bar shows what was seen there."""
    seen = {
        point.visit_id: point
        for stretch in stretches
        if len(stretch.points) > 2 or not stretch.staged
        for point in stretch.points
        if _staged(point)
    }
    return seen.values()


def _staged(point: SeasonPoint) -> bool:
    return not point.coarse and point.eggs is not None


class _Stack:
    """The stages of a stretch as amounts.

    Between its two ends the shares go over straight from one to the other, laid on what was said in one
    line there: an assumption, and drawn as one.
    """

    def __init__(self, stretch: _Stretch, axis: DayAxis, measure: Measure) -> None:
        self.x = _places(stretch.points, axis)
        self.assumed = stretch.staged and len(stretch.points) > 2
        total = _amounts(stretch.points, "worker", measure)
        if not stretch.staged:
            self.amounts = [np.zeros_like(total)] * (len(_NAMES) - 1) + [total]
            return
        ends = [stretch.points[0], stretch.points[-1]]
        by_stage = np.array([_amounts(ends, name, measure) for name in _NAMES])
        whole = by_stage.sum(axis=0)
        shares = by_stage / np.where(whole > 0, whole, 1.0)
        # Where there was no brood, there are no shares: the other end's hold.
        shares = np.where(whole > 0, shares, shares[:, ::-1])
        self.amounts = [total * np.interp(self.x, self.x[[0, -1]], share) for share in shares]


def _stack(stack: _Stack) -> Iterable[Band]:
    low = np.zeros(len(stack.x))
    for content, amount in zip(STAGES, stack.amounts, strict=True):
        high = low + amount
        if amount.any():
            x, both = _at_least_a_bar(stack.x, np.stack((low, high)))
            yield Band(content, x, both[0], both[1], assumed=stack.assumed)
        low = high


def _places(part: Iterable[SeasonPoint], axis: DayAxis) -> Values:
    return np.array([axis.place(point.day) for point in part], np.float64)


def _amounts(part: Iterable[SeasonPoint], name: str, measure: Measure) -> Values:
    amounts = (getattr(point, name) for point in part)
    return np.array([measure.of(amount) if amount is not None else 0.0 for amount in amounts], np.float64)


def _at_least_a_bar(x: Values, y: Values) -> tuple[Values, Values]:
    """A visit that stands alone becomes a narrow bar. Shapes: x (n,), y (..., n)."""
    if len(x) > 1:
        return x, y
    return np.array([x[0] - ALONE_DAYS, x[0] + ALONE_DAYS]), np.repeat(y, 2, axis=-1)


# --- values -----------------------------------------------------------------------------------


def brood_sample(measure: Measure) -> Reading:
    """Worker brood as a value with its band."""

    def read(point: SeasonPoint, axis: DayAxis) -> Sample | None:
        if point.worker is None or point.doubt is None:
            return None
        cells = measure is Measure.CELLS
        low = point.low_cells if cells else point.low_dm2
        high = point.high_cells if cells else point.high_dm2
        y = measure.of(point.worker)
        x = axis.place(point.day)
        return Sample(x, y, y if low is None else low, high, shape_of(point.doubt), point.visit_id)

    return read


def drone_sample(measure: Measure) -> Reading:
    """Drone brood as a value; its band is nobody's guess."""

    def read(point: SeasonPoint, axis: DayAxis) -> Sample | None:
        amount: Amount | None = point.drone
        if amount is None or point.doubt is None or point.coarse:
            return None
        y = measure.of(amount)
        high = None if point.at_least else y
        return Sample(axis.place(point.day), y, y, high, shape_of(point.doubt), point.visit_id)

    return read


def stores_sample(point: SeasonPoint, axis: DayAxis) -> Sample | None:
    """Stores in kilograms."""
    return _doubted(point, axis, point.stores_kg, point.stores_doubt)


def bees_sample(point: SeasonPoint, axis: DayAxis) -> Sample | None:
    """Bees by number."""
    return _doubted(point, axis, point.bees, point.bees_doubt)


def _doubted(point: SeasonPoint, axis: DayAxis, value: float | None, doubt: Doubt | None) -> Sample | None:
    if value is None or doubt is None:
        return None
    high = None if doubt.at_least else doubt.high
    return Sample(axis.place(point.day), value, doubt.low, high, shape_of(doubt), point.visit_id)


def shape_of(doubt: Doubt) -> DotShape:
    """Open where it is only at least so much, hollow where it was said in a line, else full."""
    if doubt.at_least:
        return DotShape.OPEN
    return DotShape.HOLLOW if doubt.coarse else DotShape.FULL


def samples(points: Iterable[SeasonPoint], axis: DayAxis, reading: Reading) -> tuple[Sample, ...]:
    """The values of these visits, those without one left out."""
    return tuple(found for point in points if (found := reading(point, axis)) is not None)


def runs(held: Sequence[Sample], most_days: int = GAP_DAYS) -> tuple[tuple[Sample, ...], ...]:
    """The values a curve may join: no "at least", no long silence. Source: timeline.GAP_DAYS."""
    told = [sample for sample in held if sample.shape is not DotShape.OPEN]
    if not told:
        return ()
    made = [[told[0]]]
    for before, sample in pairwise(told):
        if sample.x - before.x > most_days:
            made.append([])
        made[-1].append(sample)
    return tuple(map(tuple, made))


def curves(held: Sequence[Sample], style: int, name: str = "") -> tuple[Curve, ...]:
    """A curve a run; the last of them bears the name."""
    found = runs(held)
    return tuple(
        Curve(
            style,
            np.array([sample.x for sample in run], np.float64),
            np.array([sample.y for sample in run], np.float64),
            name if at == len(found) - 1 else "",
        )
        for at, run in enumerate(found)
    )


def dots(held: Iterable[Sample], style: int | None = None) -> tuple[Dot, ...]:
    """A dot a value."""
    return tuple(
        Dot(sample.x, sample.y, sample.low, sample.high, sample.shape, sample.visit_id, style)
        for sample in held
    )


def gaps(held: Sequence[Sample]) -> tuple[Gap, ...]:
    """Where the curve is broken off, with the reason in words."""
    made = []
    for before, after in pairwise(runs(held)):
        weeks = round((after[0].x - before[-1].x) / 7)
        text = say_count(
            weeks,
            "{n} week without a figure, so not joined",
            "{n} weeks without a figure, so not joined",
        )
        made.append(Gap(before[-1].x, after[0].x, text))
    return tuple(made)
