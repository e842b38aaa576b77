"""A day as it is typed: what is left out comes from the day that lies nearest."""

from collections.abc import Iterator
from datetime import date

import pytest

from beeworkbook.qt.typed_day import DayError, parse_day
from beeworkbook.words import use_catalogue

TODAY = date(2026, 5, 16)


@pytest.fixture(autouse=True)
def in_english() -> Iterator[None]:
    use_catalogue({})
    yield
    use_catalogue({})


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("12", date(2026, 5, 12)),
        ("19", date(2026, 4, 19)),
        ("12 5", date(2026, 5, 12)),
        ("12.5.26", date(2026, 5, 12)),
        ("12 may", date(2026, 5, 12)),
        ("12 September", date(2025, 9, 12)),
        ("29 Feb", date(2024, 2, 29)),
        ("2024-02-29", date(2024, 2, 29)),
        ("today", TODAY),
        ("", TODAY),
        ("Yesterday", date(2026, 5, 15)),
        ("tomorrow", date(2026, 5, 17)),
        ("-3", date(2026, 5, 13)),
        ("+7", date(2026, 5, 23)),
    ],
)
def test_a_day_behind_is_read(typed: str, day: date) -> None:
    assert parse_day(typed, TODAY) == day


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("19", date(2026, 5, 19)),
        ("3", date(2026, 6, 3)),
        ("3 Jan", date(2027, 1, 3)),
        ("31", date(2026, 5, 31)),
    ],
)
def test_a_day_ahead_is_read(typed: str, day: date) -> None:
    assert parse_day(typed, TODAY, ahead=True) == day


@pytest.mark.parametrize("typed", ["soon", "32", "12 Ma", "31 2 2026", "1 2 3 4", "12 May May", "2026-13-01"])
def test_what_is_no_day_is_refused_in_words(typed: str) -> None:
    with pytest.raises(DayError, match=r"day"):
        parse_day(typed, TODAY)


def test_a_refusal_says_what_can_be_typed_there() -> None:
    with pytest.raises(DayError, match=r"\+7"):
        parse_day("soon", TODAY, ahead=True)
    with pytest.raises(DayError, match="-3"):
        parse_day("soon", TODAY)


def test_months_are_read_in_the_installed_language() -> None:
    use_catalogue({"month: May": "Maj", "today": "dzisiaj"})
    assert parse_day("12 maj", TODAY) == date(2026, 5, 12)
    assert parse_day("dzisiaj", TODAY) == TODAY
