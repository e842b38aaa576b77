"""Signs drawn as shapes, since the fonts lack some: looked at, an arrow, a cross in a box, a mark.

All centred on a point, in millimetres. Nothing here knows what they stand beside.
"""

import math
from typing import Final, Literal

from beeworkbook.papers.fonts import SMALL_BOLD
from beeworkbook.papers.page import BLACK, THIN_MM, WHITE, Document, Ink
from beeworkbook.papers.rect import Rect

MARK_RADIUS_MM: Final = 2.3


def eye(document: Document, centre: tuple[float, float], width: float = 3.0) -> None:
    """An open eye: looked at."""
    x, y = centre
    half, high = width / 2, width * 0.27
    steps = [index / 8 for index in range(9)]
    lid = [(x - half + width * step, y - high * math.sin(math.pi * step)) for step in steps]
    lower = [(x + half - width * step, y + high * math.sin(math.pi * step)) for step in steps]
    document.shape([*lid, *lower[1:-1]], THIN_MM)
    document.disc((x, y), width * 0.13, fill=BLACK)


def arrow(
    document: Document, tip: tuple[float, float], way: Literal["left", "right", "down"], size: float = 1.9
) -> None:
    """A filled triangle whose point is at the tip."""
    x, y = tip
    half = size * 0.55
    back = {
        "left": [(x + size, y - half), (x + size, y + half)],
        "right": [(x - size, y - half), (x - size, y + half)],
        "down": [(x - half, y - size), (x + half, y - size)],
    }
    document.shape([tip, *back[way]], fill=BLACK)


def cross(document: Document, place: Rect) -> None:
    """A ticked box: two strokes from corner to corner."""
    inner = place.inset(place.width * 0.16)
    document.line((inner.x, inner.y), (inner.right, inner.bottom), 0.5)
    document.line((inner.x, inner.bottom), (inner.right, inner.y), 0.5)


def lettered(document: Document, centre: tuple[float, float], letters: str, ink: Ink = BLACK) -> None:
    """A mark on a comb: a white disc with its letters, as KC or Q, or the number of a note."""
    document.disc(centre, MARK_RADIUS_MM, 0.3, ink, WHITE)
    document.text(
        centre[0], centre[1] + SMALL_BOLD.height_mm / 2, letters, SMALL_BOLD, align="middle", ink=ink
    )
