import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from pytestqt.qtbot import QtBot

from beeworkbook.bench.canvas import SideCanvas
from beeworkbook.bench.canvas_keys import FAR_STEP, key_pressed
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.tools.base import Work
from beeworkbook.comb.contents import Content
from beeworkbook.qt.palette import LIGHT

NONE, CTRL = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def canvas(work: Work, qtbot: QtBot) -> SideCanvas:
    made = SideCanvas(Hand(), LIGHT)
    made.hand.take_content(Content.EGGS)
    qtbot.addWidget(made)
    made.resize(520, 370)
    made.show_side(work.lattice, work.cells)
    made.cursor_cell.put(work.lattice.cell(10, 8))
    return made


def pressed(
    canvas: SideCanvas, key: Qt.Key, modifiers: Qt.KeyboardModifier = NONE, *, repeated: bool = False
) -> bool:
    return key_pressed(canvas, QKeyEvent(QEvent.Type.KeyPress, key, modifiers, "", repeated))


def test_an_arrow_is_a_cell_and_with_ctrl_ten(canvas: SideCanvas, work: Work) -> None:
    assert pressed(canvas, Qt.Key.Key_Right)
    assert canvas.cursor_cell.cell == work.lattice.cell(10, 9)
    assert pressed(canvas, Qt.Key.Key_Right, CTRL)
    assert canvas.cursor_cell.cell == work.lattice.cell(10, 9 + FAR_STEP)


def test_space_held_down_paints_once(canvas: SideCanvas, qtbot: QtBot) -> None:
    with qtbot.waitSignal(canvas.side.painted):
        assert pressed(canvas, Qt.Key.Key_Space)
    canvas.cursor_cell.put(0)
    with qtbot.assertNotEmitted(canvas.side.painted):
        assert pressed(canvas, Qt.Key.Key_Space, repeated=True)


def test_del_erases_under_the_brush_but_with_ctrl_it_is_not_the_sides(
    canvas: SideCanvas, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(canvas.side.painted) as told:
        assert pressed(canvas, Qt.Key.Key_Delete)
    assert told.args[1] is Content.NOT_RECORDED
    assert not pressed(canvas, Qt.Key.Key_Delete, CTRL)


@pytest.mark.parametrize(
    "key", [Qt.Key.Key_E, Qt.Key.Key_3, Qt.Key.Key_Escape, Qt.Key.Key_F10, Qt.Key.Key_Tab]
)
def test_letters_digits_and_keys_of_the_window_are_left_alone(canvas: SideCanvas, key: Qt.Key) -> None:
    before = canvas.cursor_cell.cell
    assert not pressed(canvas, key)
    assert canvas.cursor_cell.cell == before
    assert not canvas.is_busy
