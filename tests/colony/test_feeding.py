from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.feeding import (
    FeedError,
    ParsedFeed,
    ParsedLeft,
    Taken,
    parse_feed,
    parse_left,
    taken,
    write_feed,
    write_left,
)
from beeworkbook.colony.records import ColonyId, Feed, FeedId, FeedKind


def made(feed: ParsedFeed | None, *, left_litres: float | None = None, left_kg: float | None = None) -> Feed:
    assert feed is not None
    return Feed(
        FeedId(1),
        ColonyId(1),
        date(2026, 5, 9),
        feed.kind,
        given_litres=feed.given_litres,
        given_kg=feed.given_kg,
        sugar_parts=feed.sugar_parts,
        water_parts=feed.water_parts,
        left_litres=left_litres,
        left_kg=left_kg,
    )


@pytest.mark.parametrize(
    ("typed", "kind", "litres", "kg", "parts"),
    [
        ("2L 1:1", FeedKind.SYRUP, 2, None, (1, 1)),
        ("1 l 2:1", FeedKind.SYRUP, 1, None, (2, 1)),
        ("500 ml 1:1", FeedKind.SYRUP, 0.5, None, (1, 1)),
        ("2.5 kg fondant", FeedKind.FONDANT, None, 2.5, (None, None)),
        ("2,5kg candy", FeedKind.FONDANT, None, 2.5, (None, None)),
        ("1 kg dry sugar", FeedKind.DRY_SUGAR, None, 1, (None, None)),
        ("0.5 kg pollen patty", FeedKind.POLLEN, None, 0.5, (None, None)),
        ("2 litres of syrup 3/2", FeedKind.SYRUP, 2, None, (3, 2)),
        ("2 1:1", FeedKind.SYRUP, 2, None, (1, 1)),
        ("2 L", FeedKind.SYRUP, 2, None, (None, None)),
        ("14 kg 1:1,25", FeedKind.SYRUP, None, 14, (1, 1.25)),
        ("3 kg other", FeedKind.OTHER, None, 3, (None, None)),
    ],
)
def test_feed_is_typed_as_it_is_said(
    typed: str,
    kind: FeedKind,
    litres: float | None,
    kg: float | None,
    parts: tuple[float | None, float | None],
) -> None:
    feed = parse_feed(typed)
    assert feed == ParsedFeed(kind, litres, kg, *parts, typed)


@pytest.mark.parametrize("typed", ["", " ", "-", "–", "0", "none", "n"])
def test_nothing_given_is_no_feed(typed: str) -> None:
    assert parse_feed(typed) is None


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("3 kg", "what was fed"),
        ("fondant", "how much"),
        ("2 L fondant", "kilograms"),
        ("2 kg fondant 1:1", "Only syrup"),
        ("1 pint 1:1", "land to land"),
        ("2 L 0:1", "sugar to water"),
        ("2 L 1,250:1", "two ways"),
        ("900 L 1:1", "more or less"),
        ("lots", "not an amount"),
        ("2 L 1:1 " + "x" * 60, "note"),
    ],
)
def test_what_is_no_feed_is_said_in_one_sentence(typed: str, says: str) -> None:
    with pytest.raises(FeedError, match=says):
        parse_feed(typed)


@given(
    amount=st.integers(1, 20_000).map(lambda ml: ml / 1000),
    parts=st.sampled_from([(1.0, 1.0), (3.0, 2.0), (2.0, 1.0), (1.0, 1.25), (None, None)]),
    kind=st.sampled_from(FeedKind),
    litres=st.booleans(),
)
def test_feed_written_is_the_feed_typed(
    amount: float, parts: tuple[float | None, float | None], kind: FeedKind, litres: bool
) -> None:
    if kind is not FeedKind.SYRUP:
        parts, litres = (None, None), litres and kind is FeedKind.OTHER
    feed = ParsedFeed(kind, amount if litres else None, None if litres else amount, *parts)
    again = parse_feed(write_feed(feed))
    assert again is not None
    assert (again.kind, again.given_litres, again.given_kg) == (feed.kind, feed.given_litres, feed.given_kg)
    assert (again.sugar_parts, again.water_parts) == parts


@pytest.mark.parametrize(
    ("typed", "litres"),
    [
        ("0.2 L", 0.2),
        ("200 ml", 0.2),
        ("0", 0.0),
        ("none", 0.0),
        ("all", 2.0),
        ("0,5", 0.5),
        ("", None),
        ("-", None),
    ],
)
def test_what_is_left_is_in_what_was_given(typed: str, litres: float | None) -> None:
    feed = parse_feed("2L 1:1")
    assert feed is not None
    assert parse_left(feed, typed) == ParsedLeft(litres=litres)


def test_more_left_than_given_is_a_slip() -> None:
    feed = parse_feed("2 kg fondant")
    assert feed is not None
    for typed in ("3", "1 L", "much"):
        with pytest.raises(FeedError):
            parse_left(feed, typed)
    assert parse_left(feed, "500 g") == ParsedLeft(kg=0.5)


def test_taken_is_given_less_left_and_never_guessed() -> None:
    assert taken(made(parse_feed("2L 1:1"))) is None
    assert taken(made(parse_feed("2L 1:1"), left_litres=0.2)) == Taken(litres=1.8)
    assert taken(made(parse_feed("2 kg fondant"), left_kg=0.0)) == Taken(kg=2.0)
    assert write_left(made(parse_feed("2L 1:1"), left_litres=0.2)) == "0.2 L"
    assert write_left(made(parse_feed("2L 1:1"))) == ""
