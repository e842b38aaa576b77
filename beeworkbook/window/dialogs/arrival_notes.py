"""What the form of an arrival tells before it is agreed to: the plan, and soft notes with their reasons."""

from beeworkbook.colony.feeding import FeedError, parse_feed
from beeworkbook.colony.hive import HiveDay, PartDay
from beeworkbook.colony.plans import arrival_plan
from beeworkbook.colony.records import (
    ColonyId,
    Feed,
    FeedId,
    Hive,
    HiveId,
    Housing,
    HousingId,
    Part,
    PartId,
    PartKind,
    PartStay,
    PartStayId,
    StandId,
)
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.colony.soft_notes import Situation, SoftNote, feed_notes, soft_notes
from beeworkbook.words import NumberError, date_words, say
from beeworkbook.workbook.edits.arrive import ArrivalSpec


def plan_lines(spec: ArrivalSpec) -> tuple[str, ...]:
    """What will be due after this arrival, a line each: the day or days, and why."""
    planned = arrival_plan(
        spec.arrival, spec.came_on, fed=bool(spec.fed.strip()), queenless=spec.queenless, cast=spec.cast
    )
    lines = []
    for due in planned:
        day = date_words(due.day, "weekday")
        if due.until is not None:
            day = say("{day} to {until}", day=day, until=date_words(due.until, "weekday"))
        lines.append(say("{day}: {reason}", day=day, reason=due.reason))
    return tuple(lines) or (say("nothing by itself; the first look sets the next"),)


def arrival_notes(spec: ArrivalSpec, hemisphere: Hemisphere) -> tuple[SoftNote, ...]:
    """What a friend would mention of this arrival: of the parts, the feed, the season. Never a refusal."""
    feed = _feed(spec)
    known = Situation(
        spec.came_on,
        hemisphere,
        hive=_hive(spec),
        feeds=(feed,) if feed is not None else (),
        arrival=spec.arrival,
        came_on=spec.came_on,
        clipped=spec.queen.clipped if spec.queen is not None else None,
    )
    of_the_feed = feed_notes(feed) if feed is not None else ()
    return (*soft_notes(known), *of_the_feed)


def _feed(spec: ArrivalSpec) -> Feed | None:
    try:
        parsed = parse_feed(spec.fed)
    except (FeedError, NumberError):
        return None
    if parsed is None:
        return None
    return Feed(
        FeedId(0),
        ColonyId(0),
        spec.came_on,
        parsed.kind,
        given_litres=parsed.given_litres,
        given_kg=parsed.given_kg,
        sugar_parts=parsed.sugar_parts,
        water_parts=parsed.water_parts,
        typed=spec.fed,
    )


def _hive(spec: ArrivalSpec) -> HiveDay:
    """The hive as it will stand, as far as notes ask: which kinds of part are in it."""
    kinds = [spec.box_kind]
    if spec.excluder:
        kinds.append(PartKind.EXCLUDER)
    kinds += [PartKind.SUPER] * spec.supers
    stack = tuple(
        PartDay(
            Part(PartId(level), kind),
            PartStay(PartStayId(level), PartId(level), HiveId(0), level, spec.came_on),
            (),
        )
        for level, kind in enumerate(kinds)
    )
    housing = Housing(HousingId(0), ColonyId(0), HiveId(0), StandId(0), spec.came_on)
    return HiveDay(spec.came_on, Hive(HiveId(0), spec.hive_name), housing, stack)
