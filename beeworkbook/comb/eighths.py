"""Eighths of a side into whole cells, and cells back into eighths.

The keeper estimates in eighths of a side; a side has whole cells. How they lie is in layout.py, how
they are typed in typed.py.
"""

import math
from collections.abc import Mapping
from fractions import Fraction
from typing import Final

import numpy as np

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.frames import FrameType
from beeworkbook.comb.lattice import Cells
from beeworkbook.words import say

EIGHTHS: Final = 8
_SLACK: Final = 1e-5


class EighthsError(ValueError):
    """A side has eight eighths, and none of its contents less than nothing."""

    def __init__(self) -> None:
        super().__init__(say("A side has eight eighths, and none of its contents can be less than nothing."))


def counts_for(eighths: Mapping[Content, float], cells: int) -> dict[Content, int]:
    """Whole cells for every content, as near to its eighths as whole cells can be.

    What was not said has its share too, so that the said ones are not stretched over it. It is not
    in the result: together the counts are at most the cells of the side.
    Errors: EighthsError for more than eight eighths or a negative or unreal number of them.
    Source: largest remainders (Hamilton's method), ties to the content first in code order.
    """
    shares = {content: float(eighths[content]) for content in CONTENTS if content in eighths}
    if any(not (math.isfinite(share) and share >= 0) for share in shares.values()):
        raise EighthsError
    said = sum(shares.values())
    if said > EIGHTHS + _SLACK:
        raise EighthsError
    whole = max(said, float(EIGHTHS)) if abs(said - EIGHTHS) > _SLACK else said
    shares[Content.NOT_RECORDED] = shares.get(Content.NOT_RECORDED, 0.0) + whole - said
    counts = _largest_remainders({code: Fraction(share) for code, share in shares.items()}, cells)
    del counts[Content.NOT_RECORDED]
    return counts


def read_back(frame: FrameType, cells: Cells) -> dict[Content, float]:
    """The eighths of every content that is on a side, in code order; what is not recorded is left out.

    Shapes: cells (frame.lattice.cells,). Errors: ValueError on a wrong length.
    """
    if len(cells) != frame.lattice.cells:
        raise ValueError("the cells are not of this frame")
    counts = np.bincount(cells, minlength=len(CONTENTS))
    return {
        content: EIGHTHS * int(counts[content]) / len(cells)
        for content in CONTENTS
        if content is not Content.NOT_RECORDED and counts[content]
    }


def whole_eighths(eighths: Mapping[Content, float]) -> dict[Content, int]:
    """The same in whole eighths, for a line of type; what comes to less than half of one falls away.

    Together they are the nearest whole number to what they were.
    Source: largest remainders, as counts_for.
    """
    total = math.floor(sum(eighths.values()) + 0.5)
    if not total:
        return {}
    counts = _largest_remainders({code: Fraction(share) for code, share in eighths.items()}, total)
    return {content: count for content, count in counts.items() if count}


def side_cells(frame: FrameType, eighths: float, *, drone: bool = False) -> float:
    """Cells that so many eighths of a side hold, worker cells or drone cells.

    Source: share × area × density; 400 worker and 230 drone cells per eighth of a Zander side of
    8 dm² (bees-online.at 2020).
    """
    density = frame.drone_cells_per_dm2 if drone else frame.cells_per_dm2
    return eighths / EIGHTHS * frame.area_dm2 * density


def _largest_remainders(shares: Mapping[Content, Fraction], total: int) -> dict[Content, int]:
    """So many whole things dealt out by share. Exact: no rounding decides who gets the last one."""
    whole = sum(shares.values())
    quotas = {content: share * total / whole for content, share in shares.items()}
    counts = {content: math.floor(quota) for content, quota in quotas.items()}
    # What is not recorded comes last at a tie: a cell is given to what was said.
    order = sorted(quotas, key=lambda code: (counts[code] - quotas[code], code == Content.NOT_RECORDED, code))
    for content in order[: total - sum(counts.values())]:
        counts[content] += 1
    return counts
