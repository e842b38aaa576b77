"""Every action is reached by its own key on the real window and does no harm when it is left again."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QFileDialog, QLineEdit, QWidget

from beeworkbook.qt.desk import View
from beeworkbook.window.actions import ACTIONS, ActionSpec
from beeworkbook.window.commands import HANDLED, Commands
from beeworkbook.window.main_window import MainWindow
from tests.window.conftest import Answerer, hand

_OPENS_ANOTHER = frozenset({"open_sample", "quit", "new_workbook", "open_workbook", "import_book"})
"""Actions that put the window away; test_opening and test_workbook_actions work them."""


def press_keys(spec: ActionSpec) -> None:
    combination = QKeySequence(spec.keys)[0]  # type: ignore[index]  # Qt's own sequence of keys
    QTest.keyClick(hand(), combination.key(), combination.keyboardModifiers())


@pytest.mark.parametrize("view", [View.ROUND, View.BENCH])
def test_each_action_is_reached_by_its_key(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, view: View
) -> None:
    done: list[str] = []
    monkeypatch.setattr(Commands, "run", lambda _self, _module, name: done.append(name))
    window.go_to(view)
    for spec in ACTIONS:
        window.actions_by_name[spec.name].setEnabled(True)
        press_keys(spec)
        assert done == [spec.name]
        done.clear()


def test_leaving_each_action_again_changes_nothing_that_undo_does_not(
    window: MainWindow, answer: Answerer, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Asked and left by Escape an action changes nothing; one that asks nothing is one step of undo."""
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: ("", ""))
    asking = set()
    for spec in ACTIONS:
        if spec.name in _OPENS_ANOTHER | {"undo", "redo"}:
            continue
        window.go_to(View.BOX)
        window.desk.visit_to_write()
        label = window.desk.book.undo_label
        answer(lambda dialog: dialog.close())
        window.commands.do(spec.name)
        asked = not answer.is_waiting
        answer.forget()
        for dialog in QApplication.topLevelWidgets():
            if isinstance(dialog, QDialog) and dialog.isVisible():
                dialog.close()
        if asked:
            asking.add(spec.name)
        if asked or not spec.writes:
            assert window.desk.book.undo_label == label, spec.name
        elif window.desk.book.undo_label != label:
            window.desk.undo()
            assert window.desk.book.undo_label == label, spec.name
    silent = {spec.name for spec in ACTIONS if spec.text.endswith("…") and spec.writes} - asking
    assert silent <= {"move_drawing", "add_comb", "copy_side"}, "with nothing to move they say so instead"


def test_no_key_of_an_action_is_taken_by_a_field_but_those_of_typing(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    """In a line of text only what edits the text is the text's own: undo, redo, and taking words out."""
    done: list[str] = []
    monkeypatch.setattr(Commands, "run", lambda _self, _module, name: done.append(name))
    window.go_to(View.BOX)
    window.desk.visit_to_write()
    field = window.key_line.field
    kept_by_the_field = set()
    for spec in ACTIONS:
        if spec.name in {"undo", "redo"}:
            continue
        window.actions_by_name[spec.name].setEnabled(True)
        window.key_line.begin("S4")
        assert isinstance(hand(), QLineEdit)
        done.clear()
        press_keys(spec)
        if not done:
            kept_by_the_field.add(spec.keys)
        if QApplication.focusWidget() is not field:
            field.setFocus()
    assert kept_by_the_field <= {"Ctrl+Del", "Ctrl+Shift+Del"}


def test_undo_in_a_field_being_typed_is_the_fields_own_and_then_the_books(window: MainWindow) -> None:
    desk = window.desk
    window.go_to(View.BOX)
    desk.visit_to_write()
    label = desk.book.undo_label
    window.key_line.begin("")
    field = window.key_line.field
    QTest.keyClicks(field, "S4")
    QTest.keyClick(hand(), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert field.text() == ""
    assert desk.book.undo_label == label
    assert not field.isUndoAvailable()
    QTest.keyClick(hand(), Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert desk.book.undo_label != label


def test_an_unknown_action_is_a_mistake_of_ours(window: MainWindow) -> None:
    with pytest.raises(KeyError):
        window.commands.handler("dance")
    assert set(HANDLED) == set(window.actions_by_name)


def test_every_action_says_its_key_in_its_tooltip(window: MainWindow) -> None:
    for spec in ACTIONS:
        action = window.actions_by_name[spec.name]
        assert spec.keys in action.toolTip()
        assert not action.shortcut().isEmpty()
        menus = [held for held in action.associatedObjects() if isinstance(held, QWidget)]
        assert menus, spec.name
