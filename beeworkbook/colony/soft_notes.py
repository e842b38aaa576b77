"""Soft notes: something a friend at the hive would mention, with its reason. Never a refusal.

Each is a sentence and why; whoever reads it may pass it by.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Final

from beeworkbook.colony.feeding import AFeed, kind_words, write_feed
from beeworkbook.colony.figures import VisitFigures
from beeworkbook.colony.from_combs import Difference
from beeworkbook.colony.hive import HiveDay
from beeworkbook.colony.plans import CLIPPED_MOST_DAYS
from beeworkbook.colony.records import Answer, Arrival, Feed, FeedKind, PartKind, Reply
from beeworkbook.colony.seasons import Hemisphere, Season, season_of
from beeworkbook.colony.signs import sign_advice
from beeworkbook.colony.stores import ALARM_KG
from beeworkbook.colony.syrup import crystallises_below_c
from beeworkbook.colony.written import sign_words
from beeworkbook.words import date_words, number, say, two_figures

SMALL_DAYS: Final = 42
"""For how long a nucleus is taken for small. Source: common practice, no source: six weeks."""
FEED_ON_DAYS: Final = 21
"""For how long feed is taken to be on after it was given or some was last seen left.

Source: common practice, no source: three weeks.
"""
FED_LATELY_DAYS: Final = 7
"""For how long feed given may not yet show in the stores. Source: common practice, no source: a week."""
COLD_C: Final = 15.0
"""Low limit for opening a hive.

