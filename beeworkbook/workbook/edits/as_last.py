"""A side that was looked at and is as it was last time."""

from dataclasses import dataclass

from beeworkbook.colony.records import FrameId, Level, Visit, VisitId
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.edits.looking import raise_level
from beeworkbook.workbook.edits.sides import (
    copied,
    last_side,
    place_of_side,
    put_side,
    side_name,
    side_or_blank,
)
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import the
from beeworkbook.workbook.place import Done, SingleEdit


@dataclass(frozen=True)
class AsLastTime(SingleEdit):
    """A side shows what it showed at the look before, and is as coarse as that was."""

    visit_id: VisitId
    frame_id: FrameId
    face: Face

    def apply(self, tx: Transaction) -> Done:
        """Gives the SideId. Errors: GoneError; RefusedError if it was not looked at before."""
        visit = the(tx, Visit, self.visit_id)
        source = last_side(tx, visit, self.frame_id, self.face, seen=True)
        if source is None:
            raise RefusedError(say("This side was not looked at before."))
        side = side_or_blank(tx, visit, self.frame_id, self.face)
        kept = put_side(tx, copied(tx, side, source, Origin.UNCHANGED))
        raise_level(tx, visit, Level.BY_SIDE)
        label = say("copy the last look of {side}", side=side_name(side))
        return Done(kept.id, label, place_of_side(visit, side))
