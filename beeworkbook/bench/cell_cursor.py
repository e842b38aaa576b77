"""The keyboard's hand on a side: a cursor that goes from cell to cell, paints with Space and with Shift.

Resting → stroking → resting while Shift is held, or between two presses of Space for the tools that
are stretched. It knows no widget and no keys, only directions.
"""

from enum import StrEnum
from typing import Final

from PySide6.QtCore import QObject, Signal

from beeworkbook.bench.side_at_work import SideAtWork
from beeworkbook.bench.tools.base import ToolName
from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import Direction, Point
from beeworkbook.comb.names import content_name
from beeworkbook.words import say

AT_ONCE: Final = frozenset({ToolName.BRUSH, ToolName.ERASE, ToolName.FILL, ToolName.PICK})
"""The tools that one press of the space bar begins and ends."""
HELD_BY_SHIFT: Final = frozenset({ToolName.BRUSH, ToolName.ERASE})


class CursorState(StrEnum):
    """What the cursor is doing."""

    RESTING = "resting"
    STROKING = "stroking"


class CellCursor(QObject):
    """A cursor on a side; `cell` is None until the keyboard is used."""

    moved = Signal(object, object)
    """From a cell to a cell; None is nowhere."""

    def __init__(self, side: SideAtWork, parent: QObject | None = None) -> None:
        """A cursor that is nowhere yet."""
        super().__init__(parent)
        self._side = side
        self.cell: int | None = None
        self.state = CursorState.RESTING

    def go(self, direction: Direction, steps: int, start: int, *, painting: bool) -> None:
        """So many cells on, from `start` if it was nowhere; painting begins or goes on with a stroke."""
        lattice = self._side.lattice
        if lattice is None:
            return
        cell = start if self.cell is None else self.cell
        if painting and not self._side.is_busy:
            self.state = CursorState.STROKING
            self._side.press(self.centre_of(cell))
        for _ in range(steps):
            cell = lattice.step(cell, direction)
        self.put(cell)
        if self.state is CursorState.STROKING:
            self._side.go_on(self.centre_of(cell))

    def space(self, start: int) -> None:
        """Paint here; with a tool that is stretched, begin here and the next time end here."""
        if self.state is CursorState.STROKING:
            self.end()
        elif self._side.hand.tool in AT_ONCE:
            self.dab(start, self._side.hand.tool)
        elif not self._side.is_busy:
            cell = start if self.cell is None else self.cell
            self.put(cell)
            self.state = CursorState.STROKING
            self._side.press(self.centre_of(cell))

    def dab(self, start: int, tool: ToolName) -> None:
        """Press a tool once and lift it, at the cursor or at `start` if it is nowhere."""
        if self._side.lattice is None or self._side.is_busy:
            return
        self._side.press(self.centre_of(start if self.cell is None else self.cell), tool)
        self._side.lift()

    def shift_lifted(self) -> None:
        """Shift was let go: a stroke of the brush ends."""
        if self.state is CursorState.STROKING and self._side.hand.tool in HELD_BY_SHIFT:
            self.end()

    def end(self) -> None:
        """End the stroke made with the keyboard."""
        self.state = CursorState.RESTING
        self._side.lift()

    def drop(self) -> None:
        """Forget that a stroke was begun; the side drops it."""
        self.state = CursorState.RESTING

    def put(self, cell: int | None) -> None:
        """Stand on a cell, or nowhere."""
        before, self.cell = self.cell, cell
        if before != cell:
            self.moved.emit(before, cell)

    def centre_of(self, cell: int) -> Point:
        """The centre of a cell in millimetres. Errors: ValueError if there is no comb."""
        if self._side.lattice is None:
            raise ValueError("there is no comb")
        x, y = self._side.lattice.centres[cell].tolist()
        return x, y

    @property
    def words(self) -> str:
        """Where it stands and what is there, to be read aloud."""
        lattice = self._side.lattice
        if lattice is None or self.cell is None:
            return ""
        row, column = lattice.row_and_column(self.cell)
        content = content_name(Content(int(self._side.cells[self.cell])))
        return say("row {row}, cell {column}: {content}", row=row + 1, column=column + 1, content=content)
