"""One side of a comb to be painted on, with mouse, pen or keyboard.

The canvas turns places into points on the comb and hands them to the side at work. It knows no book:
what it shows is handed to it, what was painted is handed on.
"""

from collections.abc import Sequence
from typing import Final

import numpy as np
from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QFocusEvent,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPointingDevice,
    QResizeEvent,
    QTabletEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from beeworkbook.bench.canvas_keys import key_pressed
from beeworkbook.bench.canvas_paint import (
    FrameLook,
    brush_rect,
    mark_rect,
    paint_blank_word,
    paint_brush,
    paint_cell_cursor,
    paint_frame,
    paint_marks,
    paint_part,
    paint_shape,
    paint_stretched,
)
from beeworkbook.bench.cell_cursor import CellCursor, CursorState
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.shine import shine_image, shine_rings
from beeworkbook.bench.side_at_work import SideAtWork
from beeworkbook.bench.side_marks import SideMarks
from beeworkbook.bench.tools.base import ToolName
from beeworkbook.bench.viewport import Viewport
from beeworkbook.colony.records import Mark
from beeworkbook.comb.contents import Origin
from beeworkbook.comb.lattice import Cells, Lattice, Points
from beeworkbook.comb.orientation import EntranceMark
from beeworkbook.qt.comb_painter import paint_bare
from beeworkbook.qt.palette import Palette

REST_MS: Final = 90
"""So long after the last step of a zoom the picture is drawn anew; until then it is only stretched."""
ZOOM_STEP: Final = 1.2


