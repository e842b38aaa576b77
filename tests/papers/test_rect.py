import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.papers.rect import Rect, fitted

lengths = st.floats(0.5, 500)
boxes = st.builds(Rect, lengths, lengths, lengths, lengths)


@given(lengths, lengths, boxes)
def test_a_fitted_rectangle_keeps_its_proportion_and_fills_the_box_one_way(
    wide: float, high: float, box: Rect
) -> None:
    place = fitted(wide, high, box)
    assert place.width / place.height == pytest.approx(wide / high)
    assert box.inset(-1e-6).holds(place)
    assert place.width == pytest.approx(box.width) or place.height == pytest.approx(box.height)
    assert place.bottom == pytest.approx(box.bottom)


@pytest.mark.parametrize(("wide", "high"), [(0, 1), (1, 0), (-1, 1)])
def test_a_proportion_that_is_none_is_refused(wide: float, high: float) -> None:
    with pytest.raises(ValueError, match="positive"):
        fitted(wide, high, Rect(0, 0, 1, 1))


def test_edges_middle_and_area() -> None:
    place = Rect(1, 2, 4, 6)
    assert (place.right, place.bottom, place.centre, place.area_mm2) == (5, 8, (3, 5), 24)
    assert place.inset(1) == Rect(2, 3, 2, 4)


def test_touching_is_not_overlapping() -> None:
    assert not Rect(0, 0, 1, 1).overlaps(Rect(1, 0, 1, 1))
    assert Rect(0, 0, 1, 1).overlaps(Rect(0.9, 0.9, 1, 1))


@pytest.mark.parametrize(
    "other", [Rect(-1, 1, 1, 1), Rect(1, -1, 1, 1), Rect(9.5, 1, 1, 1), Rect(1, 9.5, 1, 1)]
)
def test_what_sticks_out_is_not_held(other: Rect) -> None:
    assert not Rect(0, 0, 10, 10).holds(other)
