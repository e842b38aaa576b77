"""What the keeper chooses before printing: the paper, colour or black only, place names or none.

Sizes are those of the sheet held upright. What a sheet says is not decided here.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final


class Paper(StrEnum):
    """The papers a sheet can be printed on."""

    A4 = "A4"
    A5 = "A5"
    LETTER = "Letter"

    @property
    def width_mm(self) -> float:
        """The short edge."""
        return _SIZES_MM[self][0]

    @property
    def height_mm(self) -> float:
        """The long edge."""
        return _SIZES_MM[self][1]


# ISO 216:2007 for A4 and A5; ANSI/ASME Y14.1 size A, 8½ × 11 in, for Letter. Both from memory.
_SIZES_MM: Final = {Paper.A4: (210.0, 297.0), Paper.A5: (148.0, 210.0), Paper.LETTER: (215.9, 279.4)}


@dataclass(frozen=True)
class PaperOptions:
    """How to print. Without place names neither apiary, place nor map reference is printed."""

    paper: Paper = Paper.A4
    colour: bool = True
    place_names: bool = True
