from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.seasons import (
    Hemisphere,
    Season,
    bee_month,
    day_of_season,
    season_bounds,
    season_of,
    season_words,
    season_year,
)

DAYS = st.dates(date(1990, 1, 1), date(2060, 12, 31))
NORTH, SOUTH = Hemisphere.NORTH, Hemisphere.SOUTH


@given(DAYS, st.sampled_from(Hemisphere))
def test_every_day_lies_within_its_season_year(day: date, hemisphere: Hemisphere) -> None:
    since, until = season_bounds(season_year(day, hemisphere), hemisphere)
    assert since <= day < until
    assert 1 <= day_of_season(day, hemisphere) <= 365


@given(DAYS, DAYS, st.sampled_from(Hemisphere))
def test_the_same_date_has_the_same_place_in_every_year(
    day: date, other: date, hemisphere: Hemisphere
) -> None:
    if (day.month, day.day) == (2, 29):
        day -= timedelta(days=1)
    assert day_of_season(day, hemisphere) == day_of_season(day.replace(year=other.year), hemisphere)


@given(DAYS)
def test_the_south_is_half_a_year_away(day: date) -> None:
    assert (bee_month(day, SOUTH) - bee_month(day, NORTH)) % 12 == 6


@pytest.mark.parametrize(
    ("day", "hemisphere", "season"),
    [
        (date(2026, 1, 15), NORTH, Season.WINTER),
        (date(2026, 3, 20), NORTH, Season.BUILD_UP),
        (date(2026, 5, 16), NORTH, Season.SWARMING),
        (date(2026, 8, 20), NORTH, Season.LATE_SUMMER),
        (date(2026, 10, 1), NORTH, Season.AUTUMN),
        (date(2026, 11, 16), SOUTH, Season.SWARMING),
        (date(2026, 7, 15), SOUTH, Season.WINTER),
    ],
)
def test_the_season_of_a_day(day: date, hemisphere: Hemisphere, season: Season) -> None:
    assert season_of(day, hemisphere) is season


def test_leap_days_shift_no_other_day() -> None:
    assert day_of_season(date(2024, 2, 29), NORTH) == day_of_season(date(2024, 2, 28), NORTH) == 59
    assert day_of_season(date(2024, 3, 1), NORTH) == day_of_season(date(2025, 3, 1), NORTH) == 60
    assert day_of_season(date(2024, 3, 1), SOUTH) == day_of_season(date(2025, 3, 1), SOUTH)


def test_seasons_have_words() -> None:
    assert len({season_words(season) for season in Season}) == len(Season)
