"""Feed as it is said: `2L 1:1`, `2.5 kg fondant`; read, written back, and what was taken of it.

A ratio is always sugar : water by weight. What syrup weighs and what becomes of it is in syrup.py.
"""

import re
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Protocol

from beeworkbook.colony.amounts import Amount, AmountError, Measure, parse_amount, write_amount
from beeworkbook.colony.records import FeedKind
from beeworkbook.words import NumberError, number, parse_number, say

_LONGEST: Final = 60
_MOST: Final = 200.0
_MOST_PARTS: Final = 20.0
_WORDS: Final = MappingProxyType(
    {
        FeedKind.SYRUP: ("syrup",),
        FeedKind.FONDANT: ("fondant", "candy"),
        FeedKind.DRY_SUGAR: ("dry sugar", "sugar"),
        FeedKind.POLLEN: ("pollen patty", "pollen"),
        FeedKind.OTHER: ("other", "feed"),
    }
)
_WRITTEN: Final = MappingProxyType(
    {
        FeedKind.SYRUP: "syrup",
        FeedKind.FONDANT: "fondant",
        FeedKind.DRY_SUGAR: "dry sugar",
        FeedKind.POLLEN: "pollen",
        FeedKind.OTHER: "other",
    }
)
_RATIO: Final = re.compile(r"([0-9]+(?:[.,][0-9]+)?)\s*[:/]\s*([0-9]+(?:[.,][0-9]+)?)")
_NOTHING: Final = frozenset({"", "-", "\u2013", "\u2014", "n", "no", "0", "none"})


class FeedError(ValueError):
    """What was typed is no feed."""


@dataclass(frozen=True)
class ParsedFeed:
    """Feed given, as typed and as understood. Units: litres or kilograms; parts by weight."""

    kind: FeedKind
    given_litres: float | None = None
    given_kg: float | None = None
    sugar_parts: float | None = None
    water_parts: float | None = None
    typed: str = ""


@dataclass(frozen=True)
class ParsedLeft:
    """What was left of a feed, in what it was given in. Both None: nothing was said."""

    litres: float | None = None
    kg: float | None = None


@dataclass(frozen=True)
class Taken:
    """What the bees took: given less left. Units: litres or kilograms."""

    litres: float | None = None
    kg: float | None = None


class AFeed(Protocol):
    """What ParsedFeed and the record Feed have in common."""

    @property
    def kind(self) -> FeedKind:
        """What was fed."""

    @property
    def given_litres(self) -> float | None:
        """How many litres."""

    @property
    def given_kg(self) -> float | None:
        """How many kilograms."""

    @property
    def sugar_parts(self) -> float | None:
        """Parts of sugar by weight."""

    @property
    def water_parts(self) -> float | None:
        """Parts of water by weight."""


class ALeftFeed(AFeed, Protocol):
    """A feed at which somebody looked again."""

    @property
    def left_litres(self) -> float | None:
        """Litres left."""

    @property
    def left_kg(self) -> float | None:
        """Kilograms left."""


def parse_feed(typed: str) -> ParsedFeed | None:
    """The feed that was typed; None for a blank field, "-", "none" and 0, which all gave nothing.

    Units: litres, kilograms, parts by weight. Errors: FeedError, a sentence.
    """
    text = " ".join(typed.split())
    if text.casefold() in {*_NOTHING, say("none").casefold()}:
        return None
    if len(text) > _LONGEST:
        raise FeedError(say("That is long for a field: write it in the note."))
    kind, rest = _take_kind(text.casefold())
    ratio = _RATIO.search(rest)
    if ratio is not None:
        rest = f"{rest[: ratio.start()]} {rest[ratio.end() :]}"
    sugar, water = _parts(ratio)
    if kind not in {None, FeedKind.SYRUP} and ratio is not None:
        raise FeedError(say("Only syrup has a ratio of sugar to water."))
    kind = FeedKind.SYRUP if kind is None and ratio is not None else kind
    return _weighed(kind, _amount(rest), (sugar, water), text)


def _take_kind(text: str) -> tuple[FeedKind | None, str]:
    for kind, words in _WORDS.items():
        for word in (*words, say(_WRITTEN[kind]).casefold()):
            found = re.search(rf"(?<![^\W\d_]){re.escape(word)}(?![^\W\d_])", text)
            if found is not None:
                return kind, f"{text[: found.start()]} {text[found.end() :]}"
    return None, text


