from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.brood import (
    BROOD_DAYS,
    Caste,
    emergence_days,
    last_egg_days,
    laying_from_brood,
    queen_cell_days,
    stage_dates,
    steady_brood,
)
from beeworkbook.comb.contents import CellKind

SEEN = st.sampled_from([True, False, None])


@given(st.floats(1, 3000))
def test_losses_leave_fewer_in_every_stage(rate: float) -> None:
    full, lost = steady_brood(rate), steady_brood(rate, losses=True)
    assert lost.eggs < full.eggs
    assert lost.open < full.open
    assert lost.sealed < full.sealed
    assert laying_from_brood(full.total) == pytest.approx(rate)


@given(SEEN, SEEN, SEEN)
def test_what_nobody_recorded_never_narrows_the_time_since_the_last_egg(
    eggs: bool | None, young: bool | None, sealed: bool | None
) -> None:
    span = last_egg_days(eggs=eggs, young=young, sealed=sealed)
    if eggs is None:
        assert span is None
        return
    assert span is not None
    for hidden in (
        last_egg_days(eggs=eggs, young=None, sealed=sealed),
        last_egg_days(eggs=eggs, young=young, sealed=None),
    ):
        assert hidden is not None
        assert hidden[0] <= span[0]
        assert hidden[1] is None or (span[1] is not None and span[1] <= hidden[1])


@pytest.mark.parametrize("caste", Caste)
def test_a_cell_changes_in_order(caste: Caste) -> None:
    dates = stage_dates(caste, date(2026, 5, 10))
    assert date(2026, 5, 10) < dates.hatches < dates.sealed < dates.emerges
    assert (dates.emerges - date(2026, 5, 10)).days == BROOD_DAYS[caste].emerges_on


def test_queen_cells_are_sealed_within_their_days() -> None:
    assert queen_cell_days(CellKind.WITH_EGG) == (5, 8)
    assert queen_cell_days(CellKind.CHARGED) == (0, 5)
    assert queen_cell_days(CellKind.PLAY_CUP) is None
    assert [emergence_days(days) for days in (0, 3, 8, 12)] == [8, 5, 0, 0]
