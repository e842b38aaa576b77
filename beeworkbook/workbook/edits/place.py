"""Apiaries, stands, settings, frame types of one's own; and renaming, changing, removing any record."""

from dataclasses import dataclass, replace
from typing import Final

from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Colony,
    ColonyId,
    Due,
    Event,
    Feed,
    Frame,
    Hive,
    Mark,
    OwnFrame,
    Part,
    Queen,
    Record,
    Round,
    Setting,
    Stand,
    StandId,
    Visit,
    VisitId,
)
from beeworkbook.comb.frames import FRAME_TYPES, OwnFrameError, own_frame
from beeworkbook.comb.lattice import DRONE_CELLS_PER_DM2, WORKER_CELLS_PER_DM2
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import held, the
from beeworkbook.workbook.place import Done, Place, SingleEdit

NAMED: Final = (Apiary, Stand, Colony, Hive, Part, Frame, Queen, OwnFrame)
"""The records that bear a name."""

_WORDS: Final[dict[type[Record], str]] = {
    Apiary: "apiary",
    Stand: "stand",
    Colony: "colony",
    Hive: "hive",
    Part: "part of the hive",
    Frame: "comb",
    Queen: "queen",
    OwnFrame: "frame type",
    Visit: "visit",
    Round: "round",
    Mark: "mark",
    Event: "event",
    Feed: "feed",
    Due: "what is due",
    Setting: "setting",
}


def record_word(cls: type[Record]) -> str:
    """What such a record is called: "colony"."""
    return say(_WORDS.get(cls, "record"))


def place_of(record: Record) -> Place:
    """Where in the book a record belongs, as far as it says so itself."""
    if isinstance(record, Colony):
        return Place(colony_id=record.id)
    if isinstance(record, Visit):
        return Place(colony_id=record.colony_id, visit_id=record.id)
    colony_id: ColonyId | None = getattr(record, "colony_id", None)
    visit_id: VisitId | None = getattr(record, "visit_id", None)
    return Place(
        colony_id=colony_id,
        visit_id=visit_id,
        part_id=getattr(record, "part_id", None),
        frame_id=getattr(record, "frame_id", None),
        face=getattr(record, "face", None),
    )


@dataclass(frozen=True)
class AddApiary(SingleEdit):
    """A new apiary, last in the list."""

    name: str
    place: str = ""
    map_reference: str = ""
    note: str = ""

    def apply(self, tx: Transaction) -> Done:
        """Gives the ApiaryId. Errors: RefusedError without a name."""
        name = needed_name(self.name)
        made = tx.add(
            Apiary(ApiaryId(0), name, _next(tx.find(Apiary)), self.place, self.map_reference, self.note)
        )
        return Done(made.id, say("add the apiary {name}", name=name))


@dataclass(frozen=True)
class AddStand(SingleEdit):
    """A new stand at the end of the walk through an apiary."""

    apiary_id: ApiaryId
    name: str
    note: str = ""

    def apply(self, tx: Transaction) -> Done:
        """Gives the StandId. Errors: RefusedError without a name; GoneError."""
        name = needed_name(self.name)
        the(tx, Apiary, self.apiary_id)
        position = _next(tx.find(Stand, apiary_id=self.apiary_id))
        made = tx.add(Stand(StandId(0), self.apiary_id, name, position, self.note))
        return Done(made.id, say("add the stand {name}", name=name))


