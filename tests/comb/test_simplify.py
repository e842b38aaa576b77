from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.lattice import Points
from beeworkbook.comb.simplify import simplified

LINES = st.lists(
    st.lists(st.tuples(st.integers(-50, 50), st.integers(-50, 50)), min_size=2, max_size=30),
    min_size=1,
    max_size=5,
)


def distance(point: Points, start: Points, end: Points) -> float:
    along = end - start
    squared = float(along @ along)
    share = min(max(float((point - start) @ along) / squared, 0.0), 1.0) if squared else 0.0
    return float(np.hypot(*(point - start - share * along)))


@given(LINES, st.floats(0, 30))
def test_every_line_stays_within_the_tolerance_of_itself(
    lines: list[list[tuple[int, int]]], tolerance: float
) -> None:
    points = np.array([point for line in lines for point in line], np.float64)
    lengths = np.array([len(line) for line in lines])
    stays = simplified(points, lengths, np.zeros(len(lines), np.intp), tolerance)
    begin = 0
    for length in lengths.tolist():
        kept = begin + np.flatnonzero(stays[begin : begin + length])
        assert kept[0] == begin
        assert kept[-1] == begin + length - 1
        for first, last in pairwise(kept):
            for between in range(first + 1, last):
                assert distance(points[between], points[first], points[last]) <= tolerance + 1e-9
        begin += length


@given(LINES)
def test_lines_do_not_touch_one_another(lines: list[list[tuple[int, int]]]) -> None:
    together = simplified(
        np.array([point for line in lines for point in line], np.float64),
        np.array([len(line) for line in lines]),
        np.zeros(len(lines), np.intp),
        5.0,
    )
    apart = [
        simplified(np.array(line, np.float64), np.array([len(line)]), np.zeros(1, np.intp), 5.0)
        for line in lines
    ]
    assert np.array_equal(together, np.concatenate(apart))


def test_a_straight_line_keeps_its_ends() -> None:
    points = np.column_stack((np.arange(9.0), np.arange(9.0)))
    stays = simplified(points, np.array([9]), np.array([0]), 0.1)
    assert np.flatnonzero(stays).tolist() == [0, 8]


@pytest.mark.parametrize(("forced", "kept"), [(0, 2), (1, 3), (2, 5)])
def test_a_forced_line_keeps_points_whatever_the_tolerance(forced: int, kept: int) -> None:
    turn = np.linspace(0, np.pi, 21)
    points = np.column_stack((np.cos(turn), np.sin(turn)))
    assert simplified(points, np.array([21]), np.array([forced]), 100.0).sum() == kept


def test_a_long_zigzag_is_halved_and_not_peeled() -> None:
    zigzag = np.column_stack((np.arange(4001.0), np.arange(4001.0) % 2))
    assert simplified(zigzag, np.array([4001]), np.array([0]), 0.1).all()
    assert np.flatnonzero(simplified(zigzag, np.array([4001]), np.array([0]), 1.1)).tolist() == [0, 4000]
