"""Drawing on a comb: painted, copied, cleared, and how far bees cover it."""

from dataclasses import dataclass, replace

import numpy as np

from beeworkbook.colony.records import FrameId, Level, Mark, Side, SideId, Visit, VisitId
from beeworkbook.comb.contents import Content, Face, Origin
from beeworkbook.comb.lattice import Cells
from beeworkbook.comb.names import content_name
from beeworkbook.comb.side import CellPatch, blank_cells
from beeworkbook.comb.typed import EIGHTHS
from beeworkbook.store.drawings import packed, unpacked
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.edits.looking import raise_level
from beeworkbook.workbook.edits.sides import (
    cells_in,
    copied,
    place_of_side,
    put_side,
    side_name,
    side_or_blank,
)
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import frame_type_of, side_of, the
from beeworkbook.workbook.place import Done, SingleEdit


@dataclass(frozen=True)
class PaintCells(SingleEdit):
    """A finished stroke. The first one makes the side; painting on a laid-out side makes it painted.

    On a side that was only assumed the rest goes back to not recorded: nobody saw it.
    """

    visit_id: VisitId
    frame_id: FrameId
    face: Face
    patch: CellPatch
    content: Content | None = None
    label: str = ""

    def apply(self, tx: Transaction) -> Done:
        """Gives the SideId.

        Errors: GoneError; PatchMismatchError if the cells are not what they were when it was drawn.
        """
        visit = the(tx, Visit, self.visit_id)
        side = side_or_blank(tx, visit, self.frame_id, self.face)
        cells = self.patch.apply(unpacked(side.cells, cells=cells_in(tx, side)))
        place, label = place_of_side(visit, side), self.label or self._named(side)
        if side.id and self.patch.is_empty:
            return Done(side.id, label, place)
        assumed = side.origin is Origin.ASSUMED
        kept = self._keep(tx, side, self._seen(cells) if assumed else cells)
        raise_level(tx, visit, Level.PAINTED)
        return Done(kept.id, label, place, {} if assumed else {kept.id: self.patch.indices})

    def _seen(self, cells: Cells) -> Cells:
        """Of a side that was only assumed nothing was seen but what is painted now."""
        seen = np.full_like(cells, Content.NOT_RECORDED)
        seen[self.patch.indices] = self.patch.after
        return seen

    @staticmethod
    def _keep(tx: Transaction, side: Side, cells: Cells) -> Side:
        painted = replace(
            side,
            origin=Origin.PAINTED,
            grain=Origin.PAINTED,
            cells=packed(cells),
            typed="",
            copied_from=None,
        )
        if not side.id:
            return tx.add(painted)
        tx.put(painted)
        return painted

    def _named(self, side: Side) -> str:
        if self.content is None:
            return say("paint on {side}", side=side_name(side))
        if self.content is Content.NOT_RECORDED:
            return say("erase on {side}", side=side_name(side))
        return say("paint {content} on {side}", content=content_name(self.content), side=side_name(side))


@dataclass(frozen=True)
class SetCovered(SingleEdit):
    """How far bees cover a side. Units: eighths; None is not looked at."""

    visit_id: VisitId
    frame_id: FrameId
    face: Face
    covered: float | None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if it is not between none and eight eighths."""
        if self.covered is not None and not 0 <= self.covered <= EIGHTHS:
            raise RefusedError(say("Bees cover between none and eight eighths of a side."))
        visit = the(tx, Visit, self.visit_id)
        side = side_or_blank(tx, visit, self.frame_id, self.face)
        if side.id or self.covered is not None:
            put_side(tx, replace(_looked_at(tx, side), covered=self.covered))
            raise_level(tx, visit, Level.BY_SIDE)
        return Done(None, say("note the bees on {side}", side=side_name(side)), place_of_side(visit, side))


def _looked_at(tx: Transaction, side: Side) -> Side:
    """The side as somebody saw it: of one that was only assumed, nothing yet."""
    if side.origin is not Origin.ASSUMED:
        return side
    blank = packed(blank_cells(frame_type_of(tx, side.frame_type).lattice))
    seen = replace(side, origin=Origin.EIGHTHS, grain=Origin.EIGHTHS, cells=blank)
    return replace(seen, typed="", copied_from=None)


@dataclass(frozen=True)
class CopySide(SingleEdit):
    """A side shows what it showed at another visit: looked at and unchanged, so as coarse as that was."""

    visit_id: VisitId
    frame_id: FrameId
    face: Face
    from_side_id: SideId

    def apply(self, tx: Transaction) -> Done:
        """Gives the SideId. Errors: GoneError; RefusedError if it is of another frame type."""
        visit = the(tx, Visit, self.visit_id)
        source = the(tx, Side, self.from_side_id)
        side = side_or_blank(tx, visit, self.frame_id, self.face)
        if source.id == side.id:
            raise RefusedError(say("This is the side itself: choose one of another visit."))
        kept = put_side(tx, copied(tx, side, source, Origin.UNCHANGED))
        raise_level(tx, visit, Level.BY_SIDE)
        label = say("copy the last look of {side}", side=side_name(side))
        return Done(kept.id, label, place_of_side(visit, side))


@dataclass(frozen=True)
class ClearSide(SingleEdit):
    """A side as if it had not been looked at; the marks on its cells go with it."""

    visit_id: VisitId
    frame_id: FrameId
    face: Face

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if nothing was noted of it."""
        visit = the(tx, Visit, self.visit_id)
        side = side_of(tx, self.visit_id, self.frame_id, self.face)
        if side is None:
            raise RefusedError(say("Nothing was noted of this side, so there is nothing to clear."))
        for mark in tx.find(Mark, visit_id=self.visit_id, frame_id=self.frame_id, face=self.face):
            if mark.cell is not None:
                tx.remove(Mark, mark.id)
        tx.remove(Side, side.id)
        return Done(None, say("clear {side}", side=side_name(side)), place_of_side(visit, side))
