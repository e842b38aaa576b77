from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.window.tab_order import order_tabs


def part(*names: str) -> QWidget:
    held = QWidget()
    column = QVBoxLayout(held)
    for name in names:
        line = QLineEdit()
        line.setAccessibleName(name)
        column.addWidget(line)
    column.addWidget(QLabel("no stop"))
    return held


def test_tab_goes_through_the_parts_in_the_order_given(qtbot: QtBot) -> None:
    whole = QWidget()
    qtbot.addWidget(whole)
    column = QVBoxLayout(whole)
    last, first, middle = part("e", "f"), part("a", "b"), part("c", "d")
    alone = QLineEdit()
    alone.setAccessibleName("g")
    for each in (last, first, alone, middle):
        column.addWidget(each)
    order_tabs((first, middle, last, alone))
    with qtbot.waitActive(whole):
        whole.show()
    first.findChildren(QLineEdit)[0].setFocus()
    names = []
    for _ in range(7):
        focus = QApplication.focusWidget()
        assert focus is not None
        names.append(focus.accessibleName())
        QTest.keyClick(focus, Qt.Key.Key_Tab)
    assert "".join(names) == "abcdefg"
