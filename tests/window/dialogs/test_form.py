"""A form is worked with keys: Enter agrees, Escape leaves all as it was, a refusal loses nothing typed."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot
from shiboken6 import isValid

from beeworkbook.colony.soft_notes import SoftNote
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.window.dialogs.form import (
    Choice,
    DayLine,
    FieldError,
    Form,
    NumberLine,
    TextBlock,
    TextLine,
    Tick,
)
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.errors import RefusedError
from tests.window.conftest import Answerer, press, write

TODAY = date(2026, 5, 16)


@pytest.fixture
def form(qtbot: QtBot) -> Form:
    made = Form(None, "Trial", "Do it", "What it is for.")
    qtbot.addWidget(made)
    return made


def test_enter_agrees_from_any_field_and_escape_leaves(form: Form, answer: Answerer) -> None:
    name = form.add(TextLine("Name"))
    choice = form.add(Choice("Which", [("one", 1), ("two", 2)]))
    for widget in (name.widget, choice.widget):

        def agree(_form: object, widget: QWidget = widget) -> None:
            widget.setFocus()
            press(Qt.Key.Key_Return)

        answer(agree)
        assert form.ask() is True
    answer(lambda _form: press(Qt.Key.Key_Escape))
    assert form.ask() is False


def test_enter_on_the_button_that_leaves_does_not_agree(form: Form, answer: Answerer) -> None:
    form.add(TextLine("Name"))
    answer(lambda _form: (form.leave_button.setFocus(), press(Qt.Key.Key_Return)))
    assert form.ask() is False


def test_a_needed_field_is_named_and_gets_the_keyboard(form: Form, answer: Answerer) -> None:
    form.add(TextLine("First"))
    needed = form.add(TextLine("Name", needed=True))

    def act(_form: object) -> None:
        press(Qt.Key.Key_Return)
        assert form.isVisible()
        assert form.wrong.text() == "Name is wanted."
        assert QApplication.focusWidget() is needed.line
        write("Reed")
        press(Qt.Key.Key_Return)

    answer(act)
    assert form.ask() is True
    assert needed.text == "Reed"


def test_a_refusal_stays_in_the_form_with_all_that_was_typed(form: Form, answer: Answerer) -> None:
    name = form.add(TextLine("Name"))
    tries: list[str] = []

    def deed() -> object:
        tries.append(name.text)
        if len(tries) == 1:
            raise RefusedError("Not on that day.")
        return 7

    def act(_form: object) -> None:
        write("Reed")
        press(Qt.Key.Key_Return)
        assert form.isVisible()
        assert form.wrong.text() == "Not on that day."
        assert name.text == "Reed"
        press(Qt.Key.Key_Return)

    answer(act)
    assert form.ask(deed) is True
    assert (tries, form.made) == (["Reed", "Reed"], 7)


def test_a_check_of_the_whole_form_names_its_field(form: Form, answer: Answerer) -> None:
    first, second = form.add(NumberLine("From", 3)), form.add(NumberLine("To", 2))

    def check() -> None:
        if (first.number or 0) > (second.number or 0):
            raise FieldError("It ends before it begins.", second)

    form.add_check(check)

    def act(_form: object) -> None:
        press(Qt.Key.Key_Return)
        assert form.wrong.isVisible()
        assert QApplication.focusWidget() is second.line
        second.line.selectAll()
        write("5")
        press(Qt.Key.Key_Return)

    answer(act)
    assert form.ask() is True


@pytest.mark.parametrize(("typed", "number"), [("", None), ("4,5", 4.5), ("4.5", 4.5), (" 12 ", 12.0)])
def test_a_number_takes_comma_and_point(qtbot: QtBot, typed: str, number: float | None) -> None:  # noqa: ARG001
    line = NumberLine("Kilograms")
    line.line.setText(typed)
    line.check()
    assert line.number == number


def test_what_is_no_number_is_refused_in_words(qtbot: QtBot) -> None:  # noqa: ARG001
    line = NumberLine("Kilograms")
    line.line.setText("many")
    with pytest.raises(FieldError, match=r"Kilograms: .many. is not a number"):
        line.check()
    assert line.whole is None


def test_a_year_is_shown_without_a_space_in_it(qtbot: QtBot) -> None:  # noqa: ARG001
    assert NumberLine("Year", 2026).text == "2026"


def test_a_day_says_how_it_was_understood(qtbot: QtBot) -> None:  # noqa: ARG001
    line = DayLine("Day", TODAY, TODAY)
    assert line.day == TODAY
    line.line.setText("12")
    assert line.day == date(2026, 5, 12)
    assert line.read.text() == "Tuesday 12 May 2026"
    line.line.setText("31 2")
    assert line.read.text() == "not a day"
    with pytest.raises(FieldError, match="Day: "):
        line.check()
    ahead = DayLine("Day", TODAY, TODAY, ahead=True)
    ahead.line.setText("12")
    assert ahead.day == date(2026, 6, 12)


def test_a_choice_begins_with_its_first_option_also_when_none_is_one(qtbot: QtBot) -> None:  # noqa: ARG001
    choice = Choice("Which", [("foundation", 3), ("nothing", None)])
    assert choice.value == 3
    choice.choose(None)
    assert choice.value is None
    assert Choice("Which", [("a", 1), ("b", 2)], 2).value == 2
    assert Choice("Which", []).value is None
    changed: list[object] = []
    choice.on_change(lambda: changed.append(choice.value))
    choice.offer([("x", 8), ("y", 9)], 9)
    assert choice.value == 9
    assert changed[-1] == 9


def test_a_field_put_away_is_not_checked(form: Form, answer: Answerer) -> None:
    needed = form.add(TextLine("Name", needed=True))
    other = form.add(TextLine("Other"))
    form.show_field(needed, shown=False)
    answer(lambda _form: (other.line.setFocus(), press(Qt.Key.Key_Return)))
    assert form.ask() is True


def test_every_field_has_a_name_and_a_tooltip_and_its_label_leads_to_it(form: Form) -> None:
    fields = [
        form.add(TextLine("Name", hint="as it is called")),
        form.add(NumberLine("Number")),
        form.add(TextBlock("Note")),
        form.add(Tick("dark")),
        form.add(DayLine("Day", TODAY, TODAY)),
    ]
    assert [field.widget.accessibleName() for field in fields] == ["Name", "Number", "Note", "dark", "Day"]
    assert all(field.widget.toolTip() for field in fields)


def test_enter_in_a_block_of_text_is_a_new_line(form: Form, answer: Answerer) -> None:
    note = form.add(TextBlock("Note"))

    def act(_form: object) -> None:
        note.block.setFocus()
        write("one")
        press(Qt.Key.Key_Return)
        write("two")
        press(Qt.Key.Key_Tab)
        assert QApplication.focusWidget() is not note.block
        form.do_button.setFocus()
        press(Qt.Key.Key_Return)

    answer(act)
    assert form.ask() is True
    assert note.text == "one\ntwo"


def test_soft_notes_stand_below_with_their_reason_and_make_room_for_themselves(
    form: Form, answer: Answerer
) -> None:
    form.add(TextLine("Name"))
    notes = form.add_notes()

    def act(_form: object) -> None:
        assert not notes.isVisible()
        before = form.height()
        notes.show_notes([SoftNote("A super is on.", "syrup may be carried up")] * 3)
        QApplication.processEvents()
        assert notes.text().startswith("A super is on. Why: syrup may be carried up.")
        assert form.height() > before
        notes.show_notes([])
        assert not notes.isVisible()

    answer(act)
    form.ask()


def test_a_form_longer_than_the_screen_scrolls_to_its_fields(form: Form, answer: Answerer) -> None:
    fields = [form.add(TextLine(f"Field {n}", needed=n == 59)) for n in range(60)]

    def act(_form: object) -> None:
        assert form.height() <= form.screen().availableGeometry().height()
        press(Qt.Key.Key_Return)
        last = fields[-1].line
        assert QApplication.focusWidget() is last
        place = last.mapTo(form.area.viewport(), last.rect().center())
        assert form.area.viewport().rect().contains(place)
        assert form.do_button.isVisible()

    answer(act)
    form.ask()


def test_two_columns_stand_beside_one_another(form: Form, answer: Answerer) -> None:
    left = form.add(TextLine("Left"))
    form.next_column()
    right = form.add(TextLine("Right"))

    def act(_form: object) -> None:
        edges = [field.line.mapTo(form, field.line.rect().topLeft()) for field in (left, right)]
        assert edges[0].y() == edges[1].y()
        assert edges[0].x() + left.line.width() < edges[1].x()
        left.line.setFocus()
        press(Qt.Key.Key_Tab)
        assert QApplication.focusWidget() is right.line
        assert isinstance(right.widget, QLineEdit)

    answer(act)
    form.ask()


def test_tab_goes_through_the_fields_as_they_stand_and_then_to_the_buttons(
    form: Form, answer: Answerer
) -> None:
    fields = [form.add(TextLine(f"Field {n}")) for n in range(3)]
    below = Tick("and then")
    form.add_below(below.box)

    def act(_form: object) -> None:
        expected = [*(field.line for field in fields), below.box, form.do_button, form.leave_button]
        for widget in expected:
            assert QApplication.focusWidget() is widget
            press(Qt.Key.Key_Tab)
        assert QApplication.focusWidget() is fields[0].line

    answer(act)
    form.ask()


def test_a_dialog_takes_no_part_of_the_window_from_python(window: MainWindow, answer: Answerer) -> None:
    """PySide once let go of menus all over the window when a dialog blocked it; then dark failed."""
    answer(lambda _form: press(Qt.Key.Key_Escape))
    press(Qt.Key.Key_F2)
    for widget in (window.shell.menuBar(), window.hand_strip, *window.menus.values()):
        assert isValid(widget)
    window.desk.set_palette(DARK)
    window.desk.set_palette(LIGHT)
    for action in window.actions_by_name.values():
        assert isValid(action)
