"""Feed as it is said, what was left, and the soft notes while it is typed."""

from datetime import date

import pytest
from PySide6.QtCore import Qt

from beeworkbook.colony.records import Due, DueKind, Feed
from beeworkbook.window.dialogs.feed_form import FeedForm, feed_on
from beeworkbook.window.main_window import MainWindow
from tests.rounds.orchard import DAY, LAST
from tests.window.conftest import CTRL, SHIFT, Answerer, press, write


def feeds(window: MainWindow) -> tuple[Feed, ...]:
    assert window.desk.colony is not None
    return tuple(sorted(window.desk.book.read.feeds(window.desk.colony.id), key=lambda feed: feed.id))


def test_what_was_left_and_what_is_given_are_one_step(window: MainWindow, answer: Answerer) -> None:
    before = feeds(window)

    def fill(form: object) -> None:
        assert isinstance(form, FeedForm)
        form.left.line.setFocus()
        write("0.5")
        form.given.line.setFocus()
        write("2,5 kg fondant")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_F, CTRL | SHIFT)
    old, new = feeds(window)
    assert (old.left_litres, old.left_day) == (0.5, DAY)
    assert (new.given_kg, new.day) == (2.5, DAY)
    window.desk.undo()
    assert feeds(window) == before


def test_nothing_typed_keeps_nothing(window: MainWindow, answer: Answerer) -> None:
    before = window.desk.book.undo_label
    answer(lambda _form: press(Qt.Key.Key_Return))
    press(Qt.Key.Key_F, CTRL | SHIFT)
    assert window.desk.book.undo_label == before


@pytest.mark.usefixtures("window")
def test_a_mixture_at_the_edge_is_spoken_of_while_it_is_typed(answer: Answerer) -> None:
    def look(form: object) -> None:
        assert isinstance(form, FeedForm)
        form.given.line.setFocus()
        write("2L 1:2")
        assert "more water than sugar" in form.notes.text()
        assert "Why: " in form.notes.text()

    answer(look)
    press(Qt.Key.Key_F, CTRL | SHIFT)


def test_what_cannot_be_read_stays_in_the_field(window: MainWindow, answer: Answerer) -> None:
    before = feeds(window)

    def fill(form: object) -> None:
        assert isinstance(form, FeedForm)
        form.given.line.setFocus()
        write("a bucket")
        press(Qt.Key.Key_Return)
        assert form.wrong.isVisible()
        assert form.given.text == "a bucket"
        press(Qt.Key.Key_Escape)

    answer(fill)
    press(Qt.Key.Key_F, CTRL | SHIFT)
    assert feeds(window) == before


def test_a_feed_is_changed(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    assert desk.colony is not None
    feed = feed_on(desk, desk.colony, DAY)
    assert feed is not None
    form = FeedForm(window, desk, desk.colony, feed)

    def fill(_form: object) -> None:
        assert form.given.text == "2L 1:1"
        form.given.line.setText("3L 2:1")
        form.left.line.setText("1")
        form.left_day.line.setText("15 5")
        press(Qt.Key.Key_Return)

    answer(fill)
    assert form.ask_and_keep()
    changed = desk.book.read.get(Feed, feed.id)
    assert changed is not None
    assert (changed.given_litres, changed.sugar_parts, changed.day) == (3.0, 2.0, LAST)
    assert (changed.left_litres, changed.left_day) == (1.0, date(2026, 5, 15))
    assert not [due for due in desk.book.read.find(Due) if due.kind is DueKind.FEED_LOOK and due.day == DAY]


def test_a_feed_cannot_be_changed_into_nothing(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    assert desk.colony is not None
    feed = feed_on(desk, desk.colony, DAY)
    form = FeedForm(window, desk, desk.colony, feed)

    def fill(_form: object) -> None:
        form.given.line.clear()
        press(Qt.Key.Key_Return)
        assert "is wanted" in form.wrong.text()
        press(Qt.Key.Key_Escape)

    answer(fill)
    assert not form.ask_and_keep()


def test_feed_on_a_day_with_a_line_stands_in_that_line_too(window: MainWindow, answer: Answerer) -> None:
    visit_id = window.desk.visit_to_write()

    def fill(form: object) -> None:
        assert isinstance(form, FeedForm)
        form.given.line.setFocus()
        write("1L 1:1")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_F, CTRL | SHIFT)
    assert feeds(window)[-1].visit_id == visit_id
