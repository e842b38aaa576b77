"""The ellipse: pulled from its middle outwards, as a patch of brood lies on the comb.

Resting → stretching → resting.
"""

import math
from typing import ClassVar, Final

import numpy as np

from beeworkbook.bench.tools.base import NO_CELLS, State, Tool, ToolName, Work
from beeworkbook.comb.lattice import CellIndices, Point, Points
from beeworkbook.comb.regions import ellipse

_CORNERS: Final = 72
_LEAST_MM: Final = 1.0
"""An ellipse narrower than this is still a slip of the hand."""


class EllipseTool(Tool):
    """Takes the cells whose centre lies within the ellipse."""

    name: ClassVar = ToolName.ELLIPSE
    busy: ClassVar = State.STRETCHING

    def __init__(self) -> None:
        super().__init__()
        self._centre: Point = (0.0, 0.0)
        self._radii: Point = (0.0, 0.0)

    def _begin(self, work: Work, at: Point) -> CellIndices:
        del work
        self._centre, self._radii = at, (0.0, 0.0)
        return NO_CELLS

    def _go_on(self, work: Work, at: Point) -> CellIndices:
        rx, ry = abs(at[0] - self._centre[0]), abs(at[1] - self._centre[1])
        self._radii = (rx, ry)
        if min(rx, ry) < _LEAST_MM:
            return NO_CELLS
        return ellipse(work.lattice, self._centre, rx, ry)

    @property
    def shape_mm(self) -> Points | None:
        """The ellipse as a closed line."""
        if self.state is State.RESTING or min(self._radii) < _LEAST_MM:
            return None
        turn = np.linspace(0.0, 2 * math.pi, _CORNERS + 1)
        return np.column_stack(
            (
                self._centre[0] + self._radii[0] * np.cos(turn),
                self._centre[1] + self._radii[1] * np.sin(turn),
            )
        )
