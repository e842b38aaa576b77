"""Feed given and left, and a hive hefted: dated facts of a colony, typed into a visit or without one."""

from dataclasses import dataclass, replace
from datetime import date

from beeworkbook.colony.feeding import FeedError, parse_feed, parse_left
from beeworkbook.colony.records import (
    Colony,
    ColonyId,
    Due,
    DueKind,
    DueState,
    Event,
    EventId,
    EventKind,
    Feed,
    FeedId,
    Visit,
    VisitId,
)
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import NumberError, say
from beeworkbook.workbook.errors import NotReadableError, RefusedError
from beeworkbook.workbook.found import the
from beeworkbook.workbook.place import Done, Place


def give_feed(
    tx: Transaction, colony_id: ColonyId, day: date, typed: str, *, visit_id: VisitId | None = None
) -> FeedId | None:
    """Keep what was fed as typed; in a visit it takes the place of what was typed there before.

    Gives the feed's id, None if nothing was given.
    Errors: NotReadableError.
    """
    present = next(iter(tx.find(Feed, visit_id=visit_id)), None) if visit_id is not None else None
    try:
        parsed = parse_feed(typed)
    except (FeedError, NumberError) as error:
        raise NotReadableError(str(error), getattr(error, "position", None)) from error
    if parsed is None:
        if present is not None:
            tx.remove(Feed, present.id)
        return None
    base = present or Feed(FeedId(0), colony_id, day, parsed.kind, visit_id)
    feed = replace(
        base,
        kind=parsed.kind,
        given_litres=parsed.given_litres,
        given_kg=parsed.given_kg,
        sugar_parts=parsed.sugar_parts,
        water_parts=parsed.water_parts,
        typed=typed.strip(),
    )
    if present is None:
        return tx.add(feed).id
    if feed != present:
        tx.put(feed)
    return feed.id


@dataclass(frozen=True)
class GiveFeed:
    """Feed given, typed as it is said: "2L 1:1". With a visit it is that visit's field; empty clears it."""

    colony_id: ColonyId
    day: date
    typed: str
    visit_id: VisitId | None = None

    @property
    def merge_key(self) -> str | None:
        """The feed field of one visit."""
        return None if self.visit_id is None else f"feed:{self.visit_id}"

    def apply(self, tx: Transaction) -> Done:
        """Gives the FeedId, or None. Errors: GoneError; NotReadableError."""
        colony = the(tx, Colony, self.colony_id)
        if self.visit_id is not None:
            the(tx, Visit, self.visit_id)
        made = give_feed(tx, self.colony_id, self.day, self.typed, visit_id=self.visit_id)
        label = say("feed {colony}", colony=colony.name)
        return Done(made, label, Place(colony_id=self.colony_id, visit_id=self.visit_id))


@dataclass(frozen=True)
class SetFeedLeft:
    """What was left of a feed when it was looked at; empty is not looked at, which is not nothing left."""

    feed_id: FeedId
    typed: str
    day: date
    visit_id: VisitId | None = None

    @property
    def merge_key(self) -> str | None:
        """What is left of one feed."""
        return f"left:{self.feed_id}"

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; NotReadableError; RefusedError if it was looked at before it was given."""
        feed = the(tx, Feed, self.feed_id)
        after = self._noted(feed) if self.typed.strip() else self._blank(feed)
        if after != feed:
            tx.put(after)
        _settle(tx, feed, after)
        place = Place(colony_id=feed.colony_id, visit_id=self.visit_id)
        return Done(None, say("note what was left of the feed"), place)

    def _noted(self, feed: Feed) -> Feed:
        if self.day < feed.day:
            raise RefusedError(say("What is left of a feed is seen after it was given, not before."))
        try:
            left = parse_left(feed, self.typed)
        except (FeedError, NumberError) as error:
            raise NotReadableError(str(error), getattr(error, "position", None)) from error
        return replace(
            feed,
            left_litres=left.litres,
            left_kg=left.kg,
            left_day=self.day,
            left_visit_id=self.visit_id,
        )

    @staticmethod
    def _blank(feed: Feed) -> Feed:
        return replace(feed, left_litres=None, left_kg=None, left_day=None, left_visit_id=None)


def _settle(tx: Transaction, before: Feed, after: Feed) -> None:
    """On a day without a visit, a feed that was looked at is a feed look done all the same, and back.

    A visit of that day is settled with all it notes (settling.py).
    """
    day = after.left_day or before.left_day
    if day is None or tx.find(Visit, colony_id=after.colony_id, day=day):
        return
    state = DueState.OPEN if after.left_day is None else DueState.DONE
    for due in tx.find(Due, colony_id=after.colony_id, kind=DueKind.FEED_LOOK):
        by_visit = due.done_visit_id is not None or due.state is DueState.DROPPED
        if before.day < due.day <= day and not by_visit and due.state is not state:
            tx.put(replace(due, state=state))


@dataclass(frozen=True)
class SetHeft:
    """The pulls at the left and right of a hive. Units: kg each. Both None: not hefted."""

    colony_id: ColonyId
    day: date
    left_kg: float | None
    right_kg: float | None
    visit_id: VisitId | None = None

    @property
    def merge_key(self) -> str | None:
        """The heft of one colony and day."""
        return f"heft:{self.colony_id}:{self.day}"

    def apply(self, tx: Transaction) -> Done:
        """Gives the EventId, or None. Errors: GoneError; RefusedError if a pull is negative."""
        colony = the(tx, Colony, self.colony_id)
        if any(pull is not None and not pull >= 0 for pull in (self.left_kg, self.right_kg)):
            raise RefusedError(say("A hive pulls down: give the kilograms as a positive number."))
        made = self._keep(tx)
        label = say("heft {colony}", colony=colony.name)
        return Done(made, label, Place(colony_id=self.colony_id, visit_id=self.visit_id))

    def _keep(self, tx: Transaction) -> EventId | None:
        found = tx.find(Event, colony_id=self.colony_id, day=self.day, kind=EventKind.HEFT)
        present = next(iter(found), None)
        if self.left_kg is None and self.right_kg is None:
            if present is not None:
                tx.remove(Event, present.id)
            return None
        if present is None:
            heft = Event(EventId(0), self.colony_id, self.day, EventKind.HEFT, visit_id=self.visit_id)
            return tx.add(replace(heft, left_kg=self.left_kg, right_kg=self.right_kg)).id
        after = replace(present, left_kg=self.left_kg, right_kg=self.right_kg)
        if after != present:
            tx.put(after)
        return after.id
