"""Hexagon density and the row-count rule against published figures."""

import math

import numpy as np
import pytest

from beeworkbook.comb.contents import Content
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.comb.lattice import (
    DRONE_CELLS_PER_DM2,
    WORKER_CELLS_PER_DM2,
    cell_width_mm,
    cells_per_dm2_of,
    fit_lattice,
)
from beeworkbook.comb.regions import ellipse
from beeworkbook.comb.side import blank_cells, tally

SQUARE_INCH_DM2 = 0.254**2  # 25.4 mm to the inch, exactly


@pytest.mark.parametrize(
    ("width_mm", "per_dm2_of_comb", "within"),
    [
        # M. Justrich in A. Betts, "The size of brood-comb cells", Bee World, September 1938, p. 106-107:
        # ends of a table of cells in a row of 10 cm against cells per dm² of comb, both sides.
        (100 / 12.8, 378, 1),
        (100 / 20, 923, 1),
        # É. Bertrand, La conduite du rucher, p. 239: 858 per dm² of comb; the width computed, 5.19 mm.
        (5.19, 858, 858 * 0.005),
        # Italian sheet, apicoltoridelpiceno 2019: about 750 cells per dm² at 5.55 mm.
        (5.55, 750, 2),
        # GDSA 22, 2014: Dadant foundation 760 per dm² of comb at 5.5 mm.
        (5.5, 760, 5),
        # The same talk: natural worker comb 840 to 860, so 5.2 mm (computed).
        (5.2, 850, 10),
    ],
)
def test_cells_per_dm2_of_comb(width_mm: float, per_dm2_of_comb: float, within: float) -> None:
    assert 2 * cells_per_dm2_of(width_mm) == pytest.approx(per_dm2_of_comb, abs=within)


@pytest.mark.parametrize(
    ("width_mm", "per_dm2"),
    # Computed from the density of a hexagon; the width of 5.4 mm for modern foundation is common practice.
    [(4.9, 481), (5.2, 427), (5.3, 411), (5.4, 396), (5.5, 382), (5.62, 366), (6.5, 273), (6.9, 243)],
)
def test_cells_per_dm2_of_one_side(width_mm: float, per_dm2: float) -> None:
    assert cells_per_dm2_of(width_mm) == pytest.approx(per_dm2, abs=0.6)


def test_the_default_widths() -> None:
    # Swiss rule "up to 400 cells per dm² at 5.4 mm", imker.felser.ch; width computed.
    assert cell_width_mm(WORKER_CELLS_PER_DM2) == pytest.approx(5.373, abs=0.002)
    # 230 drone cells per dm² to 400 worker cells, bees-online.at 2020; widths computed.
    assert pytest.approx(0.575) == DRONE_CELLS_PER_DM2 / WORKER_CELLS_PER_DM2
    assert cell_width_mm(DRONE_CELLS_PER_DM2) == pytest.approx(7.086, abs=0.002)


def test_the_grading_note_in_square_inches() -> None:
    # US grading note, htfbw.com: 23.6 worker cells per square inch, 2 700 square inches in ten frames.
    per_dm2 = 23.6 / SQUARE_INCH_DM2
    assert per_dm2 == pytest.approx(366, abs=0.5)
    assert cell_width_mm(per_dm2) == pytest.approx(5.62, abs=0.01)
    assert 2700 * SQUARE_INCH_DM2 * per_dm2 == pytest.approx(63_720)


def test_a_published_list_with_too_large_cells() -> None:
    # UK list of hive sizes: 50 000 cells on 2 200 square inches of a National; 22.7 per square inch and
    # 5.73 mm (computed) are too large, so the list is low.
    per_square_inch = 50_000 / 2200
    assert per_square_inch == pytest.approx(22.7, rel=0.01)
    assert cell_width_mm(per_square_inch / SQUARE_INCH_DM2) == pytest.approx(5.73, rel=0.01)


@pytest.mark.parametrize("frame", FRAME_TYPES.values(), ids=list(FRAME_TYPES))
def test_the_row_count_rule_holds_on_our_lattices(frame: FrameType) -> None:
    """Justrich in Betts 1938: cells per dm² of comb = 2.309 × (cells in a straight row of 10 cm)²."""
    lattice = frame.lattice
    per_comb = 2 * 1e4 / lattice.cell_area_mm2
    assert 2.309 * (100 / lattice.pitch_x_mm) ** 2 == pytest.approx(per_comb, rel=0.035)


@pytest.mark.parametrize("density", [375, 382, 400, 427])
def test_a_lattice_has_the_density_it_was_asked_for(density: float) -> None:
    """Densities: Italian sheet 375, GDSA 22 about 382, Swiss rule 400, Bertrand about 427."""
    lattice = fit_lattice(420, 270, density)
    assert lattice.cells == pytest.approx(11.34 * density, rel=0.01)


def test_the_default_cell_on_the_british_deep() -> None:
    """Plain geometry: 41 rows of 63 and 62 on 338 × 190 mm are 2 563 cells of 5.365 mm."""
    lattice = FRAME_TYPES["bs_deep"].lattice
    assert (lattice.rows, lattice.first_row, lattice.second_row, lattice.cells) == (41, 63, 62, 2563)
    assert lattice.pitch_x_mm == pytest.approx(5.365, abs=0.001)


def test_an_ellipse_of_brood() -> None:
    """A patch of 30 × 16 cm on one side: 376.99 cm², 1 508 cells at 400 (common practice, computed)."""
    assert math.pi * 15 * 8 == pytest.approx(376.99, abs=0.01)
    frame = FRAME_TYPES["dadant_blatt"]
    cells = np.copy(blank_cells(frame.lattice))
    cells[ellipse(frame.lattice, (210, 135), 150, 80)] = Content.SEALED
    # Whole cells leave a margin at the wood, so a share of them is a little more than a share of the area.
    covered = frame.lattice.cells * frame.lattice.cell_area_mm2 / 1e4 / frame.area_dm2
    assert covered == pytest.approx(0.99, abs=0.01)
    assert tally(frame, cells).cells[Content.SEALED] == pytest.approx(1508 / covered, rel=0.003)
