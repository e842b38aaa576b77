from PySide6.QtCore import Qt

from beeworkbook.window.main_window import MainWindow
from tests.window.conftest import CTRL, hand, press


def test_the_page_and_the_stands_take_the_keyboard(window: MainWindow) -> None:
    press(Qt.Key.Key_4, CTRL)
    assert window.page.isAncestorOf(hand())
    press(Qt.Key.Key_9, CTRL)
    assert window.stands.isAncestorOf(hand())
    press(Qt.Key.Key_Right)
    press(Qt.Key.Key_Return)
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Gate"


def test_ctrl_and_the_page_keys_go_from_stand_to_stand(window: MainWindow) -> None:
    names = []
    for _ in range(5):
        assert window.desk.colony is not None
        names.append(window.desk.colony.name)
        press(Qt.Key.Key_PageDown, CTRL)
    assert names == ["Pear Tree", "Gate", "Wall", "Elder", "Elder"]
    press(Qt.Key.Key_PageUp, CTRL, times=9)
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Pear Tree"
