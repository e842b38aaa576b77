"""A colony arrives: stand, hive with all its parts, combs, queen, feed and plan, as one undo step."""

from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from beeworkbook.colony.plans import arrival_plan
from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Arrival,
    Colony,
    ColonyId,
    Due,
    DueId,
    Event,
    EventId,
    EventKind,
    Frame,
    FrameId,
    FrameMake,
    Hive,
    HiveId,
    Housing,
    HousingId,
    Level,
    Part,
    PartId,
    PartKind,
    QueenId,
    Stand,
    StandId,
    Visit,
    Way,
)
from beeworkbook.comb.contents import Content
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.edits.events import QueenSpec
from beeworkbook.workbook.edits.feed import give_feed
from beeworkbook.workbook.edits.frames import fill_box, hang_new
from beeworkbook.workbook.edits.hive import add_part
from beeworkbook.workbook.edits.place import AddApiary, AddStand, needed_name
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import begin_visit
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import the
from beeworkbook.workbook.place import Done, Place, SingleEdit

_UNDER: Final = (PartKind.STAND, PartKind.FLOOR)


@dataclass(frozen=True)
class ArrivingComb:
    """A comb that came with the bees: its place, and what is on it if it is typed at once."""

    place: int
    typed: str = ""
    turned: bool = False
    name: str = ""


@dataclass(frozen=True)
class ArrivalSpec:
    """Where, in what hive, what came. An id of None with a name makes a new apiary or stand.

    Places that no arriving comb and no dummy takes are flanked with new frames holding `flank`:
    foundation, or drawn and empty comb; None leaves them free. `fed` is typed as it is said.
    """

    name: str
    arrival: Arrival
    came_on: date
    apiary_id: ApiaryId | None = None
    apiary_name: str = ""
    stand_id: StandId | None = None
    stand_name: str = ""
    hive_name: str = ""
    hive_kind: str = ""
    way: Way = Way.COLD
    box_kind: PartKind = PartKind.BROOD_BOX
    frame_type: str = "bs_deep"
    places: int = 11
    combs: tuple[ArrivingComb, ...] = ()
    flank: Content | None = Content.FOUNDATION
    dummies: tuple[int, ...] = ()
    supers: int = 0
    super_frame_type: str = ""
    super_places: int = 0
    excluder: bool = False
    queen: QueenSpec | None = None
    queenless: bool = False
    cast: bool | None = None
    fed: str = ""
    feeder: bool | None = None
    came_from: str = ""
    note: str = ""
    who: str = ""

    @property
    def has_feeder(self) -> bool:
        """Whether a feeder is on; unless it is said, when they were fed."""
        return bool(self.fed.strip()) if self.feeder is None else self.feeder


def nucleus_combs(places: int, combs: int, first: int | None = None) -> tuple[ArrivingComb, ...]:
    """Combs side by side in the order they came, in the middle of the box or from a place on.

    Errors: RefusedError if they do not fit.
    """
    start = (places - combs) // 2 + 1 if first is None else first
    if combs < 0 or start < 1 or start + combs - 1 > places:
        raise RefusedError(
            say("So many combs do not fit there: this box has {places} places.", places=places)
        )
    return tuple(ArrivingComb(place) for place in range(start, start + combs))


@dataclass(frozen=True)
class ArriveColony(SingleEdit):
    """Bees come and are housed."""

    spec: ArrivalSpec

    def apply(self, tx: Transaction) -> Done:
        """Gives the ColonyId. Errors: RefusedError, a sentence for each thing that does not fit."""
        spec = self.spec
        name = needed_name(spec.name)
        stand_id = _stand(tx, spec)
        colony = tx.add(Colony(ColonyId(0), name, spec.arrival, spec.came_on, spec.came_from, note=spec.note))
        hive = tx.add(Hive(HiveId(0), spec.hive_name or name, spec.way, spec.hive_kind))
        tx.add(Housing(HousingId(0), colony.id, hive.id, stand_id, spec.came_on))
        box = _stack(tx, spec, hive.id)
        visit = _hang_combs(tx, spec, colony.id, box)
        _note_arrival(tx, spec, colony.id)
        if spec.fed.strip():
            give_feed(tx, colony.id, spec.came_on, spec.fed, visit_id=visit.id)
        _plan(tx, spec, colony.id)
        place = Place(colony.id, visit.id, box.id)
        return Done(colony.id, say("house {colony}", colony=name), place)


