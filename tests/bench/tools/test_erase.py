from beeworkbook.bench.tools.base import Work
from beeworkbook.bench.tools.erase import EraseTool
from beeworkbook.comb.contents import Content


def test_the_eraser_takes_back_what_was_said_whatever_is_in_the_hand(work: Work) -> None:
    tool = EraseTool()
    tool.press(work, (100.0, 70.0))
    assert tool.content is Content.NOT_RECORDED
    patch = tool.release()
    assert patch is not None
    assert set(patch.after.tolist()) == {int(Content.NOT_RECORDED)}
