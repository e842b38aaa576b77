"""Stores on a comb against published weights."""

import math

import pytest

from beeworkbook.colony.amounts import KG_PER_POUND
from beeworkbook.colony.records import PartKind
from beeworkbook.colony.stores import FULL_KG_PER_DM2, SAFE_KG_PER_DM2, comb_stores_kg, side_stores_kg
from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.frames import FRAME_TYPES


def sealed(dm2: float) -> tuple[float, ...]:
    return tuple(dm2 if content is Content.STORES else 0.0 for content in CONTENTS)


def test_zander_eighths_of_feed() -> None:
    # bees-online.at 2020: 125 g an eighth (1 dm²) of a Zander side; 4 eighths 500 g, a whole side 1 kg.
    assert side_stores_kg(sealed(4), PartKind.BROOD_BOX).total == 0.5
    assert side_stores_kg(sealed(8), PartKind.BROOD_BOX).total == 1.0
    assert comb_stores_kg(FRAME_TYPES["zander"].area_dm2) == pytest.approx(2.0)


def test_clement_honey_comb() -> None:
    # A. Clément, L'apiculture moderne, p. 56: 330 g per dm²; a comb of 12 dm² holds about 4 kg.
    assert comb_stores_kg(12, PartKind.SUPER) == pytest.approx(4.0, rel=0.02)


@pytest.mark.parametrize(
    ("frame", "kg", "within"),
    [
        # BBKA News 216, August 2013, "Winter feeding": a BS brood frame just over 2 kg, a Langstroth
        # deep about 3.
        ("bs_deep", 2.12, 0.15),
        ("langstroth_deep", 3.0, 0.15),
        # E. Bertrand, La conduite du rucher, p. 239: a Dadant-Blatt comb 3½ to 3¾ kg.
        ("dadant_blatt_old", 3.625, 0.125),
    ],
)
def test_full_combs_of_published_frames(frame: str, kg: float, within: float) -> None:
    full = FRAME_TYPES[frame].area_dm2 * FULL_KG_PER_DM2
    assert full == pytest.approx(kg, abs=within)


def test_combs_for_a_winter() -> None:
    # BBKA News 216: 20 kg of stores are nine full BS frames of about 5 lb.
    assert math.ceil(20 / (5 * KG_PER_POUND)) == 9
    # Ours at the full weight needs one or two more, at the safe weight more still: safer, never fewer.
    area = FRAME_TYPES["bs_deep"].area_dm2
    assert 9 <= math.ceil(20 / (area * FULL_KG_PER_DM2)) <= 10
    assert math.ceil(20 / (area * SAFE_KG_PER_DM2)) > 10
