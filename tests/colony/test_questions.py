import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.answers import BLANK
from beeworkbook.colony.questions import (
    ParsedAnswer,
    QuestionError,
    one_key,
    parse_answer,
    write_answer,
)
from beeworkbook.colony.records import Question, Reply

YES, NO, NOT = Reply.YES, Reply.NO, Reply.NOT_LOOKED


@pytest.mark.parametrize(
    ("question", "typed", "reply", "first", "second"),
    [
        (Question.OPENED, "y", YES, None, None),
        (Question.OPENED, "No", NO, None, None),
        (Question.EGGS, "4-6", YES, 4, 6),
        (Question.EGGS, "5", YES, 5, None),
        (Question.EGGS, "4,5,7", YES, 4, 7),
        (Question.YOUNG, "4 to 6", YES, 4, 6),
        (Question.BROOD, "7/4.2", YES, 7, 4.2),
        (Question.BROOD, "7 4,2", YES, 7, 4.2),
        (Question.BROOD, "7", YES, 7, None),
        (Question.BROOD, "0", NO, None, None),
        (Question.POLLEN, "in", YES, None, None),
        (Question.SEAMS, "8", YES, 8, None),
        (Question.SEAMS, "6,5 seams", YES, 6.5, None),
        (Question.SEAMS, "0", NO, None, None),
        (Question.STORES, "8", YES, 8, None),
        (Question.STORES, "8.5 kg", YES, 8.5, None),
        (Question.STORES, "8,5", YES, 8.5, None),
        (Question.STORES, "10 lb", YES, 4.5359237, None),
        (Question.CELLS, "2 cup 1 charged", YES, 1, 2),
        (Question.CELLS, "2U 1C", YES, 1, 2),
        (Question.CELLS, "2U1C 5B", YES, 1, 2),
        (Question.CELLS, "3", YES, 3, 0),
        (Question.CELLS, "0", NO, None, None),
        (Question.QUEEN, "5A", YES, 5, 1),
        (Question.QUEEN, "5b blue", YES, 5, 2),
        (Question.QUEEN, "blue", YES, None, None),
        (Question.QUEEN, "n", NO, None, None),
        (Question.TEMPER, "q", YES, None, None),
        (Question.TEMPER, "grumpy", YES, None, None),
        (Question.ROOM, "s", YES, None, None),
        (Question.ROOM, "2", YES, 2, None),
        (Question.ROOM, "n", NO, None, None),
        (Question.DRAWN, "3", YES, 3, None),
        (Question.SIGNS, "mummies", YES, None, None),
        (Question.SIGNS, "n", NO, None, None),
    ],
)
def test_what_is_typed_is_understood(
    question: Question, typed: str, reply: Reply, first: float | None, second: float | None
) -> None:
    answer = parse_answer(question, typed)
    assert (answer.reply, answer.number, answer.second) == (reply, first, second)
    assert answer.typed == typed


@pytest.mark.parametrize("question", Question)
def test_blank_is_blank_and_a_dash_is_not_looked(question: Question) -> None:
    assert parse_answer(question, "  ") == BLANK
    assert parse_answer(question, "-").reply is NOT
    assert write_answer(question, BLANK) == ""
    assert write_answer(question, parse_answer(question, "-")) == "not looked"


@pytest.mark.parametrize("question", Question)
def test_a_key_that_moves_on_is_a_whole_answer(question: Question) -> None:
    for key in one_key(question):
        assert parse_answer(question, key).reply is not None


@pytest.mark.parametrize(
    ("question", "typed", "written"),
    [
        (Question.EGGS, "4-6", "4–6"),
        (Question.EGGS, "4 5 7", "4, 5, 7"),
        (Question.EGGS, "y", "seen"),
        (Question.BROOD, "7 4,2", "7/4.2"),
        (Question.STORES, "8", "8 kg"),
        (Question.STORES, "18 lb", "18 lb"),
        (Question.CELLS, "2U 1C 5B", "2 cups, 1 charged 5B"),
        (Question.CELLS, "1u", "1 cup"),
        (Question.CELLS, "n", "none"),
        (Question.QUEEN, "5 a bl", "5A blue"),
        (Question.QUEEN, "n", "not seen"),
        (Question.TEMPER, "qs", "quiet, steady"),
        (Question.ROOM, "s", "super on"),
        (Question.ROOM, "1", "1 super"),
        (Question.ROOM, "excluder too", "excluder too"),
        (Question.SIGNS, "mumm, odd smell", "mummies, odd smell"),
    ],
)
def test_an_answer_is_written_short(question: Question, typed: str, written: str) -> None:
    assert write_answer(question, parse_answer(question, typed)) == written


@pytest.mark.parametrize(
    ("question", "typed", "says"),
    [
        (Question.OPENED, "perhaps", "Type y or n"),
        (Question.EGGS, "6-4", "no combs 6-4"),
        (Question.EGGS, "&", "names no combs"),
        (Question.EGGS, "middle", "names no combs"),
        (Question.BROOD, "7.5", "counted whole"),
        (Question.BROOD, "4/5", "worth 4 at most"),
        (Question.BROOD, "4/-1", "not below nought"),
        (Question.BROOD, "4/3/2", "as 7/4.2"),
        (Question.BROOD, "/", "as 7/4.2"),
        (Question.SEAMS, "y", "not a number"),
        (Question.SEAMS, "700", "more or less than there can be"),
        (Question.STORES, "2 L", "kilograms"),
        (Question.STORES, "8 stone", "not a unit"),
        (Question.STORES, "1 pint", "land to land"),
        (Question.STORES, "heavy", "not an amount"),
        (Question.CELLS, "3 foo", "no queen cell"),
        (Question.CELLS, "1 2", "not clear"),
        (Question.CELLS, "5b", "not clear"),
        (Question.CELLS, "1c?", "not clear"),
        (Question.QUEEN, "somewhere", "5A blue"),
        (Question.TEMPER, "x", "q quiet"),
        (Question.TEMPER, "7", "q quiet"),
        (Question.ROOM, "x", "y or n"),
        (Question.DRAWN, "2.5", "whole number"),
        (Question.SIGNS, "m", "what was seen"),
        (Question.POLLEN, "a lot", "y or n"),
    ],
)
def test_what_is_no_answer_is_said_in_one_sentence(question: Question, typed: str, says: str) -> None:
    with pytest.raises(QuestionError, match=says):
        parse_answer(question, typed)


def test_a_long_text_belongs_in_the_note() -> None:
    with pytest.raises(QuestionError, match="note"):
        parse_answer(Question.SIGNS, "a" * 201)


TYPED = st.one_of(
    st.text(alphabet="yn-0123456789.,/: abcdehklmopqrstuvwABCU", max_size=14),
    st.sampled_from(["y", "n", "-", "4-6", "7/4.2", "8 kg", "2U 1C 5B", "5A blue", "q", "s", "2 supers"]),
)


@given(question=st.sampled_from(Question), typed=TYPED)
def test_what_is_written_typed_again_means_the_same(question: Question, typed: str) -> None:
    try:
        answer = parse_answer(question, typed)
    except QuestionError:
        return
    again = parse_answer(question, write_answer(question, answer))
    assert _meaning(again) == _meaning(answer)
    assert write_answer(question, again) == write_answer(question, answer)


def _meaning(answer: ParsedAnswer) -> tuple[object, ...]:
    # A field shows three decimals at most, which is more than anyone types of a weight.
    return answer.reply, round(answer.number or 0, 2), round(answer.second or 0, 2)
