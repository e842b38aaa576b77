"""One side while it is worked on: what is stored, what is shown meanwhile, its counts, its kept picture.

No widget: a canvas shows the picture and hands points on. While a tool is at work only this knows of
it; lifting the tool gives a patch to whoever listens, anything else leaves no trace.
"""

import numpy as np
from PySide6.QtCore import QObject, QRect, Signal

from beeworkbook.bench.hand import Hand
from beeworkbook.bench.tools import TOOLS
from beeworkbook.bench.tools.base import State, Tool, ToolName, Work
from beeworkbook.bench.tools.pick import PickTool
from beeworkbook.bench.viewport import Viewport
from beeworkbook.comb.contents import CONTENTS, Origin
from beeworkbook.comb.lattice import CellIndices, Cells, Lattice, Point, Points
from beeworkbook.qt.comb_painter import face_picture, paint_of
from beeworkbook.qt.face_picture import FacePicture
from beeworkbook.qt.palette import Palette


class SideAtWork(QObject):
    """A side and the tool on it. Units: points in millimetres on the comb."""

    painted = Signal(object, object)
    """A finished stroke: its CellPatch and the Content painted."""
    picked = Signal(object)
    """A Content was taken up."""
    changed = Signal(QRect)
    """Pixels of the picture that must be shown again; an empty rectangle is all of it."""
    counted = Signal()
    """The cells shown are others now, also in the middle of a stroke; see counts."""
    shape_changed = Signal()
    """The line of the tool at work is another now; see shape_mm."""

    def __init__(self, hand: Hand, parent: QObject | None = None) -> None:
        """A side with nothing to show yet."""
        super().__init__(parent)
        self.hand = hand
        self.lattice: Lattice | None = None
        self.look = Origin.PAINTED
        self.is_bare = False
        self.picture: FacePicture | None = None
        self.pictured: Viewport | None = None
        self.counts = [0] * len(CONTENTS)
        self._stored: Cells = np.empty(0, np.uint8)
        self._shown: Cells = np.empty(0, np.uint8)
        self._tool: Tool | None = None

    @property
    def cells(self) -> Cells:
        """What is shown now, a stroke in hand included. Shapes: (cells,)."""
        return self._shown

    @property
    def state(self) -> State:
        """What the tool on this side is doing."""
        return State.RESTING if self._tool is None else self._tool.state

    @property
    def is_busy(self) -> bool:
        """Whether a tool is at work."""
        return self._tool is not None

    @property
    def shape_mm(self) -> Points | None:
        """The line of the tool at work. Shapes: (n, 2)."""
        return None if self._tool is None else self._tool.shape_mm

    # --- what is shown ------------------------------------------------------------------------

    def show(self, lattice: Lattice, cells: Cells, look: Origin, *, bare: bool) -> bool:
        """Show a side as it is stored; a stroke in hand is dropped. Whether its picture must be made anew.

        bare: nothing was noted of it, so that there is no comb to be seen yet.
        """
        self.drop()
        anew = lattice != self.lattice or look != self.look or self.picture is None
        self.lattice, self.look, self.is_bare = lattice, look, bare
        self._stored, self._shown = cells, cells.copy()
        self.counts = np.bincount(cells, minlength=len(CONTENTS)).tolist()
        if not anew and self.picture is not None:
            self.picture.show(self._shown)
        self.counted.emit()
        return anew

    def store(self, cells: Cells, changed: CellIndices) -> None:
        """The same side after some cells have changed in the book; only those are drawn again."""
        # A stroke goes on over what is stored now, or its patch would not fit.
        self.drop()
        self._stored = cells
        self._repaint(changed, cells)

    def draw(self, view: Viewport, palette: Palette) -> None:
        """Make the picture anew for where the comb is looked at from."""
        if self.lattice is None:
            return
        width, height = view.picture_size
        paint = paint_of(palette, self.look, beside=palette.sunk)
        self.picture = face_picture(self.lattice, view.sight, width, height, paint, view.ratio)
        self.picture.show(self._shown)
        self.pictured = view

    # --- the tool -----------------------------------------------------------------------------

    def press(self, at: Point, tool: ToolName | None = None) -> None:
        """Put the tool in hand, or another one, down on a point of the comb."""
        if self.lattice is None or self._tool is not None:
            return
        hand = self.hand
        self._tool = TOOLS[tool or hand.tool]()
        work = Work(self.lattice, self._stored, hand.content, hand.radius_mm, hand.mask)
        self._show_held(self._tool.press(work, at))

    def go_on(self, at: Point) -> None:
        """Move the tool at work to a point of the comb."""
        if self._tool is not None:
            self._show_held(self._tool.move(at))

    def lift(self) -> None:
        """End the stroke: what it painted is handed on, and shown until the book says otherwise."""
        tool, self._tool = self._tool, None
        if tool is None:
            return
        content = tool.content
        patch = tool.release()
        self.shape_changed.emit()
        if isinstance(tool, PickTool):
            if tool.picked is not None:
                self.picked.emit(tool.picked)
        elif patch is not None:
            self._repaint(patch.indices, patch.apply(self._stored))
            self.painted.emit(patch, content)

    def drop(self) -> None:
        """Let go of the stroke in hand without a trace."""
        tool, self._tool = self._tool, None
        if tool is not None:
            self._repaint(tool.drop(), self._stored)
            self.shape_changed.emit()

    def revert(self) -> None:
        """Show what is stored: what was painted was refused."""
        self._repaint(np.flatnonzero(self._shown != self._stored), self._stored)

    # --- within -------------------------------------------------------------------------------

    def _show_held(self, changed: CellIndices) -> None:
        tool = self._tool
        if tool is not None and tool.held is not None:
            self._repaint(changed, tool.held)
            if tool.shape_mm is not None:
                self.shape_changed.emit()

    def _repaint(self, cells: CellIndices, held: Cells) -> None:
        """Show what these cells hold, count them, and fill only their rectangle again."""
        if not len(cells):
            return
        now = held[cells]
        gone = np.bincount(self._shown[cells], minlength=len(CONTENTS)).tolist()
        come = np.bincount(now, minlength=len(CONTENTS)).tolist()
        self.counts = [held - out + into for held, out, into in zip(self.counts, gone, come, strict=True)]
        self._shown[cells] = now
        was_bare, self.is_bare = self.is_bare, False
        if self.picture is not None:
            rect = self.picture.patch(cells, held)
            self.changed.emit(QRect() if was_bare else rect)
        self.counted.emit()
