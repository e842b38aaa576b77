"""The Page beside a round: the colony in a few words, its brood, last time's note, what is next."""

from datetime import date, timedelta
from operator import itemgetter
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from beeworkbook.colony.figures import VisitFigures, eggs_last_seen
from beeworkbook.colony.hive import HiveDay
from beeworkbook.colony.phrases import bees_value, brood_value, closed, level_words, place_words, titled
from beeworkbook.colony.queens import mark_words
from beeworkbook.colony.records import (
    Arrival,
    Colony,
    Due,
    DueKind,
    Level,
    PartKind,
    Queen,
    Question,
    Stand,
    Visit,
)
from beeworkbook.colony.seasons import season_bounds, season_year
from beeworkbook.colony.sentences import Field, PageRow
from beeworkbook.comb.contents import Content
from beeworkbook.qt.desk import Desk, Spot
from beeworkbook.qt.icons import State
from beeworkbook.qt.palette import Palette
from beeworkbook.rounds.offers import feed_look_offered, look_offered
from beeworkbook.rounds.row import Row, read_row
from beeworkbook.window.brood_bars import BroodBar, BroodBars
from beeworkbook.window.page_parts import Told, ToldList, label, note_lines, rule
from beeworkbook.window.row_table import RowTable
from beeworkbook.words import date_words, say, say_count
from beeworkbook.workbook.story import hemisphere_of, queen_on, season_figures, visit_story

_YEAR: Final = timedelta(days=366)
_LEVELS: Final = (Level.NOT_OPENED, Level.ONE_LINE, Level.BY_COMB, Level.BY_SIDE, Level.PAINTED)


