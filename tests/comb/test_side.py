import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import CellPatch, PatchMismatchError, blank_cells, tally, tally_counts

ZANDER = FRAME_TYPES["zander"]
LATTICE = ZANDER.lattice
SEEDS = st.integers(0, 2**32 - 1)


def speckled(seed: int) -> np.ndarray[tuple[int], np.dtype[np.uint8]]:
    return np.random.default_rng(seed).integers(0, len(CONTENTS), LATTICE.cells).astype(np.uint8)


def test_a_whole_side_is_area_times_density_whatever_the_lattice() -> None:
    assert LATTICE.cells != 3200
    whole = tally(ZANDER, blank_cells(LATTICE, Content.SEALED))
    assert whole.cells[Content.SEALED] == 3200
    assert whole.area_dm2[Content.SEALED] == 8.0
    assert whole.share[Content.SEALED] == 1.0
    assert whole.worker_brood_cells == 3200
    assert whole.brood_share == 1.0
    assert whole.comb_dm2 == whole.brood_dm2 == 8.0
    assert whole.recorded_share == 1.0


def test_drone_brood_counts_by_the_cells_it_lies_in() -> None:
    drones = blank_cells(LATTICE, Content.DRONE)
    assert tally(ZANDER, drones, drone_cells=True).drone_brood_cells == 8 * 230
    assert tally(ZANDER, drones, drone_cells=False).drone_brood_cells == 8 * 400
    assert tally(ZANDER, drones).worker_brood_cells == 0
    assert tally(ZANDER, drones).brood_dm2 == 8.0


@pytest.mark.parametrize("content", [Content.GAP, Content.NOT_RECORDED])
def test_a_gap_is_no_comb_and_what_was_not_said_counts_as_nothing(content: Content) -> None:
    side = tally(ZANDER, blank_cells(LATTICE, content))
    assert side.share[content] == 1.0
    assert side.comb_dm2 == 0
    assert sum(side.cells) == 0
    assert side.recorded_share == (0.0 if content is Content.NOT_RECORDED else 1.0)


@given(SEEDS)
def test_shares_areas_and_cells_agree(seed: int) -> None:
    cells = speckled(seed)
    side = tally(ZANDER, cells)
    assert sum(side.share) == pytest.approx(1)
    assert len(side.share) == len(side.cells) == len(side.area_dm2) == 12
    bare = side.share[Content.GAP] + side.share[Content.NOT_RECORDED]
    assert side.comb_dm2 == pytest.approx(8 * (1 - bare))
    assert side.cells[Content.STORES] == pytest.approx(
        np.count_nonzero(cells == Content.STORES) / LATTICE.cells * 3200
    )
    assert side.brood_share == pytest.approx(np.isin(cells, (4, 5, 6, 7, 8)).mean())


def test_what_is_not_of_this_frame_is_refused() -> None:
    with pytest.raises(ValueError, match="not of this frame"):
        tally(ZANDER, np.zeros(3200, np.uint8))
    with pytest.raises(ValueError, match="every content"):
        tally(ZANDER, np.full(LATTICE.cells, 12, np.uint8))
    with pytest.raises(ValueError, match="every content"):
        tally_counts(ZANDER, [0] * 12)


@given(SEEDS, SEEDS)
def test_a_patch_and_its_inverse_are_nothing(one: int, other: int) -> None:
    before, after = speckled(one), speckled(other)
    patch = CellPatch.between(before, after)
    done = patch.apply(before)
    assert np.array_equal(done, after)
    assert np.array_equal(patch.inverse.apply(done), before)
    assert patch.inverse.inverse == patch
    assert (patch.before != patch.after).all()


@given(SEEDS, st.lists(st.integers(0, LATTICE.cells - 1), unique=True))
def test_painting_leaves_unchanged_cells_out(seed: int, chosen: list[int]) -> None:
    cells, indices = speckled(seed), np.array(sorted(chosen), np.intp)
    patch = CellPatch.painting(cells, indices, Content.POLLEN)
    painted = patch.apply(cells)
    expected = cells.copy()
    expected[indices] = Content.POLLEN
    assert np.array_equal(painted, expected)
    assert (patch.before != Content.POLLEN).all()
    assert patch == CellPatch.between(cells, expected)
    assert hash(patch) == hash(CellPatch.between(cells, expected))


def test_a_stroke_that_changes_nothing_is_empty() -> None:
    cells = blank_cells(LATTICE, Content.EGGS)
    patch = CellPatch.painting(cells, np.arange(20), Content.EGGS)
    assert patch.is_empty
    assert np.array_equal(patch.apply(cells), cells)
    assert patch != "a patch"


def test_a_patch_is_not_put_on_a_comb_that_changed_meanwhile() -> None:
    cells = blank_cells(LATTICE)
    patch = CellPatch.painting(cells, np.array([3, 4]), Content.EGGS)
    with pytest.raises(PatchMismatchError, match="has changed since"):
        patch.apply(blank_cells(LATTICE, Content.SEALED))
    with pytest.raises(PatchMismatchError):
        patch.apply(np.zeros(4, np.uint8))
    with pytest.raises(ValueError, match="one side"):
        CellPatch.between(cells, cells[1:])


def test_sides_and_patches_are_values() -> None:
    patch = CellPatch.painting(blank_cells(LATTICE), np.array([3, 4]), Content.EGGS)
    for array in (
        patch.indices,
        patch.before,
        patch.after,
        patch.apply(blank_cells(LATTICE)),
        blank_cells(LATTICE),
    ):
        assert not array.flags.writeable
