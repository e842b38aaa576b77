"""What the keeper asked the chart to show. Values only; how it is drawn is elsewhere."""

from dataclasses import dataclass
from enum import StrEnum

from beeworkbook.colony.figures import Amount
from beeworkbook.colony.records import ColonyId
from beeworkbook.words import say


class Measure(StrEnum):
    """What brood is measured in."""

    AREA = "area"
    CELLS = "cells"

    @property
    def unit(self) -> str:
        """The unit in words."""
        return say("dm²") if self is Measure.AREA else say("cells")

    def of(self, amount: Amount) -> float:
        """An amount in this measure."""
        return amount.dm2 if self is Measure.AREA else amount.cells


class Arrangement(StrEnum):
    """How years are laid out along the axis."""

    SEASON = "season"
    ROW = "row"
    YEARS = "years"


@dataclass(frozen=True)
class Choice:
    """The colonies (the first is the one the keeper is at), the year, and what is shown of them."""

    colony_ids: tuple[ColonyId, ...]
    year: int
    measure: Measure = Measure.AREA
    arrangement: Arrangement = Arrangement.SEASON
    drones: bool = True
    last_year: bool = True
    stores: bool = False
    bees: bool = False
