"""The Page at the right of the window: what was noted that day, or beside a round what helps to fill it in.

It only chooses which leaf is shown and follows the desk; the leaves are in page_day.py and page_round.py.
"""

from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from beeworkbook.colony.records import (
    Answer,
    Apiary,
    Colony,
    Due,
    Event,
    Feed,
    Frame,
    FrameStay,
    Hive,
    Housing,
    Level,
    Mark,
    Part,
    PartStay,
    Queen,
    Round,
    Setting,
    Side,
    Stand,
    Visit,
)
from beeworkbook.colony.sentences import PageRow
from beeworkbook.comb.contents import Origin
from beeworkbook.qt.desk import Desk, Spot, View
from beeworkbook.qt.palette import Palette
from beeworkbook.window.page_day import DayLeaf
from beeworkbook.window.page_parts import rule
from beeworkbook.window.page_round import LevelsLegend, RoundLeaf
from beeworkbook.words import say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.in_visit import NO_VISIT
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.visit import SetLevel

_TOLD: Final = (
    Answer, Apiary, Colony, Due, Event, Feed, Frame, FrameStay, Hive, Housing, Mark, Part, PartStay, Queen,
    Round, Setting, Side, Stand, Visit,
)  # fmt: skip
"""The records the Page speaks of."""


class PageView(QWidget):
    """The Page of the desk's colony and day."""

    pointed = Signal(object)
    """The frames the sentence under the pointer or the keyboard came from; empty when none is pointed at."""
    field_asked = Signal(object)
    """The Target of a sentence that came from a line: its field in the round is asked for."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The Page of this desk."""
        super().__init__(parent)
        self._desk = desk
        self._stale = True
        self.setObjectName("board")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.setAccessibleName(say("Page"))
        self.day = DayLeaf(desk)
        self.round = RoundLeaf(desk)
        self.levels = LevelsLegend(desk.palette)
        self._levels_rule = rule()
        self._leaves = QWidget()
        self._leaves.setObjectName("board")
        held = QVBoxLayout(self._leaves)
        held.setContentsMargins(0, 0, 0, 0)
        held.addWidget(self.day)
        held.addWidget(self.round)
        self.scroller = QScrollArea()
        self.scroller.setObjectName("board")
        self.scroller.setFrameShape(QFrame.Shape.NoFrame)
        self.scroller.setWidgetResizable(True)
        self.scroller.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.scroller.setAccessibleName(say("Page"))
        self.scroller.setWidget(self._leaves)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.scroller, 1)
        column.addWidget(self._levels_rule)
        column.addWidget(self.levels)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.levels.level_chosen.connect(self._set_level)
        for table in (self.day.table, self.round.table):
            table.pointed.connect(self.pointed)
            table.chosen.connect(self._lead_to_source)
        desk.spot_changed.connect(self._spot_changed)
        desk.book_changed.connect(self._book_changed)
        desk.palette_changed.connect(self._dress)
        self._show_leaf()

    @property
    def by_round(self) -> bool:
        """Whether the Page stands beside a round."""
        return self._desk.spot.view is View.ROUND

    def take_focus(self) -> None:
        """Put the keyboard on the note; beside a round, where the note is in the line, on the Page itself."""
        self._refresh_if_stale()
        if self.by_round:
            self.scroller.setFocus(Qt.FocusReason.ShortcutFocusReason)
        else:
            self.day.note.setFocus(Qt.FocusReason.ShortcutFocusReason)
            self.scroller.ensureWidgetVisible(self.day.note)

    def finish(self) -> None:
        """Keep the note in hand, as before the window closes."""
        self.day.note.keep_now()

    def refill(self) -> None:
        """Read everything the Page shows anew."""
        self._stale = False
        self._show_leaf()
        leaf = self.round if self.by_round else self.day
        leaf.show_spot(self._desk.spot)
        visit = self._desk.visit
        self.levels.show_level(visit.level if visit is not None else None)

    # --- within -----------------------------------------------------------------------------------

    def _lead_to_source(self, row: PageRow) -> None:
        """A sentence leads to the first comb it came from, or to its field in the round."""
        hive = self._desk.hive_day()
        places = [hive.place_of(frame_id) for frame_id in row.frames] if hive is not None else []
        found = [
            (part.stay.level, place, part.part.id, frame_id)
            for frame_id, held in zip(row.frames, places, strict=False)
            if held is not None
            for part, place in (held,)
        ]
        if self.by_round or not found:
            self.field_asked.emit(row.target)
            return
        _level, _place, part_id, frame_id = min(found)
        view = View.BENCH if self._desk.spot.view is View.BENCH else View.BOX
        self._desk.go(view=view, part_id=part_id, frame_id=frame_id)

    def _set_level(self, level: Level) -> None:
        """Say how far the look of the line in hand went; a day without a visit gets one with it."""
        desk, spot = self._desk, self._desk.spot
        if level is Level.NOT_OPENED and self._saw_combs():
            desk.tell(say("Combs were noted in this visit, so the hive was opened."))
        elif spot.apiary_id is not None and spot.colony_id is not None:
            edit = OnLine(spot.apiary_id, spot.colony_id, spot.day, (SetLevel(NO_VISIT, level),))
            made = desk.do(edit, source=self)
            if made is not None:
                desk.go(visit_id=made)

    def _saw_combs(self) -> bool:
        visit = self._desk.visit
        sides = self._desk.book.read.sides(visit.id) if visit is not None else ()
        return any(side.origin is not Origin.ASSUMED for side in sides)

    def _show_leaf(self) -> None:
        if self.by_round:
            self.day.note.keep_now()
        self.day.setVisible(not self.by_round)
        self.round.setVisible(self.by_round)
        self.levels.setVisible(self.by_round)
        self._levels_rule.setVisible(self.by_round)

    def _spot_changed(self, spot: Spot) -> None:
        self.day.note_left_behind(spot)
        self._refill_or_wait()

    def _book_changed(self, changes: Changes) -> None:
        if changes.everything or any(changes.touches(kind) for kind in _TOLD):
            self._refill_or_wait()

    def _refill_or_wait(self) -> None:
        if self.isVisible():
            self.refill()
        else:
            self._stale = True

    def _refresh_if_stale(self) -> None:
        if self._stale:
            self.refill()

    def _dress(self, palette: Palette) -> None:
        self.day.set_palette(palette)
        self.round.set_palette(palette)
        self.levels.set_palette(palette)

    def showEvent(self, event: QShowEvent) -> None:
        """What changed while nobody looked is read now."""
        super().showEvent(event)
        self._refresh_if_stale()
