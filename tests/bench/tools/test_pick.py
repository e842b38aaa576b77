from beeworkbook.bench.tools.base import State, Work
from beeworkbook.bench.tools.pick import PickTool
from beeworkbook.comb.contents import Content


def test_it_takes_up_what_it_points_at_and_changes_nothing(work: Work) -> None:
    tool = PickTool()
    assert not len(tool.press(work, (100.0, 70.0)))
    assert tool.state is State.LOOKING
    assert str(tool.picked) == str(Content.SEALED)
    tool.move((3.0, 3.0))
    assert tool.release() is None
    assert tool.picked == Content.STORES


def test_beside_the_comb_it_finds_nothing(work: Work) -> None:
    tool = PickTool()
    tool.press(work, (-30.0, 70.0))
    assert tool.picked is None
