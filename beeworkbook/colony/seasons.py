"""The bees' year on either half of the world: which season a day is in, and its place on a year's axis.

The hemisphere is a setting of the workbook; the day is handed in.
"""

from datetime import date, timedelta
from enum import StrEnum
from typing import Final

from beeworkbook.words import say

_HALF_YEAR: Final = 6
_SOUTHERN_START: Final = 7


class Hemisphere(StrEnum):
    """Which half of the world the apiary is on."""

    NORTH = "north"
    SOUTH = "south"


class Season(StrEnum):
    """The parts of a colony's year that change what is asked of its keeper."""

    WINTER = "winter"
    BUILD_UP = "build_up"
    SWARMING = "swarming"
    LATE_SUMMER = "late_summer"
    AUTUMN = "autumn"


_MONTHS: Final = (
    Season.WINTER,  # January
    Season.WINTER,
    Season.BUILD_UP,
    Season.SWARMING,
    Season.SWARMING,
    Season.SWARMING,
    Season.SWARMING,
    Season.LATE_SUMMER,
    Season.AUTUMN,
    Season.AUTUMN,
    Season.WINTER,
    Season.WINTER,
)
"""By month of a northern temperate year.

Source: swarm season May to July with its peak from late May to June, Trunch Beekeeping queen-cell guide;
April as swarming and the other borders: common practice, no source.
"""


def bee_month(day: date, hemisphere: Hemisphere) -> int:
    """The month of the northern year that this day is like: November in the south is like May.

    Source: geometry, half a year apart.
    """
    if hemisphere is Hemisphere.NORTH:
        return day.month
    return (day.month + _HALF_YEAR - 1) % 12 + 1


def season_of(day: date, hemisphere: Hemisphere) -> Season:
    """The season a day is in.

    Source: _MONTHS.
    """
    return _MONTHS[bee_month(day, hemisphere) - 1]


def season_year(day: date, hemisphere: Hemisphere) -> int:
    """The year a day's season is named by: in the south from July to June, named by the year it began.

    Source: common practice, no source.
    """
    if hemisphere is Hemisphere.SOUTH and day.month < _SOUTHERN_START:
        return day.year - 1
    return day.year


def season_bounds(year: int, hemisphere: Hemisphere) -> tuple[date, date]:
    """The first day of a season's year and the first day of the next.

    Source: as season_year.
    """
    month = 1 if hemisphere is Hemisphere.NORTH else _SOUTHERN_START
    return date(year, month, 1), date(year + 1, month, 1)


def day_of_season(day: date, hemisphere: Hemisphere) -> int:
    """The day's place on the axis on which years are laid over one another, 1 for the first.

    29 February has the place of the 28th, so that every other day has one place in all years.
    Source: arithmetic.
    """
    since, _ = season_bounds(season_year(day, hemisphere), hemisphere)
    leap_day = _leap_day(since)
    passed = (day - since).days + 1
    return passed - 1 if leap_day is not None and day >= leap_day else passed


def _leap_day(since: date) -> date | None:
    """The 29 February of the twelve months from this day on, if they have one."""
    for year in (since.year, since.year + 1):
        try:
            leap_day = date(year, 2, 29)
        except ValueError:
            continue
        if since <= leap_day < since + timedelta(days=366):
            return leap_day
    return None


def iso_week(day: date) -> str:
    """The week of a day as ISO 8601 writes it: "2026-W20"."""
    year, week, _ = day.isocalendar()
    return f"{year}-W{week:02d}"


def season_words(season: Season) -> str:
    """A season in words."""
    words = {
        Season.WINTER: say("winter"),
        Season.BUILD_UP: say("build-up"),
        Season.SWARMING: say("swarm season"),
        Season.LATE_SUMMER: say("late summer"),
        Season.AUTUMN: say("autumn"),
    }
    return words[season]
