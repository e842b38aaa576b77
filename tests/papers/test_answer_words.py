from datetime import date

import pytest

from beeworkbook.colony.records import Question, Reply
from beeworkbook.colony.sheet_models import SheetAnswer, SheetVisit
from beeworkbook.papers.answer_words import (
    answer_words,
    brackets_words,
    reply_words,
    says_more,
    ticked_words,
    unwritten_words,
)


@pytest.mark.parametrize(
    ("question", "typed", "words", "more"),
    [
        (Question.TEMPER, "q", "quiet", True),
        (Question.EGGS, "y", "seen", False),
        (Question.EGGS, "4-6", "4–6", True),
        (Question.EGGS, "-", "not looked", False),
        (Question.STORES, "8kg", "8 kg", True),
        (Question.STORES, "heavy as lead", "heavy as lead", True),
        (Question.EGGS, "", "", False),
    ],
)
def test_answers_are_written_out_as_on_screen(
    question: Question, typed: str, words: str, *, more: bool
) -> None:
    answer = SheetAnswer(typed)
    assert answer_words(question, answer) == words
    assert says_more(question, answer) == more


@pytest.mark.parametrize(("typed", "words"), [("y", "yes"), ("4-6", "4–6"), ("", "yes")])
def test_beside_a_box_a_plain_reply_is_its_word(typed: str, words: str) -> None:
    assert ticked_words(Question.EGGS, SheetAnswer(typed, Reply.YES)) == words
    assert ticked_words(Question.EGGS, SheetAnswer("")) == ""


def test_a_reply_without_words_is_the_word_of_its_reply() -> None:
    assert answer_words(Question.QUEEN, SheetAnswer("", Reply.NO)) == "no"


def test_replies_have_words() -> None:
    assert [reply_words(reply) for reply in Reply] == ["yes", "no", "not looked"]


def test_what_the_combs_say_stands_in_brackets_and_a_heft_before_it() -> None:
    combs = {Question.EGGS: "4–6", Question.STORES: "12 kg"}
    drawn = SheetVisit(date(2026, 5, 9), combs=combs)
    assert unwritten_words(drawn, Question.EGGS) == "(4–6)"
    assert unwritten_words(drawn, Question.BROOD) == unwritten_words(None, Question.EGGS) == ""
    hefted = SheetVisit(date(2026, 5, 9), combs=combs, heft="14+15 kg")
    assert unwritten_words(hefted, Question.STORES) == "14+15 kg"


def test_brackets_are_explained_only_where_there_are_some() -> None:
    drawn = SheetVisit(date(2026, 5, 9), combs={Question.EGGS: "4–6"})
    assert "combs" in brackets_words((None, drawn), (Question.EGGS,))
    assert brackets_words((None, drawn), (Question.BROOD,)) == ""
    assert brackets_words((None, SheetVisit(date(2026, 5, 9))), tuple(Question)) == ""
