"""A line and its combs: at odds only where somebody saw what the line cannot mean."""

from collections.abc import Mapping
from dataclasses import replace

import pytest

from beeworkbook.colony.at_odds import at_odds, combs_alone
from beeworkbook.colony.figures import visit_figures
from beeworkbook.colony.records import FrameId, Mark, MarkId, Question, VisitId
from beeworkbook.colony.story import VisitStory
from beeworkbook.colony.totals import SideTotals
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind, Origin
from tests.colony.making import answers, comb, totals

NEST = {Content.EGGS: 1, Content.OPEN: 1, Content.SEALED: 4, Content.STORES: 2}
OLDER = {Content.SEALED: 6, Content.STORES: 2}
UNAGED = {Content.BROOD: 6, Content.STORES: 2}
STORES = {Content.STORES: 8}
PLACES = {FrameId(number): number for number in range(1, 8)}


def mark(kind: MarkKind, place: int, cell_kind: CellKind | None = None, face: Face = Face.A) -> Mark:
    return Mark(MarkId(place), VisitId(1), kind, FrameId(place), face, cell_kind=cell_kind)


def box(*nest: int, of: Mapping[Content, float] = NEST) -> tuple[SideTotals, ...]:
    """Seven combs noted whole, brood on those named and stores on the others."""
    return tuple(side for n in range(1, 8) for side in comb(n, of if n in nest else STORES))


def story(*sides: SideTotals, marks: tuple[Mark, ...] = (), combs: int = 7, **typed: str) -> VisitStory:
    made = totals(*sides, combs=combs, said=answers(**typed))
    return VisitStory(made, visit_figures(made), marks, places=PLACES)


def test_the_slip_of_a_new_keeper_is_found_in_all_three_fields() -> None:
    sides = (*box(5, 6, 7),)
    made = story(*sides, marks=(mark(MarkKind.QUEEN, 7),), queen="5A", brood="4/2.6", eggs="4-7")
    assert at_odds(made) == {Question.QUEEN, Question.BROOD, Question.EGGS}


def test_a_line_that_says_the_same_is_not_at_odds() -> None:
    charged = mark(MarkKind.QUEEN_CELL, 6, CellKind.CHARGED, Face.B)
    made = story(
        *box(4, 5, 6),
        marks=(mark(MarkKind.QUEEN, 5), charged),
        opened="y", queen="5A blue", brood="3/2.2", eggs="4-6", young="y", cells="1C 6B", stores="9",
    )  # fmt: skip
    assert at_odds(made) == frozenset()


def test_a_line_alone_and_combs_alone_are_never_at_odds() -> None:
    assert at_odds(story(queen="5A", brood="4/2.6", eggs="4-7", cells="n")) == frozenset()
    assert at_odds(story(*box(4, 5))) == frozenset()


def test_of_some_combs_only_the_line_may_say_more_but_not_less() -> None:
    two = (*comb(4, NEST), *comb(5, NEST))
    assert at_odds(story(*two, brood="6/4", eggs="4-7", stores="12")) == frozenset()
    assert at_odds(story(*two, brood="1/0.6", eggs="4", stores="0.2")) == {
        Question.BROOD,
        Question.EGGS,
        Question.STORES,
    }
    assert at_odds(story(*two, brood="n", eggs="n", young="n", stores="n")) == {
        Question.BROOD,
        Question.EGGS,
        Question.YOUNG,
        Question.STORES,
    }


def test_what_nobody_looked_at_or_named_proves_nothing() -> None:
    in_part = tuple(replace(side, unrecorded_dm2=2.0) for side in comb(4, OLDER))
    assert at_odds(story(*in_part, eggs="4")) == frozenset()
    assert at_odds(story(*comb(4, UNAGED), eggs="4")) == frozenset()
    assert at_odds(story(comb(4, OLDER)[0], eggs="4")) == frozenset()  # the other side may have them
    assert at_odds(story(*comb(4, NEST, origin=Origin.ASSUMED), eggs="5", brood="n")) == frozenset()
    assert at_odds(story(*comb(4, OLDER), eggs="4")) == {Question.EGGS}


def test_a_hive_said_not_to_be_opened_whose_combs_were_noted() -> None:
    assert at_odds(story(*box(4), opened="n")) == {Question.OPENED}


@pytest.mark.parametrize(
    ("typed", "marked", "odd"),
    [
        ("n", (CellKind.CHARGED,), True),
        ("n", (CellKind.PLAY_CUP,), False),
        ("1C", (CellKind.CHARGED,), False),
        ("2C", (CellKind.CHARGED,), False),  # the other was seen and not marked
        ("1C", (CellKind.CHARGED, CellKind.CHARGED), True),
        ("1 charged 5B", (CellKind.CHARGED,), True),  # marked on 6A
        ("2", (CellKind.CHARGED, CellKind.SEALED), False),
        ("1", (CellKind.CHARGED, CellKind.SEALED), True),
        ("y", (CellKind.CHARGED,), False),
    ],
)
def test_queen_cells(typed: str, marked: tuple[CellKind, ...], odd: bool) -> None:
    marks = tuple(mark(MarkKind.QUEEN_CELL, 6, kind) for kind in marked)
    assert (Question.CELLS in at_odds(story(marks=marks, cells=typed))) is odd


@pytest.mark.parametrize(
    ("typed", "odd"), [("n", True), ("5A", True), ("7B", True), ("7", False), ("7A", False), ("y", False)]
)
def test_where_the_queen_was(typed: str, odd: bool) -> None:
    made = story(*box(4), marks=(mark(MarkKind.QUEEN, 7),), queen=typed)
    assert (Question.QUEEN in at_odds(made)) is odd


def test_more_stores_in_the_line_than_a_box_looked_through_can_hold() -> None:
    assert at_odds(story(*box(4, 5, 6), stores="25")) == {Question.STORES}


def test_the_combs_alone_know_nothing_that_was_typed() -> None:
    made = combs_alone(story(*comb(4, NEST), brood="6/4", combs=11))
    assert made.totals.answers == {}
    assert made.figures.brood is not None
    assert made.figures.brood.combs == 1


def test_stores_that_would_be_called_hungry_are_named_beside_a_line_that_would_not() -> None:
    thin = tuple(side for n in range(1, 8) for side in comb(n, {Content.STORES: 1.8, Content.EMPTY: 6.2}))
    assert story(*thin, stores="8").figures.stores.kg < 4.5  # type: ignore[union-attr]
    assert at_odds(story(*thin, stores="8")) == {Question.STORES}
    spread = tuple(side for n in range(1, 11) for side in comb(n, {Content.STORES: 1.2, Content.EMPTY: 6.8}))
    assert at_odds(story(*spread, combs=10, stores="8")) == {Question.STORES}
    assert at_odds(story(*spread, combs=10, stores="3.5")) == frozenset()
    in_part = tuple(replace(side, unrecorded_dm2=2.0) for side in thin)
    assert at_odds(story(*in_part, stores="8")) == frozenset()
