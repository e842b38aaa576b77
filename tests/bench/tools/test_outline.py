import numpy as np

from beeworkbook.bench.tools.base import State, Work
from beeworkbook.bench.tools.outline import OutlineTool
from beeworkbook.comb.regions import outline_cells

SQUARE = [(60.0, 40.0), (140.0, 40.0), (140.0, 100.0), (60.0, 100.0)]


def test_the_line_is_closed_and_filled_when_it_is_let_go(work: Work) -> None:
    tool = OutlineTool()
    tool.press(work, SQUARE[0])
    assert tool.state is State.TRACING
    for point in SQUARE[1:]:
        assert not len(tool.move(point))
    shape = tool.shape_mm
    assert shape is not None
    assert len(shape) == 4
    patch = tool.release()
    assert patch is not None
    assert np.array_equal(patch.indices, outline_cells(work.lattice, np.array(SQUARE)))


def test_two_points_enclose_nothing(work: Work) -> None:
    tool = OutlineTool()
    tool.press(work, (60.0, 40.0))
    tool.move((140.0, 40.0))
    assert tool.release() is None


def test_points_too_near_to_matter_are_left_out(work: Work) -> None:
    tool = OutlineTool()
    tool.press(work, (60.0, 40.0))
    for step in range(50):
        tool.move((60.0 + step * 0.1, 40.0))
    shape = tool.shape_mm
    assert shape is not None
    assert len(shape) < 6
