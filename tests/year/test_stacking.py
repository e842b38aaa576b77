"""What was not seen is neither stacked as seen nor joined; the sums of a stack are what was noted."""

from datetime import date, timedelta
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.timeline import SeasonPoint, joined
from beeworkbook.comb.contents import Content
from beeworkbook.year.choice import Measure
from beeworkbook.year.day_axis import DayAxis
from beeworkbook.year.panes import Band, DotShape
from beeworkbook.year.stacking import (
    ALONE_DAYS,
    bees_sample,
    brood_sample,
    curves,
    dots,
    drone_bands,
    drone_sample,
    gaps,
    runs,
    samples,
    stage_bands,
    stores_sample,
)
from tests.year.pointing import at_least, by_comb, by_line, not_opened

AXIS = DayAxis(date(2026, 3, 1), date(2026, 11, 1))
AREA = Measure.AREA


def of(bands: tuple[Band, ...], content: Content) -> list[Band]:
    return [band for band in bands if band.content is content]


def test_stages_lie_on_one_another_the_youngest_below() -> None:
    bands = stage_bands([by_comb("2026-05-01", 5, 10, 20), by_comb("2026-05-08", 6, 12, 24)], AXIS, AREA)
    assert [band.content for band in bands] == [Content.EGGS, Content.OPEN, Content.SEALED]
    eggs, open_, sealed = bands
    assert eggs.low.tolist() == [0, 0]
    assert np.array_equal(eggs.high, open_.low)
    assert np.array_equal(open_.high, sealed.low)
    assert sealed.high.tolist() == [35, 42]
    assert eggs.x.tolist() == [61, 68]
    assert not any(band.assumed for band in bands)


def test_cells_are_stacked_as_cells() -> None:
    bands = stage_bands(
        [by_comb("2026-05-01", 5, 10, 20), by_comb("2026-05-08", 6, 12, 24)], AXIS, Measure.CELLS
    )
    assert bands[-1].high.tolist() == [35 * 400, 42 * 400]


def test_a_line_between_two_combs_assumes_their_shares_and_says_so() -> None:
    points = [by_comb("2026-05-01", 10, 10, 20), by_line("2026-05-08", 60), by_comb("2026-05-15", 20, 20, 40)]
    bands = stage_bands(points, AXIS, AREA)
    assumed = [band for band in bands if band.assumed]
    assert [band.content for band in assumed] == [Content.EGGS, Content.OPEN, Content.SEALED]
    assert assumed[0].high[1] == pytest.approx(15)
    assert assumed[-1].high[1] == pytest.approx(60)
    assert Content.BROOD not in {band.content for band in bands}


def test_what_was_seen_beside_an_assumption_is_a_bar() -> None:
    points = [by_comb("2026-05-01", 10, 10, 20), by_line("2026-05-08", 60), by_comb("2026-05-15", 20, 20, 40)]
    bars = [band for band in of(stage_bands(points, AXIS, AREA), Content.SEALED) if not band.assumed]
    assert [bar.x.tolist() for bar in bars] == [
        [61 - ALONE_DAYS, 61 + ALONE_DAYS],
        [75 - ALONE_DAYS, 75 + ALONE_DAYS],
    ]
    assert [bar.high[0] for bar in bars] == [40, 80]


def test_a_colony_kept_in_lines_has_brood_of_no_age() -> None:
    bands = stage_bands([by_line("2026-05-01", 30), by_line("2026-05-08", 40)], AXIS, AREA)
    assert [(band.content, band.assumed, band.high.tolist()) for band in bands] == [
        (Content.BROOD, False, [30, 40])
    ]


def test_before_the_first_and_after_the_last_comb_the_brood_has_no_age() -> None:
    points = [by_line("2026-05-01", 30), by_comb("2026-05-08", 10, 10, 20), by_line("2026-05-15", 40)]
    ageless = of(stage_bands(points, AXIS, AREA), Content.BROOD)
    assert [band.high.tolist() for band in ageless] == [[30, 40], [40, 40]]


def test_a_visit_of_at_least_is_not_in_the_stack() -> None:
    points = [by_comb("2026-05-01", 1, 1, 1), at_least("2026-05-05", 99), by_comb("2026-05-08", 1, 1, 1)]
    assert max(band.high.max() for band in stage_bands(points, AXIS, AREA)) == 3


def test_a_long_silence_parts_the_stack() -> None:
    points = [by_comb("2026-04-01", 1, 1, 1), by_comb("2026-07-01", 1, 1, 1)]
    eggs = of(stage_bands(points, AXIS, AREA), Content.EGGS)
    assert [len(band.x) for band in eggs] == [2, 2]
    assert eggs[0].x[1] < 40 < eggs[1].x[0]


def test_no_brood_at_one_end_takes_the_shares_of_the_other() -> None:
    points = [by_comb("2026-05-01", 0, 0, 0), by_line("2026-05-08", 10), by_comb("2026-05-15", 10, 10, 20)]
    eggs = of(stage_bands(points, AXIS, AREA), Content.EGGS)[0]
    assert eggs.high[1] == pytest.approx(2.5)


