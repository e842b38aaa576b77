"""The pick: takes up the content that is pointed at. Resting → looking → resting. It changes nothing."""

from typing import ClassVar

from beeworkbook.bench.tools.base import NO_CELLS, State, Tool, ToolName, Work
from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import CellIndices, Point


class PickTool(Tool):
    """Looks at the cell under it; after release `picked` is its content."""

    name: ClassVar = ToolName.PICK
    busy: ClassVar = State.LOOKING
    paints: ClassVar = False

    def __init__(self) -> None:
        super().__init__()
        self.picked: Content | None = None

    def _begin(self, work: Work, at: Point) -> CellIndices:
        cell = work.lattice.cell_at(*at)
        self.picked = None if cell is None else Content(int(work.cells[cell]))
        return NO_CELLS

    def _go_on(self, work: Work, at: Point) -> CellIndices:
        return self._begin(work, at)
