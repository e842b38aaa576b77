"""The freehand outline: a line drawn round a patch, filled when it is let go.

Resting → tracing → resting.
"""

from typing import ClassVar, Final

import numpy as np

from beeworkbook.bench.tools.base import NO_CELLS, State, Tool, ToolName, Work
from beeworkbook.comb.lattice import CellIndices, Point, Points
from beeworkbook.comb.regions import masked, outline_cells

_STEP_MM: Final = 1.5
"""Points nearer than this to the last one add nothing a cell of 5 mm could notice."""
_LEAST_POINTS: Final = 3


class OutlineTool(Tool):
    """Takes the cells whose centre lies within the line, closed by its shortest way."""

    name: ClassVar = ToolName.OUTLINE
    busy: ClassVar = State.TRACING

    def __init__(self) -> None:
        super().__init__()
        self._points: list[Point] = []

    def _begin(self, work: Work, at: Point) -> CellIndices:
        del work
        self._points = [at]
        return NO_CELLS

    def _go_on(self, work: Work, at: Point) -> CellIndices:
        del work
        last = self._points[-1]
        if abs(at[0] - last[0]) + abs(at[1] - last[1]) >= _STEP_MM:
            self._points.append(at)
        return NO_CELLS

    def _last(self, work: Work) -> CellIndices:
        if len(self._points) < _LEAST_POINTS:
            return NO_CELLS
        return masked(work.cells, outline_cells(work.lattice, np.array(self._points)), work.only)

    @property
    def shape_mm(self) -> Points | None:
        """The line as far as it was drawn."""
        return np.array(self._points) if len(self._points) > 1 else None

    def _forget(self) -> None:
        self._points = []
