from dataclasses import replace
from datetime import date, timedelta

import pytest

from beeworkbook.colony.feeding import parse_feed
from beeworkbook.colony.figures import visit_figures
from beeworkbook.colony.from_combs import Difference
from beeworkbook.colony.hive import HiveDay, PartDay
from beeworkbook.colony.records import (
    Arrival,
    ColonyId,
    Feed,
    FeedId,
    FeedKind,
    Hive,
    HiveId,
    Housing,
    HousingId,
    Part,
    PartId,
    PartKind,
    PartStay,
    PartStayId,
    Question,
    StandId,
)
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.colony.soft_notes import Situation, feed_notes, is_on, soft_notes
from beeworkbook.comb.contents import Content
from tests.colony.making import DAY, answers, comb, totals

NORTH = Hemisphere.NORTH
PLAIN = Situation(DAY, NORTH)


def hive(*kinds: PartKind) -> HiveDay:
    stack = tuple(
        PartDay(Part(PartId(level), kind), PartStay(PartStayId(level), PartId(level), HiveId(1), level, DAY))
        for level, kind in enumerate(kinds)
    )
    housing = Housing(HousingId(1), ColonyId(1), HiveId(1), StandId(1), DAY)
    return HiveDay(DAY, Hive(HiveId(1), "blue hive"), housing, stack)


def fed(days_ago: int = 1, kind: FeedKind = FeedKind.SYRUP, left: float | None = None) -> Feed:
    day = DAY - timedelta(days=days_ago)
    return Feed(
        FeedId(1),
        ColonyId(1),
        day,
        kind,
        given_litres=2,
        left_litres=left,
        left_day=None if left is None else DAY,
    )


SUPERED = hive(PartKind.FLOOR, PartKind.BROOD_BOX, PartKind.EXCLUDER, PartKind.SUPER, PartKind.ROOF)
NUCLEUS = replace(
    PLAIN, arrival=Arrival.NUCLEUS, came_on=DAY - timedelta(days=5), hive=SUPERED, feeds=(fed(),)
)


def texts(known: Situation) -> str:
    return " ".join(note.text for note in soft_notes(known))


def test_where_nothing_is_known_nothing_is_mentioned() -> None:
    assert soft_notes(PLAIN) == ()


def test_super_and_excluder_on_a_small_nucleus_under_feed() -> None:
    notes = soft_notes(NUCLEUS)
    assert [("super" in note.text, "excluder" in note.text) for note in notes] == [
        (True, False),
        (True, True),
    ]
    assert all(note.reason for note in notes)
    assert texts(replace(NUCLEUS, feeds=())).count("super") == 1
    assert "nucleus" not in texts(replace(NUCLEUS, came_on=DAY - timedelta(days=60)))
    assert texts(replace(NUCLEUS, hive=hive(PartKind.FLOOR, PartKind.NUCLEUS_BOX))) == ""


def test_feeding_under_supers() -> None:
    known = replace(PLAIN, hive=SUPERED, feeds=(fed(),))
    assert "super is on while the colony is fed" in texts(known)
    assert texts(replace(known, feeds=(fed(kind=FeedKind.POLLEN),))) == ""
    assert texts(replace(known, feeds=(fed(left=0.0),))) == ""


@pytest.mark.parametrize(
    ("feed", "on"),
    [
        (fed(1), True),
        (fed(-1), False),
        (fed(21), True),
        (fed(22), False),
        (fed(300), False),
        (fed(40, left=0.5), True),
        (fed(3, left=0.0), False),
    ],
)
def test_feed_is_on_until_it_is_found_empty_or_three_weeks_are_over(feed: Feed, on: bool) -> None:
    assert is_on(feed, DAY) is on


def test_feed_last_seen_long_ago_is_on_no_more() -> None:
    september = replace(fed(left=0.5), day=date(2025, 9, 1), left_day=date(2025, 9, 8))
    assert is_on(september, date(2025, 9, 29))
    known = replace(PLAIN, day=date(2026, 7, 4), hive=SUPERED, feeds=(september,))
    assert texts(known) == ""


@pytest.mark.parametrize(
    ("kg", "hungry"), [("4.4", True), ("4.5", False), ("12", False), ("n", True), ("-", False)]
)
def test_too_little_in_store(kg: str, hungry: bool) -> None:
    figures = visit_figures(totals(said=answers(stores=kg)))
    assert ("feed now" in texts(replace(PLAIN, figures=figures))) is hungry


