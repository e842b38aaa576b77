"""What is asked once: kept when a field is left, refused beside it, and the days of the rounds."""

from datetime import date
from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Question, Round
from beeworkbook.qt.desk import Desk
from beeworkbook.rounds.field import shown
from beeworkbook.rounds.head import HeadField, RoundHead
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.rounds.walk import Spot
from beeworkbook.workbook.edits.visit import BeginRound
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, LAST


def _type(field: HeadField, text: str) -> None:
    field.setFocus()
    field.selectAll()
    QTest.keyClicks(field, text)
    QTest.keyClick(field, Qt.Key.Key_Return)


def _round(book: Workbook, day: date = DAY) -> Round:
    (held,) = (held for held in book.read.find(Round) if held.day == day)
    return held


def test_the_first_thing_asked_once_begins_the_round(view: RoundView, book: Workbook) -> None:
    head = view.head
    _type(head.weather, "fine")
    _type(head.warmth, "18,5 °C")
    _type(head.who, "Ada")
    _type(head.flowering, "hawthorn")
    held = _round(book)
    assert (held.weather, held.temperature_c, held.who, held.flowering) == (
        "fine",
        18.5,
        "Ada",
        "hawthorn",
    )
    assert head.warmth.text() == "18.5 °C"
    assert head.who.text() == "with Ada"
    head.who.setFocus()
    assert head.who.text() == "Ada"  # the bare word, to be typed over
    head.warmth.setFocus()
    assert head.flowering.text() == "hawthorn in flower"
    book.undo()
    assert head.flowering.text() == ""


def test_enter_goes_on_to_the_next_field(view: RoundView, qtbot: QtBot) -> None:
    _type(view.head.weather, "fine")
    qtbot.waitUntil(view.head.warmth.hasFocus)


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Tab])
def test_the_last_field_leads_to_the_first_line(view: RoundView, book: Workbook, key: Qt.Key) -> None:
    view.sheet.go(Spot(view.rows[2].colony.id, Question.EGGS))
    view.head.flowering.setFocus()
    QTest.keyClicks(view.head.flowering, "hawthorn")
    QTest.keyClick(view.head.flowering, key)
    assert view.sheet.spot == Spot(view.rows[0].colony.id, Question.OPENED)
    assert view.sheet.editor.hasFocus()
    assert view.head.flowering.text() == "hawthorn in flower"
    assert _round(book).flowering == "hawthorn"
    QTest.keyClicks(view.sheet.editor, "y")
    assert shown(view.rows[0], Question.OPENED) == "yes"


def test_enter_goes_through_the_whole_head(view: RoundView) -> None:
    head = view.head
    head.day.setFocus()
    for field, following in pairwise((head.day, head.weather, head.warmth, head.who, head.flowering)):
        QTest.keyClick(field, Qt.Key.Key_Return)
        assert following.hasFocus()


def test_the_last_field_leads_on_where_nobody_stood(view: RoundView, desk: Desk) -> None:
    desk.go(day=date(2020, 1, 1))
    view.head.flowering.setFocus()
    QTest.keyClick(view.head.flowering, Qt.Key.Key_Return)
    assert not view.head.flowering.hasFocus()


def test_the_columns_button_comes_before_the_fields(view: RoundView, desk: Desk) -> None:
    view.head.day.setFocus()
    QTest.keyClick(view.head.day, Qt.Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier)
    assert view.head.earlier.hasFocus()
    QTest.keyClick(view.head.earlier, Qt.Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier)
    assert view.head.columns.hasFocus()
    desk.go(day=LAST)  # no round before: its arrow is no stop
    view.head.columns.setFocus()
    QTest.keyClick(view.head.columns, Qt.Key.Key_Tab)
    assert view.head.day.hasFocus()


def test_a_refusal_goes_when_the_field_is_cleared(view: RoundView) -> None:
    head = view.head
    _type(head.warmth, "warm")
    assert head.trouble.isVisible()
    head.warmth.setFocus()
    head.warmth.selectAll()
    QTest.keyClick(head.warmth, Qt.Key.Key_Backspace)
    QTest.keyClick(head.warmth, Qt.Key.Key_Tab)
    assert not head.trouble.isVisible()


