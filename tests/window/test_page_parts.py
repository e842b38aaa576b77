"""The pieces of the Page: what they show, and that the note is kept while it is typed."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Question
from beeworkbook.colony.sentences import PageRow
from beeworkbook.colony.soft_notes import SoftNote
from beeworkbook.qt.icons import State
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.window.page_parts import NoteEdit, Told, ToldList, blanks_gathered, note_lines

EGGS = PageRow("Eggs", "seen, on 4 to 6", Question.EGGS, basis="as said in the line")
QUEEN = PageRow("Queen", "not looked for", Question.QUEEN, recorded=False)
ROOM = PageRow("Room", "not recorded", Question.ROOM, recorded=False)
DRAWN = PageRow("Drawn", "not recorded", Question.DRAWN, recorded=False)


@pytest.fixture
def note(qtbot: QtBot) -> NoteEdit:
    made = NoteEdit()
    qtbot.addWidget(made)
    made.resize(240, 80)
    with qtbot.waitExposed(made):
        made.show()
    made.setFocus()
    return made


def test_what_is_blank_is_gathered_and_never_read_as_no() -> None:
    rows = blanks_gathered((EGGS, ROOM, QUEEN, DRAWN))
    assert [(row.label, row.value, row.recorded) for row in rows] == [
        ("Eggs", "seen, on 4 to 6", True),
        ("Queen", "not looked for", False),
        ("Not recorded", "room, drawn", False),
    ]
    assert blanks_gathered((EGGS,)) == (EGGS,)


def test_a_list_says_what_and_why(qtbot: QtBot) -> None:
    told = ToldList(LIGHT)
    qtbot.addWidget(told)
    told.show_lines(note_lines([SoftNote("A super is on.", "syrup may be carried up")]))
    assert told.texts() == [("A super is on.", "syrup may be carried up")]
    assert told.findChildren(QLabel)[0].text() == "A super is on."
    told.set_palette(DARK)
    assert told.texts() == [("A super is on.", "syrup may be carried up")]
    told.show_lines([Told("Today", state=State.SOON), Told("Sat 23 May", "look again")])
    assert [what for what, _ in told.texts()] == ["Today", "Sat 23 May"]
    told.show_lines([])
    assert told.isHidden()


def test_typing_that_rests_is_kept(note: NoteEdit, qtbot: QtBot) -> None:
    with qtbot.waitSignal(note.rested, timeout=2000):
        QTest.keyClicks(note, "calm ")
    assert note.touched
    assert note.text() == "calm"


def test_a_note_left_is_kept_at_once(note: NoteEdit, qtbot: QtBot) -> None:
    QTest.keyClicks(note, "calm")
    with qtbot.waitSignal(note.rested, timeout=100):
        note.clearFocus()
    note.load("calm")
    with qtbot.assertNotEmitted(note.rested):
        note.keep_now()


def test_what_is_loaded_is_not_typed(note: NoteEdit, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(note.rested, wait=400):
        note.load("as the book says")
    assert not note.touched


def test_a_blank_at_the_end_stays_while_the_rest_is_kept(note: NoteEdit) -> None:
    QTest.keyClicks(note, "calm ")
    note.load("calm")
    QTest.keyClicks(note, "bees")
    assert note.text() == "calm bees"


def test_a_note_grows_with_its_lines_and_stops(note: NoteEdit) -> None:
    note.load("one line")
    low = note.height()
    note.load("line\n" * 6)
    assert note.height() > low
    note.load("line\n" * 60)
    assert note.height() <= 240


def test_undo_is_the_notes_own_only_while_it_has_something_to_take_back(note: NoteEdit) -> None:
    def claims() -> bool:
        event = QKeyEvent(QEvent.Type.ShortcutOverride, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier, "")
        event.ignore()
        note.event(event)
        return event.isAccepted()

    note.load("as the book says")
    assert not claims()
    QTest.keyClicks(note, "x")
    assert claims()
