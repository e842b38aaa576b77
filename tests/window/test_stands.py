"""The strip of colonies: what it says of each today, and that it says no more than was done."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from beeworkbook.colony.dues import PlannedDue
from beeworkbook.colony.records import Due, DueId, DueKind, Level, Question, VisitId
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.icons import State
from beeworkbook.window.stands import StandField, StandsStrip, looked_today, state_of
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.edits.in_visit import NO_VISIT
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.visit import BeginVisit, PassOver, SetAnswer, SetNext, SetNote
from beeworkbook.workbook.place import Edit
from tests.rounds.orchard import DAY, NAMES, make_orchard


@pytest.fixture
def strip(tmp_path: Path, qtbot: QtBot) -> Iterator[StandsStrip]:
    book = make_orchard(tmp_path / "stands.beebook")
    desk = Desk(book)
    made = StandsStrip(desk)
    qtbot.addWidget(made)
    made.resize(900, 72)
    with qtbot.waitExposed(made):
        made.show()
    yield made
    desk.close()
    book.close()


def note(strip: StandsStrip, *edits: Edit) -> VisitId:
    spot = strip._desk.spot
    assert spot.apiary_id is not None
    assert spot.colony_id is not None
    return VisitId(int(str(strip._desk.do(OnLine(spot.apiary_id, spot.colony_id, DAY, edits)))))


def press(field: StandField) -> None:
    """Press the left button on a field; nothing hears its release, which would be warned of."""
    left, at = Qt.MouseButton.LeftButton, QPointF(field.rect().center())
    event = QMouseEvent(
        QEvent.Type.MouseButtonPress, at, field.mapToGlobal(at), left, left, Qt.KeyboardModifier.NoModifier
    )
    QApplication.sendEvent(field, event)


def due(days: int, kind: DueKind = DueKind.LOOK, until: int | None = None) -> Due:
    last = None if until is None else DAY + timedelta(days=until)
    return Due(DueId(1), kind, DAY + timedelta(days=days), "why", until=last)


@pytest.mark.parametrize(
    ("dues", "looked", "state", "words"),
    [
        ((), None, State.PLAIN, "nothing due"),
        ((), Level.ONE_LINE, State.DONE, "looked at today"),
        ((), Level.PAINTED, State.DONE, "looked at today"),
        ((), Level.NOT_OPENED, State.OUTSIDE, "not opened today"),
        ((), Level.PASSED_OVER, State.PASSED, "passed over today"),
        ((due(-5),), None, State.OVERDUE, "5 days over"),
        ((due(-5),), Level.PASSED_OVER, State.OVERDUE, "passed over today, 5 days over"),
        ((due(-1),), Level.NOT_OPENED, State.OVERDUE, "not opened today, 1 day over"),
        ((due(-5, DueKind.FEED_LOOK),), Level.ONE_LINE, State.OVERDUE, "looked at today, 5 days over"),
        ((due(3),), Level.NOT_OPENED, State.OUTSIDE, "not opened today"),
        ((due(0),), None, State.SOON, "look today"),
        ((due(0, DueKind.FEED_LOOK),), None, State.SOON, "feed look today"),
        ((due(1, DueKind.FEED_LOOK),), None, State.PLAIN, "feed look in 1 day"),
        ((due(4),), None, State.PLAIN, "in 4 days"),
        ((due(-5, until=-4),), None, State.OVERDUE, "4 days over"),
        ((due(-1, until=0),), None, State.SOON, "look today"),
        ((due(-1, DueKind.FEED_LOOK, 1),), None, State.SOON, "feed look today"),
        ((due(-1, until=1), due(-1)), Level.ONE_LINE, State.OVERDUE, "looked at today, 1 day over"),
        ((due(-1, until=1),), Level.ONE_LINE, State.DONE, "looked at today"),
        ((due(-2, DueKind.LEAVE_SHUT, 3),), None, State.SHUT, "leave shut till Tue 19 May"),
        ((due(-2, DueKind.LEAVE_SHUT, 3),), Level.ONE_LINE, State.DONE, "looked at today"),
    ],
)
def test_a_colony_in_a_word_and_a_sign(
    dues: tuple[Due, ...], looked: Level | None, state: State, words: str
) -> None:
    assert state_of(dues, looked, DAY) == (state, words)


def test_what_the_last_visit_offered_is_told_softly_where_nothing_is_due(strip: StandsStrip) -> None:
    desk = strip._desk
    spot = desk.spot
    assert spot.apiary_id is not None
    assert spot.colony_id is not None
    cells = (SetAnswer(NO_VISIT, Question.CELLS, "1 charged 5B"),)
    visit = desk.do(OnLine(spot.apiary_id, spot.colony_id, DAY - timedelta(days=1), cells))
    card = strip.cards()[0]
    assert (card.state, card.words) == (State.PLAIN, "look offered 18 May")
    assert desk.book.read.dues(colony_id=spot.colony_id) == ()
    desk.do(PassOver(spot.colony_id, DAY))
    assert strip.cards()[0].words == "passed over today"
    desk.undo()
    desk.do(SetNext(VisitId(int(str(visit))), DAY + timedelta(days=3)))
    assert strip.cards()[0].words == "in 3 days"


def test_an_offer_that_nobody_took_is_soon_and_never_over() -> None:
    for days, state in ((-4, State.SOON), (0, State.SOON), (1, State.PLAIN)):
        offer = PlannedDue(DueKind.LOOK, DAY + timedelta(days=days), None, "why")
        assert state_of((), None, DAY, offer) == (state, f"look offered {offer.day.day} May")
        assert state_of((), Level.ONE_LINE, DAY, offer) == (State.DONE, "looked at today")
        assert state_of((due(2),), None, DAY, offer) == (State.PLAIN, "in 2 days")
    feed = PlannedDue(DueKind.FEED_LOOK, DAY, None, "why")
    assert state_of((), None, DAY, feed) == (State.SOON, "feed look offered 16 May")


def test_a_page_that_was_only_opened_is_no_look(strip: StandsStrip) -> None:
    desk = strip._desk
    assert desk.spot.colony_id is not None
    desk.do(AddDue(DueKind.LOOK, DAY - timedelta(days=5), "look", desk.spot.colony_id))
    desk.do(BeginVisit(desk.spot.colony_id, DAY))
    assert looked_today(desk.book, desk.spot.colony_id) is None
    assert strip.cards()[0].words == "5 days over"


def test_each_way_to_look_is_said_as_it_was(strip: StandsStrip) -> None:
    desk = strip._desk
    colony_id = desk.spot.colony_id
    assert colony_id is not None
    desk.do(PassOver(colony_id, DAY))
    assert strip._fields[0].card.words == "passed over today"
    desk.undo()
    visit_id = note(strip, SetNote(NO_VISIT, "bees flying"))
    assert strip._fields[0].card.words == "not opened today"
    desk.do(SetAnswer(visit_id, Question.OPENED, "y"))
    assert strip._fields[0].card.state is State.DONE
    assert strip._fields[0].accessibleName() == "Pear Tree, looked at today"
    assert not strip.grab().isNull()


def test_the_strip_is_walked_by_arrows_and_enter_goes_in(strip: StandsStrip) -> None:
    desk = strip._desk
    strip.focus_colony(desk.spot.colony_id)
    QTest.keyClick(strip._fields[0], Qt.Key.Key_Right)
    assert strip._fields[1].hasFocus()
    QTest.keyClick(strip._fields[1], Qt.Key.Key_Return)
    assert desk.colony is not None
    assert desk.colony.name == NAMES[1]
    QTest.keyClick(strip._fields[1], Qt.Key.Key_Left)
    QTest.keyClick(strip._fields[0], Qt.Key.Key_Down)
    assert (desk.colony.name, desk.spot.view) == (NAMES[0], View.BOX)
    strip.step(1)
    assert desk.colony.name == NAMES[1]
    press(strip._fields[3])
    assert desk.colony.name == NAMES[3]
    strip.step(1)
    assert desk.colony.name == NAMES[3]


def test_an_offer_of_another_year_says_which() -> None:
    offer = PlannedDue(DueKind.LOOK, DAY.replace(year=DAY.year - 1), None, "why")
    assert state_of((), None, DAY, offer) == (State.SOON, f"look offered 16 May {DAY.year - 1}")
