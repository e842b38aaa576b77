"""What a keeper says of combs, queen cells and the queen, read out of a few letters.

These are the parts of an answer that two numbers cannot hold; they are read again from what was
typed. Which question they answer is known in questions.py.
"""

import re
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Final

from beeworkbook.colony.queens import MARK_COLOURS, read_colour
from beeworkbook.comb.contents import CellKind, Face
from beeworkbook.words import say

MOST_COMBS: Final = 60
"""More combs than any one hive here can hold. Source: our own limit, against slips."""
_MOST_CELLS: Final = 200


class SaidError(ValueError):
    """This cannot be read as combs, queen cells or a queen."""


@dataclass(frozen=True)
class CellsSaid:
    """Some queen cells of one kind; the kind is None where only "cells" was said.

    `comb` is a place; `box` is said behind it where places alone do not tell combs apart.
    """

    kind: CellKind | None
    count: int
    comb: int | None = None
    face: Face | None = None
    box: str = ""


@dataclass(frozen=True)
class QueenSaid:
    """Where the queen was seen and with which mark; None and "" are not said. `box` as for CellsSaid."""

    comb: int | None = None
    face: Face | None = None
    colour: str = ""
    box: str = ""


_COMB_PART: Final = re.compile(r"([0-9]{1,3})(?:\s*(?:-|\u2013|to)\s*([0-9]{1,3}))?")


def read_combs(text: str) -> tuple[int, ...]:
    """The combs named: "4-6" is 4, 5, 6 and "4, 5, 7" those three; ascending, each once.

    Errors: SaidError, a sentence.
    """
    combs: set[int] = set()
    spread = re.sub(r"\s*(-|\u2013|\bto\b)\s*", r"\1", text)
    for part in filter(None, re.split(r"[,;&+\s]+|\band\b", spread)):
        found = _COMB_PART.fullmatch(part)
        if found is None:
            raise SaidError(say("\u201c{text}\u201d names no combs: write 4-6.", text=part))
        first, last = int(found[1]), int(found[2] or found[1])
        if not 1 <= first <= last <= MOST_COMBS:
            raise SaidError(say("There are no combs {text} in a hive.", text=part))
        combs.update(range(first, last + 1))
    return tuple(sorted(combs))


def write_combs(combs: tuple[int, ...]) -> str:
    """Combs in short: "4\u20136", "4, 5, 7", "5"."""
    if len(combs) > 2 and combs[-1] - combs[0] == len(combs) - 1:
        return f"{combs[0]}\u2013{combs[-1]}"
    return ", ".join(map(str, combs))


_KIND_WORDS: Final = MappingProxyType(
    {
        **dict.fromkeys(("u", "cup", "cups", "play cup", "play cups"), CellKind.PLAY_CUP),
        **dict.fromkeys(("e", "egg", "eggs", "with egg", "with eggs"), CellKind.WITH_EGG),
        **dict.fromkeys(("c", "ch", "charged"), CellKind.CHARGED),
        **dict.fromkeys(("s", "sealed"), CellKind.SEALED),
        **dict.fromkeys(("m", "emerged"), CellKind.EMERGED),
        **dict.fromkeys(("t", "torn", "torn down"), CellKind.TORN_DOWN),
        **dict.fromkeys(("cell", "cells", "queen cell", "queen cells"), None),
    }
)
_FILLERS: Final = frozenset({"on", "and", "cell", "cells"})
_SIGNS: Final = re.compile(r"([0-9]+)([ab])(?![^\W\d_])|([0-9]+)|([^\W\d_]+)|([,;+&\s]+)", re.IGNORECASE)


def kind_written(kind: CellKind | None, count: int) -> str:
    """A kind of queen cell in the short word of a field: "cups", "charged"."""
    words = {
        CellKind.PLAY_CUP: say("cup") if count == 1 else say("cups"),
        CellKind.WITH_EGG: say("with egg"),
        CellKind.CHARGED: say("charged"),
        CellKind.SEALED: say("sealed"),
        CellKind.EMERGED: say("emerged"),
        CellKind.TORN_DOWN: say("torn down"),
        None: say("cell") if count == 1 else say("cells"),
    }
    return words[kind]


def _kind_words() -> dict[str, CellKind | None]:
    """The words that may be typed, with those of the installed language."""
    written = {kind_written(kind, count).casefold(): kind for kind in (*CellKind, None) for count in (1, 2)}
    return {**_KIND_WORDS, **written}


