import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.bench.viewport import NEAREST, SIDE_PX, TOP_PX, Viewport
from beeworkbook.comb.lattice import fit_lattice

LATTICE = fit_lattice(338.0, 190.0)
WHOLE = Viewport.fitted(LATTICE, 526, 300, 1.0)


def test_a_comb_is_fitted_in_true_proportion_inside_its_frame() -> None:
    assert WHOLE.left >= SIDE_PX
    assert WHOLE.top == TOP_PX
    assert WHOLE.left + WHOLE.width <= 526 - SIDE_PX
    assert WHOLE.width / WHOLE.height == pytest.approx(338 / 190, rel=0.01)
    assert WHOLE.to_px((0.0, 0.0)) == pytest.approx((WHOLE.left, WHOLE.top), abs=0.6)


def test_the_picture_has_the_pixels_of_the_screen() -> None:
    sharp = Viewport.fitted(LATTICE, 526, 300, 2.0)
    assert sharp.picture_size == (2 * sharp.width, 2 * sharp.height)
    assert sharp.sight.scale == pytest.approx(2 * sharp.scale)


@given(
    x=st.floats(10, 500), y=st.floats(10, 280), steps=st.lists(st.sampled_from([0.8, 1.25, 2.0]), max_size=8)
)
def test_places_and_points_undo_each_other_from_anywhere(x: float, y: float, steps: list[float]) -> None:
    view = WHOLE
    for step in steps:
        view = view.zoomed(step, (x, y))
    assert view.to_px(view.to_mm(x, y)) == pytest.approx((x, y), abs=1e-6)
    assert 1.0 <= view.zoom <= NEAREST


def test_the_cell_under_the_pointer_stays_there_when_looked_at_from_nearer() -> None:
    before = WHOLE.to_mm(200.0, 120.0)
    assert WHOLE.zoomed(3.0, (200.0, 120.0)).to_mm(200.0, 120.0) == pytest.approx(before, abs=1e-6)


def test_the_picture_is_always_full_of_comb() -> None:
    near = WHOLE.zoomed(4.0, (10.0, 10.0)).panned(5000.0, 5000.0)
    assert near.to_mm(near.left, near.top) == pytest.approx((0.0, 0.0), abs=1e-6)
    far = near.panned(-9000.0, -9000.0)
    assert far.to_mm(far.left + far.width, far.top + far.height) == pytest.approx((338.0, 190.0), abs=0.5)


def test_a_cursor_that_leaves_the_picture_takes_it_along() -> None:
    near = WHOLE.zoomed(6.0, (260.0, 150.0))
    moved = near.showing((5.0, 5.0))
    x, y = moved.to_px((5.0, 5.0))
    assert moved.left <= x <= moved.left + moved.width
    assert moved.top <= y <= moved.top + moved.height
    assert WHOLE.showing((5.0, 5.0)) == WHOLE


def test_back_to_the_whole() -> None:
    assert WHOLE.zoomed(5.0, (40.0, 40.0)).whole() == WHOLE
    assert WHOLE.zoomed(5.0, (40.0, 40.0)).zoomed(0.01, (40.0, 40.0)) == WHOLE


@pytest.mark.parametrize("ratio", [1.0, 1.25, 1.5, 2.0])
def test_a_rectangle_of_the_picture_is_covered_on_the_canvas(ratio: float) -> None:
    view = Viewport.fitted(LATTICE, 526, 300, ratio)
    left, top, width, height = view.over(13, 7, 40, 29)
    assert (left - view.left) * ratio <= 13
    assert (left - view.left + width) * ratio >= 40
    assert (top - view.top) * ratio <= 7
    assert (top - view.top + height) * ratio >= 29


def test_a_line_lies_inside_the_rectangle_round_it() -> None:
    line = np.array([(10.0, 20.0), (60.0, 25.0), (30.0, 90.0)])
    left, top, width, height = WHOLE.around(line)
    for x, y in line.tolist():
        px, py = WHOLE.to_px((x, y))
        assert left < px < left + width
        assert top < py < top + height
