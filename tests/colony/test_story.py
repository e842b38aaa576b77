from beeworkbook.colony.figures import visit_figures
from beeworkbook.colony.records import FrameId, Mark, MarkId, PartKind, Question, Reply, VisitId
from beeworkbook.colony.said import CellsSaid, QueenSaid
from beeworkbook.colony.story import VisitStory, left_texts
from beeworkbook.colony.totals import VisitTotals
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind, Origin
from tests.colony.making import answers, comb, totals

QUEEN_ON_2B = Mark(MarkId(1), VisitId(1), MarkKind.QUEEN, FrameId(2), Face.B)


def story(made: VisitTotals, *marks: Mark, **places: int) -> VisitStory:
    return VisitStory(
        made,
        visit_figures(made),
        marks,
        places={FrameId(int(name[1:])): place for name, place in places.items()},
    )


def test_a_mark_tells_the_queens_place_and_the_line_her_colour() -> None:
    told = story(totals(*comb(2, {Content.EMPTY: 8}), said=answers(queen="blue")), QUEEN_ON_2B)
    assert told.queen_place == QueenSaid(2, Face.B, "blue")
    assert story(totals(), QUEEN_ON_2B, f2=7).queen_place == QueenSaid(7, Face.B)


def test_a_mark_without_a_place_is_given_none() -> None:
    assert story(totals(), QUEEN_ON_2B).queen_place == QueenSaid()
    assert story(totals(), Mark(MarkId(1), VisitId(1), MarkKind.QUEEN)).queen_place == QueenSaid()
    assert story(totals(said=answers(queen="n"))).queen_place is None


def test_cells_that_are_marked_are_not_told_twice() -> None:
    mark = Mark(MarkId(2), VisitId(1), MarkKind.QUEEN_CELL, FrameId(6), Face.B, cell_kind=CellKind.CHARGED)
    told = story(totals(said=answers(cells="3c 1u")), mark, mark, f6=6)
    assert told.cells == (
        CellsSaid(CellKind.CHARGED, 2, 6, Face.B),
        CellsSaid(CellKind.CHARGED, 1),
        CellsSaid(CellKind.PLAY_CUP, 1),
    )


def test_assumed_combs_show_nothing() -> None:
    told = story(totals(*comb(2, {Content.EGGS: 1}), *comb(3, {Content.EGGS: 1}, origin=Origin.ASSUMED)))
    assert told.combs_with(Content.EGGS) == (2,)
    assert told.frames_with(Content.EGGS, Content.SEALED) == {FrameId(2)}


def test_answers_by_question() -> None:
    told = story(totals(said=answers(eggs="-")))
    assert told.reply(Question.EGGS) is Reply.NOT_LOOKED
    assert told.reply(Question.BROOD) is None
    assert told.answer(Question.BROOD) is None
    assert left_texts(told) == ()


def test_combs_of_two_boxes_are_told_apart_and_those_named_in_the_line_are_not() -> None:
    drawn = totals(
        *comb(4, {Content.EGGS: 1}),
        *comb(5, {Content.EGGS: 1}),
        *comb(5, {Content.EGGS: 1}, kind=PartKind.SUPER),
        *comb(7, {Content.SEALED: 1}, kind=PartKind.SUPER),
    )
    upper, lower = FrameId(105), (FrameId(4), FrameId(5))
    boxes = {**dict.fromkeys(lower, "in the lower box"), upper: "in the upper box"}
    cell = Mark(MarkId(1), VisitId(1), MarkKind.QUEEN_CELL, upper, Face.A, cell_kind=CellKind.CHARGED)
    queen = Mark(MarkId(2), VisitId(1), MarkKind.QUEEN, upper, Face.B)
    told = VisitStory(drawn, visit_figures(drawn), (cell, queen), boxes=boxes)
    assert told.where(Question.EGGS, Content.EGGS) == "4 and 5 in the lower box and 5 in the upper box"
    assert told.cells == (CellsSaid(CellKind.CHARGED, 1, 5, Face.A, "in the upper box"),)
    assert told.queen_place == QueenSaid(5, Face.B, box="in the upper box")
    assert told.where(Question.STORES, Content.STORES) == ""
    said = totals(*comb(4, {Content.EGGS: 1}), said=answers(eggs="4-6"))
    assert VisitStory(said, visit_figures(said), boxes=boxes).where(Question.EGGS, Content.EGGS) == "4 to 6"
