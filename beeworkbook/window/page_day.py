"""The Page of one day: what was noted, the figures of the combs, what happened, the note, what comes next."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from beeworkbook.colony.phrases import closed, level_words, round_words, titled
from beeworkbook.colony.records import Event, EventKind, Queen, Round, Stand, Visit, VisitId
from beeworkbook.colony.sentences import page_rows
from beeworkbook.colony.timeline import event_text
from beeworkbook.qt.desk import Desk, Spot
from beeworkbook.qt.palette import Palette
from beeworkbook.rounds.offers import feed_look_offered, look_offered, take_offer
from beeworkbook.rounds.row import Row, read_row
from beeworkbook.window.page_parts import (
    NoteEdit,
    Told,
    ToldList,
    blanks_gathered,
    label,
    note_lines,
)
from beeworkbook.window.row_table import RowTable
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.line import ClearOnLine, OnLine
from beeworkbook.workbook.edits.visit import SetNote
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.place import Edit
from beeworkbook.workbook.story import visit_story

_NO_VISIT = VisitId(0)


class DayLeaf(QWidget):
    """What was noted of a colony on the desk's day; the note is written here."""

    def __init__(self, desk: Desk) -> None:
        """The leaf of the desk's day."""
        super().__init__()
        self._desk = desk
        self._spot = desk.spot
        self._row: Row | None = None
        self.heading = label("name")
        self.below = label("small")
        self.table = RowTable()
        self.events_head = label("head", say("Events"))
        self.events = ToldList(desk.palette, ruled=False)
        self.note = NoteEdit()
        self.next_head = label("head", say("Next"))
        self.next = ToldList(desk.palette)
        self.offered = label("small")
        self.take = QPushButton(say("Note this day"))
        self.take.setToolTip(say("Note the day that is offered, with its reason"))
        self.take.setAccessibleName(say("Note the day that is offered"))
        self.mention = ToldList(desk.palette, ruled=False)
        self._lay_out()
        self.note.rested.connect(self.keep_note)
        self.take.clicked.connect(self._take_offer)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(15, 8, 15, 12)
        column.setSpacing(3)
        column.addWidget(self.heading)
        column.addWidget(self.below)
        column.addSpacing(6)
        column.addWidget(self.table)
        column.addSpacing(4)
        column.addWidget(self.events_head)
        column.addWidget(self.events)
        column.addSpacing(4)
        column.addWidget(self.note)
        column.addSpacing(6)
        column.addWidget(self.mention)
        column.addSpacing(4)
        column.addWidget(self.next_head)
        column.addWidget(self.next)
        column.addWidget(self.offered)
        column.addWidget(self.take, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        for part in (self.events, self.next, self.mention):
            part.set_palette(palette)

    # --- what it shows ----------------------------------------------------------------------------

    def note_left_behind(self, spot: Spot) -> None:
        """The keeper went to another day or colony: what was typed for the one before is kept first."""
        if (spot.colony_id, spot.day) != (self._spot.colony_id, self._spot.day):
            self.note.keep_now()

    def show_spot(self, spot: Spot) -> None:
        """Show another day or another colony."""
        self.note_left_behind(spot)
        self._spot = spot
        self.refill()

    def refill(self) -> None:
        """Read the day anew."""
        desk, spot = self._desk, self._spot
        long = "long" if spot.day.year == desk.today.year else "long_year"
        self.heading.setText(date_words(spot.day, "long_year" if long == "long_year" else "long"))
        visit = desk.book.read.get(Visit, spot.visit_id) if spot.visit_id is not None else None
        self._row = self._read_row(visit)
        self.below.setText(self._below_words(visit))
        story = visit_story(desk.book.read, visit.id) if visit is not None else None
        self.table.show_rows(blanks_gathered(page_rows(story)) if story is not None else ())
        events = story.events if story is not None else self._events_of_the_day()
        self._show_events([event for event in events if event.kind is not EventKind.HEFT])
        self._show_note(visit)
        self._show_next(visit)
        self.mention.show_lines(note_lines(self._row.notes) if self._row is not None else ())

    def _read_row(self, visit: Visit | None) -> Row | None:
        desk, spot = self._desk, self._spot
        colony = desk.colony
        home = desk.book.read.home(spot.colony_id, spot.day) if spot.colony_id else None
        stand = desk.book.read.get(Stand, home.stand_id) if home else None
        if colony is None or stand is None or visit is None:
            return None
        return read_row(desk.book, stand, colony, spot.day)

    def _below_words(self, visit: Visit | None) -> str:
        if visit is None:
            happened = self._events_of_the_day()
            return say("No visit on this day.") if happened else say("Nothing was noted on this day.")
        read = self._desk.book.read
        its_round = read.get(Round, visit.round_id) if visit.round_id is not None else None
        said = [level_words(visit.level), round_words(its_round) if its_round is not None else ""]
        if visit.at is not None:
            said.append(say("at {time}", time=f"{visit.at:%H:%M}"))
        if visit.who:
            said.append(say("with {who}", who=visit.who))
        return " ".join(closed(titled(text)) for text in said if text)

    def _events_of_the_day(self) -> tuple[Event, ...]:
        """What happened on a day without a visit is told all the same."""
        spot = self._spot
        events = self._desk.book.read.events(spot.colony_id) if spot.colony_id is not None else ()
        return tuple(event for event in events if event.day == spot.day)

    def _show_events(self, events: list[Event]) -> None:
        read = self._desk.book.read
        told = [
            event_text(event, read.get(Queen, event.queen_id) if event.queen_id else None) for event in events
        ]
        self.events.show_lines([Told(titled(text)) for text in told])
        self.events_head.setVisible(bool(events))

    def _show_note(self, visit: Visit | None) -> None:
        can = self._spot.colony_id is not None and not self._desk.book.read_only
        self.note.setReadOnly(not can)
        self.note.setVisible(self._spot.colony_id is not None)
        if not self.note.touched:
            self.note.load(visit.note if visit is not None else "")

    def _show_next(self, visit: Visit | None) -> None:
        dated = []
        if visit is not None and visit.next_day is not None:
            dated.append((visit.next_day, titled(visit.next_reason)))
        if self._row is not None and self._row.feed_look is not None:
            dated.append((self._row.feed_look.day, titled(self._row.feed_look.reason)))
        lines = [Told(date_words(day, "long"), reason) for day, reason in sorted(dated)]
        self.next.show_lines(lines)
        self._show_offer(visit)
        self.next_head.setVisible(bool(lines) or not self.offered.isHidden())

    def _show_offer(self, visit: Visit | None) -> None:
        row = self._row
        offers = []
        if row is not None and visit is not None and visit.next_day is None:
            offers = [held for held in (feed_look_offered(row), look_offered(row)) if held is not None]
        self.offered.setVisible(bool(offers))
        self.take.setVisible(bool(offers) and not self._desk.book.read_only)
        offers.sort(key=lambda held: held.day)
        said = (
            say("Offered: {day}, {reason}", day=date_words(held.day, "weekday"), reason=held.reason)
            for held in offers
        )
        self.offered.setText("\n".join(map(closed, said)))

    # --- keeping ----------------------------------------------------------------------------------

    def keep_note(self) -> None:
        """Keep the note as it stands; a day without a visit gets one with its first word."""
        desk, spot = self._desk, self._spot
        if not self.note.touched or spot.colony_id is None or spot.apiary_id is None:
            return
        text = self.note.text()
        visit = next((v for v in desk.book.read.visits(spot.colony_id) if v.day == spot.day), None)
        if visit is None and not text:
            self.note.touched = False
            return
        change = SetNote(visit.id if visit is not None else _NO_VISIT, text)
        if visit is not None and not text:
            edit: Edit = ClearOnLine(visit.id, change)
        elif visit is not None:
            edit = change
        else:
            edit = OnLine(spot.apiary_id, spot.colony_id, spot.day, (change,))
        if self._do(edit) and not self.note.hasFocus():
            desk.book.end_merge()

    def _do(self, edit: Edit) -> bool:
        """Do it; a refusal is told, and what was typed stays to be kept later."""
        desk, spot = self._desk, self._spot
        try:
            made = desk.book.do(edit, source=self)
        except RefusedError as refusal:
            desk.tell(str(refusal))
            return False
        here = (desk.spot.colony_id, desk.spot.day) == (spot.colony_id, spot.day)
        if isinstance(edit, OnLine) and made is not None and here:
            desk.go(visit_id=made)
        self.note.touched = False  # only now: till here what is typed is not to be read over
        return True

    def _take_offer(self) -> None:
        row, spot = self._row, self._spot
        if row is not None and spot.apiary_id is not None and spot.colony_id is not None:
            edits = take_offer(row)
            if edits:
                self._desk.do(OnLine(spot.apiary_id, spot.colony_id, spot.day, edits), source=self)
