"""A chart knows which signs its key must explain."""

from datetime import date

import numpy as np

from beeworkbook.colony.records import ColonyId
from beeworkbook.comb.contents import Content
from beeworkbook.year.day_axis import DayAxis
from beeworkbook.year.panes import Band, ChartModel, Dot, DotShape, Entry, Pane, PaneKey, Stop
from tests.year import pointing

AXIS = DayAxis(date(2026, 3, 1), date(2026, 11, 1))


def model(pane: Pane) -> ChartModel:
    return ChartModel("Pear", "", AXIS, (pane,), (), (), stacked=True)


def test_only_shapes_that_occur_are_explained() -> None:
    dots = tuple(
        Dot(1.0, 2.0, 1.0, 3.0, shape, pointing.visit_id("2026-05-01"))
        for shape in (DotShape.FULL, DotShape.OPEN)
    )
    pane = Pane(PaneKey.BROOD, "brood", "dm²", 0, 10, dots=dots)
    assert model(pane).shapes == {DotShape.FULL, DotShape.OPEN}
    assert not model(pane).assumes


def test_an_assumed_band_is_explained() -> None:
    x = np.array([0.0, 1.0])
    seen, assumed = Band(Content.EGGS, x, x, x), Band(Content.EGGS, x, x, x, assumed=True)
    assert not model(Pane(PaneKey.BROOD, "brood", "dm²", 0, 10, bands=(seen,))).assumes
    assert model(Pane(PaneKey.BROOD, "brood", "dm²", 0, 10, bands=(seen, assumed))).assumes


def test_a_stop_opens_its_own_visit() -> None:
    first, other = pointing.by_line("2026-05-01", 10), pointing.by_line("2026-05-02", 12)
    entries = tuple(
        Entry(ColonyId(at), "Pear", at, point, pointing.figures(point))
        for at, point in enumerate((first, other))
    )
    assert Stop(61.0, first.day, entries).visit_id == first.visit_id
