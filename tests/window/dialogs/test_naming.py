"""Anything that bears a name is renamed, and what was entered by mistake goes, and comes back by undo."""

from PySide6.QtCore import Qt

from beeworkbook.colony.records import Apiary, Colony, Frame, Hive, Part, Queen, Record, Stand
from beeworkbook.window.dialogs.form import Form
from beeworkbook.window.dialogs.naming import Named, named_here
from beeworkbook.window.main_window import MainWindow
from tests.window.conftest import CTRL, SHIFT, Answerer, press, write


def test_what_bears_a_name_is_found_from_the_bees_outwards(window: MainWindow) -> None:
    assert [each.cls for each in named_here(window.desk)] == [Colony, Queen, Hive, Stand, Apiary, Part, Frame]


def test_several_names_are_one_step(window: MainWindow, answer: Answerer) -> None:
    def fill(_form: object) -> None:
        for name in ("Plum Tree", "Maud", "Old oak hive", "By the gate", "Upper Orchard", "B1", "F5"):
            write(name)
            press(Qt.Key.Key_Tab)
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_F2)
    names = [each.name for each in named_here(window.desk)]
    assert names == ["Plum Tree", "Maud", "Old oak hive", "By the gate", "Upper Orchard", "B1", "F5"]
    window.desk.undo()
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Pear Tree"
    assert named_here(window.desk)[1].name == ""


def test_a_colony_cannot_lose_its_name(window: MainWindow, answer: Answerer) -> None:
    def fill(form: object) -> None:
        assert isinstance(form, Form)
        press(Qt.Key.Key_Backspace)
        press(Qt.Key.Key_Return)
        assert form.wrong.isVisible()
        press(Qt.Key.Key_Escape)

    answer(fill)
    press(Qt.Key.Key_F2)
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Pear Tree"


def test_each_thing_can_be_taken_out_and_brought_back(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    kinds: tuple[type[Record], ...] = (Colony, Queen, Stand, Apiary, Part, Frame)
    for at, cls in enumerate(kinds):
        before: tuple[Record, ...] = desk.book.read.find(cls)

        def choose(form: object, at: int = at) -> None:
            assert isinstance(form, Form)
            press(Qt.Key.Key_Down, times=at)
            press(Qt.Key.Key_Return)

        answer(choose)
        press(Qt.Key.Key_Delete, CTRL | SHIFT)
        assert len(desk.book.read.find(cls)) == len(before) - 1, cls
        desk.undo()
        assert desk.book.read.find(cls) == before, cls


def test_a_named_thing_is_a_value() -> None:
    assert Named("Colony", Colony, 1, "Reed") == Named("Colony", Colony, 1, "Reed")
