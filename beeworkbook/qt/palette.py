"""The colours of the book round the comb, light and dark. Plain values, no Qt.

The comb's own colours are in comb/legend.py. State is always said by a word and a shape; these
accents only come third.
"""

from dataclasses import dataclass, fields
from typing import Final


@dataclass(frozen=True)
class Palette:
    """One theme, each colour as "#RRGGBB".

    ground is the window, board what is written on, sunk a field or a bar; rule parts, edge frames a
    control; soon and well are states, propolis is what is overdue and the one accent.
    """

    ground: str
    board: str
    sunk: str
    rule: str
    edge: str
    ink: str
    second_ink: str
    selection: str
    focus: str
    propolis: str
    soon: str
    well: str

    @property
    def surfaces(self) -> tuple[str, ...]:
        """What text may stand on."""
        return self.ground, self.board, self.sunk, self.selection

    @property
    def texts(self) -> tuple[str, ...]:
        """What text may be written in."""
        return self.ink, self.second_ink, self.focus, self.propolis, self.soon, self.well


LIGHT: Final = Palette(
    ground="#E9EDEA",
    board="#F8FAF7",
    sunk="#DCE2DE",
    rule="#B9C3BE",
    edge="#6F7D79",
    ink="#18272B",
    second_ink="#46565A",
    selection="#D3E1E3",
    focus="#0F5C73",
    propolis="#7C2D1E",
    soon="#6A5200",
    well="#245C3A",
)
DARK: Final = Palette(
    ground="#12191B",
    board="#1A2326",
    sunk="#0D1315",
    rule="#33413F",
    edge="#7D8D88",
    ink="#E4EAE5",
    second_ink="#A9B7B2",
    selection="#22383F",
    focus="#7CC4D8",
    propolis="#E39A80",
    soon="#E3C266",
    well="#93CFA6",
)
"""Limewash, slate and propolis. Source: our own design; contrasts are tested by WCAG 2.2."""

COLOUR_NAMES: Final = tuple(field.name for field in fields(Palette))


def palette(*, dark: bool) -> Palette:
    """The colours of the theme."""
    return DARK if dark else LIGHT
