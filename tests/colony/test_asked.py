from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.asked import asked_questions, full_question, heading, may_be_typed, write_left_out
from beeworkbook.colony.records import Question


def test_every_question_has_a_short_heading_of_its_own_and_asks() -> None:
    headings = {heading(question) for question in Question}
    assert len(headings) == len(Question)
    for question in Question:
        assert len(heading(question)) <= 8
        assert full_question(question).endswith("?")
        assert may_be_typed(question)


@given(st.sets(st.sampled_from(Question)))
def test_questions_left_out_are_not_asked(out: set[Question]) -> None:
    assert set(asked_questions(write_left_out(out))) == set(Question) - out


def test_the_order_is_the_order_of_the_round_and_strange_words_do_not_count() -> None:
    assert asked_questions("brood, no such question")[:4] == (
        Question.OPENED,
        Question.EGGS,
        Question.YOUNG,
        Question.POLLEN,
    )
