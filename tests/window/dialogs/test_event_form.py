"""Something happened: a dated line entered by keys, with only the fields it has a use for."""

from datetime import date

import pytest
from PySide6.QtCore import Qt

from beeworkbook.colony.records import Colony, Event, EventKind, Queen
from beeworkbook.window.dialogs.event_form import OFFERED, EventForm, ends
from beeworkbook.window.main_window import MainWindow
from tests.rounds.orchard import DAY
from tests.window.conftest import CTRL, SHIFT, Answerer, press, write


def last_event(window: MainWindow) -> Event:
    return max(window.desk.book.read.find(Event), key=lambda event: event.id)


@pytest.mark.parametrize("kind", [kind for kind in OFFERED if kind is not EventKind.HEFT])
def test_each_kind_of_line_is_entered_and_taken_back(
    window: MainWindow, answer: Answerer, kind: EventKind
) -> None:
    before = window.desk.book.read.find(Event)

    def fill(form: object) -> None:
        assert isinstance(form, EventForm)
        form.kind.choose(kind)
        form.text.line.setFocus()
        write("at noon")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_V, CTRL | SHIFT)
    event = last_event(window)
    assert (event.kind, event.text, event.day) == (kind, "at noon", DAY)
    if ends(kind):
        assert "no longer stands" in window.told_line.sentence
    window.desk.undo()
    assert window.desk.book.read.find(Event) == before


@pytest.mark.usefixtures("window")
def test_only_the_fields_of_a_kind_are_shown(answer: Answerer) -> None:
    def look(form: object) -> None:
        assert isinstance(form, EventForm)
        shown = {}
        for kind in OFFERED:
            form.kind.choose(kind)
            fields = {"text": form.text, "other": form.other, "mark": form.mark, "left": form.left}
            shown[kind] = {name for name, field in fields.items() if field.widget.isVisible()}
        assert shown[EventKind.SWARMED] == {"text"}
        assert shown[EventKind.UNITED] == {"text", "other"}
        assert shown[EventKind.QUEEN_CAME] == {"text", "mark"}
        assert shown[EventKind.HEFT] == {"left"}

    answer(look)
    press(Qt.Key.Key_V, CTRL | SHIFT)


def test_a_heft_needs_one_pull_and_keeps_both(window: MainWindow, answer: Answerer) -> None:
    def fill(form: object) -> None:
        assert isinstance(form, EventForm)
        form.kind.choose(EventKind.HEFT)
        press(Qt.Key.Key_Return)
        assert "one side at least" in form.wrong.text()
        write("14,5")
        form.right.line.setFocus()
        write("15")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_V, CTRL | SHIFT)
    event = last_event(window)
    assert (event.kind, event.left_kg, event.right_kg) == (EventKind.HEFT, 14.5, 15.0)


def test_a_queen_that_is_marked_stays_the_same_queen(window: MainWindow, answer: Answerer) -> None:
    queens = window.desk.book.read.find(Queen)

    def fill(form: object) -> None:
        assert isinstance(form, EventForm)
        form.kind.choose(EventKind.QUEEN_MARKED)
        form.mark.choose("blue")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_V, CTRL | SHIFT)
    after = window.desk.book.read.find(Queen)
    assert len(after) == len(queens)
    event = last_event(window)
    queen = window.desk.book.read.get(Queen, event.queen_id)
    assert queen is not None
    assert (queen.mark_colour, queen.clipped) == ("blue", False)


def test_a_line_is_changed_with_its_queen_in_one_step(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    colony = desk.colony
    assert colony is not None
    came = next(event for event in desk.book.read.events(colony.id) if event.queen_id)
    form = EventForm(window, desk, colony, came)

    def fill(_form: object) -> None:
        assert form.chosen is EventKind.QUEEN_CAME
        assert form.mark.value == "yellow"
        form.year.line.setText("2022")
        form.day.line.setText("2025-05-03")
        press(Qt.Key.Key_Return)

    answer(fill)
    assert form.ask_and_keep()
    changed = desk.book.read.get(Event, came.id)
    assert changed is not None
    assert changed.day == date(2025, 5, 3)
    queen = desk.book.read.get(Queen, came.queen_id)
    assert queen is not None
    assert queen.year == 2022
    desk.undo()
    assert desk.book.read.get(Event, came.id) == came


def test_uniting_with_another_colony_names_it(window: MainWindow, answer: Answerer) -> None:
    gate = next(colony for colony in window.desk.book.read.find(Colony) if colony.name == "Gate")

    def fill(form: object) -> None:
        assert isinstance(form, EventForm)
        form.kind.choose(EventKind.UNITED)
        form.other.choose(gate.id)
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_V, CTRL | SHIFT)
    assert last_event(window).other_colony_id == gate.id
