"""A colony is gathered with its points, the figures behind them, and what happened in the time asked for."""

from datetime import date

from beeworkbook.colony.records import ColonyId
from beeworkbook.colony.timeline import MarkSort
from beeworkbook.workbook.edits.hive import MovePart
from beeworkbook.year.gathered import gather, super_stays
from tests.year.season_book import SeasonBook


def test_a_season_has_its_visits_and_its_marks(season_book: SeasonBook) -> None:
    found = gather(season_book.book, season_book.pear, date(2026, 1, 1), date(2027, 1, 1))
    assert found is not None
    assert [point.day.isoformat() for point in found.points] == [
        "2026-04-18",
        "2026-04-25",
        "2026-05-02",
        "2026-05-09",
        "2026-05-16",
        "2026-05-18",
    ]
    assert set(found.figures) == set(found.visits) == {point.visit_id for point in found.points}
    assert [mark.sort for mark in found.marks] == [MarkSort.FEED, MarkSort.QUEEN, MarkSort.SUPER]


def test_what_happened_before_is_left_out(season_book: SeasonBook) -> None:
    found = gather(season_book.book, season_book.pear, date(2025, 1, 1), date(2026, 1, 1))
    assert found is not None
    assert {mark.sort for mark in found.marks} == {MarkSort.ARRIVAL}


def test_a_colony_that_is_not_there_gives_nothing(season_book: SeasonBook) -> None:
    assert gather(season_book.book, ColonyId(999), date(2026, 1, 1), date(2027, 1, 1)) is None


def test_a_super_is_of_the_colony_it_stands_over(season_book: SeasonBook) -> None:
    book = season_book.book
    ((part, stay),) = super_stays(book, season_book.pear)
    assert (stay.since, stay.until) == (date(2026, 5, 12), None)
    hive = book.read.hive_day(season_book.gate, date(2026, 5, 20))
    assert hive is not None
    book.do(MovePart(part.id, date(2026, 5, 19), 2, hive.hive.id))
    assert [held.until for _, held in super_stays(book, season_book.pear)] == [date(2026, 5, 19)]
    assert [held.since for _, held in super_stays(book, season_book.gate)] == [date(2026, 5, 19)]
