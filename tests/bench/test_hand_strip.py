import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.bench.bench_keys import TOOL_KEYS
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.hand_strip import HandStrip
from beeworkbook.bench.tools.base import ToolName
from beeworkbook.comb.contents import Content
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.palette import DARK

LEFT = Qt.MouseButton.LeftButton
PAGE_PX = 276


@pytest.fixture
def strip(desk: Desk, qtbot: QtBot) -> HandStrip:
    made = HandStrip(desk, Hand())
    qtbot.addWidget(made)
    made.resize(PAGE_PX, 28)
    made.show()
    qtbot.waitExposed(made)
    return made


@pytest.mark.parametrize(("key", "tool"), TOOL_KEYS.items())
def test_a_click_takes_the_tool_and_its_key_is_said(strip: HandStrip, key: str, tool: ToolName) -> None:
    button = strip.tools[tool]
    assert button.toolTip().endswith(f"({key})")
    assert button.accessibleName().endswith(f"key {key}")
    QTest.mouseClick(button, LEFT)
    assert strip.hand.tool is tool
    assert [held for held, each in strip.tools.items() if each.isChecked()] == [tool]


def test_a_tool_taken_by_key_is_shown(strip: HandStrip) -> None:
    strip.hand.take_tool(ToolName.BAND)
    assert strip.tools[ToolName.BAND].isChecked()
    assert not strip.tools[ToolName.BRUSH].isChecked()


def test_the_brush_is_made_larger_and_smaller(strip: HandStrip) -> None:
    before = strip.hand.radius_mm
    QTest.mouseClick(strip.larger, LEFT)
    assert strip.hand.radius_mm > before
    assert "brush 30 mm" in strip.larger.toolTip()
    QTest.mouseClick(strip.smaller, LEFT)
    assert strip.hand.radius_mm == pytest.approx(before)


def test_what_may_be_painted_over_is_chosen_from_a_menu(strip: HandStrip, qtbot: QtBot) -> None:
    QTest.mouseClick(strip.only, LEFT)
    qtbot.waitUntil(strip.only_menu.isVisible)
    assert not strip.only.isChecked()
    actions = {action.text().split("\t")[0]: action for action in strip.only_menu.actions()}
    actions["Only over sealed stores"].trigger()
    assert strip.hand.only is Content.STORES
    assert strip.only.isChecked()
    assert actions["Only over sealed stores"].isChecked()
    actions["Only over what is not recorded"].trigger()
    assert strip.hand.mask == frozenset({Content.NOT_RECORDED})
    actions["Over everything"].trigger()
    assert strip.hand.only is None
    assert not strip.only.isChecked()
    strip.only_menu.close()


def test_it_is_worked_by_the_keyboard_and_a_click_leaves_that_where_it_is(strip: HandStrip) -> None:
    brush, ellipse = strip.tools[ToolName.BRUSH], strip.tools[ToolName.ELLIPSE]
    brush.setFocus(Qt.FocusReason.TabFocusReason)
    QTest.mouseClick(strip.larger, LEFT)
    assert brush.hasFocus()
    QTest.keyClick(brush, Qt.Key.Key_Right)
    assert ellipse.hasFocus()
    QTest.keyClick(ellipse, Qt.Key.Key_Space)
    assert strip.hand.tool is ToolName.ELLIPSE
    for button in (strip.smaller, strip.larger, strip.only):
        QTest.keyClick(strip.focusWidget(), Qt.Key.Key_Tab)
        assert button.hasFocus()


def test_it_fits_the_page_and_goes_dark(strip: HandStrip, desk: Desk) -> None:
    assert strip.minimumSizeHint().width() <= PAGE_PX
    assert strip.only.geometry().right() < PAGE_PX
    light = strip.grab().toImage()
    desk.set_palette(DARK)
    assert strip.grab().toImage() != light


def test_of_an_empty_hand_no_tool_stands_out(strip: HandStrip) -> None:
    assert not [tool for tool, button in strip.tools.items() if button.isChecked()]
    strip.hand.take_content(Content.EGGS)
    assert [tool for tool, button in strip.tools.items() if button.isChecked()] == [ToolName.BRUSH]
    strip.hand.put_down()
    assert not [tool for tool, button in strip.tools.items() if button.isChecked()]
    strip.tools[ToolName.BRUSH].click()
    assert not strip.hand.is_empty
    assert strip.tools[ToolName.BRUSH].isChecked()
