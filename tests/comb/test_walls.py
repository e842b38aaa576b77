import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import Lattice, fit_lattice
from beeworkbook.comb.side import blank_cells
from beeworkbook.comb.walls import chained_walls, sides_of
from tests.comb.drawn import drawn_side

LATTICES = (fit_lattice(100, 61), fit_lattice(338, 114), fit_lattice(60, 40))
SEEDS = st.integers(0, 2**32 - 1)


@pytest.mark.parametrize("lattice", LATTICES)
def test_a_corner_is_one_point_from_all_its_cells(lattice: Lattice) -> None:
    sides = sides_of(lattice)
    place: dict[int, tuple[float, float]] = {}
    for corner, point in zip(sides.corner.tolist(), map(tuple, sides.points.tolist()), strict=True):
        assert place.setdefault(corner, point) == point  # to the last bit
    assert len(set(place.values())) == len(place)
    exact = (lattice.centres[:, None, :] + lattice.hexagon_mm).reshape(-1, 2)
    assert sides.points == pytest.approx(exact)


@given(st.sampled_from(LATTICES), SEEDS)
def test_walls_part_contents_and_chain_into_rings(lattice: Lattice, seed: int) -> None:
    cells = drawn_side(lattice, seed)
    walls = chained_walls(lattice, cells)
    expected = [
        6 * cell + side
        for cell in range(lattice.cells)
        for side, near in enumerate(lattice.neighbour_table[cell])
        if near < 0 or cells[near] != cells[cell]
    ]
    assert sorted(walls.wall.tolist()) == expected
    assert (walls.inside == cells[walls.wall // 6]).all()
    assert (walls.inside != walls.beyond).all()
    for begin, end in zip(walls.starts, [*walls.starts[1:], len(walls.wall)], strict=True):
        ring = walls.wall[begin:end]
        assert len(set(walls.inside[begin:end].tolist())) == 1
        # Every wall ends at the corner where the next one of its ring begins.
        assert (walls.sides.corner[walls.sides.onward[ring]] == walls.sides.corner[np.roll(ring, -1)]).all()
        assert (end - begin) % 2 == 0


@given(st.sampled_from(LATTICES), SEEDS)
def test_three_contents_meet_at_a_junction(lattice: Lattice, seed: int) -> None:
    cells = drawn_side(lattice, seed)
    walls = chained_walls(lattice, cells)
    meeting: dict[int, set[int]] = {}
    for wall, inside, beyond in zip(walls.wall, walls.inside, walls.beyond, strict=True):
        for corner in (walls.sides.corner[wall], walls.sides.corner[walls.sides.onward[wall]]):
            meeting.setdefault(int(corner), set()).update((int(inside), int(beyond)))
    for wall, junction in zip(walls.wall, walls.is_junction, strict=True):
        assert junction == (len(meeting[int(walls.sides.corner[wall])]) == 3)


def test_a_ring_round_a_hole_runs_the_other_way() -> None:
    lattice = LATTICES[0]
    cells = blank_cells(lattice, Content.SEALED).copy()
    cells[lattice.cell(5, 5)] = Content.EMPTY
    walls = chained_walls(lattice, cells)
    kinds = zip(walls.inside[walls.starts].tolist(), walls.is_hole.tolist(), strict=True)
    assert sorted(kinds) == [(Content.EMPTY, False), (Content.SEALED, False), (Content.SEALED, True)]
    assert not walls.is_junction.any()


def test_only_cells_of_the_lattice_have_walls() -> None:
    with pytest.raises(ValueError, match="not of this lattice"):
        chained_walls(LATTICES[0], np.zeros(3, np.uint8))
