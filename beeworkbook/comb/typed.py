"""A comb as it is typed: letters are contents, digits are eighths.

`E1O2S4H1` both sides alike · `S4 / S2O2` side A, then side B · a letter alone is the whole side ·
`.` what is left is empty comb · `=` looked at and unchanged · `?` not looked at, shown as last time ·
`-` not looked at · `W5` five eighths covered with bees · `Q` queen · `K` and a kind, a queen cell.
Without a slash a queen or a queen cell is on the comb, on neither side; beside a slash it belongs to
that side; after a second slash (`S4 / S2 / Q`) again to the comb. What is not said is not recorded.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final, NoReturn

from beeworkbook.comb.contents import CellKind, Content, Face
from beeworkbook.comb.key_letters import ENGLISH_LETTERS, KeyLetters
from beeworkbook.words import number, say

EIGHTHS: Final = 8.0
_DECIMALS: Final = 6
_SLACK: Final = 1e-5
"""Thirds of a side in percent add up to a hair over eight; that is not an error."""


class SideKind(StrEnum):
    """How a side was typed."""

    EIGHTHS = "eighths"
    UNCHANGED = "unchanged"
    ASSUMED = "assumed"
    NOT_LOOKED = "not_looked"


@dataclass(frozen=True)
class TypedSide:
    """One side as typed. Units: eighths of the side, also for the bees covering it."""

    kind: SideKind = SideKind.EIGHTHS
    eighths: Mapping[Content, float] = field(default_factory=dict)
    rest_empty: bool = False
    bees: float | None = None
    queen: bool = False
    cells: tuple[CellKind, ...] = ()

    @property
    def filled(self) -> float:
        """The eighths said, without an unnamed rest."""
        return round(sum(self.eighths.values()), _DECIMALS)

    @property
    def all_eighths(self) -> dict[Content, float]:
        """The eighths of every content, a rest that is empty comb counted as such."""
        rest = max(0.0, EIGHTHS - self.filled) if self.rest_empty else 0.0
        if not rest:
            return dict(self.eighths)
        return {**self.eighths, Content.EMPTY: self.eighths.get(Content.EMPTY, 0.0) + rest}


@dataclass(frozen=True)
class TypedComb:
    """Both sides of a comb as typed, and the marks on it that nobody gave a side."""

    sides: Mapping[Face, TypedSide] = field(default_factory=dict)
    queen: bool = False
    cells: tuple[CellKind, ...] = ()

    @property
    def alike(self) -> bool:
        """Both sides were typed, the same, with no mark that belongs to one of them."""
        a, b = self.sides.get(Face.A), self.sides.get(Face.B)
        return a is not None and a == b and not a.queen and not a.cells


class TypingError(ValueError):
    """What was typed cannot be read; the position counts letters from 0."""

    def __init__(self, position: int, message: str) -> None:
        super().__init__(message)
        self.position = position
        self.message = message


_KINDS: Final = {"=": SideKind.UNCHANGED, "?": SideKind.ASSUMED, "-": SideKind.NOT_LOOKED}
_AMOUNT: Final = re.compile(r"\s*([0-9]+(?:[.,][0-9]+)?)\s*(%?)")
_LONGEST_AMOUNT: Final = 12


@dataclass
class _Part:
    """What stands between two slashes, while it is read."""

    text: str
    position: int
    end: int
    letters: KeyLetters
    kind: SideKind | None = None
    eighths: dict[Content, float] = field(default_factory=dict)
    bare: bool = False
    rest: bool = False
    bees: float | None = None
    queen: bool = False
    cells: list[CellKind] = field(default_factory=list)

    def read(self) -> "_Part":
        while self.position < self.end:
            if not self.text[self.position].isspace():
                self._read_one(self.text[self.position])
            else:
                self.position += 1
        return self

    def _read_one(self, sign: str) -> None:
        letter = sign.upper()
        if sign in _KINDS:
            self._read_kind(sign)
        elif sign == ".":
            self._read_rest()
        elif letter == self.letters.queen:
            self._see(say("The queen is named twice."), fresh=not self.queen)
            self.queen = True
            self.position += 1
        elif letter == self.letters.queen_cell:
            self._see()
            self._read_queen_cell()
        elif letter == self.letters.bees:
            self._see(say("The bees are named twice."), fresh=self.bees is None)
            self._read_bees()
        elif letter in self.letters.content_of:
            self._read_content(self.letters.content_of[letter])
        else:
            self._refuse(self.position, say("\u201c{letter}\u201d is none of the letters.", letter=sign))

    def _refuse(self, position: int, message: str) -> NoReturn:
        raise TypingError(position, message)

    def _see(self, twice: str = "", *, fresh: bool = True) -> None:
        """Nothing can have been seen on a side that was not looked at, and nothing is said twice."""
        if self.kind in {SideKind.ASSUMED, SideKind.NOT_LOOKED}:
            self._refuse(self.position, say("This side was not looked at, so nothing was seen on it."))
        if not fresh:
            self._refuse(self.position, twice)

    def _read_kind(self, sign: str) -> None:
        if self.kind is not None or self.eighths or self.rest:
            self._refuse(self.position, say("\u201c{sign}\u201d stands alone for a whole side.", sign=sign))
        if sign != "=" and (self.bees is not None or self.queen or self.cells):
            self._refuse(self.position, say("Something was seen on this side, so it was looked at."))
        self.kind = _KINDS[sign]
        self.position += 1

    def _read_rest(self) -> None:
        if self.kind is not None:
            self._refuse(self.position, say("A side without eighths has no rest."))
        if self.rest:
            self._refuse(self.position, say("One point is enough: the rest is empty comb."))
        self.rest = True
        self.position += 1

    def _read_bees(self) -> None:
        start = self.position
        amount = self._amount()
        self.bees = EIGHTHS if amount is None else amount
        self._check_full(start, self.bees)

    def _read_queen_cell(self) -> None:
        start = self.position
        self.position += 1
        while self.position < self.end and self.text[self.position].isspace():
            self.position += 1
        names = " ".join(self.letters.cell_kinds.values())
        if self.position >= self.end:
            self._refuse(start, say("Say what kind of queen cell: {letters}.", letters=names))
        kind = self.letters.kind_of.get(self.text[self.position].upper())
        if kind is None:
            self._refuse(self.position, say("After a queen cell comes its kind: {letters}.", letters=names))
        self.cells.append(kind)
        self.position += 1
        if self._amount_here():
            self._refuse(self.position, say("Name each queen cell by itself, without a number."))

    def _read_content(self, content: Content) -> None:
        start = self.position
        letter = self.letters.contents[content]
        if self.kind is not None:
            self._refuse(start, say("This side is said to be as last time or not looked at."))
        if content in self.eighths:
            self._refuse(start, say("{letter} is named twice on this side.", letter=letter))
        if self.rest:
            self._refuse(start, say("The point stands for the rest: put it after the last content."))
        amount = self._amount()
        if self.bare or (amount is None and self.eighths):
            self._refuse(start, say("A letter alone is the whole side: say how many eighths."))
        self.bare = amount is None
        self.eighths[content] = EIGHTHS if amount is None else amount
        self._check_full(start, sum(self.eighths.values()))

    def _check_full(self, start: int, eighths: float) -> None:
        if eighths > EIGHTHS + _SLACK:
            self._refuse(
                start, say("That makes {eighths} eighths: a side has eight.", eighths=number(eighths))
            )

    def _amount_here(self) -> re.Match[str] | None:
        return _AMOUNT.match(self.text, self.position, self.end)

    def _amount(self) -> float | None:
        """The eighths after a letter, None if there are none."""
        self.position += 1
        found = self._amount_here()
        if found is None:
            return None
        if len(found[1]) > _LONGEST_AMOUNT:
            self._refuse(found.start(1), say("This number is too long."))
        self.position = found.end()
        amount = float(found[1].replace(",", "."))
        return round(amount * EIGHTHS / 100 if found[2] else amount, _DECIMALS)

    def side(self, *, marks: bool) -> TypedSide | None:
        said = self.kind is not None or self.eighths or self.rest or self.bees is not None
        if not said and not (marks and (self.queen or self.cells)):
            return None
        return TypedSide(
            self.kind or SideKind.EIGHTHS,
            dict(self.eighths),
            self.rest,
            self.bees,
            marks and self.queen,
            tuple(self.cells) if marks else (),
        )


def parse_comb(text: str, letters: KeyLetters = ENGLISH_LETTERS) -> TypedComb:
    """What a typed comb says.

    Errors: TypingError with the position of the letter that cannot be read and a sentence.
    Source: the grammar is our own; eighths of a side are common practice (bees-online.at 2020).
    """
    parts = _parts(text, letters)
    if len(parts) == 1:
        both = parts[0].side(marks=False)
        sides = {} if both is None else dict.fromkeys(Face, both)
        return TypedComb(sides, parts[0].queen, tuple(parts[0].cells))
    found = ((face, part.side(marks=True)) for face, part in zip(Face, parts, strict=False))
    sides = {face: side for face, side in found if side is not None}
    if len(parts) == 2:
        return TypedComb(sides)
    return TypedComb(sides, parts[2].queen, tuple(parts[2].cells))


def _parts(text: str, letters: KeyLetters) -> list[_Part]:
    slashes = [place for place, sign in enumerate(text) if sign == "/"]
    if len(slashes) > 2:
        raise TypingError(slashes[2], say("A comb has two sides: one slash, or two before its marks."))
    starts = [0, *(place + 1 for place in slashes)]
    parts = [
        _Part(text, start, end, letters).read()
        for start, end in zip(starts, [*slashes, len(text)], strict=True)
    ]
    if len(parts) == 3 and parts[2].side(marks=False) is not None:
        first = len(text) - len(text[starts[2] :].lstrip())
        raise TypingError(first, say("After the second slash stand only the queen and queen cells."))
    return parts


def parse_so_far(text: str, letters: KeyLetters = ENGLISH_LETTERS) -> tuple[TypedComb, TypingError | None]:
    """What can be read of a comb still being typed, and what stands in the way of the rest."""
    first: TypingError | None = None
    while True:
        try:
            return parse_comb(text, letters), first
        except TypingError as error:
            first = first or error
            text = text[: error.position]


def write_side(side: TypedSide, letters: KeyLetters = ENGLISH_LETTERS, *, gap: str = "") -> str:
    """One side as it would be typed, contents in the order they were said, a gap between them."""
    said = [next((sign for sign, kind in _KINDS.items() if kind is side.kind), "")]
    whole = len(side.eighths) == 1
    said += [
        letters.contents[content] + _written(eighths, whole=whole)
        for content, eighths in side.eighths.items()
    ]
    if side.rest_empty:
        said.append(".")
    if side.bees is not None:
        said.append(letters.bees + _written(side.bees, whole=True))
    said += _marks(letters, side.cells, queen=side.queen)
    return gap.join(filter(None, said))


def write_comb(comb: TypedComb, letters: KeyLetters = ENGLISH_LETTERS, *, gap: str = "") -> str:
    """A comb as it would be typed; reading it again gives the same comb."""
    marks = gap.join(_marks(letters, comb.cells, queen=comb.queen))
    a, b = comb.sides.get(Face.A), comb.sides.get(Face.B)
    seen = a is None or a.kind in {SideKind.EIGHTHS, SideKind.UNCHANGED}
    if (comb.alike or not comb.sides) and (seen or not marks):
        return gap.join(filter(None, [write_side(a, letters, gap=gap) if a else "", marks]))
    parts = ["" if side is None else write_side(side, letters, gap=gap) for side in (a, b)]
    return " / ".join([*parts, marks] if marks else parts).strip()


def _marks(letters: KeyLetters, cells: tuple[CellKind, ...], *, queen: bool) -> list[str]:
    return [letters.queen] * queen + [letters.queen_cell + letters.cell_kinds[kind] for kind in cells]


def _written(eighths: float, *, whole: bool) -> str:
    if whole and eighths == EIGHTHS:
        return ""
    return f"{eighths:.{_DECIMALS}f}".rstrip("0").rstrip(".")
