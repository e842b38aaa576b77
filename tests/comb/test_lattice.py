import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.comb.lattice import (
    Direction,
    Lattice,
    cell_width_mm,
    cells_per_dm2_of,
    fit_lattice,
    read_only,
)

ALTERNATE = fit_lattice(338, 190)
EVEN = fit_lattice(338, 114)
LATTICES = (ALTERNATE, EVEN)


def distance_in_cells(lattice: Lattice, x: float, y: float) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    """Squared distance of every centre, in cell widths, once the hexagons are stretched to regular ones."""
    across = (lattice.centres[:, 0] - x) / lattice.pitch_x_mm
    down = (lattice.centres[:, 1] - y) / lattice.pitch_y_mm
    squared: np.ndarray[tuple[int], np.dtype[np.float64]] = across**2 + 0.75 * down**2
    return squared


def shape_error(lattice: Lattice) -> float:
    return abs(lattice.pitch_x_mm * math.sqrt(0.75) / lattice.pitch_y_mm - 1)


def test_these_lattices_are_of_both_kinds() -> None:
    assert ALTERNATE.first_row == ALTERNATE.second_row + 1
    assert EVEN.first_row == EVEN.second_row


@given(st.floats(150, 500), st.floats(90, 450), st.floats(230, 500))
def test_any_frame_gets_its_cells_whole_and_in_shape(width: float, height: float, density: float) -> None:
    lattice = fit_lattice(width, height, density)
    assert abs(lattice.cells / (width * height / 1e4 * density) - 1) <= 0.01
    assert shape_error(lattice) <= 0.035
    corners = (lattice.centres[:, None, :] + lattice.hexagon_mm).reshape(-1, 2)
    assert corners.min() >= -1e-9
    assert (corners <= np.array((width, height)) + 1e-9).all()


@pytest.mark.parametrize("frame", FRAME_TYPES.values(), ids=str)
def test_shipped_frames_have_nearly_the_nominal_pitch(frame: FrameType) -> None:
    lattice = frame.lattice
    nominal = cell_width_mm(frame.cells_per_dm2)
    assert lattice.pitch_x_mm == pytest.approx(nominal, rel=0.03)
    assert lattice.pitch_y_mm == pytest.approx(nominal * math.sqrt(0.75), rel=0.03)
    assert shape_error(lattice) <= 0.035
    assert lattice.cells == pytest.approx(frame.side_cells, rel=0.01)


@pytest.mark.parametrize(
    ("width", "height", "density"),
    [
        (19, 100, 400),
        (100, math.nan, 400),
        (100, math.inf, 400),
        (100, 100, 0),
        (100, 100, -1),
        (9e3, 9e3, 400),
    ],
)
def test_a_side_that_is_no_side_is_refused(width: float, height: float, density: float) -> None:
    with pytest.raises(ValueError, match="side"):
        fit_lattice(width, height, density)


def test_width_and_density_are_inverse() -> None:
    assert cells_per_dm2_of(cell_width_mm(321.0)) == pytest.approx(321.0)
    with pytest.raises(ValueError, match="positive"):
        cell_width_mm(0)
    with pytest.raises(ValueError, match="positive"):
        cells_per_dm2_of(-1)


@pytest.mark.parametrize("lattice", LATTICES)
def test_every_cell_has_its_row_place_and_centre(lattice: Lattice) -> None:
    assert lattice.row_starts[-1] == lattice.cells == len(lattice.centres)
    for cell in range(lattice.cells):
        row, column = lattice.row_and_column(cell)
        assert (row, column) == (lattice.row_of[cell], lattice.column_of[cell])
        assert lattice.cell(row, column) == cell
        assert lattice.row_starts[row] + column == cell
    assert lattice.centres[0].tolist() == [lattice.left_mm, lattice.top_mm]
    second = lattice.centres[lattice.row_starts[1]]
    assert second[0] == pytest.approx(lattice.left_mm + lattice.pitch_x_mm / 2)
    assert second[1] == pytest.approx(lattice.top_mm + lattice.pitch_y_mm)


