"""Sugar syrup against published densities, solubility and what Curth measured of stores."""

import pytest

from beeworkbook.colony.syrup import (
    STORES_PER_SUGAR,
    STORES_PER_THIN_SUGAR,
    before_cost_kg,
    crystallises_below_c,
    share_of_strength,
    soluble_share,
    stores_from_sugar_kg,
    sugar_per_litre_kg,
    sugar_share,
    syrup_density_kg_l,
    syrup_litres,
)

# CRC Handbook, sucrose solution at 20 °C (NBS Circular 440), as quoted: % by weight, kg/m³.
CRC = [(0, 998.2), (10, 1038.1), (20, 1081.0), (30, 1127.0), (40, 1176.4), (50, 1229.6)]
# The same table's upper end: from memory.
CRC_RECALLED = [(60, 1286.5), (65, 1316.3), (70, 1347.2)]


@pytest.mark.parametrize(("percent", "kg_m3"), [*CRC, *CRC_RECALLED])
def test_density_of_sucrose_solution(percent: float, kg_m3: float) -> None:
    assert syrup_density_kg_l(percent / 100) * 1000 == pytest.approx(kg_m3, rel=3e-4)


@pytest.mark.parametrize(
    ("sugar", "water", "share", "litres", "g_per_litre"),
    [
        # Worked from the same table: 1 kg + 1 kg; 1 kg + 0.63 kg ("2 lb to the pint"); 2 kg + 1 kg.
        (1.0, 1.0, 0.500, 1.627, 615),
        (1.0, 0.63, 0.613, 1.259, 794),
        (2.0, 1.0, 0.667, 2.26, 884),
        (3.0, 2.0, 0.600, 3 * 1.30, 772),
    ],
)
def test_recipes(sugar: float, water: float, share: float, litres: float, g_per_litre: float) -> None:
    assert sugar_share(sugar, water) == pytest.approx(share, abs=0.0006)
    assert syrup_litres(sugar, sugar, water) == pytest.approx(litres, rel=0.004)
    assert sugar_per_litre_kg(sugar, water) * 1000 == pytest.approx(g_per_litre, rel=0.003)


def test_four_kilograms_made_up_to_four_and_a_half_litres() -> None:
    # Recipe: norfolkbeekeepers.org.uk; its share by inverting w × density(w).
    assert share_of_strength(4 / 4.5) == pytest.approx(0.669, abs=0.001)


@pytest.mark.parametrize(
    ("celsius", "percent"),
    # Bubník and Kadlec 1995, worked from their fit: 0, 10, 20, 30, 40 °C.
    [(0, 64.4), (10, 65.4), (20, 66.7), (30, 68.3), (40, 70.1)],
)
def test_solubility_of_sugar(celsius: float, percent: float) -> None:
    assert soluble_share(celsius) * 100 == pytest.approx(percent, abs=0.06)


def test_solubility_lies_below_the_older_table() -> None:
    # F. Mohos 2010, tables A2.2–A2.3: 203.9 g in 100 g of water at 20 °C, published as 67.09 %.
    mohos = 203.9 / (203.9 + 100)
    assert 0 < mohos - soluble_share(20) < 0.005


def test_two_to_one_sets_in_a_cool_room() -> None:
    # Two to one is saturated at 19.6 °C by Bubník and Kadlec 1995.
    assert crystallises_below_c(2, 1) == pytest.approx(19.6, abs=0.1)
    assert crystallises_below_c(1, 1) is None
    assert crystallises_below_c(3, 2) is None


def test_stores_from_sugar_after_curth() -> None:
    # Curth, Hohenheim 1981: kg sugar and kg stores from 1 L of 1:1, 3:2, 2:1; 1 000 g sugar give 1 075 g.
    rows = {"1:1": (0.625, 0.560), "3:2": (0.800, 0.860), "2:1": (0.890, 1.000)}
    per_kg = {ratio: stores / sugar for ratio, (sugar, stores) in rows.items()}
    assert pytest.approx(per_kg["1:1"], rel=0.03) == STORES_PER_THIN_SUGAR
    assert pytest.approx(per_kg["3:2"], rel=0.03) == STORES_PER_SUGAR
    assert pytest.approx(per_kg["2:1"], rel=0.03) == STORES_PER_SUGAR
    # By the share of what inverted sugar could weigh, bees keep about 84 % of a 3:2 syrup's sugar.
    assert stores_from_sugar_kg(1) / before_cost_kg(1) == pytest.approx(0.84, abs=0.03)


def test_inversion_bounds_what_sugar_can_become() -> None:
    # Molar masses 342.297 and 360.312 (from memory), 18 % water: 1.284 kg from 1 kg of sugar.
    assert before_cost_kg(1) == pytest.approx(1.284, abs=0.002)
    assert stores_from_sugar_kg(1) < before_cost_kg(1)