class SideCanvas(QWidget):
    """A side on the bench. Units: places in the window's own pixels."""

    mark_moved = Signal(object, int)
    """A Mark was dragged to a cell."""
    mark_removed = Signal(object)
    """A Mark is to go."""
    menu_asked = Signal(int, object, QPoint)
    """A right click: the cell, the Mark there or None, and the place on the screen."""
    empty_handed = Signal()
    """Somebody would have painted, but the hand is empty."""
    entered = Signal()
    """The keeper turned to this side."""

    def __init__(self, hand: Hand, palette: Palette, parent: QWidget | None = None) -> None:
        """A canvas with nothing to show yet."""
        super().__init__(parent)
        self.hand = hand
        self.side = SideAtWork(hand, self)
        self.cursor_cell = CellCursor(self.side, self)
        self._palette = palette
        self._blank_word = ""
        self.waits = False
        """Whether a letter is waited for, so that nothing is painted."""
        self.marks = SideMarks(self.place_of)
        self._entrance = EntranceMark.NONE
        self._is_current = False
        self._rings: list[Points] = []
        self._shine: QImage | None = None
        self._view: Viewport | None = None
        self._pan_from: QPointF | None = None
        self._pointer: QPointF | None = None
        self._shape_rect = QRect()
        self._gathered: QRect | None = None
        self._is_stale = True
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._rest.timeout.connect(self._redraw)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setMinimumSize(220, 120)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self._show_pointer()
        hand.changed.connect(self._hand_changed)
        self.side.changed.connect(self._side_changed)
        self.side.shape_changed.connect(self._shape_changed)
        self.cursor_cell.moved.connect(self._cursor_moved)

    # --- what is shown ------------------------------------------------------------------------

    def show_side(
        self,
        lattice: Lattice,
        cells: Cells,
        look: Origin = Origin.PAINTED,
        *,
        bare: bool = False,
        blank_word: str = "",
        marks: Sequence[Mark] = (),
        entrance: EntranceMark = EntranceMark.NONE,
    ) -> None:
        """Show a side as it is stored; a stroke in hand is dropped.

        bare: nothing was noted of it, so it is blank with a dashed edge and `blank_word` on it.
        """
        self.drop()
        new_comb = lattice != self.side.lattice
        self.marks.show(marks)
        self._entrance, self._blank_word = entrance, blank_word
        anew = self.side.show(lattice, cells, look, bare=bare)
        if new_comb:
            self.cursor_cell.put(None)
            self._fit()
        if anew:
            self._redraw()
        self.update()

    def store_cells(self, cells: Cells) -> None:
        """The same side after some cells may have changed in the book; only those are drawn again."""
        changed = np.flatnonzero(cells != self.side.cells)
        self.cursor_cell.drop()
        self.side.store(cells, changed)

    def show_marks(self, marks: Sequence[Mark]) -> None:
        """Other marks on the same cells."""
        for mark in self.marks.show(marks):
            if self._view is not None:
                self.update(mark_rect(self.place_of(mark.cell or 0)))

    def show_last(self, cells: Cells | None) -> None:
        """Let the last visit shine through, or with None nothing."""
        lattice = self.side.lattice
        self._rings = [] if cells is None or lattice is None else shine_rings(lattice, cells)
        self._shine = None
        self.update()

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self._palette = palette
        self._redraw()

    def set_current(self, *, current: bool) -> None:
        """Show that this is the side the keeper is at."""
        if current != self._is_current:
            self._is_current = current
            self.update()

    @property
    def view(self) -> Viewport | None:
        """Where the comb lies on the canvas; None before anything is shown."""
        return self._view

    @property
    def cell_in_hand(self) -> int | None:
        """The cell the keeper points at: under the cell cursor, or else under the pointer."""
        if self.cursor_cell.cell is not None:
            return self.cursor_cell.cell
        return None if self._pointer is None else self.cell_at(self._pointer)

    def cell_at(self, place: QPointF) -> int | None:
        """The cell under a place of the canvas."""
        if self._view is None or self.side.lattice is None:
            return None
        return self.side.lattice.cell_at(*self._view.to_mm(place.x(), place.y()))

    def place_of(self, cell: int) -> QPointF:
        """The place of a cell's centre on the canvas. Errors: ValueError before anything is shown."""
        if self._view is None or self.side.lattice is None:
            raise ValueError("nothing is shown")
        return QPointF(*self._view.to_px(self.cursor_cell.centre_of(cell)))

    # --- nearer and farther -------------------------------------------------------------------

    def zoom(self, steps: float, at: QPointF | None = None) -> None:
        """Nearer by so many steps, or farther; the cell under `at` stays where it is."""
        if self._view is not None:
            where = at or QPointF(self.rect().center())
            self._look_from(self._view.zoomed(ZOOM_STEP**steps, (where.x(), where.y())))

    def show_whole(self) -> None:
        """The whole side again."""
        if self._view is not None:
            self._look_from(self._view.whole())

    def _look_from(self, view: Viewport) -> None:
        if view != self._view:
            self._view = view
            self._shine = None
            self._rest.start()
            self.update()

    def _fit(self) -> None:
        if self.side.lattice is not None:
            ratio = self.devicePixelRatioF()
            self._view = Viewport.fitted(self.side.lattice, self.width(), self.height(), ratio)

    def _redraw(self) -> None:
        """Have the kept picture drawn anew, when it is next seen, for where the comb is looked at from."""
        self._rest.stop()
        self._is_stale = True
        self.update()

    def settle(self) -> None:
        """Draw what is due to be drawn: a stroke is painted into the picture that is shown."""
        if self._view is not None and (self._is_stale or self.side.pictured != self._view):
            self._rest.stop()
            self._is_stale = False
            self.side.draw(self._view, self._palette)

    def _side_changed(self, rect: QRect) -> None:
        """Show again what changed in the picture, and no more."""
        view = self._view
        if view is None or rect.isEmpty() or self.side.pictured != view:
            self.update()
            return
        self._show_again(QRect(*view.over(rect.left(), rect.top(), rect.right() + 1, rect.bottom() + 1)))

    def _show_again(self, rect: QRect) -> None:
        """Paint a rectangle again; while one event is answered they are gathered into one."""
        if self._gathered is None:
            self.update(rect)
        else:
            self._gathered = self._gathered.united(rect)

    def _shape_changed(self) -> None:
        shape, before, view = self.side.shape_mm, self._shape_rect, self._view
        self._shape_rect = QRect() if shape is None or view is None else QRect(*view.around(shape))
        self._show_again(before.united(self._shape_rect))

    # --- marks --------------------------------------------------------------------------------

    def mark_in_hand(self) -> Mark | None:
        """The mark on the cell of the cursor, or under the pointer."""
        cell = self.cursor_cell.cell
        if cell is None:
            return None if self._pointer is None else self.marks.at(self._pointer)
        return self.marks.on(cell)

    def _end_drag(self, at: QPointF) -> None:
        mark, self.marks.dragged = self.marks.dragged, None
        self.update()
        cell = self.cell_at(at)
        if mark is not None and cell is not None and cell != mark.cell:
            self.mark_moved.emit(mark, cell)

    # --- mouse and pen ------------------------------------------------------------------------

    @property
    def is_busy(self) -> bool:
        """Whether a stroke or a mark is in hand."""
        return self.side.is_busy or self.marks.dragged is not None

    def drop(self) -> None:
        """Let go of a stroke or a mark without a trace."""
        self.cursor_cell.drop()
        self.side.drop()
        if self.marks.dragged is not None:
            self.marks.dragged = None
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The left button paints or picks a mark up, the middle one pans; a second one drops the stroke."""
        if self.is_busy:
            self.drop()
        elif event.button() is Qt.MouseButton.MiddleButton:
            self._pan_from = event.position()
        elif event.button() is Qt.MouseButton.RightButton:
            self._ask_menu(event.position(), event.globalPosition())
        elif event.button() is Qt.MouseButton.LeftButton:
            self._down(event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Paint on, drag on, pan on, or only show where the brush is."""
        at = event.position()
        if self._pan_from is not None and self._view is not None:
            step, self._pan_from = at - self._pan_from, at
            self._look_from(self._view.panned(step.x(), step.y()))
        self._along(at)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End what the button began."""
        if event.button() is Qt.MouseButton.MiddleButton:
            self._pan_from = None
        elif event.button() is Qt.MouseButton.LeftButton:
            self._up(event.position())

    def tabletEvent(self, event: QTabletEvent) -> None:
        """A pen does as the left button does, its button as the right one; its other end erases."""
        at = event.position()
        if event.type() == QEvent.Type.TabletPress:
            if self.is_busy:
                self.drop()
            elif event.button() is Qt.MouseButton.RightButton:
                self._ask_menu(at, event.globalPosition())
            elif event.button() is Qt.MouseButton.LeftButton:
                self.setFocus(Qt.FocusReason.MouseFocusReason)
                erases = event.pointerType() is QPointingDevice.PointerType.Eraser
                self._down(at, ToolName.ERASE if erases else None)
        elif event.type() == QEvent.Type.TabletRelease:
            self._up(at)
        else:
            self._along(at)
        event.accept()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """The wheel makes the brush larger or smaller; with Ctrl it looks from nearer or farther."""
        notches = event.angleDelta().y() / 120
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(notches, event.position())
        elif notches:
            self.hand.resize(notches)
        event.accept()

    def leaveEvent(self, event: QEvent) -> None:
        """The brush is no longer over this side."""
        self._point_at(None)
        super().leaveEvent(event)

    def _down(self, at: QPointF, tool: ToolName | None = None) -> None:
        self.entered.emit()
        if self._view is None or self.waits:
            return
        self.cursor_cell.put(None)
        self.marks.dragged = self.marks.at(at)
        if self.marks.dragged is None and self.hand.is_empty and tool is None:
            self.cursor_cell.put(self.cell_at(at))
            self.empty_handed.emit()
        elif self.marks.dragged is None:
            self.settle()
            self.side.press(self._view.to_mm(at.x(), at.y()), tool)
        self._point_at(at)

    def _along(self, at: QPointF) -> None:
        self._gathered = QRect()
        if self.marks.dragged is not None:
            self.update(mark_rect(self._pointer or at).united(mark_rect(at)))
        elif self._view is not None and self.cursor_cell.state is CursorState.RESTING:
            self.side.go_on(self._view.to_mm(at.x(), at.y()))
        self._point_at(at)
        rect, self._gathered = self._gathered, None
        self.update(rect)

    def _up(self, at: QPointF) -> None:
        if self.marks.dragged is not None:
            self._end_drag(at)
        elif self.cursor_cell.state is CursorState.RESTING:
            self.side.lift()

    def _ask_menu(self, at: QPointF, on_screen: QPointF) -> None:
        self.entered.emit()
        mark, cell = self.marks.at(at), self.cell_at(at)
        if mark is not None:
            cell = mark.cell
        if cell is not None:
            self.menu_asked.emit(cell, mark, on_screen.toPoint())

    def _point_at(self, at: QPointF | None) -> None:
        before, self._pointer = self._pointer, at
        for place in (before, at):
            if place is not None:
                self._show_again(self._brush_rect(place))

    def _brush_rect(self, at: QPointF) -> QRect:
        return brush_rect(at, self.hand.radius_mm * self._view.scale if self._view is not None else 0.0)

    def _hand_changed(self) -> None:
        self._show_pointer()
        if self._pointer is not None or self.cursor_cell.cell is not None:
            self.update()

    def _show_pointer(self) -> None:
        is_empty = self.hand.is_empty
        self.setCursor(Qt.CursorShape.ArrowCursor if is_empty else Qt.CursorShape.CrossCursor)

    # --- keyboard -----------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """What the keyboard does on a side is canvas_keys'; other keys go on up."""
        if self.side.lattice is None or not key_pressed(self, event):
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        """Letting Shift go ends a stroke made with the arrows."""
        if event.key() == Qt.Key.Key_Shift and not event.isAutoRepeat():
            self.cursor_cell.shift_lifted()
        super().keyReleaseEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The menu key asks for the menu of the cell in hand; a right click has asked for its own already."""
        if event.reason() is QContextMenuEvent.Reason.Keyboard and self.side.lattice is not None:
            self.ask_menu_here()
        event.accept()

    def ask_menu_here(self) -> None:
        """Ask for the menu of the cell the keyboard is at."""
        cell = self.start_cell()
        self.cursor_cell.put(cell)
        self.menu_asked.emit(cell, self.marks.on(cell), self.mapToGlobal(self.place_of(cell).toPoint()))

    def start_cell(self) -> int:
        """Where the keyboard is, or would begin: under the pointer, or else in the middle."""
        found, lattice = self.cell_in_hand, self.side.lattice
        if found is not None or lattice is None:
            return found or 0
        return lattice.cell(lattice.rows // 2, max(0, lattice.first_row // 2 - 1))

    def _cursor_moved(self, before: int | None, cell: int | None) -> None:
        if self._view is None:
            return
        if cell is not None:
            self._look_from(self._view.showing(self.cursor_cell.centre_of(cell)))
            said = (self.cursor_cell.words, self.marks.words(self.marks.on(cell)))
            self.setAccessibleDescription(", ".join(filter(None, said)))
        for at in (before, cell):
            if at is not None:
                self.update(self._brush_rect(self.place_of(at)))

    # --- events of the widget -------------------------------------------------------------------

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keeper turned to this side."""
        self.entered.emit()
        self.update()
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """A stroke in hand is dropped."""
        self.drop()
        self.update()
        super().focusOutEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The comb is fitted into the new size at once; it is small work."""
        self._fit()
        self._shine = None
        self._redraw()
        super().resizeEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The ready picture, and over it what is not the comb's own."""
        if self._is_stale and not self._rest.isActive():
            self.settle()
        painter = QPainter(self)
        rect, view, picture = event.rect(), self._view, self.side.picture
        if view is None or picture is None:
            painter.fillRect(rect, QColor(self._palette.ground))
        else:
            comb = QRect(view.left, view.top, view.width, view.height)
            if not comb.contains(rect):
                look = FrameLook(self._entrance, self._is_current, self.hasFocus())
                paint_frame(painter, self.rect(), comb, self._palette, look)
            painter.setClipRect(comb.intersected(rect))
            if self.side.is_bare:
                paint_bare(painter, QRectF(comb), self._palette)
                paint_blank_word(painter, QRectF(comb), self._blank_word, self._palette)
            elif self.side.pictured == view:
                paint_part(painter, picture.image, view, rect)
            else:
                paint_stretched(painter, view, self.side.pictured, picture.image, self._palette)
            self._paint_over(painter, view, rect)
        painter.end()

    def _paint_over(self, painter: QPainter, view: Viewport, rect: QRect) -> None:
        if self._rings:
            self._shine = self._shine or shine_image(self._rings, view)
            painter.drawImage(QPoint(view.left, view.top), self._shine)
        chosen = self.mark_in_hand() if self.cursor_cell.cell is not None else self.marks.dragged
        paint_marks(painter, rect, self.marks.places(self._pointer), chosen, self._palette)
        shape, cell, lattice = self.side.shape_mm, self.cursor_cell.cell, self.side.lattice
        if shape is not None:
            paint_shape(painter, view, shape)
        if cell is not None and lattice is not None and self.hasFocus():
            paint_cell_cursor(painter, view, lattice, cell, self._palette)
            paint_brush(painter, self.place_of(cell), view, self.hand, tag=True, cross=True)
        elif self._pointer is not None and self.marks.dragged is None:
            paint_brush(painter, self._pointer, view, self.hand, tag=not self.side.is_busy, cross=False)
