from beeworkbook.colony.answers import ParsedAnswer
from beeworkbook.colony.questions import parse_answer
from beeworkbook.colony.records import Question, Reply
from beeworkbook.colony.said import CellsSaid, QueenSaid
from beeworkbook.colony.written import (
    cells_said,
    combs_said,
    queen_said,
    sign_words,
    temper_words,
    write_answer,
)
from beeworkbook.comb.contents import CellKind, Face
from beeworkbook.words import Catalogue, use_catalogue


def test_combs_with_a_gap_are_not_said_to_be_a_row() -> None:
    assert combs_said(parse_answer(Question.EGGS, "4,5,7")) == (4, 5, 7)
    assert combs_said(parse_answer(Question.EGGS, "y")) == ()


def test_cells_keep_kind_and_place() -> None:
    assert cells_said(parse_answer(Question.CELLS, "1c 5b 2u")) == (
        CellsSaid(CellKind.CHARGED, 1, 5, Face.B),
        CellsSaid(CellKind.PLAY_CUP, 2),
    )
    assert cells_said(parse_answer(Question.CELLS, "n")) == ()


def test_a_queen_keeps_place_and_mark() -> None:
    assert queen_said(parse_answer(Question.QUEEN, "5A blue")) == QueenSaid(5, Face.A, "blue")
    assert queen_said(parse_answer(Question.QUEEN, "n")) == QueenSaid()


def test_answers_whose_words_are_lost_still_speak_from_their_numbers() -> None:
    assert combs_said(ParsedAnswer("??", Reply.YES, 4, 6)) == (4, 6)
    assert combs_said(ParsedAnswer("??", Reply.YES, 4)) == (4,)
    assert cells_said(ParsedAnswer("??", Reply.YES, 1, 2)) == (
        CellsSaid(None, 1),
        CellsSaid(CellKind.PLAY_CUP, 2),
    )
    assert queen_said(ParsedAnswer("??", Reply.YES, 5, 2)) == QueenSaid(5, Face.B)
    assert write_answer(Question.STORES, ParsedAnswer("??", Reply.YES, 8)) == "8 kg"


def test_temper_and_signs_are_words() -> None:
    assert temper_words(parse_answer(Question.TEMPER, "qq s")) == ("quiet", "steady")
    assert temper_words(parse_answer(Question.TEMPER, "quiet, but robbing")) == ("quiet", "but robbing")
    assert sign_words(parse_answer(Question.SIGNS, "n")) == ()
    assert sign_words(parse_answer(Question.SIGNS, "y")) == ()


def test_answers_written_in_another_language_can_be_typed_again() -> None:
    use_catalogue(
        Catalogue(
            {"cups": "Näpfchen", "charged": "bestiftet", "none": "keine", "seen": "gesehen"}, decimal_sign=","
        )
    )
    try:
        for question, typed in (
            (Question.CELLS, "2U 1C"),
            (Question.CELLS, "n"),
            (Question.EGGS, "y"),
            (Question.BROOD, "7/4.2"),
        ):
            answer = parse_answer(question, typed)
            again = parse_answer(question, write_answer(question, answer))
            assert (again.reply, again.number, again.second) == (answer.reply, answer.number, answer.second)
        assert (
            write_answer(Question.CELLS, parse_answer(Question.CELLS, "2U 1C")) == "2 Näpfchen, 1 bestiftet"
        )
        assert write_answer(Question.BROOD, parse_answer(Question.BROOD, "7/4.2")) == "7/4,2"
    finally:
        use_catalogue({})
