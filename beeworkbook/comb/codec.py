"""The stored form of one side: a version byte, then the cells at a byte each, compressed.

A damaged or hostile blob is refused with the reason before more than the expected length is
unpacked. Which frame the cells belong to is kept beside the blob, not in it.
"""

import zlib
from typing import Final

import numpy as np

from beeworkbook.comb.contents import CONTENTS
from beeworkbook.comb.lattice import Cells, read_only
from beeworkbook.words import say

VERSION: Final = 1
_LEVEL: Final = 6


class DamagedCombError(ValueError):
    """The stored cells of a side cannot be read, and why."""

    def __init__(self, reason: str) -> None:
        super().__init__(say("This drawing cannot be read: {reason}.", reason=reason))
        self.reason = reason


def pack(cells: Cells) -> bytes:
    """The stored form of these cells.

    Shapes: cells (n,) uint8. Errors: ValueError if a code is not a content.
    """
    if cells.dtype != np.uint8 or cells.ndim != 1 or (len(cells) and int(cells.max()) >= len(CONTENTS)):
        raise ValueError("a side is a row of content codes")
    return bytes((VERSION,)) + zlib.compress(cells.tobytes(), _LEVEL)


def unpack(blob: bytes, *, cells: int) -> Cells:
    """The cells in a stored form, when there are as many as expected.

    Shapes: result (cells,), read-only. Errors: DamagedCombError with the reason.
    """
    if not blob:
        raise DamagedCombError(say("it is empty"))
    if blob[0] != VERSION:
        raise DamagedCombError(say("its form is number {number}, which is not known here", number=blob[0]))
    unpacked = np.frombuffer(_inflated(blob[1:], cells), np.uint8)
    if len(unpacked) != cells:
        text = say("it has {found} cells and not {expected}", found=len(unpacked), expected=cells)
        raise DamagedCombError(text)
    if cells and int(unpacked.max()) >= len(CONTENTS):
        raise DamagedCombError(say("content number {code} is not known", code=int(unpacked.max())))
    return read_only(unpacked)


def _inflated(packed: bytes, limit: int) -> bytes:
    unpacker = zlib.decompressobj()
    try:
        # One byte past the limit is enough to know that there are too many.
        raw = unpacker.decompress(packed, limit + 1)
    except zlib.error as error:
        raise DamagedCombError(say("its bytes are damaged")) from error
    if len(raw) > limit:
        raise DamagedCombError(say("it has more than {expected} cells", expected=limit))
    if not unpacker.eof:
        raise DamagedCombError(say("it breaks off before its end"))
    if unpacker.unused_data:
        raise DamagedCombError(say("something follows its end"))
    return raw
