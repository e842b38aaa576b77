"""Eighths of a side against published figures of cells. Bees and kilograms are in the colony's tests."""

import pytest

from beeworkbook.comb.contents import Content
from beeworkbook.comb.eighths import counts_for, side_cells
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import tally_counts

ZANDER = FRAME_TYPES["zander"]


def test_one_eighth_of_a_zander_side() -> None:
    """bees-online.at 2020, published: one eighth sealed = 400 cells."""
    assert side_cells(ZANDER, 1) == pytest.approx(400, abs=1e-9)


def test_a_whole_zander_side() -> None:
    """bees-online.at 2020, published: 3 200 worker cells, 1 840 drone cells."""
    assert side_cells(ZANDER, 8) == pytest.approx(3200, abs=1e-9)
    assert side_cells(ZANDER, 8, drone=True) == pytest.approx(1840, abs=1e-9)


def test_a_zander_frame_all_brood() -> None:
    """Computed from the same: 16 eighths on both sides, 6 400 worker cells."""
    assert 2 * side_cells(ZANDER, 8) == pytest.approx(6400, abs=1e-9)


def test_area_and_density_of_the_zander_side() -> None:
    """Zander inside size, published: 8.00 dm² × 400 cells per dm² = 3 200."""
    assert ZANDER.area_dm2 == pytest.approx(8.00, abs=1e-9)


@pytest.mark.parametrize("sealed", range(9))
def test_the_shown_figures_of_eighths_are_the_published_ones(sealed: int) -> None:
    """bees-online.at 2020: 400 cells an eighth; whole lattice cells cost at most half a cell of that."""
    cells = ZANDER.lattice.cells
    said = {Content.SEALED: float(sealed), Content.STORES: 8.0 - sealed}
    counts = counts_for(said, cells)
    by_code = [counts.get(content, 0) for content in Content]
    shown = tally_counts(ZANDER, by_code).cells[Content.SEALED]
    assert shown == pytest.approx(400 * sealed, abs=0.51 * 3200 / cells)
