import itertools

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import Cells, Lattice, Points, fit_lattice
from beeworkbook.comb.outline import (
    Ring,
    outlines_of_sides,
    region_outlines,
    ring_area_mm2,
    simplified_outlines,
)
from beeworkbook.comb.regions import outline_cells
from beeworkbook.comb.side import blank_cells
from tests.comb.drawn import brood_side, drawn_side

LATTICES = (fit_lattice(100, 61), fit_lattice(338, 114), fit_lattice(60, 40))
SEEDS = st.integers(0, 2**32 - 1)
TOLERANCES = st.floats(0, 12)

Corner = tuple[float, float]


def corners(ring: Ring) -> list[Corner]:
    return [(float(x), float(y)) for x, y in ring]


def filled(lattice: Lattice, rings: list[Ring]) -> Cells:
    """How often each centre lies within the rings, by the even-odd rule."""
    inside = np.zeros(lattice.cells, np.uint8)
    for ring in rings:
        inside[outline_cells(lattice, ring)] ^= 1
    return inside


@given(st.sampled_from(LATTICES), SEEDS)
def test_the_rings_of_a_content_enclose_its_cells(lattice: Lattice, seed: int) -> None:
    cells = drawn_side(lattice, seed)
    outlines = region_outlines(lattice, cells)
    assert set(outlines) == set(np.unique(cells).tolist())
    for content, rings in outlines.items():
        assert np.array_equal(filled(lattice, rings), cells == content)
        area = sum(ring_area_mm2(ring) for ring in rings)
        assert area == pytest.approx(np.count_nonzero(cells == content) * lattice.cell_area_mm2)


@given(st.sampled_from(LATTICES), SEEDS)
def test_rings_run_along_the_walls_outer_ones_first(lattice: Lattice, seed: int) -> None:
    walls = {
        np.hypot(*(lattice.hexagon_mm[side] - lattice.hexagon_mm[side - 1])).round(9) for side in range(6)
    }
    for rings in region_outlines(lattice, drawn_side(lattice, seed)).values():
        signs = [ring_area_mm2(ring) > 0 for ring in rings]
        assert signs == sorted(signs, reverse=True)
        for ring in rings:
            steps = np.hypot(*(np.roll(ring, -1, axis=0) - ring).T)
            assert set(steps.round(9).tolist()) <= walls
            assert len(set(corners(ring))) == len(ring)
            assert not ring.flags.writeable


def edges(outlines: dict[Content, list[Ring]]) -> set[tuple[Corner, Corner]]:
    found = set()
    for rings in outlines.values():
        for ring in rings:
            path = corners(ring)
            found |= set(zip(path, path[1:] + path[:1], strict=True))
    return found


@given(st.sampled_from(LATTICES), SEEDS, TOLERANCES)
def test_neighbours_share_their_simplified_border_exactly(
    lattice: Lattice, seed: int, tolerance: float
) -> None:
    cells = drawn_side(lattice, seed)
    rim = {corner for ring in region_outlines(lattice, blank_cells(lattice))[Content.NOT_RECORDED]
           for corner in corners(ring)}  # fmt: skip
    found = edges(simplified_outlines(lattice, cells, tolerance))
    alone = {edge for edge in found if edge[::-1] not in found}
    assert all(begin in rim and end in rim for begin, end in alone)
    # What has no other side closes round the cells: every corner is left as often as it is reached.
    assert sorted(begin for begin, _ in alone) == sorted(end for _, end in alone)


@given(st.sampled_from(LATTICES), SEEDS, TOLERANCES)
def test_simplified_outlines_lose_no_ring_and_stay_near(
    lattice: Lattice, seed: int, tolerance: float
) -> None:
    cells = drawn_side(lattice, seed)
    exact, simple = region_outlines(lattice, cells), simplified_outlines(lattice, cells, tolerance)
    assert {c: len(rings) for c, rings in exact.items()} == {c: len(rings) for c, rings in simple.items()}
    for content, rings in exact.items():
        for ring, fewer in zip(rings, simple[content], strict=True):
            assert 3 <= len(fewer) <= len(ring)
            assert set(corners(fewer)) <= set(corners(ring))
            assert farthest_from(ring, fewer) <= tolerance + 1e-9


