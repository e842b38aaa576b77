"""What the workbook keeps, one frozen dataclass a table, and the types of their ids.

Every record carries its own id. Dates of stay (`since`, `until`) are half open: a part stands on
`since` and no longer on `until`; `until` None means it still does. Blank (None) is always "not
recorded" and never zero or no. Nothing here knows how a record is stored.
"""

from dataclasses import dataclass
from datetime import date, datetime, time
from typing import NewType

from beeworkbook.colony.kinds import (
    BOXES,
    ENDINGS,
    Arrival,
    DueKind,
    DueState,
    EventKind,
    FeedKind,
    FrameMake,
    Level,
    PartKind,
    Question,
    Reply,
    Way,
)
from beeworkbook.comb.contents import CellFate, CellKind, Face, MarkKind, Origin

__all__ = [
    "BOXES",
    "ENDINGS",
    "RECORD_TYPES",
    "Answer",
    "AnswerId",
    "Apiary",
    "ApiaryId",
    "Arrival",
    "Colony",
    "ColonyId",
    "Due",
    "DueId",
    "DueKind",
    "DueState",
    "Event",
    "EventId",
    "EventKind",
    "Feed",
    "FeedId",
    "FeedKind",
    "Frame",
    "FrameId",
    "FrameMake",
    "FrameStay",
    "FrameStayId",
    "Hive",
    "HiveId",
    "Housing",
    "HousingId",
    "Level",
    "Mark",
    "MarkId",
    "OwnFrame",
    "Part",
    "PartId",
    "PartKind",
    "PartStay",
    "PartStayId",
    "Queen",
    "QueenId",
    "Question",
    "Record",
    "Reply",
    "Round",
    "RoundId",
    "Setting",
    "Sheet",
    "SheetId",
    "Side",
    "SideId",
    "Stand",
    "StandId",
    "Visit",
    "VisitId",
    "Way",
]

ApiaryId = NewType("ApiaryId", int)
StandId = NewType("StandId", int)
ColonyId = NewType("ColonyId", int)
HiveId = NewType("HiveId", int)
HousingId = NewType("HousingId", int)
PartId = NewType("PartId", int)
PartStayId = NewType("PartStayId", int)
FrameId = NewType("FrameId", int)
FrameStayId = NewType("FrameStayId", int)
QueenId = NewType("QueenId", int)
RoundId = NewType("RoundId", int)
VisitId = NewType("VisitId", int)
AnswerId = NewType("AnswerId", int)
SideId = NewType("SideId", int)
MarkId = NewType("MarkId", int)
EventId = NewType("EventId", int)
FeedId = NewType("FeedId", int)
DueId = NewType("DueId", int)
SheetId = NewType("SheetId", int)


@dataclass(frozen=True, slots=True)
class Setting:
    """One named value of the workbook: title, hemisphere, sample, and the like."""

    id: str
    value: str


@dataclass(frozen=True, slots=True)
class OwnFrame:
    """A frame type the keeper added; the shipped ones are in comb/frames.py.

    The densities are those of comb/lattice.py, with their source there; importing it would load NumPy
    before the first window is painted.
    """

    id: str
    name: str
    inside_width_mm: float
    inside_height_mm: float
    cells_per_dm2: float = 400.0
    drone_cells_per_dm2: float = 230.0


@dataclass(frozen=True, slots=True)
class Apiary:
    """A place where colonies stand."""

    id: ApiaryId
    name: str
    position: int = 0
    place: str = ""
    map_reference: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Stand:
    """A numbered spot in an apiary; `position` is the order of the walk."""

    id: StandId
    apiary_id: ApiaryId
    name: str
    position: int = 0
    note: str = ""


@dataclass(frozen=True, slots=True)
class Colony:
    """The bees. The hive is the wood they live in."""

    id: ColonyId
    name: str
    arrival: Arrival
    came_on: date
    came_from: str = ""
    mother_id: ColonyId | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Hive:
    """The wood: a stack of parts that stays together. Its parts are dated stays."""

    id: HiveId
    name: str
    way: Way = Way.COLD
    hive_kind: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Housing:
    """Which colony lived in which hive on which stand, and when."""

    id: HousingId
    colony_id: ColonyId
    hive_id: HiveId
    stand_id: StandId
    since: date
    until: date | None = None


@dataclass(frozen=True, slots=True)
class Part:
    """One part of a hive. `places` and `frame_type` hold for boxes only."""

    id: PartId
    kind: PartKind
    name: str = ""
    frame_type: str = ""
    places: int = 0
    note: str = ""


@dataclass(frozen=True, slots=True)
class PartStay:
    """A part's stay in a hive's stack, as long as it was not moved there.

    A level orders the parts of a day from the ground up; those of parts that never met may be alike.
    """

    id: PartStayId
    part_id: PartId
    hive_id: HiveId
    level: int
    since: date
    until: date | None = None


