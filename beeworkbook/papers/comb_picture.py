"""A comb as vector page description: each content is filled, outlined and clipped in one path.

Outlines come from comb/outline.py, colours and patterns from comb/legend.py; this only writes them
down. Painted sides have full outlines, laid-out ones dashed, assumed ones dotted and pale without
patterns.
"""

from collections.abc import Iterable, Mapping, Sequence
from functools import cache, lru_cache
from typing import Final

import numpy as np

from beeworkbook.colony.sheet_models import SheetComb, SheetSide
from beeworkbook.comb.colour import rgb_of
from beeworkbook.comb.contents import Content, Origin
from beeworkbook.comb.lattice import Lattice
from beeworkbook.comb.legend import INK, LEGEND, LOOKS
from beeworkbook.comb.outline import Outlines, outlines_of_sides
from beeworkbook.papers.comb_patterns import pattern_operators
from beeworkbook.papers.page import BLACK, POINTS, WHITE, Document, Ink, rgb
from beeworkbook.papers.rect import Rect

_TOLERANCE_MM: Final = 2.0
"""Of comb. Half the zigzag of a row of cells is 1.6 mm, so straight borders become straight lines."""
_STEPS: Final = 10
"""Corners are whole tenths of a point: 0.035 mm, under a dot of a 600 dpi printer."""
_FULL_LINE: Final = 0.25
_BROKEN_LINE: Final = 0.18

Drawn = Mapping[SheetSide, Outlines]
"""The outlines of the sides of a sheet."""


def comb_outlines(combs: Iterable[SheetComb]) -> Drawn:
    """The outlines of all sides of these combs that hold something, worked out together."""
    found = [
        (comb.lattice, side)
        for comb in combs
        for side in (comb.side_a, comb.side_b)
        if side.cells is not None
    ]
    cells = tuple((lattice, side.cells.tobytes()) for lattice, side in found if side.cells is not None)
    return dict(zip((side for _, side in found), _outlines_of(cells), strict=True))


@lru_cache(maxsize=8)
def _outlines_of(sides: tuple[tuple[Lattice, bytes], ...]) -> tuple[Outlines, ...]:
    """Kept, since a sheet is looked at before it is printed, and once more when it is saved."""
    return outlines_of_sides(
        ((lattice, np.frombuffer(cells, np.uint8)) for lattice, cells in sides), _TOLERANCE_MM
    )


def draw_comb(document: Document, place: Rect, lattice: Lattice, side: SheetSide, outlines: Outlines) -> None:
    """Draw what a side holds, by its outlines, into its place on the page."""
    look = LOOKS[_shown_as(side)]
    dash = " ".join(f"{length * POINTS * _STEPS:.0f}" for length in look.dash_mm)
    scale = place.width / lattice.width_mm * POINTS * _STEPS
    paths, border = _described(outlines, scale, dash)
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
def _described(outlines: Outlines, scale: float, dash: str) -> tuple[tuple[tuple[Content, str], ...], str]:
    """Every content's rings as a path, and the broken border between contents where there is a dash."""
    corners = [f"{x} {y}" for x, y in np.rint(outlines.points * scale).astype(np.intp).tolist()]
    begins = outlines.begins.tolist()
    paths: dict[Content, list[str]] = {}
    for content, begin, end in zip(outlines.contents, begins[:-1], begins[1:], strict=True):
        if content is not Content.NOT_RECORDED:
            paths.setdefault(content, []).append(f"{_path(corners[begin:end])} h")
    border = _border(outlines, corners, dash) if dash and paths else ""
    return tuple((content, " ".join(rings)) for content, rings in paths.items()), border


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


def _path(corners: Sequence[str]) -> str:
    """From the first corner on to all others."""
    return f"{corners[0]} m {' l '.join(corners[1:])} l"


def _border(outlines: Outlines, corners: Sequence[str], dash: str) -> str:
    """Where two contents meet, once: drawn from both sides, two dashed lines would close each other's gaps.

    The edge of the comb has but one side and is left to the frame.
    """
    lines = [_path([corners[at] for at in border]) for border in outlines.borders]
    return " ".join((f"{_line(_BROKEN_LINE)} w [{dash}] 0 d", *lines, "S")) if lines else ""


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
