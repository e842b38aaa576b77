"""What every tool shares: what is held in the hand, the states, and the cells shown meanwhile.

A tool is pressed on a side, moved and released. Until then only `held` differs from what is stored:
release gives the patch, drop leaves no trace. Points are millimetres on the comb; no window is needed.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar, Final

import numpy as np

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import CellIndices, Cells, Lattice, Point, Points
from beeworkbook.comb.regions import masked
from beeworkbook.comb.side import CellPatch

NO_CELLS: Final[CellIndices] = np.empty(0, np.intp)


class ToolName(StrEnum):
    """The tools of the bench."""

    BRUSH = "brush"
    ELLIPSE = "ellipse"
    OUTLINE = "outline"
    BAND = "band"
    FILL = "fill"
    PICK = "pick"
    ERASE = "erase"


class State(StrEnum):
    """What a tool is doing."""

    RESTING = "resting"
    PAINTING = "painting"
    STRETCHING = "stretching"
    TRACING = "tracing"
    PULLING = "pulling"
    POURING = "pouring"
    LOOKING = "looking"


@dataclass(frozen=True, eq=False)
class Work:
    """The side under the tool as it is stored, and what the hand holds. Units: millimetres."""

    lattice: Lattice
    cells: Cells
    content: Content
    radius_mm: float
    only: frozenset[Content] | None = None


class Tool:
    """A tool at rest. A subclass says what cells it takes at each move."""

    name: ClassVar[ToolName]
    busy: ClassVar[State] = State.PAINTING
    paints: ClassVar[bool] = True

    def __init__(self) -> None:
        self.state = State.RESTING
        self._work: Work | None = None
        self._held: Cells | None = None
        self._pending: CellIndices = NO_CELLS

    @property
    def held(self) -> Cells | None:
        """The cells to be shown while the tool is at work, None at rest."""
        return self._held

    @property
    def pending(self) -> CellIndices:
        """The cells that release would paint."""
        return self._pending

    @property
    def shape_mm(self) -> Points | None:
        """The line to be shown over the comb while the tool is at work. Shapes: (n, 2)."""
        return None

    @property
    def content(self) -> Content:
        """What is being painted."""
        return self._at_work().content

    def press(self, work: Work, at: Point) -> CellIndices:
        """Begin on a side; the cells that look different now.

        Errors: ValueError if the tool is at work already.
        """
        if self.state is not State.RESTING:
            raise ValueError("this tool is at work already")
        self._work = work
        self._held = work.cells.copy()
        self.state = self.busy
        return self._show(self._begin(work, at))

    def move(self, at: Point) -> CellIndices:
        """Go on to a point; the cells that look different now, none at rest."""
        if self.state is State.RESTING:
            return NO_CELLS
        return self._show(self._go_on(self._at_work(), at))

    def release(self) -> CellPatch | None:
        """End here: what has changed, or None if nothing did."""
        if self.state is State.RESTING:
            return None
        work = self._at_work()
        patch = CellPatch.painting(work.cells, self._last(work), work.content) if self.paints else None
        self._rest()
        return None if patch is None or patch.is_empty else patch

    def drop(self) -> CellIndices:
        """Let go without a trace; the cells that must be shown as stored again."""
        cells = self._pending
        self._rest()
        return cells

    # --- what a tool says ------------------------------------------------------------------

    def _begin(self, work: Work, at: Point) -> CellIndices:
        """The cells taken at the first point."""
        raise NotImplementedError

    def _go_on(self, work: Work, at: Point) -> CellIndices:
        """All cells taken by now."""
        raise NotImplementedError

    def _last(self, work: Work) -> CellIndices:
        """The cells to be painted at the end; those shown, unless a tool only knows at the end."""
        del work
        return self._pending

    def _forget(self) -> None:
        """Drop what a tool remembers of a piece of work."""

    # --- within ----------------------------------------------------------------------------

    def _show(self, cells: CellIndices) -> CellIndices:
        """Hold these cells, masked, in place of those held before; the ones that look different."""
        work, held = self._at_work(), self._held
        if held is None:
            return NO_CELLS
        cells = masked(work.cells, cells, work.only)
        before = self._pending
        # Back to what is stored first, so that a shape that shrinks leaves nothing behind.
        held[before] = work.cells[before]
        held[cells] = work.content
        self._pending = cells
        if not len(before):
            return cells
        return np.setxor1d(before, cells, assume_unique=True)

    def _at_work(self) -> Work:
        if self._work is None:
            raise ValueError("this tool rests")
        return self._work

    def _rest(self) -> None:
        self.state = State.RESTING
        self._work = self._held = None
        self._pending = NO_CELLS
        self._forget()
