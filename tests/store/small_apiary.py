"""What the tests of the store fill a workbook with: one record of every kind, all fields in use.

Names are invented; no number here is a fact about bees.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, time

import numpy as np

from beeworkbook.colony.records import (
    Answer,
    AnswerId,
    Apiary,
    ApiaryId,
    Arrival,
    Colony,
    ColonyId,
    Due,
    DueId,
    DueKind,
    Event,
    EventId,
    EventKind,
    Feed,
    FeedId,
    FeedKind,
    Frame,
    FrameId,
    FrameMake,
    FrameStay,
    FrameStayId,
    Hive,
    HiveId,
    Housing,
    HousingId,
    Level,
    Mark,
    MarkId,
    OwnFrame,
    Part,
    PartId,
    PartKind,
    PartStay,
    PartStayId,
    Queen,
    QueenId,
    Question,
    Record,
    Reply,
    Round,
    RoundId,
    Setting,
    Sheet,
    SheetId,
    Side,
    SideId,
    Stand,
    StandId,
    Visit,
    VisitId,
    Way,
)
from beeworkbook.comb.codec import pack
from beeworkbook.comb.contents import CellFate, CellKind, Content, Face, MarkKind, Origin
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.store.database import Database
from beeworkbook.store.transaction import Transaction

BOX_FRAME = "bs_deep"
SPRING, LATER, SUMMER = date(2026, 4, 3), date(2026, 4, 17), date(2026, 6, 20)
SAVED = datetime(2026, 4, 3, 12, 30, 15, 250000, tzinfo=UTC)


@dataclass(frozen=True)
class SmallApiary:
    apiary: Apiary
    stands: tuple[Stand, ...]
    colony: Colony
    daughter: Colony
    hive: Hive
    box: Part
    super_: Part
    frames: tuple[Frame, ...]
    first: Visit
    second: Visit
    sides: tuple[Side, ...]


def drawing(frame: FrameType, parts: Mapping[Content, float], seed: int = 1) -> bytes:
    """A packed side with about these shares of its cells, the rest empty."""
    cells = np.full(frame.lattice.cells, Content.EMPTY, np.uint8)
    chance = np.random.default_rng(seed).random(len(cells))
    floor = 0.0
    for content, share in parts.items():
        cells[(chance >= floor) & (chance < floor + share)] = content
        floor += share
    return pack(cells)


def fill(database: Database) -> SmallApiary:
    with database.write() as tx:
        return _fill(tx)


def everything(database: Database) -> dict[str, list[Record]]:
    """Every record and every stored total, to compare one state of a workbook with another."""
    from beeworkbook.colony.records import RECORD_TYPES

    held: dict[str, list[Record]] = {cls.__name__: list(database.reader.find(cls)) for cls in RECORD_TYPES}
    held["totals"] = list(database.link.rows("SELECT * FROM tally ORDER BY side_id"))  # type: ignore[arg-type]
    held["combs"] = list(database.link.rows("SELECT * FROM comb ORDER BY side_id"))  # type: ignore[arg-type]
    return held


def _fill(tx: Transaction) -> SmallApiary:
    tx.add(Setting("title", "Orchard and heath"))
    tx.add(OwnFrame("own_1", "Grandfather’s", 300.0, 200.0, 380.0, 225.0))
    apiary = tx.add(Apiary(ApiaryId(0), "Old orchard", 1, "behind the barn", "grid 12 34", "gate sticks"))
    stands = tuple(
        tx.add(Stand(StandId(0), apiary.id, name, position))
        for position, name in ((2, "second"), (1, "first"), (3, "third"))
    )
    mother = tx.add(Colony(ColonyId(0), "Hazel", Arrival.BOUGHT, date(2025, 5, 1), "a neighbour"))
    daughter = tx.add(Colony(ColonyId(0), "Filbert", Arrival.SPLIT, SUMMER, mother_id=mother.id))
    hive = tx.add(Hive(HiveId(0), "Green", Way.WARM, "national", "repainted"))
    spare = tx.add(Hive(HiveId(0), "Blue"))
    tx.add(Housing(HousingId(0), mother.id, spare.id, stands[1].id, date(2025, 5, 1), SPRING))
    tx.add(Housing(HousingId(0), mother.id, hive.id, stands[1].id, SPRING))
    tx.add(Housing(HousingId(0), daughter.id, spare.id, stands[0].id, SUMMER))
    box, super_ = _wood(tx, hive)
    frames = _frames(tx, box)
    queen = tx.add(Queen(QueenId(0), "Q1", "blue", "17", 2025, clipped=True, note="calm"))
    asked = Round(
        RoundId(0), apiary.id, SPRING, time(14, 5), "sunny", 16.5, "Ada", "willow", left_out="temper"
    )
    first = tx.add(
        Visit(
            VisitId(0),
            mother.id,
            SPRING,
            Level.PAINTED,
            tx.add(asked).id,
            time(14, 20),
            "Ada",
            "all quiet",
            LATER,
            "two weeks",
            SAVED,
        )
    )
    second = tx.add(Visit(VisitId(0), mother.id, LATER, Level.BY_SIDE))
    sides = _sides(tx, first, second, box, frames)
    _noted(tx, first, second, mother, daughter, queen, frames[0])
    return SmallApiary(apiary, stands, mother, daughter, hive, box, super_, frames, first, second, sides)


def _wood(tx: Transaction, hive: Hive) -> tuple[Part, Part]:
    kinds = (PartKind.FLOOR, PartKind.BROOD_BOX, PartKind.EXCLUDER, PartKind.SUPER, PartKind.ROOF)
    parts = [
        tx.add(
            Part(
                PartId(0),
                kind,
                frame_type=BOX_FRAME if kind in {PartKind.BROOD_BOX, PartKind.SUPER} else "",
                places=4 if kind in {PartKind.BROOD_BOX, PartKind.SUPER} else 0,
            )
        )
        for kind in kinds
    ]
    for level, part in enumerate(parts):
        late = part.kind in {PartKind.EXCLUDER, PartKind.SUPER}
        tx.add(PartStay(PartStayId(0), part.id, hive.id, level, LATER if late else SPRING))
    return parts[1], parts[3]


def _frames(tx: Transaction, box: Part) -> tuple[Frame, ...]:
    frames = (
        tx.add(Frame(FrameId(0), BOX_FRAME, since=SPRING)),
        tx.add(Frame(FrameId(0), BOX_FRAME, name="drone comb", drone_cells=True)),
        tx.add(Frame(FrameId(0), BOX_FRAME, FrameMake.DUMMY)),
    )
    for place, frame in enumerate(frames, 1):
        tx.add(FrameStay(FrameStayId(0), frame.id, box.id, place, SPRING))
    return frames


def _sides(
    tx: Transaction, first: Visit, second: Visit, box: Part, frames: tuple[Frame, ...]
) -> tuple[Side, ...]:
    kind = FRAME_TYPES[BOX_FRAME]
    brood = {Content.EGGS: 0.1, Content.OPEN: 0.15, Content.SEALED: 0.3, Content.DRONE: 0.05}
    kept = {Content.POLLEN: 0.1, Content.STORES: 0.2, Content.GAP: 0.05, Content.NOT_RECORDED: 0.1}

    def add(visit: Visit, frame: Frame, face: Face, origin: Origin, cells: bytes) -> Side:
        place = frames.index(frame) + 1
        grain = Origin.PAINTED if origin is Origin.PAINTED else Origin.EIGHTHS
        ids = (SideId(0), visit.id, frame.id, box.id)
        return Side(*ids, place, face, BOX_FRAME, origin, grain, cells, frame.drone_cells)

    one = tx.add(replace(add(first, frames[0], Face.A, Origin.PAINTED, drawing(kind, brood)), covered=6.5))
    two = tx.add(replace(add(first, frames[0], Face.B, Origin.EIGHTHS, drawing(kind, kept, 2)), typed="P1H2"))
    three = tx.add(add(first, frames[1], Face.A, Origin.PAINTED, drawing(kind, {Content.DRONE: 0.5}, 3)))
    four = tx.add(replace(add(second, frames[0], Face.A, Origin.UNCHANGED, one.cells), copied_from=one.id))
    five = tx.add(replace(add(second, frames[0], Face.B, Origin.ASSUMED, two.cells), copied_from=two.id))
    return one, two, three, four, five


def _noted(
    tx: Transaction,
    first: Visit,
    second: Visit,
    colony: Colony,
    daughter: Colony,
    queen: Queen,
    frame: Frame,
) -> None:
    tx.add(Answer(AnswerId(0), first.id, Question.EGGS, "y", Reply.YES))
    tx.add(Answer(AnswerId(0), first.id, Question.SEAMS, "5 of 8", None, 5.0, 8.0))
    tx.add(
        Mark(MarkId(0), first.id, MarkKind.QUEEN_CELL, frame.id, Face.A, 40, CellKind.CHARGED, CellFate.LEFT)
    )
    tx.add(Mark(MarkId(0), first.id, MarkKind.NOTE, text="a wasp"))
    tx.add(Event(EventId(0), colony.id, SPRING, EventKind.QUEEN_SEEN, "on comb 1", first.id, queen.id))
    tx.add(Event(EventId(0), colony.id, SUMMER, EventKind.SPLIT, other_colony_id=daughter.id))
    tx.add(Event(EventId(0), colony.id, LATER, EventKind.HEFT, left_kg=11.5, right_kg=12.0))
    syrup = Feed(FeedId(0), colony.id, SPRING, FeedKind.SYRUP, first.id, 2.0, typed="2L 1:1")
    left = replace(syrup, sugar_parts=1.0, water_parts=1.0, left_litres=0.5, left_day=LATER)
    tx.add(replace(left, left_visit_id=second.id))
    tx.add(Due(DueId(0), DueKind.LOOK, LATER, "two weeks", colony.id, visit_id=first.id))
    tx.add(Due(DueId(0), DueKind.BRING, SUMMER, "a super", apiary_id=colony_apiary(tx), until=SUMMER))
    tx.add(Sheet(SheetId(0), "S-1", colony.id, SPRING, 1, 2, "A4", first.id, "{}", SAVED))


def colony_apiary(tx: Transaction) -> ApiaryId:
    return tx.find(Apiary)[0].id
