import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.bench.legend_keys import LegendKeys
from beeworkbook.comb.contents import KEY_LETTERS, Content
from beeworkbook.comb.names import content_name
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.palette import DARK


@pytest.fixture
def legend(desk: Desk, qtbot: QtBot) -> LegendKeys:
    made = LegendKeys(desk)
    qtbot.addWidget(made)
    made.resize(276, 190)
    made.show()
    qtbot.waitExposed(made)
    return made


@pytest.mark.parametrize("content", KEY_LETTERS)
def test_a_key_is_its_content(legend: LegendKeys, qtbot: QtBot, content: Content) -> None:
    key = legend.keys[content]
    assert key.letter == KEY_LETTERS[content]
    assert content_name(content) in key.accessibleName()
    assert content_name(content) in key.toolTip()
    with qtbot.waitSignal(legend.content_chosen) as told:
        QTest.mouseClick(key, Qt.MouseButton.LeftButton)
    assert told.args == [content]


def test_keys_are_worked_by_the_keyboard(legend: LegendKeys, qtbot: QtBot) -> None:
    key = legend.keys[Content.POLLEN]
    key.setFocus(Qt.FocusReason.TabFocusReason)
    with qtbot.waitSignal(legend.content_chosen):
        QTest.keyClick(key, Qt.Key.Key_Space)
    assert key.isChecked()


def test_the_content_in_the_hand_is_shown_alone(legend: LegendKeys) -> None:
    legend.show_content(Content.EGGS)
    legend.show_content(Content.SEALED)
    assert [content for content, key in legend.keys.items() if key.isChecked()] == [Content.SEALED]
    legend.show_content(Content.NOT_RECORDED)
    assert legend.keys[Content.SEALED].isChecked()


def test_bees_queen_and_queen_cell_are_keys_too(legend: LegendKeys, qtbot: QtBot) -> None:
    letters: list[str] = []
    legend.letter_chosen.connect(letters.append)
    for key in legend.mark_keys:
        QTest.mouseClick(key, Qt.MouseButton.LeftButton)
    assert letters == ["W", "Q", "K"]
    assert qtbot is not None


def test_it_goes_dark(legend: LegendKeys, desk: Desk) -> None:
    light = legend.grab().toImage()
    desk.set_palette(DARK)
    assert legend.grab().toImage() != light


def test_of_an_empty_hand_no_key_stands_out(legend: LegendKeys) -> None:
    assert not [key for key in legend.keys.values() if key.isChecked()]
    legend.show_content(Content.EGGS)
    legend.show_content(None)
    assert not [key for key in legend.keys.values() if key.isChecked()]
    legend.show_content(Content.SEALED)
    assert [key.content for key in legend.keys.values() if key.isChecked()] == [Content.SEALED]
