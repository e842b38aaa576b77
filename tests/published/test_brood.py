"""Brood, laying and development against published numbers."""

from datetime import date

import pytest

from beeworkbook.colony.brood import (
    STAGE_SURVIVAL,
    Caste,
    clipped_limit_days,
    last_egg_days,
    laying_from_brood,
    laying_from_sealed,
    stage_dates,
    steady_brood,
)
from beeworkbook.colony.plans import CLIPPED_LOOK_DAYS, CLIPPED_MOST_DAYS


def test_steady_queen_three_six_twelve() -> None:
    # A. Wade, ACT Beekeepers Buzz Box, September 2022: eggs : open : sealed = 3 : 6 : 12 = 1 : 2 : 4.
    brood = steady_brood(1500)
    assert (brood.eggs, brood.open, brood.sealed, brood.total) == (4500, 9000, 18000, 31500)
    assert brood.open / brood.eggs == 2
    assert brood.sealed / brood.eggs == 4


def test_brood_of_two_thousand_a_day() -> None:
    # 2 000 eggs a day make 42 000 cells: Dorchester & Weymouth BKA; imker.felser.ch.
    assert steady_brood(2000).total == 42_000
    assert laying_from_brood(42_000) == 2000


def test_combs_of_brood_for_a_laying_rate() -> None:
    # A Dadant comb of 7 000 usable cells: 1 500 a day fill 4½ combs; 3 full combs are about 1 000 a day
    # (column in the Swiss beekeeping magazine, apisavoir.ch).
    assert steady_brood(1500).total / 7000 == 4.5
    assert laying_from_brood(3 * 7000) == 1000


def test_stage_survival() -> None:
    # Fukuda and Sakagami 1968, Res. Popul. Ecol. 10:31-39: 100 eggs, 94.2, 86.4, 85.1.
    assert STAGE_SURVIVAL[0] == pytest.approx(0.942, abs=1e-4)
    assert STAGE_SURVIVAL[1] == pytest.approx(0.9172, abs=1e-4)
    assert STAGE_SURVIVAL[2] == pytest.approx(0.9850, abs=1e-4)
    assert STAGE_SURVIVAL[0] * STAGE_SURVIVAL[1] * STAGE_SURVIVAL[2] == pytest.approx(0.851, abs=5e-4)


def test_steady_brood_with_losses() -> None:
    # The same survival as an even hazard within each stage, 1 500 a day: worked outside this program.
    brood = steady_brood(1500, losses=True)
    assert brood.eggs == pytest.approx(4368, rel=1e-3)
    assert brood.open == pytest.approx(8122, rel=1e-3)
    assert brood.sealed == pytest.approx(15_435, rel=1e-3)
    assert brood.total == pytest.approx(27_925, rel=1e-3)
    assert laying_from_sealed(15_435) == pytest.approx(1286, abs=1)


def test_dates_of_an_egg() -> None:
    # Days by caste: FAO x0083e ch. 3 and an encyclopaedia's table, as quoted; egg laid on 10 May 2026.
    laid = date(2026, 5, 10)
    worker, queen, drone = (stage_dates(caste, laid) for caste in (Caste.WORKER, Caste.QUEEN, Caste.DRONE))
    assert worker.hatches == queen.hatches == drone.hatches == date(2026, 5, 13)
    assert queen.sealed == date(2026, 5, 18)
    assert queen.emerges == date(2026, 5, 26)
    assert worker.emerges == date(2026, 5, 31)
    assert drone.emerges == date(2026, 6, 3)


def test_a_break_in_the_brood() -> None:
    # No eggs, no open brood, sealed brood present: the last egg 9 to 21 days ago (stage lengths; the nine
    # days: Trunch Beekeeping queen-cell guide, after W. Shaw and the Welsh Beekeepers' Association).
    assert last_egg_days(eggs=False, young=False, sealed=True) == (9, 21)
    assert last_egg_days(eggs=False, young=False, sealed=False) == (21, None)
    assert last_egg_days(eggs=False, young=True, sealed=None) == (3, 9)
    assert last_egg_days(eggs=True, young=None, sealed=None) == (0, 3)


def test_clipped_queen() -> None:
    # I. Davis, Bee Craft, November 2009: 8 − 3 + 8 = 13 days, 10 advised; 14 is common practice, no source.
    assert clipped_limit_days() == 13
    assert CLIPPED_LOOK_DAYS == 10
    assert CLIPPED_LOOK_DAYS < clipped_limit_days() < CLIPPED_MOST_DAYS == 14
