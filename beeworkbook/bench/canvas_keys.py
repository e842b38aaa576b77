"""What keys do on a side: arrows move the cell cursor, with Shift they paint, Space paints, Del takes away.

Letters are none of its business: they are read by bench_keys.
"""

from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent

from beeworkbook.bench.tools.base import ToolName
from beeworkbook.comb.lattice import Direction

if TYPE_CHECKING:
    from beeworkbook.bench.canvas import SideCanvas

FAR_STEP: Final = 10
"""Cells a step with Ctrl."""
_ARROWS: Final[dict[int, Direction]] = {
    Qt.Key.Key_Left: "left",
    Qt.Key.Key_Right: "right",
    Qt.Key.Key_Up: "up",
    Qt.Key.Key_Down: "down",
}
_SHIFT: Final = Qt.KeyboardModifier.ShiftModifier
_CTRL: Final = Qt.KeyboardModifier.ControlModifier


def key_pressed(canvas: "SideCanvas", event: QKeyEvent) -> bool:
    """Do what a key means on the side; whether it means anything."""
    key = event.key()
    if key in _ARROWS:
        canvas.settle()
        steps = FAR_STEP if event.modifiers() & _CTRL else 1
        painting = bool(event.modifiers() & _SHIFT) and not canvas.hand.is_empty and not canvas.waits
        canvas.cursor_cell.go(_ARROWS[key], steps, canvas.start_cell(), painting=painting)
    elif key == Qt.Key.Key_Space:
        if not event.isAutoRepeat() and not canvas.waits:
            _space(canvas)
    elif key == Qt.Key.Key_Escape and canvas.is_busy:
        canvas.drop()
    elif key in {Qt.Key.Key_Delete, Qt.Key.Key_Backspace} and not event.modifiers():
        if not canvas.waits:
            _take_away(canvas)
    elif key == Qt.Key.Key_F10 and event.modifiers() & _SHIFT:
        canvas.ask_menu_here()
    else:
        return False
    return True


def _space(canvas: "SideCanvas") -> None:
    """Paint, begin or end; an empty hand only shows where it is."""
    canvas.settle()
    if canvas.hand.is_empty:
        canvas.cursor_cell.put(canvas.start_cell())
        canvas.empty_handed.emit()
    else:
        canvas.cursor_cell.space(canvas.start_cell())


def _take_away(canvas: "SideCanvas") -> None:
    """The mark in hand goes; without one the cell is as if nobody had spoken of it."""
    mark = canvas.mark_in_hand()
    if mark is not None:
        canvas.mark_removed.emit(mark)
    else:
        canvas.settle()
        canvas.cursor_cell.dab(canvas.start_cell(), ToolName.ERASE)
