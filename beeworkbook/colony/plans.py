"""The next look after a visit, the earliest there is a reason for, and the reason.

Dates are offers: the keeper moves or drops them. The plan of an arrival is in arrivals.py.
"""

from collections.abc import Collection, Iterable
from datetime import date
from typing import Final

from beeworkbook.colony.answers import AnAnswer
from beeworkbook.colony.arrivals import VIRGIN_TO_EGGS_DAYS, arrival_plan
from beeworkbook.colony.brood import emergence_days, queen_cell_days
from beeworkbook.colony.dues import PlannedDue, bring_words, days_after, feed_look
from beeworkbook.colony.feeding import AFeed, write_feed
from beeworkbook.colony.records import Arrival, Due, DueKind, Mark
from beeworkbook.colony.seasons import Hemisphere, Season, season_of
from beeworkbook.colony.written import cells_said
from beeworkbook.comb.contents import CellFate, CellKind, MarkKind
from beeworkbook.words import date_words, say

__all__ = [
    "PlannedDue",
    "arrival_plan",
    "bring_words",
    "feed_look",
    "is_settling",
    "kinds_left",
    "next_look",
    "offers",
]

SWARM_LOOK_DAYS: Final = 7
"""Source: Southport BKA "Numbers": 7 days; a cell is sealed 8 days from its egg, Davis, Bee Craft 2009."""
CLIPPED_LOOK_DAYS: Final = 10
"""Source: I. Davis, Bee Craft, November 2009: 13 by arithmetic, 10 advised."""
CLIPPED_MOST_DAYS: Final = 14
"""Source: common practice, no source: the longest anyone leaves a clipped queen in swarm season."""
BUILD_UP_LOOK_DAYS: Final = 14
"""Source: common practice, no source."""
LATE_LOOK_DAYS: Final = 18
"""Source: common practice, no source: two to three weeks after mid-August."""
HEFT_DAYS: Final = 28
"""Source: common practice, no source: heft about once a month in winter."""
CHARGED_LOOK_DAYS: Final = 3
"""Source: common practice, no source; a larva is sealed within five days (brood.queen_cell_days)."""
_BEFORE_EMERGENCE: Final = 1
SETTLING_DAYS: Final = 28
"""Source: common practice, no source: a swarm, package or nucleus makes its box up in its first weeks."""
SETTLING_LOOK_DAYS: Final = 7
"""Source: common practice, no source: a young colony is looked at about once a week."""
FULL_BUT: Final = 2
"""Source: common practice, no source: a box with bees in all but its outer seams is full."""
NEAR_DAYS: Final = 3
"""Source: common practice, no source: a look that is due so soon after an offered one will do."""
_SMALL: Final = frozenset({Arrival.NUCLEUS, Arrival.PACKAGE, Arrival.SWARM})
_LOOKS: Final = frozenset({DueKind.LOOK, DueKind.FIRST_LOOK})


def is_settling(
    arrival: Arrival, came_on: date, day: date, *, seams: float | None = None, combs: int = 0
) -> bool:
    """Whether a colony that came small has yet to fill its box, so that it has no mind to swarm.

    seams: of bees, None if nobody said; combs: in the box, 0 if not known.
    Source: SETTLING_DAYS, FULL_BUT.
    """
    if arrival not in _SMALL or not 0 <= (day - came_on).days < SETTLING_DAYS:
        return False
    return seams is None or not combs or seams < combs - FULL_BUT


def next_look(
    day: date,
    *,
    hemisphere: Hemisphere,
    clipped: bool | None = None,
    cells: Collection[CellKind] = (),
    days_since_look: int | None = None,
    virgin_since: date | None = None,
    settling: bool = False,
) -> PlannedDue:
    """When to look again after a look on this day, the earliest there is a reason for, and the reason.

    cells: kinds of queen cell left in the hive. days_since_look: since the look before this one, for how
    long a sealed cell may have been sealed. virgin_since: a virgin emerged then and has not been seen to lay.
    settling: it came small and has yet to fill its box (is_settling).
    Source: each reason names its own.
    """
    if virgin_since is not None:
        return _virgin_look(day, virgin_since)
    looks = []
    if CellKind.SEALED in cells:
        looks.append(_sealed_look(day, days_since_look))
    if CellKind.CHARGED in cells:
        looks.append(_charged_look(day))
    if CellKind.WITH_EGG in cells:
        looks.append(_egg_cell_look(day))
    # Last: on one day the cell is the reason.
    looks.append(_season_look(day, hemisphere, clipped=clipped, settling=settling))
    return min(looks, key=lambda due: due.day)


def _season_look(day: date, hemisphere: Hemisphere, *, clipped: bool | None, settling: bool) -> PlannedDue:
    """Source: SWARM_LOOK_DAYS, CLIPPED_LOOK_DAYS, BUILD_UP_LOOK_DAYS, LATE_LOOK_DAYS, HEFT_DAYS."""
    season = season_of(day, hemisphere)
    if settling and season is not Season.WINTER:
        return _look(
            day,
            SETTLING_LOOK_DAYS,
            say("a week, they are still making up their box: food, laying, is comb being drawn?"),
        )
    if season is Season.SWARMING and clipped:
        return _look(day, CLIPPED_LOOK_DAYS, say("ten days, swarm season, the queen is clipped"))
    if season is Season.SWARMING:
        reason = (
            say("seven days, swarm season, queen not clipped")
            if clipped is False
            else say("seven days, swarm season: a queen cell is sealed eight days from the egg")
        )
        return _look(day, SWARM_LOOK_DAYS, reason)
    if season is Season.BUILD_UP:
        return _look(day, BUILD_UP_LOOK_DAYS, say("two weeks, build-up: food, room, laying"))
    if season is Season.WINTER:
        return _look(day, HEFT_DAYS, say("four weeks, winter: heft it, do not open it"))
    return _look(day, LATE_LOOK_DAYS, say("two to three weeks, swarm season is over: food and laying"))


