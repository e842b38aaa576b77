"""What contents and queen cells are called, in the words of the hive.

The long name stands in legends and sentences, the short one where the brood is plain from its place.
"""

from typing import Final

from beeworkbook.comb.contents import CellFate, CellKind, Content
from beeworkbook.words import say

_LONG: Final[dict[Content, str]] = {
    Content.NOT_RECORDED: "not recorded",
    Content.GAP: "gap, no comb",
    Content.FOUNDATION: "foundation",
    Content.EMPTY: "empty comb",
    Content.EGGS: "eggs",
    Content.OPEN: "open brood",
    Content.SEALED: "sealed brood",
    Content.BROOD: "brood, age not noted",
    Content.DRONE: "drone brood",
    Content.POLLEN: "pollen",
    Content.NECTAR: "nectar or thin syrup",
    Content.STORES: "sealed stores",
}

_SHORT: Final[dict[Content, str]] = {
    Content.NOT_RECORDED: "not recorded",
    Content.GAP: "gap",
    Content.FOUNDATION: "foundation",
    Content.EMPTY: "empty",
    Content.EGGS: "eggs",
    Content.OPEN: "open",
    Content.SEALED: "sealed",
    Content.BROOD: "brood",
    Content.DRONE: "drone",
    Content.POLLEN: "pollen",
    Content.NECTAR: "nectar",
    Content.STORES: "stores",
}

_KINDS: Final[dict[CellKind, str]] = {
    CellKind.PLAY_CUP: "play cup",
    CellKind.WITH_EGG: "queen cell with an egg",
    CellKind.CHARGED: "charged queen cell",
    CellKind.SEALED: "sealed queen cell",
    CellKind.EMERGED: "emerged queen cell",
    CellKind.TORN_DOWN: "torn down queen cell",
}

_FATES: Final[dict[CellFate, str]] = {
    CellFate.LEFT: "left",
    CellFate.CHOSEN: "chosen",
    CellFate.MOVED: "moved",
    CellFate.KNOCKED_DOWN: "knocked down",
}


def content_name(content: Content) -> str:
    """The name of a content in full: "sealed brood"."""
    return say(_LONG[content])


def content_short(content: Content) -> str:
    """The name of a content in a line of eighths: "sealed"."""
    return say(_SHORT[content])


def cell_kind_name(kind: CellKind) -> str:
    """The name of a kind of queen cell: "charged queen cell"."""
    return say(_KINDS[kind])


def cell_fate_name(fate: CellFate) -> str:
    """What was done with a queen cell: "knocked down"."""
    return say(_FATES[fate])
