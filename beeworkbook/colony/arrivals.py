"""The plan of an arrival: what a nucleus, a package, a swarm, a bought or a split colony needs, by day.

Every date comes with its reason. They are offers: the keeper moves or drops them.
"""

from collections.abc import Iterable
from datetime import date, timedelta
from typing import Final

from beeworkbook.colony.dues import FEED_LOOK_DAYS, PlannedDue, days_after, feed_look
from beeworkbook.colony.records import Arrival, DueKind
from beeworkbook.words import say

FIRST_LOOK_DAYS: Final = 7
"""Source: common practice, no source: a nucleus is let alone for about a week."""
VIRGIN_TO_EGGS_DAYS: Final = (14, 21)
"""Days from a virgin's emergence to the look for eggs.

Source: beckybees.blog 2023: two weeks, then a week more.
"""


def arrival_plan(
    arrival: Arrival,
    came_on: date,
    *,
    fed: bool = False,
    queenless: bool = False,
    cast: bool | None = None,
) -> tuple[PlannedDue, ...]:
    """What a colony that has just come needs, by day.

    queenless: it came without a laying queen and raises its own. cast: the swarm has a virgin; None if
    nobody knows. Source: each part of the plan names its own.
    """
    if queenless:
        return _in_order((*_feed_looks(came_on, fed=fed), *_raising_plan(came_on)))
    plans = {
        Arrival.NUCLEUS: _nucleus_plan,
        Arrival.PACKAGE: _package_plan,
        Arrival.BOUGHT: _settling_plan,
        Arrival.SPLIT: _settling_plan,
        Arrival.UNKNOWN: _settling_plan,
    }
    if arrival is Arrival.SWARM:
        return _in_order(
            _cast_plan(came_on, fed=fed) if cast else _swarm_plan(came_on, fed=fed, known=cast is False)
        )
    return _in_order(plans[arrival](came_on, fed=fed))


def _in_order(dues: Iterable[PlannedDue]) -> tuple[PlannedDue, ...]:
    return tuple(sorted(dues, key=lambda due: (due.day, due.kind)))


def _feed_looks(came_on: date, *, fed: bool) -> tuple[PlannedDue, ...]:
    """One look at the feed, or at what there is to eat where none was given. Source: FEED_LOOK_DAYS."""
    soonest, latest = (days_after(came_on, days) for days in FEED_LOOK_DAYS)
    if fed:
        return (feed_look(came_on),)
    return (
        PlannedDue(
            DueKind.FEED_LOOK,
            soonest,
            latest,
            say("no feed was given: heft it, or look under the crown board, have they food?"),
        ),
    )


def _nucleus_plan(came_on: date, *, fed: bool) -> tuple[PlannedDue, ...]:
    """Source: FEED_LOOK_DAYS, FIRST_LOOK_DAYS: common practice, no source."""
    return (
        *_feed_looks(came_on, fed=fed),
        PlannedDue(
            DueKind.FIRST_LOOK,
            days_after(came_on, FIRST_LOOK_DAYS),
            None,
            say("first look, a week after it came: is she laying, is pollen coming in, is comb being drawn?"),
        ),
    )


_CAGE_DAYS: Final = (2, 3)
_PACKAGE_FEED_DAYS: Final = (3, 6)
_PACKAGE_EGG_DAYS: Final = (7, 10)
_PACKAGE_WORKERS_DAYS: Final = 28


