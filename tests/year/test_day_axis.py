"""Days have one place each on the axis, on either half of the world and when years are folded."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.year.day_axis import DayAxis, folded_axis, row_axis, season_axis

NORTH, SOUTH = Hemisphere.NORTH, Hemisphere.SOUTH


def test_a_northern_season_runs_from_march_to_october() -> None:
    axis = season_axis(2026, NORTH)
    assert (axis.since, axis.until) == (date(2026, 3, 1), date(2026, 11, 1))


def test_a_southern_season_runs_from_september_to_april() -> None:
    axis = season_axis(2026, SOUTH)
    assert (axis.since, axis.until) == (date(2026, 9, 1), date(2027, 5, 1))


def test_a_winter_day_lengthens_the_season_to_its_month() -> None:
    axis = season_axis(2026, NORTH, [date(2026, 1, 17), date(2026, 12, 24), date(2025, 2, 1)])
    assert (axis.since, axis.until) == (date(2026, 1, 1), date(2027, 1, 1))


def test_a_row_reaches_from_the_first_month_to_the_last() -> None:
    axis = row_axis([date(2026, 5, 16), date(2025, 4, 2)], NORTH)
    assert (axis.since, axis.until) == (date(2025, 4, 1), date(2026, 6, 1))


def test_a_row_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="day"):
        row_axis([], NORTH)


def test_the_months_of_a_row_say_the_year_where_it_begins() -> None:
    months = row_axis([date(2025, 11, 2), date(2026, 2, 2)], NORTH).months()
    assert [(month.name, month.year) for month in months] == [
        ("Nov", 2025),
        ("Dec", None),
        ("Jan", 2026),
        ("Feb", None),
    ]
    assert [month.place for month in months] == [0.0, 30.0, 61.0, 92.0]


def test_folded_years_lie_on_one_place_a_day() -> None:
    axis = folded_axis(NORTH, [date(2024, 5, 16), date(2026, 5, 16)])
    assert axis.place(date(2024, 5, 16)) == axis.place(date(2025, 5, 16)) == axis.place(date(2026, 5, 16))
    assert axis.place(date(2026, 3, 1)) == 0
    assert all(month.year is None for month in axis.months())


def test_a_folded_axis_reaches_to_the_earliest_day_of_any_year() -> None:
    axis = folded_axis(SOUTH, [date(2026, 8, 20), date(2027, 6, 3)])
    assert axis.shows(date(2026, 8, 20))
    assert axis.shows(date(2027, 6, 3))


@given(st.dates(date(2000, 1, 1), date(2090, 1, 1)), st.sampled_from(list(Hemisphere)))
def test_a_day_is_found_again_at_its_place(day: date, hemisphere: Hemisphere) -> None:
    axis = row_axis([day, day + timedelta(days=400)], hemisphere)
    assert axis.day_at(axis.place(day)) == day
    assert axis.shows(day)
    assert not axis.shows(axis.until)


@given(st.dates(date(2000, 1, 1), date(2090, 1, 1)), st.sampled_from(list(Hemisphere)))
def test_a_folded_day_keeps_its_month_and_day(day: date, hemisphere: Hemisphere) -> None:
    axis = folded_axis(hemisphere, [day])
    found = axis.day_at(axis.place(day))
    if (day.month, day.day) != (2, 29):
        assert (found.month, found.day) == (day.month, day.day)


def test_the_axis_of_a_leap_february_has_its_day() -> None:
    assert DayAxis(date(2024, 2, 1), date(2024, 3, 1)).days == 29
