"""The stored count of each content of a side: what is written, and what it says when read.

Cells are counted as drawn; what is shown is share × area × density (comb/side.py). The side's own
area and densities lie beside the counts, so that a total never changes after the fact and any tool
that reads tables can work it out.
"""

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

import numpy as np
import numpy.typing as npt

from beeworkbook.colony.records import Side
from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.frames import FrameType
from beeworkbook.comb.side import NO_COMB
from beeworkbook.store.drawings import unpacked

TALLY_COLUMNS: Final = tuple(f"{content.name.lower()}_cells" for content in CONTENTS)
"""A column a content, by its code: how many cells of the drawing hold it."""

COLUMNS: Final = ("area_dm2", "cells_per_dm2", "drone_cells_per_dm2", *TALLY_COLUMNS)
"""The columns of a tally row behind the side's id."""

Tallied = tuple[tuple[float, ...], tuple[float, ...], float, float]


def tally_row(frame: FrameType, side: Side) -> tuple[float | int, ...]:
    """What is kept of a side beside its drawing, in the order of COLUMNS.

    Errors: DamagedCombError if the drawing cannot be read or is not of this frame.
    """
    cells = unpacked(side.cells, cells=frame.lattice.cells)
    counts: list[int] = np.bincount(cells, minlength=len(CONTENTS)).tolist()
    drone = frame.drone_cells_per_dm2 if side.drone_cells else frame.cells_per_dm2
    return (frame.area_dm2, frame.cells_per_dm2, drone, *counts)


def tallied(rows: Sequence[Sequence[float]]) -> list[Tallied]:
    """Cells and area by content, the area of the side and what of it is not recorded, of many rows at once.

    The same steps in the same order as comb.side.tally_counts, so that both agree to the last bit.
    Shapes: each row as COLUMNS; result four a row, its tuples 12 long. Units: cells, dm².
    """
    if not rows:
        return []
    held: npt.NDArray[np.float64] = np.array(rows, dtype=np.float64)
    side_dm2, density, drone, counts = held[:, 0], held[:, 1], held[:, 2], held[:, 3:]
    area = counts * side_dm2[:, np.newaxis] / counts.sum(axis=1)[:, np.newaxis]
    unrecorded = area[:, Content.NOT_RECORDED].tolist()
    area[:, list(NO_COMB)] = 0.0
    cells = area * density[:, np.newaxis]
    cells[:, Content.DRONE] = area[:, Content.DRONE] * drone
    return list(zip(_tuples(cells), _tuples(area), side_dm2.tolist(), unrecorded, strict=True))


def _tuples(array: npt.NDArray[np.float64]) -> list[tuple[float, ...]]:
    """A tuple a row, cut from one flat list, which is quicker than a list a row."""
    flat = array.ravel().tolist()
    return [tuple(flat[start:end]) for start, end in pairwise(range(0, len(flat) + 1, array.shape[1]))]
