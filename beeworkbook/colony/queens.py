"""The colour mark of a queen and the years it proposes.

The colour proposes a year and never decides it: a breeder may have had only one colour.
"""

from types import MappingProxyType
from typing import Final

from beeworkbook.colony.records import Queen
from beeworkbook.words import say

MARK_COLOURS: Final = ("blue", "white", "yellow", "red", "green")
"""By (year mod 10) mod 5: 0 or 5 blue, 1 or 6 white, 2 or 7 yellow, 3 or 8 red, 4 or 9 green.

Source: international queen marking colours, as listed in the BEE-L archive 2000 and by Launceston
Beekeepers and Highfield Bees.
"""

SWATCHES: Final = MappingProxyType(
    {"blue": "#2F6DB5", "white": "#F4F4F0", "yellow": "#E5C93C", "red": "#B8423A", "green": "#4E8B4A"}
)
"""A small spot to stand beside the word, never instead of it. Source: our own choice of colours."""

_CYCLE: Final = 5
_SHORTEST: Final = 2


def mark_colour(year: int) -> str:
    """The colour of a year's queens, in English; say() it to show it.

    Source: as MARK_COLOURS.
    """
    return MARK_COLOURS[year % 10 % _CYCLE]


def proposed_years(colour: str, this_year: int, count: int = 2) -> tuple[int, ...]:
    """The latest years up to this one whose queens bear this colour, latest first; none for another colour.

    Source: as MARK_COLOURS.
    """
    if colour not in MARK_COLOURS:
        return ()
    back = (this_year - MARK_COLOURS.index(colour)) % _CYCLE
    return tuple(this_year - back - _CYCLE * step for step in range(count))


def read_colour(word: str) -> str | None:
    """The colour a typed word means, by its first two letters or more, or None.

    One letter is not enough: y is yes and b is a side of a comb.
    """
    start = word.strip().casefold()
    if len(start) < _SHORTEST:
        return None
    for colour in MARK_COLOURS:
        if colour.startswith(start) or say(colour).casefold().startswith(start):
            return colour
    return None


def mark_words(colour: str, this_year: int) -> str:
    """A mark in words: "blue, so perhaps 2025"; a colour that means no year is said alone.

    Source: as MARK_COLOURS.
    """
    years = proposed_years(colour, this_year, 1)
    if not years:
        return say(colour) if colour else ""
    return say("{colour}, so perhaps {year}", colour=say(colour), year=years[0])


def queen_words(queen: Queen) -> str:
    """A queen as far as she is known: "of 2026, marked white, clipped"; empty if nothing is."""
    year = say("of {year}", year=queen.year) if queen.year is not None else ""
    colour = say(queen.mark_colour) if queen.mark_colour else ""
    mark = " ".join(filter(None, (colour, queen.mark_text)))
    marked = say("marked {mark}", mark=mark) if mark else ""
    clipped = {True: say("clipped"), False: say("not clipped"), None: ""}[queen.clipped]
    return ", ".join(filter(None, (queen.name, year, marked, clipped)))
