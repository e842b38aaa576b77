from datetime import date
from pathlib import Path

import pytest

from beeworkbook.cli.asking import colonies_named, opened
from beeworkbook.cli.visits import drawn_visit, shown_visit
from beeworkbook.colony.records import Level


@pytest.mark.parametrize(
    ("until", "found"),
    [
        ("2025-05-09", None),
        ("2025-05-17", "2025-05-17"),
        ("2025-06-02", "2025-05-24"),  # the line of 31 May has no combs
        ("2025-05-31", "2025-05-31"),  # but that very day is meant
    ],
)
def test_the_visit_of_the_day_or_the_last_with_combs(sample: Path, until: str, found: str | None) -> None:
    with opened(sample, lambda: date(2026, 11, 25)) as book:
        (larch,) = colonies_named(book, ["Larch"])
        visit = drawn_visit(book, larch.id, date.fromisoformat(until))
    assert (visit and visit.day.isoformat()) == found


def test_the_window_is_shown_at_the_last_painted_visit(sample: Path) -> None:
    with opened(sample, lambda: date(2026, 11, 25)) as book:
        visit = shown_visit(book, date(2026, 11, 25))
        assert visit is not None
        assert (visit.level, visit.day) == (Level.PAINTED, date(2026, 7, 25))
        first = shown_visit(book, date(2025, 4, 10))
        assert first is not None
        assert first.level is Level.BY_COMB
        assert shown_visit(book, date(2025, 1, 1)) is None
