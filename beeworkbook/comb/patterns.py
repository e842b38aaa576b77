"""The marks a content is hatched with: one geometry for the screen and for paper, in millimetres.

On the bench the marks sit on the comb's own cells, so that they do not beat against the walls; in
small pictures and on paper the same marks are laid at a period of their own. Colours and which
content has which pattern are in legend.py; QPainter and PDF only draw what comes from here.
"""

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from typing import Final

import numpy as np

from beeworkbook.comb.lattice import CellIndices, Lattice, Points

Box = tuple[float, float, float, float]
"""Left, top, right, bottom in millimetres."""


class MarkShape(StrEnum):
    """What a pattern is made of; two patterns of one shape differ in direction or in ink."""

    NONE = "none"
    LINE = "line"
    DOT = "dot"
    RING = "ring"
    FLECK = "fleck"
    MESH = "mesh"
    CROSS = "cross"


@dataclass(frozen=True)
class Pattern:
    """One pattern as plain numbers.

    angle_deg is the direction of its lines, anticlockwise from level. dashed: a tick a cell instead of
    lines. spacing: 1 a mark in every cell, 2 in one of four, and for slanting lines their distance
    in cell widths. dense: dots at the corners of the cells too. ink_share: what it covers, 0 to 1.
    Units: strip_mm on the screen and paper_mm on paper are the width of one cell there.
    """

    shape: MarkShape = MarkShape.NONE
    angle_deg: float | None = None
    ink_share: float = 0.0
    dashed: bool = False
    dense: bool = False
    spacing: float = 1.0
    strip_mm: float = 1.5
    paper_mm: float = 1.32


def _no_segments() -> Points:
    return np.empty((0, 4))


def _no_circles() -> Points:
    return np.empty((0, 3))


def _no_flecks() -> Points:
    return np.empty((0, 4, 2))


@dataclass(frozen=True, eq=False)
class Marks:
    """Marks to be drawn in ink, lines and rings line_mm wide with square ends, discs and flecks filled.

    They may overlap: draw them solid, then lay the whole at the ink's strength.
    Shapes: lines (n, 4) x, y to x, y; rings and discs (n, 3) x, y, radius; flecks (n, 4, 2) corners.
    """

    line_mm: float = 0.0
    lines: Points = field(default_factory=_no_segments)
    rings: Points = field(default_factory=_no_circles)
    discs: Points = field(default_factory=_no_circles)
    flecks: Points = field(default_factory=_no_flecks)


@dataclass(frozen=True, eq=False)
class Tile:
    """A rectangle that carries the pattern on when it is repeated edge to edge; clip the marks to it."""

    width_mm: float
    height_mm: float
    marks: Marks


_ROW: Final = math.sqrt(0.75)
"""Distance of two rows of regular cells, in cell widths."""
_FLECK_TURNS: Final = np.array([8.0, 127.0, 61.0, 160.0, 34.0, 98.0, 146.0, 76.0])
_FLECK_CYCLE: Final = 4
_HALF_DIAGONAL: Final = math.sqrt(0.5)