class RoundLeaf(QWidget):
    """What helps to fill in the line in hand."""

    def __init__(self, desk: Desk) -> None:
        """The leaf of the desk's colony."""
        super().__init__()
        self._desk = desk
        self._spot = desk.spot
        self.heading = label("name")
        self.below = label("small")
        self.table = RowTable()
        self.bars = BroodBars(desk.palette)
        self.last_head = label("head")
        self.last_told = label("value")
        self.last_note = label("note")
        self.next = ToldList(desk.palette)
        self.how = label("small")
        self.mention = ToldList(desk.palette, ruled=False)
        self._next_head = label("head", say("Next"))
        self._brood_head = QWidget()
        self._lay_out()

    def _lay_out(self) -> None:
        brood = QHBoxLayout(self._brood_head)
        brood.setContentsMargins(0, 0, 0, 0)
        brood.setSpacing(8)
        brood.addWidget(label("head", say("Brood this season"), wrap=False))
        brood.addWidget(label("small", say("in full combs"), wrap=False), 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(15, 8, 15, 12)
        column.setSpacing(3)
        for widget, above in (
            (self.heading, 0),
            (self.below, 0),
            (rule(), 8),
            (self.table, 2),
            (self._brood_head, 6),
            (self.bars, 0),
            (self.last_head, 6),
            (self.last_told, 0),
            (self.last_note, 2),
            (self.mention, 8),
            (self._next_head, 8),
            (self.next, 2),
            (self.how, 4),
        ):
            column.addSpacing(above)
            column.addWidget(widget)
        column.addStretch(1)

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self.bars.set_palette(palette)
        for part in (self.next, self.mention):
            part.set_palette(palette)

    # --- what it shows ----------------------------------------------------------------------------

    def show_spot(self, spot: Spot) -> None:
        """Show another colony or another day."""
        self._spot = spot
        self.refill()

    def refill(self) -> None:
        """Read the colony anew."""
        desk, spot = self._desk, self._spot
        read = desk.book.read
        colony = read.get(Colony, spot.colony_id) if spot.colony_id is not None else None
        home = read.home(colony.id, spot.day) if colony is not None else None
        stand = read.get(Stand, home.stand_id) if home is not None else None
        self.setVisible(colony is not None)
        if colony is None:
            return
        row = read_row(desk.book, stand, colony, spot.day) if stand is not None else None
        hive = read.hive_day(colony.id, spot.day)
        seen = season_figures(read, colony.id, spot.day - _YEAR, spot.day + timedelta(days=1))
        self.heading.setText(colony.name)
        self.below.setText(hive_words(colony, stand, hive))
        self.table.show_rows(self._summary(colony, seen))
        self._show_bars([of_visit for _visit, of_visit in seen])
        self._show_last(row)
        self._show_next(colony, row)
        self.mention.show_lines(note_lines(row.notes) if row is not None else ())

    def _summary(self, colony: Colony, seen: tuple[tuple[Visit, VisitFigures], ...]) -> tuple[PageRow, ...]:
        figures = [of_visit for _visit, of_visit in seen]
        rows = [
            self._eggs_row(figures),
            self._latest_row(say("Brood"), Question.BROOD, figures),
            self._latest_row(say("Bees"), Question.SEAMS, figures),
            self._queen_row(seen),
        ]
        queen = queen_on(self._desk.book.read, colony.id, self._spot.day)
        mark = _mark(queen, self._spot.day) if queen is not None else ""
        if mark:
            rows.append(PageRow(say("Mark"), mark, Question.QUEEN))
        return tuple(rows)

    def _eggs_row(self, figures: list[VisitFigures]) -> PageRow:
        known = eggs_last_seen(figures, self._spot.day)
        if known is None:
            return PageRow(say("Eggs"), say("not recorded"), Question.EGGS, recorded=False)
        if not known.days:
            said = say("seen on this day") if self._spot.day != self._desk.today else say("seen today")
            where = self._egg_combs()
            return PageRow(
                say("Eggs"),
                say("{seen}, on {combs}", seen=said, combs=where) if where else said,
                Question.EGGS,
            )
        said = say_count(
            known.days, "1 day ago, on {day}", "{n} days ago, on {day}", day=date_words(known.day)
        )
        return PageRow(say("Eggs"), said, Question.EGGS)

    def _egg_combs(self) -> str:
        if self._spot.visit_id is None:
            return ""
        story = visit_story(self._desk.book.read, self._spot.visit_id)
        return story.where(Question.EGGS, Content.EGGS)

    def _latest_row(self, name: str, question: Question, figures: list[VisitFigures]) -> PageRow:
        """The last figure there is, with its day if it is not this one."""
        for of_visit in reversed(figures):
            said = ""
            if question is Question.BROOD and of_visit.brood is not None:
                said = brood_value(of_visit.brood, of_visit)
            elif question is Question.SEAMS and of_visit.bees is not None:
                said = bees_value(of_visit.bees)
            if said:
                return PageRow(name, self._dated(said, of_visit.day), question)
        return PageRow(name, say("not recorded"), question, recorded=False)

    def _dated(self, said: str, day: date) -> str:
        return said if day == self._spot.day else say("{what} ({day})", what=said, day=date_words(day))

    def _queen_row(self, seen: tuple[tuple[Visit, VisitFigures], ...]) -> PageRow:
        read = self._desk.book.read
        for visit, _figures in reversed(seen):
            place = visit_story(read, visit.id).queen_place
            if place is not None:
                where = place_words(place.comb, place.face, place.box)
                day = say("today") if visit.day == self._desk.today else date_words(visit.day)
                said = say("last seen {day}", day=day)
                return PageRow(
                    say("Queen"),
                    say("{seen}, {place}", seen=said, place=where) if where else said,
                    Question.QUEEN,
                )
        return PageRow(say("Queen"), say("not seen on record"), Question.QUEEN, recorded=False)

    def _show_bars(self, figures: list[VisitFigures]) -> None:
        hemisphere = hemisphere_of(self._desk.book)
        since, until = season_bounds(season_year(self._spot.day, hemisphere), hemisphere)
        bars = [
            BroodBar(held.day, held.brood.worth, hollow=held.coarse, at_least=held.at_least)
            for held in figures
            if since <= held.day < until and held.brood is not None and held.brood.worth is not None
        ]
        self.bars.show_bars(bars, self._spot.day)
        self.bars.setVisible(bool(bars))
        self._brood_head.setVisible(bool(bars))

    def _show_last(self, row: Row | None) -> None:
        visit = row.last.visit if row is not None else None
        told = self._told_of(row, visit) if row is not None and visit is not None else ""
        note = visit.note if visit is not None else ""
        self.last_head.setText(say("Last time, {day}", day=date_words(visit.day)) if visit else "")
        self.last_told.setText(told)
        self.last_note.setText(note)
        self.last_head.setVisible(visit is not None)
        self.last_told.setVisible(bool(told))
        self.last_note.setVisible(bool(note))

    def _told_of(self, row: Row, visit: Visit) -> str:
        """What was noted in last time's line and on its combs; the note stands below in its own writing."""
        said = read_row(self._desk.book, row.stand, row.colony, visit.day).said
        told = [phrase.text for phrase in said if phrase.target not in {Field.NEXT, Field.NOTE}]
        if not told:
            return "" if visit.note else say("nothing noted")
        return closed(titled(", ".join(told)))

    def _show_next(self, colony: Colony, row: Row | None) -> None:
        today = self._desk.today
        dated = [(due.day, _due_line(due, today)) for due in self._desk.book.read.dues(colony_id=colony.id)]
        offers = []
        if row is not None and row.now.visit is not None and row.now.visit.next_day is None:
            offers = [due for due in (feed_look_offered(row), look_offered(row)) if due is not None]
        dated += [(due.day, Told(date_words(due.day, "weekday"), due.reason)) for due in offers]
        self.next.show_lines(line for _day, line in sorted(dated, key=itemgetter(0)))
        self.how.setText(say("Offered, not noted: Enter in next takes it.") if offers else "")
        self.how.setVisible(bool(offers))
        self._next_head.setVisible(bool(dated))


def _mark(queen: Queen, day: date) -> str:
    """A queen's mark and year: "blue, of 2025", "unmarked, of 2025", "blue, so perhaps 2025"."""
    if queen.year is None:
        return mark_words(queen.mark_colour, day.year) if queen.mark_colour else ""
    colour = say(queen.mark_colour or "unmarked")
    return say("{colour}, of {year}", colour=colour, year=queen.year)


def _due_line(due: Due, today: date) -> Told:
    day = say("Today") if due.day == today else date_words(due.day, "weekday")
    state = State.PLAIN
    last = due.until or due.day
    if due.kind is DueKind.LEAVE_SHUT:
        state = State.SHUT
    elif last < today:
        state = State.OVERDUE
        day = say("Over since {day}", day=date_words(last, "weekday"))
    elif due.day <= today:
        state = State.SOON
    return Told(day, due.reason, state)


def hive_words(colony: Colony, stand: Stand | None, hive: HiveDay | None) -> str:
    """Where a colony stands, in what, and how it came: "stand 5, one box of 10 combs, swarm of 2025"."""
    said = [say("stand {name}", name=stand.name)] if stand is not None else []
    if hive is not None:
        said += _boxes_words(hive)
    came = {
        Arrival.NUCLEUS: say("nucleus of {year}", year=colony.came_on.year),
        Arrival.PACKAGE: say("package of {year}", year=colony.came_on.year),
        Arrival.SWARM: say("swarm of {year}", year=colony.came_on.year),
        Arrival.BOUGHT: say("bought in {year}", year=colony.came_on.year),
        Arrival.SPLIT: say("split of {year}", year=colony.came_on.year),
    }.get(colony.arrival)
    return ", ".join([*said, *([came] if came else [])])


def _boxes_words(hive: HiveDay) -> list[str]:
    said = []
    boxes = hive.brood_boxes
    combs = sum(1 for box in boxes for place in box.frames if place.frame is not None)
    if len(boxes) == 1:
        said.append(say_count(combs, "one box of 1 comb", "one box of {n} combs"))
    elif boxes:
        said.append(say("{boxes} boxes of {combs} combs", boxes=len(boxes), combs=combs))
    supers = sum(1 for box in hive.boxes if box.part.kind is PartKind.SUPER)
    if supers:
        said.append(say_count(supers, "a super", "{n} supers"))
    return said


class LevelsLegend(QWidget):
    """How far the look went, from not opened to painted; the level of the line in hand stands out.

    A click, or Alt and the digit, says it of the line in hand.
    """

    level_chosen = Signal(object)
    """A Level."""

    def __init__(self, palette: Palette) -> None:
        """The five levels."""
        super().__init__()
        self._level: Level | None = None
        grid = QGridLayout(self)
        grid.setContentsMargins(13, 6, 13, 10)
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(0)
        grid.addWidget(label("small", say("How far the look went")), 0, 0, 1, 2)
        self.keys: dict[Level, QPushButton] = {}
        self._palette = palette
        for at, level in enumerate(_LEVELS):
            self.keys[level] = self._key(at, level)
            grid.addWidget(self.keys[level], 1 + at // 2, at % 2)
        self.show_level(None)

    def _key(self, digit: int, level: Level) -> QPushButton:
        key = QPushButton(say("{digit}   {level}", digit=digit, level=level_words(level)))
        key.setObjectName("level")
        key.setCheckable(True)
        key.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        key.setShortcut(f"Alt+{digit}")
        key.setToolTip(say("This line: {level} (Alt+{digit})", level=level_words(level), digit=digit))
        key.clicked.connect(lambda _on=False: self._choose(level))
        return key

    def _choose(self, level: Level) -> None:
        self.show_level(self._level)  # it stands out once it is kept
        self.level_chosen.emit(level)

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark: the style of the window does it."""
        self._palette = palette

    def show_level(self, level: Level | None) -> None:
        """The level that stands out; None, or a colony passed over, lights none."""
        self._level = level
        for held, key in self.keys.items():
            key.setChecked(held is level)
            words = level_words(held)
            key.setAccessibleName(say("{level}, as here", level=words) if held is level else words)

    @property
    def level(self) -> Level | None:
        """The level that stands out."""
        return self._level
