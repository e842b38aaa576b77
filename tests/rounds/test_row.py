"""A line tells that day's visit, last time's, what it offers and what there is to mention."""

from datetime import date

from beeworkbook.colony.records import DueKind, Level, Question
from beeworkbook.comb.contents import MarkKind
from beeworkbook.rounds.row import Row, read_row
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.marks import AddMark
from beeworkbook.workbook.edits.visit import PassOver, SetAnswer
from beeworkbook.workbook.place import Edit
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, LAST, NONE


def _row(book: Workbook, day: date = DAY) -> Row:
    place = book.read.standing(book.read.apiaries()[0].id, day)[0]
    assert place.colony is not None
    return read_row(book, place.stand, place.colony, day)


def _write(book: Workbook, *edits: Edit, day: date = DAY) -> Row:
    book.do(OnLine(book.read.apiaries()[0].id, _row(book).colony.id, day, edits))
    return _row(book, day)


def test_an_untouched_line_offers_and_says_nothing(book: Workbook) -> None:
    row = _row(book)
    assert row.now.visit is None
    assert (row.said, row.offers, row.notes) == ((), (), ())
    assert row.last.visit is not None
    assert row.last.visit.day == LAST
    assert row.feed_before is not None


def test_a_touched_line_is_read_back_and_offers_a_day_with_its_reason(book: Workbook) -> None:
    row = _write(book, SetAnswer(NONE, Question.OPENED, "y"), SetAnswer(NONE, Question.EGGS, "4-6"))
    assert [phrase.text for phrase in row.said] == ["eggs on 4 to 6"]
    assert [(due.kind, due.day) for due in row.offers] == [(DueKind.LOOK, date(2026, 5, 23))]
    assert row.offers[0].reason
    assert not row.by_comb


def test_feed_given_offers_a_look_at_it(book: Workbook) -> None:
    colony_id = _row(book).colony.id
    row = _write(book, GiveFeed(colony_id, DAY, "2L 1:1", NONE))
    assert [due.kind for due in row.offers] == [DueKind.FEED_LOOK, DueKind.LOOK]


def test_what_is_left_is_of_the_feed_before_and_shows_in_this_line(book: Workbook) -> None:
    feed = _row(book).feed_before
    assert feed is not None
    row = _write(book, SetFeedLeft(feed.id, "0.5", DAY, NONE))
    assert row.now.left is not None
    assert row.feed_before == row.now.left
    assert _row(book, date(2026, 5, 23)).feed_before is None  # it was looked at, so it is not asked again


def test_what_there_is_to_mention_comes_with_a_reason(book: Workbook) -> None:
    row = _write(book, SetAnswer(NONE, Question.STORES, "3"), GiveFeed(_row(book).colony.id, DAY, "2L", NONE))
    texts = [note.text for note in row.notes]
    assert "Less than 4.5 kg in store, and 2 L given today." in texts
    assert any("No ratio" in text for text in texts)
    assert all(note.reason for note in row.notes)


def test_a_line_alone_asks_no_combs_and_a_mark_alone_is_enough(book: Workbook) -> None:
    assert _row(book).last.combs == {}
    last = _row(book).last.visit
    assert last is not None
    book.do(AddMark(last.id, MarkKind.QUEEN))
    assert {question: said.shown for question, said in _row(book).last.combs.items()} == {
        Question.QUEEN: "seen"
    }


def test_last_time_is_the_last_look_and_not_a_colony_passed_over(book: Workbook) -> None:
    _write(book, PassOver(_row(book).colony.id, date(2026, 5, 12)), day=date(2026, 5, 12))
    passed = _row(book, date(2026, 5, 12))
    assert passed.passed
    assert passed.offers == ()
    last = _row(book).last.visit
    assert last is not None
    assert (last.day, last.level) == (LAST, Level.ONE_LINE)
