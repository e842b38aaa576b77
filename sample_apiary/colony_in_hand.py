"""One colony of the sample while it is being kept: its records' ids, its bees, and what the keeper knows."""

from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Any

from beeworkbook.colony.records import ColonyId, FeedId, FrameId, HiveId, PartId, QueenId
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from sample_apiary.nest import Nest, spread
from sample_apiary.parameters import Steps
from sample_apiary.season import DRONE_DAYS, Bees, Year


@dataclass
class InHand:
    """A colony being kept."""

    key: str
    told: dict[str, Any]
    bees: Bees
    frame: FrameType
    colony_id: ColonyId
    hive_id: HiveId
    box_id: PartId
    supers: list[PartId] = field(default_factory=list)
    excluder: PartId | None = None
    clearer: PartId | None = None
    feeder: PartId | None = None
    feed_id: FeedId | None = None
    super_dm2: float = 0.0
    queen_id: QueenId | None = None
    clipped: bool | None = None
    virgin_since: date | None = None
    looked_on: date | None = None
    combs_on: date | None = None
    seen: dict[FrameId, str] = field(default_factory=dict)
    gone: bool = False

    def nest(self, places: list[int], nectar: float) -> Nest:
        """How it lies on its combs today."""
        return spread(self.bees, self.frame, places, float(self.told.get("lean", 0.0)), nectar=nectar)


def first_bees(told: dict[str, Any], year: Year) -> Bees:
    """The bees as they came."""
    frame = FRAME_TYPES[told["frame"]]
    came = date.fromisoformat(told["came_on"])
    bees = Bees(
        most_eggs=float(told["most_eggs"]),
        bees=float(told["bees"]),
        stores_kg=float(told["stores_kg"]),
        drawn=float(told["drawn"]),
        side_dm2=frame.area_dm2,
        places=int(told["places"]),
        lays=Steps([(step[0], step[1]) for step in told.get("lays", [])], 1.0),
    )
    days = [came - timedelta(days=DRONE_DAYS - number) for number in range(DRONE_DAYS)]
    bees.prime(year, days, float(told.get("prime", 0.0)))
    return bees
