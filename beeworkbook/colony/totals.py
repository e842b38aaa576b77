"""What a visit's stored totals hand out, no drawing decoded: by side, and by visit with its answers.

Plain values; colony/figures.py turns them into brood, stores and bees.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from beeworkbook.colony.records import Answer, FrameId, PartId, PartKind, Question, SideId, Visit, VisitId
from beeworkbook.comb.contents import CONTENTS, Face, Origin

NOTHING: tuple[float, ...] = (0.0,) * len(CONTENTS)
"""The totals of a side that was not counted."""


@dataclass(frozen=True, slots=True)
class SideTotals:
    """The stored totals of one side. An assumed side is here with nothing counted.

    Shapes: cells and area_dm2 are 12 long, by the code of the content; 0 for a gap and for what is
    not recorded. Units: cells and dm² of one side; side_dm2 is the whole side, 0 if assumed;
    unrecorded_dm2 is what nobody said anything of; covered in eighths.
    """

    side_id: SideId
    visit_id: VisitId
    frame_id: FrameId
    part_id: PartId
    part_kind: PartKind
    place: int
    face: Face
    frame_type: str
    origin: Origin
    grain: Origin
    covered: float | None
    cells: tuple[float, ...]
    area_dm2: tuple[float, ...]
    side_dm2: float
    unrecorded_dm2: float = 0.0

    @property
    def counted(self) -> bool:
        """Whether somebody looked at this side: an assumed one is never counted anywhere."""
        return self.origin is not Origin.ASSUMED


@dataclass(frozen=True, slots=True)
class VisitTotals:
    """A visit, its answers, the totals of its sides, and how many combs hung in the hive that day.

    combs_in_hive counts frames in boxes, dummies apart; 0 when the colony had no hive that day.
    brood_combs_in_hive counts those in brood and nucleus boxes only: a super nobody drew leaves no brood
    unseen. 0 is not known.
    """

    visit: Visit
    answers: Mapping[Question, Answer]
    sides: tuple[SideTotals, ...]
    combs_in_hive: int
    brood_combs_in_hive: int = 0

    @property
    def counted_sides(self) -> tuple[SideTotals, ...]:
        """The sides somebody looked at."""
        return tuple(side for side in self.sides if side.counted)
