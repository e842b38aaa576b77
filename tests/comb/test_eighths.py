"""Eighths into cells and back."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.comb.contents import Content
from beeworkbook.comb.eighths import EighthsError, counts_for, read_back, side_cells, whole_eighths
from beeworkbook.comb.frames import FRAME_TYPES

FRAME = FRAME_TYPES["bs_deep"]
SAID: list[Content] = [content for content in Content if content is not Content.NOT_RECORDED]


@st.composite
def eighths(draw: st.DrawFn) -> dict[Content, float]:
    chosen = draw(st.lists(st.sampled_from(SAID), unique=True, max_size=8))
    weights = [draw(st.floats(0, 1)) for _ in chosen]
    filled = draw(st.sampled_from([8.0, 5.5, 1.0, 0.01]))
    total = sum(weights)
    return {} if total < 1e-6 else {c: filled * w / total for c, w in zip(chosen, weights, strict=True)}


@settings(max_examples=80, deadline=None)
@given(eighths(), st.integers(1, 5000))
def test_every_count_is_within_a_cell_of_its_share(said: dict[Content, float], cells: int) -> None:
    counts = counts_for(said, cells)
    assert set(counts) == set(said)
    assert all(abs(counts[content] - share / 8 * cells) < 1.001 for content, share in said.items())
    assert abs(sum(counts.values()) - sum(said.values()) / 8 * cells) < 1.001


@settings(max_examples=40, deadline=None)
@given(st.permutations([1, 1, 2, 4]), st.integers(1, 5000))
def test_a_full_side_has_no_cell_left(parts: list[int], cells: int) -> None:
    said: dict[Content, float] = dict(zip(SAID[3:], map(float, parts), strict=False))
    assert sum(counts_for(said, cells).values()) == cells


def test_a_remainder_decides_the_last_cell() -> None:
    assert counts_for({Content.EGGS: 3, Content.OPEN: 5}, 3) == {Content.EGGS: 1, Content.OPEN: 2}
    assert counts_for({Content.EGGS: 4, Content.OPEN: 4}, 3) == {Content.EGGS: 2, Content.OPEN: 1}
    assert counts_for({Content.EGGS: 4}, 3) == {Content.EGGS: 2}
    assert counts_for({}, 100) == {}


def test_thirds_in_percent_fill_the_side() -> None:
    third = 100 / 3 * 8 / 100
    said = {Content.EGGS: third, Content.OPEN: third, Content.SEALED: third + 5e-6}
    assert sum(counts_for(said, 2563).values()) == 2563


@pytest.mark.parametrize(
    "said",
    [{Content.EGGS: 8.1}, {Content.EGGS: -1.0}, {Content.EGGS: float("nan")}, {Content.EGGS: float("inf")}],
)
def test_what_no_side_can_hold_is_refused(said: dict[Content, float]) -> None:
    with pytest.raises(EighthsError, match="eight eighths"):
        counts_for(said, 100)


@settings(max_examples=40, deadline=None)
@given(eighths())
def test_reading_back_returns_what_was_put_in(said: dict[Content, float]) -> None:
    cells = np.zeros(FRAME.lattice.cells, np.uint8)
    start = 0
    for content, count in counts_for(said, len(cells)).items():
        cells[start : start + count] = content
        start += count
    found = read_back(FRAME, cells)
    assert all(abs(found.get(content, 0.0) - share) <= 8.01 / len(cells) for content, share in said.items())
    assert Content.NOT_RECORDED not in found


def test_cells_of_another_frame_are_refused() -> None:
    with pytest.raises(ValueError, match="not of this frame"):
        read_back(FRAME, np.zeros(7, np.uint8))


def test_whole_eighths_keep_their_sum() -> None:
    read = {
        Content.EGGS: 0.98,
        Content.OPEN: 1.6,
        Content.SEALED: 2.7,
        Content.STORES: 2.4,
        Content.EMPTY: 0.32,
    }
    assert whole_eighths(read) == {Content.EGGS: 1, Content.OPEN: 2, Content.SEALED: 3, Content.STORES: 2}
    assert whole_eighths({Content.EGGS: 0.2}) == {}
    assert whole_eighths({}) == {}


def test_drone_cells_are_fewer() -> None:
    assert side_cells(FRAME, 8) == pytest.approx(FRAME.area_dm2 * 400)
    assert side_cells(FRAME, 4, drone=True) == pytest.approx(FRAME.area_dm2 * 115)
