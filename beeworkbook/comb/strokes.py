"""Painting with a brush: the cells it sweeps over, and a stroke from its first point to its patch.

A brush covers few cells at a time, so it is worked out row by row in plain Python, which for a
few dozen cells is quicker than arrays. Larger figures are in regions.py.
"""

import math

import numpy as np

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import CellIndices, Cells, Lattice, Point
from beeworkbook.comb.regions import masked
from beeworkbook.comb.side import CellPatch


def sweep(lattice: Lattice, start: Point, end: Point, radius_mm: float) -> CellIndices:
    """Cells whose centre lies under the brush while it moves from start to end.

    Shapes: result (k,) ascending, no repeats. Units: millimetres on the comb.
    Errors: ValueError if radius_mm is not positive and finite.
    Source: plain geometry.
    """
    _check_radius(radius_mm)
    return np.array(_cells_under(lattice, start, end, radius_mm), np.intp)


class Stroke:
    """One stroke in hand: what the brush has covered since it was put down.

    A brush too small to be sure of a centre paints the cell its point lies in.
    Units: millimetres on the comb. Errors: ValueError if radius_mm is not positive and finite.
    """

    def __init__(
        self,
        lattice: Lattice,
        content: Content,
        radius_mm: float,
        only: frozenset[Content] | None = None,
    ) -> None:
        _check_radius(radius_mm)
        self.lattice = lattice
        self.content = content
        self.radius_mm = radius_mm
        self.only = only
        self._last: Point | None = None
        self._covered: set[int] = set()
        corner = lattice.hexagon_mm[2]
        self._is_pencil = radius_mm < float(corner[1])

    @property
    def covered(self) -> CellIndices:
        """Every cell covered so far, ascending."""
        return np.array(sorted(self._covered), np.intp)

    def begin(self, point: Point) -> CellIndices:
        """Put the brush down: the cells under it, ascending. A stroke begun again starts afresh."""
        self._covered.clear()
        self._last = point
        return self.move(point)

    def move(self, point: Point) -> CellIndices:
        """Draw the brush to this point: the cells newly covered, ascending.

        Errors: ValueError if the stroke was not begun.
        """
        last = self._last
        if last is None:
            raise ValueError("the stroke was not begun")
        self._last = point
        covered = self._covered
        fresh = [
            cell for cell in _cells_under(self.lattice, last, point, self.radius_mm) if cell not in covered
        ]
        if self._is_pencil:
            fresh = sorted({*fresh, *_cells_along(self.lattice, last, point)} - covered)
        covered.update(fresh)
        return np.array(fresh, np.intp)

    def patch(self, cells: Cells) -> CellPatch:
        """What the stroke changes on this side, within its mask; unchanged cells left out."""
        return CellPatch.painting(cells, masked(cells, self.covered, self.only), self.content)


def _check_radius(radius_mm: float) -> None:
    if not 0 < radius_mm < math.inf:
        raise ValueError("radius_mm must be positive")


def _cells_along(lattice: Lattice, start: Point, end: Point) -> set[int]:
    """Cells the bare point passes through, looked at every quarter of a cell."""
    steps = math.ceil(math.dist(start, end) / (lattice.pitch_x_mm / 4)) + 1
    points = np.linspace(start, end, steps)
    return set(lattice.cells_at(points).tolist()) - {-1}


def _cells_under(lattice: Lattice, start: Point, end: Point, radius: float) -> list[int]:
    """The cells under a moving brush, ascending: what it sweeps is convex, so a row meets it once.

    Seen from its upper end, each flank of the sweep is an arc, then a straight side, then an arc.
    Everything is one loop of plain numbers, since this runs at every move of the pointer.
    """
    (x0, y0), (x1, y1) = (start, end) if start[1] <= end[1] else (end, start)
    dx, dy = x1 - x0, y1 - y0
    length = math.hypot(dx, dy)
    lean = radius * dx / length if length else 0.0  # how much lower the left side begins than the end
    left_arc, right_arc, left_side, right_side = y0 + lean, y0 - lean, y1 + lean, y1 - lean
    square, across = radius * radius, radius * length
    pitch_x, pitch_y, top, left = lattice.pitch_x_mm, lattice.pitch_y_mm, lattice.top_mm, lattice.left_mm
    even, odd = lattice.first_row, lattice.second_row
    first, last = math.ceil((y0 - radius - top) / pitch_y), math.floor((y1 + radius - top) / pitch_y)
    cells: list[int] = []
    for row in range(max(first, 0), min(last + 1, lattice.rows)):
        y = top + row * pitch_y
        upper, lower = square - (y - y0) ** 2, square - (y - y1) ** 2
        if y <= left_arc:
            x_low = x0 - math.sqrt(max(upper, 0.0))
        elif y >= left_side:
            x_low = x1 - math.sqrt(max(lower, 0.0))
        else:
            x_low = x0 + ((y - y0) * dx - across) / dy
        if y <= right_arc:
            x_high = x0 + math.sqrt(max(upper, 0.0))
        elif y >= right_side:
            x_high = x1 + math.sqrt(max(lower, 0.0))
        else:
            x_high = x0 + ((y - y0) * dx + across) / dy
        offset, begins, count = left, (row >> 1) * (even + odd), even
        if row & 1:
            offset, begins, count = left + pitch_x / 2, begins + even, odd
        begin, stop = math.ceil((x_low - offset) / pitch_x), math.floor((x_high - offset) / pitch_x) + 1
        cells += range(begins + max(begin, 0), begins + min(stop, count))
    return cells
