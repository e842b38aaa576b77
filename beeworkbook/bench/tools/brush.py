"""The brush: every cell whose centre comes under a round brush while it moves.

Resting → painting → resting.
"""

from typing import ClassVar

import numpy as np

from beeworkbook.bench.tools.base import NO_CELLS, State, Tool, ToolName, Work
from beeworkbook.comb.lattice import CellIndices, Point
from beeworkbook.comb.regions import masked
from beeworkbook.comb.strokes import Stroke


class BrushTool(Tool):
    """Paints what it sweeps over; only the newly covered cells are looked at again."""

    name: ClassVar = ToolName.BRUSH
    busy: ClassVar = State.PAINTING

    def __init__(self) -> None:
        super().__init__()
        self._stroke: Stroke | None = None
        self._covered: list[CellIndices] = []

    def _begin(self, work: Work, at: Point) -> CellIndices:
        self._stroke = Stroke(work.lattice, work.content, work.radius_mm, work.only)
        return self._stroke.begin(at)

    def _show(self, cells: CellIndices) -> CellIndices:
        # A brush never takes a cell back, so the whole set need not be compared at each move.
        work, held = self._at_work(), self._held
        if held is None or not len(cells):
            return NO_CELLS
        cells = masked(work.cells, cells, work.only)
        held[cells] = work.content
        self._covered.append(cells)
        return cells

    def _go_on(self, work: Work, at: Point) -> CellIndices:
        del work
        return self._stroke.move(at) if self._stroke is not None else NO_CELLS

    @property
    def pending(self) -> CellIndices:
        """The cells that release would paint."""
        return np.unique(np.concatenate(self._covered)) if self._covered else NO_CELLS

    def drop(self) -> CellIndices:
        """Let go without a trace; the cells that must be shown as stored again."""
        cells = self.pending
        super().drop()
        return cells

    def _last(self, work: Work) -> CellIndices:
        del work
        return self.pending

    def _forget(self) -> None:
        self._stroke = None
        self._covered = []
