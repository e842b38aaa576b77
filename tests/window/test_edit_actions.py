from PySide6.QtCore import Qt

from beeworkbook.colony.records import Colony
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits.place import RenameRecord
from tests.window.conftest import CTRL, SHIFT, Answerer, press, write


def test_undo_and_redo_say_what_they_did(window: MainWindow) -> None:
    assert window.desk.colony is not None
    window.desk.do(RenameRecord(Colony, window.desk.colony.id, "Plum Tree"))
    press(Qt.Key.Key_Z, CTRL)
    assert window.told_line.sentence == "Taken back: rename the colony"
    press(Qt.Key.Key_Z, CTRL | SHIFT)
    assert window.told_line.sentence == "Done again: rename the colony"


def test_with_nothing_to_take_back_nothing_is_said(window: MainWindow) -> None:
    press(Qt.Key.Key_Z, CTRL)
    press(Qt.Key.Key_Z, CTRL | SHIFT)
    assert window.told_line.sentence == ""


def test_f2_renames_the_colony(window: MainWindow, answer: Answerer) -> None:
    answer(lambda _form: (write("Plum Tree"), press(Qt.Key.Key_Return)))
    press(Qt.Key.Key_F2)
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Plum Tree"
    assert window.stands.cards()[0].name == "Plum Tree"
