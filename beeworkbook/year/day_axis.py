"""Days as places along an axis: the bees' season, several seasons in a row, or years folded over one another.

Plain arithmetic on dates; which half of the world it is, is handed in.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from beeworkbook.colony.seasons import Hemisphere, day_of_season, season_bounds
from beeworkbook.words import month_name

_SEASON_MONTHS: Final = (3, 10)
"""First and last month always shown of a northern year. Source: common practice, no source."""
_HALF_YEAR: Final = 6
_COMMON_YEAR: Final = 2025
"""Any year without a 29 February, to name the days of years laid over one another."""


@dataclass(frozen=True)
class MonthTick:
    """Where a month begins. Units: days from the axis' first day."""

    place: float
    name: str
    year: int | None
    """The year, where it begins here; None elsewhere and where years lie over one another."""


@dataclass(frozen=True)
class DayAxis:
    """The days from `since` on and before `until`. folded: every year's days are laid on these.

    Units: places are days from `since`, a day's place is its morning.
    """

    since: date
    until: date
    hemisphere: Hemisphere = Hemisphere.NORTH
    folded: bool = False

    @property
    def days(self) -> int:
        """How many days the axis is long."""
        return (self.until - self.since).days

    def place(self, day: date) -> float:
        """A day's place, also of a day that lies beyond the axis."""
        if not self.folded:
            return float((day - self.since).days)
        return float(day_of_season(day, self.hemisphere) - day_of_season(self.since, self.hemisphere))

    def day_at(self, place: float) -> date:
        """The day at a place; on a folded axis of a year without a leap day."""
        return self.since + timedelta(days=round(place))

    def shows(self, day: date) -> bool:
        """Whether the day lies on the axis."""
        return 0 <= self.place(day) < self.days

    def months(self) -> tuple[MonthTick, ...]:
        """The beginnings of the months, in order."""
        made = []
        for day in _month_starts(self.since, self.until):
            begins = (day.month == 1 or day == self.since) and not self.folded
            made.append(
                MonthTick(
                    float((day - self.since).days),
                    month_name(day.month, short=True),
                    day.year if begins else None,
                )
            )
        return tuple(made)


def season_axis(year: int, hemisphere: Hemisphere, days: Iterable[date] = ()) -> DayAxis:
    """The season of a year in whole months, from March to October in the north, longer if a day asks for it.

    Days of other years are passed over. Source: _SEASON_MONTHS.
    """
    first, last = season_bounds(year, hemisphere)
    since, until = _usual(first)
    inside = [day for day in days if first <= day < last]
    if inside:
        since = min(since, min(inside).replace(day=1))
        until = max(until, _next_month(max(inside)))
    return DayAxis(since, until, hemisphere)


def row_axis(days: Iterable[date], hemisphere: Hemisphere) -> DayAxis:
    """All these days in a row, in whole months. Errors: ValueError if there are none."""
    held = sorted(days)
    if not held:
        raise ValueError("an axis needs a day")
    return DayAxis(held[0].replace(day=1), _next_month(held[-1]), hemisphere)


def folded_axis(hemisphere: Hemisphere, days: Iterable[date] = ()) -> DayAxis:
    """One season on which the days of every year are laid by day of year."""
    first, _ = season_bounds(_COMMON_YEAR, hemisphere)
    moved = [first + timedelta(days=day_of_season(day, hemisphere) - 1) for day in days]
    made = season_axis(_COMMON_YEAR, hemisphere, moved)
    return DayAxis(made.since, made.until, hemisphere, folded=True)


def _usual(first: date) -> tuple[date, date]:
    """The months always shown of the year that begins on `first`; in the south half a year later."""
    opening, closing = _SEASON_MONTHS
    shift = 0 if first.month == 1 else _HALF_YEAR
    return _month(first.year, opening + shift), _month(first.year, closing + 1 + shift)


def _month(year: int, month: int) -> date:
    return date(year + (month - 1) // 12, (month - 1) % 12 + 1, 1)


def _next_month(day: date) -> date:
    return _month(day.year, day.month + 1)


def _month_starts(since: date, until: date) -> Iterable[date]:
    day = since if since.day == 1 else _next_month(since)
    while day < until:
        yield day
        day = _next_month(day)
