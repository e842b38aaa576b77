from dataclasses import replace
from datetime import date

import pytest

from beeworkbook.colony.records import Question, Reply
from beeworkbook.colony.sheet_models import CombSheetModel, SheetAnswer, SheetVisit
from beeworkbook.papers.comb_forms import field_form, forms
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.page_fields import (
    broken,
    fields_height,
    note_texts,
    text_columns,
    weather_words,
)
from tests.papers import invented
from tests.papers.printed import cut, darkness, print_combs


@pytest.mark.parametrize("reply", list(Reply))
def test_exactly_the_reply_given_is_ticked(reply: Reply) -> None:
    answers = {Question.EGGS: SheetAnswer("", reply)}
    model = invented.model(invented.box(places=3), filled=True, visit=invented.visit(answers=answers))
    printed = print_combs(model)
    page, picture = printed.maps[0].pages[0], printed.picture(0)
    ticked = [
        each
        for each in Reply
        if darkness(cut(picture, page.field(f"page.eggs.{each}").place.inset(0.6))) > 0.05
    ]
    assert ticked == [reply]


def test_what_was_seen_on_a_comb_is_ticked_where_nobody_answered_and_never_against_an_answer() -> None:
    def ticked(model: CombSheetModel, question: str) -> list[Reply]:
        printed = print_combs(model)
        page = next(
            page for page in printed.maps[0].pages if any(f.name == "page.temper" for f in page.fields)
        )
        picture = printed.picture(page.page - 1)
        places = {reply: page.field(f"page.{question}.{reply}").place.inset(0.6) for reply in Reply}
        return [reply for reply, place in places.items() if darkness(cut(picture, place)) > 0.05]

    silent = invented.model(invented.marked_box(), filled=True, visit=invented.visit(answers={}))
    assert [ticked(silent, question) for question in ("eggs", "queen", "cells", "signs")] == [
        [Reply.YES],
        [Reply.YES],
        [Reply.YES],
        [],
    ]
    said = {Question.EGGS: SheetAnswer("-", Reply.NOT_LOOKED)}
    spoken = invented.model(invented.marked_box(), filled=True, visit=invented.visit(answers=said))
    assert ticked(spoken, "eggs") == [Reply.NOT_LOOKED]


def test_what_is_only_assumed_ticks_nothing() -> None:
    from beeworkbook.comb.contents import Origin

    box = invented.box(places=3, origins=dict.fromkeys((1, 2, 3), Origin.ASSUMED))
    printed = print_combs(invented.model(box, filled=True, visit=invented.visit(answers={})))
    place = printed.maps[0].pages[0].field("page.eggs.yes").place
    assert darkness(cut(printed.picture(0), place.inset(0.6))) < 0.01


def test_what_was_typed_stands_beside_where_it_says_more_than_the_tick() -> None:
    answers = {Question.CELLS: SheetAnswer("2U", Reply.YES), Question.EGGS: SheetAnswer("y", Reply.YES)}
    model = invented.model(invented.box(places=3), filled=True, visit=invented.visit(answers=answers))
    text = print_combs(model).whole_text
    assert "Queen cells 2 cups" in text
    assert "Eggs seen yes no" in text


def test_a_question_left_blank_has_nothing_ticked() -> None:
    model = invented.model(invented.box(places=3), filled=True, visit=invented.visit(answers={}))
    printed = print_combs(model)
    page, picture = printed.maps[0].pages[0], printed.picture(0)
    for reply in Reply:
        assert darkness(cut(picture, page.field(f"page.queen.{reply}").place.inset(0.6))) < 0.01


def test_a_filled_page_says_what_was_noted_and_a_blank_one_what_was_last_time() -> None:
    filled = print_combs(invented.model(invented.box(places=3), filled=True)).whole_text
    for words in (
        "quiet",
        "8 kg",
        "2L 1:1",
        "0.5 L",
        "fine, 18 °C",
        "23 May",
        "Brood on 7 combs, worth 4.2.",
    ):
        assert words in filled
    blank = print_combs(invented.model(invented.box(places=3))).whole_text
    for words in ("Temper quiet", "Eggs seen 9 May yes", "Queen seen 9 May –", "Notes"):
        assert words in blank
    assert "Brood on 7 combs" not in blank


