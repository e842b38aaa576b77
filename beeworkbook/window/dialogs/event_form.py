"""Something happened to a colony: a dated line, new or changed. Only the fields it needs are shown."""

from dataclasses import replace
from datetime import date
from typing import Final

from PySide6.QtWidgets import QWidget

from beeworkbook.colony.queens import MARK_COLOURS
from beeworkbook.colony.records import ENDINGS, Colony, ColonyId, Event, EventKind, Queen
from beeworkbook.qt.desk import Desk
from beeworkbook.window.dialogs.form import Choice, DayLine, FieldError, Form, NumberLine, TextLine
from beeworkbook.window.dialogs.naming import queen_of
from beeworkbook.words import say
from beeworkbook.workbook.edits.events import AddEvent, ChangeEvent, QueenSpec, event_words
from beeworkbook.workbook.edits.feed import SetHeft
from beeworkbook.workbook.edits.place import ChangeRecord
from beeworkbook.workbook.edits.together import Together
from beeworkbook.workbook.place import Edit

OFFERED: Final = (
    EventKind.QUEEN_SEEN,
    EventKind.QUEEN_CAME,
    EventKind.QUEEN_MARKED,
    EventKind.QUEEN_GONE,
    EventKind.SWARMED,
    EventKind.SPLIT,
    EventKind.UNITED,
    EventKind.HEFT,
    EventKind.DIED,
    EventKind.SOLD,
    EventKind.NOTE,
)
SUPERSEDED: Final = "superseded"
"""A worded choice for two lines of one day: the old queen gone, and the young one come in her place."""
_OF_A_QUEEN: Final = frozenset({EventKind.QUEEN_CAME, EventKind.QUEEN_MARKED})
_WITH_ANOTHER: Final = frozenset({EventKind.UNITED, EventKind.SPLIT})