@dataclass(frozen=True, slots=True)
class Frame:
    """A frame with an identity of its own, that may wander for years."""

    id: FrameId
    frame_type: str
    make: FrameMake = FrameMake.FRAME
    name: str = ""
    drone_cells: bool = False
    since: date | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class FrameStay:
    """A frame's stay in a place of a box. Place 1 is beside the fixed end (comb/orientation.py).

    `turned` says that the face that was A when the frame was first recorded now faces the other way.
    """

    id: FrameStayId
    frame_id: FrameId
    part_id: PartId
    place: int
    since: date
    until: date | None = None
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Queen:
    """A queen. The colour mark proposes a year and never decides it."""

    id: QueenId
    name: str = ""
    mark_colour: str = ""
    mark_text: str = ""
    year: int | None = None
    clipped: bool | None = None
    note: str = ""


@dataclass(frozen=True, slots=True)
class Round:
    """An afternoon in one apiary: what is asked once."""

    id: RoundId
    apiary_id: ApiaryId
    day: date
    at: time | None = None
    weather: str = ""
    temperature_c: float | None = None
    who: str = ""
    flowering: str = ""
    note: str = ""
    left_out: str = ""
    """Questions not asked in this round, comma separated."""


@dataclass(frozen=True, slots=True)
class Visit:
    """A look at one colony on one day."""

    id: VisitId
    colony_id: ColonyId
    day: date
    level: Level
    round_id: RoundId | None = None
    at: time | None = None
    who: str = ""
    note: str = ""
    next_day: date | None = None
    next_reason: str = ""
    saved_utc: datetime | None = None


@dataclass(frozen=True, slots=True)
class Answer:
    """One filled field of a visit: as typed, and as understood (colony/questions.py)."""

    id: AnswerId
    visit_id: VisitId
    question: Question
    typed: str
    reply: Reply | None = None
    number: float | None = None
    second: float | None = None


@dataclass(frozen=True, slots=True)
class Side:
    """One side of one comb as looked at in one visit.

    `face` is as the comb hung at that visit: A faces comb 1's wall. `part_id` and `place` keep where it
    hung. `cells` is the packed form of comb/codec.py. `grain` is how coarse what is shown is: painted
    or eighths, also for a side looked at and unchanged. `covered` is bees covering it, in eighths.
    """

    id: SideId
    visit_id: VisitId
    frame_id: FrameId
    part_id: PartId
    place: int
    face: Face
    frame_type: str
    origin: Origin
    grain: Origin
    cells: bytes
    drone_cells: bool = False
    covered: float | None = None
    typed: str = ""
    copied_from: SideId | None = None


@dataclass(frozen=True, slots=True)
class Mark:
    """Something seen: on a cell, or on a side, a comb or the visit without a place."""

    id: MarkId
    visit_id: VisitId
    kind: MarkKind
    frame_id: FrameId | None = None
    face: Face | None = None
    cell: int | None = None
    cell_kind: CellKind | None = None
    fate: CellFate | None = None
    text: str = ""


@dataclass(frozen=True, slots=True)
class Event:
    """Something that happened to a colony on a day. `left_kg` and `right_kg` are the pulls of a heft."""

    id: EventId
    colony_id: ColonyId
    day: date
    kind: EventKind
    text: str = ""
    visit_id: VisitId | None = None
    queen_id: QueenId | None = None
    other_colony_id: ColonyId | None = None
    left_kg: float | None = None
    right_kg: float | None = None


@dataclass(frozen=True, slots=True)
class Feed:
    """Feed given, and what was left when it was looked at; taken is the difference, never guessed."""

    id: FeedId
    colony_id: ColonyId
    day: date
    kind: FeedKind
    visit_id: VisitId | None = None
    given_litres: float | None = None
    given_kg: float | None = None
    sugar_parts: float | None = None
    water_parts: float | None = None
    left_litres: float | None = None
    left_kg: float | None = None
    left_day: date | None = None
    left_visit_id: VisitId | None = None
    typed: str = ""


@dataclass(frozen=True, slots=True)
class Due:
    """Something to do on a day, and why. `until` makes it a range, as for leaving a hive shut."""

    id: DueId
    kind: DueKind
    day: date
    reason: str
    colony_id: ColonyId | None = None
    apiary_id: ApiaryId | None = None
    until: date | None = None
    visit_id: VisitId | None = None
    state: DueState = DueState.OPEN
    done_visit_id: VisitId | None = None


@dataclass(frozen=True, slots=True)
class Sheet:
    """A printed comb sheet and where its fields lie, so that a later photograph can be read."""

    id: SheetId
    code: str
    colony_id: ColonyId
    day: date
    revision: int
    pages: int
    paper: str
    visit_id: VisitId | None = None
    field_map: str = ""
    printed_utc: datetime | None = None


Record = (
    Setting
    | OwnFrame
    | Apiary
    | Stand
    | Colony
    | Hive
    | Housing
    | Part
    | PartStay
    | Frame
    | FrameStay
    | Queen
    | Round
    | Visit
    | Answer
    | Side
    | Mark
    | Event
    | Feed
    | Due
    | Sheet
)

RECORD_TYPES: tuple[type[Record], ...] = (
    Setting,
    OwnFrame,
    Apiary,
    Stand,
    Colony,
    Hive,
    Part,
    Frame,
    Queen,
    Housing,
    PartStay,
    FrameStay,
    Round,
    Visit,
    Answer,
    Side,
    Mark,
    Event,
    Feed,
    Due,
    Sheet,
)
"""In an order in which each refers only to those before it (a colony's mother and a copied side apart)."""