@pytest.mark.parametrize("lattice", LATTICES)
def test_what_is_no_cell_is_refused(lattice: Lattice) -> None:
    for cell in (-1, lattice.cells):
        with pytest.raises(IndexError):
            lattice.row_and_column(cell)
    for row, column in ((-1, 0), (lattice.rows, 0), (0, -1), (0, lattice.first_row), (1, lattice.second_row)):
        with pytest.raises(IndexError):
            lattice.cell(row, column)


@pytest.mark.parametrize("lattice", LATTICES)
def test_neighbours_are_the_cells_a_pitch_away(lattice: Lattice) -> None:
    for cell in range(0, lattice.cells, 7):
        squared = distance_in_cells(lattice, *lattice.centres[cell])
        near = np.flatnonzero((squared > 0.5) & (squared < 1.5))
        assert lattice.neighbours(cell) == tuple(near)


@pytest.mark.parametrize("lattice", LATTICES)
def test_a_wall_runs_between_the_corners_of_its_neighbour(lattice: Lattice) -> None:
    cell = lattice.cell(5, 9)
    for side in range(6):
        other = lattice.neighbour_table[cell, side]
        middle = (lattice.centres[cell] + lattice.centres[other]) / 2
        wall = (lattice.hexagon_mm[side] + lattice.hexagon_mm[(side + 1) % 6]) / 2
        assert lattice.centres[cell] + wall == pytest.approx(middle)


@pytest.mark.parametrize("lattice", LATTICES)
def test_in_the_sheared_grid_all_cells_share_six_neighbours(lattice: Lattice) -> None:
    row, q = lattice.sheared
    cell_of = {(int(r), int(s)): cell for cell, (r, s) in enumerate(zip(row, q, strict=True))}
    for cell in range(lattice.cells):
        r, s = int(row[cell]), int(q[cell])
        around = ((r, s + 1), (r, s - 1), (r - 1, s), (r - 1, s + 1), (r + 1, s - 1), (r + 1, s))
        assert lattice.neighbours(cell) == tuple(sorted(cell_of[at] for at in around if at in cell_of))


@given(st.sampled_from(LATTICES), st.floats(-20, 360), st.floats(-20, 210))
def test_a_point_lies_in_the_nearest_cell(lattice: Lattice, x: float, y: float) -> None:
    found = lattice.cell_at(x, y)
    squared = distance_in_cells(lattice, x, y)
    if found is not None:
        assert squared[found] == pytest.approx(squared.min())
        assert squared[found] <= 1 / 3 + 1e-9  # no point of a hexagon is farther than its corners
    else:
        assert squared.min() >= 1 / 4 - 1e-9  # every point nearer than a wall is in the cell


@pytest.mark.parametrize("lattice", LATTICES)
def test_every_centre_lies_in_its_own_cell(lattice: Lattice) -> None:
    assert lattice.cells_at(lattice.centres).tolist() == list(range(lattice.cells))


@pytest.mark.parametrize("lattice", LATTICES)
def test_down_and_up_come_back(lattice: Lattice) -> None:
    start = lattice.cell(4, 12)
    assert lattice.step(lattice.step(start, "down"), "up") == start
    assert lattice.step(lattice.step(start, "left"), "right") == start
    cell = start
    for _ in range(lattice.rows - 5):
        cell = lattice.step(cell, "down")
    assert lattice.row_and_column(cell) == (lattice.rows - 1, 12)


@pytest.mark.parametrize("lattice", LATTICES)
@pytest.mark.parametrize("direction", ["left", "right", "up", "down"])
def test_the_cursor_stays_on_the_comb(lattice: Lattice, direction: Direction) -> None:
    for cell in range(lattice.cells):
        to = lattice.step(cell, direction)
        assert to == cell or to in lattice.neighbours(cell)


def test_what_is_handed_out_cannot_be_changed() -> None:
    for array in (ALTERNATE.centres, ALTERNATE.neighbour_table, ALTERNATE.hexagon_mm, read_only(np.zeros(2))):
        with pytest.raises(ValueError, match="read-only"):
            array[0] = 0


def test_equal_lattices_are_equal_and_kept() -> None:
    assert fit_lattice(338, 190) is ALTERNATE
    assert ALTERNATE != EVEN
    assert ALTERNATE.cell_area_mm2 == pytest.approx(25, rel=0.03)
