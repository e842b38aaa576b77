import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import Cells, Lattice, Point, Points, fit_lattice
from beeworkbook.comb.regions import (
    Edge,
    band,
    cells_with,
    ellipse,
    flood,
    masked,
    mirror,
    outline_cells,
    replace_content,
)
from beeworkbook.comb.side import blank_cells

ALTERNATE, EVEN = fit_lattice(338, 190), fit_lattice(338, 114)
ODD_ROWS = ALTERNATE if ALTERNATE.rows % 2 else EVEN
LATTICES = (ALTERNATE, EVEN, fit_lattice(60, 40), fit_lattice(100, 61))
SEEDS = st.integers(0, 2**32 - 1)


def speckled(lattice: Lattice, seed: int, contents: int = 12) -> Cells:
    return np.random.default_rng(seed).integers(0, contents, lattice.cells).astype(np.uint8)


def test_lattices_of_all_kinds_are_tried() -> None:
    kinds = {(lattice.rows % 2, lattice.first_row == lattice.second_row) for lattice in LATTICES}
    assert len(kinds) >= 3


@given(
    st.sampled_from(LATTICES),
    st.floats(-50, 400),
    st.floats(-50, 250),
    st.floats(0.5, 300),
    st.floats(0.5, 300),
)
def test_an_ellipse_holds_the_centres_within_it(
    lattice: Lattice, x: float, y: float, rx: float, ry: float
) -> None:
    where = ((lattice.centres[:, 0] - x) / rx) ** 2 + ((lattice.centres[:, 1] - y) / ry) ** 2
    assume(np.abs(where - 1).min() > 1e-7)  # on the rim rounding decides
    assert np.array_equal(ellipse(lattice, (x, y), rx, ry), np.flatnonzero(where <= 1))


@pytest.mark.parametrize("radii", [(0, 1), (1, 0), (-1, 1), (math.nan, 1)])
def test_an_ellipse_has_two_positive_radii(radii: tuple[float, float]) -> None:
    with pytest.raises(ValueError, match="positive"):
        ellipse(ALTERNATE, (10, 10), *radii)


def inside_plainly(lattice: Lattice, points: Points) -> list[int]:
    """Even-odd rule, a ray to the right from every centre, the plain way."""
    found = []
    for cell, (x, y) in enumerate(lattice.centres):
        crossings = 0
        for (x0, y0), (x1, y1) in zip(points, np.roll(points, -1, axis=0), strict=True):
            if (y0 <= y) != (y1 <= y) and x0 + (y - y0) * (x1 - x0) / (y1 - y0) > x:
                crossings += 1
        if crossings % 2:
            found.append(cell)
    return found


@given(
    st.sampled_from((LATTICES[2], LATTICES[3])),
    st.lists(st.tuples(st.floats(-20, 120), st.floats(-20, 80)), max_size=9),
)
def test_an_outline_holds_the_centres_within_it(lattice: Lattice, path: list[Point]) -> None:
    points = np.array(path, np.float64).reshape(-1, 2)
    if path:
        assume(np.abs(lattice.centres[:, 1, None] - points[:, 1]).min() > 1e-9)
    assert outline_cells(lattice, points).tolist() == inside_plainly(lattice, points)


@pytest.mark.parametrize("lattice", LATTICES)
def test_an_outline_round_everything_holds_every_cell(lattice: Lattice) -> None:
    frame = np.array([(-9, -9), (999, -9), (999, 999), (-9, 999)], np.float64)
    assert outline_cells(lattice, frame).tolist() == list(range(lattice.cells))
    assert len(outline_cells(lattice, np.empty((0, 2)))) == 0
    twice = np.vstack((frame, frame))
    assert len(outline_cells(lattice, twice)) == 0  # even-odd: two rounds are a hole


@pytest.mark.parametrize("points", [np.zeros(4), np.zeros((3, 3)), np.array([(0, 0), (1, math.nan), (3, 3)])])
def test_an_outline_is_pairs_of_finite_numbers(points: Points) -> None:
    with pytest.raises(ValueError, match="list of points"):
        outline_cells(ALTERNATE, points)