Source: a Swiss beekeeping magazine's page on inspections, 2imanagement.ch.
"""
_COOL_C: Final = 10.0
"""A syrup that sets only below this is not mentioned. Source: common practice, no source."""


@dataclass(frozen=True)
class SoftNote:
    """Something worth mentioning, and why."""

    text: str
    reason: str


@dataclass(frozen=True)
class Situation:
    """What is known of a colony on a day, as far as it is known; None and empty are not known.

    today: the day on which it is told, that day itself if None.
    """

    day: date
    hemisphere: Hemisphere
    today: date | None = None
    hive: HiveDay | None = None
    figures: VisitFigures | None = None
    feeds: tuple[Feed, ...] = ()
    arrival: Arrival | None = None
    came_on: date | None = None
    clipped: bool | None = None
    last_look: date | None = None
    opened: bool | None = None
    temperature_c: float | None = None
    signs: Answer | None = None
    differences: tuple[Difference, ...] = ()

    def has(self, kind: PartKind) -> bool:
        """Whether such a part stands in the hive."""
        return self.hive is not None and any(part.part.kind is kind for part in self.hive.stack)


def is_on(feed: Feed, day: date) -> bool:
    """Whether a feed is taken to be on the hive: given lately, or some of it seen left lately.

    Source: FEED_ON_DAYS.
    """
    if feed.day > day:
        return False
    left = feed.left_litres if feed.left_litres is not None else feed.left_kg
    seen = feed.day
    if left is not None and feed.left_day is not None and feed.left_day <= day:
        if left <= 0:
            return False
        seen = feed.left_day
    return (day - seen).days <= FEED_ON_DAYS


def soft_notes(known: Situation) -> tuple[SoftNote, ...]:
    """What there is to mention on that day, the more pressing first.

    Source: each note names its own.
    """
    makers = (
        _signs,
        _hungry,
        _line_and_combs,
        _fed_under_supers,
        _excluder_on_nucleus,
        _long_ago,
        _no_eggs,
        _cold,
        _late_syrup,
    )
    return tuple(note for maker in makers if (note := maker(known)) is not None)


def _signs(known: Situation) -> SoftNote | None:
    """Source: signs.sign_advice."""
    if known.signs is None or known.signs.reply is not Reply.YES:
        return None
    words = sign_words(known.signs) or (say("a sign of disease"),)
    return SoftNote(sign_advice(), say("noted: {signs}", signs=", ".join(words)))


def _hungry(known: Situation) -> SoftNote | None:
    """Source: stores.ALARM_KG, FED_LATELY_DAYS."""
    stores = known.figures.stores if known.figures is not None else None
    if stores is None or stores.doubt.at_least or stores.kg >= ALARM_KG:
        return None
    kg, fed = number(ALARM_KG), _last_feed(known)
    if fed is None:
        return SoftNote(
            say("Less than {kg} kg in store: feed now.", kg=kg),
            say("about two full combs; in a week without a flow it may be gone"),
        )
    if fed.day == known.day:
        given = write_feed(fed)
        text = (
            say("Less than {kg} kg in store, and {feed} given today.", kg=kg, feed=given)
            if known.today is None or known.today == known.day
            else say("Less than {kg} kg in store, and {feed} given that day.", kg=kg, feed=given)
        )
    else:
        text = say(
            "Less than {kg} kg in store, {feed} given on {day}.",
            kg=kg,
            feed=write_feed(fed),
            day=date_words(fed.day),
        )
    return SoftNote(text, say("see in a few days whether it is taken, and give more if it is"))


def _last_feed(known: Situation) -> Feed | None:
    """The feed given last, if it was given lately and nobody found it all taken. Source: FED_LATELY_DAYS."""
    lately = [
        feed
        for feed in known.feeds
        if feed.kind is not FeedKind.POLLEN
        and is_on(feed, known.day)
        and (known.day - feed.day).days <= FED_LATELY_DAYS
    ]
    return max(lately, key=lambda feed: (feed.day, feed.id), default=None)


def _line_and_combs(known: Situation) -> SoftNote | None:
    """Source: at_odds.at_odds."""
    if not known.differences:
        return None
    each = "; ".join(differing.text for differing in known.differences)
    return SoftNote(
        say("The line says {each}.", each=each),
        say("usually a slip of the pen; both stand as you noted them"),
    )


def _fed(known: Situation) -> bool:
    return any(is_on(feed, known.day) and feed.kind is not FeedKind.POLLEN for feed in known.feeds)


def _is_small_nucleus(known: Situation) -> bool:
    return (
        known.arrival is Arrival.NUCLEUS
        and known.came_on is not None
        and 0 <= (known.day - known.came_on).days <= SMALL_DAYS
    )


def _fed_under_supers(known: Situation) -> SoftNote | None:
    """Source: never with supers on, norfolkbeekeepers.org.uk; the nucleus: common practice, no source."""
    if not known.has(PartKind.SUPER) or not _fed(known):
        return None
    if _is_small_nucleus(known):
        return SoftNote(
            say("A super is on this young nucleus while it is fed."),
            say("it has comb to draw below, and syrup carried up makes stores, not honey"),
        )
    return SoftNote(
        say("A super is on while the colony is fed."),
        say("syrup may be carried up into it; what comes of it is stores, not honey"),
    )


def _excluder_on_nucleus(known: Situation) -> SoftNote | None:
    """Source: common practice, no source."""
    if not (_is_small_nucleus(known) and known.has(PartKind.EXCLUDER) and known.has(PartKind.SUPER)):
        return None
    return SoftNote(
        say("An excluder and a super are on this young nucleus."),
        say("few bees pass up through an excluder before the box below is full, and the warmth goes up"),
    )


def _long_ago(known: Situation) -> SoftNote | None:
    """Source: plans.CLIPPED_MOST_DAYS, common practice."""
    if known.last_look is None or season_of(known.day, known.hemisphere) is not Season.SWARMING:
        return None
    days = (known.day - known.last_look).days
    if days < CLIPPED_MOST_DAYS:
        return None
    return SoftNote(
        say("{days} days since the last look, in swarm season.", days=days),
        say(
            "a queen cell is sealed eight days from the egg, and a swarm may go then; clipping only delays it"
        ),
    )


def _no_eggs(known: Situation) -> SoftNote | None:
    """Source: brood.last_egg_days; a week more before judging, beckybees.blog 2023."""
    figures = known.figures
    if figures is None or figures.eggs_seen is not False or figures.young_seen is not False:
        return None
    return SoftNote(
        say("Neither eggs nor open brood were seen: the last egg was laid nine days ago or more."),
        say("perhaps they are between queens; look again in a week before you judge"),
    )


def _cold(known: Situation) -> SoftNote | None:
    """Source: COLD_C."""
    if not known.opened or known.temperature_c is None or known.temperature_c >= COLD_C:
        return None
    return SoftNote(
        say("It was {temperature} °C when the hive was opened.", temperature=number(known.temperature_c)),
        say("below {limit} °C a short look without lifting brood combs is kinder", limit=number(COLD_C)),
    )


def _late_syrup(known: Situation) -> SoftNote | None:
    """Source: common practice, no source: below 10 to 12 °C by day liquid feed is hardly taken."""
    season = season_of(known.day, known.hemisphere)
    given = any(feed.kind is FeedKind.SYRUP and is_on(feed, known.day) for feed in known.feeds)
    if season is not Season.WINTER or not given:
        return None
    return SoftNote(
        say("Syrup is on in winter."),
        say("bees hardly take liquid feed when days stay below 10 to 12 °C; give fondant over the cluster"),
    )


def feed_notes(feed: AFeed, *, supers_on: bool = False) -> tuple[SoftNote, ...]:
    """What there is to mention about a feed as it is typed.

    Source: syrup.crystallises_below_c; feeding under supers as _fed_under_supers.
    """
    notes: list[SoftNote] = []
    if feed.sugar_parts is not None and feed.water_parts is not None:
        notes += _mixture_notes(feed.sugar_parts, feed.water_parts)
    elif feed.kind is FeedKind.SYRUP:
        notes.append(
            SoftNote(
                say("No ratio was said, so its sugar is not counted."),
                say("write sugar to water by weight, as 1:1"),
            )
        )
    if supers_on and feed.kind is not FeedKind.POLLEN:
        notes.append(
            SoftNote(
                say("A super is on: {feed} may be carried up into it.", feed=kind_words(feed.kind)),
                say("what comes of it is stores, not honey"),
            )
        )
    return tuple(notes)


def _mixture_notes(sugar: float, water: float) -> Iterator[SoftNote]:
    """Source: syrup.crystallises_below_c, Bubník and Kadlec 1995; the order of the parts, common practice."""
    below = crystallises_below_c(sugar, water)
    if below is not None and below >= _COOL_C:
        yield SoftNote(
            say("This syrup sets below about {temperature} °C.", temperature=two_figures(below)),
            say("so much sugar is at the edge of what dissolves (Bubník and Kadlec 1995); give it lukewarm"),
        )
    if water > sugar * 1.3:
        yield SoftNote(
            say("This is more water than sugar."),
            say("the first number is sugar, the second water, by weight"),
        )
