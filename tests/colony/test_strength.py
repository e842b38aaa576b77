import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.strength import (
    BEES_PER_DM2,
    FEWEST_BEES_PER_DM2,
    MOST_BEES_PER_DM2,
    bees_in_seams,
    bees_on_side,
)


@given(st.floats(1, 15), st.integers(1, 30))
def test_seams_are_fewer_bees_than_the_same_combs_full(side_dm2: float, seams: int) -> None:
    assert bees_in_seams(seams, side_dm2) < 2 * seams * bees_on_side(side_dm2, 8)
    assert bees_in_seams(2 * seams, side_dm2) == pytest.approx(2 * bees_in_seams(seams, side_dm2))


def test_the_usual_density_lies_within_its_bounds() -> None:
    assert FEWEST_BEES_PER_DM2 < BEES_PER_DM2 < MOST_BEES_PER_DM2
