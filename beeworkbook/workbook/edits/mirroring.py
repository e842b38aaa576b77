"""A side that was drawn left for right, put right in one step with the marks on its cells."""

from dataclasses import dataclass, replace

from beeworkbook.colony.records import FrameId, Mark, Visit, VisitId
from beeworkbook.comb.codec import pack, unpack
from beeworkbook.comb.contents import Face
from beeworkbook.comb.regions import mirror
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.edits.sides import place_of_side, side_name
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import frame_type_of, side_of, the
from beeworkbook.workbook.place import Done, SingleEdit


@dataclass(frozen=True)
class MirrorSide(SingleEdit):
    """A side shows what it showed seen in a mirror; how it came to be, and how much of it, stays."""

    visit_id: VisitId
    frame_id: FrameId
    face: Face

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if nothing was noted of the side."""
        visit = the(tx, Visit, self.visit_id)
        side = side_of(tx, self.visit_id, self.frame_id, self.face)
        if side is None:
            raise RefusedError(say("Nothing was noted of this side, so there is nothing to mirror."))
        lattice = frame_type_of(tx, side.frame_type).lattice
        cells = pack(mirror(lattice, unpack(side.cells, cells=lattice.cells)))
        if cells != side.cells:
            tx.put(replace(side, cells=cells))
        for mark in tx.find(Mark, visit_id=self.visit_id, frame_id=self.frame_id, face=self.face):
            if mark.cell is not None:
                tx.put(replace(mark, cell=int(lattice.mirrored[mark.cell])))
        return Done(None, say("mirror {side}", side=side_name(side)), place_of_side(visit, side))
