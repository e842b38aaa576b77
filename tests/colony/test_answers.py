import pytest

from beeworkbook.colony.answers import BLANK, TEMPERS, WRITTEN, plain_reply
from beeworkbook.colony.records import Question, Reply


def test_a_blank_answer_says_nothing_at_all() -> None:
    assert (BLANK.typed, BLANK.reply, BLANK.number, BLANK.second) == ("", None, None, None)


@pytest.mark.parametrize("question", [each for each in Question if each is not Question.TEMPER])
def test_no_and_none_are_a_plain_no(question: Question) -> None:
    assert plain_reply(question, "n") is plain_reply(question, "none") is Reply.NO


def test_only_a_plain_word_is_a_plain_reply() -> None:
    assert plain_reply(Question.EGGS, "yes") is Reply.YES
    assert plain_reply(Question.SEAMS, "y") is None, "yes is no number of seams"
    assert plain_reply(Question.TEMPER, "n") is None, "no is no temper"
    assert plain_reply(Question.BROOD, "7/4.2") is None


def test_the_better_words_say_yes_and_no_themselves() -> None:
    for (question, reply), word in WRITTEN.items():
        assert plain_reply(question, word) is reply


def test_every_temper_has_the_key_it_begins_with() -> None:
    assert all(word.startswith(key) for key, word in TEMPERS.items())
