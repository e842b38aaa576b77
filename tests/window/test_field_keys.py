"""Undo in a field being typed is the field's own; with nothing to take back the key is the window's."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QMainWindow, QPlainTextEdit, QTextEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.window.field_keys import FieldKeys, can_redo, can_undo, redo_in, undo_in

CTRL = Qt.KeyboardModifier.ControlModifier


@pytest.mark.parametrize("kind", [QLineEdit, QPlainTextEdit, QTextEdit])
def test_the_window_gets_the_key_when_the_field_has_no_use_for_it(qtbot: QtBot, kind: type[QWidget]) -> None:
    window = QMainWindow()
    qtbot.addWidget(window)
    middle = QWidget()
    column = QVBoxLayout(middle)
    field, other = kind(), QLineEdit()
    column.addWidget(field)
    column.addWidget(other)
    window.setCentralWidget(middle)
    done: list[str] = []
    for name, key in (("undo", QKeySequence.StandardKey.Undo), ("redo", QKeySequence.StandardKey.Redo)):
        action = QAction(name, window)
        action.setShortcut(QKeySequence(key))
        action.triggered.connect(lambda _on, name=name: done.append(name))
        window.addAction(action)
    FieldKeys(window)
    with qtbot.waitActive(window):
        window.show()
    field.setFocus()
    QTest.keyClick(field, Qt.Key.Key_Z, CTRL)
    assert done == ["undo"]
    QTest.keyClicks(field, "abc")
    QTest.keyClick(field, Qt.Key.Key_Z, CTRL)
    assert done == ["undo"]
    assert can_redo(field)
    redo = QKeySequence(QKeySequence.StandardKey.Redo)[0]  # type: ignore[index]  # Qt's own sequence
    QTest.keyClick(field, redo.key(), redo.keyboardModifiers())
    assert done == ["undo"]
    assert can_undo(field)
    other.setFocus()
    QTest.keyClick(other, Qt.Key.Key_Z, CTRL)
    assert done == ["undo", "undo"]


def test_a_field_is_undone_and_done_again_by_itself(qtbot: QtBot) -> None:
    for field in (QLineEdit(), QPlainTextEdit(), QTextEdit()):
        qtbot.addWidget(field)
        assert not undo_in(field)
        assert not redo_in(field)
        QTest.keyClicks(field, "a")
        assert undo_in(field)
        assert redo_in(field)
    line = QLineEdit()
    qtbot.addWidget(line)
    QTest.keyClicks(line, "a")
    line.setReadOnly(True)
    assert not can_undo(line)
    assert not can_undo(None)
    assert not can_redo(QWidget(line))
