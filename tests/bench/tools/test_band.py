import numpy as np
import pytest

from beeworkbook.bench.tools.band import BandTool
from beeworkbook.bench.tools.base import State, Work
from beeworkbook.comb.lattice import Point
from beeworkbook.comb.regions import Edge, band


@pytest.mark.parametrize(
    ("start", "end", "edge", "depth"),
    [
        ((100.0, 5.0), (110.0, 30.0), "top", 30.0),
        ((100.0, 135.0), (90.0, 115.0), "bottom", 25.0),
        ((4.0, 70.0), (22.0, 10.0), "left", 22.0),
        ((196.0, 70.0), (180.0, 80.0), "right", 20.0),
    ],
)
def test_it_is_pulled_from_the_nearest_edge(
    work: Work, start: Point, end: Point, edge: Edge, depth: float
) -> None:
    tool = BandTool()
    tool.press(work, start)
    assert tool.state is State.PULLING
    assert tool.edge == edge
    tool.move(end)
    assert np.array_equal(tool.pending, band(work.lattice, edge, depth))
    shape = tool.shape_mm
    assert shape is not None
    level = edge in {"top", "bottom"}
    assert np.ptp(shape[:, 1 if level else 0]) == 0


def test_pushed_back_over_its_edge_it_paints_nothing(work: Work) -> None:
    tool = BandTool()
    tool.press(work, (100.0, 5.0))
    tool.move((100.0, -20.0))
    assert tool.release() is None
