"""The patterns of a comb as page description, made once a content and comb size and used by every side.

The marks come from comb/patterns.py. Marks that stand in a row at even distances become one dashed
line, dots with round ends: a stipple of thousands of dots stays small, and sharp at any size.
"""

import math
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import Final, NamedTuple

import numpy as np

from beeworkbook.comb.lattice import CellIndices, Points
from beeworkbook.comb.patterns import Marks, MarkShape, Pattern, Tile, box_marks, tile
from beeworkbook.papers.page import POINTS, Ink, rgb

_DOT_LENGTH: Final = 0.005
"""A dash of no length is left out by some readers; this one is a dot all the same."""
_EVEN: Final = 1e-3
_TILED: Final = frozenset({MarkShape.FLECK, MarkShape.CROSS})


@lru_cache(maxsize=128)
def pattern_operators(pattern: Pattern, width_mm: float, height_mm: float, ink: Ink, ground: Ink) -> bytes:
    """The pattern over a rectangle, in points from its top left corner, y down.

    ground fills the inside of rings. Kept, as every sheet of one kind of frame uses the same.
    Units: millimetres on paper.
    """
    parts = [f"{rgb(ink)} RG", f"{rgb(ink)} rg"]
    if pattern.shape in _TILED:
        parts += _tiles(pattern, width_mm, height_mm)
    else:
        marks = box_marks(pattern, pattern.paper_mm, (0.0, 0.0, width_mm, height_mm))
        parts += (*_strokes(marks), *_dots(marks, ink, ground))
    return " ".join(parts).encode("ascii")


def _n(mm: float) -> str:
    return f"{mm * POINTS:.2f}".rstrip("0").rstrip(".")


def _strokes(marks: Marks) -> Iterator[str]:
    """Straight lines, level, upright or slanting."""
    if not len(marks.lines):
        return
    start, stop = marks.lines[:, :2], marks.lines[:, 2:]
    length = np.hypot(*(stop - start).T)
    along = (stop - start) / length[:, None]
    backwards = (along[:, 0] < -_EVEN) | ((abs(along[:, 0]) <= _EVEN) & (along[:, 1] < 0))
    along *= np.where(backwards, -1, 1)[:, None]
    begin = np.minimum((start * along).sum(1), (stop * along).sum(1))
    yield f"0 J {_n(marks.line_mm)} w"
    yield from _rows(along, along[:, 0] * start[:, 1] - along[:, 1] * start[:, 0], begin, length)


def _dots(marks: Marks, ink: Ink, ground: Ink) -> Iterator[str]:
    """Discs, and rings as discs of the ground on discs of the ink."""
    half = marks.line_mm / 2
    yield from _rows_of_dots(marks.discs, 0.0)
    if len(marks.rings):
        yield from _rows_of_dots(marks.rings, half)
        yield f"{rgb(ground)} RG"
        yield from _rows_of_dots(marks.rings, -half)
        yield f"{rgb(ink)} RG"


def _rows_of_dots(circles: Points, wider: float) -> Iterator[str]:
    for radius in np.unique(circles[:, 2].round(4)):
        x, y = circles[circles[:, 2].round(4) == radius, :2].T
        yield f"1 J {_n(2 * (radius + wider))} w"
        yield from _rows(
            np.tile((1.0, 0.0), (len(x), 1)), y, x - _DOT_LENGTH / 2, np.full(len(x), _DOT_LENGTH)
        )


