"""The band: pulled in from the edge of the comb that lies nearest, as stores lie along the top bar.

Resting → pulling → resting.
"""

from typing import ClassVar

import numpy as np

from beeworkbook.bench.tools.base import State, Tool, ToolName, Work
from beeworkbook.comb.lattice import CellIndices, Lattice, Point, Points
from beeworkbook.comb.regions import Edge, band


class BandTool(Tool):
    """Takes the cells from one edge of the frame to where the hand is."""

    name: ClassVar = ToolName.BAND
    busy: ClassVar = State.PULLING

    def __init__(self) -> None:
        super().__init__()
        self._edge: Edge = "top"
        self._depth_mm = 0.0

    @property
    def edge(self) -> Edge:
        """The edge it is pulled from."""
        return self._edge

    def _begin(self, work: Work, at: Point) -> CellIndices:
        depths = _depths(work.lattice, at)
        self._edge = min(depths, key=lambda edge: depths[edge])
        return self._go_on(work, at)

    def _go_on(self, work: Work, at: Point) -> CellIndices:
        self._depth_mm = max(0.0, _depths(work.lattice, at)[self._edge])
        return band(work.lattice, self._edge, self._depth_mm)

    @property
    def shape_mm(self) -> Points | None:
        """The inner border of the band."""
        if self.state is State.RESTING:
            return None
        width, height = self._at_work().lattice.width_mm, self._at_work().lattice.height_mm
        across, down, depth = np.array((0.0, width)), np.array((0.0, height)), self._depth_mm
        if self._edge in {"top", "bottom"}:
            y = depth if self._edge == "top" else height - depth
            return np.column_stack((across, np.full(2, y)))
        x = depth if self._edge == "left" else width - depth
        return np.column_stack((np.full(2, x), down))


def _depths(lattice: Lattice, at: Point) -> dict[Edge, float]:
    """How far a point lies from each edge of the frame's inside."""
    x, y = at
    return {"top": y, "bottom": lattice.height_mm - y, "left": x, "right": lattice.width_mm - x}
