"""The window put together: rooms, keys, menus, what it says and what it remembers."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from beeworkbook.qt.desk import View
from beeworkbook.window.main_window import MainWindow
from tests.window.conftest import CTRL, SHIFT, press

ROOMS = {
    Qt.Key.Key_1: View.ROUND,
    Qt.Key.Key_2: View.BOX,
    Qt.Key.Key_3: View.BENCH,
    Qt.Key.Key_5: View.STACK,
    Qt.Key.Key_6: View.YEAR,
    Qt.Key.Key_7: View.DAYS,
    Qt.Key.Key_8: View.PAPERS,
}


def test_it_begins_in_the_round_of_the_first_apiary(window: MainWindow) -> None:
    assert window.desk.spot.view is View.ROUND
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Pear Tree"
    assert window.shell.windowTitle() == "Orchard book"


@pytest.mark.parametrize("key", list(ROOMS))
def test_each_room_has_its_key_and_takes_the_keyboard(window: MainWindow, key: Qt.Key) -> None:
    press(key, CTRL)
    view = ROOMS[key]
    assert window.desk.spot.view is view
    shown = window.views.currentWidget()
    assert shown is window.face(view)
    focus = QApplication.focusWidget()
    assert focus is not None
    assert shown.isAncestorOf(focus) or shown is focus


def test_f6_goes_a_depth_down_and_shift_f6_one_up(window: MainWindow) -> None:
    press(Qt.Key.Key_F6)
    assert window.desk.spot.view is View.BOX
    press(Qt.Key.Key_F6)
    assert window.desk.spot.view is View.BENCH
    press(Qt.Key.Key_F6)
    assert window.desk.spot.view is View.BENCH
    press(Qt.Key.Key_F6, SHIFT)
    assert window.desk.spot.view is View.BOX
    press(Qt.Key.Key_F6, SHIFT)
    press(Qt.Key.Key_F6, SHIFT)
    assert window.desk.spot.view is View.ROUND
