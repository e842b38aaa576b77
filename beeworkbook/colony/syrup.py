"""What sugar syrup weighs, how much of it a sack of sugar makes, when it sets, and what bees make of it.

Ratios are sugar : water by weight; shares are sugar by weight of the whole. Table sugar only.
"""

from typing import Final

from beeworkbook.colony.feeding import AFeed, Taken
from beeworkbook.colony.records import FeedKind

_DENSITY: Final = (998.205, 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289)
"""kg/m³ of sucrose solution at 20 °C as a polynomial of the sugar share.

Source: Z. Bubník, P. Kadlec, D. Urban and M. Bruhns, Sugar Technologists Manual (Bartens 1995) p. 164, quoted
in public process scripts; within 0.03 % of the NBS Circular 440 table in the CRC Handbook.
"""
_SOLUBLE: Final = (64.447, 0.08222, 0.0016169, -1.558e-6, -4.63e-8)
"""% sugar in a saturated solution by °C.

Source: Z. Bubník and P. Kadlec, "Sucrose solubility", in Sucrose: Properties and Applications (Blackie 1995),
quoted in a public script. Lower than F. Mohos 2010 (67.1 % at 20 °C), so the safer one to warn by.
"""
STORES_PER_SUGAR: Final = 1.1
STORES_PER_THIN_SUGAR: Final = 0.9
"""kg of sealed stores from 1 kg of sugar: 1.1, and 0.9 when fed as thin as 1:1.

Source: Curth, Hohenheim 1981, as printed by Bienenzuchtverein Merkstein: 0.896 for 1:1, 1.075 for 3:2, 1.124
for 2:1, and 1.075 from dry sugar; rounded.
"""
SUGAR_MOLE_G: Final = 342.297
INVERTED_MOLE_G: Final = 360.312
"""Grams a mole of sucrose, and of the glucose and fructose it becomes.

Source: IUPAC atomic weights, from memory.
"""
_THIN: Final = 1.25
_STEPS: Final = 60
_COLDEST_C: Final = 0.0
_WARMEST_C: Final = 100.0


def sugar_share(sugar_parts: float, water_parts: float) -> float:
    """The share of sugar by weight in a syrup mixed sugar : water by weight.

    Errors: ValueError if a part is not positive. Source: arithmetic.
    """
    if sugar_parts <= 0 or water_parts <= 0:
        raise ValueError("both parts of a syrup are more than nought")
    return sugar_parts / (sugar_parts + water_parts)


def syrup_density_kg_l(share: float) -> float:
    """What a litre of syrup weighs at 20 °C.

    Units: share of sugar by weight, 0 to 0.75; kg per litre. Source: _DENSITY.
    """
    return _polynomial(_DENSITY, share) / 1000


def syrup_litres(sugar_kg: float, sugar_parts: float, water_parts: float) -> float:
    """How many litres of syrup this much sugar makes in this ratio.

    Units: kg, litres at 20 °C. Source: as syrup_density_kg_l.
    """
    share = sugar_share(sugar_parts, water_parts)
    return sugar_kg / share / syrup_density_kg_l(share)


def sugar_per_litre_kg(sugar_parts: float, water_parts: float) -> float:
    """How much sugar is in a litre of syrup of this ratio.

    Units: kg per litre at 20 °C. Source: as syrup_density_kg_l.
    """
    share = sugar_share(sugar_parts, water_parts)
    return share * syrup_density_kg_l(share)


def share_of_strength(sugar_kg_per_litre: float) -> float:
    """The sugar share of a syrup made up to so much sugar a litre, e.g. 4 kg made up to 4.5 L.

    Units: kg per litre; share by weight. Errors: ValueError beyond pure sugar. Source: as syrup_density_kg_l.
    """
    low, high = 0.0, 1.0
    if not 0 <= sugar_kg_per_litre <= syrup_density_kg_l(high):
        raise ValueError("no syrup is as strong as that")
    for _ in range(_STEPS):
        middle = (low + high) / 2
        if middle * syrup_density_kg_l(middle) < sugar_kg_per_litre:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def soluble_share(temperature_c: float) -> float:
    """The largest share of sugar that stays dissolved at this temperature.

    Units: °C, 0 to 100; share by weight. Source: _SOLUBLE.
    """
    return _polynomial(_SOLUBLE, temperature_c) / 100


def crystallises_below_c(sugar_parts: float, water_parts: float) -> float | None:
    """The temperature below which this syrup begins to set; None if it never does above freezing.

    Units: °C. Source: as soluble_share.
    """
    share = sugar_share(sugar_parts, water_parts)
    low, high = _COLDEST_C, _WARMEST_C
    if share <= soluble_share(low):
        return None
    for _ in range(_STEPS):
        middle = (low + high) / 2
        if soluble_share(middle) < share:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def sugar_kg(feed: AFeed, amount: Taken | None = None) -> float | None:
    """The dry sugar in a feed, or in that part of it that was taken; None where nobody can say.

    A syrup without a ratio, fondant and pollen have no known share of sugar. Units: kg.
    Source: as syrup_density_kg_l.
    """
    litres = amount.litres if amount is not None else feed.given_litres
    kg = amount.kg if amount is not None else feed.given_kg
    if feed.kind is FeedKind.DRY_SUGAR:
        return kg
    if feed.kind is not FeedKind.SYRUP or feed.sugar_parts is None or feed.water_parts is None:
        return None
    if litres is not None:
        return litres * sugar_per_litre_kg(feed.sugar_parts, feed.water_parts)
    return None if kg is None else kg * sugar_share(feed.sugar_parts, feed.water_parts)


def stores_from_sugar_kg(sugar: float, *, thin: bool = False) -> float:
    """The stores that bees make of so much sugar, less what the work costs them.

    Units: kg. Source: STORES_PER_SUGAR.
    """
    return sugar * (STORES_PER_THIN_SUGAR if thin else STORES_PER_SUGAR)


def is_thin(sugar_parts: float, water_parts: float) -> bool:
    """Whether a syrup is thin enough that much of it is spent on drying it.

    Source: common practice, no source; Curth's rows are 1:1 and 3:2, the line is drawn between them.
    """
    return sugar_parts / water_parts < _THIN


def before_cost_kg(sugar: float, water_share: float = 0.18) -> float:
    """What the sugar would weigh as stores if the work cost the bees nothing: inverted, with its water.

    Units: kg. Source: molar masses; 18 % water as in ripe honey (Directive 2001/110/EC allows 20 %).
    """
    return sugar * INVERTED_MOLE_G / SUGAR_MOLE_G / (1 - water_share)


def _polynomial(coefficients: tuple[float, ...], value: float) -> float:
    result = 0.0
    for coefficient in reversed(coefficients):
        result = result * value + coefficient
    return result