def test_too_little_in_store_is_said_otherwise_where_feed_was_given() -> None:
    hungry = replace(PLAIN, figures=visit_figures(totals(said=answers(stores="2"))))
    syrup = replace(fed(0), sugar_parts=1.0, water_parts=1.0)
    assert texts(replace(hungry, feeds=(syrup,))) == "Less than 4.5 kg in store, and 2 L 1:1 given today."
    later = replace(hungry, feeds=(syrup,), today=DAY + timedelta(days=1))
    assert texts(later) == "Less than 4.5 kg in store, and 2 L 1:1 given that day."
    assert texts(replace(later, today=DAY)).endswith("given today.")
    lately = texts(replace(hungry, feeds=(replace(syrup, day=DAY - timedelta(days=7)),)))
    assert lately == "Less than 4.5 kg in store, 2 L 1:1 given on 9 May."
    for other in (fed(8), fed(3, left=0.0), fed(0, kind=FeedKind.POLLEN)):
        assert "feed now" in texts(replace(hungry, feeds=(other,)))


def test_a_line_and_combs_that_differ_are_both_named() -> None:
    found = (Difference(Question.EGGS, "4–7", "5–7"), Difference(Question.QUEEN, "5A", "7"))
    (note,) = soft_notes(replace(PLAIN, differences=found))
    assert note.text == "The line says eggs 4–7, the combs 5–7; queen 5A, the combs 7."
    assert "slip of the pen" in note.reason


def test_combs_that_nobody_looked_at_may_hold_stores() -> None:
    figures = visit_figures(totals(*comb(1, {Content.STORES: 2})))
    assert texts(replace(PLAIN, figures=figures)) == ""


def test_parts_of_combs_that_nobody_noted_may_hold_stores() -> None:
    sides = [replace(side, unrecorded_dm2=3.0) for side in comb(1, {Content.STORES: 2})]
    known = replace(PLAIN, figures=visit_figures(totals(*sides, combs=1)))
    assert texts(known) == ""
    whole = replace(PLAIN, figures=visit_figures(totals(*comb(1, {Content.STORES: 2}), combs=1)))
    assert "feed now" in texts(whole)


def test_two_weeks_without_a_look_in_swarm_season() -> None:
    assert "14 days" in texts(replace(PLAIN, last_look=DAY - timedelta(days=14)))
    assert texts(replace(PLAIN, last_look=DAY - timedelta(days=13))) == ""
    winter = date(2026, 12, 20)
    assert texts(replace(PLAIN, day=winter, last_look=winter - timedelta(days=40))) == ""


def test_no_eggs_and_no_open_brood() -> None:
    figures = visit_figures(totals(said=answers(eggs="n", young="n")))
    assert "nine days ago or more" in texts(replace(PLAIN, figures=figures))
    figures = visit_figures(totals(said=answers(eggs="n", young="-")))
    assert texts(replace(PLAIN, figures=figures)) == ""


def test_signs_lead_to_the_inspector_and_come_first() -> None:
    figures = visit_figures(totals(said=answers(stores="1")))
    for typed in ("mummies", "y"):
        notes = soft_notes(replace(PLAIN, figures=figures, signs=answers(signs=typed)[Question.SIGNS]))
        assert "bee inspector" in notes[0].text
    assert texts(replace(PLAIN, signs=answers(signs="n")[Question.SIGNS])) == ""


def test_opening_in_the_cold_and_syrup_in_winter() -> None:
    assert "9 °C" in texts(replace(PLAIN, opened=True, temperature_c=9))
    assert texts(replace(PLAIN, opened=False, temperature_c=9)) == ""
    assert texts(replace(PLAIN, opened=True, temperature_c=18)) == ""
    winter = replace(PLAIN, day=date(2026, 1, 10))
    given = replace(fed(), day=date(2026, 1, 9))
    assert "Syrup is on in winter" in texts(replace(winter, feeds=(given,)))
    assert texts(replace(winter, feeds=(replace(given, kind=FeedKind.FONDANT),))) == ""


@pytest.mark.parametrize(
    ("typed", "supers", "says"),
    [
        ("2 L 2:1", False, ["sets below about 20 °C"]),
        ("2 L 1:1", False, []),
        ("2 L 1:2", False, ["more water than sugar"]),
        ("2 L", False, ["No ratio"]),
        ("1 kg fondant", True, ["A super is on"]),
        ("1 kg pollen", True, []),
    ],
)
def test_notes_on_a_feed_as_it_is_typed(typed: str, supers: bool, says: list[str]) -> None:
    feed = parse_feed(typed)
    assert feed is not None
    notes = feed_notes(feed, supers_on=supers)
    assert len(notes) == len(says)
    for note, text in zip(notes, says, strict=True):
        assert text in note.text
        assert note.reason
