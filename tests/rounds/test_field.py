"""Each field shows what was noted, says what may be typed, and asks for the right edit."""

from datetime import date

import pytest

from beeworkbook.colony.records import Level, Question, VisitId
from beeworkbook.colony.sentences import Field, Target
from beeworkbook.rounds import field
from beeworkbook.rounds.field import TARGETS, FieldError, asked, wish
from beeworkbook.rounds.row import Row, read_row
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft, SetHeft
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit, PassOver, SetAnswer, SetNext, SetNote
from beeworkbook.workbook.place import Edit
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, LAST, NONE


def _row(book: Workbook, at: int = 0) -> Row:
    apiary = book.read.apiaries()[0]
    place = book.read.standing(apiary.id, DAY)[at]
    assert place.colony is not None
    return read_row(book, place.stand, place.colony, DAY)


def _after(book: Workbook, *edits: Edit) -> Row:
    row = _row(book)
    book.do(OnLine(book.read.apiaries()[0].id, row.colony.id, DAY, edits))
    return _row(book)


def test_a_fresh_line_is_blank_over_last_time(book: Workbook) -> None:
    row = _row(book)
    assert {field.shown(row, target) for target in TARGETS} == {""}
    assert field.last_shown(row, Question.STORES) == "7 kg"
    assert field.last_shown(row, Question.EGGS) == "4, 5"
    assert field.last_shown(row, Question.CELLS) == ""
    assert field.last_shown(row, Field.FEED) == "2 L 1:1"
    assert field.last_shown(row, Field.NOTE) == "Super to go on next time"
    assert field.field_name(row, Question.STORES) == "Pear Tree, stores, last time 7 kg"
    assert field.field_name(row, Question.CELLS) == "Pear Tree, cells"


def _draw(book: Workbook, day: date, *typed: str) -> None:
    """These combs, from the first place on, noted in the box on a day."""
    colony_id = _row(book).colony.id
    visit = next((v for v in book.read.visits(colony_id) if v.day == day), None)
    visit_id = visit.id if visit else VisitId(int(str(book.do(BeginVisit(colony_id, day)))))
    hive = book.read.hive_day(colony_id, day)
    assert hive is not None
    for placed, text in zip(hive.boxes[0].frames, typed, strict=False):
        assert placed.frame is not None
        book.do(LayOutComb(visit_id, placed.frame.id, text))


def test_where_nothing_was_typed_the_combs_of_last_time_speak(book: Workbook) -> None:
    _draw(book, date(2026, 5, 12), *["H8"] * 4, *["E1O2S4H1"] * 3, *["H8"] * 4)
    row = _row(book)
    assert field.last_shown(row, Question.EGGS) == "5–7"
    assert field.last_shown(row, Question.BROOD) == "3/2.6"
    assert field.last_from_combs(row, Question.BROOD)
    assert field.last_words(row, Question.BROOD) == "3/2.6, from the combs"
    assert field.field_name(row, Question.EGGS) == "Pear Tree, eggs, last time 5–7, from the combs"
    assert field.last_shown(row, Question.POLLEN) == ""
    (same,) = wish(row, Question.BROOD, "=").edits
    assert same == SetAnswer(VisitId(0), Question.BROOD, "3/2.6")


def test_what_was_typed_goes_before_what_the_combs_say(book: Workbook) -> None:
    _draw(book, LAST, "", "", "", "E1O2S4H1", "E1S7")
    row = _row(book)
    assert field.last_shown(row, Question.EGGS) == "4, 5"
    assert not field.last_from_combs(row, Question.EGGS)
    assert field.last_shown(row, Question.YOUNG) == "4"


def test_where_they_are_at_odds_last_time_is_told_by_the_combs(book: Workbook) -> None:
    _draw(book, LAST, "E1O2S4H1", "S8")
    row = _row(book)
    assert field.last_shown(row, Question.EGGS) == "1"
    assert field.last_from_combs(row, Question.EGGS)
    assert field.last_words(row, Question.EGGS) == "1, from the combs; the line said 4, 5"
    (same,) = wish(row, Question.EGGS, "=").edits
    assert same == SetAnswer(VisitId(0), Question.EGGS, "1")


