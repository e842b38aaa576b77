"""The eraser: a brush that takes back what was said. Resting → painting → resting."""

from dataclasses import replace
from typing import ClassVar

from beeworkbook.bench.tools.base import ToolName, Work
from beeworkbook.bench.tools.brush import BrushTool
from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import CellIndices, Point


class EraseTool(BrushTool):
    """Makes the cells it sweeps over not recorded, which is not the same as empty comb."""

    name: ClassVar = ToolName.ERASE

    def press(self, work: Work, at: Point) -> CellIndices:
        """Begin on a side; the cells that look different now."""
        return super().press(replace(work, content=Content.NOT_RECORDED), at)
