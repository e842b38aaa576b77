import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.comb.lattice import Lattice, Points, fit_lattice
from beeworkbook.qt.cell_map import CellMap, Sight, cell_map, nearest_cells

WIDE = fit_lattice(338.0, 190.0)
SMALL = fit_lattice(60.0, 47.0)


def centres_of_pixels(made: CellMap) -> Points:
    y, x = np.mgrid[0 : made.height, 0 : made.width]
    return np.column_stack(
        (
            (x.ravel() + 0.5 - made.sight.left_px) / made.sight.scale,
            (y.ravel() + 0.5 - made.sight.top_px) / made.sight.scale,
        )
    )


@pytest.mark.parametrize("lattice", [WIDE, SMALL, fit_lattice(200.0, 300.0)])
@pytest.mark.parametrize("sight", [Sight(1.5, 4.0, 3.0), Sight(6.3, -200.0, -100.0), Sight(0.4, 20.0, 30.0)])
def test_every_pixel_finds_the_cell_whose_walls_hold_it(lattice: Lattice, sight: Sight) -> None:
    made = cell_map(lattice, sight, 150, 90)
    found = lattice.cells_at(centres_of_pixels(made)).reshape(made.cell.shape)
    assert np.array_equal(np.where(found < 0, lattice.cells, found), made.cell)


def test_the_cell_across_the_nearest_wall_is_a_neighbour_or_beside_the_comb() -> None:
    made = cell_map(SMALL, Sight(5.0, 10.0, 10.0), 330, 260)
    inside = made.cell < SMALL.cells
    around = SMALL.neighbour_table[made.cell[inside]]
    across = made.across[inside]
    is_neighbour = (around == across[:, None]).any(axis=1)
    assert np.all(is_neighbour | (across == SMALL.cells))
    # Where it is beside the comb, the cell really lies at the rim.
    assert np.all((around[~is_neighbour] == -1).any(axis=1))


def test_a_line_lies_on_the_walls_and_not_in_the_middle_of_cells() -> None:
    sight = Sight(8.0, 0.0, 0.0)
    made = cell_map(SMALL, sight, 480, 376)
    x, y = (SMALL.centres[100] * sight.scale).astype(int)
    assert made.line[y, x] == 0
    wall_x = round((SMALL.centres[100, 0] + SMALL.pitch_x_mm / 2) * sight.scale)
    assert made.line[y, wall_x - 1 : wall_x + 1].max() > 100


def test_a_picture_without_a_pixel_is_refused() -> None:
    with pytest.raises(ValueError, match="at least one pixel"):
        cell_map(SMALL, Sight(1.0, 0.0, 0.0), 0, 5)


@settings(max_examples=25)
@given(cell=st.integers(0, WIDE.cells - 1), scale=st.floats(0.7, 5.0))
def test_the_box_of_a_cell_holds_all_its_pixels_and_its_outline(cell: int, scale: float) -> None:
    made = cell_map(WIDE, Sight(round(scale, 2), 3.0, 2.0), 300, 200)
    box = made.cells_box(np.array([cell]))
    mine = (made.cell == cell) | (made.across == cell)
    if box is None:
        assert not mine.any()
        return
    left, top, right, bottom = box
    inside = np.zeros_like(mine)
    inside[top:bottom, left:right] = True
    assert not np.any((made.cell == cell) & ~inside)


def test_no_cells_have_no_box() -> None:
    assert cell_map(SMALL, Sight(1.0, 0.0, 0.0), 60, 47).cells_box(np.array([], dtype=np.intp)) is None


def test_pixels_and_millimetres_undo_each_other() -> None:
    sight = Sight(2.5, -14.0, 6.0)
    assert sight.to_mm(*sight.to_px(31.0, 77.0)) == pytest.approx((31.0, 77.0))


def test_the_nearest_cell_is_found_beside_the_comb_too() -> None:
    x, y = np.linspace(-20.0, 80.0, 41), np.linspace(-20.0, 70.0, 37)
    found = nearest_cells(SMALL, x, y)
    points = np.stack(np.meshgrid(x, y), axis=-1)
    stretch = np.array((1 / SMALL.pitch_x_mm, np.sqrt(0.75) / SMALL.pitch_y_mm))
    distance = np.linalg.norm((points[:, :, None, :] - SMALL.centres) * stretch, axis=-1)
    chosen = np.take_along_axis(distance, found[:, :, None], axis=2)[:, :, 0]
    assert chosen == pytest.approx(distance.min(axis=2), abs=1e-9)