def test_what_the_combs_say_stands_in_brackets_where_nothing_was_typed() -> None:
    combs = {Question.EGGS: "2–6", Question.STORES: "12+ kg", Question.BROOD: "5/3.8"}
    last = replace(invented.last_visit(), answers={}, combs=combs)
    blank = print_combs(invented.model(invented.box(places=3), last=last)).whole_text
    for words in ("Eggs seen 9 May (2–6)", "Stores (12+ kg)", "In brackets: read off the combs."):
        assert words in blank
    now = invented.visit(answers={Question.EGGS: SheetAnswer("y", Reply.YES)}, combs=combs)
    filled = print_combs(invented.model(invented.box(places=3), filled=True, visit=now)).whole_text
    assert "(12+ kg)" in filled
    assert "(2–6)" not in filled
    assert "In brackets" in filled


def test_a_sheet_of_a_colony_never_looked_at_has_no_last_time() -> None:
    text = print_combs(invented.model(invented.box(places=3), last=None)).whole_text
    assert "Eggs seen yes no not looked" in text


@pytest.mark.parametrize("paper", list(Paper))
def test_notes_keep_clear_of_the_markers(paper: Paper) -> None:
    for form in forms(paper):
        columns = text_columns(form, form.body)
        for column in (columns.left, columns.right):
            assert not any(column.overlaps(marker.inset(-0.9)) for marker in form.markers)
        assert columns.lines > 20


@pytest.mark.parametrize("paper", [Paper.A4, Paper.LETTER])
def test_the_fields_and_some_notes_fit_where_one_frame_would_be(paper: Paper) -> None:
    form = field_form(paper)
    assert fields_height(form) + 15.0 <= form.rows[0].whole.height


def test_what_is_told_in_words_keeps_its_order() -> None:
    model = invented.model(filled=True, bring=("2 L syrup 1:1",))
    texts = note_texts(model, ["6B: charged queen cell"])
    assert texts[0].startswith("Brood on 7 combs")
    assert texts[1].startswith("Two play cups")
    assert texts[2] == "6B: charged queen cell"
    assert texts[3].startswith("In flower: hawthorn. Next look 23 May: unclipped queen")
    assert texts[3].endswith("Bring: 2 L syrup 1:1.")
    assert len(texts) == 4
    assert note_texts(invented.model(), []) == []
    bare = SheetVisit(date(2026, 5, 16))
    assert note_texts(invented.model(filled=True, visit=bare), []) == []


def test_texts_are_broken_to_the_column() -> None:
    assert broken(["one two", "", "three"], 500) == ["one two", "three"]


def test_weather_is_said_as_far_as_it_was_noted() -> None:
    assert weather_words(invented.visit()) == "fine, 18 °C"
    assert weather_words(invented.visit(weather="")) == "18 °C"
    assert weather_words(invented.visit(temperature_c=None)) == "fine"


def test_a5_asks_the_same() -> None:
    printed = print_combs(invented.model(invented.box(places=3)), options=PaperOptions(Paper.A5))
    names = {field.name for page in printed.maps[0].pages for field in page.fields}
    assert {"page.signs.not_looked", "page.feed_given", "page.notes.right"} <= names


def test_what_is_next_ends_in_one_sign() -> None:
    asks = invented.visit(next_day=date(2026, 5, 19), next_reason="feed look: how much is left?")
    (text,) = [
        text for text in note_texts(invented.model(filled=True, visit=asks), ()) if "Next look" in text
    ]
    assert "how much is left?" in text
    assert "?." not in text


def test_a_blank_sheet_has_the_combs_of_last_time_where_its_line_was_at_odds_with_them() -> None:
    answers = {Question.STORES: SheetAnswer("8", Reply.YES), Question.EGGS: SheetAnswer("4-6", Reply.YES)}
    plain = SheetVisit(date(2026, 5, 9), answers=answers, heft="14+15 kg")
    model = invented.model(invented.box(places=3))
    assert "Stores 8 kg" in print_combs(replace(model, last=plain)).whole_text
    odd = replace(plain, combs={Question.STORES: "12 kg", Question.EGGS: "5–7"})
    text = print_combs(replace(model, last=odd)).whole_text
    assert "Stores (12 kg)" in text
    assert "Eggs seen 9 May (5–7)" in text
