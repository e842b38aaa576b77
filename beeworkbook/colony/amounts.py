"""Amounts as a keeper writes them: litres, kilograms and their kin, read into one unit of each.

Stores and feed are typed with these. What the amount is of is not known here.
"""

import re
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from beeworkbook.words import NumberError, number, parse_number, say

KG_PER_POUND: Final = 0.45359237
"""Source: international avoirdupois pound, exact by definition (1959)."""


class Measure(StrEnum):
    """What an amount is measured in, once it has been read."""

    LITRES = "L"
    KG = "kg"


class AmountError(ValueError):
    """This amount cannot be read."""


@dataclass(frozen=True)
class Amount:
    """An amount in litres or kilograms; `unit` is the word it was typed with, empty if none was."""

    value: float
    measure: Measure | None
    unit: str = ""


_UNITS: Final = MappingProxyType(
    {
        **dict.fromkeys(("l", "litre", "litres", "liter", "liters"), (Measure.LITRES, 1.0)),
        "dl": (Measure.LITRES, 0.1),
        "cl": (Measure.LITRES, 0.01),
        "ml": (Measure.LITRES, 0.001),
        **dict.fromkeys(("kg", "kilo", "kilos"), (Measure.KG, 1.0)),
        "g": (Measure.KG, 0.001),
        **dict.fromkeys(("lb", "lbs", "pound", "pounds"), (Measure.KG, KG_PER_POUND)),
    }
)
_PINTS: Final = frozenset(
    {"pt", "pts", "pint", "pints", "qt", "qts", "quart", "quarts", "gal", "gallon", "gallons"}
)
_AMOUNT: Final = re.compile(r"([0-9][0-9.,\s]*|[.,][0-9]+)\s*([^\W\d_]*)\.?")
_DECIMALS: Final = 9
_LONGEST: Final = 40


def parse_amount(typed: str) -> Amount:
    """The amount that was typed; a bare number has no measure and is left to whoever asked.

    Units: litres or kilograms. Errors: AmountError, a sentence.
    """
    text = typed.strip()
    found = _AMOUNT.fullmatch(text)
    if found is None or len(text) > _LONGEST:
        raise AmountError(
            say("\u201c{text}\u201d is not an amount: write 2 L or 1.5 kg.", text=text[:_LONGEST])
        )
    try:
        value = parse_number(found[1])
    except NumberError as error:
        raise AmountError(str(error)) from error
    unit = found[2].casefold()
    if not unit:
        return Amount(value, None)
    if unit in _PINTS:
        raise AmountError(say("A pint or gallon differs from land to land: write it in litres."))
    if unit not in _UNITS:
        raise AmountError(
            say("\u201c{unit}\u201d is not a unit known here: write L, ml, kg, g or lb.", unit=found[2])
        )
    measure, factor = _UNITS[unit]
    return Amount(round(value * factor, _DECIMALS), measure, unit)


def write_amount(value: float, measure: Measure) -> str:
    """An amount as it is put back into a field: "2 L", "0.5 L", "2.5 kg"."""
    return f"{number(value)} {measure}"
