"""What to draw of one side of a comb, and where: handed to all that draw a part of it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from beeworkbook.colony.records import MarkId, Way
from beeworkbook.colony.sheet_models import SheetComb, SheetSide
from beeworkbook.comb.contents import Origin
from beeworkbook.papers.comb_forms import SidePlan
from beeworkbook.papers.comb_picture import Drawn

_SEEN: Final = frozenset({Origin.PAINTED, Origin.EIGHTHS, Origin.UNCHANGED})


@dataclass(frozen=True)
class SideTask:
    """What to draw where: the side of a comb, its place on the page, and the name of its fields.

    `drawn` has the outlines of the sides of a filled sheet.
    """

    comb: SheetComb
    plan: SidePlan
    way: Way
    filled: bool
    name: str
    note_numbers: Mapping[MarkId, int]
    drawn: Drawn = field(default_factory=dict)

    @property
    def side(self) -> SheetSide:
        """The side of the comb this is about."""
        return self.comb.side(self.plan.face)

    @property
    def seen(self) -> bool:
        """Whether it was looked at that day; what is assumed was not."""
        return self.filled and self.side.cells is not None and self.side.origin in _SEEN