def test_a_refusal_goes_when_the_field_is_put_back_or_mended(view: RoundView) -> None:
    head = view.head
    _type(head.warmth, "warm")
    QTest.keyClick(head.warmth, Qt.Key.Key_Escape)
    assert not head.trouble.isVisible()
    _type(head.warmth, "180")
    assert head.trouble.isVisible()
    _type(head.warmth, "18")
    assert not head.trouble.isVisible()


def test_a_refused_day_goes_and_a_text_still_wrong_is_refused_again(view: RoundView) -> None:
    head = view.head
    _type(head.day, "some day")
    assert head.trouble.isVisible()
    _type(head.day, "no day")
    assert head.trouble.isVisible()
    QTest.keyClick(head.day, Qt.Key.Key_Escape)
    assert not head.trouble.isVisible()


def test_a_refusal_goes_when_another_field_is_taken(view: RoundView) -> None:
    _type(view.head.warmth, "warm")
    _type(view.head.who, "Ada")
    assert not view.head.trouble.isVisible()


@pytest.mark.parametrize("typed", ["warm", "180"])
def test_no_warmth_is_refused_in_words_and_stays(view: RoundView, book: Workbook, typed: str) -> None:
    _type(view.head.warmth, typed)
    assert view.head.trouble.isVisible()
    assert view.head.warmth.text() == typed
    assert not [held for held in book.read.find(Round) if held.day == DAY]
    view.head.warmth.setFocus()
    QTest.keyClick(view.head.warmth, Qt.Key.Key_Escape)
    assert view.head.warmth.text() == ""


def test_a_warmth_can_be_taken_away(view: RoundView, book: Workbook) -> None:
    _type(view.head.warmth, "12")
    view.head.warmth.setFocus()
    view.head.warmth.selectAll()
    QTest.keyClick(view.head.warmth, Qt.Key.Key_Backspace)
    QTest.keyClick(view.head.warmth, Qt.Key.Key_Return)
    assert _round(book).temperature_c is None


def test_the_arrows_go_to_the_rounds_before_and_after(view: RoundView, desk: Desk) -> None:
    head: RoundHead = view.head
    assert head.day.text() == "Saturday 16 May"
    assert (head.earlier.isEnabled(), head.later.isEnabled()) == (True, False)
    head.earlier.click()
    assert desk.spot.day == LAST
    assert (head.earlier.isEnabled(), head.later.isEnabled()) == (False, True)
    head.later.click()
    assert desk.spot.day == DAY


def test_a_day_can_be_typed(view: RoundView, desk: Desk) -> None:
    _type(view.head.day, "9 5")
    assert desk.spot.day == LAST
    _type(view.head.day, "Thursday 14 May")
    assert desk.spot.day == date(2026, 5, 14)
    _type(view.head.day, "1 5 2025")
    assert view.head.day.text() == "Thursday 1 May 2025"
    _type(view.head.day, "some day")
    assert view.head.trouble.isVisible()
    assert desk.spot.day == date(2025, 5, 1)


def test_columns_left_out_are_kept_and_carried_on(view: RoundView, desk: Desk, book: Workbook) -> None:
    view.head.turn_column(Question.SIGNS)
    assert _round(book).left_out == "signs"
    checked = {action.text(): action.isChecked() for action in view.head.menu().actions()}
    assert checked["signs"] is False
    assert checked["eggs"] is True
    book.do(BeginRound(book.read.apiaries()[0].id, date(2026, 5, 23)))
    desk.go(day=date(2026, 5, 20))
    assert view.head.left_out == "signs"
    desk.go(day=LAST)
    assert view.head.left_out == ""


def test_every_control_has_a_name_and_a_tip(view: RoundView) -> None:
    head = view.head
    for widget in (
        head.earlier, head.day, head.later, head.weather, head.warmth, head.who, head.flowering, head.columns,
    ):  # fmt: skip
        assert widget.accessibleName()
        assert widget.toolTip()