def test_drones_hang_below_the_axis_and_are_not_in_the_stack() -> None:
    points = [by_comb("2026-05-01", 1, 1, 1, drone=2), by_comb("2026-05-08", 1, 1, 1, drone=3)]
    (drones,) = drone_bands(points, AXIS, AREA)
    assert (drones.low.tolist(), drones.high.tolist()) == ([-2, -3], [0, 0])
    assert max(band.high.max() for band in stage_bands(points, AXIS, AREA)) == 3


def test_a_line_between_says_nothing_of_drones() -> None:
    points = [
        by_comb("2026-05-01", 1, 1, 1, drone=2),
        by_line("2026-05-08", 4),
        by_comb("2026-05-15", 1, 1, 1, drone=4),
    ]
    bands = drone_bands(points, AXIS, AREA)
    assert [(band.assumed, band.low.tolist()) for band in bands] == [
        (True, [-2, -4]),
        (False, [-2, -2]),
        (False, [-4, -4]),
    ]


def test_no_drones_are_no_band() -> None:
    assert drone_bands([by_comb("2026-05-01", 1, 1, 1), by_line("2026-05-08", 4)], AXIS, AREA) == ()


def test_each_level_of_looking_has_its_dot() -> None:
    points = [
        by_comb("2026-05-01", 10, 0, 0),
        by_line("2026-05-08", 10),
        at_least("2026-05-15", 10),
        not_opened("2026-05-20"),
    ]
    found = dots(samples(points, AXIS, brood_sample(AREA)))
    assert [dot.shape for dot in found] == [DotShape.FULL, DotShape.HOLLOW, DotShape.OPEN]
    assert [dot.high for dot in found] == [11, 12, None]
    assert [dot.low for dot in found] == [9, 8, 9]


def test_a_coarse_look_has_a_wider_band_than_a_close_one() -> None:
    close, coarse = samples(
        [by_comb("2026-05-01", 10, 0, 0), by_line("2026-05-08", 10)], AXIS, brood_sample(AREA)
    )
    assert close.high is not None
    assert coarse.high is not None
    assert coarse.high - coarse.low > close.high - close.low


def test_stores_bees_and_drones_are_read_where_they_were_noted() -> None:
    points = [by_line("2026-05-01", 10), by_comb("2026-05-08", 1, 1, 1, drone=2)]
    assert [sample.y for sample in samples(points, AXIS, stores_sample)] == [7]
    assert [sample.y for sample in samples(points, AXIS, bees_sample)] == [9000]
    assert [sample.y for sample in samples(points, AXIS, drone_sample(AREA))] == [2]
    assert [sample.y for sample in samples(points, AXIS, drone_sample(Measure.CELLS))] == [800]


def test_drones_of_some_combs_are_at_least() -> None:
    (sample,) = samples([at_least("2026-05-01", 10)], AXIS, drone_sample(AREA))
    assert (sample.shape, sample.high) == (DotShape.OPEN, None)


def test_a_gap_says_how_long_nobody_looked() -> None:
    held = samples([by_line("2026-04-01", 1), by_line("2026-06-24", 1)], AXIS, brood_sample(AREA))
    (gap,) = gaps(held)
    assert (gap.left, gap.right) == (31, 115)
    assert gap.text == "12 weeks without a figure, so not joined"


def test_only_the_last_run_of_a_curve_bears_its_name() -> None:
    held = samples([by_line("2026-04-01", 1), by_line("2026-08-01", 1)], AXIS, brood_sample(AREA))
    assert [curve.name for curve in curves(held, 2, "Pear")] == ["", "Pear"]
    assert {curve.style for curve in curves(held, 2, "Pear")} == {2}


KINDS = (lambda day: by_comb(day, 2, 3, 4, 1), lambda day: by_line(day, 10), lambda day: at_least(day, 5))


@st.composite
def seasons(draw: st.DrawFn) -> list[SeasonPoint]:
    day, made = date(2026, 3, 1), []
    for step in draw(st.lists(st.integers(1, 60), min_size=1, max_size=12)):
        day += timedelta(days=step)
        made.append(draw(st.sampled_from(KINDS))(day.isoformat()))
    return made


@given(seasons())
def test_the_runs_of_a_curve_are_those_of_the_timeline(points: list[SeasonPoint]) -> None:
    held = samples(points, AXIS, brood_sample(AREA))
    assert [[sample.visit_id for sample in run] for run in runs(held)] == [
        [point.visit_id for point in run] for run in joined(points)
    ]


@given(seasons())
def test_a_stack_is_as_high_as_what_was_noted(points: list[SeasonPoint]) -> None:
    """At every visit in a run the uppermost band ends at its worker brood, whatever the stages are."""
    bands = stage_bands(points, AXIS, AREA)
    for run in joined(points):
        for point in run:
            x = AXIS.place(point.day)
            tops = [float(np.interp(x, band.x, band.high)) for band in bands if band.x[0] <= x <= band.x[-1]]
            assert point.worker is not None
            assert max(tops) == pytest.approx(point.worker.dm2)


@given(seasons())
def test_bands_never_lie_over_one_another_within_a_stretch(points: list[SeasonPoint]) -> None:
    bands = stage_bands(points, AXIS, AREA)
    for below, above in pairwise(bands):
        if np.array_equal(below.x, above.x) and below.assumed == above.assumed and above.low.any():
            assert np.allclose(below.high, above.low)