def _rows(along: Points, offset: Points, start: Points, length: Points) -> Iterator[str]:
    """Marks on straight lines: those evenly apart on one line are drawn as one, dashed or closed up.

    A line has a direction and a distance from the origin; marks start and are so long along it.
    Shapes: along (n, 2), the others (n,). Units: millimetres.
    """
    keys = np.column_stack((along, offset)).round(3)
    order = np.lexsort((start, *keys.T))
    keys, start, length = keys[order], start[order], length[order]
    first = np.flatnonzero(np.append(True, (np.diff(keys, axis=0) != 0).any(axis=1)))
    pieces = _pieces(first, start, length)
    x, y = along[order[pieces.row]].T
    away = offset[order[pieces.row]]
    ends = [(x * at - y * away, y * at + x * away) for at in (pieces.begin, pieces.end)]
    places = np.column_stack([each for point in ends for each in point]).tolist()
    dashed = ""
    for (x0, y0, x1, y1), dash in zip(places, pieces.dash, strict=True):
        if dash != dashed:
            yield f"[{dash}] 0 d"
            dashed = dash
        yield f"{_n(x0)} {_n(y0)} m {_n(x1)} {_n(y1)} l S"
    if dashed:
        yield "[] 0 d"


class _Pieces(NamedTuple):
    """What draws the marks of all rows: where each piece begins and ends, its dash, its row's first mark."""

    row: CellIndices
    begin: Points
    end: Points
    dash: list[str]


def _pieces(first: CellIndices, start: Points, length: Points) -> _Pieces:
    """One line for a row whose marks are even, else a line for every mark. first: of each row."""
    count = np.diff(np.append(first, len(start)))
    last = first + count - 1
    period = (start[last] - start[first]) / np.maximum(count - 1, 1)
    off = np.abs(np.diff(start, append=0.0) - np.repeat(period, count))
    off[last] = 0.0  # the next mark is of another row
    spread = np.maximum.reduceat(length, first) - np.minimum.reduceat(length, first)
    even = (count > 1) & (spread < _EVEN) & (np.maximum.reduceat(off, first) < _EVEN)
    row = np.repeat(np.arange(len(first)), count)
    drawn = ~even[row]
    drawn[first] = True
    row, at = row[drawn], np.flatnonzero(drawn)
    ends = np.where(even[row], last[row], at)
    gap = np.where(even, period - length[first], 0.0)
    dashes = [
        f"{max(one * POINTS, 0.01):.4g} {wide * POINTS:.6g}" if wide > _EVEN else ""
        for one, wide in zip(length[first].tolist(), gap.tolist(), strict=True)
    ]
    return _Pieces(first[row], start[at], start[ends] + length[ends], [dashes[each] for each in row.tolist()])


def _tiles(pattern: Pattern, width_mm: float, height_mm: float) -> Iterator[str]:
    """Marks that stand in no straight row, tile by tile: the same words again and again pack to nothing."""
    one = tile(pattern, pattern.paper_mm)
    across, down = math.ceil(width_mm / one.width_mm) + 2, math.ceil(height_mm / one.height_mm) + 2
    words = _tile_words(one)
    step = f"1 0 0 1 {_n(one.width_mm)} 0 cm "
    yield f"{_n(one.marks.line_mm)} w"
    for row in range(down):
        x, y = _n(-one.width_mm), _n((row - 1) * one.height_mm)
        yield f"q 1 0 0 1 {x} {y} cm " + (words + " " + step) * across + "Q"


def _tile_words(one: Tile) -> str:
    """The marks whose middle lies in the tile: each belongs to one tile and is drawn whole."""
    flecks = _in_tile(one, one.marks.flecks)
    lines = _in_tile(one, one.marks.lines.reshape(-1, 2, 2))
    shapes = [*map(_shape, flecks.tolist()), "f"] if len(flecks) else []
    strokes = [*map(_shape, lines.tolist()), "S"] if len(lines) else []
    return " ".join((*shapes, *strokes))


def _in_tile(one: Tile, marks: Points) -> Points:
    middle = marks.mean(axis=1)
    inside: Points = marks[((middle >= 0) & (middle < (one.width_mm, one.height_mm))).all(axis=1)]
    return inside


def _shape(corners: Iterable[Iterable[float]]) -> str:
    points = [f"{_n(x)} {_n(y)}" for x, y in corners]
    return f"{points[0]} m " + " ".join(f"{point} l" for point in points[1:])
