"""Figures larger than a brush: ellipse, freehand outline, band, flood fill, and whole-side changes.

Cells are chosen as ascending indices; what is done with them is a CellPatch (side.py).
"""

from typing import Final, Literal, TypeAlias

import numpy as np
import numpy.typing as npt

from beeworkbook.comb.contents import Content
from beeworkbook.comb.labelling import labels_of
from beeworkbook.comb.lattice import CellIndices, Cells, Lattice, Point, Points, read_only

Edge: TypeAlias = Literal["top", "bottom", "left", "right"]

_SIX_NEIGHBOURS: Final = np.array([[0, 1, 1], [1, 1, 1], [1, 1, 0]], np.bool_)
"""The neighbours of a cell in the sheared grid (Lattice.sheared), for a labelling routine."""


def ellipse(lattice: Lattice, centre: Point, rx_mm: float, ry_mm: float) -> CellIndices:
    """Cells whose centre lies in an upright ellipse or on its rim.

    Shapes: result (k,) ascending. Units: millimetres on the comb.
    Errors: ValueError if a radius is not positive.
    Source: plain geometry.
    """
    if not (rx_mm > 0 and ry_mm > 0):
        raise ValueError("both radii must be positive")
    (x, y), a, b = centre, rx_mm**-2, ry_mm**-2
    # ((X - x) / rx)² + ((Y - y) / ry)² - 1 multiplied out, so that it is one product with a kept table.
    rim = 1.0 - a * x * x - b * y * y
    return np.flatnonzero(np.array((a, b, -2 * a * x, -2 * b * y)) @ lattice.squares <= rim)


def outline_cells(lattice: Lattice, points: Points) -> CellIndices:
    """Cells whose centre lies within a freehand outline; a line that crosses itself leaves holes.

    The outline closes itself; a centre exactly on it may fall to either side.
    Shapes: points (n, 2); result (k,) ascending. Units: millimetres on the comb.
    Errors: ValueError if points are not pairs of finite numbers.
    Source: plain geometry, even-odd rule, one scan line a row of cells.
    """
    points = np.asarray(points, np.float64)
    if points.ndim != 2 or points.shape[1] != 2 or not np.isfinite(points).all():
        raise ValueError("an outline is a list of points")
    x = (points[:, 0] - lattice.left_mm) / lattice.pitch_x_mm
    y = (points[:, 1] - lattice.top_mm) / lattice.pitch_y_mm
    x_next, y_next = np.concatenate((x[1:], x[:1])), np.concatenate((y[1:], y[:1]))
    # Rows an edge crosses: from the first at or below its upper end to the last above its lower end.
    first = np.clip(np.ceil(np.minimum(y, y_next)), 0, lattice.rows).astype(np.intp)
    count = np.clip(np.ceil(np.maximum(y, y_next)), 0, lattice.rows).astype(np.intp) - first
    edge = np.repeat(np.arange(len(x)), count)
    row = np.arange(len(edge)) + np.repeat(first - np.cumsum(count) + count, count)
    crossing = x[edge] + (row - y[edge]) * ((x_next - x)[edge] / (y_next - y)[edge])
    column = np.ceil(crossing - 0.5 * (row & 1)).clip(0, lattice.row_lengths[row]).astype(np.intp)
    # A crossing turns inside on or off for all cells after it; rows follow one another and even out.
    turns = np.bincount(lattice.row_starts[row] + column, minlength=lattice.cells + 1)[: lattice.cells]
    return np.flatnonzero(np.cumsum(turns.astype(np.uint8), dtype=np.uint8) & 1)


def band(lattice: Lattice, edge: Edge, depth_mm: float) -> CellIndices:
    """Cells whose centre lies within this depth of one edge of the frame.

    Shapes: result (k,) ascending. Units: millimetres from the inside of the wood.
    """
    x, y = lattice.centres.T
    if edge in {"top", "bottom"}:
        return np.flatnonzero((y if edge == "top" else lattice.height_mm - y) <= depth_mm)
    return np.flatnonzero((x if edge == "left" else lattice.width_mm - x) <= depth_mm)


def flood(lattice: Lattice, cells: Cells, start: int) -> CellIndices:
    """The cells of one content that hang together with this one through shared walls.

    Shapes: cells (lattice.cells,); result (k,) ascending.
    Errors: IndexError if there is no such cell.
    Source: plain geometry; in the sheared grid all cells share six neighbours, so that a labelling
    routine is exact.
    """
    if not 0 <= start < lattice.cells:
        raise IndexError(start)
    pair = lattice.first_row + lattice.second_row
    alike = np.zeros((lattice.rows + 1) // 2 * pair, np.bool_)
    np.equal(cells, cells[start], out=alike[: lattice.cells])
    flat = alike.tobytes()  # finds its last one quicker than the array read backwards
    first, last = flat.find(1) // pair, flat.rfind(1) // pair
    found = alike.reshape(-1, pair)[first : last + 1]
    even, odd = found[:, : lattice.first_row], found[:, lattice.first_row :]
    grid = np.zeros((2 * len(found), lattice.first_row + len(found) - 1), np.bool_)
    even_in_grid, odd_in_grid = _straight_rows(grid, lattice)
    even_in_grid[...], odd_in_grid[...] = even, odd
    labels = labels_of(grid, _SIX_NEIGHBOURS)
    row, column = lattice.row_and_column(start)
    down = row // 2 - first
    np.equal(labels, labels[row - 2 * first, column + len(found) - 1 - down], out=grid)
    even[...], odd[...] = even_in_grid, odd_in_grid
    return found.ravel().nonzero()[0] + first * pair


def _straight_rows(grid: npt.NDArray[np.bool_], lattice: Lattice) -> tuple[npt.NDArray[np.bool_], ...]:
    """The even and the odd rows of a sheared grid as views in which every row begins at column 0.

    Each pair of rows lies one column further left than the pair above it, which is one stride.
    """
    pairs, width = len(grid) // 2, grid.shape[1]
    strides, begin = (2 * width - 1, 1), pairs - 1
    even = np.ndarray((pairs, lattice.first_row), np.bool_, grid.data, begin, strides)
    return even, np.ndarray((pairs, lattice.second_row), np.bool_, grid.data, begin + width, strides)


def cells_with(cells: Cells, content: Content) -> CellIndices:
    """The cells that hold this, ascending."""
    return np.flatnonzero(cells == content)


def masked(cells: Cells, indices: CellIndices, only: frozenset[Content] | None) -> CellIndices:
    """Of these cells, those that hold something one may paint over; all of them without a mask.

    Shapes: indices (k,), result (j,) in the same order.
    """
    if only is None:
        return indices
    allowed = np.zeros(256, np.bool_)
    allowed[list(only)] = True
    return indices[allowed[cells[indices]]]


def replace_content(cells: Cells, old: Content, new: Content) -> Cells:
    """The side with one content everywhere replaced by another.

    Shapes: as cells, read-only.
    """
    return read_only(np.where(cells == old, np.uint8(new), cells))


def mirror(lattice: Lattice, cells: Cells) -> Cells:
    """The side seen in a mirror, left for right.

    On a lattice with rows of one length a row lands half a cell beside its image, as near as
    whole cells can be; mirrored twice, every side is itself again.
    Shapes: as cells, read-only. Errors: ValueError on a wrong length.
    """
    if len(cells) != lattice.cells:
        raise ValueError("the cells are not of this lattice")
    return read_only(cells[lattice.mirrored])
