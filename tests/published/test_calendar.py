"""Weeks as ISO 8601 counts them."""

from datetime import date

import pytest

from beeworkbook.colony.seasons import iso_week


@pytest.mark.parametrize(
    ("day", "week", "weekday"),
    # ISO 8601 week dates, from memory and worked by hand: the week belongs to the year of its Thursday.
    [
        (date(2020, 12, 31), "2020-W53", 4),
        (date(2021, 1, 3), "2020-W53", 7),
        (date(2024, 12, 30), "2025-W01", 1),
        (date(2027, 1, 1), "2026-W53", 5),
    ],
)
def test_week_of_a_day(day: date, week: str, weekday: int) -> None:
    assert iso_week(day) == week
    assert day.isoweekday() == weekday
