"""A due before it is kept: what is to be done on a day, and why, in words a keeper reads.

When things are due is in arrivals.py and plans.py.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from beeworkbook.colony.records import Due, DueKind
from beeworkbook.words import date_words, say, say_count

FEED_LOOK_DAYS: Final = (2, 3)
"""Source: common practice, no source: feed is looked at after two or three days."""


@dataclass(frozen=True)
class PlannedDue:
    """Something to do on a day, and why. `until` is the last day of a range, included."""

    kind: DueKind
    day: date
    until: date | None
    reason: str


def days_after(day: date, days: int) -> date:
    """The day so many days later."""
    return day + timedelta(days=days)


def feed_look(given_on: date, what: str = "") -> PlannedDue:
    """When to look at feed that was given: how much is left, is more wanted.

    Source: FEED_LOOK_DAYS.
    """
    soonest, latest = (days_after(given_on, days) for days in FEED_LOOK_DAYS)
    day = date_words(given_on)
    reason = (
        say("{feed} given on {day}: how much is left?", feed=what, day=day)
        if what
        else say("feed given on {day}: how much is left?", day=day)
    )
    return PlannedDue(DueKind.FEED_LOOK, soonest, latest, reason)


def bring_words(dues: Iterable[Due | PlannedDue]) -> tuple[str, ...]:
    """What to carry for these dues, each thing once, in the order of the dues.

    A due to bring something says it itself. Source: common practice, no source.
    """
    things: dict[str, None] = {}
    for due in dues:
        if due.kind is DueKind.BRING:
            things[due.reason] = None
        elif due.kind is DueKind.FEED_LOOK:
            things[say("feed")] = None
        elif due.kind is DueKind.QUEEN_CAGE:
            things[say("a frame to close the gap of the cage")] = None
    return tuple(things)


def due_words(kind: DueKind) -> str:
    """A kind of due in words: "feed look"."""
    words = {
        DueKind.LOOK: say("look"),
        DueKind.FEED_LOOK: say("feed look"),
        DueKind.FIRST_LOOK: say("first look"),
        DueKind.QUEEN_CAGE: say("queen cage"),
        DueKind.LEAVE_SHUT: say("leave shut"),
        DueKind.BRING: say("bring"),
        DueKind.OTHER: say("to do"),
    }
    return words[kind]


def days_words(day: date, today: date) -> str:
    """How far off a due is: "today", "in 4 days", "3 days over"."""
    days = (day - today).days
    if not days:
        return say("today")
    if days > 0:
        return say_count(days, "in 1 day", "in {n} days")
    return say_count(-days, "1 day over", "{n} days over")
