"""The editor turns keys into steps, and leaves to the window what is the window's."""

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.rounds.editor import FieldEditor
from beeworkbook.rounds.walk import Step


@pytest.fixture
def editor(qtbot: QtBot) -> FieldEditor:
    frame = QWidget()
    qtbot.addWidget(frame)
    made = FieldEditor(frame)
    made.setObjectName("editor")
    QLineEdit(frame)
    made.steps = []  # type: ignore[attr-defined]
    made.stepped.connect(made.steps.append)  # type: ignore[attr-defined]
    frame.show()
    made.load("", frozenset("yn-="))
    made.setFocus()
    frame.setProperty("kept", made)
    made._frame = frame  # type: ignore[attr-defined]
    return made


def _steps(editor: FieldEditor) -> list[Step]:
    return list(editor.steps)  # type: ignore[attr-defined]


@pytest.mark.parametrize("key", ["y", "N", "-", "="])
def test_an_answer_of_one_key_moves_on(editor: FieldEditor, key: str) -> None:
    QTest.keyClicks(editor, key)
    assert _steps(editor) == [Step.ON]
    assert editor.text() == key


def test_typing_replaces_an_old_answer_and_moves_on(editor: FieldEditor) -> None:
    editor.load("4-6", frozenset("y"))
    QTest.keyClicks(editor, "y")
    assert (editor.text(), _steps(editor)) == ("y", [Step.ON])


def test_the_same_letter_later_in_a_word_does_not(editor: FieldEditor) -> None:
    QTest.keyClicks(editor, "4")
    QTest.keyClick(editor, Qt.Key.Key_Backspace)
    QTest.keyClicks(editor, "y")
    assert _steps(editor) == []


def test_tab_enter_and_upright_arrows_are_steps(editor: FieldEditor) -> None:
    QTest.keyClick(editor, Qt.Key.Key_Tab)
    QTest.keyClick(editor, Qt.Key.Key_Backtab, Qt.KeyboardModifier.ShiftModifier)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    QTest.keyClick(editor, Qt.Key.Key_Enter)
    QTest.keyClick(editor, Qt.Key.Key_Up)
    QTest.keyClick(editor, Qt.Key.Key_Down)
    assert _steps(editor) == [
        Step.ON, Step.BACK, Step.NEXT_COLONY, Step.NEXT_COLONY, Step.UP, Step.DOWN,
    ]  # fmt: skip


def test_backspace_in_an_empty_field_goes_back_once(editor: FieldEditor, qtbot: QtBot) -> None:
    with qtbot.waitSignal(editor.went_back, timeout=100):
        QTest.keyClick(editor, Qt.Key.Key_Backspace)
    editor.load("q", frozenset("q"), at_end=True)
    QTest.keyClick(editor, Qt.Key.Key_Backspace)
    with qtbot.assertNotEmitted(editor.went_back):
        QTest.keyClick(editor, Qt.Key.Key_Backspace)
    QTest.keyClicks(editor, "q")
    assert _steps(editor) == []


def test_more_can_be_typed_to_an_answer_that_moved_on(editor: FieldEditor) -> None:
    editor.load("q", frozenset("ql"), at_end=True)
    QTest.keyClicks(editor, "l")
    assert (editor.text(), _steps(editor)) == ("ql", [])


def test_escape_and_control_enter_have_their_own_signals(editor: FieldEditor, qtbot: QtBot) -> None:
    with qtbot.waitSignal(editor.put_back, timeout=100):
        QTest.keyClick(editor, Qt.Key.Key_Escape)
    with qtbot.waitSignal(editor.went_deeper, timeout=100):
        QTest.keyClick(editor, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)


def test_undo_is_the_fields_own_only_while_something_was_typed(editor: FieldEditor) -> None:
    assert not _claims_undo(editor)
    QTest.keyClicks(editor, "7")
    assert editor.touched
    assert _claims_undo(editor)
    QTest.keyClick(editor, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert editor.text() == ""
    assert not _claims_undo(editor)
    QTest.keyClick(editor, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert editor.text() == ""


def test_reset_brings_the_loaded_text_back(editor: FieldEditor) -> None:
    editor.load("7", frozenset())
    QTest.keyClicks(editor, "88")
    editor.reset()
    assert (editor.text(), editor.selectedText()) == ("7", "7")


def test_leaving_says_whether_it_is_only_covered(editor: FieldEditor, qtbot: QtBot) -> None:
    frame = editor.parentWidget()
    assert frame is not None
    other = next(line for line in frame.findChildren(QLineEdit) if line is not editor)
    qtbot.waitUntil(editor.hasFocus)
    with qtbot.waitSignal(editor.was_left, timeout=500) as left:
        other.setFocus(Qt.FocusReason.MouseFocusReason)
    assert left.args == [False]
    editor.setFocus()
    with qtbot.waitSignal(editor.was_left, timeout=500) as covered:
        other.setFocus(Qt.FocusReason.PopupFocusReason)
    assert covered.args == [True]


def _claims_undo(editor: FieldEditor) -> bool:
    event = QKeyEvent(QEvent.Type.ShortcutOverride, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier, "")
    event.ignore()
    editor.event(event)
    return event.isAccepted()
