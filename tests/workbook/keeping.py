"""A workbook with one colony that came as a nucleus, and short ways to look at it; all names invented."""

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Final, Self

import numpy as np

from beeworkbook.colony.records import (
    RECORD_TYPES,
    Arrival,
    Colony,
    ColonyId,
    FrameId,
    FrameStay,
    Part,
    PartId,
    PartKind,
    Record,
    Side,
    SideId,
    Visit,
    VisitId,
)
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.lattice import Cells
from beeworkbook.comb.side import CellPatch, blank_cells
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony, nucleus_combs
from beeworkbook.workbook.edits.combs import PaintCells
from beeworkbook.workbook.edits.events import QueenSpec
from beeworkbook.workbook.edits.visit import BeginVisit
from beeworkbook.workbook.workbook import Workbook

CAME: Final = date(2026, 5, 1)
LOOK: Final = date(2026, 5, 8)
LATER: Final = date(2026, 5, 16)
NOW: Final = datetime(2026, 5, 16, 17, 0, tzinfo=UTC)

NUCLEUS: Final = ArrivalSpec(
    "Wall",
    Arrival.NUCLEUS,
    CAME,
    apiary_name="Lower Orchard",
    stand_name="1",
    combs=nucleus_combs(11, 6),
    queen=QueenSpec(mark_colour="blue"),
    fed="2L 1:1",
)


class Clock:
    """A clock that stands until it is moved."""

    def __init__(self) -> None:
        self.seconds = 0.0

    def __call__(self) -> float:
        return self.seconds


class Keeping:
    """A book with a colony, and what a test asks of it."""

    def __init__(self, path: Path) -> None:
        self.clock = Clock()
        self.book = Workbook.create(path, "Trial", today=LATER, now=lambda: NOW, pause=self.clock)
        self.colony = ColonyId(as_int(self.book.do(ArriveColony(NUCLEUS))))
        self.visit = VisitId(as_int(self.book.do(BeginVisit(self.colony, LOOK))))

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *error: object) -> None:
        self.book.close()

    @property
    def box(self) -> Part:
        """The brood box."""
        return self.book.read.find(Part, kind=PartKind.BROOD_BOX)[0]

    def frame(self, place: int, day: date = LOOK, part_id: PartId | None = None) -> FrameId:
        """The frame that hangs in a place."""
        stays = self.book.read.find(FrameStay, part_id=part_id or self.box.id, place=place)
        return next(
            stay.frame_id for stay in stays if stay.since <= day and (stay.until is None or day < stay.until)
        )

    def places(self, day: date, part_id: PartId | None = None) -> dict[int, FrameId]:
        """The frames of a box by place on a day."""
        hive = self.book.read.hive_day(self.colony, day)
        assert hive is not None
        return {
            placed.place: placed.frame.id
            for placed in hive.frames_of(part_id or self.box.id)
            if placed.frame is not None
        }

    def side(self, place: int, face: Face = Face.A, visit: VisitId | None = None) -> Side | None:
        """What was noted of a side."""
        return self.book.read.side(visit or self.visit, self.frame(place), face)

    def cells(self, place: int, face: Face = Face.A, visit: VisitId | None = None) -> Cells:
        """The cells of a side that was noted."""
        side = self.side(place, face, visit)
        assert side is not None
        return unpack(side.cells, cells=self.book.read.frame_type(side.frame_type).lattice.cells)

    def paint(
        self,
        place: int,
        face: Face = Face.A,
        content: Content = Content.EGGS,
        first: int = 0,
        count: int = 40,
        visit: VisitId | None = None,
    ) -> SideId:
        """Paint some cells of a side."""
        side = self.side(place, face, visit)
        lattice = self.book.read.frame_type(self.box.frame_type).lattice
        cells = blank_cells(lattice) if side is None else self.cells(place, face, visit)
        patch = CellPatch.painting(cells, np.arange(first, min(first + count, lattice.cells)), content)
        made = self.book.do(PaintCells(visit or self.visit, self.frame(place), face, patch, content))
        return SideId(as_int(made))

    def noted(self) -> Visit:
        """The visit as it is kept."""
        found = self.book.read.get(Visit, self.visit)
        assert found is not None
        return found

    def another(self, name: str = "Gate", **changes: object) -> ColonyId:
        """A second colony in the same apiary."""
        from dataclasses import replace

        apiary = self.book.read.apiaries()[0]
        spec = replace(NUCLEUS, name=name, apiary_id=apiary.id, stand_name=name, queen=None, fed="")
        spec = replace(spec, **changes)  # type: ignore[arg-type] # the tests name the fields
        return ColonyId(as_int(self.book.do(ArriveColony(spec))))

    def everything(self) -> dict[type[Record], tuple[Record, ...]]:
        """Every record of the book."""
        return {cls: self.book.read.find(cls) for cls in RECORD_TYPES}


def as_int(made: object) -> int:
    """The id an edit gave."""
    assert isinstance(made, int)
    return made


def colony_named(book: Workbook, name: str) -> Colony:
    """A colony by its name."""
    return next(colony for colony in book.read.find(Colony) if colony.name == name)


def days_on(day: date, days: int) -> date:
    """So many days later."""
    return day + timedelta(days=days)


Making = Callable[[], Keeping]
