"""Bees on a side against published counts."""

import pytest

from beeworkbook.colony.strength import BEES_PER_DM2, OCCUPIED_BEES_PER_DM2, bees_in_seams, bees_on_side
from beeworkbook.comb.frames import FRAME_TYPES


@pytest.mark.parametrize(
    ("frame", "bees", "within"),
    [
        # Imdorf, Rickli and Fluri 1996, Dynamique des populations d'abeilles, Liebefeld.
        ("langstroth_deep", 1100, 0.01),
        ("zander", 1000, 0.0),
        # The same table, from memory; 1 430 by 5 000 bees on 3.5 sides of a Dadant, imker.felser.ch.
        ("dadant_blatt", 1400, 0.02),
        ("dadant_blatt_super", 700, 0.02),
        ("de_normal", 900, 0.02),
    ],
)
def test_bees_on_a_covered_side(frame: str, bees: float, within: float) -> None:
    assert bees_on_side(FRAME_TYPES[frame].area_dm2, 8) == pytest.approx(bees, rel=within)


def test_zander_eighths_of_bees() -> None:
    # bees-online.at 2020: 125 bees an eighth of a Zander side; two eighths 250.
    assert bees_on_side(8.0, 2) == 250
    assert bees_on_side(8.0, 1) == BEES_PER_DM2


def test_weak_colonies_out_of_winter() -> None:
    # imker.felser.ch, citing ALP forum 68: fewer than 5 000 bees are fewer than 28 eighths of a Dadant
    # (3.5 sides) or 32 of the Swiss frame (4 sides, 1 250 a side).
    assert bees_on_side(FRAME_TYPES["dadant_blatt"].area_dm2, 28) == pytest.approx(5000, rel=0.04)
    assert bees_on_side(1250 / BEES_PER_DM2, 32) == pytest.approx(5000)


def test_bees_on_occupied_combs() -> None:
    # J. Simpson 1969, J. Apic. Res. 8(1):3-8: 1 100 on an occupied BS comb, 1 400 on a Langstroth comb.
    assert bees_in_seams(1, 6.42) == pytest.approx(1100)
    assert bees_in_seams(1, FRAME_TYPES["langstroth_deep"].area_dm2) == pytest.approx(1400, rel=0.08)
    assert OCCUPIED_BEES_PER_DM2 < BEES_PER_DM2


def test_a_comb_of_brood_makes_three_combs_of_bees() -> None:
    # A trade saying (UK forum); Fukuda and Sakagami 1968: 0.985 of the sealed brood emerges.
    frame = FRAME_TYPES["bs_deep"]
    combs = 2 * frame.area_dm2 * frame.cells_per_dm2 * 0.985 / (2 * bees_on_side(frame.area_dm2, 8))
    assert combs == pytest.approx(3.15, abs=0.05)
