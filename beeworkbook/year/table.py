"""The figures behind the chart as CSV: in full, blank where nothing was noted, safe for a spreadsheet."""

from datetime import date
from pathlib import Path

from beeworkbook.colony.seasons import season_bounds
from beeworkbook.workbook.story import hemisphere_of
from beeworkbook.workbook.totals_csv import write_visits
from beeworkbook.workbook.workbook import Workbook
from beeworkbook.year.choice import Arrangement, Choice


def write_table(book: Workbook, choice: Choice, path: Path) -> int:
    """Write a line a visit of what the choice shows; gives how many. Errors: OSError."""
    since, until = shown_days(book, choice)
    with path.open("w", encoding="utf-8", newline="") as stream:
        return write_visits(book.read, choice.colony_ids, since, until, stream)


def shown_days(book: Workbook, choice: Choice) -> tuple[date, date]:
    """From which day on and before which day the choice shows visits."""
    if choice.arrangement is Arrangement.SEASON:
        return season_bounds(choice.year, hemisphere_of(book))
    return date.min, date.max
