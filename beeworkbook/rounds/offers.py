"""What a line offers for its next day, in words, and the edits that take the offer."""

from datetime import date
from typing import Final

from beeworkbook.colony.dues import PlannedDue
from beeworkbook.colony.records import DueKind, DueState, VisitId
from beeworkbook.rounds.row import Row
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.edits.visit import SetNext
from beeworkbook.workbook.place import Edit

TAKES: Final = frozenset("=.")
"""The keys that take what is offered."""


def short_day(day: date) -> str:
    """A day in the room a column has: "19 May", "3 Sep"."""
    return date_words(day, "short")


def look_offered(row: Row) -> PlannedDue | None:
    """The next look that is offered, not the look at the feed."""
    return next((due for due in row.offers if due.kind is not DueKind.FEED_LOOK), None)


def feed_look_offered(row: Row) -> PlannedDue | None:
    """The look at the feed that is offered; None once this visit has put one down."""
    if row.feed_look is not None and row.feed_look.state is not DueState.DROPPED:
        return None
    return next((due for due in row.offers if due.kind is DueKind.FEED_LOOK), None)


def offer_words(row: Row) -> str:
    """All that is offered, with reasons: "23 May: seven days, swarm season; 18 May: feed look"."""
    said = [
        say("{day}: {reason}", day=date_words(due.day, "weekday"), reason=due.reason)
        for due in (feed_look_offered(row), look_offered(row))
        if due is not None
    ]
    return "; ".join(said)


def take_offer(row: Row) -> tuple[Edit, ...]:
    """The edits that note the offered look, and put down the look at the feed; none if nothing is offered."""
    look, feed = look_offered(row), feed_look_offered(row)
    edits: list[Edit] = []
    if feed is not None:
        edits.append(
            AddDue(feed.kind, feed.day, feed.reason, row.colony.id, None, feed.until, visit_id=VisitId(0))
        )
    if look is not None:
        edits.append(SetNext(VisitId(0), look.day, look.reason))
    return tuple(edits)


def set_day(row: Row, day: date) -> tuple[Edit, ...]:
    """The edit that notes a typed day; the reason is the offer's own where it is the day that was offered."""
    look = look_offered(row)
    reason = look.reason if look is not None and look.day == day else ""
    return (SetNext(VisitId(0), day, reason),)