def _package_plan(came_on: date, *, fed: bool) -> tuple[PlannedDue, ...]:
    """The plan of a package.

    Source: queen out of her cage 2 to 3 days after hiving, honeybeesuite.com "when should I release the
    queen"; feed every 2 to 3 days, eggs in 7 to 10, numbers falling for 21 days after the first eggs:
    common practice, no source.
    """
    looks = [
        PlannedDue(
            DueKind.FEED_LOOK,
            days_after(came_on, days),
            None,
            say("a package has no comb and no stores: is there feed?")
            if fed
            else say("a package has no comb and no stores, and no feed was noted: feed them"),
        )
        for days in _PACKAGE_FEED_DAYS
    ]
    return (
        PlannedDue(
            DueKind.QUEEN_CAGE,
            days_after(came_on, _CAGE_DAYS[0]),
            days_after(came_on, _CAGE_DAYS[1]),
            say("is the queen out of her cage? Take the empty cage away and leave them in peace"),
        ),
        *looks,
        PlannedDue(
            DueKind.FIRST_LOOK,
            days_after(came_on, _PACKAGE_EGG_DAYS[0]),
            days_after(came_on, _PACKAGE_EGG_DAYS[1]),
            say(
                "first look: are there eggs, is comb being drawn? Their number falls until young bees emerge"
            ),
        ),
        PlannedDue(
            DueKind.LOOK,
            days_after(came_on, _PACKAGE_WORKERS_DAYS),
            None,
            say("the first young workers should be emerging, three weeks after the first eggs"),
        ),
    )


_SWARM_LOOK_DAYS: Final = (7, 10)


def _swarm_plan(came_on: date, *, fed: bool, known: bool) -> tuple[PlannedDue, ...]:
    """Source: first look after 7 to 10 days, for food and laying: common practice, no source."""
    reason = say("first look at the swarm: have they food, are there eggs?")
    if not known:
        reason = say(
            "first look at the swarm: have they food, are there eggs? If it is a cast, eggs come weeks later"
        )
    return (
        *_feed_looks(came_on, fed=fed),
        PlannedDue(
            DueKind.FIRST_LOOK,
            days_after(came_on, _SWARM_LOOK_DAYS[0]),
            days_after(came_on, _SWARM_LOOK_DAYS[1]),
            reason,
        ),
    )


def _cast_plan(came_on: date, *, fed: bool) -> tuple[PlannedDue, ...]:
    """Source: VIRGIN_TO_EGGS_DAYS, the virgin having just emerged; left shut till then, beckybees.blog."""
    look, latest = (days_after(came_on, days) for days in VIRGIN_TO_EGGS_DAYS)
    return (
        *_feed_looks(came_on, fed=fed),
        PlannedDue(
            DueKind.LEAVE_SHUT,
            days_after(came_on, FEED_LOOK_DAYS[1] + 1),
            look - timedelta(days=1),
            say("a cast has a virgin: leave it shut while she mates, look at feed and flying from outside"),
        ),
        PlannedDue(
            DueKind.FIRST_LOOK, look, latest, say("are there eggs? If not, wait a week and look again")
        ),
    )


_RAISING_DAYS: Final = (12, 27)
_RAISING_LOOK_DAYS: Final = (28, 35)


def _raising_plan(came_on: date) -> tuple[PlannedDue, ...]:
    """The plan of a colony that raises its queen.

    Source: a virgin 12 to 13 days after larvae were left to raise one (brood.BROOD_DAYS), left shut from
    then on, beckybees.blog; look for laying after 4 to 5 weeks: common practice, no source.
    """
    return (
        PlannedDue(
            DueKind.LEAVE_SHUT,
            days_after(came_on, _RAISING_DAYS[0]),
            days_after(came_on, _RAISING_DAYS[1]),
            say("they raise a queen: leave it shut from her emergence until there can be eggs"),
        ),
        PlannedDue(
            DueKind.FIRST_LOOK,
            days_after(came_on, _RAISING_LOOK_DAYS[0]),
            days_after(came_on, _RAISING_LOOK_DAYS[1]),
            say("four to five weeks after they were left to raise a queen: are there eggs?"),
        ),
    )


def _settling_plan(came_on: date, *, fed: bool) -> tuple[PlannedDue, ...]:
    """Source: FIRST_LOOK_DAYS: common practice, no source."""
    return (
        *((feed_look(came_on),) if fed else ()),
        PlannedDue(
            DueKind.FIRST_LOOK,
            days_after(came_on, FIRST_LOOK_DAYS),
            None,
            say(
                "first look once they have settled: is she laying, have they food, does the brood look well?"
            ),
        ),
    )
