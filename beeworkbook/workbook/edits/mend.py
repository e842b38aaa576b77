"""The wrong page, mended in one step: sides swapped, a drawing or a whole visit moved, a visit removed."""

from dataclasses import dataclass, replace
from datetime import date

from beeworkbook.colony.hive import holds_on
from beeworkbook.colony.records import (
    Apiary,
    Colony,
    ColonyId,
    Due,
    Event,
    Feed,
    Frame,
    FrameId,
    Housing,
    Level,
    Mark,
    Part,
    PartId,
    Round,
    RoundId,
    Side,
    Stand,
    Visit,
    VisitId,
)
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.exchanging import move_combs, swap_faces
from beeworkbook.workbook.edits.looking import raise_level
from beeworkbook.workbook.edits.moving import bring, combs_of, reopen_dues
from beeworkbook.workbook.edits.sides import other_frames
from beeworkbook.workbook.edits.visit import begin_visit, visit_place
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import boxes_of, comb_name, frame_in, place_of_comb, the
from beeworkbook.workbook.place import Done, Place, SingleEdit


@dataclass(frozen=True)
class SwapSides(SingleEdit):
    """What was noted of side A of a comb is noted of B, and the other way about."""

    visit_id: VisitId
    frame_id: FrameId

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if nothing was noted of the comb."""
        visit = the(tx, Visit, self.visit_id)
        _needs_notes(tx, visit, self.frame_id)
        swap_faces(tx, visit.id, self.frame_id)
        name = comb_name(tx, self.frame_id, visit.day)
        place = replace(visit_place(visit), frame_id=self.frame_id)
        return Done(None, say("swap the sides of comb {comb}", comb=name), place)


@dataclass(frozen=True)
class MirrorDrawings(SingleEdit):
    """A visit's box was noted from the other end: each drawing goes to the comb as far from that end.

    The combs hang as they did; only what was noted of them moves, A becoming B.
    """

    visit_id: VisitId
    part_id: PartId

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if combs differ in type or a place opposite is free."""
        visit, part = the(tx, Visit, self.visit_id), the(tx, Part, self.part_id)
        noted = {frame_id for frame_id, part_id in combs_of(tx, visit) if part_id == part.id}
        done: set[FrameId] = set()
        for frame_id in sorted(noted):
            if frame_id not in done:
                done |= self._mirror(tx, visit, part, frame_id)
        label = say("note the box from the other end")
        return Done(None, label, replace(visit_place(visit), part_id=part.id))

    def _mirror(self, tx: Transaction, visit: Visit, part: Part, frame_id: FrameId) -> set[FrameId]:
        _, place = place_of_comb(tx, visit, frame_id)
        opposite = frame_in(tx, part.id, part.places + 1 - place, visit.day)
        if opposite is None:
            raise RefusedError(say("No comb hangs opposite comb {place}.", place=place))
        other = opposite.frame_id
        if other != frame_id:
            _needs_same_frame(tx, frame_id, other)
            move_combs(tx, visit.id, frame_id, visit.id, other, to_part=part.id, to_place=opposite.place)
            swap_faces(tx, visit.id, other)
        swap_faces(tx, visit.id, frame_id)
        return {frame_id, other}


