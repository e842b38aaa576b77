"""The cells of one side of a comb: how many fit, where they lie, which are neighbours.

Pointy-top hexagons in horizontal rows, odd rows moved right by half a cell. Cells are numbered
row by row from the top, left to right. What the cells hold is not known here.
"""

import math
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Final, Literal, TypeAlias, TypeVar

import numpy as np
import numpy.typing as npt

Point: TypeAlias = tuple[float, float]
Points: TypeAlias = npt.NDArray[np.float64]
Cells: TypeAlias = npt.NDArray[np.uint8]
CellIndices: TypeAlias = npt.NDArray[np.intp]
Direction: TypeAlias = Literal["left", "right", "up", "down"]

WORKER_CELLS_PER_DM2: Final = 400.0
"""Worker cells on one side. Source: Swiss rule "up to 400 cells per dm² at 5.4 mm", imker.felser.ch;
400 per eighth of a Zander side of 1 dm², bees-online.at 2020."""
DRONE_CELLS_PER_DM2: Final = 230.0
"""Drone cells on one side. Source: 230 per eighth of a Zander side of 1 dm², bees-online.at 2020."""

_Array = TypeVar("_Array", bound=npt.NDArray[np.generic])
_MOVES: Final = ((0, 1), (1, 0), (1, -1), (0, -1), (-1, -1), (-1, 0))
_COUNT_LIMIT: Final = 0.01
_SHAPE_LIMIT: Final = 0.034
_PITCH_LIMIT: Final = 0.029
_EVEN_ROWS_COST: Final = 0.01
_REACH: Final = 0.12
_LEAST_MM: Final = 20.0
_MOST_CELLS: Final = 100_000


def cell_width_mm(cells_per_dm2: float) -> float:
    """Width of a regular cell, wall to parallel wall, at this density on one side.

    Errors: ValueError if the density is not positive.
    Source: plain geometry, area of a hexagon = √3/2 · width².
    """
    if not cells_per_dm2 > 0:
        raise ValueError("cells_per_dm2 must be positive")
    return 100.0 * math.sqrt(2.0 / (math.sqrt(3.0) * cells_per_dm2))


def cells_per_dm2_of(width_mm: float) -> float:
    """Regular cells on one dm² of one side, from their width wall to parallel wall.

    Errors: ValueError if the width is not positive.
    Source: plain geometry, the inverse of cell_width_mm.
    """
    if not width_mm > 0:
        raise ValueError("width_mm must be positive")
    return 2.0 / math.sqrt(3.0) * (100.0 / width_mm) ** 2


