"""Which cell lies under each pixel of a picture of one side, and which cell across the nearest wall.

Made once for a lattice, a size and a zoom; painting then only looks up. A hexagon lattice is two
rectangular ones laid into one another, so nearly all of the work is done on rows and columns alone
and only a comparison is left for the pixels. Nothing here knows contents or colours.
"""

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache

import numpy as np
import numpy.typing as npt

from beeworkbook.comb.lattice import CellIndices, Lattice

Floats = npt.NDArray[np.floating]
Ints = npt.NDArray[np.intp]
PixelCells = npt.NDArray[np.int32]
Coverage = npt.NDArray[np.uint8]


@dataclass(frozen=True)
class Sight:
    """How millimetres on the comb become pixels of a picture: pixel = offset + scale × mm.

    Units: pixels of the screen (not of the window's own scale), pixels per millimetre.
    """

    scale: float
    left_px: float
    top_px: float

    def to_px(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        """The pixel of a point on the comb."""
        return self.left_px + self.scale * x_mm, self.top_px + self.scale * y_mm

    def to_mm(self, x_px: float, y_px: float) -> tuple[float, float]:
        """The point on the comb under a pixel."""
        return (x_px - self.left_px) / self.scale, (y_px - self.top_px) / self.scale


@dataclass(frozen=True, eq=False)
class CellMap:
    """The cell under every pixel; the number of cells itself stands for beside the comb.

    Shapes: cell and across (height, width), line (height, width). across is the cell on the other
    side of the wall nearest to the pixel. line is how much of the pixel a line on that wall covers,
    0 to 255. All read-only.
    """

    lattice: Lattice
    sight: Sight
    cell: PixelCells
    across: PixelCells
    line: Coverage

    @property
    def height(self) -> int:
        """Pixels from top to bottom."""
        return int(self.cell.shape[0])

    @property
    def width(self) -> int:
        """Pixels from left to right."""
        return int(self.cell.shape[1])

    def cells_box(self, cells: CellIndices) -> tuple[int, int, int, int] | None:
        """The pixel rectangle (left, top, right, bottom) that holds these cells and their outlines.

        right and bottom are one past the end; None if no pixel of them is in the picture.
        Shapes: cells (k,), ascending.
        """
        if not len(cells):
            return None
        # For the few cells of a stroke plain numbers are quicker than arrays; the rows are those of the ends.
        lefts = self._lefts.take(cells).tolist()
        x0, x1 = max(0, min(lefts)), min(self.width, max(lefts) + self._reach[0])
        y0, y1 = self._tops[cells[0]], self._tops[cells[-1]] + self._reach[1]
        y0, y1 = max(0, int(y0)), min(self.height, int(y1))
        return (x0, y0, x1, y1) if x0 < x1 and y0 < y1 else None

    @cached_property
    def _reach(self) -> tuple[int, int]:
        """Width and height of one cell, and one pixel of its neighbours, whose outline changes too."""
        scale, lattice = self.sight.scale, self.lattice
        return math.ceil(lattice.pitch_x_mm * scale) + 5, math.ceil(lattice.pitch_y_mm * 4 / 3 * scale) + 5

    @cached_property
    def _lefts(self) -> Ints:
        scale, lattice = self.sight.scale, self.lattice
        at = self.sight.left_px + scale * (lattice.centres[:, 0] - lattice.pitch_x_mm / 2) - 2
        return np.floor(at).astype(np.intp)

    @cached_property
    def _tops(self) -> Ints:
        scale, lattice = self.sight.scale, self.lattice
        at = self.sight.top_px + scale * (lattice.centres[:, 1] - lattice.pitch_y_mm * 2 / 3) - 2
        return np.floor(at).astype(np.intp)


@dataclass(frozen=True)
class _Along:
    """One axis of one of the two rectangular lattices: nearest line, offset from it, whether it is there."""

    near: Ints
    offset: Floats
    there: npt.NDArray[np.bool_]


@lru_cache(maxsize=2)
def cell_map(lattice: Lattice, sight: Sight, width: int, height: int, line_px: float = 1.0) -> CellMap:
    """The map of a picture of width × height pixels, with walls as lines of line_px.

    Errors: ValueError if the picture has no pixel.
    Source: plain geometry; of two overlaid rectangular lattices the nearer centre is the hexagon's.
    """
    if width < 1 or height < 1:
        raise ValueError("a picture has at least one pixel")
    x_mm = (np.arange(width) + 0.5 - sight.left_px) / sight.scale
    y_mm = (np.arange(height) + 0.5 - sight.top_px) / sight.scale
    even_x, odd_x = (_columns(lattice, x_mm, parity) for parity in (0, 1))
    even_y, odd_y = (_rows(lattice, y_mm, parity) for parity in (0, 1))
    # Stretched to a regular hexagon, the nearer centre wins; both sides of the comparison are one axis each.
    along = (even_x.offset**2 - odd_x.offset**2) / lattice.pitch_x_mm**2
    down = 0.75 * (odd_y.offset**2 - even_y.offset**2) / lattice.pitch_y_mm**2
    is_even = along[None, :] < down[:, None]
    even_cell = _cells(lattice, even_x, even_y, 0)
    odd_cell = _cells(lattice, odd_x, odd_y, 1)
    cell = np.where(is_even, even_cell, odd_cell)
    across, line = _walls(lattice, sight, line_px, is_even, (even_x, odd_x), (even_y, odd_y))
    slanted = np.where(is_even, odd_cell, even_cell)
    beside = np.where(is_even, _beside(lattice, even_x, even_y, 0), _beside(lattice, odd_x, odd_y, 1))
    across_cell = np.where(across, beside, slanted)
    for array in (cell, across_cell, line):
        array.flags.writeable = False
    return CellMap(lattice, sight, cell, across_cell, line)


def _columns(lattice: Lattice, x_mm: Floats, parity: int) -> _Along:
    start = lattice.left_mm + 0.5 * parity * lattice.pitch_x_mm
    near = np.floor((x_mm - start) / lattice.pitch_x_mm + 0.5).astype(np.intp)
    there = (near >= 0) & (near < lattice.row_length(parity))
    return _Along(near, x_mm - start - near * lattice.pitch_x_mm, there)


def _rows(lattice: Lattice, y_mm: Floats, parity: int) -> _Along:
    step = 2 * lattice.pitch_y_mm
    start = lattice.top_mm + parity * lattice.pitch_y_mm
    near = np.floor((y_mm - start) / step + 0.5).astype(np.intp) * 2 + parity
    there = (near >= 0) & (near < lattice.rows)
    return _Along(near, y_mm - lattice.top_mm - near * lattice.pitch_y_mm, there)


def _starts(lattice: Lattice, rows: _Along) -> Ints:
    return lattice.row_starts[np.where(rows.there, rows.near, 0)]


def _cells(lattice: Lattice, columns: _Along, rows: _Along, parity: int) -> PixelCells:
    """The cell of one rectangular lattice nearest to every pixel."""
    return _lookup(lattice, columns.near, _starts(lattice, rows), rows.there, parity)


def _beside(lattice: Lattice, columns: _Along, rows: _Along, parity: int) -> PixelCells:
    """Its neighbour to the left or right, whichever wall is nearer."""
    near = columns.near + np.where(columns.offset < 0, -1, 1)
    return _lookup(lattice, near, _starts(lattice, rows), rows.there, parity)


def _lookup(
    lattice: Lattice, near: Ints, starts: Ints, row_there: npt.NDArray[np.bool_], parity: int
) -> PixelCells:
    outside = lattice.cells
    there = (near >= 0) & (near < lattice.row_length(parity))
    found = starts.astype(np.int32)[:, None] + np.where(there, near, 0).astype(np.int32)[None, :]
    found[~row_there, :] = outside
    found[:, ~there] = outside
    return found


def _walls(
    lattice: Lattice,
    sight: Sight,
    line_px: float,
    is_even: npt.NDArray[np.bool_],
    columns: tuple[_Along, _Along],
    rows: tuple[_Along, _Along],
) -> tuple[npt.NDArray[np.bool_], Coverage]:
    """Whether an upright wall is nearest to every pixel, and how much of the pixel a line on it covers."""
    half_x, slope_y = lattice.pitch_x_mm / 2, lattice.pitch_y_mm / 3
    length = float(np.hypot(half_x, slope_y))
    # Distance from the slanted wall through (half_x, slope_y) and (0, 2 slope_y), as a sum of two axes.
    x_part = [((slope_y / length) * np.abs(axis.offset)).astype(np.float32) for axis in columns]
    y_part = [((half_x / length) * np.abs(axis.offset)).astype(np.float32) for axis in rows]
    reach = np.float32(2 * half_x * slope_y / length)
    x_even, x_odd = ((half_x - np.abs(axis.offset)).astype(np.float32) for axis in columns)
    to_slanted = reach - np.where(
        is_even, x_part[0][None, :] + y_part[0][:, None], x_part[1][None, :] + y_part[1][:, None]
    )
    to_upright = np.where(is_even, x_even[None, :], x_odd[None, :])
    upright = to_upright < to_slanted
    distance_px = np.minimum(to_upright, to_slanted) * np.float32(sight.scale)
    covered = np.clip(np.float32(line_px / 2 + 0.5) - distance_px, 0.0, 1.0)
    return upright, (covered * np.float32(255.0) + np.float32(0.5)).astype(np.uint8)


def nearest_cells(lattice: Lattice, x_mm: Floats, y_mm: Floats) -> Ints:
    """The cell nearest to every crossing of these columns and rows, also beside the comb.

    Shapes: x_mm (w,), y_mm (h,); result (h, w). Source: as cell_map.
    """
    even_x, odd_x = (_clamped(_columns(lattice, x_mm, parity), lattice, parity) for parity in (0, 1))
    even_y, odd_y = (_clamped_rows(_rows(lattice, y_mm, parity), lattice, parity) for parity in (0, 1))
    along = (even_x.offset**2 - odd_x.offset**2) / lattice.pitch_x_mm**2
    down = 0.75 * (odd_y.offset**2 - even_y.offset**2) / lattice.pitch_y_mm**2
    even_cell, odd_cell = (
        lattice.row_starts[rows.near][:, None] + columns.near[None, :]
        for columns, rows in ((even_x, even_y), (odd_x, odd_y))
    )
    return np.where(along[None, :] < down[:, None], even_cell, odd_cell)


def _clamped(columns: _Along, lattice: Lattice, parity: int) -> _Along:
    near = np.clip(columns.near, 0, lattice.row_length(parity) - 1)
    return _Along(near, columns.offset + (columns.near - near) * lattice.pitch_x_mm, columns.there)


def _clamped_rows(rows: _Along, lattice: Lattice, parity: int) -> _Along:
    last = lattice.rows - 1 - (lattice.rows - 1 - parity) % 2
    near = np.clip(rows.near, parity, last)
    return _Along(near, rows.offset + (rows.near - near) * lattice.pitch_y_mm, rows.there)