@dataclass(frozen=True)
class MoveDrawing(SingleEdit):
    """All that was noted of a comb belongs to another comb, colony or day.

    Without a visit, colony or day it stays with its own. What was noted of the other comb comes
    back in exchange.
    """

    from_visit_id: VisitId
    from_frame_id: FrameId
    to_frame_id: FrameId
    to_visit_id: VisitId | None = None
    to_colony_id: ColonyId | None = None
    to_day: date | None = None

    def apply(self, tx: Transaction) -> Done:
        """Gives the VisitId it is in now.

        Errors: GoneError; RefusedError if there is nothing to move, the comb did not hang there that
        day, or the frames are of different types.
        """
        visit = the(tx, Visit, self.from_visit_id)
        target = self._target(tx, visit)
        _needs_notes(tx, visit, self.from_frame_id)
        _needs_same_frame(tx, self.from_frame_id, self.to_frame_id)
        if (target.id, self.to_frame_id) == (visit.id, self.from_frame_id):
            raise RefusedError(say("This drawing is there already."))
        part_id, place = place_of_comb(tx, target, self.to_frame_id)
        _needs_home(tx, target, part_id)
        name = comb_name(tx, self.from_frame_id, visit.day)
        move_combs(
            tx,
            visit.id,
            self.from_frame_id,
            target.id,
            self.to_frame_id,
            to_part=part_id,
            to_place=place,
        )
        raise_level(tx, target, Level.PAINTED if visit.level is Level.PAINTED else Level.BY_COMB)
        label = say("move the drawing of comb {comb} to comb {place}", comb=name, place=place)
        where = Place(target.colony_id, target.id, part_id, self.to_frame_id)
        return Done(target.id, label, where)

    def _target(self, tx: Transaction, visit: Visit) -> Visit:
        if self.to_visit_id is not None:
            return the(tx, Visit, self.to_visit_id)
        colony_id = self.to_colony_id or visit.colony_id
        the(tx, Colony, colony_id)
        day = self.to_day or visit.day
        if (colony_id, day) == (visit.colony_id, visit.day):
            return visit
        return begin_visit(tx, colony_id, day, level=Level.BY_COMB, who=visit.who)


@dataclass(frozen=True)
class MoveVisit(SingleEdit):
    """A whole visit belongs to another colony or day, with its combs, answers, feed and events.

    In another colony's hive the drawings go to the combs in the same places. A visit that is there
    is added to, if the two say nothing of the same thing.
    """

    visit_id: VisitId
    colony_id: ColonyId
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Gives the VisitId it is now.

        Errors: GoneError; RefusedError if both visits speak of the same, or a comb has no counterpart.
        """
        visit, colony = the(tx, Visit, self.visit_id), the(tx, Colony, self.colony_id)
        if (visit.colony_id, visit.day) == (colony.id, self.day):
            raise RefusedError(say("This visit is there already."))
        if visit.next_day is not None and visit.next_day <= self.day:
            raise RefusedError(say("The next look noted in this visit would be before it: change it first."))
        reopen_dues(tx, visit)
        moved = bring(tx, visit, colony.id, self.day, self._round_of(tx))
        label = say("move the visit to {colony} on {day}", colony=colony.name, day=date_words(self.day))
        return Done(moved.id, label, visit_place(moved))

    def _round_of(self, tx: Transaction) -> RoundId | None:
        """The round of that day where the colony stands, if there was one."""
        for home in tx.find(Housing, colony_id=self.colony_id):
            if holds_on(home, self.day):
                apiary_id = the(tx, Apiary, the(tx, Stand, home.stand_id).apiary_id).id
                rounds = tx.find(Round, apiary_id=apiary_id, day=self.day)
                return rounds[0].id if rounds else None
        return None


@dataclass(frozen=True)
class RemoveVisit(SingleEdit):
    """A visit goes with all that was noted in it: combs, answers, marks, events, feed and what was due."""

    visit_id: VisitId

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        visit = the(tx, Visit, self.visit_id)
        reopen_dues(tx, visit)
        for cls in (Event, Feed, Due):
            for record in tx.find(cls, visit_id=visit.id):
                tx.remove(cls, record.id)
        tx.remove(Visit, visit.id)
        label = say("remove the visit of {day}", day=date_words(visit.day, "day_year"))
        return Done(None, label, visit_place(visit))


def _needs_notes(tx: Transaction, visit: Visit, frame_id: FrameId) -> None:
    where = {"visit_id": visit.id, "frame_id": frame_id}
    if not tx.find(Side, **where) and not tx.find(Mark, **where):
        raise RefusedError(say("Nothing was noted of this comb that day."))


def _needs_same_frame(tx: Transaction, one: FrameId, other: FrameId) -> None:
    first, second = the(tx, Frame, one), the(tx, Frame, other)
    if first.frame_type != second.frame_type:
        raise RefusedError(other_frames(tx, first.frame_type, second.frame_type))


def _needs_home(tx: Transaction, visit: Visit, part_id: PartId) -> None:
    """The box stood in the hive of the visit's colony that day."""
    if part_id not in {part.id for part in boxes_of(tx, visit.colony_id, visit.day)}:
        raise RefusedError(say("That comb did not hang in the hive of this colony on that day."))
