"""Colonies, stands and apiaries: moved, ordered, found again, taken out, by keys on the real book."""

from datetime import date

from PySide6.QtCore import Qt

from beeworkbook.colony.records import Apiary, Colony, EventKind, Stand
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.form import Form
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits.events import AddEvent
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from tests.rounds.orchard import DAY
from tests.window.conftest import ALT, CTRL, SHIFT, Answerer, press, write


def names(window: MainWindow) -> list[str]:
    return [card.name for card in window.stands.cards()]


def test_a_second_apiary_is_added_changed_and_visited(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk

    def fill(_form: object) -> None:
        for text in ("Heath", "behind the school", "AB 12 34"):
            write(text)
            press(Qt.Key.Key_Tab)
        press(Qt.Key.Key_Tab)
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_A, CTRL | SHIFT)
    assert desk.apiary is not None
    assert (desk.apiary.name, desk.apiary.place, desk.apiary.map_reference) == (
        "Heath",
        "behind the school",
        "AB 12 34",
    )
    assert names(window) == []
    answer(lambda _form: (write("Upper Heath"), press(Qt.Key.Key_Return)))
    press(Qt.Key.Key_P, CTRL | ALT)
    assert desk.apiary.name == "Upper Heath"
    assert desk.apiary.place == "behind the school"
    press(Qt.Key.Key_G, CTRL | SHIFT)
    assert desk.apiary.name == "Orchard"
    assert "Now in Orchard" in window.told_line.sentence
    assert names(window) == ["Pear Tree", "Gate", "Wall", "Elder"]


def test_with_one_apiary_there_is_no_next(window: MainWindow) -> None:
    press(Qt.Key.Key_G, CTRL | SHIFT)
    assert "one apiary" in window.told_line.sentence


def test_any_colony_is_gone_to_by_its_first_letters(window: MainWindow, answer: Answerer) -> None:
    answer(lambda _form: (write("Wal"), press(Qt.Key.Key_Return)))
    press(Qt.Key.Key_G, CTRL)
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Wall"


def test_a_colony_that_is_no_more_is_still_found(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    wall = next(colony for colony in desk.book.read.find(Colony) if colony.name == "Wall")
    desk.do(AddEvent(wall.id, date(2026, 5, 10), EventKind.DIED))
    assert "Wall" not in names(window)
    options: list[str] = []

    def choose(form: object) -> None:
        assert isinstance(form, Form)
        combo = form.fields[0].widget
        options.extend(combo.itemText(at) for at in range(combo.count()))  # type: ignore[attr-defined]
        write("Wal")
        press(Qt.Key.Key_Return)

    answer(choose)
    press(Qt.Key.Key_G, CTRL)
    assert any("till 11 May 2026" in option for option in options)
    assert desk.spot.colony_id == wall.id
    assert desk.spot.view is View.BOX
    assert desk.visit is not None


def test_a_stand_goes_earlier_and_later_in_the_walk(window: MainWindow) -> None:
    press(Qt.Key.Key_Right, ALT | SHIFT)
    assert names(window) == ["Gate", "Pear Tree", "Wall", "Elder"]
    press(Qt.Key.Key_Left, ALT | SHIFT)
    press(Qt.Key.Key_Left, ALT | SHIFT)
    assert names(window) == ["Pear Tree", "Gate", "Wall", "Elder"]
    press(Qt.Key.Key_Z, CTRL)
    assert names(window) == ["Gate", "Pear Tree", "Wall", "Elder"]


def test_a_hive_moves_to_a_new_stand_in_one_step(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    stands = len(desk.book.read.find(Stand))

    def move(form: object) -> None:
        assert isinstance(form, Form)
        press(Qt.Key.Key_Tab, times=2)
        write("By the brook")
        press(Qt.Key.Key_Return)

    answer(move)
    press(Qt.Key.Key_M, CTRL | SHIFT)
    home = desk.book.read.home(desk.spot.colony_id, DAY)  # type: ignore[arg-type]
    assert home is not None
    stand = desk.book.read.get(Stand, home.stand_id)
    assert stand is not None
    assert stand.name == "By the brook"
    assert names(window)[-1] == "Pear Tree"
    desk.undo()
    assert len(desk.book.read.find(Stand)) == stands
    assert names(window)[0] == "Pear Tree"


def test_a_box_is_numbered_from_the_other_end_for_good_or_for_this_visit(
    window: MainWindow, answer: Answerer
) -> None:
    desk = window.desk
    window.go_to(View.BOX)
    visit_id, frame_id = desk.visit_to_write(), desk.spot.frame_id
    assert visit_id is not None
    assert frame_id is not None
    desk.do(LayOutComb(visit_id, frame_id, "S4"))
    answer(lambda _form: press(Qt.Key.Key_Return))
    press(Qt.Key.Key_E, CTRL | ALT)
    sides = desk.book.read.sides(visit_id)
    assert {side.place for side in sides} == {11}
    desk.undo()
    assert {side.place for side in desk.book.read.sides(visit_id)} == {1}
    answer(lambda _form: (press(Qt.Key.Key_Down), press(Qt.Key.Key_Return)))
    press(Qt.Key.Key_E, CTRL | ALT)
    box = desk.box()
    assert box is not None
    assert box.frames[10].frame is not None
    assert box.frames[10].frame.id == frame_id


def test_an_apiary_that_goes_leaves_no_face_behind(window: MainWindow, answer: Answerer) -> None:
    def choose(_form: object) -> None:
        press(Qt.Key.Key_Down, times=3)
        press(Qt.Key.Key_Return)

    answer(choose)
    press(Qt.Key.Key_Delete, CTRL | SHIFT)
    assert window.desk.book.read.find(Apiary) == ()
    assert names(window) == []
    press(Qt.Key.Key_Z, CTRL)
    assert names(window) == ["Pear Tree", "Gate", "Wall", "Elder"]
