"""An offered day is taken with its reason, and brings the look at the feed with it."""

from dataclasses import replace
from datetime import date

from beeworkbook.colony.records import DueKind, Question
from beeworkbook.rounds import offers
from beeworkbook.rounds.row import Row, read_row
from beeworkbook.workbook.edits.feed import GiveFeed
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.visit import SetAnswer
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, NONE


def _fed_row(book: Workbook) -> Row:
    place = book.read.standing(book.read.apiaries()[0].id, DAY)[0]
    assert place.colony is not None
    edits = (SetAnswer(NONE, Question.OPENED, "y"), GiveFeed(place.colony.id, DAY, "1L 1:1", NONE))
    book.do(OnLine(book.read.apiaries()[0].id, place.colony.id, DAY, edits))
    return read_row(book, place.stand, place.colony, DAY)


def _again(book: Workbook, row: Row) -> Row:
    return read_row(book, row.stand, row.colony, DAY)


def test_taking_the_offer_puts_both_looks_down_as_one_step(book: Workbook) -> None:
    row = _fed_row(book)
    assert offers.offer_words(row).startswith("Mon 18 May: 1 L 1:1 given on 16 May")
    assert "Sat 23 May" in offers.offer_words(row)
    apiary_id = book.read.apiaries()[0].id
    book.do(OnLine(apiary_id, row.colony.id, DAY, offers.take_offer(row)))
    dues = book.read.dues(colony_id=row.colony.id)
    kept = {(due.kind, due.day) for due in dues if due.day > DAY}
    assert kept == {(DueKind.FEED_LOOK, date(2026, 5, 18)), (DueKind.LOOK, date(2026, 5, 23))}
    assert all(due.reason for due in dues)
    taken = _again(book, row)
    assert taken.now.visit is not None
    assert taken.now.visit.next_day == date(2026, 5, 23)
    assert offers.feed_look_offered(taken) is None  # not put down twice
    assert [type(edit).__name__ for edit in offers.take_offer(taken)] == ["SetNext"]
    book.undo()
    assert not [due for due in book.read.dues(colony_id=row.colony.id) if due.day > DAY]


def test_nothing_is_offered_for_an_untouched_line(book: Workbook) -> None:
    row = replace(_fed_row(book), offers=())
    assert offers.take_offer(row) == ()
    assert offers.offer_words(row) == ""
    assert offers.look_offered(row) is None


def test_a_day_is_short_in_its_column() -> None:
    assert offers.short_day(date(2026, 9, 3)) == "3 Sep"
