"""Drawings on their way into the store and out: as comb.codec packs them, remembering the last one.

A finished stroke is packed and counted at once, and the next stroke most likely starts from it, so
that the side packed last need not be unpacked for either. Nothing is kept of any other.
"""

from dataclasses import dataclass

import numpy as np

from beeworkbook.comb.codec import pack, unpack
from beeworkbook.comb.lattice import Cells


@dataclass(frozen=True, slots=True, eq=False)
class _Packed:
    """A drawing in its stored form, and the cells that were packed."""

    blob: bytes
    cells: Cells


_last = [_Packed(b"", np.empty(0, np.uint8))]


def packed(cells: Cells) -> bytes:
    """The stored form of these cells.

    Shapes: cells (n,) uint8. Errors: ValueError if a code is not a content.
    """
    blob = pack(cells)
    _last[0] = _Packed(blob, np.frombuffer(cells.tobytes(), np.uint8))  # of bytes: nobody can change it
    return blob


def unpacked(blob: bytes, *, cells: int) -> Cells:
    """The cells in a stored form, when there are as many as expected.

    Shapes: result (cells,), read-only. Errors: DamagedCombError with the reason.
    """
    last = _last[0]
    if last.blob == blob and len(last.cells) == cells:
        return last.cells
    return unpack(blob, cells=cells)
