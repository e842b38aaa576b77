"""What is kept follows every commit and is always what reading anew would give."""

from collections.abc import Callable
from datetime import date

import pytest

from beeworkbook.colony.kinds import DueKind
from beeworkbook.colony.records import Colony, Question
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.edits.mend import MoveVisit, RemoveVisit
from beeworkbook.workbook.edits.place import RenameRecord
from beeworkbook.workbook.edits.visit import BeginVisit, SetAnswer
from beeworkbook.workbook.place import Edit
from beeworkbook.year.kept_season import KeptSeason
from tests.year.season_book import SeasonBook

SINCE, UNTIL = date(2026, 1, 1), date(2027, 1, 1)


def kept(season_book: SeasonBook) -> KeptSeason:
    return KeptSeason(season_book.book, season_book.pear, SINCE, UNTIL)


def after(season_book: SeasonBook, edit: Edit) -> tuple[KeptSeason, list[bool]]:
    held, told = kept(season_book), []
    heard: list[Changes] = []
    season_book.book.subscribe(heard.append)
    season_book.book.do(edit)
    told = [held.take(changes) for changes in heard]
    return held, told


CHANGING: tuple[Callable[[SeasonBook], Edit], ...] = (
    lambda book: SetAnswer(book.visit("2026-04-25"), Question.BROOD, "2/1"),
    lambda book: SetAnswer(book.visit("2026-05-18"), Question.STORES, "9"),
    lambda book: RemoveVisit(book.visit("2026-05-02")),
    lambda book: BeginVisit(book.pear, date(2026, 5, 20)),
    lambda book: MoveVisit(book.visit("2026-05-02"), book.gate, date(2026, 5, 1)),
    lambda book: MoveVisit(book.visit("2026-05-03", book.gate), book.pear, date(2026, 5, 4)),
)


@pytest.mark.parametrize("edit", CHANGING)
def test_a_commit_is_followed(season_book: SeasonBook, edit: Callable[[SeasonBook], Edit]) -> None:
    held, told = after(season_book, edit(season_book))
    assert told == [True]
    assert held.points == kept(season_book).points


ELSEWHERE: tuple[Callable[[SeasonBook], Edit], ...] = (
    lambda book: SetAnswer(book.visit("2026-05-16", book.gate), Question.BROOD, "2/1"),
    lambda book: SetAnswer(book.visit("2025-05-16"), Question.STORES, "9"),
    lambda book: RenameRecord(Colony, book.pear, "Quince"),
    lambda book: AddDue(DueKind.LOOK, date(2026, 5, 25), "a week", colony_id=book.pear),
)


@pytest.mark.parametrize("edit", ELSEWHERE)
def test_what_happens_elsewhere_is_no_news(
    season_book: SeasonBook, edit: Callable[[SeasonBook], Edit]
) -> None:
    _, told = after(season_book, edit(season_book))
    assert told == [False]


def test_another_book_is_read_whole(season_book: SeasonBook) -> None:
    held = kept(season_book)
    season_book.book.do(RemoveVisit(season_book.visit("2026-05-02")))
    assert held.take(Changes(everything=True))
    assert held.points == kept(season_book).points


def test_points_are_parted_at_a_day(season_book: SeasonBook) -> None:
    held = kept(season_book)
    day = date(2026, 5, 2)
    assert held.before(day) + held.from_day(day) == held.points
    assert held.from_day(day)[0].day == day
    figures = held.figures(season_book.visit("2026-05-09"))
    assert figures is not None
    assert (figures.combs_seen, figures.combs_in_hive) == (4, 11)
    assert held.figures(season_book.visit("2025-05-16")) is None
