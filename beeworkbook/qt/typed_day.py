"""A day as it is typed: `12`, `12 5`, `12.5.26`, `12 May`, `2026-05-12`, `today`, `yesterday`, `-3`, `+7`.

What is left out is taken from the day that lies nearest before, since a book is written afterwards.
"""

import re
from datetime import date, timedelta
from typing import Final

from beeworkbook.words import month_name, say

_LEAST_LETTERS: Final = 3


class DayError(ValueError):
    """This is not a day."""


def parse_day(typed: str, today: date, *, ahead: bool = False) -> date:
    """The day that was typed. With `ahead` a day without a year lies on or after today, else on or before.

    Errors: DayError with a sentence that says what can be typed.
    """
    found = _day(typed, today, ahead=ahead)
    if found is None:
        raise DayError(_what(ahead=ahead))
    return found


def _day(typed: str, today: date, *, ahead: bool) -> date | None:
    """The day, None if what was typed has not the form of one. Errors: DayError if there is no such day."""
    text = typed.strip().casefold()
    if text in {"", say("today").casefold(), "."}:
        return today
    if text == say("yesterday").casefold():
        return today - timedelta(days=1)
    if text == say("tomorrow").casefold():
        return today + timedelta(days=1)
    if re.fullmatch(r"[+-]\s*\d{1,3}", text):
        return today + timedelta(days=int(text.replace(" ", "")))
    iso = re.fullmatch(r"(\d{4})-(\d{1,2})-(\d{1,2})", text)
    if iso:
        return _made(int(iso[1]), int(iso[2]), int(iso[3]))
    parts = re.findall(r"\d+|[^\W\d_]+", text)
    if not parts or not parts[0].isdigit() or len(parts) > 3:
        return None
    month = _month(parts[1]) if len(parts) > 1 else None
    year = _year(parts[2]) if len(parts) > 2 else None
    if (len(parts) > 1 and month is None) or (len(parts) > 2 and year is None):
        return None
    return _nearest(int(parts[0]), month, year, today, ahead=ahead)


def _month(part: str) -> int | None:
    if part.isdigit():
        return int(part)
    names = [month_name(number).casefold() for number in range(1, 13)]
    found = [i for i, name in enumerate(names, 1) if len(part) >= _LEAST_LETTERS and name.startswith(part)]
    return found[0] if len(found) == 1 else None


def _year(part: str) -> int | None:
    if not part.isdigit():
        return None
    year = int(part)
    return year + 2000 if year < 100 else year


def _nearest(day: int, month: int | None, year: int | None, today: date, *, ahead: bool) -> date | None:
    if month is not None and year is not None:
        return _made(year, month, day)
    step = 1 if ahead else -1
    at_year, at_month = today.year, month or today.month
    for _ in range(60):
        try:
            made = date(year or at_year, at_month, day)
        except ValueError:
            made = None
        if made is not None and (made >= today if ahead else made <= today):
            return made
        if month is None:
            at_month += step
            if not 1 <= at_month <= 12:
                at_year, at_month = at_year + step, 1 if step > 0 else 12
        else:
            at_year += step
    return None


def _made(year: int, month: int, day: int) -> date:
    try:
        return date(year, month, day)
    except ValueError as error:
        raise DayError(say("There is no such day.")) from error


def _what(*, ahead: bool) -> str:
    if ahead:
        return say("Type a day as 19, 19 5, 19 May or 2026-05-19, or so many days on as +7.")
    return say("Type a day as 12, 12 5, 12 May or 2026-05-12, or so many days off as -3.")
