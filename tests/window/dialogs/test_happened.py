"""Every dated line of a colony is seen, changed and taken out, and undo brings it back."""

import pytest
from PySide6.QtCore import Qt

from beeworkbook.colony.records import EventKind, Feed
from beeworkbook.window.dialogs.event_form import EventForm
from beeworkbook.window.dialogs.feed_form import FeedForm
from beeworkbook.window.dialogs.happened import HappenedDialog, happened_to
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits.events import AddEvent
from beeworkbook.workbook.edits.feed import SetFeedLeft
from tests.rounds.orchard import DAY
from tests.window.conftest import CTRL, Answerer, press


def lines(dialog: HappenedDialog) -> list[str]:
    return [dialog.list.item(at).text() for at in range(dialog.list.count())]


def test_the_lines_stand_the_latest_first_with_feed_and_what_was_left(window: MainWindow) -> None:
    desk = window.desk
    assert desk.colony is not None
    desk.do(AddEvent(desk.colony.id, DAY, EventKind.QUEEN_SEEN, "on comb 5"))
    feed = desk.book.read.find(Feed, colony_id=desk.colony.id)[0]
    desk.do(SetFeedLeft(feed.id, "0.5", DAY))
    words = [line.words for line in happened_to(desk, desk.colony)]
    assert words[0] == "queen seen, on comb 5"
    assert words[1] == "fed 2 L 1:1, 0.5 L left on 16 May"
    assert any("came" in each for each in words)


@pytest.mark.usefixtures("window")
def test_a_line_is_taken_out_by_a_key_and_comes_back_by_undo(answer: Answerer) -> None:
    def act(dialog: object) -> None:
        assert isinstance(dialog, HappenedDialog)
        before = lines(dialog)
        assert before[0] == "Sat 9 May 2026: fed 2 L 1:1"
        press(Qt.Key.Key_Delete)
        assert lines(dialog) == before[1:]
        press(Qt.Key.Key_Delete)
        assert lines(dialog) == before[2:]
        press(Qt.Key.Key_Z, CTRL)
        press(Qt.Key.Key_Z, CTRL)
        assert lines(dialog) == before

    answer(act)
    press(Qt.Key.Key_H, CTRL)


def test_enter_changes_the_line_in_hand(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    assert desk.colony is not None
    desk.do(AddEvent(desk.colony.id, DAY, EventKind.NOTE, "roof leeks"))
    found: list[str] = []

    def change(form: object) -> None:
        assert isinstance(form, EventForm)
        form.text.line.setText("roof leaks")
        press(Qt.Key.Key_Return)

    def act(dialog: object) -> None:
        assert isinstance(dialog, HappenedDialog)
        answer(change)
        press(Qt.Key.Key_Return)
        found.extend(lines(dialog))

    answer(act)
    press(Qt.Key.Key_H, CTRL)
    assert "roof leaks" in found[0]


@pytest.mark.usefixtures("window")
def test_a_feed_is_changed_in_its_own_form_and_new_lines_are_added(answer: Answerer) -> None:
    seen: list[type] = []

    def note(form: object) -> None:
        seen.append(type(form))

    def act(dialog: object) -> None:
        assert isinstance(dialog, HappenedDialog)
        for button in (dialog.change_button, dialog.add_button, dialog.feed_button):
            answer(note)
            button.setFocus()
            press(Qt.Key.Key_Return)
        dialog.remove_button.setFocus()
        before = dialog.list.count()
        press(Qt.Key.Key_Space)
        assert dialog.list.count() == before - 1

    answer(act)
    press(Qt.Key.Key_H, CTRL)
    assert seen == [FeedForm, EventForm, FeedForm]


@pytest.mark.usefixtures("window")
def test_a_colony_of_which_nothing_is_noted_says_so(answer: Answerer) -> None:
    def act(dialog: object) -> None:
        assert isinstance(dialog, HappenedDialog)
        while dialog.list.count():
            press(Qt.Key.Key_Delete)
        assert dialog.nothing.isVisible()
        assert not dialog.change_button.isEnabled()
        dialog.change()
        dialog.remove()

    answer(act)
    press(Qt.Key.Key_H, CTRL)
