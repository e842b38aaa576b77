import numpy as np
import pytest

from beeworkbook.comb.codec import DamagedCombError, pack, unpack
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.store.drawings import packed, unpacked
from tests.comb.drawn import brood_side

LATTICE = FRAME_TYPES["dadant_blatt"].lattice
CELLS = LATTICE.cells


def test_a_drawing_is_packed_as_the_comb_packs_it() -> None:
    for seed in range(3):
        cells = brood_side(LATTICE, seed=seed)
        blob = packed(cells)
        assert blob == pack(cells)
        assert unpacked(blob, cells=CELLS).tobytes() == unpack(blob, cells=CELLS).tobytes()


def test_a_drawing_that_was_not_the_last_one_is_read() -> None:
    first, second = (brood_side(LATTICE, seed=seed) for seed in (1, 2))
    blob = packed(first)
    packed(second)
    assert unpacked(blob, cells=CELLS).tobytes() == first.tobytes()


def test_what_is_remembered_cannot_be_changed_by_anybody() -> None:
    mine = brood_side(LATTICE).copy()
    blob, was = packed(mine), mine.tobytes()
    mine[:] = 3
    again = unpacked(blob, cells=CELLS)
    assert again.tobytes() == was
    with pytest.raises(ValueError, match="read-only"):
        again[0] = 1


@pytest.mark.parametrize("blob", [b"", b"\1", b"\2abc", pack(np.zeros(CELLS + 1, np.uint8))])
def test_damage_and_a_wrong_length_are_refused_as_ever(blob: bytes) -> None:
    kept = packed(brood_side(LATTICE))
    with pytest.raises(DamagedCombError):
        unpacked(blob, cells=CELLS)
    with pytest.raises(DamagedCombError):
        unpacked(kept, cells=CELLS - 1)
