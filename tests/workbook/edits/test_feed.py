import pytest

from beeworkbook.colony.records import Due, DueKind, DueState, Event, EventKind, Feed, FeedId, FeedKind
from beeworkbook.workbook.edits import GiveFeed, SetFeedLeft, SetHeft
from beeworkbook.workbook.edits.feed import give_feed
from beeworkbook.workbook.errors import NotReadableError, RefusedError
from tests.workbook.keeping import CAME, LOOK, Keeping, as_int, days_on


def test_feed_is_kept_as_it_is_said(keeping: Keeping) -> None:
    made = keeping.book.do(GiveFeed(keeping.colony, LOOK, "2L 1:1"))
    feed = keeping.book.read.get(Feed, made)
    assert feed is not None
    assert (feed.kind, feed.given_litres, feed.sugar_parts, feed.water_parts) == (FeedKind.SYRUP, 2, 1, 1)
    assert (feed.typed, feed.visit_id, feed.left_litres) == ("2L 1:1", None, None)
    assert keeping.book.undo_label == "feed Wall"


def test_a_visits_feed_field_is_replaced_and_emptied(keeping: Keeping) -> None:
    given = keeping.book.do(GiveFeed(keeping.colony, LOOK, "2L 1:1", keeping.visit))
    assert keeping.book.do(GiveFeed(keeping.colony, LOOK, "3L 1:1", keeping.visit)) == given
    assert [feed.given_litres for feed in keeping.book.read.find(Feed, visit_id=keeping.visit)] == [3]
    assert keeping.book.do(GiveFeed(keeping.colony, LOOK, "", keeping.visit)) is None
    assert keeping.book.read.find(Feed, visit_id=keeping.visit) == ()
    before = keeping.everything()
    with pytest.raises(NotReadableError):
        keeping.book.do(GiveFeed(keeping.colony, LOOK, "a jug of something", keeping.visit))
    assert keeping.everything() == before


def test_feed_without_a_visit_is_always_a_new_line(keeping: Keeping) -> None:
    with keeping.book._base.write() as tx:
        first = give_feed(tx, keeping.colony, LOOK, "1L 1:1")
        second = give_feed(tx, keeping.colony, LOOK, "1L 1:1")
        assert give_feed(tx, keeping.colony, LOOK, "") is None
    assert first != second


def _feed_look(keeping: Keeping) -> Due:
    return next(due for due in keeping.book.read.find(Due) if due.kind is DueKind.FEED_LOOK)


def test_what_was_left_is_noted_and_settles_the_feed_look(keeping: Keeping) -> None:
    feed = keeping.book.read.feeds(keeping.colony)[0]
    assert _feed_look(keeping).state is DueState.OPEN
    keeping.book.do(SetFeedLeft(feed.id, "0.5", days_on(CAME, 3), keeping.visit))
    noted = keeping.book.read.get(Feed, feed.id)
    assert noted is not None
    assert (noted.left_litres, noted.left_day, noted.left_visit_id) == (0.5, days_on(CAME, 3), keeping.visit)
    assert _feed_look(keeping).state is DueState.DONE
    keeping.book.do(SetFeedLeft(feed.id, "", days_on(CAME, 3), keeping.visit))
    blank = keeping.book.read.get(Feed, feed.id)
    assert blank is not None
    assert (blank.left_litres, blank.left_kg, blank.left_day) == (None, None, None)
    assert _feed_look(keeping).state is DueState.OPEN


def test_nothing_left_is_not_blank(keeping: Keeping) -> None:
    feed = keeping.book.read.feeds(keeping.colony)[0]
    keeping.book.do(SetFeedLeft(feed.id, "0", LOOK))
    noted = keeping.book.read.get(Feed, feed.id)
    assert noted is not None
    assert noted.left_litres == 0


def test_what_is_left_cannot_be_seen_before_it_was_given(keeping: Keeping) -> None:
    feed = keeping.book.read.feeds(keeping.colony)[0]
    with pytest.raises(RefusedError, match="not before"):
        keeping.book.do(SetFeedLeft(feed.id, "0", days_on(CAME, -1)))
    with pytest.raises(NotReadableError):
        keeping.book.do(SetFeedLeft(feed.id, "a little", LOOK))


def test_a_heft_is_two_pulls_of_a_day(keeping: Keeping) -> None:
    made = keeping.book.do(SetHeft(keeping.colony, LOOK, 14.0, 15.5, keeping.visit))
    assert keeping.book.do(SetHeft(keeping.colony, LOOK, 14.5, 15.5)) == made
    hefts = keeping.book.read.find(Event, kind=EventKind.HEFT)
    assert [(heft.left_kg, heft.right_kg, heft.visit_id) for heft in hefts] == [(14.5, 15.5, keeping.visit)]
    with pytest.raises(RefusedError, match="positive"):
        keeping.book.do(SetHeft(keeping.colony, LOOK, -1, None))
    assert keeping.book.do(SetHeft(keeping.colony, LOOK, None, None)) is None
    assert keeping.book.read.find(Event, kind=EventKind.HEFT) == ()
    assert keeping.book.do(SetHeft(keeping.colony, LOOK, None, None)) is None


def test_ids_are_of_their_own_type(keeping: Keeping) -> None:
    assert FeedId(as_int(keeping.book.do(GiveFeed(keeping.colony, LOOK, "1 kg fondant")))) > 0