def read_cells(text: str) -> tuple[CellsSaid, ...]:
    """Queen cells as said: "2 cups 1 charged", "2U 1C 5B", or a number alone.

    A place follows its cell, comb and side: 5B, or the comb alone where no kind follows it: "1 charged 9".
    Errors: SaidError, a sentence.
    """
    words = _kind_words()
    cells: list[CellsSaid] = []
    count: int | None = None
    for item in _cell_items(text.casefold(), words):
        if isinstance(item, int):
            if count is not None:
                _put_on(cells, count, None, text)  # two numbers: "1 charged 9, 2 cups"
            if item > _MOST_CELLS:
                raise SaidError(_how_cells(text))
            count = item
        elif isinstance(item, tuple):
            if count is not None:
                raise SaidError(_how_cells(text))
            _put_on(cells, *item, text)
        elif count is None and item in _FILLERS:
            continue  # "1 charged cell on 5B": the kind has been said
        elif item not in words:  # "1 charged 9 and 2 cups"
            _put_on(cells, count or 0, None, text)
            count = None
        else:
            cells.append(CellsSaid(words[item], 1 if count is None else count))
            count = None
    _end_with(cells, count, text)
    return tuple(cell for cell in cells if cell.count)


def _end_with(cells: list[CellsSaid], count: int | None, text: str) -> None:
    """A number at the end is the comb of the cells before it; alone it is how many there are."""
    if count is not None and cells:
        _put_on(cells, count, None, text)
    elif count is not None:
        cells.append(CellsSaid(None, count))


def _put_on(cells: list[CellsSaid], comb: int, face: Face | None, text: str) -> None:
    """Say where the cells named last are."""
    if not cells or cells[-1].comb is not None or (face is None and not 1 <= comb <= MOST_COMBS):
        raise SaidError(_how_cells(text))
    cells[-1] = replace(cells[-1], comb=comb, face=face)


def _how_cells(text: str) -> str:
    return say("\u201c{text}\u201d is not clear: write number, kind and place, as 2U 1C 5B.", text=text)


def _cell_items(text: str, words: dict[str, CellKind | None]) -> list[int | tuple[int, Face] | str]:
    items: list[int | tuple[int, Face] | str] = []
    longest = re.compile("|".join(re.escape(word) + r"(?![^\W\d_])" for word in sorted(words, key=len)[::-1]))
    position = 0
    while position < len(text):
        phrase = longest.match(text, position)
        found = phrase or _SIGNS.match(text, position)
        if found is None:
            raise SaidError(_how_cells(text))
        if phrase is not None:
            items.append(phrase[0])
        elif found[1]:
            items.append((int(found[1]), Face(found[2].upper())))
        elif found[3]:
            items.append(int(found[3]))
        elif found[4]:
            if found[4] not in _FILLERS:
                raise SaidError(say("\u201c{word}\u201d is no queen cell: U E C S M or T.", word=found[4]))
            items.append(found[4])
        position = found.end()
    return items


def write_cells(cells: tuple[CellsSaid, ...]) -> str:
    """Queen cells in short: "2 cups, 1 charged 5B"."""
    parts = []
    for cell in cells:
        place = f" {cell.comb}{cell.face or ''}" if cell.comb is not None else ""
        parts.append(f"{cell.count} {kind_written(cell.kind, cell.count)}{place}")
    return ", ".join(parts)


_PLACE: Final = re.compile(r"([0-9]{1,2})([ab])?", re.IGNORECASE)


def read_queen(text: str) -> QueenSaid:
    """Where the queen was and her mark: "5A blue", "5", "blue", "on 5 a"; "seen" and "y" say no more.

    Errors: SaidError, a sentence.
    """
    said = QueenSaid()
    tight = re.sub(r"([0-9])\s+([abAB])\b", r"\1\2", text)
    for word in filter(None, re.split(r"[,;\s]+", tight)):
        place, colour = _PLACE.fullmatch(word), read_colour(word)
        if word.casefold() in {"y", "yes", "seen", "on", say("yes").casefold(), say("seen").casefold()}:
            continue
        if place is not None and said.comb is None and 1 <= int(place[1]) <= MOST_COMBS:
            said = replace(said, comb=int(place[1]), face=Face(place[2].upper()) if place[2] else None)
        elif colour is not None and not said.colour:
            said = replace(said, colour=colour)
        else:
            raise SaidError(
                say("\u201c{word}\u201d is not clear: write where and her mark, as 5A blue.", word=word)
            )
    return said


def write_queen(said: QueenSaid) -> str:
    """A queen in short: "5A blue"; "seen" if neither place nor mark was said."""
    place = f"{said.comb}{said.face or ''}" if said.comb is not None else ""
    colour = say(said.colour) if said.colour in MARK_COLOURS else ""
    return " ".join(filter(None, (place, colour))) or say("seen")
