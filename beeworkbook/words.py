"""The one translation call: every visible text, number and date goes through here.

The English text is the key. A catalogue is data: a mapping from English to another language, with
its plural rule and its decimal sign. Nothing here knows bees, and nothing here knows the locale
of the machine: the program installs what the keeper chose.
"""

import json
import math
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path
from typing import Final, Literal

NARROW_SPACE: Final = "\u202f"
"""Narrow no-break space, set between thousands (ISO 80000-1: a small space, never a comma or a point)."""
MINUS: Final = "\u2212"

Text = str | Sequence[str]
DateStyle = Literal["long", "long_year", "weekday", "weekday_year", "day", "day_year", "short"]

_MONTHS: Final = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
_WEEKDAYS: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_SHORT: Final = 3
_TEEN: Final = range(12, 15)
_FEW: Final = range(2, 5)


def _polish(count: float) -> int:
    if count == 1:
        return 0
    return 1 if count % 10 in _FEW and count % 100 not in _TEEN else 2


def _russian(count: float) -> int:
    if count % 10 == 1 and count % 100 != 11:
        return 0
    return 1 if count % 10 in _FEW and count % 100 not in _TEEN else 2


PLURAL_RULES: Final[Mapping[str, Callable[[float], int]]] = {
    "english": lambda count: 0 if count == 1 else 1,
    "french": lambda count: 0 if abs(count) < 2 else 1,
    "czech": lambda count: 0 if count == 1 else 1 if count in _FEW else 2,
    "polish": _polish,
    "russian": _russian,
    "single": lambda _count: 0,
}
"""Which of a catalogue's forms a count takes. Source: Unicode CLDR, whole numbers, from memory."""


@dataclass(frozen=True)
class Catalogue:
    """One language: English texts and what to say instead."""

    texts: Mapping[str, Text] = field(default_factory=dict)
    plural: str = "english"
    decimal_sign: str = "."
    language: str = "en"


class CatalogueError(ValueError):
    """This file is not a catalogue of texts."""


class NumberError(ValueError):
    """This is not a number."""


_ENGLISH: Final = Catalogue()
_installed: list[Catalogue] = [_ENGLISH]


def use_catalogue(catalogue: Catalogue | Mapping[str, Text]) -> None:
    """Install a language for the whole program; an empty mapping brings English back."""
    _installed[0] = catalogue if isinstance(catalogue, Catalogue) else Catalogue(dict(catalogue))


def installed_catalogue() -> Catalogue:
    """The language in use, to put it back or to ask for its name."""
    return _installed[0]


def load_catalogue(path: Path | str) -> Catalogue:
    """The catalogue in a JSON file: language, plural rule, decimal sign, and texts by their English.

    Errors: CatalogueError if the file is not such a catalogue; OSError if it cannot be read.
    """
    try:
        held = json.loads(Path(path).read_text(encoding="utf-8"))
    except ValueError as error:
        raise CatalogueError(say("This catalogue is not readable JSON: {reason}.", reason=error)) from error
    texts = held.get("texts") if isinstance(held, dict) else None
    if not isinstance(texts, dict) or not all(_is_text(text) for text in texts.values()):
        raise CatalogueError(say("This catalogue has no texts, or one is neither words nor forms."))
    if held.get("plural", "english") not in PLURAL_RULES:
        raise CatalogueError(say("This catalogue asks for a plural rule that is not known."))
    if held.get("decimal_sign", ".") not in {".", ","}:
        raise CatalogueError(say("The decimal sign of a catalogue is a point or a comma."))
    return Catalogue(
        texts, held.get("plural", "english"), held.get("decimal_sign", "."), str(held.get("language", ""))
    )


def _is_text(text: object) -> bool:
    if isinstance(text, list):
        return bool(text) and all(isinstance(form, str) for form in text)
    return isinstance(text, str)


def say(text: str, /, **values: object) -> str:
    """The text in the installed language, with its named places filled in.

    A translation that asks for a value nobody gave falls back to the English, since a keeper
    must never lose a sentence to a slip in a catalogue.
    """
    found = _installed[0].texts.get(text, text)
    return _filled(found if isinstance(found, str) else found[0], text, values)


def say_in(context: str, text: str, /) -> str:
    """A short word that means different things in different places, e.g. a month's short name.

    The catalogue holds it under "context: text"; English is the text itself.
    """
    found = _installed[0].texts.get(f"{context}: {text}", text)
    return found if isinstance(found, str) else found[0]


