"""One side of a comb as a value: its cells, what they add up to, and what one stroke changed.

Everything shown is share × area × density, the share taken of all cells of the lattice, so that
published sizes come out exactly whatever the lattice's own count. Kilograms and bees are not
known here.
"""

from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np

from beeworkbook.comb.contents import ALL_BROOD, CONTENTS, WORKER_BROOD, Content
from beeworkbook.comb.frames import FrameType
from beeworkbook.comb.lattice import CellIndices, Cells, Lattice, read_only
from beeworkbook.words import say

NO_COMB: Final = (Content.NOT_RECORDED, Content.GAP)
"""What adds neither comb area nor cells: nobody said, or there is no comb."""


class PatchMismatchError(ValueError):
    """The cells are not what they were when this stroke was drawn."""

    def __init__(self) -> None:
        super().__init__(say("The comb has changed since this was drawn, so nothing was changed."))


@dataclass(frozen=True)
class SideTally:
    """The numbers of one side, by the code of each content.

    Shapes: three tuples of 12. share is of the whole side and sums to 1; cells and area_dm2 are
    0 for a gap and for what is not recorded. Units: cells and dm² of one side.
    """

    cells: tuple[float, ...]
    area_dm2: tuple[float, ...]
    share: tuple[float, ...]

    @property
    def comb_dm2(self) -> float:
        """Comb that was recorded: the side less its gaps and less what was not recorded."""
        return sum(self.area_dm2)

    @property
    def recorded_share(self) -> float:
        """Share of the side of which something was said."""
        return 1.0 - self.share[Content.NOT_RECORDED]

    @property
    def brood_share(self) -> float:
        """Share of the side with brood of any age, drone brood too."""
        return sum(self.share[content] for content in ALL_BROOD)

    @property
    def brood_dm2(self) -> float:
        """Brood of any age, drone brood too."""
        return sum(self.area_dm2[content] for content in ALL_BROOD)

    @property
    def worker_brood_cells(self) -> float:
        """Cells of worker brood: eggs, open, sealed and of no recorded age."""
        return sum(self.cells[content] for content in WORKER_BROOD)

    @property
    def drone_brood_cells(self) -> float:
        """Cells of drone brood, at the density of the cells it lies in."""
        return self.cells[Content.DRONE]


def tally(frame: FrameType, cells: Cells, *, drone_cells: bool = True) -> SideTally:
    """What one side adds up to.

    drone_cells says whether its drone brood lies in drone cells (drone density) or in worker
    cells (worker density).
    Shapes: cells (frame.lattice.cells,). Errors: ValueError on a wrong length or an unknown code.
    Source: share × area × density; densities of the frame type.
    """
    if len(cells) != frame.lattice.cells:
        raise ValueError("the cells are not of this frame")
    return tally_counts(frame, np.bincount(cells, minlength=len(CONTENTS)).tolist(), drone_cells=drone_cells)


def tally_counts(frame: FrameType, counts: list[int], *, drone_cells: bool = True) -> SideTally:
    """The same from the number of lattice cells of each content, for a face that keeps count itself.

    Shapes: counts, 12 by code. Errors: ValueError if there are not 12, or no cell at all.
    Source: as tally.
    """
    whole = sum(counts)
    if len(counts) != len(CONTENTS) or not whole:
        raise ValueError("one count for every content is needed")
    share = tuple(count / whole for count in counts)
    # count × area ÷ whole, in this order, so that a whole side is exactly its area.
    area = [count * frame.area_dm2 / whole for count in counts]
    for content in NO_COMB:
        area[content] = 0.0
    cells = [dm2 * frame.cells_per_dm2 for dm2 in area]
    if drone_cells:
        cells[Content.DRONE] = area[Content.DRONE] * frame.drone_cells_per_dm2
    return SideTally(tuple(cells), tuple(area), share)


def blank_cells(lattice: Lattice, content: Content = Content.NOT_RECORDED) -> Cells:
    """A side on which every cell holds the same; not recorded unless something else is asked.

    Shapes: (lattice.cells,), read-only.
    """
    return read_only(np.full(lattice.cells, content, np.uint8))


@dataclass(frozen=True, eq=False)
class CellPatch:
    """What a finished stroke changed: which cells, what they held, what they hold now.

    Shapes: three arrays (k,), read-only; indices ascending, no repeats, no unchanged cell.
    """

    indices: CellIndices
    before: Cells
    after: Cells

    @classmethod
    def painting(cls, cells: Cells, indices: CellIndices, content: Content) -> "CellPatch":
        """The patch that gives these cells one content, leaving out those that hold it already."""
        before = cells[indices]
        changed = before != content
        after = np.full(int(np.count_nonzero(changed)), content, np.uint8)
        return cls(read_only(indices[changed]), read_only(before[changed]), read_only(after))

    @classmethod
    def between(cls, before: Cells, after: Cells) -> "CellPatch":
        """The patch that makes one state of a side into another.

        Errors: ValueError if they differ in length.
        """
        if before.shape != after.shape:
            raise ValueError("the two states are not of one side")
        indices = np.flatnonzero(before != after)
        return cls(read_only(indices), read_only(before[indices]), read_only(after[indices]))

    @cached_property
    def is_empty(self) -> bool:
        """Whether nothing changed."""
        return not len(self.indices)

    @property
    def inverse(self) -> "CellPatch":
        """The patch that takes this one back."""
        return CellPatch(self.indices, self.after, self.before)

    def apply(self, cells: Cells) -> Cells:
        """The side with this patch on it; the side handed in is left as it was.

        Errors: PatchMismatchError if the cells do not hold what they held when it was drawn.
        """
        beyond = not self.is_empty and int(self.indices[-1]) >= len(cells)
        if beyond or cells[self.indices].tobytes() != self.before.tobytes():
            raise PatchMismatchError
        changed = cells.copy()
        changed[self.indices] = self.after
        return read_only(changed)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, CellPatch):
            return NotImplemented
        return self._key() == other._key()

    def __hash__(self) -> int:
        return hash(self._key())

    def _key(self) -> tuple[bytes, bytes, bytes]:
        return self.indices.tobytes(), self.before.tobytes(), self.after.tobytes()