def test_the_line_at_odds_with_its_combs_keeps_what_was_typed_and_mentions_it(book: Workbook) -> None:
    _draw(book, DAY, "E1O2S4H1", "S8")
    row = _after(book, SetAnswer(NONE, Question.EGGS, "4-5"))
    assert (field.shown(row, Question.EGGS), field.to_edit(row, Question.EGGS)) == ("4, 5", "4-5")
    assert "The line says eggs 4, 5, the combs 1." in [note.text for note in row.notes]
    assert "eggs on 4 and 5 (the line 4, 5, the combs 1)" in [phrase.text for phrase in row.said]


def test_of_some_combs_only_the_same_again_cannot_be_said(book: Workbook) -> None:
    _draw(book, date(2026, 5, 12), "E1O2S4H1")
    row = _row(book)
    assert field.last_shown(row, Question.BROOD) == "1/0.88+"
    with pytest.raises(FieldError, match="only some combs"):
        wish(row, Question.BROOD, "=")


def test_the_combs_of_this_visit_speak_in_its_line_and_leave_the_field_to_be_typed(book: Workbook) -> None:
    _draw(book, DAY, "S4H4", "E1O2S4H1")
    row = _row(book)
    assert field.combs_say(row.now, Question.EGGS) == "2"
    assert field.combs_words(row, Question.EGGS) == "2, from the combs"
    assert (field.shown(row, Question.EGGS), field.to_edit(row, Question.EGGS)) == ("", "")
    assert field.field_name(row, Question.YOUNG) == "Pear Tree, young 2, from the combs"
    row = _after(book, SetAnswer(NONE, Question.EGGS, "2-3"))
    assert field.combs_say(row.now, Question.EGGS) == field.combs_words(row, Question.EGGS) == ""


def test_the_columns_stand_in_the_order_of_the_printed_sheet() -> None:
    assert (*Question, Field.FEED, Field.LEFT, Field.NOTE, Field.NEXT) == TARGETS


@pytest.mark.parametrize(
    ("target", "typed", "shown"),
    [
        (Question.OPENED, "y", "yes"),
        (Question.EGGS, "4-6", "4–6"),
        (Question.BROOD, "7/4.2", "7/4.2"),
        (Question.STORES, "7,5", "7.5 kg"),
        (Question.CELLS, "n", "none"),
        (Question.QUEEN, "-", "not looked"),
        (Question.TEMPER, "q", "quiet"),
        (Field.FEED, "2L 1:1", "2 L 1:1"),
        (Field.LEFT, "0.2", "0.2 L"),
        (Field.NOTE, "calm", "calm"),
        (Field.NEXT, "+7", "23 May"),
        (Field.NEXT, "19", "19 May"),
    ],
)
def test_what_is_typed_stands_in_its_field(book: Workbook, target: Target, typed: str, shown: str) -> None:
    row = _after(book, *wish(_row(book), target, typed).edits)
    assert field.shown(row, target) == shown
    assert wish(row, target, field.to_edit(row, target)).edits == ()  # left as it was, nothing is asked


@pytest.mark.parametrize("target", [Question.STORES, Question.TEMPER, Field.FEED, Field.NOTE])
def test_equals_takes_last_times_answer(book: Workbook, target: Target) -> None:
    row = _after(book, *wish(_row(book), target, "=").edits)
    assert field.shown(row, target) == field.last_shown(row, target) != ""


def test_equals_without_a_last_time_is_refused_in_words(book: Workbook) -> None:
    with pytest.raises(FieldError, match="last time"):
        wish(_row(book), Question.CELLS, "=")


def test_a_shut_hive_is_asked_for_heft_flying_and_feed(book: Workbook) -> None:
    row = _after(book, SetAnswer(NONE, Question.OPENED, "n"))
    assert row.shut
    assert asked(row, TARGETS) == (
        Question.OPENED, Question.POLLEN, Question.STORES, Field.FEED, Field.LEFT, Field.NOTE, Field.NEXT,
    )  # fmt: skip
    assert field.field_name(row, Question.STORES).startswith("Pear Tree, heft")
    assert "14+15" in field.field_hint(row, Question.STORES)
    (edit,) = wish(row, Question.STORES, "14 + 15,5 kg").edits
    assert edit == SetHeft(row.colony.id, DAY, 14.0, 15.5, VisitId(0))
    row = _after(book, edit)
    assert field.shown(row, Question.STORES) == "14 + 15.5 kg"
    assert field.to_edit(row, Question.STORES) == "14+15.5"
    assert wish(row, Question.STORES, "").clears
    with pytest.raises(FieldError, match=r"14\+15"):
        wish(row, Question.STORES, "29")
    with pytest.raises(FieldError, match="not a number"):
        wish(row, Question.STORES, "14+much")


