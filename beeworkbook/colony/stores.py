"""What stores weigh: from comb area to kilograms, and when they are too few.

Sealed syrup is stores like any other; honey is what is harvested from supers not fed under, and is not
known here.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from beeworkbook.colony.records import PartKind
from beeworkbook.comb.contents import Content
from beeworkbook.words import say

SAFE_KG_PER_DM2: Final = 0.25
"""kg per dm² of comb, both faces: brood combs.

Source: 125 g per eighth of a Zander side, that is per dm² of one side: bees-online.at 2020, mueggelland.de
(the Liebefeld way).
"""
FULL_KG_PER_DM2: Final = 0.33
"""kg per dm² of comb, both faces: sealed combs in supers.

Source: A. Clément, L'apiculture moderne, p. 56: 330 g per dm².
"""
THIN_KG_PER_DM2: Final = 0.22
"""kg per dm² of comb, both faces: nectar and syrup not yet sealed. Source: common practice, no source."""
ALARM_KG: Final = 4.5
"""Less than this at any time of the season is too little. Source: common practice, no source (10 lb)."""
_FACES: Final = 2


@dataclass(frozen=True)
class StoresKg:
    """Kilograms by what they were reckoned with: sealed in brood boxes, sealed in supers, thin anywhere."""

    brood_box: float = 0.0
    super_box: float = 0.0
    thin: float = 0.0

    @property
    def total(self) -> float:
        """All of it."""
        return self.brood_box + self.super_box + self.thin

    def __add__(self, other: "StoresKg") -> "StoresKg":
        return StoresKg(
            self.brood_box + other.brood_box, self.super_box + other.super_box, self.thin + other.thin
        )


def side_stores_kg(area_dm2: Sequence[float], kind: PartKind) -> StoresKg:
    """The stores on one side in a box of this kind.

    Shapes: area_dm2, 12 by code of the content, of one side. Units: dm², kg.
    Source: SAFE_KG_PER_DM2, FULL_KG_PER_DM2, THIN_KG_PER_DM2, each half for one face.
    """
    sealed = area_dm2[Content.STORES] / _FACES
    thin = area_dm2[Content.NECTAR] / _FACES * THIN_KG_PER_DM2
    if kind is PartKind.SUPER:
        return StoresKg(super_box=sealed * FULL_KG_PER_DM2, thin=thin)
    return StoresKg(brood_box=sealed * SAFE_KG_PER_DM2, thin=thin)


def comb_stores_kg(comb_dm2: float, kind: PartKind = PartKind.BROOD_BOX) -> float:
    """What a comb full of sealed stores holds, its area being that of one side.

    Units: dm², kg. Source: as side_stores_kg.
    """
    return comb_dm2 * (FULL_KG_PER_DM2 if kind is PartKind.SUPER else SAFE_KG_PER_DM2)


def stores_basis(stores: StoresKg) -> str:
    """With which weight of comb the stores were reckoned, in a sentence.

    Source: as side_stores_kg.
    """
    parts = []
    if stores.brood_box:
        parts.append(say("0.25 kg per dm² of comb in brood boxes"))
    if stores.super_box:
        parts.append(say("0.33 in supers, the upper figure"))
    if stores.thin:
        parts.append(say("thin stores at 0.22"))
    if not parts:
        return say("no stores were seen on the combs looked at")
    return say("reckoned at {weights}", weights=", ".join(parts))
