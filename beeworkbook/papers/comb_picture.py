"""A comb as vector page description: each content is filled, outlined and clipped in one path.

Outlines come from comb/outline.py, colours and patterns from comb/legend.py; this only writes them
down. Painted sides have full outlines, laid-out ones dashed, assumed ones dotted and pale without
patterns.
"""

from collections.abc import Sequence
from functools import cache, lru_cache
from typing import Final

import numpy as np
import numpy.typing as npt

from beeworkbook.colony.sheet_models import SheetSide
from beeworkbook.comb.colour import rgb_of
from beeworkbook.comb.contents import Content, Origin
from beeworkbook.comb.lattice import Lattice
from beeworkbook.comb.legend import INK, LEGEND, LOOKS
from beeworkbook.comb.outline import simplified_outlines
from beeworkbook.papers.comb_patterns import pattern_operators
from beeworkbook.papers.page import BLACK, POINTS, WHITE, Document, Ink, rgb
from beeworkbook.papers.rect import Rect

_TOLERANCE_MM: Final = 2.0
"""Of comb. Half the zigzag of a row of cells is 1.6 mm, so straight borders become straight lines."""
_STEPS: Final = 10
"""Corners are whole tenths of a point: 0.035 mm, under a dot of a 600 dpi printer."""
_FULL_LINE: Final = 0.25
_BROKEN_LINE: Final = 0.18
_REACH: Final = 1 << 15
"""More than any corner's place, so that two corners make one number."""

Corners = npt.NDArray[np.intp]


def draw_comb(document: Document, place: Rect, lattice: Lattice, side: SheetSide) -> None:
    """Draw what a side holds into its place on the page."""
    if side.cells is None:
        return
    look = LOOKS[_shown_as(side)]
    dash = " ".join(f"{length * POINTS * _STEPS:.0f}" for length in look.dash_mm)
    scale = place.width / lattice.width_mm * POINTS * _STEPS
    paths, border = _described(lattice, side.cells.tobytes(), scale, dash)
    parts = [_opening(document, place)]
    for content, path in paths:
        fill = _fill(content, look.strength, colour=document.options.colour)
        parts.append(_region(path, fill, outlined=not dash))
        if side.origin is not Origin.ASSUMED:
            form = pattern_form(document, content, place.width, place.height, _STEPS)
            parts.append(document.show_form(form))
        parts.append("Q")
    document.describe("\n".join((*parts, border, "Q")))


@lru_cache(maxsize=256)
def _described(
    lattice: Lattice, cells: bytes, scale: float, dash: str
) -> tuple[tuple[tuple[Content, str], ...], str]:
    """Every content's rings as a path, and the broken border between contents where there is a dash.

    Kept, since a sheet is looked at before it is printed, and once more when it is saved.
    """
    outlines = {
        content: [np.rint(ring * scale).astype(np.intp) for ring in rings]
        for content, rings in simplified_outlines(
            lattice, np.frombuffer(cells, np.uint8), _TOLERANCE_MM
        ).items()
    }
    paths = tuple(
        (content, " ".join(_ring(ring) for ring in rings))
        for content, rings in outlines.items()
        if content is not Content.NOT_RECORDED
    )
    return paths, _border(list(outlines.values()), dash) if dash and paths else ""


def _shown_as(side: SheetSide) -> Origin:
    """An unchanged side looks like what it copies."""
    if side.origin is Origin.UNCHANGED and side.grain is not None:
        return side.grain
    return side.origin or Origin.PAINTED


def _opening(document: Document, place: Rect) -> str:
    left, top = place.x * POINTS, (document.height_mm - place.y) * POINTS
    scale = f"{1 / _STEPS} 0 0 {-1 / _STEPS} {left:.2f} {top:.2f} cm"
    return f"q {scale} 1 j {_line(_FULL_LINE)} w {rgb(_ink(document))} RG"


def _line(mm: float) -> str:
    return f"{mm * POINTS * _STEPS:.1f}"


def _region(path: str, fill: Ink | None, *, outlined: bool) -> str:
    """One content: its path is filled and outlined and clips what follows."""
    paint = {(True, True): "B*", (True, False): "f*", (False, True): "S", (False, False): "n"}
    colour = f"{rgb(fill)} rg " if fill is not None else ""
    return f"q {colour}{path} W* {paint[fill is not None, outlined]}"


def _ring(ring: Corners) -> str:
    return ("%d %d m " + "%d %d l " * (len(ring) - 1) + "h") % tuple(ring.ravel().tolist())


def _border(regions: Sequence[Sequence[Corners]], dash: str) -> str:
    """Where two contents meet, once: drawn from both sides, two dashed lines would close each other's gaps.

    The edge of the comb has but one side and is left to the frame.
    """
    start = np.concatenate([ring for rings in regions for ring in rings])
    stop = np.concatenate([np.roll(ring, -1, axis=0) for rings in regions for ring in rings])
    turned = (start[:, 0] > stop[:, 0]) | ((start[:, 0] == stop[:, 0]) & (start[:, 1] > stop[:, 1]))
    low, high = np.where(turned[:, None], stop, start), np.where(turned[:, None], start, stop)
    key = ((low[:, 0] * _REACH + low[:, 1]) * _REACH + high[:, 0]) * _REACH + high[:, 1]
    _, first, times = np.unique(key, return_index=True, return_counts=True)
    shared = np.sort(first[times > 1])
    if not len(shared):
        return ""
    parts = [f"{_line(_BROKEN_LINE)} w [{dash}] 0 d"]
    at = (-1, -1)
    for (x0, y0), (x1, y1) in zip(start[shared].tolist(), stop[shared].tolist(), strict=True):
        parts.append(f"{x1} {y1} l" if at == (x0, y0) else f"{x0} {y0} m {x1} {y1} l")
        at = (x1, y1)
    return " ".join([*parts, "S"])


@cache
def _fill(content: Content, strength: float, *, colour: bool) -> Ink | None:
    """The fill of a region, paler where it is assumed; black only leaves the paper white."""
    return _mixed(_rgb_of(LEGEND[content].fill), WHITE, strength) if colour else None


def pattern_form(document: Document, content: Content, width: float, height: float, steps: int = 1) -> str:
    """The name of the form that is a content's pattern over such a rectangle, kept at first use.

    Units: millimetres; shown where 1/steps of a point is the unit and y runs down.
    """
    name = _form_name(content, width, height, steps)
    document.keep_form(name, width, height, lambda: _pattern(document, content, width, height), steps=steps)
    return name


@cache
def _form_name(content: Content, width: float, height: float, steps: int) -> str:
    return f"P{content:d}.{width * 10:.0f}.{height * 10:.0f}.{steps}"


def _pattern(document: Document, content: Content, width: float, height: float) -> bytes:
    entry, colour = LEGEND[content], document.options.colour
    fill = _fill(content, 1.0, colour=colour) or WHITE
    ink = _mixed(_ink(document), fill, entry.screen_ink) if colour else BLACK
    return pattern_operators(entry.pattern, width, height, ink, fill)


def _ink(document: Document) -> Ink:
    return _rgb_of(INK) if document.options.colour else BLACK


@cache
def _rgb_of(hexes: str) -> Ink:
    red, green, blue = rgb_of(hexes).tolist()
    return red, green, blue


def _mixed(top: Ink, ground: Ink, strength: float) -> Ink:
    red, green, blue = (a * strength + b * (1 - strength) for a, b in zip(top, ground, strict=True))
    return red, green, blue


def content_fill(content: Content) -> Ink:
    """The fill of a content as the papers take it."""
    return _rgb_of(LEGEND[content].fill)
