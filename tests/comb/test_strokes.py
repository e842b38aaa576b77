import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import CellIndices, Lattice, Point, fit_lattice
from beeworkbook.comb.side import blank_cells
from beeworkbook.comb.strokes import Stroke, sweep

LATTICES = (fit_lattice(338, 190), fit_lattice(338, 114))
LATTICE = LATTICES[0]
POINTS = st.tuples(st.floats(-30, 370), st.floats(-30, 220))
BAD_RADII = (0.0, -1.0, math.nan, math.inf)


def distances(lattice: Lattice, start: Point, end: Point) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    """Distance of every centre to a segment, the plain way."""
    a, along = np.array(start), np.array(end) - np.array(start)
    squared = float(along @ along)
    t = np.clip((lattice.centres - a) @ along / squared, 0, 1) if squared > 0 else np.zeros(lattice.cells)
    nearest = a + t[:, None] * along
    result: np.ndarray[tuple[int], np.dtype[np.float64]] = np.hypot(*(lattice.centres - nearest).T)
    return result


def covered_plainly(lattice: Lattice, start: Point, end: Point, radius: float) -> CellIndices:
    return np.flatnonzero(distances(lattice, start, end) <= radius)


@given(st.sampled_from(LATTICES), POINTS, POINTS, st.floats(0.5, 60))
def test_a_sweep_covers_the_centres_within_its_radius(
    lattice: Lattice, start: Point, end: Point, radius: float
) -> None:
    rim = np.abs(distances(lattice, start, end) - radius).min()
    assume(rim > 1e-9)  # on the rim rounding decides
    assert np.array_equal(sweep(lattice, start, end, radius), covered_plainly(lattice, start, end, radius))


@pytest.mark.parametrize("end", [(150, 80), (150, 140), (40, 80), (190, 80), (150, 30), (150.0, 80 + 1e-12)])
@pytest.mark.parametrize("lattice", LATTICES)
def test_a_sweep_along_an_axis_or_on_the_spot(lattice: Lattice, end: Point) -> None:
    expected = covered_plainly(lattice, (150, 80), end, 11.3)
    assert np.array_equal(sweep(lattice, (150, 80), end, 11.3), expected)
    assert np.array_equal(sweep(lattice, end, (150, 80), 11.3), expected)


def test_a_brush_beside_the_comb_covers_nothing() -> None:
    assert len(sweep(LATTICE, (-500, -500), (-400, -400), 8)) == 0
    assert len(sweep(LATTICE, (-500, 90), (-400, 90), 8)) == 0


@pytest.mark.parametrize("radius", BAD_RADII)
def test_a_radius_must_be_positive(radius: float) -> None:
    with pytest.raises(ValueError, match="positive"):
        sweep(LATTICE, (0, 0), (1, 1), radius)
    with pytest.raises(ValueError, match="positive"):
        Stroke(LATTICE, Content.EGGS, radius)


@given(st.lists(POINTS, min_size=1, max_size=8), st.floats(4, 30))
def test_a_stroke_gives_every_cell_once(path: list[Point], radius: float) -> None:
    stroke = Stroke(LATTICE, Content.SEALED, radius)
    given_out = [stroke.begin(path[0]), *(stroke.move(point) for point in path[1:])]
    seen = np.concatenate(given_out)
    assert len(seen) == len(set(seen.tolist()))
    assert all((np.diff(part) > 0).all() for part in given_out)
    swept = [sweep(LATTICE, path[0], path[0], radius)]
    swept += [sweep(LATTICE, a, b, radius) for a, b in pairwise(path)]
    assert np.array_equal(np.sort(seen), np.unique(np.concatenate(swept)))
    assert np.array_equal(stroke.covered, np.sort(seen))


@given(POINTS, POINTS)
def test_the_smallest_brush_is_a_pencil_that_leaves_no_gap(start: Point, end: Point) -> None:
    stroke = Stroke(LATTICE, Content.SEALED, 0.1)
    first, rest = stroke.begin(start), stroke.move(end)
    touched = {*first.tolist(), *rest.tolist()}
    for at in (start, end):
        cell = LATTICE.cell_at(*at)
        assert cell is None or cell in touched
    if LATTICE.cell_at(*start) is not None and LATTICE.cell_at(*end) is not None:
        unreached = set(touched)
        frontier = [unreached.pop()] if unreached else []
        while frontier:
            near = unreached.intersection(LATTICE.neighbours(frontier.pop()))
            unreached -= near
            frontier += near
        assert not unreached or _along_the_rim(start, end)


def _along_the_rim(start: Point, end: Point) -> bool:
    """Whether the line leaves the cells between its ends, through the notches at the rim."""
    return bool((LATTICE.cells_at(np.linspace(start, end, 2000)) < 0).any())


@given(st.lists(POINTS, min_size=1, max_size=6), st.integers(0, 2**32 - 1))
def test_a_stroke_painted_and_undone_is_nothing(path: list[Point], seed: int) -> None:
    cells = np.random.default_rng(seed).integers(0, 12, LATTICE.cells).astype(np.uint8)
    stroke = Stroke(LATTICE, Content.DRONE, 9)
    stroke.begin(path[0])
    for point in path[1:]:
        stroke.move(point)
    patch = stroke.patch(cells)
    painted = patch.apply(cells)
    assert (painted[stroke.covered] == Content.DRONE).all()
    assert np.array_equal(patch.inverse.apply(painted), cells)


def test_a_mask_keeps_the_brush_off_other_contents() -> None:
    cells = blank_cells(LATTICE, Content.SEALED).copy()
    cells[::3] = Content.POLLEN
    stroke = Stroke(LATTICE, Content.EGGS, 30, only=frozenset({Content.POLLEN}))
    stroke.begin((100, 90))
    painted = stroke.patch(cells).apply(cells)
    changed = np.flatnonzero(painted != cells)
    assert (cells[changed] == Content.POLLEN).all()
    assert np.array_equal(changed, stroke.covered[cells[stroke.covered] == Content.POLLEN])


def test_a_stroke_begun_again_starts_afresh() -> None:
    stroke = Stroke(LATTICE, Content.EGGS, 8)
    with pytest.raises(ValueError, match="not begun"):
        stroke.move((20, 20))
    first = stroke.begin((100, 90))
    stroke.move((150, 90))
    assert np.array_equal(stroke.begin((100, 90)), first)
