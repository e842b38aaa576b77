"""What the papers print, as values: a comb sheet blank or filled, and a round sheet.

Built from a workbook elsewhere and handed to the papers, which never see a book. Sentences and
figures arrive in words, since screen and paper say the same. Nothing here draws or reads.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, time
from typing import Final

from beeworkbook.colony.records import Mark, PartKind, Question, Reply, Way
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.comb.lattice import Cells, Lattice

_CODE_LETTERS: Final = "23456789ACDEFGHJKMNPQRTUVWXY"
"""No 0, 1, B, I, L, O, S, Z: a code is also read by eye and typed by hand."""
_CODE_LENGTH: Final = 4
_CODE_ROOM: Final = len(_CODE_LETTERS) ** _CODE_LENGTH
_CODE_STEP: Final = 237_911
"""Coprime to the room, so that every number has its own code and neighbours do not look alike."""
LOOSE_CODE: Final = "LOOSE"
"""Printed on a sheet that no workbook keeps; no sheet code is spelled so, since it has no L, O or S."""


@dataclass(frozen=True, eq=False)
class SheetSide:
    """One side of a comb on the sheet: what it was last time, and on a filled sheet what it is.

    `last` is the last visit's figures in letters, e.g. "E1 O2 S3 H1", empty if there are none and on a
    filled sheet, which does not print them.
    `cells` None means not looked at (and nothing assumed). `bees_eighths` is bees covering.
    `figures` is the side's figures in letters for a filled sheet, like `last`.
    An ASSUMED side is drawn paler and never has figures.
    """

    face: Face
    last: str = ""
    last_day: date | None = None
    cells: Cells | None = None
    origin: Origin | None = None
    grain: Origin | None = None
    bees_eighths: float | None = None
    figures: str = ""
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, eq=False)
class SheetComb:
    """One comb in its place, both sides. `marks` are those of the comb without a side."""

    place: int
    frame_name: str
    lattice: Lattice
    side_a: SheetSide = field(default_factory=lambda: SheetSide(Face.A))
    side_b: SheetSide = field(default_factory=lambda: SheetSide(Face.B))
    name: str = ""
    marks: tuple[Mark, ...] = ()

    def side(self, face: Face) -> SheetSide:
        """The side that shows this face."""
        return self.side_a if face is Face.A else self.side_b


@dataclass(frozen=True, eq=False)
class SheetBox:
    """A box with its combs by place; places without a comb are told in `remark` ("11 dummy board")."""

    kind: PartKind
    name: str
    combs: tuple[SheetComb, ...]
    places: int = 0
    remark: str = ""


@dataclass(frozen=True)
class SheetAnswer:
    """An answer as typed and, where the question has one, its reply."""

    typed: str
    reply: Reply | None = None


@dataclass(frozen=True)
class SheetFeed:
    """Feed in words as the keeper says it: what was given, and what was left of the last."""

    given: str = ""
    left: str = ""


@dataclass(frozen=True)
class SheetVisit:
    """The Page of one day: what a filled sheet says beside its combs, or what last time said.

    `combs` is what its combs say, in short words, in the fields where nothing was typed or they say something
    else; `heft` its two pulls.
    """

    day: date
    at: time | None = None
    who: str = ""
    weather: str = ""
    temperature_c: float | None = None
    flowering: str = ""
    answers: Mapping[Question, SheetAnswer] = field(default_factory=dict)
    feed: SheetFeed = field(default_factory=SheetFeed)
    sentences: tuple[str, ...] = ()
    note: str = ""
    next_day: date | None = None
    next_reason: str = ""
    marks: tuple[Mark, ...] = ()
    combs: Mapping[Question, str] = field(default_factory=dict)
    heft: str = ""


@dataclass(frozen=True, eq=False)
class CombSheetModel:
    """A comb sheet of one colony. `visit` None makes it a blank one, to be filled in at the hive.

    `code` names this print for good (sheet_code), `revision` counts prints of the same sheet.
    `day` is the day it is made for. `bring` is what the dues say to carry, in words.
    """

    code: str
    revision: int
    colony_name: str
    stand_name: str
    day: date
    way: Way
    boxes: tuple[SheetBox, ...]
    apiary_name: str = ""
    place: str = ""
    map_reference: str = ""
    hive_name: str = ""
    queen: str = ""
    last: SheetVisit | None = None
    visit: SheetVisit | None = None
    bring: tuple[str, ...] = ()


@dataclass(frozen=True)
class RoundSheetRow:
    """One colony of a round: where it stands, last time in small print, and what to bring.

    `passed` says that it was passed over since last time, and why.
    """

    stand_name: str
    colony_name: str
    hive: str = ""
    last: SheetVisit | None = None
    due: str = ""
    bring: tuple[str, ...] = ()
    passed: str = ""


@dataclass(frozen=True)
class RoundSheetModel:
    """A row a colony in stand order. `left_out` are the questions this round does not ask."""

    apiary_name: str
    day: date
    rows: tuple[RoundSheetRow, ...]
    place: str = ""
    map_reference: str = ""
    left_out: frozenset[Question] = frozenset()
    bring: tuple[str, ...] = ()


def sheet_code(number: int) -> str:
    """The code printed on a sheet: four letters or digits and one that checks them.

    A code is unique among 614,656 numbers of one workbook.
    Errors: ValueError if the number is negative.
    """
    if number < 0:
        raise ValueError("a sheet's number is not negative")
    rest = (number * _CODE_STEP + _CODE_STEP) % _CODE_ROOM
    letters = []
    for _ in range(_CODE_LENGTH):
        rest, place = divmod(rest, len(_CODE_LETTERS))
        letters.append(_CODE_LETTERS[place])
    code = "".join(letters)
    return code + _check_letter(code)


def is_sheet_code(code: str) -> bool:
    """Whether this can be a sheet's code: right letters, right check letter."""
    body = code[:-1]
    return (
        len(code) == _CODE_LENGTH + 1
        and all(letter in _CODE_LETTERS for letter in body)
        and _check_letter(body) == code[-1]
    )


def _check_letter(body: str) -> str:
    # Weights without a factor of 28, so that a slip of one letter by any amount is noticed.
    weights = (1, 3, 5, 9)
    total = sum(weight * _CODE_LETTERS.index(letter) for weight, letter in zip(weights, body, strict=True))
    return _CODE_LETTERS[total % len(_CODE_LETTERS)]
