"""Marks: the queen seen, a queen cell, a note; on a cell, or on a side, comb or visit without a place."""

from dataclasses import dataclass, replace
from datetime import date

from beeworkbook.colony.records import Frame, FrameId, Mark, MarkId, Visit, VisitId
from beeworkbook.comb.contents import CellFate, CellKind, Face, MarkKind
from beeworkbook.comb.names import cell_kind_name
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import comb_name, frame_type_of, held, the
from beeworkbook.workbook.place import Done, Place, SingleEdit


def mark_words(mark: Mark) -> str:
    """What a mark says: "the queen", "a charged queen cell", "a note"."""
    if mark.kind is MarkKind.QUEEN:
        return say("the queen")
    if mark.kind is MarkKind.NOTE:
        return say("a note")
    return say("a {cell}", cell=cell_kind_name(mark.cell_kind)) if mark.cell_kind else say("a queen cell")


@dataclass(frozen=True)
class AddMark(SingleEdit):
    """Something seen. Without a cell, a face or a comb it belongs to the side, the comb or the visit."""

    visit_id: VisitId
    kind: MarkKind
    frame_id: FrameId | None = None
    face: Face | None = None
    cell: int | None = None
    cell_kind: CellKind | None = None
    fate: CellFate | None = None
    text: str = ""

    def apply(self, tx: Transaction) -> Done:
        """Gives the MarkId. Errors: GoneError; RefusedError if there is no such place."""
        visit = the(tx, Visit, self.visit_id)
        mark = Mark(
            MarkId(0),
            self.visit_id,
            self.kind,
            self.frame_id,
            self.face,
            self.cell,
            self.cell_kind,
            self.fate,
            self.text,
        )
        check_mark(tx, mark)
        made = tx.add(mark)
        return Done(
            made.id, _label(tx, say("mark {what}", what=mark_words(mark)), mark, visit.day), _at(visit, mark)
        )


@dataclass(frozen=True)
class MoveMark(SingleEdit):
    """A mark belongs to another cell, side or comb; without a cell it has no place on the side."""

    mark_id: MarkId
    frame_id: FrameId | None
    face: Face | None
    cell: int | None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if there is no such place."""
        before = the(tx, Mark, self.mark_id)
        visit = the(tx, Visit, before.visit_id)
        mark = replace(before, frame_id=self.frame_id, face=self.face, cell=self.cell)
        check_mark(tx, mark)
        if mark != before:
            tx.put(mark)
        return Done(
            None, _label(tx, say("move {what}", what=mark_words(mark)), mark, visit.day), _at(visit, mark)
        )


@dataclass(frozen=True)
class ChangeMark:
    """What a mark says, as it is now to be; `field` is the one being typed."""

    mark: Mark
    field: str = ""

    @property
    def merge_key(self) -> str | None:
        """One field of one mark."""
        return f"mark:{self.mark.id}:{self.field}" if self.field else None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if there is no such place."""
        before = the(tx, Mark, self.mark.id)
        visit = the(tx, Visit, self.mark.visit_id)
        check_mark(tx, self.mark)
        if before != self.mark:
            tx.put(self.mark)
        label = _label(tx, say("change {what}", what=mark_words(self.mark)), self.mark, visit.day)
        return Done(None, label, _at(visit, self.mark))


@dataclass(frozen=True)
class RemoveMark(SingleEdit):
    """A mark goes."""

    mark_id: MarkId

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        mark = the(tx, Mark, self.mark_id)
        visit = held(tx, Visit, mark.visit_id)
        tx.remove(Mark, mark.id)
        label = say("take {what} away", what=mark_words(mark))
        return Done(None, label, _at(visit, mark) if visit else Place())


def check_mark(tx: Transaction, mark: Mark) -> None:
    """Errors: RefusedError if the mark has a place that is not there; GoneError without its comb."""
    if mark.frame_id is None:
        if mark.face is not None or mark.cell is not None:
            raise RefusedError(say("A mark on a side or a cell needs its comb."))
        return
    frame = the(tx, Frame, mark.frame_id)
    if mark.cell is None:
        return
    if mark.face is None or not 0 <= mark.cell < frame_type_of(tx, frame.frame_type).lattice.cells:
        raise RefusedError(say("There is no such cell on this comb."))


def _label(tx: Transaction, what: str, mark: Mark, day: date) -> str:
    if mark.frame_id is None:
        return what
    return say("{what} on {comb}", what=what, comb=comb_name(tx, mark.frame_id, day, mark.face))


def _at(visit: Visit, mark: Mark) -> Place:
    return Place(visit.colony_id, visit.id, frame_id=mark.frame_id, face=mark.face)