def _parts(ratio: re.Match[str] | None) -> tuple[float | None, float | None]:
    if ratio is None:
        return None, None
    try:
        sugar, water = parse_number(ratio[1]), parse_number(ratio[2])
    except NumberError as error:
        raise FeedError(str(error)) from error
    if not (0 < sugar <= _MOST_PARTS and 0 < water <= _MOST_PARTS):
        raise FeedError(say("Write sugar to water by weight, as 1:1 or 2:1."))
    return sugar, water


def _amount(text: str) -> Amount | None:
    rest = text.replace(" of ", " ").strip(" ,;")
    if not rest:
        return None
    try:
        amount = parse_amount(rest)
    except AmountError as error:
        raise FeedError(str(error)) from error
    if not 0 < amount.value <= _MOST:
        raise FeedError(say("{value} is more or less than a hive is fed.", value=number(amount.value)))
    return amount


def _weighed(
    kind: FeedKind | None, amount: Amount | None, parts: tuple[float | None, float | None], text: str
) -> ParsedFeed:
    if amount is None:
        raise FeedError(say("Say how much was given, as 2 L 1:1 or 2.5 kg fondant."))
    measure = amount.measure
    if kind is None:
        if measure is Measure.LITRES:
            kind = FeedKind.SYRUP
        else:
            raise FeedError(say("Say what was fed, as 2 L 1:1 or 2.5 kg fondant."))
    if measure is None:
        measure = Measure.LITRES if kind is FeedKind.SYRUP else Measure.KG
    if measure is Measure.LITRES and kind not in {FeedKind.SYRUP, FeedKind.OTHER}:
        raise FeedError(say("{kind} is weighed: write it in kilograms.", kind=kind_words(kind)))
    litres, kg = (amount.value, None) if measure is Measure.LITRES else (None, amount.value)
    return ParsedFeed(kind, litres, kg, *parts, text)


def kind_words(kind: FeedKind) -> str:
    """What was fed, in words: "fondant"."""
    return say(_WRITTEN[kind])


def write_feed(feed: AFeed) -> str:
    """A feed as it is said, and as it is put back into the field: "2 L 1:1", "2.5 kg fondant"."""
    ratio = ""
    if feed.sugar_parts is not None and feed.water_parts is not None:
        ratio = f"{number(feed.sugar_parts)}:{number(feed.water_parts)}"
    # Litres of syrup and a ratio speak for themselves; everything else is named.
    plain = feed.kind is FeedKind.SYRUP and feed.given_litres is not None
    name = "" if plain else kind_words(feed.kind)
    return " ".join(filter(None, (_write(feed.given_litres, feed.given_kg), ratio, name)))


def _write(litres: float | None, kg: float | None) -> str:
    if litres is not None:
        return write_amount(litres, Measure.LITRES)
    return "" if kg is None else write_amount(kg, Measure.KG)


def parse_left(feed: AFeed, typed: str) -> ParsedLeft:
    """What was left of a feed: "0.2 L", "200 ml", "0", "none", "all"; a bare number is in what was given.

    Blank and "-" say nothing. Errors: FeedError, a sentence.
    """
    text = " ".join(typed.split()).casefold()
    in_litres = feed.given_litres is not None
    given = feed.given_litres if in_litres else feed.given_kg
    if text in {"", "-", "\u2013", "\u2014"}:
        return ParsedLeft()
    if text in _NOTHING or text == say("none").casefold():
        left = 0.0
    elif text in {"all", say("all").casefold()} and given is not None:
        left = given
    else:
        left = _left_amount(text, Measure.LITRES if in_litres else Measure.KG)
    if given is not None and left > given:
        raise FeedError(say("More is left than was given: {given}.", given=write_feed(feed)))
    return ParsedLeft(litres=left) if in_litres else ParsedLeft(kg=left)


def _left_amount(text: str, measure: Measure) -> float:
    try:
        amount = parse_amount(text)
    except AmountError as error:
        raise FeedError(str(error)) from error
    if amount.measure not in {None, measure}:
        raise FeedError(say("It was given in {unit}: say what is left in {unit} too.", unit=measure.value))
    return amount.value


def write_left(feed: ALeftFeed) -> str:
    """What was left, as it is put back into the field: "0.2 L"; empty if nobody looked."""
    return _write(feed.left_litres, feed.left_kg)


def taken(feed: ALeftFeed) -> Taken | None:
    """What was taken, given less left; None until somebody looked, never guessed.

    Units: litres or kilograms, as given.
    """
    if feed.given_litres is not None and feed.left_litres is not None:
        return Taken(litres=round(feed.given_litres - feed.left_litres, 6))
    if feed.given_kg is not None and feed.left_kg is not None:
        return Taken(kg=round(feed.given_kg - feed.left_kg, 6))
    return None