def say_count(count: float, one: str, many: str, /, **values: object) -> str:
    """One of two texts by number, {n} being the number itself.

    The catalogue holds the forms as a list under the text for many, in the order of its plural rule.
    """
    values = {"n": number(count, 0) if float(count).is_integer() else number(count), **values}
    catalogue = _installed[0]
    english = one if count == 1 else many
    forms = catalogue.texts.get(many)
    if forms is None or isinstance(forms, str):
        return say(english, **values)
    return _filled(forms[min(PLURAL_RULES[catalogue.plural](count), len(forms) - 1)], english, values)


def _filled(found: str, english: str, values: Mapping[str, object]) -> str:
    if not values:
        return found
    try:
        return found.format_map(values)
    except (KeyError, IndexError, ValueError, AttributeError):
        return english.format_map(values)


def month_name(month: int, *, short: bool = False) -> str:
    """The name of a month, 1 to 12: "September", short "Sep"."""
    name = _MONTHS[month - 1]
    return say_in("short month", name[:_SHORT]) if short else say_in("month", name)


def weekday_name(weekday: int, *, short: bool = False) -> str:
    """The name of a weekday, Monday being 0: "Saturday", short "Sat"."""
    name = _WEEKDAYS[weekday]
    return say_in("short weekday", name[:_SHORT]) if short else say_in("weekday", name)


def date_words(day: date, style: DateStyle = "day") -> str:
    """A day in words.

    long "Saturday 16 May" · long_year "Saturday 16 May 2026" · weekday "Sat 16 May" · weekday_year
    "Sat 16 May 2026" · day "16 May" · day_year "16 May 2026" · short "3 Sep".
    """
    month = month_name(day.month, short=style == "short")
    values = {"day": day.day, "month": month, "year": day.year}
    if style in {"day", "short"}:
        return say("{day} {month}", **values)
    if style == "day_year":
        return say("{day} {month} {year}", **values)
    weekday = weekday_name(day.weekday(), short=style.startswith("weekday"))
    if style.endswith("year"):
        return say("{weekday} {day} {month} {year}", weekday=weekday, **values)
    return say("{weekday} {day} {month}", weekday=weekday, **values)


def number(value: float, places: int | None = None) -> str:
    """A number as it is written: the installed decimal sign, thousands a narrow space apart.

    Without places as many as it has, at most three. Errors: ValueError if it is not finite.
    """
    if not math.isfinite(value):
        message = "only a finite number can be written"
        raise ValueError(message)
    exact = Decimal(str(value))
    rounded = exact.quantize(Decimal(1).scaleb(-(3 if places is None else places)), ROUND_HALF_UP)
    return _written(rounded, strip=places is None)


def two_figures(value: float) -> str:
    """A number to two significant figures: 4816 is "4 800", 4.17 is "4.2", 0 is "0".

    A last nought after the decimal sign is left out: "8", not "8.0".
    Errors: ValueError if it is not finite.
    """
    if not math.isfinite(value):
        message = "only a finite number can be written"
        raise ValueError(message)
    exact = Decimal(str(value))
    if not exact:
        return "0"
    rounded = exact.quantize(Decimal(1).scaleb(exact.adjusted() - 1), ROUND_HALF_UP)
    return _written(rounded, strip=True)


def _written(value: Decimal, *, strip: bool) -> str:
    whole, _, part = f"{abs(value):,f}".partition(".")
    part = part.rstrip("0") if strip else part
    sign = MINUS if value < 0 else ""
    tail = _installed[0].decimal_sign + part if part else ""
    return sign + whole.replace(",", NARROW_SPACE) + tail


_NUMBER: Final = re.compile(r"([+-]?)([0-9]*)(?:([.,])([0-9]*))?")
_GROUPED: Final = re.compile(r"[1-9][0-9]{0,2}")
_LONGEST: Final = 40


def parse_number(text: str) -> float:
    """The number a person typed, with a decimal comma or a decimal point, small spaces allowed.

    "1,250" in a language with a decimal point (and the other way about) could be 1250 or 1.25: it is
    asked again, since a guess would be wrong by a thousand.
    Errors: NumberError, a sentence for the person.
    """
    tight = "".join(text.split()).replace(MINUS, "-")
    found = _NUMBER.fullmatch(tight)
    if found is None or len(tight) > _LONGEST or not (found[2] or found[4]):
        raise NumberError(say("\u201c{text}\u201d is not a number.", text=text.strip()[:_LONGEST]))
    sign, whole, mark, part = found.groups(default="")
    if mark and mark != _installed[0].decimal_sign and len(part) == _SHORT and _GROUPED.fullmatch(whole):
        raise NumberError(
            say(
                "\u201c{text}\u201d can be read in two ways: write {thousands} or {decimal}.",
                text=text.strip(),
                thousands=whole + part,
                decimal=f"{whole}{_installed[0].decimal_sign}{part}",
            )
        )
    return float(f"{sign}{whole or '0'}.{part or '0'}")
