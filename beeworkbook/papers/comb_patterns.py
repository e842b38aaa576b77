"""The patterns of a comb as page description, made once a content and comb size and used by every side.

The marks come from comb/patterns.py. Marks that stand in a row at even distances become one dashed
line, dots with round ends: a stipple of thousands of dots stays small, and sharp at any size.
"""

import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from functools import lru_cache
from itertools import pairwise
from typing import Final, NamedTuple

import numpy as np

from beeworkbook.comb.lattice import Points
from beeworkbook.comb.patterns import Marks, MarkShape, Pattern, Tile, box_marks, tile
from beeworkbook.papers.page import POINTS, Ink, rgb

_DOT_LENGTH: Final = 0.005
"""A dash of no length is left out by some readers; this one is a dot all the same."""
_EVEN: Final = 1e-3
_TILED: Final = frozenset({MarkShape.FLECK, MarkShape.CROSS})

Row = list[tuple[float, float]]
"""Starts and lengths along one straight line, in order."""


class _Line(NamedTuple):
    """A straight line: its direction and its distance from the origin, rounded to be found again."""

    along_x: float
    along_y: float
    offset: float

    def point(self, at: float) -> tuple[float, float]:
        return (
            self.along_x * at - self.along_y * self.offset,
            self.along_y * at + self.along_x * self.offset,
        )


@lru_cache(maxsize=128)
def pattern_operators(pattern: Pattern, width_mm: float, height_mm: float, ink: Ink, ground: Ink) -> bytes:
    """The pattern over a rectangle, in points from its top left corner, y down.

    ground fills the inside of rings. Units: millimetres on paper.
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
    if not len(marks.lines):
        return
    start, stop = marks.lines[:, :2], marks.lines[:, 2:]
    length = np.hypot(*(stop - start).T)
    along = (stop - start) / length[:, None]
    along *= np.where((along[:, 0] < -_EVEN) | ((abs(along[:, 0]) <= _EVEN) & (along[:, 1] < 0)), -1, 1)[
        :, None
    ]
    begin = np.minimum((start * along).sum(1), (stop * along).sum(1))
    offset = along[:, 0] * start[:, 1] - along[:, 1] * start[:, 0]
    rows: dict[_Line, Row] = defaultdict(list)
    for x, y, off, first, long in zip(
        *(each.round(4).tolist() for each in (*along.T, offset, begin, length)), strict=True
    ):
        rows[_Line(x, y, off)].append((first, long))
    yield f"0 J {_n(marks.line_mm)} w"
    yield from _drawn(rows)


def _dots(marks: Marks, ink: Ink, ground: Ink) -> Iterator[str]:
    """Discs, and rings as discs of the ground on discs of the ink."""
    half = marks.line_mm / 2
    yield from _rows_of_dots(marks.discs, lambda radius: radius)
    if len(marks.rings):
        yield from _rows_of_dots(marks.rings, lambda radius: radius + half)
        yield f"{rgb(ground)} RG"
        yield from _rows_of_dots(marks.rings, lambda radius: radius - half)
        yield f"{rgb(ink)} RG"


def _rows_of_dots(circles: Points, radius_of: Callable[[float], float]) -> Iterator[str]:
    by_size: dict[float, dict[_Line, Row]] = defaultdict(lambda: defaultdict(list))
    for x, y, radius in circles.round(4).tolist():
        by_size[radius][_Line(1.0, 0.0, y)].append((x - _DOT_LENGTH / 2, _DOT_LENGTH))
    for radius, rows in by_size.items():
        yield f"1 J {_n(2 * radius_of(radius))} w"
        yield from _drawn(rows)


def _drawn(rows: dict[_Line, Row]) -> Iterator[str]:
    dashed = ""
    for line, row in rows.items():
        for first, last, dash in _pieces(sorted(row)):
            if dash != dashed:
                yield f"[{dash}] 0 d"
                dashed = dash
            (x0, y0), (x1, y1) = line.point(first), line.point(last)
            yield f"{_n(x0)} {_n(y0)} m {_n(x1)} {_n(y1)} l S"
    if dashed:
        yield "[] 0 d"


def _pieces(row: Row) -> Iterator[tuple[float, float, str]]:
    """First, last and dash of the lines that draw a row: one where its marks are even, else each its own."""
    starts, lengths = [start for start, _ in row], [length for _, length in row]
    steps = [after - before for before, after in pairwise(starts)]
    even = all(abs(step - steps[0]) < _EVEN for step in steps) if steps else False
    if not even or max(lengths) - min(lengths) > _EVEN:
        yield from ((start, start + length, "") for start, length in row)
        return
    period, length = sum(steps) / len(steps), lengths[0]
    if period <= length + _EVEN:
        yield starts[0], starts[-1] + length, ""
        return
    dash = f"{max(length * POINTS, 0.01):.4g} {(period - length) * POINTS:.6g}"
    yield starts[0], starts[-1] + length, dash


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