def _stand(tx: Transaction, spec: ArrivalSpec) -> StandId:
    if spec.stand_id is not None:
        return the(tx, Stand, spec.stand_id).id
    apiary_id = spec.apiary_id
    if apiary_id is None:
        made = AddApiary(spec.apiary_name).apply(tx).value
        apiary_id = ApiaryId(int(str(made)))
    the(tx, Apiary, apiary_id)
    name = spec.stand_name or str(len(tx.find(Stand, apiary_id=apiary_id)) + 1)
    return StandId(int(str(AddStand(apiary_id, name).apply(tx).value)))


def _stack(tx: Transaction, spec: ArrivalSpec, hive_id: HiveId) -> Part:
    """The parts from the ground up; gives the box the bees are in."""
    day = spec.came_on

    def put(kind: PartKind, frame_type: str = "", places: int = 0) -> Part:
        return add_part(tx, hive_id, Part(PartId(0), kind, "", frame_type, places), day)

    for kind in _UNDER:
        put(kind)
    box = put(spec.box_kind, spec.frame_type, spec.places)
    if spec.excluder:
        put(PartKind.EXCLUDER)
    for _ in range(spec.supers):
        honey = put(
            PartKind.SUPER, spec.super_frame_type or spec.frame_type, spec.super_places or spec.places
        )
        fill_box(tx, honey, day, holds=None, visit=None)
    put(PartKind.CROWN_BOARD)
    if spec.has_feeder:
        put(PartKind.FEEDER)
    put(PartKind.ROOF)
    return box


def _hang_combs(tx: Transaction, spec: ArrivalSpec, colony_id: ColonyId, box: Part) -> Visit:
    """The combs that came, the dummies and the new frames; what is known of them, in that day's visit."""
    hung = [(comb, _hang(tx, spec, box, comb)) for comb in spec.combs]
    for place in spec.dummies:
        hang_new(tx, Frame(FrameId(0), box.frame_type, FrameMake.DUMMY), box, place, spec.came_on)
    flanked = spec.flank is not None and len(hung) + len(spec.dummies) < box.places
    handled = flanked or any(comb.typed for comb in spec.combs)
    level = Level.BY_COMB if handled else Level.NOT_OPENED
    visit = begin_visit(tx, colony_id, spec.came_on, level=level, who=spec.who)
    if spec.flank is not None:
        fill_box(tx, box, spec.came_on, holds=spec.flank, visit=visit)
    for comb, frame_id in hung:
        if comb.typed:
            LayOutComb(visit.id, frame_id, comb.typed).apply(tx)
    return visit


def _hang(tx: Transaction, spec: ArrivalSpec, box: Part, comb: ArrivingComb) -> FrameId:
    frame = Frame(FrameId(0), box.frame_type, name=comb.name)
    return hang_new(tx, frame, box, comb.place, spec.came_on, turned=comb.turned).id


def _note_arrival(tx: Transaction, spec: ArrivalSpec, colony_id: ColonyId) -> None:
    came = Event(EventId(0), colony_id, spec.came_on, EventKind.ARRIVED, spec.came_from)
    tx.add(came)
    if spec.queen is not None:
        queen = tx.add(spec.queen.record(QueenId(0)))
        tx.add(replace(came, kind=EventKind.QUEEN_CAME, text="", queen_id=queen.id))


def _plan(tx: Transaction, spec: ArrivalSpec, colony_id: ColonyId) -> None:
    planned = arrival_plan(
        spec.arrival,
        spec.came_on,
        fed=bool(spec.fed.strip()),
        queenless=spec.queenless,
        cast=spec.cast,
    )
    for due in planned:
        tx.add(Due(DueId(0), due.kind, due.day, due.reason, colony_id, until=due.until))