@dataclass(frozen=True)
class RenameRecord(SingleEdit):
    """Another name for an apiary, stand, colony, hive, part, comb, queen or own frame type."""

    cls: type[Record]
    id: int | str
    name: str

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if such a record bears no name or the name is empty."""
        record = the(tx, self.cls, self.id)
        if not isinstance(record, NAMED):
            raise RefusedError(say("This has no name that could be changed."))
        may_be_nameless = isinstance(record, Part | Frame | Queen)
        name = self.name.strip() if may_be_nameless else needed_name(self.name)
        tx.put(replace(record, name=name))
        return Done(None, say("rename the {what}", what=record_word(self.cls)), place_of(record))


@dataclass(frozen=True)
class ChangeRecord:
    """A record as it is now to be. While a field is typed, `field` names it and keystrokes merge."""

    record: Record
    label: str = ""
    field: str = ""

    @property
    def merge_key(self) -> str | None:
        """One record, one field."""
        if not self.field:
            return None
        return f"{type(self.record).__name__}:{self.record.id}:{self.field}"

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        before = the(tx, type(self.record), self.record.id)
        if before != self.record:
            tx.put(self.record)
        label = self.label or say("change the {what}", what=record_word(type(self.record)))
        return Done(None, label, place_of(self.record))


@dataclass(frozen=True)
class RemoveRecord(SingleEdit):
    """A record goes, with all that hangs on it; undo brings it back."""

    cls: type[Record]
    id: int | str
    label: str = ""

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        record = the(tx, self.cls, self.id)
        tx.remove(self.cls, self.id)
        name = getattr(record, "name", "") or ""
        label = say("remove the {what} {name}", what=record_word(self.cls), name=name).strip()
        return Done(None, self.label or label, place_of(record))


@dataclass(frozen=True)
class ReorderStands(SingleEdit):
    """The order of the walk: every stand of the apiary named once."""

    apiary_id: ApiaryId
    stand_ids: tuple[StandId, ...]

    def apply(self, tx: Transaction) -> Done:
        """Errors: RefusedError if a stand is missing, named twice or elsewhere."""
        _reorder(tx, Stand, tx.find(Stand, apiary_id=self.apiary_id), self.stand_ids)
        return Done(None, say("reorder the stands"))


@dataclass(frozen=True)
class ReorderApiaries(SingleEdit):
    """The order of the apiaries: every one named once."""

    apiary_ids: tuple[ApiaryId, ...]

    def apply(self, tx: Transaction) -> Done:
        """Errors: RefusedError if one is missing or named twice."""
        _reorder(tx, Apiary, tx.find(Apiary), self.apiary_ids)
        return Done(None, say("reorder the apiaries"))


@dataclass(frozen=True)
class SetSetting:
    """One named value of the workbook."""

    name: str
    value: str

    @property
    def merge_key(self) -> str | None:
        """One setting."""
        return f"setting:{self.name}"

    def apply(self, tx: Transaction) -> Done:
        """Sets it, also when it was not there."""
        before = held(tx, Setting, self.name)
        if before is None or before.value != self.value:
            tx.put(Setting(self.name, self.value))
        return Done(None, say("change a setting of the workbook"))


@dataclass(frozen=True)
class AddOwnFrame(SingleEdit):
    """A frame type of the keeper's own. Units: millimetres inside the wood, cells per dm² of one side."""

    name: str
    inside_width_mm: float
    inside_height_mm: float
    cells_per_dm2: float = WORKER_CELLS_PER_DM2
    drone_cells_per_dm2: float = DRONE_CELLS_PER_DM2

    def apply(self, tx: Transaction) -> Done:
        """Gives the frame type's id. Errors: RefusedError if no frame can be like that."""
        frame_id = _free_frame_id(tx)
        made = OwnFrame(
            frame_id,
            self.name.strip(),
            self.inside_width_mm,
            self.inside_height_mm,
            self.cells_per_dm2,
            self.drone_cells_per_dm2,
        )
        try:
            own_frame(
                frame_id,
                made.name,
                made.inside_width_mm,
                made.inside_height_mm,
                cells_per_dm2=made.cells_per_dm2,
                drone_cells_per_dm2=made.drone_cells_per_dm2,
            )
        except OwnFrameError as error:
            raise RefusedError(str(error)) from error
        tx.add(made)
        return Done(frame_id, say("add the frame type {name}", name=made.name))


def needed_name(name: str) -> str:
    """The name without spaces at its ends. Errors: RefusedError if nothing is left."""
    if not name.strip():
        raise RefusedError(say("Without a name it could not be found again: please give one."))
    return name.strip()


def _next(placed: tuple[Apiary, ...] | tuple[Stand, ...]) -> int:
    return max((record.position for record in placed), default=-1) + 1


def _free_frame_id(tx: Transaction) -> str:
    taken = {own.id for own in tx.find(OwnFrame)} | set(FRAME_TYPES)
    return next(name for number in range(1, len(taken) + 2) if (name := f"own_{number}") not in taken)


def _reorder(
    tx: Transaction,
    cls: type[Apiary] | type[Stand],
    present: tuple[Apiary, ...] | tuple[Stand, ...],
    order: tuple[ApiaryId, ...] | tuple[StandId, ...],
) -> None:
    records = {int(record.id): record for record in present}
    if sorted(order) != sorted(records):
        raise RefusedError(say("The new order has to name every {what} once.", what=record_word(cls)))
    for position, record_id in enumerate(order):
        if records[record_id].position != position:
            tx.put(replace(records[record_id], position=position))
