"""Rounds and visits begun, leafed, moved and taken out, by keys on the real book."""

from datetime import date

from PySide6.QtCore import Qt

from beeworkbook.colony.records import Colony, DueKind, Round, Visit
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.form import Form
from beeworkbook.window.main_window import MainWindow
from tests.rounds.orchard import DAY
from tests.window.conftest import ALT, CTRL, Answerer, press, write


def test_a_round_is_begun_on_a_day(window: MainWindow, answer: Answerer) -> None:
    answer(lambda _form: (write("12"), press(Qt.Key.Key_Return)))
    window.go_to(View.DAYS)
    press(Qt.Key.Key_R, CTRL)
    desk = window.desk
    assert (desk.spot.view, desk.spot.day) == (View.ROUND, date(2026, 5, 12))
    assert date(2026, 5, 12) in {held.day for held in desk.book.read.find(Round)}


def test_a_look_on_an_earlier_day_opens_its_box(window: MainWindow, answer: Answerer) -> None:
    answer(lambda _form: (write("2 5"), press(Qt.Key.Key_Return)))
    press(Qt.Key.Key_D, CTRL)
    visit = window.desk.visit
    assert visit is not None
    assert (visit.day, window.desk.spot.view) == (date(2026, 5, 2), View.BOX)
    window.desk.undo()
    assert window.desk.book.read.get(Visit, visit.id) is None


def test_a_visit_is_moved_to_another_colony_and_day(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    window.go_to(View.BOX)
    visit_id = desk.visit_to_write()
    wall = next(colony for colony in desk.book.read.find(Colony) if colony.name == "Wall")

    def move(form: object) -> None:
        assert isinstance(form, Form)
        write("Wall")
        press(Qt.Key.Key_Tab)
        write("15")
        press(Qt.Key.Key_Return)

    answer(move)
    press(Qt.Key.Key_V, CTRL | ALT)
    assert desk.visit is not None
    assert (desk.visit.colony_id, desk.visit.day) == (wall.id, date(2026, 5, 15))
    desk.undo()
    held = desk.book.read.get(Visit, visit_id)
    assert held is not None
    assert held.day == DAY


def test_moving_to_a_day_it_stood_nowhere_is_refused_in_the_form(
    window: MainWindow, answer: Answerer
) -> None:
    window.go_to(View.BOX)
    window.desk.visit_to_write()

    def move(form: object) -> None:
        assert isinstance(form, Form)
        press(Qt.Key.Key_Return)
        assert "is there already" in form.wrong.text()
        assert form.isVisible()

    answer(move)
    press(Qt.Key.Key_V, CTRL | ALT)


def test_a_visit_is_taken_out_and_brought_back(window: MainWindow) -> None:
    desk = window.desk
    window.go_to(View.BOX)
    desk.go(visit_id=desk.visits()[-1].id)
    before = desk.visits()
    press(Qt.Key.Key_Delete, CTRL | ALT)
    assert desk.visits() == before[:-1]
    assert "Undo brings it back" in window.told_line.sentence
    press(Qt.Key.Key_Z, CTRL)
    assert desk.visits() == before
    assert desk.spot.visit_id == before[-1].id


def test_without_a_visit_there_is_nothing_to_take_out_or_move(window: MainWindow) -> None:
    assert window.desk.visit is None
    press(Qt.Key.Key_Delete, CTRL | ALT)
    assert "No visit lies open" in window.told_line.sentence
    press(Qt.Key.Key_V, CTRL | ALT)
    assert "No visit lies open to be moved" in window.told_line.sentence


def test_something_is_put_down_for_a_day(window: MainWindow, answer: Answerer) -> None:
    def fill(_form: object) -> None:
        write("a box of frames")
        press(Qt.Key.Key_Tab)
        write("+3")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_D, CTRL | ALT)
    due = next(due for due in window.desk.book.read.dues() if due.reason == "a box of frames")
    assert (due.kind, due.day, due.colony_id) == (
        DueKind.BRING,
        date(2026, 5, 19),
        window.desk.spot.colony_id,
    )

    def fill_for_all(_form: object) -> None:
        write("straps")
        press(Qt.Key.Key_Tab, times=2)
        press(Qt.Key.Key_Down)
        press(Qt.Key.Key_Return)

    answer(fill_for_all)
    press(Qt.Key.Key_D, CTRL | ALT)
    straps = next(due for due in window.desk.book.read.dues() if due.reason == "straps")
    assert (straps.colony_id, straps.apiary_id) == (None, window.desk.spot.apiary_id)


def test_in_the_round_the_page_keys_leaf_rounds_as_its_arrows_do(window: MainWindow) -> None:
    desk = window.desk
    days = desk.round_days()
    assert len(days) == 2
    window.go_to(View.ROUND)
    press(Qt.Key.Key_PageUp)
    assert desk.spot.day == days[0]
    press(Qt.Key.Key_PageUp)
    assert window.told_line.sentence == "There is no earlier round."
    press(Qt.Key.Key_PageDown)
    assert desk.spot.day == days[1]
    press(Qt.Key.Key_PageDown)
    assert window.told_line.sentence == "There is no later round."
