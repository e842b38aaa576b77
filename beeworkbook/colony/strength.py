"""How many bees: from eighths of a side covered, or from seams counted from above."""

from typing import Final

BEES_PER_DM2: Final = 125.0
"""Bees on a dm² of a side that is fully covered.

Source: A. Imdorf, M. Rickli and P. Fluri 1996, Liebefeld: 1 000 on a Zander side, 1 100 on a Langstroth side.
"""
FEWEST_BEES_PER_DM2: Final = 100.0
MOST_BEES_PER_DM2: Final = 140.0
"""How far bees sit from that on a well covered side.

Source: common practice, no source; imker.felser.ch has 130.
"""
OCCUPIED_BEES_PER_DM2: Final = 1100 / (2 * 6.42)
"""Bees on a dm² of a side, averaged over all combs they occupy, the half-empty ones too.

Source: J. Simpson 1969, J. Apic. Res. 8(1):3-8: 1 100 on an occupied British Standard comb, both sides; the
comb's side is 6.42 dm². That a seam is one comb's worth is common practice, no source.
"""
SEAM_SPREAD: Final = 0.3
"""How far seams may mislead. Source: common practice, no source."""
_EIGHTHS: Final = 8
_FACES: Final = 2


def bees_on_side(side_dm2: float, covered_eighths: float, per_dm2: float = BEES_PER_DM2) -> float:
    """Bees on one side of which so many eighths are covered.

    Units: dm² of the whole side, eighths. Source: BEES_PER_DM2.
    """
    return side_dm2 * covered_eighths / _EIGHTHS * per_dm2


def bees_in_seams(seams: float, side_dm2: float) -> float:
    """Bees in so many seams, counted from above between the top bars.

    Units: seams, dm² of one side of the combs. Source: OCCUPIED_BEES_PER_DM2.
    """
    return seams * _FACES * side_dm2 * OCCUPIED_BEES_PER_DM2
