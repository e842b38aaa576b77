from typing import ClassVar

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, Qt
from PySide6.QtGui import (
    QContextMenuEvent,
    QInputDevice,
    QKeyEvent,
    QMouseEvent,
    QPaintEvent,
    QPointingDevice,
    QTabletEvent,
    QWheelEvent,
)
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.bench.canvas import REST_MS, SideCanvas
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.tools.base import ToolName, Work
from beeworkbook.colony.records import FrameId, Mark, MarkId, VisitId
from beeworkbook.comb.contents import Content, Face, MarkKind
from beeworkbook.comb.lattice import Point
from beeworkbook.comb.orientation import EntranceMark
from beeworkbook.comb.strokes import sweep
from beeworkbook.qt.palette import DARK, LIGHT

LEFT, MIDDLE, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.MiddleButton, Qt.MouseButton.RightButton


@pytest.fixture
def canvas(work: Work, qtbot: QtBot) -> SideCanvas:
    made = SideCanvas(Hand(), LIGHT)
    made.hand.take_content(Content.EGGS)
    qtbot.addWidget(made)
    made.resize(520, 370)
    made.show_side(work.lattice, work.cells, entrance=EntranceMark.LEFT)
    made.show()
    qtbot.waitExposed(made)
    made.setFocus()
    return made


def place(canvas: SideCanvas, at: Point) -> QPoint:
    assert canvas.view is not None
    return QPointF(*canvas.view.to_px(at)).toPoint()


def drag(canvas: SideCanvas, *points: Point) -> None:
    QTest.mousePress(canvas, LEFT, pos=place(canvas, points[0]))
    for point in points[1:]:
        move(canvas, point)
    QTest.mouseRelease(canvas, LEFT, pos=place(canvas, points[-1]))


def move(canvas: SideCanvas, point: Point, buttons: Qt.MouseButton = LEFT) -> None:
    at = QPointF(place(canvas, point))
    event = QMouseEvent(
        QEvent.Type.MouseMove, at, canvas.mapToGlobal(at), Qt.MouseButton.NoButton, buttons,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    QApplication.sendEvent(canvas, event)


def pen(
    canvas: SideCanvas,
    device: QPointingDevice,
    kind: QEvent.Type,
    point: Point,
    button: Qt.MouseButton,
) -> None:
    at = QPointF(place(canvas, point))
    held = Qt.MouseButton.NoButton if kind is QEvent.Type.TabletRelease else button
    event = QTabletEvent(
        kind, device, at, at, 0.7, 0, 0, 0.0, 0.0, 0.0, Qt.KeyboardModifier.NoModifier, button, held
    )
    QApplication.sendEvent(canvas, event)


def pen_stroke(canvas: SideCanvas, device: QPointingDevice) -> None:
    pen(canvas, device, QEvent.Type.TabletPress, (80.0, 60.0), LEFT)
    pen(canvas, device, QEvent.Type.TabletMove, (110.0, 70.0), LEFT)
    pen(canvas, device, QEvent.Type.TabletRelease, (110.0, 70.0), LEFT)


def queen(cell: int) -> Mark:
    return Mark(MarkId(7), VisitId(1), MarkKind.QUEEN, FrameId(1), Face.A, cell)


# --- mouse and pen ------------------------------------------------------------------------------


def test_a_drag_paints_what_the_brush_swept(canvas: SideCanvas, work: Work, qtbot: QtBot) -> None:
    with qtbot.waitSignal(canvas.side.painted) as told:
        drag(canvas, (80.0, 60.0), (100.0, 66.0), (120.0, 84.0))
    patch, content = told.args
    assert content is Content.EGGS
    assert canvas.view is not None
    ends = [
        canvas.view.to_mm(*place(canvas, at).toTuple()) for at in ((80.0, 60.0), (100.0, 66.0), (120.0, 84.0))
    ]
    swept = {
        int(cell)
        for start, end in (ends[:2], ends[1:])
        for cell in sweep(work.lattice, start, end, canvas.hand.radius_mm)
    }
    assert set(patch.indices.tolist()) == swept
    assert set(patch.after.tolist()) == {int(Content.EGGS)}


def test_a_pen_paints_as_the_mouse_does(canvas: SideCanvas, qtbot: QtBot) -> None:
    with qtbot.waitSignal(canvas.side.painted) as told:
        pen_stroke(canvas, QPointingDevice.primaryPointingDevice())
    assert len(told.args[0].indices) > 20
    assert told.args[1] is Content.EGGS


def test_the_other_end_of_a_pen_erases(canvas: SideCanvas, qtbot: QtBot) -> None:
    stylus = QInputDevice.DeviceType.Stylus
    kind = QPointingDevice.PointerType.Eraser
    capability = QInputDevice.Capability.Position
    eraser = QPointingDevice("a pen", 7, stylus, kind, capability, 1, 2)
    with qtbot.waitSignal(canvas.side.painted) as told:
        pen_stroke(canvas, eraser)
    assert told.args[1] is Content.NOT_RECORDED
    assert canvas.hand.tool is ToolName.BRUSH


def test_the_button_of_a_pen_asks_for_the_menu(canvas: SideCanvas, qtbot: QtBot) -> None:
    with qtbot.waitSignal(canvas.menu_asked) as told, qtbot.assertNotEmitted(canvas.side.painted):
        pen(canvas, QPointingDevice.primaryPointingDevice(), QEvent.Type.TabletPress, (80.0, 60.0), RIGHT)
    assert told.args[0] == canvas.cell_at(QPointF(place(canvas, (80.0, 60.0))))


@pytest.mark.parametrize("way", ["menu key", "shift and F10"])
def test_the_menu_of_a_cell_comes_by_key_with_the_mark_on_it(
    canvas: SideCanvas, qtbot: QtBot, way: str
) -> None:
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    cell = canvas.cursor_cell.cell
    assert cell is not None
    canvas.show_marks([queen(cell)])
    with qtbot.waitSignal(canvas.menu_asked) as told:
        if way == "menu key":
            keyboard = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(1, 1), QPoint(1, 1))
            QApplication.sendEvent(canvas, keyboard)
        else:
            QTest.keyClick(canvas, Qt.Key.Key_F10, Qt.KeyboardModifier.ShiftModifier)
    assert told.args[:2] == [cell, queen(cell)]
    assert told.args[2] == canvas.mapToGlobal(canvas.place_of(cell).toPoint())


