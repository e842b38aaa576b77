from dataclasses import replace

import numpy as np
import pytest

from beeworkbook.bench.tools import TOOLS
from beeworkbook.bench.tools.base import State, Tool, ToolName, Work
from beeworkbook.comb.contents import Content

PATH = ((90.0, 60.0), (96.0, 64.0), (120.0, 80.0), (124.0, 96.0), (84.0, 92.0))
PAINTING = [name for name in ToolName if name is not ToolName.PICK]


def worked(tool: Tool, work: Work) -> None:
    tool.press(work, PATH[0])
    for point in PATH[1:]:
        tool.move(point)


def test_every_name_has_its_tool() -> None:
    assert set(TOOLS) == set(ToolName)
    assert all(TOOLS[name]().name is name for name in ToolName)


@pytest.mark.parametrize("name", PAINTING)
def test_release_paints_and_leaves_the_tool_at_rest(name: ToolName, work: Work) -> None:
    tool = TOOLS[name]()
    worked(tool, work)
    assert str(tool.state) != "resting"
    patch = tool.release()
    assert patch is not None
    assert tool.state == State.RESTING
    assert tool.held is None
    after = patch.apply(work.cells)
    assert (after != work.cells).any()


@pytest.mark.parametrize("name", [name for name in PAINTING if name is not ToolName.OUTLINE])
def test_what_is_shown_meanwhile_is_what_release_makes(name: ToolName, work: Work) -> None:
    tool = TOOLS[name]()
    shown = work.cells.copy()
    for at, point in enumerate(PATH):
        changed = tool.press(work, point) if not at else tool.move(point)
        assert tool.held is not None
        shown[changed] = tool.held[changed]
        assert np.array_equal(shown, tool.held)
    held = shown.copy()
    patch = tool.release()
    assert patch is not None
    assert np.array_equal(patch.apply(work.cells), held)


@pytest.mark.parametrize("name", list(ToolName))
def test_dropping_leaves_no_trace_and_says_what_to_show_again(name: ToolName, work: Work) -> None:
    tool = TOOLS[name]()
    before = work.cells.copy()
    worked(tool, work)
    held = work.cells.copy() if tool.held is None else tool.held.copy()
    again = tool.drop()
    assert set(np.flatnonzero(held != before)) <= set(again.tolist())
    assert np.array_equal(work.cells, before)
    assert tool.release() is None


@pytest.mark.parametrize("name", PAINTING)
def test_a_mask_keeps_all_else(name: ToolName, work: Work) -> None:
    tool = TOOLS[name]()
    worked(tool, replace(work, only=frozenset({Content.SEALED})))
    patch = tool.release()
    assert patch is not None
    assert set(patch.before.tolist()) == {int(Content.SEALED)}


@pytest.mark.parametrize("name", PAINTING)
def test_painting_what_is_there_already_is_no_change(name: ToolName, work: Work) -> None:
    tool = TOOLS[name]()
    content = Content.NOT_RECORDED if name is ToolName.ERASE else Content.EGGS
    worked(tool, Work(work.lattice, np.full(work.lattice.cells, content, np.uint8), Content.EGGS, 12.0))
    assert tool.release() is None


@pytest.mark.parametrize("name", list(ToolName))
def test_a_tool_at_rest_does_nothing(name: ToolName, work: Work) -> None:
    tool = TOOLS[name]()
    assert not len(tool.move((1.0, 1.0)))
    assert tool.release() is None
    assert not len(tool.drop())
    assert tool.shape_mm is None
    with pytest.raises(ValueError, match="rests"):
        _ = tool.content
    tool.press(work, PATH[0])
    with pytest.raises(ValueError, match="at work already"):
        tool.press(work, PATH[0])
