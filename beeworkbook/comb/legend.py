"""Which colour and which pattern stand for which content, on screen, in print and in the legend.

Plain values: colour arithmetic is in colour.py, the geometry of the marks in patterns.py. One set of
fills with one dark ink serves both themes; tests compute that all can be told apart.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from beeworkbook.comb.contents import KEY_LETTERS, Content, Origin
from beeworkbook.comb.names import content_name
from beeworkbook.comb.patterns import MarkShape, Pattern

INK: Final = "#0B1517"
"""Of every pattern, outline and mark on a comb, in either theme."""
GROUND_LIGHT: Final = "#F7FFFD"
GROUND_DARK: Final = "#141C1F"
"""What is not recorded shows the comb's ground; its edge is dashed."""
WALL_INK: Final = 0.15
OUTLINE_INK: Final = 0.62
"""How strongly the ink of cell walls and of region outlines is laid on screen."""


@dataclass(frozen=True)
class LegendEntry:
    """How one content looks.

    screen_ink is how strongly its pattern is laid on screen, 0 to 1; on paper the ink is solid.
    """

    content: Content
    fill: str
    pattern: Pattern
    screen_ink: float

    @property
    def name(self) -> str:
        """What the legend calls it."""
        return content_name(self.content)


@dataclass(frozen=True)
class Look:
    """How a side shows where its cells come from.

    walls: the single cells are drawn, so each was somebody's to choose. dash_mm: the outlines of its
    regions, on and off in millimetres of screen or paper; empty is a full line. strength: how much
    of the fills is left against the ground.
    """

    walls: bool
    dash_mm: tuple[float, ...]
    strength: float


_LINE, _DOT = MarkShape.LINE, MarkShape.DOT

LEGEND: Final[Mapping[Content, LegendEntry]] = {
    entry.content: entry
    for entry in (
        LegendEntry(Content.EGGS, "#336897", Pattern(_LINE, 90.0, 0.08, dashed=True, paper_mm=1.0), 0.82),
        LegendEntry(Content.OPEN, "#91B8EB", Pattern(MarkShape.RING, None, 0.19, paper_mm=1.0), 0.45),
        LegendEntry(Content.SEALED, "#E3A674", Pattern(_DOT, None, 0.25, dense=True, paper_mm=1.2), 0.36),
        LegendEntry(Content.BROOD, "#7D5F2F", Pattern(_LINE, 135.0, 0.10, spacing=0.875, paper_mm=1.1), 0.70),
        LegendEntry(Content.DRONE, "#6C5F6E", Pattern(_DOT, None, 0.52, paper_mm=1.0), 0.72),
        LegendEntry(Content.POLLEN, "#B76A61", Pattern(MarkShape.FLECK, None, 0.12, paper_mm=1.05), 0.62),
        LegendEntry(Content.NECTAR, "#35939A", Pattern(_LINE, 0.0, 0.12, paper_mm=1.0), 0.50),
        LegendEntry(Content.STORES, "#FBEE99", Pattern(_LINE, 45.0, 0.10, spacing=0.875, paper_mm=1.1), 0.30),
        LegendEntry(Content.EMPTY, "#A2A696", Pattern(_DOT, None, 0.01, spacing=2.0, paper_mm=0.75), 0.60),
        LegendEntry(Content.FOUNDATION, "#D4B4C5", Pattern(MarkShape.MESH, 0.0, 0.14, paper_mm=1.1), 0.26),
        LegendEntry(
            Content.GAP, "#84E9BD", Pattern(MarkShape.CROSS, 45.0, 0.06, spacing=2.0, paper_mm=0.6), 0.50
        ),
        LegendEntry(Content.NOT_RECORDED, GROUND_LIGHT, Pattern(), 0.0),
    )
}
"""In the order of the key letters, then what is not recorded. Source: our own.

Searched for calm (chroma under 45) and apart; a gap is the daylight seen through it, and a tone
nearer to grey could not be told from empty comb and foundation by a tritan eye."""

LOOKS: Final[Mapping[Origin, Look]] = {
    Origin.PAINTED: Look(walls=True, dash_mm=(), strength=1.0),
    Origin.EIGHTHS: Look(walls=False, dash_mm=(0.9, 0.6), strength=1.0),
    Origin.UNCHANGED: Look(walls=False, dash_mm=(0.9, 0.6), strength=1.0),
    Origin.ASSUMED: Look(walls=False, dash_mm=(0.3, 0.6), strength=0.4),
}
"""Laid out from eighths: dashed regions without cells, since their place is the program's guess.
An unchanged side looks like the side it copies; this entry is for when that is not known."""


def fill_of(content: Content, *, dark: bool = False) -> str:
    """The fill as "#RRGGBB"; only the ground of what is not recorded changes with the theme."""
    if content is Content.NOT_RECORDED:
        return GROUND_DARK if dark else GROUND_LIGHT
    return LEGEND[content].fill


def letter_of(content: Content) -> str:
    """The English key letter, empty for what is not recorded."""
    return KEY_LETTERS.get(content, "")