class EventForm(Form):
    """Asks for one dated line of a colony."""

    def __init__(
        self, parent: QWidget | None, desk: Desk, colony: Colony, event: Event | None = None
    ) -> None:
        """A form for a new line, or for one that is to be changed."""
        title = say("Something happened to {colony}", colony=colony.name)
        super().__init__(parent, title, say("Note it") if event is None else say("Keep"))
        self._desk, self._colony, self._event = desk, colony, event
        queen = desk.book.read.get(Queen, event.queen_id) if event is not None and event.queen_id else None
        self._queen = queen
        self._build(event, queen)
        self.kind.on_change(self._kind_changed)
        self.add_check(self._has_a_heft)
        self._kind_changed()

    @property
    def chosen(self) -> EventKind:
        """What happened; of a queen superseded, that the young one came."""
        return EventKind.QUEEN_CAME if self.is_superseded else EventKind(str(self.kind.value))

    @property
    def is_superseded(self) -> bool:
        """Whether a young queen took the place of the old one."""
        return self.kind.value == SUPERSEDED

    def ask_and_keep(self) -> bool:
        """Show the form; when it is agreed to the line is kept. A refusal stays in the form."""
        return self.ask(lambda: self._desk.book.do(self.edit(), source=self))

    def edit(self) -> Edit:
        """What was entered, as one step."""
        if self._event is not None:
            return self._changing(self._event)
        day, kind = self.day.day, self.chosen
        if kind is EventKind.HEFT:
            return SetHeft(self._colony.id, day, self.left.number, self.right.number)
        if self.is_superseded:
            return self._superseding(day)
        present = queen_of(self._desk, self._colony.id) if kind is EventKind.QUEEN_MARKED else None
        return AddEvent(
            self._colony.id,
            day,
            kind,
            self.text.text,
            queen_id=present.id if present is not None else None,
            other_colony_id=self._other(kind),
            queen=self._spec(present) if kind in _OF_A_QUEEN else None,
        )

    # --- building -----------------------------------------------------------------------------------

    def _build(self, event: Event | None, queen: Queen | None) -> None:
        desk = self._desk
        kinds: list[EventKind] = list(OFFERED)
        if event is not None and event.kind not in kinds:
            kinds.append(event.kind)
        options: list[tuple[str, object]] = [(event_words(kind), kind) for kind in kinds]
        if event is None:
            words = say("superseded: a young queen in the old one’s place")
            options.insert(kinds.index(EventKind.QUEEN_GONE) + 1, (words, SUPERSEDED))
        self.kind = self.add(Choice(say("What"), options, event.kind if event else None))
        self.day = self.add(DayLine(say("Day"), event.day if event else desk.spot.day, desk.today))
        self.text = self.add(TextLine(say("In words"), event.text if event else ""))
        others: list[tuple[str, object]] = [(say("none"), None)]
        found = sorted(desk.book.read.find(Colony), key=lambda colony: colony.name.casefold())
        others += [(colony.name, colony.id) for colony in found if colony.id != self._colony.id]
        self.other = self.add(
            Choice(
                say("Other colony"),
                others,
                event.other_colony_id if event else None,
                hint=say("united with, or split from"),
            )
        )
        colours = [(say("unmarked"), ""), *((say(colour), colour) for colour in MARK_COLOURS)]
        self.mark = self.add(Choice(say("Queen’s mark"), colours, queen.mark_colour if queen else None))
        self.year = self.add(NumberLine(say("Queen’s year"), queen.year if queen else None))
        clipped = [(say("not known"), None), (say("no"), False), (say("yes"), True)]
        self.clipped = self.add(Choice(say("Wing clipped"), clipped, queen.clipped if queen else None))
        self.left = self.add(NumberLine(say("Left, kg"), event.left_kg if event else None))
        self.right = self.add(
            NumberLine(
                say("Right, kg"),
                event.right_kg if event else None,
                hint=say("the pull on each side; lift a hive only a little, with a straight back"),
            )
        )

    def _kind_changed(self) -> None:
        kind = self.chosen
        self.show_field(self.text, shown=kind is not EventKind.HEFT)
        self.show_field(self.other, shown=kind in _WITH_ANOTHER)
        for field in (self.mark, self.year, self.clipped):
            self.show_field(field, shown=kind in _OF_A_QUEEN)
        for field in (self.left, self.right):
            self.show_field(field, shown=kind is EventKind.HEFT)

    def _has_a_heft(self) -> None:
        if self.chosen is EventKind.HEFT and self.left.number is None and self.right.number is None:
            raise FieldError(say("Give the pull on one side at least."), self.left)

    # --- reading --------------------------------------------------------------------------------------

    def _other(self, kind: EventKind) -> ColonyId | None:
        chosen = self.other.value
        return ColonyId(chosen) if kind in _WITH_ANOTHER and isinstance(chosen, int) else None

    def _spec(self, present: Queen | None = None) -> QueenSpec:
        """The queen as entered; what was left blank of a queen already known stays as it was."""
        clipped = self.clipped.value if isinstance(self.clipped.value, bool) else None
        year, colour = self.year.whole, str(self.mark.value or "")
        if present is None:
            return QueenSpec(mark_colour=colour, year=year, clipped=clipped)
        return QueenSpec(
            present.name,
            colour,
            present.mark_text,
            present.year if year is None else year,
            present.clipped if clipped is None else clipped,
            present.note,
        )

    def _superseding(self, day: date) -> Edit:
        """The old queen gone and the young one come, as one step; what was said in words stands with her."""
        old = queen_of(self._desk, self._colony.id)
        gone = AddEvent(
            self._colony.id,
            day,
            EventKind.QUEEN_GONE,
            say("superseded"),
            queen_id=old.id if old is not None else None,
        )
        told = ", ".join(filter(None, (say("by supersedure"), self.text.text)))
        came = AddEvent(self._colony.id, day, EventKind.QUEEN_CAME, told, queen=self._spec())
        return Together((gone, came), say("{colony}: queen superseded", colony=self._colony.name))

    def _changing(self, event: Event) -> Edit:
        kind = self.chosen
        is_heft = kind is EventKind.HEFT
        after = replace(
            event,
            day=self.day.day,
            kind=kind,
            text="" if is_heft else self.text.text,
            other_colony_id=self._other(kind),
            left_kg=self.left.number if is_heft else None,
            right_kg=self.right.number if is_heft else None,
        )
        if self._queen is None or kind not in _OF_A_QUEEN:
            return ChangeEvent(after)
        spec = self._spec()
        queen = replace(self._queen, mark_colour=spec.mark_colour, year=spec.year, clipped=spec.clipped)
        return Together(
            (ChangeRecord(queen), ChangeEvent(after)), say("change: {event}", event=event_words(kind))
        )


def ends(kind: EventKind) -> bool:
    """Whether the colony no longer stands from the day after."""
    return kind in ENDINGS