@pytest.mark.parametrize("way", ["escape", "second button", "lost focus"])
def test_a_stroke_in_hand_is_dropped_without_a_trace(
    canvas: SideCanvas, work: Work, qtbot: QtBot, way: str
) -> None:
    QTest.mousePress(canvas, LEFT, pos=place(canvas, (80.0, 60.0)))
    move(canvas, (110.0, 70.0))
    assert not np.array_equal(canvas.side.cells, work.cells)
    with qtbot.assertNotEmitted(canvas.side.painted):
        if way == "escape":
            QTest.keyClick(canvas, Qt.Key.Key_Escape)
        elif way == "second button":
            QTest.mousePress(canvas, RIGHT, pos=place(canvas, (110.0, 70.0)))
        else:
            canvas.clearFocus()
        QTest.mouseRelease(canvas, LEFT, pos=place(canvas, (110.0, 70.0)))
    assert np.array_equal(canvas.side.cells, work.cells)


def test_while_painting_only_a_part_is_painted_again(
    canvas: SideCanvas, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    qtbot.wait(20)
    rects: list[QRect] = []
    original = canvas.paintEvent

    def noting(event: QPaintEvent) -> None:
        rects.append(event.rect())
        original(event)

    monkeypatch.setattr(canvas, "paintEvent", noting)
    QTest.mousePress(canvas, LEFT, pos=place(canvas, (80.0, 60.0)))
    move(canvas, (84.0, 62.0))
    qtbot.wait(20)
    QTest.mouseRelease(canvas, LEFT, pos=place(canvas, (84.0, 62.0)))
    qtbot.wait(20)
    assert rects
    assert max(rect.width() * rect.height() for rect in rects) < canvas.width() * canvas.height() / 4


def test_the_wheel_changes_the_brush_and_with_ctrl_the_distance(canvas: SideCanvas) -> None:
    assert canvas.view is not None
    before = canvas.hand.radius_mm
    wheel(canvas, Qt.KeyboardModifier.NoModifier)
    assert canvas.hand.radius_mm > before
    wheel(canvas, Qt.KeyboardModifier.ControlModifier)
    assert canvas.view.zoom > 1


def wheel(canvas: SideCanvas, modifiers: Qt.KeyboardModifier) -> None:
    at = QPointF(place(canvas, (100.0, 70.0)))
    event = QWheelEvent(
        at, canvas.mapToGlobal(at), QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton, modifiers,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(canvas, event)


def test_the_picture_is_drawn_anew_after_zooming_stops(canvas: SideCanvas, qtbot: QtBot) -> None:
    whole = canvas.side.pictured
    canvas.zoom(4)
    assert canvas.side.pictured == whole
    canvas.grab()
    qtbot.waitUntil(lambda: canvas.side.pictured == canvas.view, timeout=20 * REST_MS)
    canvas.show_whole()
    assert canvas.view == whole


def test_a_stroke_right_after_zooming_paints_where_it_points(
    canvas: SideCanvas, work: Work, qtbot: QtBot
) -> None:
    canvas.zoom(5, QPointF(place(canvas, (100.0, 70.0))))
    with qtbot.waitSignal(canvas.side.painted) as told:
        drag(canvas, (100.0, 70.0), (102.0, 70.0))
    centre = work.lattice.centres[told.args[0].indices].mean(axis=0)
    assert centre == pytest.approx((101.0, 70.0), abs=3.0)
    assert canvas.side.pictured == canvas.view


def test_the_middle_button_pans(canvas: SideCanvas) -> None:
    canvas.zoom(8)
    assert canvas.view is not None
    before = canvas.view.to_mm(260.0, 180.0)
    QTest.mousePress(canvas, MIDDLE, pos=QPoint(260, 180))
    at = QPointF(300, 200)
    QApplication.sendEvent(
        canvas,
        QMouseEvent(QEvent.Type.MouseMove, at, at, MIDDLE, MIDDLE, Qt.KeyboardModifier.NoModifier),
    )
    QTest.mouseRelease(canvas, MIDDLE, pos=QPoint(300, 200))
    assert canvas.view.to_mm(300.0, 200.0) == pytest.approx(before, abs=0.01)


# --- marks --------------------------------------------------------------------------------------


def test_a_mark_is_dragged_from_cell_to_cell_and_nothing_is_painted(
    canvas: SideCanvas, work: Work, qtbot: QtBot
) -> None:
    cell = work.lattice.cell_at(60.0, 40.0)
    assert cell is not None
    canvas.show_marks([queen(cell)])
    with qtbot.waitSignal(canvas.mark_moved) as told, qtbot.assertNotEmitted(canvas.side.painted):
        drag(canvas, (60.0, 40.0), (90.0, 50.0), (120.0, 80.0))
    assert told.args == [queen(cell), canvas.cell_at(QPointF(place(canvas, (120.0, 80.0))))]


def test_a_dragged_mark_let_go_beside_the_comb_stays(canvas: SideCanvas, work: Work, qtbot: QtBot) -> None:
    cell = work.lattice.cell_at(60.0, 40.0)
    assert cell is not None
    canvas.show_marks([queen(cell)])
    with qtbot.assertNotEmitted(canvas.mark_moved):
        drag(canvas, (60.0, 40.0), (-40.0, 50.0))


def test_delete_takes_the_mark_away_and_without_one_erases(
    canvas: SideCanvas, work: Work, qtbot: QtBot
) -> None:
    cell = work.lattice.cell_at(60.0, 40.0)
    assert cell is not None
    canvas.show_marks([queen(cell)])
    canvas.cursor_cell.put(cell)
    with qtbot.waitSignal(canvas.mark_removed) as told:
        QTest.keyClick(canvas, Qt.Key.Key_Delete)
    assert told.args == [queen(cell)]
    canvas.show_marks([])
    with qtbot.waitSignal(canvas.side.painted) as painted:
        QTest.keyClick(canvas, Qt.Key.Key_Backspace)
    assert painted.args[1] is Content.NOT_RECORDED


def test_a_right_click_asks_for_the_menu_of_the_cell(canvas: SideCanvas, work: Work, qtbot: QtBot) -> None:
    cell = work.lattice.cell_at(60.0, 40.0)
    assert cell is not None
    canvas.show_marks([queen(cell)])
    for point, mark in (((60.0, 40.0), queen(cell)), ((150.0, 100.0), None)):
        with qtbot.waitSignal(canvas.menu_asked) as told:
            QTest.mousePress(canvas, RIGHT, pos=place(canvas, point))
        assert told.args[0] == work.lattice.cell_at(*point)
        assert told.args[1] == mark


# --- keyboard -----------------------------------------------------------------------------------


def test_the_keyboard_paints_without_a_mouse(canvas: SideCanvas, qtbot: QtBot) -> None:
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    QTest.keyClick(canvas, Qt.Key.Key_Down)
    start = canvas.cursor_cell.cell
    assert start is not None
    with qtbot.waitSignal(canvas.side.painted) as told:
        QTest.keyClick(canvas, Qt.Key.Key_Space)
    assert start in told.args[0].indices
    with qtbot.waitSignal(canvas.side.painted) as told:
        for _ in range(9):
            QTest.keyClick(canvas, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
        QTest.keyRelease(canvas, Qt.Key.Key_Shift)
    assert canvas.cursor_cell.cell == start + 9
    assert "row" in canvas.accessibleDescription()


def test_ctrl_takes_the_cursor_far(canvas: SideCanvas) -> None:
    QTest.keyClick(canvas, Qt.Key.Key_Left, Qt.KeyboardModifier.ControlModifier)
    first = canvas.cursor_cell.cell
    assert first is not None
    QTest.keyClick(canvas, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    assert canvas.cursor_cell.cell == first + 10


def test_the_cursor_takes_the_picture_along(canvas: SideCanvas) -> None:
    canvas.zoom(12)
    for _ in range(12):
        QTest.keyClick(canvas, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    assert canvas.view is not None
    assert canvas.cursor_cell.cell is not None
    at = canvas.place_of(canvas.cursor_cell.cell)
    assert canvas.view.left <= at.x() <= canvas.view.left + canvas.view.width


def test_the_mouse_puts_the_cursor_away(canvas: SideCanvas) -> None:
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    drag(canvas, (80.0, 60.0), (82.0, 60.0))
    assert canvas.cursor_cell.cell is None


def test_other_keys_go_on_up(work: Work, qtbot: QtBot) -> None:
    class Above(QWidget):
        keys: ClassVar[list[int]] = []

        def keyPressEvent(self, event: QKeyEvent) -> None:
            self.keys.append(event.key())

    above = Above()
    qtbot.addWidget(above)
    canvas = SideCanvas(Hand(), LIGHT, above)
    canvas.resize(520, 370)
    canvas.show_side(work.lattice, work.cells)
    for key in (Qt.Key.Key_E, Qt.Key.Key_Return, Qt.Key.Key_Escape):
        QTest.keyClick(canvas, key)
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    assert Above.keys == [Qt.Key.Key_E, Qt.Key.Key_Return, Qt.Key.Key_Escape]


# --- what is shown ------------------------------------------------------------------------------


def test_a_bare_side_says_so_and_shows_no_comb(canvas: SideCanvas, work: Work) -> None:
    shown = canvas.grab().toImage()
    canvas.show_side(work.lattice, np.zeros_like(work.cells), bare=True, blank_word="not looked at")
    bare = canvas.grab().toImage()
    assert canvas.view is not None
    at = place(canvas, (60.0, 30.0))
    assert bare.pixelColor(at).name().upper() == "#F7FFFD"
    assert shown.pixelColor(at) != bare.pixelColor(at)


def test_the_entrance_is_marked_on_its_edge(canvas: SideCanvas, work: Work) -> None:
    assert canvas.view is not None
    y = canvas.view.top + canvas.view.height // 2
    left, right = canvas.view.left - 2, canvas.view.left + canvas.view.width + 1
    image = canvas.grab().toImage()
    assert image.pixelColor(left, y).name().upper() == LIGHT.ink
    assert image.pixelColor(right, y).name().upper() != LIGHT.ink
    canvas.show_side(work.lattice, work.cells, entrance=EntranceMark.RIGHT)
    assert canvas.grab().toImage().pixelColor(right, y).name().upper() == LIGHT.ink


def test_the_last_visit_shines_through_and_goes_again(canvas: SideCanvas, work: Work) -> None:
    before = canvas.grab().toImage()
    canvas.show_last(work.cells)
    assert canvas.grab().toImage() != before
    canvas.show_last(None)
    assert canvas.grab().toImage() == before


def test_it_goes_dark(canvas: SideCanvas, work: Work) -> None:
    canvas.show_side(work.lattice, np.zeros_like(work.cells), bare=True)
    canvas.set_palette(DARK)
    assert canvas.grab().toImage().pixelColor(place(canvas, (60.0, 30.0))).name().upper() == "#141C1F"


def test_a_canvas_without_a_comb_paints_its_ground(qtbot: QtBot) -> None:
    made = SideCanvas(Hand(), LIGHT)
    qtbot.addWidget(made)
    made.resize(300, 200)
    assert made.grab().toImage().pixelColor(20, 20).name().upper() == LIGHT.ground
    QTest.keyClick(made, Qt.Key.Key_Right)
    made.zoom(3)
    assert made.cell_in_hand is None
    with pytest.raises(ValueError, match="nothing is shown"):
        made.place_of(4)


def test_a_mask_and_a_tool_of_the_hand_are_used(canvas: SideCanvas, qtbot: QtBot) -> None:
    canvas.hand.take_tool(ToolName.ELLIPSE)
    canvas.hand.paint_only_over(Content.STORES)
    with qtbot.waitSignal(canvas.side.painted) as told:
        drag(canvas, (100.0, 70.0), (150.0, 100.0), (180.0, 125.0))
    assert set(told.args[0].before.tolist()) == {int(Content.STORES)}
