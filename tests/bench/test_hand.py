import pytest
from pytestqt.qtbot import QtBot

from beeworkbook.bench.hand import LEAST_MM, MOST_MM, Hand, tool_name
from beeworkbook.bench.tools.base import ToolName
from beeworkbook.comb.contents import Content


@pytest.fixture
def hand(qtbot: QtBot) -> Hand:
    del qtbot
    return Hand()


def test_another_content_is_told(hand: Hand, qtbot: QtBot) -> None:
    with qtbot.waitSignal(hand.content_changed) as told:
        hand.take_content(Content.EGGS)
    assert told.args == [Content.EGGS]
    with qtbot.assertNotEmitted(hand.content_changed):
        hand.take_content(Content.EGGS)


@pytest.mark.parametrize("tool", [ToolName.ERASE, ToolName.PICK])
def test_a_tool_that_paints_nothing_gives_way_to_the_brush(hand: Hand, tool: ToolName) -> None:
    hand.take_tool(tool)
    hand.take_content(Content.POLLEN)
    assert hand.tool is ToolName.BRUSH


def test_a_tool_that_paints_stays(hand: Hand) -> None:
    hand.take_tool(ToolName.ELLIPSE)
    hand.take_content(Content.POLLEN)
    assert hand.tool is ToolName.ELLIPSE


def test_the_brush_stays_within_reason(hand: Hand) -> None:
    hand.resize(50)
    assert hand.radius_mm == MOST_MM
    hand.resize(-100)
    assert hand.radius_mm == LEAST_MM
    hand.resize(1)
    hand.resize(-1)
    assert hand.radius_mm == pytest.approx(LEAST_MM)


def test_a_mask_is_one_content_or_none(hand: Hand) -> None:
    assert hand.mask is None
    hand.paint_only_over(Content.EMPTY)
    assert hand.mask == frozenset({Content.EMPTY})
    hand.paint_only_over(None)
    assert hand.mask is None


def test_it_says_what_it_would_do(hand: Hand) -> None:
    hand.take_content(Content.SEALED)
    assert hand.words == "painting sealed brood, brush 24 mm"
    hand.paint_only_over(Content.EMPTY)
    assert hand.words == "painting sealed brood, brush 24 mm, only over empty comb"
    hand.paint_only_over(None)
    hand.take_tool(ToolName.FILL)
    assert hand.words == "painting sealed brood, fill"
    hand.take_tool(ToolName.ERASE)
    assert hand.words == "erasing, brush 24 mm"
    hand.take_tool(ToolName.PICK)
    assert hand.words == "picking up a content"


def test_every_tool_has_a_name() -> None:
    assert len({tool_name(tool) for tool in ToolName}) == len(ToolName)


def test_it_is_empty_until_something_is_taken(hand: Hand, qtbot: QtBot) -> None:
    assert hand.is_empty
    assert hand.words == "hand empty: choose a content to paint"
    hand.resize(1)
    hand.paint_only_over(Content.EMPTY)
    hand.paint_only_over(None)
    hand.resize(-1)
    assert hand.is_empty
    with qtbot.waitSignal(hand.content_changed) as told:
        hand.take_tool(ToolName.BRUSH)
    assert told.args == [Content.SEALED]
    assert hand.words == "painting sealed brood, brush 24 mm"


def test_put_down_it_remembers_what_it_held(hand: Hand, qtbot: QtBot) -> None:
    hand.take_content(Content.EGGS)
    hand.take_tool(ToolName.ELLIPSE)
    with qtbot.waitSignal(hand.content_changed) as told:
        hand.put_down()
    assert told.args == [None]
    with qtbot.assertNotEmitted(hand.changed):
        hand.put_down()
    with qtbot.waitSignal(hand.content_changed) as told:
        hand.take_content(Content.EGGS)
    assert told.args == [Content.EGGS]
    assert hand.tool is ToolName.ELLIPSE
