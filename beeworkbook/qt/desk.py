"""The desk: the open workbook and where the keeper is in it. Every face receives one.

A face asks the desk to go somewhere or to do an edit, and hears of both through signals. Nothing here
draws, and nothing here computes biology.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from typing import Final

from PySide6.QtCore import QObject, Signal

from beeworkbook.colony.hive import HiveDay, PartDay
from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Colony,
    ColonyId,
    FrameId,
    FrameStay,
    Hive,
    Housing,
    Part,
    PartId,
    PartStay,
    Stand,
    Visit,
    VisitId,
)
from beeworkbook.comb.contents import Face
from beeworkbook.qt.palette import LIGHT, Palette
from beeworkbook.words import say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.place import Edit, Place
from beeworkbook.workbook.workbook import Workbook

HIVE_FACTS: Final = (Hive, Housing, Part, PartStay, FrameStay)
"""The records a hive of a day is rebuilt from."""


SPOT_FACTS: Final = (*HIVE_FACTS, Apiary, Stand, Colony, Visit)
"""The records whose change may take the ground from under a spot."""


class View(StrEnum):
    """The rooms of the book that take the middle of the window."""

    FIRST = "first"
    ROUND = "round"
    BOX = "box"
    BENCH = "bench"
    STACK = "stack"
    YEAR = "year"
    DAYS = "days"
    PAPERS = "papers"


DEPTHS: Final = (View.ROUND, View.BOX, View.BENCH)
"""Three depths of one picture; one key goes down or up."""


@dataclass(frozen=True)
class Spot:
    """Where the keeper is. `visit_id` None is a day without a visit yet."""

    day: date
    view: View = View.ROUND
    apiary_id: ApiaryId | None = None
    colony_id: ColonyId | None = None
    visit_id: VisitId | None = None
    part_id: PartId | None = None
    frame_id: FrameId | None = None
    face: Face = Face.A


class Desk(QObject):
    """The book and the spot, and the one way to move or to change anything."""

    spot_changed = Signal(object)
    """A Spot, after the keeper went somewhere."""
    book_changed = Signal(object)
    """The Changes of a commit."""
    leafing = Signal(int)
    """The keeper is about to leaf to a later visit (1) or an earlier one (-1)."""
    told = Signal(str)
    """A sentence for the person: a refusal, a read-back, what undo did."""
    palette_changed = Signal(object)
    """A Palette: the window went light or dark."""

    def __init__(self, book: Workbook, palette: Palette = LIGHT, parent: QObject | None = None) -> None:
        """A desk with `book` on it, at the first apiary, today."""
        super().__init__(parent)
        self.book = book
        self._palette = palette
        self._hive: tuple[ColonyId, date, HiveDay | None] | None = None
        self._unsubscribe = book.subscribe(self._changed)
        self.spot = self._settled(Spot(book.today))

    @property
    def today(self) -> date:
        """The day the program takes for today; it can be set for trials."""
        return self.book.today

    @property
    def palette(self) -> Palette:
        """The colours of the chrome now."""
        return self._palette

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        if palette != self._palette:
            self._palette = palette
            self.palette_changed.emit(palette)

    def tell(self, sentence: str) -> None:
        """Show a sentence to the person."""
        self.told.emit(sentence)

    # --- moving -------------------------------------------------------------------------------

    def go(self, **changes: object) -> None:
        """Go somewhere. What is not said is filled in: a colony brings its latest visit, a visit its day."""
        wanted = replace(self.spot, **changes)  # type: ignore[arg-type]
        if "colony_id" in changes and "visit_id" not in changes and wanted.colony_id != self.spot.colony_id:
            wanted = replace(wanted, visit_id=None, part_id=None, frame_id=None)
            if "day" not in changes:
                wanted = self._at_latest_visit(wanted)
        if "day" in changes and "visit_id" not in changes:
            wanted = replace(wanted, visit_id=self._visit_on(wanted.colony_id, wanted.day))
        spot = self._settled(wanted)
        if spot != self.spot:
            self.spot = spot
            self.spot_changed.emit(spot)

    def go_to_place(self, place: Place | None) -> None:
        """Go to where an edit was made, as undo and redo do before they show their work."""
        if place is None:
            return
        changes: dict[str, object] = {
            name: value
            for name, value in (
                ("colony_id", place.colony_id),
                ("visit_id", place.visit_id),
                ("part_id", place.part_id),
                ("frame_id", place.frame_id),
                ("face", place.face),
            )
            if value is not None
        }
        if place.day is not None and not (place.visit_id and self.book.read.get(Visit, place.visit_id)):
            changes.pop("visit_id", None)
            changes["day"] = place.day
        if place.visit_id and place.frame_id and self.spot.view not in {View.BOX, View.BENCH}:
            changes["view"] = View.BOX  # what was drawn is seen there and nowhere else
        if changes:
            self.go(**changes)

    def visits(self) -> tuple[Visit, ...]:
        """The visits of this colony by day."""
        return self.book.read.visits(self.spot.colony_id) if self.spot.colony_id else ()

    def round_days(self) -> tuple[date, ...]:
        """The days of this apiary's rounds, and today, where one may be begun."""
        rounds = self.book.read.rounds(self.spot.apiary_id) if self.spot.apiary_id else ()
        return tuple(sorted({held.day for held in rounds} | {self.today}))

    def leaf_rounds(self, step: int) -> None:
        """Go `step` rounds on or back."""
        days, day = self.round_days(), self.spot.day
        wanted = [other for other in days if (other < day if step < 0 else other > day)]
        if wanted:
            self.go(day=wanted[max(step, -len(wanted))] if step < 0 else wanted[min(step, len(wanted)) - 1])

    def leaf(self, step: int) -> None:
        """Go `step` visits on or back."""
        visits = self.visits()
        if not visits:
            return
        at = next((i for i, visit in enumerate(visits) if visit.id == self.spot.visit_id), None)
        if at is None:
            earlier = sum(visit.day < self.spot.day for visit in visits)
            at = earlier - 1 if step < 0 else earlier
            step = 0
        target = at + step
        if 0 <= target < len(visits):
            later = visits[target].day > self.spot.day
            self.leafing.emit(1 if later else -1)
            self.go(visit_id=visits[target].id)

    def step_comb(self, step: int) -> bool:
        """Go so many combs on in the box; whether there was one."""
        box = self.box()
        frames = [placed.frame.id for placed in box.frames if placed.frame] if box else []
        if self.spot.frame_id not in frames:
            return False
        at = frames.index(self.spot.frame_id) + step
        if not 0 <= at < len(frames):
            return False
        self.go(frame_id=frames[at])
        return True

    # --- what lies here -----------------------------------------------------------------------

    @property
    def visit(self) -> Visit | None:
        """The visit that lies open."""
        return self.book.read.get(Visit, self.spot.visit_id) if self.spot.visit_id else None

    @property
    def colony(self) -> Colony | None:
        """The colony the keeper is at."""
        return self.book.read.get(Colony, self.spot.colony_id) if self.spot.colony_id else None

    @property
    def apiary(self) -> Apiary | None:
        """The apiary the keeper is in."""
        return self.book.read.get(Apiary, self.spot.apiary_id) if self.spot.apiary_id else None

    def hive_day(self) -> HiveDay | None:
        """The hive of this colony as it stood on this day."""
        return self._hive_of(self.spot)

    def box(self) -> PartDay | None:
        """The box the keeper looks into."""
        hive = self.hive_day()
        if hive is None:
            return None
        return next((box for box in hive.boxes if box.part.id == self.spot.part_id), None)

    # --- doing --------------------------------------------------------------------------------

    def do(self, edit: Edit, source: object = None) -> object:
        """Do an edit; a refusal is told to the person and gives None. What it made otherwise."""
        return self._told(lambda: self.book.do(edit, source=source))

    def note(self, edit: Edit, source: object = None) -> object:
        """Do an edit of the visit that lies open, as `do` does; a day without one begins it in the same step.

        The edit's own `visit_id` does not matter.
        """
        return self._told(lambda: self.note_or_refuse(edit, source))

    def note_or_refuse(self, edit: Edit, source: object = None) -> object:
        """As `note`, for whoever says a refusal at its own place. Errors: RefusedError."""
        from beeworkbook.workbook.edits.in_visit import InVisit, with_visit  # late: a start does no edit

        spot = self.spot
        if spot.visit_id is not None:
            return self.book.do(with_visit(edit, spot.visit_id), source=source)
        if spot.colony_id is None:
            raise RefusedError(say("No colony is chosen, so nothing can be noted."))
        return self.book.do(InVisit(spot.colony_id, spot.day, edit), source=source)

    def undo(self) -> None:
        """Take the last step back, and go to its place."""
        label = self.book.undo_label
        if label:
            self.go_to_place(self._place_of(self.book.undo))

    def redo(self) -> None:
        """Do the step again that was taken back, and go to its place."""
        if self.book.redo_label:
            self.go_to_place(self._place_of(self.book.redo))

    def visit_to_write(self) -> VisitId | None:
        """The visit that lies open, begun now if this day has none; None when nothing can be written."""
        if self.spot.visit_id is not None:
            return self.spot.visit_id
        if self.spot.colony_id is None:
            return None
        from beeworkbook.workbook.edits.visit import BeginVisit  # late: a start does no edit

        made = self.do(BeginVisit(self.spot.colony_id, self.spot.day), source=self)
        if made is None:
            return None
        visit_id = VisitId(int(str(made)))
        self.go(visit_id=visit_id)
        return visit_id

    def close(self) -> None:
        """Stop listening to the book."""
        self._unsubscribe()

    # --- within -------------------------------------------------------------------------------

    def _told(self, act: Callable[[], object]) -> object:
        try:
            return act()
        except RefusedError as refusal:
            self.tell(str(refusal))
            return None

    def _place_of(self, act: Callable[[], Place | None]) -> Place | None:
        place = self._told(act)
        return place if isinstance(place, Place) else None

    def _changed(self, changes: Changes) -> None:
        if changes.everything or any(changes.touches(fact) for fact in HIVE_FACTS):
            self._hive = None
        before = self.spot
        if changes.everything or any(changes.touches(fact) for fact in SPOT_FACTS):
            self.spot = self._settled(self.spot)
        if self.spot != before:
            self.spot_changed.emit(self.spot)
        self.book_changed.emit(changes)

    def _hive_of(self, spot: Spot) -> HiveDay | None:
        if spot.colony_id is None:
            return None
        if self._hive is None or self._hive[:2] != (spot.colony_id, spot.day):
            self._hive = (spot.colony_id, spot.day, self.book.read.hive_day(spot.colony_id, spot.day))
        return self._hive[2]

    def _at_latest_visit(self, spot: Spot) -> Spot:
        visits = self.book.read.visits(spot.colony_id) if spot.colony_id else ()
        past = [visit for visit in visits if visit.day <= self.today]
        if spot.view is View.ROUND or not past:
            return replace(spot, visit_id=self._visit_on(spot.colony_id, spot.day))
        return replace(spot, visit_id=past[-1].id, day=past[-1].day)

    def _visit_on(self, colony_id: ColonyId | None, day: date) -> VisitId | None:
        visits = self.book.read.visits(colony_id) if colony_id else ()
        return next((visit.id for visit in visits if visit.day == day), None)

    def _settled(self, spot: Spot) -> Spot:
        """The nearest spot that exists: nothing points to what was removed or stood elsewhere."""
        read = self.book.read
        visit = read.get(Visit, spot.visit_id) if spot.visit_id else None
        if visit is None:
            # The day may have a visit all the same: begun elsewhere, brought back by undo, read in.
            spot = replace(spot, visit_id=self._visit_on(spot.colony_id, spot.day))
        else:
            spot = replace(spot, day=visit.day, colony_id=visit.colony_id)
        if spot.colony_id and read.get(Colony, spot.colony_id) is None:
            spot = replace(spot, colony_id=None, visit_id=None)
        spot = self._in_apiary(spot)
        return self._in_hive(spot)

    def _in_apiary(self, spot: Spot) -> Spot:
        read = self.book.read
        apiaries = read.apiaries()
        if not apiaries:
            return replace(spot, apiary_id=None, colony_id=None, part_id=None, frame_id=None)
        home = read.home(spot.colony_id, spot.day) if spot.colony_id else None
        if home is not None:
            stand = read.get(Stand, home.stand_id)
            if stand is not None:
                return replace(spot, apiary_id=stand.apiary_id)
        known = {apiary.id for apiary in apiaries}
        apiary_id = spot.apiary_id if spot.apiary_id in known else apiaries[0].id
        spot = replace(spot, apiary_id=apiary_id)
        if spot.colony_id is None:
            standing = [place for place in read.standing(apiary_id, spot.day) if place.colony]
            first = standing[0].colony if standing else None
            spot = replace(spot, colony_id=first.id if first else None)
            if first and spot.visit_id is None:
                spot = replace(spot, visit_id=self._visit_on(first.id, spot.day))
        return spot

    def _in_hive(self, spot: Spot) -> Spot:
        hive = self._hive_of(spot)
        if hive is None or not hive.boxes:
            return replace(spot, part_id=None, frame_id=None)
        boxes = {box.part.id: box for box in hive.boxes}
        if spot.part_id not in boxes:
            held = hive.place_of(spot.frame_id) if spot.frame_id else None
            chosen = held[0].part.id if held else (hive.brood_boxes or hive.boxes)[-1].part.id
            spot = replace(spot, part_id=chosen)
        part_id = spot.part_id
        frames = [place.frame.id for place in boxes[part_id].frames if place.frame] if part_id else []
        if spot.frame_id not in frames:
            spot = replace(spot, frame_id=frames[0] if frames else None)
        return spot