def test_a_hive_that_was_opened_can_be_hefted_too(book: Workbook) -> None:
    row = _after(book, SetAnswer(NONE, Question.OPENED, "y"))
    assert isinstance(wish(row, Question.STORES, "14+15").edits[0], SetHeft)
    assert isinstance(wish(row, Question.STORES, "14").edits[0], SetAnswer)


def test_left_is_asked_only_where_feed_was_given(book: Workbook) -> None:
    row = _row(book)
    assert row.feed_before is not None
    (edit,) = wish(row, Field.LEFT, "0").edits
    assert edit == SetFeedLeft(row.feed_before.id, "0", DAY, VisitId(0))
    assert "2 L 1:1" in field.field_hint(row, Field.LEFT)
    row = _after(book, edit)
    assert field.shown(row, Field.LEFT) == "0 L"
    bare = Row(row.colony, row.stand, DAY)
    assert Field.LEFT not in asked(bare, TARGETS)
    assert field.field_hint(bare, Field.LEFT) == ""
    with pytest.raises(FieldError, match="No feed"):
        wish(bare, Field.LEFT, "0")


def test_x_passes_a_colony_over_and_leaves_a_reason_to_give(book: Workbook) -> None:
    assert wish(_row(book), Question.OPENED, "X").passes
    row = _after(book, PassOver(_row(book).colony.id, DAY))
    assert row.passed
    assert field.shown(row, Question.OPENED) == "passed over"
    assert asked(row, TARGETS) == (Question.OPENED, Field.NOTE, Field.NEXT)
    assert not wish(row, Question.OPENED, "x").passes
    again = wish(row, Question.OPENED, "")
    assert again.clears
    assert getattr(again.edits[0], "level", None) is Level.NOT_OPENED


def test_a_next_day_needs_to_be_a_later_one(book: Workbook) -> None:
    row = _after(book, SetAnswer(NONE, Question.OPENED, "y"))
    with pytest.raises(FieldError, match="later day"):
        wish(row, Field.NEXT, "-3")
    with pytest.raises(FieldError, match="Type a day"):
        wish(row, Field.NEXT, "soon")
    (edit,) = wish(row, Field.NEXT, "23 May").edits
    assert isinstance(edit, SetNext)
    assert edit.day == date(2026, 5, 23)
    assert "seven days" in edit.reason  # the day that was offered keeps its reason
    assert wish(_row(book, 1), Field.NEXT, "+5").edits == (SetNext(VisitId(0), date(2026, 5, 21), ""),)
    with pytest.raises(FieldError, match="offered"):
        wish(_row(book, 1), Field.NEXT, ".")


def test_emptying_clears(book: Workbook) -> None:
    row = _after(book, SetNote(NONE, "calm"), GiveFeed(_row(book).colony.id, DAY, "1L 1:1", NONE))
    for target in (Field.NOTE, Field.FEED, Field.NEXT):
        assert wish(row, target, "").clears is (target is not Field.NEXT)
    assert wish(row, Field.FEED, "-").clears
    assert field.to_edit(row, Field.FEED) == "1L 1:1"


def test_one_key_answers() -> None:
    row = Row(None, None, DAY)  # type: ignore[arg-type] # only the answers count here
    assert field.one_keys(row, Question.OPENED) >= set("yn-x=")
    assert field.one_keys(row, Question.TEMPER) >= set("qsl-=")
    assert "y" not in field.one_keys(row, Question.SEAMS)
    assert field.one_keys(row, Field.NEXT) == set("=.")
    assert field.one_keys(row, Field.NOTE) == set()


def test_heft_and_level_lead_to_the_columns_they_are_typed_in() -> None:
    assert field.field_of(Field.HEFT) is Question.STORES
    assert field.field_of(Field.LEVEL) is Question.OPENED
    assert field.field_of(Field.NOTE) is Field.NOTE


def test_every_field_says_what_it_asks_and_what_may_be_typed(book: Workbook) -> None:
    row = _row(book)
    for target in TARGETS:
        assert field.field_question(row, target).endswith("?")
        assert field.field_hint(row, target)
        assert field.field_heading(target)
    assert "passed over" in field.field_hint(row, Question.OPENED)
