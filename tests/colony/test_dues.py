from datetime import date

from beeworkbook.colony.dues import PlannedDue, bring_words, days_words, due_words, feed_look
from beeworkbook.colony.records import Due, DueId, DueKind

DAY = date(2026, 5, 16)


def test_a_feed_look_says_what_was_given_and_when() -> None:
    due = feed_look(DAY, "2 L 1:1")
    assert (due.day, due.until) == (date(2026, 5, 18), date(2026, 5, 19))
    assert due.reason == "2 L 1:1 given on 16 May: how much is left?"
    assert "16 May" in feed_look(DAY).reason


def test_each_thing_is_carried_once() -> None:
    dues: list[Due | PlannedDue] = [
        feed_look(DAY),
        Due(DueId(1), DueKind.BRING, DAY, "a super"),
        feed_look(DAY),
        PlannedDue(DueKind.QUEEN_CAGE, DAY, None, ""),
        PlannedDue(DueKind.LOOK, DAY, None, ""),
    ]
    assert bring_words(dues) == ("feed", "a super", "a frame to close the gap of the cage")


def test_how_far_off_a_due_is() -> None:
    assert days_words(DAY, DAY) == "today"
    assert days_words(date(2026, 5, 17), DAY) == "in 1 day"
    assert days_words(date(2026, 5, 20), DAY) == "in 4 days"
    assert days_words(date(2026, 5, 15), DAY) == "1 day over"
    assert days_words(date(2026, 5, 13), DAY) == "3 days over"


def test_every_kind_has_its_word() -> None:
    assert len({due_words(kind) for kind in DueKind}) == len(DueKind)
