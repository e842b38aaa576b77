"""What combs say in the fields of a line: only what was seen, and only where nothing was typed."""

from collections.abc import Mapping

from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.figures import visit_figures
from beeworkbook.colony.from_combs import CombsSay, differences, from_combs
from beeworkbook.colony.questions import parse_answer, write_answer
from beeworkbook.colony.records import Answer, FrameId, Mark, MarkId, PartKind, Question, VisitId
from beeworkbook.colony.story import VisitStory
from beeworkbook.colony.totals import VisitTotals
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind, Origin
from tests.colony.making import answers, comb, totals

NEST = {Content.EGGS: 1, Content.OPEN: 1, Content.SEALED: 4, Content.STORES: 2}
QUEEN = Mark(MarkId(1), VisitId(1), MarkKind.QUEEN, FrameId(5), Face.A)
CHARGED = Mark(MarkId(2), VisitId(1), MarkKind.QUEEN_CELL, FrameId(6), Face.B, cell_kind=CellKind.CHARGED)
SIDELESS = Mark(MarkId(5), VisitId(1), MarkKind.QUEEN_CELL, FrameId(6), cell_kind=CellKind.CHARGED)
PLACES = {FrameId(5): 5, FrameId(6): 6}


def told(made: VisitTotals, *marks: Mark) -> dict[Question, CombsSay]:
    return dict(from_combs(VisitStory(made, visit_figures(made), marks, places=PLACES)))


def shown(made: VisitTotals, *marks: Mark) -> dict[Question, str]:
    return {question: said.shown for question, said in told(made, *marks).items()}


def whole_box() -> VisitTotals:
    """Stores on 1 and 7, a nest on 2 to 6, and nothing of the brood left unseen."""
    nest = [side for number in range(2, 7) for side in comb(number, NEST)]
    return totals(*comb(1, {Content.STORES: 8}), *nest, *comb(7, {Content.STORES: 8}), combs=7)


def test_a_box_looked_through_speaks_as_a_line_would() -> None:
    assert shown(whole_box(), QUEEN, CHARGED) == {
        Question.OPENED: "yes",
        Question.EGGS: "2–6",
        Question.YOUNG: "2–6",
        Question.BROOD: "5/3.8",  # six eighths of five combs
        Question.STORES: "6.5 kg",  # 52 dm² of sides are 26 dm² of comb, at 0.25 kg each
        Question.CELLS: "1 charged 6B",
        Question.QUEEN: "5A",
    }


def test_what_the_keeper_typed_stands() -> None:
    made = whole_box()
    said = answers(eggs="2-6", brood="-", stores="7", queen="5")
    assert set(told(also_typed(made, said), QUEEN)) == {Question.OPENED, Question.YOUNG}


def also_typed(made: VisitTotals, said: Mapping[Question, Answer]) -> VisitTotals:
    return VisitTotals(made.visit, said, made.sides, made.combs_in_hive, made.brood_combs_in_hive)


def test_where_the_line_says_something_else_the_combs_are_named_too() -> None:
    typed = also_typed(whole_box(), answers(eggs="3", brood="4/2.6", stores="7", queen="7B", cells="1C 6B"))
    assert shown(typed, QUEEN, CHARGED) == {
        Question.OPENED: "yes",
        Question.EGGS: "2–6",
        Question.YOUNG: "2–6",
        Question.BROOD: "5/3.8",
        Question.QUEEN: "5A",
    }
    found = differences(VisitStory(typed, visit_figures(typed), (QUEEN, CHARGED), places=PLACES))
    assert [held.text for held in found] == [
        "eggs 3, the combs 2–6",
        "brood 4/2.6, the combs 5/3.8",
        "queen 7B, the combs 5A",
    ]


def test_what_the_combs_do_not_have_is_named_but_never_taken_for_last_time() -> None:
    typed = also_typed(totals(*comb(4, {Content.SEALED: 8})), answers(eggs="4"))
    found = differences(VisitStory(typed, visit_figures(typed)))
    assert [held.text for held in found] == ["eggs 4, the combs none"]
    assert Question.EGGS not in told(typed)


def test_of_some_combs_only_it_is_at_least_so_much_and_not_to_be_said_again() -> None:
    made = totals(*comb(4, NEST), *comb(5, NEST), combs=11)
    assert told(made)[Question.BROOD] == CombsSay("2/1.5+", "")
    assert told(made)[Question.STORES] == CombsSay("1+ kg", "")
    assert told(made)[Question.EGGS] == CombsSay("4, 5", "4, 5")


def test_nothing_seen_is_never_a_no() -> None:
    empty = [side for number in range(1, 12) for side in comb(number, {Content.EMPTY: 8})]
    assert shown(totals(*empty)) == {Question.OPENED: "yes"}
    supers = comb(1, {Content.STORES: 8}, kind=PartKind.SUPER)
    assert Question.BROOD not in told(totals(*supers, supers=10))


def test_what_is_only_assumed_says_nothing() -> None:
    assert told(totals(*comb(4, NEST, origin=Origin.ASSUMED))) == {}
    assert told(totals()) == {}


def test_marks_speak_without_combs_and_claim_no_place_nobody_saw() -> None:
    placeless = Mark(MarkId(3), VisitId(1), MarkKind.QUEEN)
    cup = Mark(MarkId(4), VisitId(1), MarkKind.QUEEN_CELL, cell_kind=CellKind.PLAY_CUP)
    assert shown(totals(), placeless, cup, cup) == {Question.QUEEN: "seen", Question.CELLS: "2 cups"}


def test_a_cell_on_a_comb_without_a_side_is_read_again() -> None:
    said = told(totals(), SIDELESS)[Question.CELLS]
    assert said == CombsSay("1 charged 6", "1 charged 6")
    assert write_answer(Question.CELLS, parse_answer(Question.CELLS, said.typed)) == "1 charged 6"


@given(
    st.lists(st.tuples(st.integers(1, 11), st.integers(0, 4), st.integers(0, 4)), max_size=8),
    st.lists(st.sampled_from((QUEEN, CHARGED, SIDELESS)), max_size=3),
)
def test_what_may_be_typed_again_means_what_is_shown(
    combs: list[tuple[int, int, int]], marks: list[Mark]
) -> None:
    held = {number: {Content.EGGS: eggs, Content.STORES: stores} for number, eggs, stores in combs}
    made = totals(*(side for number, eighths in held.items() for side in comb(number, eighths)))
    for question, said in told(made, *marks).items():
        if said.typed:
            assert write_answer(question, parse_answer(question, said.typed)) == said.shown
