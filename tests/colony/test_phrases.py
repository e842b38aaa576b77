from datetime import date, time

import pytest

from beeworkbook.colony import phrases
from beeworkbook.colony.figures import EggsSeen, visit_figures
from beeworkbook.colony.records import (
    ApiaryId,
    ColonyId,
    Event,
    EventId,
    EventKind,
    Feed,
    FeedId,
    FeedKind,
    Level,
    Round,
    RoundId,
)
from beeworkbook.colony.said import CellsSaid
from beeworkbook.comb.contents import CellKind, Content, Face
from tests.colony.making import DAY, comb, totals


@pytest.mark.parametrize(
    ("combs", "words"),
    [((5,), "5"), ((4, 5), "4 and 5"), ((4, 5, 6), "4 to 6"), ((4, 5, 7), "4, 5 and 7"), ((), "")],
)
def test_combs_in_a_sentence(combs: tuple[int, ...], words: str) -> None:
    assert phrases.comb_list(combs) == words


def test_a_place_and_a_row_of_combs_with_their_boxes() -> None:
    upper = "in the upper box"
    assert phrases.place_words(5, Face.A) == "5A"
    assert phrases.place_words(5, None, upper) == "5 in the upper box"
    assert phrases.place_words(None, None, upper) == ""
    assert phrases.combs_where([]) == ""
    assert phrases.combs_where([("", 6), ("", 4), ("", 5), ("", 4)]) == "4 to 6"
    three = [("in box 1", 4), ("in box 2", 4), ("in box 3", 5), ("in box 1", 5)]
    assert phrases.combs_where(three) == "4 and 5 in box 1, 4 in box 2 and 5 in box 3"
    cells = CellsSaid(CellKind.CHARGED, 2, 6, Face.B, upper)
    assert phrases.cells_words(cells) == "two charged cells on 6B in the upper box"


def test_small_counts_are_words() -> None:
    assert [phrases.count_words(count) for count in (0, 1, 10, 11)] == ["no", "one", "ten", "11"]


def test_days_since_eggs_are_the_state_of_a_colony() -> None:
    assert phrases.eggs_state(EggsSeen(DAY, 0)) == "eggs seen today"
    assert phrases.eggs_state(EggsSeen(DAY, 1)) == "eggs last seen yesterday, on 16 May"
    assert phrases.eggs_state(EggsSeen(DAY, 7)) == "eggs last seen on 16 May, 7 days ago"
    assert phrases.eggs_state(None) == "no eggs on record"


def test_a_round_says_what_was_asked_once() -> None:
    held = Round(RoundId(1), ApiaryId(1), DAY, time(17), "fine", 18, "a helper", "hawthorn")
    assert phrases.round_words(held) == "fine, 18 °C, with a helper, hawthorn in flower"
    assert phrases.round_words(Round(RoundId(1), ApiaryId(1), DAY)) == ""
    assert phrases.titled("fine, 18 °C") == "Fine, 18 °C"
    assert phrases.titled("") == ""


def test_cells_in_a_sentence() -> None:
    assert phrases.cells_words(CellsSaid(CellKind.CHARGED, 2, 6, Face.B)) == "two charged cells on 6B"
    assert phrases.cells_words(CellsSaid(CellKind.PLAY_CUP, 1, 5)) == "a play cup on 5"
    assert len({phrases.cells_words(CellsSaid(kind, 1)) for kind in (*CellKind, None)}) == len(CellKind) + 1


def test_figures_have_two_places_and_say_about() -> None:
    figures = visit_figures(totals(*comb(1, {Content.SEALED: 3, Content.STORES: 5}, covered=5), combs=1))
    assert figures.brood is not None
    assert figures.stores is not None
    assert figures.bees is not None
    assert phrases.brood_cells(figures.brood) == "about 2\u202f400 cells: 2\u202f400 sealed"
    assert phrases.drone_cells(figures.brood) == ""
    assert phrases.stores_value(figures.stores) == "about 1.3 kg"
    assert phrases.stores_said(figures.stores) == "about 1.3 kg in store"
    assert phrases.bees_value(figures.bees) == "about 1\u202f300"


def test_what_was_not_looked_at_is_said() -> None:
    figures = visit_figures(totals(*comb(1, {Content.EMPTY: 8}, covered=5), combs=11))
    assert figures.brood is not None
    assert figures.stores is not None
    assert figures.bees is not None
    assert phrases.brood_value(figures.brood, figures) == "none on the combs looked at"
    assert phrases.stores_value(figures.stores) == "none on the combs looked at"
    assert phrases.stores_said(figures.stores) == "no stores on the combs looked at"
    assert phrases.bees_value(figures.bees).endswith("on the sides looked at")
    assert phrases.looked_at(figures) == "1 of 11 combs"
    half = visit_figures(totals(comb(1, {Content.EMPTY: 8})[0], combs=1))
    assert phrases.looked_at(half) == "not both sides of every comb"


def test_feed_left_is_feed_taken() -> None:
    feed = Feed(FeedId(1), ColonyId(1), DAY, FeedKind.FONDANT, given_kg=2.5, left_kg=0.5)
    assert phrases.feed_given(feed) == "2.5 kg fondant given"
    assert phrases.feed_left(feed) == "0.5 kg left of 2.5 kg fondant, so 2 kg taken"


def test_hefts() -> None:
    def heft(left: float | None, right: float | None) -> Event:
        return Event(EventId(1), ColonyId(1), DAY, EventKind.HEFT, left_kg=left, right_kg=right)

    assert phrases.heft_words(heft(14, 15)) == "heft 14 + 15 kg, together 29"
    assert phrases.heft_words(heft(14, None)) == "heft 14 kg on one side"
    assert phrases.heft_words(heft(None, None)) == "hefted"
    assert phrases.heft_value(heft(None, None)) == "not weighed"


def test_levels_and_next_looks_have_words() -> None:
    assert len({phrases.level_words(level) for level in Level}) == len(Level)
    assert phrases.next_words(date(2026, 5, 19), "") == "look on 19 May"
    assert phrases.next_words(date(2026, 5, 19), "a charged cell") == "look on 19 May: a charged cell"


@pytest.mark.parametrize(
    ("text", "said"),
    [("seen", "seen."), ("how much is left?", "how much is left?"), ("so be it.", "so be it.")],
)
def test_a_sentence_ends_in_one_sign(text: str, said: str) -> None:
    assert phrases.closed(text) == said


def test_a_dab_of_brood_is_no_figure_of_four_places() -> None:
    dab = comb(1, {Content.SEALED: 0.03, Content.EMPTY: 7.97})
    whole, part = visit_figures(totals(*dab, combs=1)), visit_figures(totals(*dab, combs=11))
    assert whole.brood is not None
    assert part.brood is not None
    assert phrases.brood_value(whole.brood, whole) == "on 1 comb, worth less than 0.1"
    assert phrases.brood_said(whole.brood, whole) == "brood on 1 comb worth less than 0.1"
    assert phrases.brood_value(part.brood, part) == "on 1 comb or more"
    assert phrases.brood_said(part.brood, part) == "brood on 1 comb or more"
