from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import Due, DueId, DueKind, DueState, Level
from beeworkbook.workbook.edits.looking import (
    bring_back_looks,
    looked_at_least,
    raise_level,
    set_level,
    settle_looks,
    supersede_looks,
)
from tests.workbook.keeping import LATER, LOOK, Keeping, days_on

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


@pytest.mark.parametrize(
    ("day", "kind", "settled"),
    [
        (LOOK, DueKind.LOOK, True),
        (days_on(LOOK, -1), DueKind.FIRST_LOOK, True),
        (days_on(LOOK, 1), DueKind.LOOK, False),
        (LOOK, DueKind.BRING, False),
    ],
)
def test_opening_the_hive_settles_the_looks_due_till_then(
    keeping: Keeping, day: object, kind: DueKind, settled: bool
) -> None:
    with keeping.book._base.write() as tx:
        due = tx.add(Due(DueId(0), kind, day, "look", keeping.colony))  # type: ignore[arg-type]
        settle_looks(tx, keeping.noted())
        found = tx.get(Due, due.id)
        assert (found.state is DueState.DONE) == settled
        shut = replace(keeping.noted(), level=Level.NOT_OPENED)
        settle_looks(tx, shut)
        assert tx.get(Due, due.id).state is DueState.OPEN


def test_a_new_next_day_replaces_and_gives_back(keeping: Keeping) -> None:
    with keeping.book._base.write() as tx:
        due = tx.add(Due(DueId(0), DueKind.LOOK, LATER, "look", keeping.colony))
        supersede_looks(tx, keeping.noted())
        assert tx.get(Due, due.id).done_visit_id == keeping.visit
        bring_back_looks(tx, keeping.noted())
        assert tx.get(Due, due.id) == due
