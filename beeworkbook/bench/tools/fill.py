"""The fill: all cells that hang together with the one pointed at and hold the same.

Resting → pouring → resting.
"""

from typing import ClassVar

from beeworkbook.bench.tools.base import NO_CELLS, State, Tool, ToolName, Work
from beeworkbook.comb.lattice import CellIndices, Point
from beeworkbook.comb.regions import flood


class FillTool(Tool):
    """Takes one patch whole, as soon as it is pointed at; moving on takes another instead."""

    name: ClassVar = ToolName.FILL
    busy: ClassVar = State.POURING

    def _begin(self, work: Work, at: Point) -> CellIndices:
        cell = work.lattice.cell_at(*at)
        return NO_CELLS if cell is None else flood(work.lattice, work.cells, cell)

    def _go_on(self, work: Work, at: Point) -> CellIndices:
        return self._begin(work, at)
