"""How brood grows: days from the egg by caste, the brood of a steadily laying queen, and the way back.

Day 0 is the day the egg is laid. Averages of European stock in a temperate climate.
"""

import math
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from beeworkbook.comb.contents import CellKind


class Caste(StrEnum):
    """Who comes out of the cell."""

    WORKER = "worker"
    QUEEN = "queen"
    DRONE = "drone"


@dataclass(frozen=True)
class BroodDays:
    """Days spent as egg, as open larva, and sealed."""

    egg: int
    open: int
    sealed: int

    @property
    def sealed_on(self) -> int:
        """The day after laying on which the cell is sealed."""
        return self.egg + self.open

    @property
    def emerges_on(self) -> int:
        """The day after laying on which the adult emerges."""
        return self.egg + self.open + self.sealed


BROOD_DAYS: Final = MappingProxyType(
    {
        Caste.WORKER: BroodDays(3, 6, 12),
        Caste.QUEEN: BroodDays(3, 5, 8),
        Caste.DRONE: BroodDays(3, 7, 14),
    }
)
"""Source: FAO text x0083e ch. 3 (worker egg 3, larva 6, pupa 12; drone 24) and an encyclopaedia's table of
the honey bee's life cycle (sealed: queen 7½ to 8, worker 9, drone 10), as quoted.

Fukuda and Sakagami 1968 saw 87 % of workers emerge after 20 days; the handbooks' 21 is kept, since the
1 : 2 : 4 rule rests on it.
"""

STAGE_SURVIVAL: Final = (0.942, 864 / 942, 851 / 864)
"""The share that comes through the egg, the open and the sealed stage, in the middle of a good nest.

Source: H. Fukuda and S. Sakagami 1968, Res. Popul. Ecol. 10:31-39: of 100 eggs 94.2 larvae, 86.4 sealed,
85.1 adults.
"""


@dataclass(frozen=True)
class StageDates:
    """The days an egg's cell changes."""

    hatches: date
    sealed: date
    emerges: date


@dataclass(frozen=True)
class SteadyBrood:
    """Cells of each stage in the nest of a queen who lays the same every day."""

    eggs: float
    open: float
    sealed: float

    @property
    def total(self) -> float:
        """All brood."""
        return self.eggs + self.open + self.sealed


def stage_dates(caste: Caste, laid: date) -> StageDates:
    """When an egg laid on this day hatches, is sealed and emerges.

    Source: BROOD_DAYS.
    """
    days = BROOD_DAYS[caste]
    return StageDates(
        laid + timedelta(days=days.egg),
        laid + timedelta(days=days.sealed_on),
        laid + timedelta(days=days.emerges_on),
    )


def steady_brood(eggs_per_day: float, *, losses: bool = False) -> SteadyBrood:
    """The worker brood of a queen laying steadily, with or without the usual losses.

    Losses are an even hazard within each stage. Units: cells.
    Source: BROOD_DAYS; STAGE_SURVIVAL.
    """
    days = BROOD_DAYS[Caste.WORKER]
    if not losses:
        return SteadyBrood(eggs_per_day * days.egg, eggs_per_day * days.open, eggs_per_day * days.sealed)
    entering = eggs_per_day
    counts = []
    for length, survival in zip((days.egg, days.open, days.sealed), STAGE_SURVIVAL, strict=True):
        counts.append(entering * length * (survival - 1) / math.log(survival))
        entering *= survival
    return SteadyBrood(*counts)


def laying_from_sealed(sealed_cells: float) -> float:
    """Eggs a day that would keep so many sealed cells, losses left out.

    Units: cells, eggs a day. Source: sealed ÷ 12, Illinois Queen Initiative.
    """
    return sealed_cells / BROOD_DAYS[Caste.WORKER].sealed


def laying_from_brood(brood_cells: float) -> float:
    """Eggs a day that would keep so many cells of brood of all stages, losses left out.

    Units: cells, eggs a day. Source: 2 000 a day make 42 000 cells, Dorchester & Weymouth BKA.
    """
    return brood_cells / BROOD_DAYS[Caste.WORKER].emerges_on


def last_egg_days(
    *, eggs: bool | None, young: bool | None, sealed: bool | None
) -> tuple[int, int | None] | None:
    """How many days ago the last egg was laid, at least and at most, from what worker brood was seen.

    None in: not recorded. None out: it cannot be said. The most is None where there is no limit.
    Source: stage lengths; "no unsealed larvae: nine or more days", Trunch Beekeeping queen-cell guide.
    """
    days = BROOD_DAYS[Caste.WORKER]
    if eggs:
        return 0, days.egg
    if eggs is None:
        return None
    if young:
        return days.egg, days.sealed_on
    if young is None:
        return days.egg, None
    if sealed:
        return days.sealed_on, days.emerges_on
    return (days.sealed_on, None) if sealed is None else (days.emerges_on, None)


def queen_cell_days(kind: CellKind) -> tuple[int, int] | None:
    """In how many days a queen cell just found may be sealed, soonest and latest; None for one that will not.

    Source: BROOD_DAYS of a queen: an egg is 0 to 3 days old, a larva 3 to 8.
    """
    days = BROOD_DAYS[Caste.QUEEN]
    if kind is CellKind.WITH_EGG:
        return days.open, days.sealed_on
    if kind is CellKind.CHARGED:
        return 0, days.open
    return None


def emergence_days(sealed_for: int) -> int:
    """In about how many days a virgin emerges from a cell sealed so many days ago; never below nought.

    Source: BROOD_DAYS of a queen, 8 less the days sealed (common practice).
    """
    return max(0, BROOD_DAYS[Caste.QUEEN].sealed - sealed_for)


def clipped_limit_days() -> int:
    """The longest time between looks by arithmetic, if the queen is clipped.

    A cell begun after the look is sealed 8 days from its egg, and a clipped queen's swarm waits for the
    virgin 8 days more; a larva 3 days from the egg may have been overlooked.
    Source: I. Davis, Bee Craft, November 2009: 13 days, 10 advised.
    """
    days = BROOD_DAYS[Caste.QUEEN]
    return days.sealed_on - days.egg + days.sealed
