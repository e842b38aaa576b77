"""The rows of the Page: what stands in them, and where each leads by mouse and by keyboard."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import FrameId, Question
from beeworkbook.colony.sentences import PageRow
from beeworkbook.window.row_table import RowTable

EGGS = PageRow(
    "Eggs",
    "seen, on 4 to 6",
    Question.EGGS,
    basis="as said in the line",
    frames=frozenset({FrameId(4), FrameId(5)}),
)
QUEEN = PageRow("Queen", "not looked for", Question.QUEEN, recorded=False)
ROOM = PageRow("Room", "not recorded", Question.ROOM, recorded=False)


def test_a_table_shows_its_rows_and_sets_the_blank_ones_in_italics(qtbot: QtBot) -> None:
    table = RowTable()
    qtbot.addWidget(table)
    table.show_rows((EGGS, QUEEN))
    assert table.texts() == [("Eggs", "seen, on 4 to 6"), ("Queen", "not looked for")]
    values = {value.text(): value for value in table.findChildren(QLabel)}
    assert values["not looked for"].font().italic()
    assert not values["seen, on 4 to 6"].font().italic()
    assert values["seen, on 4 to 6"].toolTip() == "as said in the line"
    assert values["seen, on 4 to 6"].accessibleName() == "Eggs: seen, on 4 to 6"


def test_a_table_keeps_its_labels_when_rows_come_and_go(qtbot: QtBot) -> None:
    table = RowTable()
    qtbot.addWidget(table)
    table.show_rows((EGGS, QUEEN, ROOM))
    labels = len(table.findChildren(QLabel))
    table.show_rows((ROOM,))
    assert table.texts() == [("Room", "not recorded")]
    table.show_rows(())
    assert table.texts() == []
    assert table.isHidden()
    table.show_rows((EGGS, QUEEN))
    assert len(table.findChildren(QLabel)) == labels


def _shown(qtbot: QtBot) -> RowTable:
    table = RowTable()
    qtbot.addWidget(table)
    table.show_rows((EGGS, QUEEN))
    table.resize(250, 60)
    with qtbot.waitActive(table):
        table.show()
    table.clearFocus()
    return table


def _label(table: RowTable, text: str) -> QLabel:
    return next(label for label in table.findChildren(QLabel) if label.text() == text)


def test_a_click_on_label_or_value_chooses_the_row(qtbot: QtBot) -> None:
    table = _shown(qtbot)
    chosen: list[PageRow] = []
    table.chosen.connect(chosen.append)
    QTest.mouseClick(_label(table, "Eggs"), Qt.MouseButton.LeftButton)
    QTest.mouseClick(_label(table, "not looked for"), Qt.MouseButton.LeftButton)
    assert chosen == [EGGS, QUEEN]


def test_words_that_are_being_selected_are_not_a_click(qtbot: QtBot) -> None:
    table = _shown(qtbot)
    value = _label(table, "seen, on 4 to 6")
    value.setSelection(0, 4)
    with qtbot.assertNotEmitted(table.chosen):
        QTest.mouseRelease(value, Qt.MouseButton.LeftButton)


def test_a_row_pointed_at_tells_its_combs(qtbot: QtBot) -> None:
    table = _shown(qtbot)
    told: list[frozenset[FrameId]] = []
    table.pointed.connect(told.append)
    for text, kind in (
        ("Eggs", QEvent.Type.Enter),
        ("Eggs", QEvent.Type.Leave),
        ("Queen", QEvent.Type.Enter),
    ):
        QApplication.sendEvent(_label(table, text), QEvent(kind))
    assert told == [EGGS.frames, frozenset()]


def test_the_keyboard_goes_from_row_to_row_and_enter_chooses(qtbot: QtBot) -> None:
    table = _shown(qtbot)
    told: list[frozenset[FrameId]] = []
    table.pointed.connect(told.append)
    table.setFocus(Qt.FocusReason.TabFocusReason)
    assert table.current == EGGS
    plain = table.grab().toImage()
    QTest.keyClick(table, Qt.Key.Key_Down)
    QTest.keyClick(table, Qt.Key.Key_Down)
    assert table.current == QUEEN
    assert table.grab().toImage() != plain
    assert table.accessibleDescription() == "Queen: not looked for"
    with qtbot.waitSignal(table.chosen) as chosen:
        QTest.keyClick(table, Qt.Key.Key_Return)
    assert chosen.args == [QUEEN]
    QTest.keyClick(table, Qt.Key.Key_Up)
    table.clearFocus()
    assert told == [EGGS.frames, frozenset(), EGGS.frames, frozenset()]
