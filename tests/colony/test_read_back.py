from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.figures import visit_figures
from beeworkbook.colony.read_back import read_back, read_back_text
from beeworkbook.colony.records import (
    ColonyId,
    Event,
    EventId,
    EventKind,
    Feed,
    FeedId,
    FeedKind,
    FrameId,
    Level,
    Mark,
    MarkId,
    Question,
    VisitId,
)
from beeworkbook.colony.story import Field, VisitStory
from beeworkbook.colony.totals import VisitTotals
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind
from beeworkbook.comb.frames import FrameType
from tests.colony.making import DAY, answers, comb, totals, visit

ZANDER = FrameType("zander", "Zander", 400, 200)


def story(made: VisitTotals, **known: object) -> VisitStory:
    return VisitStory(made, visit_figures(made, ZANDER), **known)  # type: ignore[arg-type]


def told(made: VisitTotals, **known: object) -> str:
    return read_back_text("Wall", read_back(story(made, **known)))


def test_a_line_read_back_as_it_is_told_at_the_hive() -> None:
    charged = Mark(MarkId(1), VisitId(1), MarkKind.QUEEN_CELL, FrameId(6), Face.B, cell_kind=CellKind.CHARGED)
    text = told(
        totals(said=answers(eggs="4-6", queen="-", brood="5/3.9", stores="8")),
        marks=(charged, charged),
        places={FrameId(6): 6},
    )
    assert text == (
        "Wall: eggs on 4 to 6, queen not looked for, brood on 5 combs worth 3.9, two charged cells on 6B,"
        " 8 kg in store."
    )


def test_nothing_noted_is_not_made_into_something() -> None:
    assert read_back(story(totals())) == ()
    assert told(totals()) == "Wall: nothing noted yet."


def test_a_hive_not_opened() -> None:
    feed = Feed(FeedId(1), ColonyId(1), DAY, FeedKind.SYRUP, given_litres=1, sugar_parts=1, water_parts=1)
    before = Feed(
        FeedId(2),
        ColonyId(1),
        DAY,
        FeedKind.SYRUP,
        given_litres=2,
        sugar_parts=1,
        water_parts=1,
        left_litres=0.2,
    )
    text = told(
        totals(of=visit(level=Level.NOT_OPENED, next_day=date(2026, 5, 19), next_reason="feed look")),
        events=(Event(EventId(1), ColonyId(1), DAY, EventKind.HEFT, left_kg=14, right_kg=15),),
        feeds=(feed,),
        left=(before,),
    )
    assert text == (
        "Wall: not opened, heft 14 + 15 kg, together 29, 0.2 L left of 2 L 1:1, so 1.8 L taken,"
        " 1 L 1:1 given, look on 19 May: feed look."
    )


def test_a_colony_passed_over() -> None:
    assert told(totals(of=visit(level=Level.PASSED_OVER))) == "Wall: passed over."
    left = visit(level=Level.PASSED_OVER, note="It rained.")
    assert told(totals(of=left)) == "Wall: passed over, noted: “It rained”."


def test_the_keepers_own_words_are_read_back_and_lead_to_the_note() -> None:
    of = visit(note="Lid cracked,\nbring tape.  ")
    assert told(totals(of=of, said=answers(eggs="y"))) == "Wall: eggs seen, noted: “Lid cracked, bring tape”."
    assert read_back(story(totals(of=of)))[-1].target is Field.NOTE


def test_a_sentence_that_asks_has_no_full_stop_after_it() -> None:
    of = visit(next_day=date(2026, 5, 19), next_reason="feed look: how much is left?")
    assert told(totals(of=of)) == "Wall: look on 19 May: feed look: how much is left?"


def test_where_line_and_combs_are_at_odds_both_are_named() -> None:
    queen = Mark(MarkId(1), VisitId(1), MarkKind.QUEEN, FrameId(7), Face.A)
    sides = [side for place in (5, 6, 7) for side in comb(place, {Content.EGGS: 2, Content.SEALED: 6})]
    said = answers(queen="5A", eggs="3-7", brood="2/1.5")
    text = told(totals(*sides, said=said), marks=(queen,), places={FrameId(7): 7})
    assert "eggs on 3 to 7" in text  # a line may name combs that were not noted
    assert "eggs on 3 to 7 (" not in text
    assert "queen seen on 7A (the line 5A, the combs 7A)" in text
    assert "(3 of 11 combs looked at) (the line 2/1.5, the combs 3/3+)" in text


@pytest.mark.parametrize(
    ("question", "typed", "text"),
    [
        ("opened", "n", "not opened"),
        ("eggs", "y", "eggs seen"),
        ("eggs", "n", "no eggs seen"),
        ("eggs", "-", "eggs not looked for"),
        ("young", "y", "open brood seen"),
        ("queen", "5A blue", "queen seen on 5A, blue mark"),
        ("queen", "y", "queen seen"),
        ("queen", "n", "queen not seen"),
        ("brood", "7", "brood on 7 combs"),
        ("brood", "y", "brood seen"),
        ("brood", "n", "no brood"),
        ("brood", "-", "brood not looked for"),
        ("cells", "n", "no queen cells"),
        ("cells", "y", "queen cells seen"),
        ("cells", "-", "queen cells not looked for"),
        ("seams", "8", "8 seams of bees"),
        ("stores", "18 lb", "18 lb in store"),
        ("stores", "y", "some stores"),
        ("stores", "n", "no stores"),
        ("stores", "-", "stores not looked at"),
        ("pollen", "y", "pollen coming in"),
        ("pollen", "n", "no pollen coming in"),
        ("temper", "q", "quiet"),
        ("room", "y", "room enough"),
        ("room", "n", "too little room"),
        ("room", "2", "2 supers"),
        ("drawn", "y", "comb being drawn"),
        ("drawn", "1", "1 comb being drawn"),
        ("drawn", "n", "no comb being drawn"),
        ("signs", "n", "no sign of disease seen"),
        ("signs", "mummies", "mummies seen: ask your bee inspector"),
        ("signs", "y", "a sign of disease seen: ask your bee inspector"),
    ],
)
def test_each_answer_is_a_phrase_that_leads_to_its_field(question: str, typed: str, text: str) -> None:
    (phrase,) = read_back(story(totals(said=answers(**{question: typed}))))
    assert phrase.text == text
    assert phrase.target is Question(question)


def test_drawn_combs_are_read_back_with_how_many_were_looked_at() -> None:
    text = told(
        totals(*comb(2, {Content.EGGS: 2, Content.SEALED: 6}, covered=8), *comb(3, {Content.STORES: 8}))
    )
    assert "eggs on 2" in text
    assert "brood on 1 comb or more worth 1 (2 of 11 combs looked at)" in text
    assert "about 2 kg of stores on the combs looked at" in text
    assert "bees" in text
    none = told(totals(*comb(2, {Content.EMPTY: 8})))
    assert "no brood on the combs looked at" in none
    assert "no stores on the combs looked at" in none


@given(st.dictionaries(st.sampled_from(Question), st.sampled_from(["-", "y", "n"]), max_size=13))
def test_only_what_was_answered_is_read_back(typed: dict[Question, str]) -> None:
    typed = {
        question: "q" if question is Question.TEMPER else "8" if question is Question.SEAMS else answer
        for question, answer in typed.items()
    }
    said = answers(**{question.value: answer for question, answer in typed.items()})
    targets = {phrase.target for phrase in read_back(story(totals(said=said)))}
    assert targets <= set(typed)
    assert not targets & set(Field)
