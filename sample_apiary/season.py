"""A colony day by day, as a sum of cohorts: plain enough to read, sound enough to draw plausible combs.

Only for the sample: nothing in the program foretells anything with it. Constants that are bees' own
carry their source; how good a place and a queen are is invented and stands in parameters.json.
"""

from dataclasses import dataclass, field
from datetime import date
from typing import Any, Final

from sample_apiary.parameters import Curve, Steps

EGG_DAYS: Final = 3
OPEN_DAYS: Final = 6
WORKER_DAYS: Final = 21
"""3 : 6 : 12. Source: A. Wade, ACT Beekeepers Buzz Box, September 2022, rule 1."""
DRONE_DAYS: Final = 24
"""Source: FAO x0083e, chapter 3."""
SURVIVAL: Final = 0.851
"""Of eggs to bees. Source: Fukuda & Sakagami 1968."""
ADULT_KG: Final = 0.000007
"""Stores an adult uses in a day. Source: Khoury, Barron & Myerscough 2013, 0.007 g."""
CELL_KG: Final = 0.000018
"""Stores an open brood cell uses in a day. Source: Khoury, Barron & Myerscough 2013, 0.018 g."""
WINTER_BEE_KG: Final = 0.0000045
"""Stores a bee uses in a day without brood. Source: Harbo, J. Apic. Res., 4.5 mg at 8 900 bees."""
NURSES: Final = 9000.0
"""Bees at which half of what the queen could lay is reared: the form is Khoury and others 2011, which has
27 000; the number is our own."""
STAY: Final = 0.25
"""What stays of the workers when a prime swarm goes. Source: Rangel & Seeley 2012, 0.75 leave."""
_BUSY_BROOD: Final = 8000.0
"""Brood at which bees use as much as in summer; our own."""
AT_HOME: Final = 0.72
"""Of the bees, those not out foraging when a keeper looks on a fine afternoon; our own."""
IN_A_SUPER: Final = 0.16
"""Of the bees, those in each super; our own."""
BROOD_SHARE: Final = 0.62
"""Most of the drawn comb that holds brood. Source: common practice, no source."""
CELLS_PER_DM2: Final = 400.0
"""Source: 400 worker cells per dm², imker.felser.ch."""
KG_PER_SIDE_DM2: Final = 0.125
"""Stores on one side. Source: bees-online.at 2020, 125 g per eighth of a Zander side, which is one dm²."""
FULL_KG_PER_SIDE_DM2: Final = 0.165
"""Stores on one side of a super comb. Source: A. Clément, L'apiculture moderne, 330 g per dm² of comb."""


class Year:
    """The curves of a place: laying, life, flow, pollen and drones by the day of the year."""

    def __init__(self, curves: dict[str, Any]) -> None:
        self.laying = Curve(curves["laying_share"])
        self.life_days = Curve(curves["life_days"])
        self.flow_kg = Curve(curves["flow_kg_per_10000_bees"])
        self.pollen = Curve(curves["pollen_share"])
        self.drones = Curve(curves["drone_share"])


@dataclass
class Bees:
    """One colony as it is today. `worker` and `drone` hold a cohort a day, the youngest first."""

    most_eggs: float
    bees: float
    stores_kg: float
    drawn: float
    side_dm2: float
    places: int
    lays: Steps
    worker: list[float] = field(default_factory=lambda: [0.0] * WORKER_DAYS)
    drone: list[float] = field(default_factory=lambda: [0.0] * DRONE_DAYS)
    super_kg: list[float] = field(default_factory=list)
    super_dm2: float = 0.0
    fed_kg: float = 0.0
    trend: float = 0.0

    @property
    def eggs(self) -> float:
        """Cells with eggs."""
        return sum(self.worker[:EGG_DAYS])

    @property
    def open(self) -> float:
        """Cells of open brood."""
        return sum(self.worker[EGG_DAYS : EGG_DAYS + OPEN_DAYS])

    @property
    def sealed(self) -> float:
        """Cells of sealed brood."""
        return sum(self.worker[EGG_DAYS + OPEN_DAYS :])

    @property
    def brood(self) -> float:
        """Cells of worker brood."""
        return sum(self.worker)

    @property
    def drones(self) -> float:
        """Cells of drone brood."""
        return sum(self.drone)

    @property
    def in_the_box(self) -> float:
        """Bees on the brood combs while a keeper looks."""
        return self.bees * AT_HOME * max(0.5, 1 - IN_A_SUPER * len(self.super_kg))

    def prime(self, year: Year, days: list[date], share: float) -> None:
        """Brood from the days before the colony is first seen, a share of what it could have laid."""
        for day in days:
            laid = self.most_eggs * year.laying.on(day) * share
            self.worker = [laid, *self.worker[:-1]]

    def live(self, day: date, year: Year) -> None:
        """One day goes by."""
        laid = self._laid(day, year)
        drones = laid * year.drones.on(day)
        self.trend = laid - self.brood / WORKER_DAYS
        hatched = self.worker[-1] * SURVIVAL
        self.worker = [laid - drones, *self.worker[:-1]]
        self.drone = [drones, *self.drone[:-1]]
        life = year.life_days.on(day)
        self.bees = max(0.0, self.bees + hatched - self.bees / life)
        self._eat(day, year)
        self._build(day, year)

    def _laid(self, day: date, year: Year) -> float:
        could = self.most_eggs * year.laying.on(day) * self.lays.on(day)
        reared = could * self.bees / (NURSES + self.bees)
        room = max(0.0, self.drawn * 2 * self.side_dm2 * CELLS_PER_DM2 * BROOD_SHARE - self.brood)
        return min(reared, room)

    def _eat(self, day: date, year: Year) -> None:
        busy = min(1.0, self.brood / _BUSY_BROOD)
        each = WINTER_BEE_KG + (ADULT_KG - WINTER_BEE_KG) * busy
        change = year.flow_kg.on(day) * self.bees / 10_000 - self.bees * each - self.open * CELL_KG
        change += min(self.fed_kg, 0.6)
        self.fed_kg = max(0.0, self.fed_kg - 0.6)
        room = self.room_kg()
        kept = min(change, room)
        self.stores_kg = max(0.0, self.stores_kg + kept)
        over = change - kept
        for number, held in enumerate(self.super_kg):
            taken = min(over, self.super_dm2 * FULL_KG_PER_SIDE_DM2 - held)
            self.super_kg[number] = held + max(0.0, taken)
            over -= max(0.0, taken)

    def room_kg(self) -> float:
        """What stores the brood box still takes."""
        drawn_dm2 = self.drawn * 2 * self.side_dm2
        free = drawn_dm2 * 0.9 - (self.brood + self.drones) / CELLS_PER_DM2
        return max(0.0, free * KG_PER_SIDE_DM2 - self.stores_kg)

    def _build(self, day: date, year: Year) -> None:
        """Foundation is drawn where bees are crowded and food comes in."""
        coming = year.flow_kg.on(day) > 0.1 or self.fed_kg > 0
        if coming and self.drawn < self.places and self.bees > 1100 * self.drawn * self.side_dm2 / 6.42:
            self.drawn = min(float(self.places), self.drawn + min(0.3, self.bees / 45_000))
