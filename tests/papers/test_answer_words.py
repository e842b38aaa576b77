import pytest

from beeworkbook.colony.records import Question, Reply
from beeworkbook.colony.sheet_models import SheetAnswer
from beeworkbook.papers.answer_words import answer_words, reply_words, says_more, ticked_words


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
