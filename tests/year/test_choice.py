"""A measure reads an amount in its own unit."""

from beeworkbook.colony.figures import Amount
from beeworkbook.year.choice import Arrangement, Choice, Measure


def test_a_measure_reads_its_own_unit() -> None:
    amount = Amount(cells=4000.0, dm2=10.0)
    assert (Measure.AREA.of(amount), Measure.AREA.unit) == (10.0, "dm²")
    assert (Measure.CELLS.of(amount), Measure.CELLS.unit) == (4000.0, "cells")


def test_a_chart_begins_with_a_season_in_area_and_its_drones() -> None:
    choice = Choice((), 2026)
    assert (choice.arrangement, choice.measure) == (Arrangement.SEASON, Measure.AREA)
    assert (choice.drones, choice.stores, choice.bees) == (True, False, False)
