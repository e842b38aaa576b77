import numpy as np

from beeworkbook.bench.tools.base import State, Work
from beeworkbook.bench.tools.fill import FillTool
from beeworkbook.comb.contents import Content
from beeworkbook.comb.regions import cells_with


def test_it_takes_the_whole_patch_pointed_at(work: Work) -> None:
    tool = FillTool()
    tool.press(work, (100.0, 70.0))
    assert tool.state is State.POURING
    patch = tool.release()
    assert patch is not None
    assert np.array_equal(patch.indices, cells_with(work.cells, Content.SEALED))


def test_moved_into_another_patch_it_takes_that_instead(work: Work) -> None:
    tool = FillTool()
    tool.press(work, (100.0, 70.0))
    tool.move((5.0, 5.0))
    patch = tool.release()
    assert patch is not None
    assert set(patch.before.tolist()) == {int(Content.STORES)}


def test_beside_the_comb_there_is_nothing_to_fill(work: Work) -> None:
    tool = FillTool()
    tool.press(work, (-30.0, 70.0))
    assert tool.release() is None
