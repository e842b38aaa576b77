"""All a person can do to the workbook, one frozen dataclass an edit, a module a subject."""

from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony, ArrivingComb, nucleus_combs
from beeworkbook.workbook.edits.as_last import AsLastTime
from beeworkbook.workbook.edits.combs import ClearSide, CopySide, PaintCells, SetCovered
from beeworkbook.workbook.edits.dues import AddDue, DoDue, DropDue, MoveDue, UndoDue
from beeworkbook.workbook.edits.events import AddEvent, ChangeEvent, QueenSpec, RemoveEvent
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft, SetHeft
from beeworkbook.workbook.edits.frames import (
    AddFrame,
    MoveFrame,
    OrderFrames,
    SetDroneCells,
    TakeFrame,
    TurnFrame,
)
from beeworkbook.workbook.edits.hive import (
    AddPart,
    MoveColony,
    MovePart,
    NumberFromOtherEnd,
    SetWay,
    TakePart,
)
from beeworkbook.workbook.edits.in_visit import InVisit
from beeworkbook.workbook.edits.marks import AddMark, ChangeMark, MoveMark, RemoveMark
from beeworkbook.workbook.edits.mend import MirrorDrawings, MoveDrawing, MoveVisit, RemoveVisit, SwapSides
from beeworkbook.workbook.edits.mirroring import MirrorSide
from beeworkbook.workbook.edits.papers import KeepSheet
from beeworkbook.workbook.edits.place import (
    AddApiary,
    AddOwnFrame,
    AddStand,
    ChangeRecord,
    RemoveRecord,
    RenameRecord,
    ReorderApiaries,
    ReorderStands,
    SetSetting,
)
from beeworkbook.workbook.edits.together import Together
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import (
    BeginRound,
    BeginVisit,
    ChangeRound,
    PassOver,
    SetAnswer,
    SetLevel,
    SetNext,
    SetNote,
    SetTime,
    SetWho,
)

__all__ = [
    "AddApiary",
    "AddDue",
    "AddEvent",
    "AddFrame",
    "AddMark",
    "AddOwnFrame",
    "AddPart",
    "AddStand",
    "ArrivalSpec",
    "ArriveColony",
    "ArrivingComb",
    "AsLastTime",
    "BeginRound",
    "BeginVisit",
    "ChangeEvent",
    "ChangeMark",
    "ChangeRecord",
    "ChangeRound",
    "ClearSide",
    "CopySide",
    "DoDue",
    "DropDue",
    "GiveFeed",
    "InVisit",
    "KeepSheet",
    "LayOutComb",
    "MirrorDrawings",
    "MirrorSide",
    "MoveColony",
    "MoveDrawing",
    "MoveDue",
    "MoveFrame",
    "MoveMark",
    "MovePart",
    "MoveVisit",
    "NumberFromOtherEnd",
    "OrderFrames",
    "PaintCells",
    "PassOver",
    "QueenSpec",
    "RemoveEvent",
    "RemoveMark",
    "RemoveRecord",
    "RemoveVisit",
    "RenameRecord",
    "ReorderApiaries",
    "ReorderStands",
    "SetAnswer",
    "SetCovered",
    "SetDroneCells",
    "SetFeedLeft",
    "SetHeft",
    "SetLevel",
    "SetNext",
    "SetNote",
    "SetSetting",
    "SetTime",
    "SetWay",
    "SetWho",
    "SwapSides",
    "TakeFrame",
    "TakePart",
    "Together",
    "TurnFrame",
    "UndoDue",
    "nucleus_combs",
]
