"""A small book with a season by lines and by combs, a silence, a visit with combs missing; invented."""

import shutil
from copy import copy
from datetime import date
from pathlib import Path
from typing import Final, Self

from beeworkbook.colony.records import (
    Arrival,
    Colony,
    ColonyId,
    EventKind,
    Level,
    PartKind,
    Question,
    VisitId,
)
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony
from beeworkbook.workbook.edits.events import AddEvent
from beeworkbook.workbook.edits.feed import GiveFeed
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit, SetAnswer, SetLevel
from beeworkbook.workbook.workbook import Workbook

TODAY: Final = date(2026, 5, 20)
CAME: Final = date(2025, 4, 1)


class SeasonBook:
    """The book, its colonies, and its visits by day."""

    def __init__(self, path: Path) -> None:
        """The book made anew; slow, so tests open copies of one."""
        self.book = Workbook.create(path, "Season", today=TODAY)
        self.pear = self._arrive("Pear")
        self.gate = self._arrive("Gate")
        self._visits: dict[tuple[ColonyId, str], VisitId] = {}
        self.by_comb("2025-05-16", "E1O2S4.", combs=11)
        self.by_comb("2025-06-06", "E1O2S5.", combs=11)
        self.by_comb("2026-04-18", "E1O1S2D1.", combs=11)
        self.by_line("2026-04-25", brood="6/4.5", stores="8", seams="7")
        self.by_comb("2026-05-02", "E1O2S4D1.", combs=11)
        self.by_comb("2026-05-09", "E1O2S4.", combs=4)
        self.by_comb("2026-05-16", "E1O2S5.", combs=11)
        self.shut("2026-05-18")
        self.by_line("2026-05-03", brood="4/2.5", stores="4", seams="5", colony=self.gate)
        self.by_line("2026-05-16", brood="5/3", stores="5", seams="6", colony=self.gate)
        self.book.do(AddEvent(self.pear, date(2026, 5, 10), EventKind.QUEEN_SEEN, "blue"))
        self.book.do(GiveFeed(self.pear, date(2026, 4, 20), "2L 1:1"))
        hive = self.book.read.hive_day(self.pear, TODAY)
        assert hive is not None
        self.book.do(
            AddPart(hive.hive.id, PartKind.SUPER, date(2026, 5, 12), frame_type="bs_shallow", places=10)
        )

    def copied(self, path: Path) -> Self:
        """This book, closed before, as a copy of its own."""
        made = copy(self)
        shutil.copyfile(self.book.path, path)
        made.book = Workbook.open(path, today=TODAY)
        return made

    def visit(self, day: str, colony: ColonyId | None = None) -> VisitId:
        """The visit of a day."""
        return self._visits[colony or self.pear, day]

    def colony(self, colony_id: ColonyId) -> Colony:
        """A colony by id."""
        found = self.book.read.get(Colony, colony_id)
        assert found is not None
        return found

    def by_comb(self, day: str, typed: str, *, combs: int, colony: ColonyId | None = None) -> VisitId:
        """A visit in which so many combs were noted, all alike."""
        made = self._begin(day, colony)
        hive = self.book.read.hive_day(colony or self.pear, date.fromisoformat(day))
        assert hive is not None
        for placed in hive.brood_boxes[0].frames[:combs]:
            assert placed.frame is not None
            self.book.do(LayOutComb(made, placed.frame.id, typed))
        return made

    def by_line(
        self, day: str, *, brood: str, stores: str, seams: str, colony: ColonyId | None = None
    ) -> VisitId:
        """A visit of one line."""
        made = self._begin(day, colony)
        for question, typed in ((Question.BROOD, brood), (Question.STORES, stores), (Question.SEAMS, seams)):
            self.book.do(SetAnswer(made, question, typed))
        return made

    def shut(self, day: str) -> VisitId:
        """A visit in which the hive was not opened."""
        made = self._begin(day, None)
        self.book.do(SetLevel(made, Level.NOT_OPENED))
        return made

    def _begin(self, day: str, colony: ColonyId | None) -> VisitId:
        made = self.book.do(BeginVisit(colony or self.pear, date.fromisoformat(day)))
        assert isinstance(made, int)
        self._visits[colony or self.pear, day] = VisitId(made)
        return VisitId(made)

    def _arrive(self, name: str) -> ColonyId:
        apiaries = self.book.read.apiaries()
        made = self.book.do(
            ArriveColony(
                ArrivalSpec(
                    name,
                    Arrival.BOUGHT,
                    CAME,
                    apiary_id=apiaries[0].id if apiaries else None,
                    apiary_name="Lower Orchard",
                    stand_name=name,
                )
            )
        )
        assert isinstance(made, int)
        return ColonyId(made)
