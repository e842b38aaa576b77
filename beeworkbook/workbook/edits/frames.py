"""Frames: added, taken, moved, turned, set in order, and a box filled with new ones; each change dated."""

from dataclasses import dataclass, replace
from datetime import date

from beeworkbook.colony.hive import holds_on
from beeworkbook.colony.records import (
    Frame,
    FrameId,
    FrameMake,
    FrameStay,
    Housing,
    Part,
    PartId,
    PartStay,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.comb.codec import pack
from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.key_letters import ENGLISH_LETTERS
from beeworkbook.comb.side import blank_cells
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.hanging import (
    change_from,
    check_alone,
    check_place,
    end_on,
    hang,
    put_in,
)
from beeworkbook.workbook.edits.sides import put_side, side_or_blank
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import comb_name, frame_in, frame_type_of, stay_of_frame, the
from beeworkbook.workbook.place import Done, Place, SingleEdit


@dataclass(frozen=True)
class AddFrame(SingleEdit):
    """A new frame in a place of a box; without a type it is of the box's own."""

    part_id: PartId
    place: int
    day: date
    frame_type: str = ""
    make: FrameMake = FrameMake.FRAME
    name: str = ""
    drone_cells: bool = False

    def apply(self, tx: Transaction) -> Done:
        """Gives the FrameId. Errors: GoneError; RefusedError if there is no such place or it is taken."""
        part = the(tx, Part, self.part_id)
        frame_type = self.frame_type or part.frame_type
        frame = Frame(FrameId(0), frame_type, self.make, self.name, self.drone_cells, self.day)
        made = hang_new(tx, frame, part, self.place, self.day)
        text = (
            say("add a dummy board in place {place}", place=self.place)
            if self.make is FrameMake.DUMMY
            else say("add a frame in place {place}", place=self.place)
        )
        return Done(made.id, text, _place(tx, part.id, made.id, self.day))


def hang_new(
    tx: Transaction, frame: Frame, part: Part, place: int, day: date, *, turned: bool = False
) -> Frame:
    """Make a frame and hang it in a free place. Errors: RefusedError if it is not there or not free."""
    frame_type_of(tx, frame.frame_type)
    check_place(part, place)
    if frame_in(tx, part.id, place, day) is not None:
        raise RefusedError(say("Place {place} is taken by another frame.", place=place))
    made = tx.add(frame)
    check_alone(tx, hang(tx, made.id, part.id, place, day, turned=turned))
    return made


def fill_box(tx: Transaction, part: Part, day: date, *, holds: Content | None, visit: Visit | None) -> None:
    """New frames in the free places of a box; what they hold is noted in the visit, if there is one."""
    for place in range(1, part.places + 1):
        if frame_in(tx, part.id, place, day) is None:
            frame = hang_new(tx, Frame(FrameId(0), part.frame_type, since=day), part, place, day)
            if holds is not None and visit is not None:
                note_whole(tx, visit, frame.id, holds)


def note_whole(tx: Transaction, visit: Visit, frame_id: FrameId, content: Content) -> None:
    """Note in a visit that both sides of a new comb hold one thing throughout.

    That is no look into the hive, so it says nothing of how far the look went.
    """
    for face in Face:
        side = side_or_blank(tx, visit, frame_id, face)
        cells = blank_cells(frame_type_of(tx, side.frame_type).lattice, content)
        put_side(tx, replace(side, cells=pack(cells), typed=ENGLISH_LETTERS.contents[content]))


@dataclass(frozen=True)
class TakeFrame(SingleEdit):
    """A frame comes out of its hive."""

    frame_id: FrameId
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if it hung nowhere that day."""
        stay = _hanging(tx, self.frame_id, self.day)
        place = _place(tx, stay.part_id, self.frame_id, self.day)
        name = comb_name(tx, self.frame_id, self.day)
        end_on(tx, stay, self.day)
        label = say("take comb {comb} out on {day}", comb=name, day=date_words(self.day))
        return Done(None, label, place)


@dataclass(frozen=True)
class MoveFrame(SingleEdit):
    """A frame hangs in another place from a day on; a frame that is there changes places with it."""

    frame_id: FrameId
    part_id: PartId
    place: int
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if there is no such place or a later stay clashes."""
        the(tx, Frame, self.frame_id)
        name = comb_name(tx, self.frame_id, self.day)
        put_in(tx, self.frame_id, the(tx, Part, self.part_id), self.place, self.day)
        label = say("move comb {comb} to place {place}", comb=name, place=self.place)
        return Done(None, label, _place(tx, self.part_id, self.frame_id, self.day))


@dataclass(frozen=True)
class OrderFrames(SingleEdit):
    """The frames of a box from place 1 on, None for a free place; those not named come out."""

    part_id: PartId
    frame_ids: tuple[FrameId | None, ...]
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if a frame is named twice, or there are too many."""
        part = the(tx, Part, self.part_id)
        named = [frame_id for frame_id in self.frame_ids if frame_id is not None]
        if len(set(named)) < len(named):
            raise RefusedError(say("A frame hangs in one place only."))
        present = [stay for stay in tx.find(FrameStay, part_id=part.id) if holds_on(stay, self.day)]
        touched: list[FrameStay] = []
        for place, frame_id in enumerate(self.frame_ids, start=1):
            if frame_id is not None:
                the(tx, Frame, frame_id)
                check_place(part, place)
                touched.append(self._put(tx, frame_id, place))
        for stay in present:
            if stay.frame_id not in named:
                end_on(tx, stay, self.day)
        for stay in touched:
            check_alone(tx, stay)
        return Done(None, say("set the order of the combs"), _place(tx, part.id, None, self.day))

    def _put(self, tx: Transaction, frame_id: FrameId, place: int) -> FrameStay:
        stay = stay_of_frame(tx, frame_id, self.day)
        if stay is None:
            return hang(tx, frame_id, self.part_id, place, self.day)
        return change_from(tx, stay, self.day, part_id=self.part_id, place=place)


@dataclass(frozen=True)
class TurnFrame(SingleEdit):
    """A frame is turned end for end from a day on, so that what was side A is then B."""

    frame_id: FrameId
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if it hung nowhere that day."""
        stay = _hanging(tx, self.frame_id, self.day)
        change_from(tx, stay, self.day, turned=not stay.turned)
        label = say("turn comb {comb}", comb=str(stay.place))
        return Done(None, label, _place(tx, stay.part_id, self.frame_id, self.day))


@dataclass(frozen=True)
class SetDroneCells(SingleEdit):
    """Whether a comb is built of drone cells, and so its sides of one visit too."""

    frame_id: FrameId
    drone_cells: bool
    visit_id: VisitId | None = None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        frame = the(tx, Frame, self.frame_id)
        if frame.drone_cells != self.drone_cells:
            tx.put(replace(frame, drone_cells=self.drone_cells))
        if self.visit_id is not None:
            for side in tx.find(Side, visit_id=self.visit_id, frame_id=frame.id):
                put_side(tx, replace(side, drone_cells=self.drone_cells))
        label = say("call it drone comb") if self.drone_cells else say("call it worker comb")
        return Done(None, label, Place(visit_id=self.visit_id, frame_id=frame.id))


def _hanging(tx: Transaction, frame_id: FrameId, day: date) -> FrameStay:
    the(tx, Frame, frame_id)
    stay = stay_of_frame(tx, frame_id, day)
    if stay is None:
        raise RefusedError(say("This comb hung in no hive on that day."))
    return stay


def _place(tx: Transaction, part_id: PartId, frame_id: FrameId | None, day: date) -> Place:
    stays = [stay for stay in tx.find(PartStay, part_id=part_id) if holds_on(stay, day)]
    homes = tx.find(Housing, hive_id=stays[0].hive_id) if stays else ()
    colony_id = next((home.colony_id for home in homes if holds_on(home, day)), None)
    return Place(colony_id=colony_id, part_id=part_id, frame_id=frame_id)
