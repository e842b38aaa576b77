"""What a cell can hold, and what can be marked on a comb.

The codes are written into every workbook and are fixed for ever: a retired code is never used
again. Key letters are what the keeper types; notation letters are what files hold, and only the
key letters may be changed by a translation.
"""

from enum import IntEnum, StrEnum
from typing import Final


class Content(IntEnum):
    """The one thing a cell holds. The value is the byte stored for it."""

    NOT_RECORDED = 0
    GAP = 1
    FOUNDATION = 2
    EMPTY = 3
    EGGS = 4
    OPEN = 5
    SEALED = 6
    BROOD = 7
    DRONE = 8
    POLLEN = 9
    NECTAR = 10
    STORES = 11


class CellKind(StrEnum):
    """The kinds of queen cell a keeper tells apart."""

    PLAY_CUP = "play_cup"
    WITH_EGG = "with_egg"
    CHARGED = "charged"
    SEALED = "sealed"
    EMERGED = "emerged"
    TORN_DOWN = "torn_down"


class CellFate(StrEnum):
    """What the keeper did with a queen cell."""

    LEFT = "left"
    CHOSEN = "chosen"
    MOVED = "moved"
    KNOCKED_DOWN = "knocked_down"


class MarkKind(StrEnum):
    """What a mark says."""

    QUEEN = "queen"
    QUEEN_CELL = "queen_cell"
    NOTE = "note"


class Origin(StrEnum):
    """How a side came to be. An assumed side is never counted anywhere."""

    PAINTED = "painted"
    EIGHTHS = "eighths"
    UNCHANGED = "unchanged"
    ASSUMED = "assumed"


class Face(StrEnum):
    """A faces the wall beside comb 1, B the other way (DEVELOPERS.md, the view convention)."""

    A = "A"
    B = "B"

    @property
    def other(self) -> "Face":
        """The other side of the same comb."""
        return Face.B if self is Face.A else Face.A


CONTENTS: Final = tuple(Content)

WORKER_BROOD: Final = (Content.EGGS, Content.OPEN, Content.SEALED, Content.BROOD)
ALL_BROOD: Final = (*WORKER_BROOD, Content.DRONE)

KEY_LETTERS: Final[dict[Content, str]] = {
    Content.EGGS: "E",
    Content.OPEN: "O",
    Content.SEALED: "S",
    Content.BROOD: "B",
    Content.DRONE: "D",
    Content.POLLEN: "P",
    Content.NECTAR: "N",
    Content.STORES: "H",
    Content.EMPTY: "C",
    Content.FOUNDATION: "F",
    Content.GAP: "G",
}
"""In the order of the legend. Not recorded has no key: it is what was not said."""

NOTATION_LETTERS: Final[dict[Content, str]] = {Content.NOT_RECORDED: "_", **KEY_LETTERS}
"""Fixed for ever: the letters of the text notation in files."""

CELL_KIND_LETTERS: Final[dict[CellKind, str]] = {
    CellKind.PLAY_CUP: "U",
    CellKind.WITH_EGG: "E",
    CellKind.CHARGED: "C",
    CellKind.SEALED: "S",
    CellKind.EMERGED: "M",
    CellKind.TORN_DOWN: "T",
}

BEES_LETTER: Final = "W"
QUEEN_LETTER: Final = "Q"
QUEEN_CELL_LETTER: Final = "K"
