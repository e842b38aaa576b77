"""The Days: what is due, and that nothing is ticked off by looking at its page."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Arrival, ColonyId, Due, DueKind, DueState, Question, Visit
from beeworkbook.qt.desk import Desk, View
from beeworkbook.window.days_view import DaysView
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.edits.in_visit import NO_VISIT
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.visit import SetAnswer
from tests.rounds.orchard import DAY, make_orchard

CAME = DAY - timedelta(days=8)


@pytest.fixture
def days(tmp_path: Path, qtbot: QtBot) -> Iterator[DaysView]:
    """Eight days after a nucleus came: its feed look is over, its first look was yesterday."""
    book = make_orchard(tmp_path / "days.beebook")
    desk = Desk(book)
    spec = ArrivalSpec(
        "Quince", Arrival.NUCLEUS, CAME, apiary_id=desk.spot.apiary_id, stand_name="9", fed="2L 1:1"
    )
    desk.do(ArriveColony(spec))
    desk.do(AddDue(DueKind.BRING, DAY, "a box of frames", apiary_id=desk.spot.apiary_id))
    view = DaysView(desk)
    qtbot.addWidget(view)
    view.resize(900, 500)
    with qtbot.waitExposed(view):
        view.show()
    yield view
    desk.close()
    book.close()


def due_of(view: DaysView, kind: DueKind) -> Due:
    return next(line.due for line in view.lines() if line.due.kind is kind)


def state(view: DaysView, due: Due) -> DueState:
    found = view._desk.book.read.get(Due, due.id)
    assert found is not None
    return found.state


def test_opening_a_page_notes_nothing_and_ticks_nothing_off(days: DaysView) -> None:
    desk, due = days._desk, due_of(days, DueKind.FEED_LOOK)
    visits, label = desk.book.read.find(Visit), desk.book.undo_label
    days.page_buttons[due.id].click()
    assert (desk.spot.view, desk.spot.colony_id, desk.spot.day) == (View.ROUND, due.colony_id, DAY)
    assert desk.book.read.find(Visit) == visits
    assert desk.book.undo_label == label
    assert state(days, due) is DueState.OPEN
    assert state(days, due_of(days, DueKind.FIRST_LOOK)) is DueState.OPEN


def test_what_is_noted_on_the_page_ticks_it_off_in_the_same_step(days: DaysView) -> None:
    desk, due = days._desk, due_of(days, DueKind.FIRST_LOOK)
    assert desk.spot.apiary_id is not None
    assert due.colony_id is not None
    eggs = (SetAnswer(NO_VISIT, Question.EGGS, "y"),)
    desk.do(OnLine(desk.spot.apiary_id, ColonyId(due.colony_id), DAY, eggs))
    assert state(days, due) is DueState.DONE
    assert due.id not in days.do_buttons
    desk.undo()
    assert state(days, due) is DueState.OPEN
    assert due.id in days.do_buttons


def test_done_is_the_keepers_word_and_undo_brings_it_back(days: DaysView) -> None:
    due = due_of(days, DueKind.FEED_LOOK)
    days.do_buttons[due.id].click()
    assert state(days, due) is DueState.DONE
    days._desk.undo()
    assert state(days, due) is DueState.OPEN


def test_what_has_no_page_has_no_button_for_one(days: DaysView) -> None:
    bring = due_of(days, DueKind.BRING)
    assert not days.page_buttons[bring.id].isVisibleTo(days)
    days.drop_due(bring)
    assert state(days, bring) is DueState.DROPPED


def test_the_arrows_go_along_the_dues_and_their_buttons(days: DaysView) -> None:
    days.take_focus()
    first = days.lines()[0].due
    assert days.page_buttons[first.id].hasFocus()
    QTest.keyClick(focus(), Qt.Key.Key_Right)
    assert days.do_buttons[first.id].hasFocus()
    lines = len(days.lines())
    for _ in range(lines + 2):
        QTest.keyClick(focus(), Qt.Key.Key_Down)
    assert days._in_hand() == (lines - 1, 2)
    for _ in range(3):
        QTest.keyClick(focus(), Qt.Key.Key_Right)
    assert days._in_hand() == (lines - 1, 0)
    for _ in range(5):
        QTest.keyClick(focus(), Qt.Key.Key_Left)
    assert days._in_hand() == (lines - 1, len(days._buttons[-1]) - 1)


def focus() -> QWidget:
    widget = QApplication.focusWidget()
    assert widget is not None
    return widget
