"""The walls between different contents of a side, chained into rings.

Three cells meet at every corner, so a wall between two contents has exactly one wall that follows
it round the same content, and walls chain into rings without special cases. Corners are of two
kinds by turns, and so every ring has an even number of walls: it is followed two at a time.
"""

from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Final

import numpy as np
import numpy.typing as npt

from beeworkbook.comb.lattice import CellIndices, Cells, Lattice, Points, read_only

OUTSIDE: Final = np.uint8(255)
"""What lies beyond the outermost walls: no content."""
# Corner i of a cell, in half widths across and thirds of a row down from its centre.
_CORNER_X: Final = np.array((1, 1, 0, -1, -1, 0))
_CORNER_Y: Final = np.array((-1, 1, 2, 1, -1, -2))


@dataclass(frozen=True, eq=False)
class Sides:
    """What never changes about the six sides of every cell, side s of cell c having number 6 c + s.

    before, onward: the side before and after it, clockwise, of the same cell. turned: where a ring
    goes that turns the other way, along the neighbour one further round. corner: the number of the
    corner where the side begins, the same from whichever cell; points: where it lies, in mm.
    Shapes: (6 cells,), points (6 cells, 2).
    """

    cell: CellIndices
    before: CellIndices
    onward: CellIndices
    turned: CellIndices
    corner: CellIndices
    points: Points


@lru_cache(maxsize=32)
def sides_of(lattice: Lattice) -> Sides:
    """The sides of every cell of a lattice, worked out once."""
    cell, side = np.divmod(np.arange(6 * lattice.cells), 6)
    onward = 6 * cell + (side + 1) % 6
    row = lattice.row_of[cell]
    # In whole numbers first, so that a corner is the same to the last bit from all three cells.
    x = 2 * lattice.column_of[cell] + row % 2 + _CORNER_X[side]
    y = 3 * row + _CORNER_Y[side]
    points = np.column_stack(
        (lattice.left_mm + x * (lattice.pitch_x_mm / 2), lattice.top_mm + y * (lattice.pitch_y_mm / 3))
    )
    return Sides(
        cell=read_only(cell),
        before=read_only(6 * cell + (side + 5) % 6),
        onward=read_only(onward),
        turned=read_only(6 * lattice.neighbour_table.ravel()[onward] + (side + 5) % 6),
        corner=read_only((x + 1) + (y + 2) * (2 * lattice.first_row + 3)),
        points=read_only(points),
    )


@dataclass(frozen=True, eq=False)
class Walls:
    """Every wall between two contents, once from either, in the order of the rings they form.

    Shapes: wall, inside and turns (n,); starts (rings,), the place of each ring's first wall.
    turns is 1 where the ring goes on round the same cell after the wall, -1 where it turns back.
    """

    sides: Sides
    around: Cells
    wall: CellIndices
    inside: Cells
    turns: npt.NDArray[np.int8]
    starts: CellIndices

    @cached_property
    def is_hole(self) -> npt.NDArray[np.bool_]:
        """Whether a ring runs the other way: once round is six turns back. Shapes: (rings,)."""
        turned: npt.NDArray[np.intp] = np.add.reduceat(self.turns, self.starts, dtype=np.intp)
        holes: npt.NDArray[np.bool_] = turned < 0
        return holes

    @cached_property
    def beyond(self) -> Cells:
        """What lies on the other side of each wall, 255 beside the cells. Shapes: (n,)."""
        return self.around[self.wall]

    @cached_property
    def is_junction(self) -> npt.NDArray[np.bool_]:
        """Whether three contents meet where the wall begins. Shapes: (n,)."""
        third = self.around[self.sides.before[self.wall]]
        meet: npt.NDArray[np.bool_] = (third != self.inside) & (third != self.beyond)
        return meet


def chained_walls(lattice: Lattice, cells: Cells) -> Walls:
    """All walls between different contents, or between a content and the outside, ring after ring.

    Shapes: cells (lattice.cells,). Errors: ValueError on a wrong length.
    """
    if len(cells) != lattice.cells:
        raise ValueError("the cells are not of this lattice")
    sides = sides_of(lattice)
    around = np.append(cells, OUTSIDE)[lattice.neighbour_table]
    wall = np.flatnonzero(around != cells[:, None])
    around = around.ravel()
    inside = cells[sides.cell[wall]]
    # Beyond the end of a wall lies the neighbour one further round. If it holds the same, the ring
    # turns back and goes on along that neighbour; else it goes on round the same cell.
    onward = sides.onward[wall]
    back = around[onward] == inside
    number = np.empty(len(around), np.intp)
    number[wall] = np.arange(len(wall))
    following = number[np.where(back, sides.turned[wall], onward)]
    order, starts = _chained(following, wall)
    turns = 1 - 2 * back.view(np.int8)
    return Walls(sides, around, wall[order], inside[order], turns[order], starts)


def _chained(following: CellIndices, wall: CellIndices) -> tuple[CellIndices, CellIndices]:
    """The order of all walls, ring after ring, and where each ring starts.

    Only even sides are followed, each taking the odd one after it along. A ring turns through all
    six directions, so it is found from its walls that lie to the right of a cell.
    Plain Python: following one link after another is the one thing arrays cannot do.
    """
    even = np.flatnonzero(wall & 1 == 0)
    odd = following[even]
    number = np.empty(len(wall), np.intp)
    number[even] = np.arange(len(even))
    links = number[following[odd]].tolist()
    order: list[int] = []
    starts: list[int] = []
    for first in np.flatnonzero(wall[even] % 6 == 0).tolist():
        place, onward = first, links[first]
        if onward < 0:
            continue
        starts.append(len(order))
        while onward >= 0:
            order.append(place)
            links[place] = -1
            place, onward = onward, links[onward]
    pairs = np.array(order, np.intp)
    return np.column_stack((even[pairs], odd[pairs])).ravel(), 2 * np.array(starts, np.intp)
