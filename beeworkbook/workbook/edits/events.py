"""What happened to a colony: dated lines that can be changed and taken back, and the queens they speak of."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

from beeworkbook.colony.hive import overlap
from beeworkbook.colony.records import (
    ENDINGS,
    Colony,
    ColonyId,
    Event,
    EventId,
    EventKind,
    Housing,
    Queen,
    QueenId,
    Visit,
    VisitId,
)
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import the
from beeworkbook.workbook.place import Done, Place, SingleEdit

_DAY: Final = timedelta(days=1)

_EVENT_WORDS: Final[dict[EventKind, str]] = {
    EventKind.ARRIVED: "arrived",
    EventKind.QUEEN_CAME: "a queen came",
    EventKind.QUEEN_SEEN: "queen seen",
    EventKind.QUEEN_MARKED: "queen marked",
    EventKind.QUEEN_GONE: "queen gone",
    EventKind.SWARMED: "swarmed",
    EventKind.SPLIT: "split",
    EventKind.UNITED: "united",
    EventKind.DIED: "died",
    EventKind.SOLD: "sold",
    EventKind.HEFT: "hefted",
    EventKind.MOVED: "moved",
    EventKind.NOTE: "note",
}


def event_words(kind: EventKind) -> str:
    """What an event is called: "queen seen"."""
    return say(_EVENT_WORDS[kind])


@dataclass(frozen=True)
class QueenSpec:
    """A queen as the keeper knows her; the colour of the mark proposes a year and never decides it."""

    name: str = ""
    mark_colour: str = ""
    mark_text: str = ""
    year: int | None = None
    clipped: bool | None = None
    note: str = ""

    def record(self, queen_id: QueenId) -> Queen:
        """The record of this queen."""
        return Queen(
            queen_id,
            self.name,
            self.mark_colour,
            self.mark_text,
            self.year,
            self.clipped,
            self.note,
        )


@dataclass(frozen=True)
class AddEvent(SingleEdit):
    """Something happened to a colony on a day.

    With `queen`, a queen that came is made and one that was marked is changed. A colony that was
    united, sold or has died stands there that day and no longer.
    """

    colony_id: ColonyId
    day: date
    kind: EventKind
    text: str = ""
    visit_id: VisitId | None = None
    queen_id: QueenId | None = None
    other_colony_id: ColonyId | None = None
    queen: QueenSpec | None = None

    def apply(self, tx: Transaction) -> Done:
        """Gives the EventId. Errors: GoneError; RefusedError if the colony lived nowhere when it ended."""
        colony = the(tx, Colony, self.colony_id)
        if self.visit_id is not None:
            the(tx, Visit, self.visit_id)
        event = Event(
            EventId(0),
            self.colony_id,
            self.day,
            self.kind,
            self.text,
            self.visit_id,
            self._queen(tx),
            self.other_colony_id,
        )
        made = tx.add(event)
        if self.kind in ENDINGS:
            _end_housing(tx, self.colony_id, self.day)
        label = say("{colony}: {event}", colony=colony.name, event=event_words(self.kind))
        return Done(made.id, label, _place(made))

    def _queen(self, tx: Transaction) -> QueenId | None:
        if self.queen is None:
            return self.queen_id
        if self.queen_id is None:
            return tx.add(self.queen.record(QueenId(0))).id
        the(tx, Queen, self.queen_id)
        tx.put(self.queen.record(self.queen_id))
        return self.queen_id


@dataclass(frozen=True)
class ChangeEvent:
    """An event as it is now to be; `field` is the one being typed."""

    event: Event
    field: str = ""

    @property
    def merge_key(self) -> str | None:
        """One field of one event."""
        return f"event:{self.event.id}:{self.field}" if self.field else None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if the colony lived nowhere when it ended."""
        before = the(tx, Event, self.event.id)
        if before != self.event:
            was, now = _ending(before), _ending(self.event)
            if was and was != now:
                _reopen_housing(tx, before.colony_id, before.day)
            tx.put(self.event)
            if now and was != now:
                _end_housing(tx, self.event.colony_id, self.event.day)
        return Done(None, say("change: {event}", event=event_words(self.event.kind)), _place(self.event))


@dataclass(frozen=True)
class RemoveEvent(SingleEdit):
    """An event did not happen; a colony it had ended stands there again."""

    event_id: EventId

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        event = the(tx, Event, self.event_id)
        tx.remove(Event, event.id)
        if event.kind in ENDINGS:
            _reopen_housing(tx, event.colony_id, event.day)
        return Done(None, say("take back: {event}", event=event_words(event.kind)), _place(event))


def _ending(event: Event) -> tuple[ColonyId, date] | None:
    return (event.colony_id, event.day) if event.kind in ENDINGS else None


def _end_housing(tx: Transaction, colony_id: ColonyId, day: date) -> None:
    homes = tx.find(Housing, colony_id=colony_id)
    home = next((home for home in homes if home.until is None), None)
    if home is None or home.since > day:
        raise RefusedError(say("This colony lived in no hive on that day."))
    tx.put(replace(home, until=day + _DAY))


def _reopen_housing(tx: Transaction, colony_id: ColonyId, day: date) -> None:
    for home in tx.find(Housing, colony_id=colony_id):
        if home.until != day + _DAY:
            continue
        again = replace(home, until=None)
        others = (*tx.find(Housing, hive_id=home.hive_id), *tx.find(Housing, colony_id=colony_id))
        if any(other.id != home.id and overlap(other, again) for other in others):
            raise RefusedError(say("Another colony has lived in that hive since."))
        tx.put(again)


def _place(event: Event) -> Place:
    return Place(colony_id=event.colony_id, visit_id=event.visit_id)
