from dataclasses import replace

import pytest

from beeworkbook.colony.records import Question
from beeworkbook.papers.options import Paper
from beeworkbook.papers.round_columns import TICK_MM, last_words, strips
from tests.papers import invented


def test_columns_stand_in_the_order_they_are_asked() -> None:
    (strip,) = strips(invented.round_model(), Paper.A4, 240.0)
    keys = [column.key for column in strip]
    assert keys == [*(question.value for question in Question), "feed", "left", "note", "next", "bring"]


@pytest.mark.parametrize(("paper", "width"), [(Paper.A4, 240.0), (Paper.LETTER, 229.4), (Paper.A5, 160.0)])
def test_the_columns_fill_the_width_and_boxes_have_room(paper: Paper, width: float) -> None:
    for strip in strips(invented.round_model(), paper, width):
        assert sum(column.width for column in strip) == pytest.approx(width)
        assert all(column.width > TICK_MM + 1 for column in strip)


def test_what_a_round_leaves_out_is_not_printed_and_leaves_its_room_to_the_note() -> None:
    whole = {column.key: column.width for column in strips(invented.round_model(), Paper.A4, 240.0)[0]}
    left_out = frozenset({Question.YOUNG, Question.DRAWN})
    less = {
        column.key: column.width
        for column in strips(invented.round_model(left_out=left_out), Paper.A4, 240.0)[0]
    }
    assert "young" not in less
    assert less["note"] == pytest.approx(whole["note"] + whole["young"] + whole["drawn"])


def test_a_round_may_ask_nothing() -> None:
    model = invented.round_model(left_out=frozenset(Question))
    assert [len(strip) for strip in strips(model, Paper.A5, 160.0)] == [0, 5]


def test_last_time_is_said_as_it_was_and_blank_stays_blank() -> None:
    (strip,) = strips(invented.round_model(), Paper.A4, 240.0)
    row = invented.round_model().rows[0]
    said = {column.key: last_words(column, row) for column in strip}
    assert said["eggs"] == "yes"
    assert said["queen"] == "–"
    assert said["brood"] == "7/4.2"
    assert said["cells"] == "2 cups"
    assert said["feed"] == "2L 1:1"
    assert said["next"] == "23 May"
    assert said["young"] == ""
    assert said["bring"] == "2 L syrup 1:1, super"


def test_a_field_nobody_typed_in_has_what_the_combs_said() -> None:
    (strip,) = strips(invented.round_model(), Paper.A4, 240.0)
    last = replace(invented.last_visit(), combs={Question.YOUNG: "3–8"}, heft="14+15 kg", answers={})
    row = replace(invented.round_model().rows[0], last=last)
    said = {column.key: last_words(column, row) for column in strip}
    assert (said["young"], said["stores"], said["eggs"]) == ("(3–8)", "14+15 kg", "")


def test_where_the_line_was_at_odds_with_them_the_combs_are_printed() -> None:
    (strip,) = strips(invented.round_model(), Paper.A4, 240.0)
    last = replace(invented.last_visit(), combs={Question.EGGS: "5–7"})
    said = {
        column.key: last_words(column, replace(invented.round_model().rows[0], last=last)) for column in strip
    }
    assert Question.EGGS in last.answers
    assert (said["eggs"], said["brood"]) == ("(5–7)", "7/4.2")


def test_that_a_colony_was_passed_over_stands_before_the_note() -> None:
    (strip,) = strips(invented.round_model(), Paper.A4, 240.0)
    note = next(column for column in strip if column.key == "note")
    row = replace(invented.round_model().rows[0], passed="passed over 16 May: rain")
    assert row.last is not None
    row = replace(row, last=replace(row.last, note="lid cracked"))
    assert last_words(note, row) == "passed over 16 May: rain; lid cracked"
    assert last_words(note, replace(row, last=None)) == "passed over 16 May: rain"


def test_a_colony_never_looked_at_says_nothing() -> None:
    (strip,) = strips(invented.round_model(), Paper.A4, 240.0)
    row = invented.round_model().rows[2]
    assert row.last is None
    assert {last_words(column, row) for column in strip} == {""}