@dataclass(frozen=True, eq=False)
class _Sites:
    """Where cells are: centres (n, 2), their row and column, and the pitches."""

    centres: Points
    row: CellIndices
    column: CellIndices
    pitch_x: float
    pitch_y: float

    def every_fourth(self) -> "_Sites":
        """One cell of four, each lying in the gap between two of the row above."""
        chosen = (self.row % 2 == 0) & ((self.column - self.row // 2) % 2 == 0)
        return _Sites(self.centres[chosen], self.row[chosen], self.column[chosen], self.pitch_x, self.pitch_y)


def cell_marks(pattern: Pattern, lattice: Lattice, cells: CellIndices | None = None) -> Marks:
    """The pattern on these cells of a comb, or on all of them, set on the cells themselves.

    Slanting lines run on from cell to cell and end at the walls of the cells asked for.
    Shapes: cells (k,). Units: millimetres on the comb.
    """
    chosen = np.arange(lattice.cells) if cells is None else cells
    sites = _Sites(
        lattice.centres[chosen],
        lattice.row_of[chosen],
        lattice.column_of[chosen],
        lattice.pitch_x_mm,
        lattice.pitch_y_mm,
    )
    if not _is_slanting(pattern):
        return _site_marks(pattern, sites)
    period = pattern.spacing * lattice.pitch_x_mm
    if cells is None:
        return _slanting(pattern, period, (0.0, 0.0, lattice.width_mm, lattice.height_mm))
    return _slanting_in_cells(pattern, period, sites, lattice.hexagon_mm)


def box_marks(pattern: Pattern, cell_mm: float, box: Box) -> Marks:
    """The pattern on a rectangle, laid at this width of a cell and counted from the origin.

    Two boxes side by side carry on into one another. Marks at the edge reach over it: clip them.
    Units: millimetres of the surface drawn on. Errors: ValueError if cell_mm is not positive.
    """
    if not cell_mm > 0:
        raise ValueError("cell_mm must be positive")
    if _is_slanting(pattern):
        return _slanting(pattern, pattern.spacing * cell_mm, box)
    return _site_marks(pattern, _plain_sites(cell_mm, box))


def tile(pattern: Pattern, cell_mm: float) -> Tile:
    """The least rectangle of the pattern that can be repeated, for a brush or a PDF tiling pattern.

    Units: millimetres of the surface drawn on. Errors: ValueError if cell_mm is not positive.
    """
    columns, rows = (_FLECK_CYCLE, _FLECK_CYCLE) if pattern.shape is MarkShape.FLECK else (1, 2)
    if pattern.spacing > 1:
        columns, rows = 2, 4
    width, height = columns * cell_mm, rows * cell_mm * _ROW
    if _is_slanting(pattern):
        width = height = pattern.spacing * cell_mm * math.sqrt(2)
    return Tile(width, height, box_marks(pattern, cell_mm, (0.0, 0.0, width, height)))


def _is_slanting(pattern: Pattern) -> bool:
    return pattern.shape is MarkShape.LINE and pattern.angle_deg in {45.0, 135.0}


def _plain_sites(cell_mm: float, box: Box) -> _Sites:
    """Cells of a plain lattice from one cell outside the box to one cell outside it."""
    left, top, right, bottom = box
    pitch_y = cell_mm * _ROW
    row_range = np.arange(math.floor(top / pitch_y) - 1, math.ceil(bottom / pitch_y) + 2)
    column_range = np.arange(math.floor(left / cell_mm) - 2, math.ceil(right / cell_mm) + 2)
    row, column = (grid.ravel() for grid in np.meshgrid(row_range, column_range, indexing="ij"))
    x = (column + 0.25 + 0.5 * (row % 2)) * cell_mm
    return _Sites(np.column_stack((x, (row + 0.5) * pitch_y)), row, column, cell_mm, pitch_y)


def _site_marks(pattern: Pattern, sites: _Sites) -> Marks:
    sites = sites.every_fourth() if pattern.spacing > 1 else sites
    inked = pattern.ink_share * sites.pitch_x * sites.pitch_y * pattern.spacing**2
    if pattern.shape in _DRAWN:
        return _DRAWN[pattern.shape](pattern, sites, inked)
    return Marks()


def _lines(pattern: Pattern, sites: _Sites, inked: float) -> Marks:
    if pattern.dashed:
        return Marks(inked / (0.5 * sites.pitch_x), lines=_strokes(sites, 0.0, 0.25 * sites.pitch_x))
    return Marks(inked / sites.pitch_x, lines=_strokes(sites, sites.pitch_x / 2, 0.0))


def _dots(pattern: Pattern, sites: _Sites, inked: float) -> Marks:
    places = _with_corners(sites) if pattern.dense else [sites.centres]
    return Marks(discs=_circles(places, math.sqrt(inked / len(places) / math.pi)))


def _rings(_pattern: Pattern, sites: _Sites, inked: float) -> Marks:
    radius = 0.28 * sites.pitch_x
    return Marks(inked / (2 * math.pi * radius), rings=_circles([sites.centres], radius))


def _strokes(sites: _Sites, half_x: float, half_y: float) -> Points:
    x, y = sites.centres.T
    return np.column_stack((x - half_x, y - half_y, x + half_x, y + half_y))


def _circles(places: Iterable[Points], radius: float) -> Points:
    centres = np.concatenate(list(places))
    return np.column_stack((centres, np.full(len(centres), radius)))


def _with_corners(sites: _Sites) -> list[Points]:
    """Every cell's centre and the corners at its right, which belong to no other cell."""
    corner_x, corner_y = sites.pitch_x / 2, sites.pitch_y / 3
    return [sites.centres + offset for offset in ((0.0, 0.0), (corner_x, -corner_y), (corner_x, corner_y))]


def _mesh(_pattern: Pattern, sites: _Sites, inked: float) -> Marks:
    """Level and upright lines a cell apart; in odd rows the upright ones run between two cells."""
    level = _strokes(sites, sites.pitch_x / 2, 0.0)
    moved = sites.centres - np.column_stack((0.5 * sites.pitch_x * (sites.row % 2), np.zeros(len(sites.row))))
    upright = _Sites(moved, sites.row, sites.column, sites.pitch_x, sites.pitch_y)
    lines = np.concatenate((level, _strokes(upright, 0.0, sites.pitch_y / 2)))
    return Marks(inked / (sites.pitch_x + sites.pitch_y), lines=lines)


def _crosses(_pattern: Pattern, sites: _Sites, inked: float) -> Marks:
    arm = 0.42 * sites.pitch_x * _HALF_DIAGONAL
    falling = _strokes(sites, arm, arm)
    rising = falling[:, [0, 3, 2, 1]]
    # Two strokes of the width w share a square of w²: solve 2·l·w - w² = ink.
    length = 2 * arm * math.sqrt(2)
    return Marks(length - math.sqrt(length**2 - inked), lines=np.concatenate((falling, rising)))


def _flecks(_pattern: Pattern, sites: _Sites, inked: float) -> Marks:
    """Two ragged grains a cell, lying across one another, turned from cell to cell."""
    turn = (sites.row % _FLECK_CYCLE) * 3 + (sites.column % _FLECK_CYCLE) * 5
    both = [
        _grains(sites, _FLECK_TURNS[(turn + half) % len(_FLECK_TURNS)] + 90 * half, inked / 2, side)
        for half, side in ((0, -1.0), (1, 1.0))
    ]
    return Marks(flecks=np.concatenate(both))


def _grains(sites: _Sites, degrees: Points, area: float, side: float) -> Points:
    """Lopsided kites of this area; their length is three times their width."""
    long = math.sqrt(area * 6) / 2
    kite = np.array([(-1.0, 0.1), (-0.25, -0.36), (1.0, -0.1), (0.35, 0.30)]) * long
    kite *= math.sqrt(area / _area(kite))
    angle = np.radians(degrees)
    turned = np.stack((np.cos(angle), -np.sin(angle), np.sin(angle), np.cos(angle)), axis=-1).reshape(
        -1, 2, 2
    )
    shift = side * np.array((0.25 * sites.pitch_x, 0.18 * sites.pitch_y))
    grains: Points = np.einsum("nij,kj->nki", turned, kite)
    return grains + (sites.centres + shift)[:, None, :]


def _area(corners: Points) -> float:
    x, y = corners.T
    return abs(float(np.dot(x, np.roll(y, -1)) - np.dot(y, np.roll(x, -1)))) / 2


def _direction(pattern: Pattern) -> tuple[Points, Points]:
    """Along and across the lines, y down."""
    angle = math.radians(pattern.angle_deg or 0.0)
    along = np.array((math.cos(angle), -math.sin(angle)))
    return along, np.array((-along[1], along[0]))


def _slanting(pattern: Pattern, period: float, box: Box) -> Marks:
    along, across = _direction(pattern)
    corners = np.array([(x, y) for x in (box[0], box[2]) for y in (box[1], box[3])])
    reach = corners @ across / period
    step = np.arange(math.floor(reach.min()), math.ceil(reach.max()) + 1) * period
    ends = np.sort(corners @ along)[[0, -1]] + (-period, period)
    starts, stops = (step[:, None] * across + end * along for end in ends)
    return Marks(pattern.ink_share * period, lines=np.concatenate((starts, stops), axis=1))


def _slanting_in_cells(pattern: Pattern, period: float, sites: _Sites, hexagon: Points) -> Marks:
    """The same lines, each piece cut at the walls of its cell."""
    along, across = _direction(pattern)
    off = sites.centres @ across
    reach = float(np.abs(hexagon @ across).max())
    pieces = []
    for extra in range(math.ceil(2 * reach / period) + 1):
        line = (np.ceil((off - reach) / period) + extra) * period
        pieces.append(_cut(line - off, along, across, hexagon, sites.centres))
    return Marks(pattern.ink_share * period, lines=np.concatenate(pieces))


def _cut(distance: Points, along: Points, across: Points, hexagon: Points, centres: Points) -> Points:
    """The part of a line this far from each centre that lies inside the hexagon; misses are left out."""
    origin = distance[:, None] * across
    wall = np.roll(hexagon, -1, axis=0) - hexagon
    outward = np.column_stack((wall[:, 1], -wall[:, 0]))
    outward *= np.sign(np.einsum("ij,ij->i", outward, hexagon))[:, None]
    room = np.einsum("ij,ij->i", outward, hexagon) - origin @ outward.T
    speed = np.broadcast_to(outward @ along, room.shape)
    with np.errstate(divide="ignore", invalid="ignore"):
        when = room / speed
    stop = np.where(speed > 0, when, np.inf).min(axis=1)
    start = np.where(speed < 0, when, -np.inf).max(axis=1)
    hit = (start < stop) & np.all((speed != 0) | (room >= 0), axis=1)
    base = centres + origin
    ends = (base + start[:, None] * along, base + stop[:, None] * along)
    pieces: Points = np.concatenate(ends, axis=1)[hit]
    return pieces


_DRAWN: Final[Mapping[MarkShape, Callable[[Pattern, _Sites, float], Marks]]] = {
    MarkShape.LINE: _lines,
    MarkShape.DOT: _dots,
    MarkShape.RING: _rings,
    MarkShape.FLECK: _flecks,
    MarkShape.MESH: _mesh,
    MarkShape.CROSS: _crosses,
}