@dataclass(frozen=True)
class Lattice:
    """Every cell of one side, by number: its row, its place in millimetres, its neighbours.

    Units: millimetres on the comb, origin at the inside top left corner, y down.
    """

    width_mm: float
    height_mm: float
    pitch_x_mm: float
    pitch_y_mm: float
    first_row: int
    second_row: int
    rows: int
    left_mm: float
    top_mm: float

    @cached_property
    def cells(self) -> int:
        """How many cells the side has."""
        return (self.rows + 1) // 2 * self.first_row + self.rows // 2 * self.second_row

    @cached_property
    def row_starts(self) -> npt.NDArray[np.intp]:
        """First cell of every row, and the number of cells at the end.

        Shapes: (rows + 1,), read-only.
        """
        lengths = np.where(np.arange(self.rows) % 2 == 0, self.first_row, self.second_row)
        return read_only(np.concatenate(([0], np.cumsum(lengths))).astype(np.intp))

    @cached_property
    def row_of(self) -> npt.NDArray[np.intp]:
        """Row of every cell. Shapes: (cells,), read-only."""
        return read_only(np.repeat(np.arange(self.rows), np.diff(self.row_starts)))

    @cached_property
    def column_of(self) -> npt.NDArray[np.intp]:
        """Place of every cell in its row, from the left. Shapes: (cells,), read-only."""
        return read_only(np.arange(self.cells) - self.row_starts[self.row_of])

    @cached_property
    def centres(self) -> Points:
        """Centre of every cell. Shapes: (cells, 2), read-only. Units: millimetres."""
        x = self.left_mm + (self.column_of + 0.5 * (self.row_of % 2)) * self.pitch_x_mm
        return read_only(np.column_stack((x, self.top_mm + self.row_of * self.pitch_y_mm)))

    @cached_property
    def row_lengths(self) -> npt.NDArray[np.intp]:
        """Cells in every row. Shapes: (rows,), read-only."""
        return read_only(np.diff(self.row_starts))

    @cached_property
    def squares(self) -> Points:
        """x², y², x, y of every centre: a product with four numbers tells a conic's inside.

        Shapes: (4, cells), read-only. Units: mm² and mm.
        """
        return read_only(np.ascontiguousarray(np.vstack((self.centres.T**2, self.centres.T))))

    @cached_property
    def mirrored(self) -> npt.NDArray[np.intp]:
        """For every cell the one in its place when each row is read from the right.

        Shapes: (cells,), read-only.
        """
        return read_only(self.row_starts[self.row_of + 1] - 1 - self.column_of)

    @cached_property
    def sheared(self) -> tuple[npt.NDArray[np.intp], npt.NDArray[np.intp]]:
        """Row and slanted column q of every cell, in which all cells share six neighbours.

        q = column - (row - row % 2) / 2; the neighbours of (row, q) are (row, q ± 1),
        (row - 1, q), (row - 1, q + 1), (row + 1, q - 1) and (row + 1, q).
        Shapes: two arrays (cells,), read-only.
        """
        return self.row_of, read_only(self.column_of - (self.row_of - self.row_of % 2) // 2)

    @cached_property
    def neighbour_table(self) -> npt.NDArray[np.intp]:
        """The six neighbours of every cell, clockwise from the right; -1 where the side ends.

        Shapes: (cells, 6), read-only; the order is right, lower right, lower left, left,
        upper left, upper right.
        """
        odd, column = self.row_of % 2, self.column_of
        table = np.empty((self.cells, 6), np.intp)
        for direction, (down, along) in enumerate(_MOVES):
            across = column + along + (odd if down else 0)
            table[:, direction] = self._cells_of(self.row_of + down, across)
        return read_only(table)

    @cached_property
    def hexagon_mm(self) -> Points:
        """Corners of a cell seen from its centre, clockwise from the upper right one.

        Corner i lies between the neighbours i - 1 and i of neighbour_table, so the wall
        towards neighbour i runs from corner i to corner i + 1.
        Shapes: (6, 2), read-only. Units: millimetres.
        """
        x, y = self.pitch_x_mm / 2, self.pitch_y_mm / 3
        return read_only(np.array([(x, -y), (x, y), (0, 2 * y), (-x, y), (-x, -y), (0, -2 * y)]))

    @property
    def cell_area_mm2(self) -> float:
        """Area of one cell as drawn."""
        return self.pitch_x_mm * self.pitch_y_mm

    def row_length(self, row: int) -> int:
        """Cells in this row."""
        return self.second_row if row % 2 else self.first_row

    def row_and_column(self, cell: int) -> tuple[int, int]:
        """Row from the top and place from the left.

        Errors: IndexError if there is no such cell.
        """
        if not 0 <= cell < self.cells:
            raise IndexError(cell)
        pair, rest = divmod(cell, self.first_row + self.second_row)
        return (2 * pair, rest) if rest < self.first_row else (2 * pair + 1, rest - self.first_row)

    def cell(self, row: int, column: int) -> int:
        """Number of the cell in this row and place.

        Errors: IndexError if there is no such cell.
        """
        if not (0 <= row < self.rows and 0 <= column < self.row_length(row)):
            raise IndexError((row, column))
        return row // 2 * (self.first_row + self.second_row) + row % 2 * self.first_row + column

    def neighbours(self, cell: int) -> tuple[int, ...]:
        """The cells that share a wall with this one, ascending."""
        return tuple(sorted(int(near) for near in self.neighbour_table[cell] if near >= 0))

    def cell_at(self, x_mm: float, y_mm: float) -> int | None:
        """The cell whose walls hold this point, or None beside the cells."""
        found = int(self.cells_at(np.array([(x_mm, y_mm)]))[0])
        return found if found >= 0 else None

    def cells_at(self, points: Points) -> CellIndices:
        """The cell each point lies in, -1 beside the cells.

        Shapes: points (n, 2); result (n,). Units: millimetres.
        Source: plain geometry; of the two rows around a point, the nearer centre once the
        hexagon is stretched to a regular one.
        """
        y = (points[:, 1] - self.top_mm) / self.pitch_y_mm
        x = (points[:, 0] - self.left_mm) / self.pitch_x_mm
        upper = np.floor(y)
        found = [self._nearest_in(upper + down, x, y) for down in (0, 1)]
        lower_wins = found[1][0] < found[0][0]
        row = np.where(lower_wins, upper + 1, upper)
        column = np.where(lower_wins, found[1][1], found[0][1])
        return self._cells_of(row.astype(np.intp), column.astype(np.intp))

    def step(self, cell: int, direction: Direction) -> int:
        """The cell the keyboard's arrow leads to; at an edge it stays where it is.

        Up and down zigzag over the half cell between rows, so that up undoes down.
        """
        row, column = self.row_and_column(cell)
        if direction in {"left", "right"}:
            column += 1 if direction == "right" else -1
            return cell if not 0 <= column < self.row_length(row) else self.cell(row, column)
        row += 1 if direction == "down" else -1
        return cell if not 0 <= row < self.rows else self.cell(row, min(column, self.row_length(row) - 1))

    def _nearest_in(self, row: Points, x: Points, y: Points) -> tuple[Points, Points]:
        """Squared distance and column of the nearest centre in these rows, in cell widths."""
        half = 0.5 * (row % 2)
        column = np.floor(x - half + 0.5)
        return (x - half - column) ** 2 + 0.75 * (y - row) ** 2, column

    def _cells_of(self, row: CellIndices, column: CellIndices) -> CellIndices:
        """Cell numbers of rows and columns, -1 where there is no such cell."""
        length = np.where(row % 2 == 0, self.first_row, self.second_row)
        inside = (row >= 0) & (row < self.rows) & (column >= 0) & (column < length)
        return np.where(inside, self.row_starts[np.where(inside, row, 0)] + column, -1)


def read_only(array: _Array) -> _Array:
    """The same array, no longer writable: what is handed out is a value."""
    array.flags.writeable = False
    return array


@lru_cache(maxsize=256)
def fit_lattice(width_mm: float, height_mm: float, cells_per_dm2: float = WORKER_CELLS_PER_DM2) -> Lattice:
    """The lattice of whole cells that fits a frame's inside and comes nearest to its density.

    The number of cells is within 1 % of area × density and the hexagon within 3.4 % of a regular
    one; of all such lattices the one with the least stretched pitch is taken, rows of alternate
    length a little preferred, because they look the same from behind.
    Units: millimetres; cells per dm² of one side.
    Errors: ValueError if a length is under 20 mm, the density is not positive, or the side would
    hold more than 100,000 cells.
    Source: plain geometry.
    """
    _check_size(width_mm, height_mm, cells_per_dm2)
    width = cell_width_mm(cells_per_dm2)
    wanted = width_mm * height_mm / 1e4 * cells_per_dm2
    candidates = (
        _fitted(width_mm, height_mm, row_cells, rows, alternate=alternate)
        for rows in _around(height_mm / (width * math.sqrt(0.75)))
        for row_cells in _around(width_mm / width)
        for alternate in (True, False)
    )
    return min(candidates, key=lambda lattice: _strain(lattice, wanted, width))


def _check_size(width_mm: float, height_mm: float, cells_per_dm2: float) -> None:
    if not (_LEAST_MM <= width_mm < math.inf and _LEAST_MM <= height_mm < math.inf):
        raise ValueError("a side is at least 20 mm wide and high")
    if not 0 < cells_per_dm2 * width_mm * height_mm / 1e4 <= _MOST_CELLS:
        raise ValueError("a side holds from one to 100,000 cells")


def _around(count: float) -> range:
    return range(max(1, math.floor(count * (1 - _REACH)) - 2), math.ceil(count * (1 + _REACH)) + 3)


def _fitted(width_mm: float, height_mm: float, row_cells: int, rows: int, *, alternate: bool) -> Lattice:
    """Rows of so many cells filling the frame, the longer pitch shortened to keep the hexagon's shape."""
    pitch_x = width_mm / (row_cells + (0.0 if alternate else 0.5))
    pitch_y = height_mm / (rows + 1 / 3)
    regular = math.sqrt(0.75)
    pitch_x = min(pitch_x, pitch_y / regular * (1 + _SHAPE_LIMIT))
    pitch_y = min(pitch_y, pitch_x * regular * (1 + _SHAPE_LIMIT))
    spare_x = width_mm - pitch_x * (row_cells + (0.0 if alternate else 0.5))
    spare_y = height_mm - pitch_y * (rows + 1 / 3)
    return Lattice(
        width_mm=width_mm,
        height_mm=height_mm,
        pitch_x_mm=pitch_x,
        pitch_y_mm=pitch_y,
        first_row=row_cells,
        second_row=row_cells - alternate,
        rows=rows,
        left_mm=(pitch_x + spare_x) / 2,
        top_mm=pitch_y * 2 / 3 + spare_y / 2,
    )


def _strain(lattice: Lattice, wanted: float, width: float) -> tuple[float, float, float]:
    """How far a lattice is from what was asked: the count, then the pitch beyond its limit, then all."""
    missed = abs(lattice.cells / wanted - 1)
    pitch = max(abs(lattice.pitch_x_mm / width - 1), abs(lattice.pitch_y_mm / (width * math.sqrt(0.75)) - 1))
    shape = abs(lattice.pitch_x_mm * math.sqrt(0.75) / lattice.pitch_y_mm - 1)
    uneven = _EVEN_ROWS_COST * (lattice.first_row == lattice.second_row)
    over = max(missed - _COUNT_LIMIT, 0.0), max(pitch - _PITCH_LIMIT, 0.0)
    return *over, missed + pitch + shape + uneven