def farthest_from(points: Points, ring: Ring) -> float:
    """How far the farthest of these points lies from a ring."""
    start, along = ring, np.roll(ring, -1, axis=0) - ring
    away = points[:, None, :] - start[None]
    share = np.clip((away * along).sum(2) / (along**2).sum(1), 0, 1)
    return float(np.hypot(*np.moveaxis(away - share[..., None] * along, 2, 0)).min(axis=1).max())


@given(st.sampled_from(LATTICES), SEEDS)
def test_without_tolerance_nothing_is_lost(lattice: Lattice, seed: int) -> None:
    cells = drawn_side(lattice, seed)
    exact, simple = region_outlines(lattice, cells), simplified_outlines(lattice, cells, 0)
    assert edges(exact) == edges(simple)


def test_simplified_outlines_are_a_good_deal_shorter() -> None:
    lattice = fit_lattice(420, 270)
    cells = brood_side(lattice, speckle=0)
    exact, simple = region_outlines(lattice, cells), simplified_outlines(lattice, cells, 2.5)
    before, after = (sum(len(ring) for rings in o.values() for ring in rings) for o in (exact, simple))
    assert after < before / 4
    for content, rings in simple.items():
        area = sum(ring_area_mm2(ring) for ring in rings)
        assert area == pytest.approx(np.count_nonzero(cells == content) * lattice.cell_area_mm2, rel=0.1)


def test_single_cells_keep_a_shape_at_any_tolerance() -> None:
    lattice = LATTICES[0]
    cells = blank_cells(lattice, Content.SEALED).copy()
    alone, at_the_rim, corner = lattice.cell(5, 5), lattice.cell(0, 4), 0
    cells[[alone, at_the_rim, corner]] = Content.EMPTY
    rings = simplified_outlines(lattice, cells, 1000)[Content.EMPTY]
    assert len(rings) == 3
    assert all(ring_area_mm2(ring) > 0 for ring in rings)


@pytest.mark.parametrize("content", list(Content))
def test_a_side_of_one_content_has_one_ring(content: Content) -> None:
    lattice = LATTICES[1]
    outlines = region_outlines(lattice, blank_cells(lattice, content))
    assert [len(rings) for rings in outlines.values()] == [1]
    assert ring_area_mm2(outlines[content][0]) == pytest.approx(lattice.cells * lattice.cell_area_mm2)


def test_what_cannot_be_outlined_is_refused() -> None:
    with pytest.raises(ValueError, match="not of this lattice"):
        region_outlines(LATTICES[0], np.zeros(3, np.uint8))
    for tolerance in (-1.0, float("nan")):
        with pytest.raises(ValueError, match="negative"):
            simplified_outlines(LATTICES[0], blank_cells(LATTICES[0]), tolerance)


@given(st.lists(st.tuples(st.sampled_from(LATTICES), SEEDS), max_size=4), TOLERANCES)
def test_many_sides_at_once_are_as_one_by_one(sides: list[tuple[Lattice, int]], tolerance: float) -> None:
    drawn = [(lattice, drawn_side(lattice, seed)) for lattice, seed in sides]
    together = outlines_of_sides(drawn, tolerance)
    assert len(together) == len(sides)
    for (lattice, cells), found in zip(drawn, together, strict=True):
        alone = simplified_outlines(lattice, cells, tolerance)
        assert found.rings.keys() == alone.keys()
        for content, rings in alone.items():
            assert all(
                np.array_equal(ring, other) for ring, other in zip(found.rings[content], rings, strict=True)
            )


@given(st.sampled_from(LATTICES), SEEDS, st.floats(0, 3))
def test_borders_are_what_two_contents_share_each_piece_once(
    lattice: Lattice, seed: int, tolerance: float
) -> None:
    (found,) = outlines_of_sides([(lattice, drawn_side(lattice, seed))], tolerance)
    there = edges(found.rings)
    shared = {frozenset(edge) for edge in there if edge[::-1] in there}
    lines = [corners(found.points[border]) for border in found.borders]
    pieces = [frozenset(piece) for line in lines for piece in itertools.pairwise(line)]
    assert len(pieces) == len(set(pieces))
    assert set(pieces) == shared
    assert all(len(line) > 1 for line in lines)


def test_a_side_of_one_content_has_no_border() -> None:
    (found,) = outlines_of_sides([(LATTICES[0], blank_cells(LATTICES[0], Content.STORES))], 2)
    assert found.borders == []
    assert list(found.rings) == [Content.STORES]
