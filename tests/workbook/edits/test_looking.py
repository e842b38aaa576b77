from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import Level
from beeworkbook.workbook.edits.looking import looked_at_least, raise_level, set_level
from tests.workbook.keeping import Keeping

RISING = (
    Level.PASSED_OVER,
    Level.NOT_OPENED,
    Level.ONE_LINE,
    Level.BY_COMB,
    Level.BY_SIDE,
    Level.PAINTED,
)


@given(st.sampled_from(RISING), st.sampled_from(RISING))
def test_levels_rise_from_passed_over_to_painted(one: Level, other: Level) -> None:
    assert looked_at_least(one, other) == (RISING.index(one) >= RISING.index(other))


def test_a_level_is_raised_and_never_lowered(keeping: Keeping) -> None:
    with keeping.book._base.write() as tx:
        visit = raise_level(tx, keeping.noted(), Level.BY_SIDE)
        assert visit.level is Level.BY_SIDE
        assert raise_level(tx, visit, Level.ONE_LINE).level is Level.BY_SIDE
        assert set_level(tx, visit, Level.ONE_LINE).level is Level.ONE_LINE