def _look(day: date, days: int, reason: str) -> PlannedDue:
    return PlannedDue(DueKind.LOOK, days_after(day, days), None, reason)


def _sealed_look(day: date, days_since_look: int | None) -> PlannedDue:
    """Source: a cell sealed k days ago emerges in about 8 less k (brood.emergence_days)."""
    sealed_for = 0 if days_since_look is None else min(days_since_look, 8)
    emerges = emergence_days(sealed_for)
    days = max(1, emerges - _BEFORE_EMERGENCE)
    if sealed_for:
        reason = say(
            "a sealed cell: sealed at the soonest after the last look, a virgin may emerge from {day} on",
            day=date_words(days_after(day, emerges)),
        )
    else:
        reason = say(
            "a sealed cell: a virgin emerges by about {day}", day=date_words(days_after(day, emerges))
        )
    return _look(day, days, reason)


def _charged_look(day: date) -> PlannedDue:
    """Source: CHARGED_LOOK_DAYS, brood.queen_cell_days."""
    latest = (queen_cell_days(CellKind.CHARGED) or (0, 0))[1]
    return _look(
        day,
        CHARGED_LOOK_DAYS,
        say("a charged cell: it is sealed by {day} at the latest", day=date_words(days_after(day, latest))),
    )


def _egg_cell_look(day: date) -> PlannedDue:
    """Source: brood.queen_cell_days; looked at the day before the soonest."""
    soonest = (queen_cell_days(CellKind.WITH_EGG) or (0, 0))[0]
    return _look(
        day,
        soonest - 1,
        say(
            "a queen cell with an egg: it may be sealed from {day} on",
            day=date_words(days_after(day, soonest)),
        ),
    )


def _virgin_look(day: date, virgin_since: date) -> PlannedDue:
    """Source: VIRGIN_TO_EGGS_DAYS."""
    first, later = (days_after(virgin_since, days) for days in VIRGIN_TO_EGGS_DAYS)
    if day < first:
        return PlannedDue(
            DueKind.LOOK, first, later, say("a virgin mates now: leave it shut, then look for eggs")
        )
    return _look(day, 7, say("no eggs yet after a virgin: a week more, then look again"))


def kinds_left(answer: AnAnswer | None, marks: Iterable[Mark] = ()) -> frozenset[CellKind]:
    """The kinds of queen cell left in a hive, from the answer about cells and the marks of the visit.

    A cell knocked down or moved away is not left; where a marked kind has been dealt with in all its
    marks, the answer's word for it no longer counts.
    """
    marked = [mark for mark in marks if mark.kind is MarkKind.QUEEN_CELL and mark.cell_kind is not None]
    gone = {CellFate.KNOCKED_DOWN, CellFate.MOVED}
    left = {mark.cell_kind for mark in marked if mark.fate not in gone}
    dealt_with = {mark.cell_kind for mark in marked} - left
    said = {cell.kind for cell in cells_said(answer)} if answer is not None else set()
    return frozenset(kind for kind in left | (said - dealt_with) if kind is not None)


def offers(  # noqa: PLR0913 - one argument a thing that is known of the colony
    day: date,
    *,
    hemisphere: Hemisphere,
    clipped: bool | None = None,
    cells: Collection[CellKind] = (),
    days_since_look: int | None = None,
    virgin_since: date | None = None,
    settling: bool = False,
    feed: AFeed | None = None,
    due: Collection[Due | PlannedDue] = (),
) -> tuple[PlannedDue, ...]:
    """What a visit offers to note: the next look, and a look at the feed if any was given; earliest first.

    due: what is due for the colony already; an offer that this sees to is not made.
    Source: as next_look and feed_look.
    """
    look = next_look(
        day,
        hemisphere=hemisphere,
        clipped=clipped,
        cells=cells,
        days_since_look=days_since_look,
        virgin_since=virgin_since,
        settling=settling,
    )
    feeds = () if feed is None else (feed_look(day, write_feed(feed)),)
    can_wait = not cells and virgin_since is None
    made = (offer for offer in (look, *feeds) if not _is_seen_to(offer, day, due, can_wait=can_wait))
    return tuple(sorted(made, key=lambda offer: offer.day))


def _is_seen_to(offer: PlannedDue, day: date, due: Collection[Due | PlannedDue], *, can_wait: bool) -> bool:
    """Whether something of its kind is due after this day and no later than offered, or the hive stays shut.

    can_wait: no queen cell sets the day, so that a look some days later will do.
    Source: NEAR_DAYS.
    """
    is_look = offer.kind in _LOOKS
    kinds = _LOOKS if is_look else frozenset({offer.kind})
    last = days_after(offer.until or offer.day, NEAR_DAYS if is_look and can_wait else 0)
    stays_shut = is_look and can_wait and any(_keeps_shut(held, offer.day) for held in due)
    return stays_shut or any(held.kind in kinds and day < held.day <= last for held in due)


def _keeps_shut(due: Due | PlannedDue, day: date) -> bool:
    return due.kind is DueKind.LEAVE_SHUT and due.day <= day <= (due.until or due.day)
