import numpy as np
import pytest

from beeworkbook.bench.tools.base import State, Work
from beeworkbook.bench.tools.ellipse import EllipseTool
from beeworkbook.comb.regions import ellipse


def test_it_is_pulled_from_its_middle(work: Work) -> None:
    tool = EllipseTool()
    tool.press(work, (100.0, 70.0))
    assert tool.state is State.STRETCHING
    tool.move((140.0, 90.0))
    asked = ellipse(work.lattice, (100.0, 70.0), 40.0, 20.0)
    assert np.array_equal(tool.pending, asked)
    shape = tool.shape_mm
    assert shape is not None
    assert np.ptp(shape, axis=0) == pytest.approx((80.0, 40.0), rel=0.01)


def test_it_gives_back_what_it_leaves_when_it_shrinks(work: Work) -> None:
    tool = EllipseTool()
    tool.press(work, (100.0, 70.0))
    tool.move((150.0, 110.0))
    changed = tool.move((120.0, 80.0))
    small = ellipse(work.lattice, (100.0, 70.0), 20.0, 10.0)
    assert np.array_equal(tool.pending, small)
    assert tool.held is not None
    outside = np.setdiff1d(np.arange(work.lattice.cells), small)
    assert np.array_equal(tool.held[outside], work.cells[outside])
    assert not np.isin(small, changed).any()


def test_a_slip_of_the_hand_paints_nothing(work: Work) -> None:
    tool = EllipseTool()
    tool.press(work, (100.0, 70.0))
    tool.move((100.3, 100.0))
    assert tool.shape_mm is None
    assert tool.release() is None
