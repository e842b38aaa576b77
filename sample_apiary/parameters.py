"""The parameters of the sample: read from parameters.json, and curves over a year read off by the day."""

import json
from bisect import bisect_right
from datetime import date
from pathlib import Path
from typing import Any, Final

PARAMETERS: Final = Path(__file__).with_name("parameters.json")


def load_parameters(path: Path = PARAMETERS) -> dict[str, Any]:
    """All that the sample is made from."""
    held: dict[str, Any] = json.loads(path.read_text(encoding="utf-8"))
    return held


class Curve:
    """A value over the year, straight from one named day ("04-15") to the next and round into next year."""

    def __init__(self, points: list[tuple[str, float]]) -> None:
        self._days = [_day_of_year(*map(int, day.split("-"))) for day, _ in points]
        self._values = [float(value) for _, value in points]

    def on(self, day: date) -> float:
        """The value on a day."""
        number = _day_of_year(day.month, day.day)
        after = bisect_right(self._days, number)
        left, right = after - 1, after % len(self._days)
        span = (self._days[right] - self._days[left]) % 365 or 365
        part = (number - self._days[left]) % 365 / span
        return self._values[left] + (self._values[right] - self._values[left]) * part


class Steps:
    """A value that holds from a day until the next one named; before the first it is the first."""

    def __init__(self, points: list[tuple[str, float]], before: float) -> None:
        self._points = [(date.fromisoformat(day), float(value)) for day, value in points]
        self._before = before

    def on(self, day: date) -> float:
        """The value on a day."""
        return next((value for since, value in reversed(self._points) if since <= day), self._before)


def _day_of_year(month: int, day: int) -> int:
    """The day of a common year, so that every year has the same curve."""
    return date(2025, month, min(day, 28) if month == 2 else day).timetuple().tm_yday