@pytest.mark.parametrize("lattice", LATTICES)
@pytest.mark.parametrize(
    ("edge", "axis", "from_far"),
    [("left", 0, False), ("right", 0, True), ("top", 1, False), ("bottom", 1, True)],
)
def test_a_band_lies_along_its_edge(lattice: Lattice, edge: Edge, axis: int, from_far: bool) -> None:
    size = (lattice.width_mm, lattice.height_mm)[axis]
    away = lattice.centres[:, axis] if not from_far else size - lattice.centres[:, axis]
    assert np.array_equal(band(lattice, edge, 21), np.flatnonzero(away <= 21))
    assert len(band(lattice, edge, 0)) == 0
    assert len(band(lattice, edge, size)) == lattice.cells


def flooded_plainly(lattice: Lattice, cells: Cells, start: int) -> list[int]:
    reached, frontier = {start}, [start]
    while frontier:
        for near in lattice.neighbours(frontier.pop()):
            if near not in reached and cells[near] == cells[start]:
                reached.add(near)
                frontier.append(near)
    return sorted(reached)


@given(st.sampled_from(LATTICES), SEEDS, st.integers(2, 4), st.data())
def test_a_flood_reaches_what_hangs_together(
    lattice: Lattice, seed: int, contents: int, data: st.DataObject
) -> None:
    cells = speckled(lattice, seed, contents)
    start = data.draw(st.integers(0, lattice.cells - 1))
    assert flood(lattice, cells, start).tolist() == flooded_plainly(lattice, cells, start)


@pytest.mark.parametrize("lattice", LATTICES)
def test_a_flood_of_one_content_reaches_every_cell(lattice: Lattice) -> None:
    for start in (0, lattice.first_row, lattice.cells - 1):
        assert len(flood(lattice, blank_cells(lattice), start)) == lattice.cells


def test_a_flood_starts_on_a_cell() -> None:
    for start in (-1, ALTERNATE.cells):
        with pytest.raises(IndexError):
            flood(ALTERNATE, blank_cells(ALTERNATE), start)


@given(st.sampled_from(LATTICES), SEEDS)
def test_a_mirror_twice_is_nothing(lattice: Lattice, seed: int) -> None:
    cells = speckled(lattice, seed)
    once = mirror(lattice, cells)
    assert np.array_equal(mirror(lattice, once), cells)
    assert np.array_equal(np.bincount(once, minlength=12), np.bincount(cells, minlength=12))


def test_the_mirror_image_lies_across_the_middle() -> None:
    image = ALTERNATE.centres[ALTERNATE.mirrored]
    assert image[:, 0] == pytest.approx(ALTERNATE.width_mm - ALTERNATE.centres[:, 0])
    assert image[:, 1] == pytest.approx(ALTERNATE.centres[:, 1])
    off = EVEN.centres[EVEN.mirrored][:, 0] - (EVEN.width_mm - EVEN.centres[:, 0])
    assert np.abs(off) == pytest.approx(EVEN.pitch_x_mm / 2)  # half a cell, as near as whole cells can be
    with pytest.raises(ValueError, match="not of this lattice"):
        mirror(EVEN, blank_cells(ALTERNATE))


@given(SEEDS)
def test_one_content_is_replaced_by_another(seed: int) -> None:
    cells = speckled(ALTERNATE, seed)
    replaced = replace_content(cells, Content.EGGS, Content.OPEN)
    assert not len(cells_with(replaced, Content.EGGS))
    assert np.array_equal(np.flatnonzero(replaced != cells), cells_with(cells, Content.EGGS))
    assert (replaced[cells_with(cells, Content.EGGS)] == Content.OPEN).all()
    assert replaced.dtype == np.uint8


@given(SEEDS, st.frozensets(st.sampled_from(list(Content))))
def test_a_mask_lets_through_what_may_be_painted_over(seed: int, only: frozenset[Content]) -> None:
    cells = speckled(ALTERNATE, seed)
    indices = np.arange(0, ALTERNATE.cells, 5)
    assert masked(cells, indices, only).tolist() == [cell for cell in indices if Content(cells[cell]) in only]
    assert masked(cells, indices, None) is indices
