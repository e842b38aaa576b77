import numpy as np

from beeworkbook.bench.on_show import comb_on_show, combs_on_show, last_text
from beeworkbook.colony.records import FrameMake
from beeworkbook.comb.contents import Content, Face, MarkKind, Origin
from beeworkbook.qt.desk import Desk
from beeworkbook.workbook.edits.frames import AddFrame, TakeFrame
from beeworkbook.workbook.edits.marks import AddMark
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from tests.workbook.keeping import LATER, Keeping


def test_all_combs_of_a_box_are_shown_in_hive_order(keeping: Keeping, desk: Desk) -> None:
    box = desk.box()
    assert box is not None
    combs = combs_on_show(keeping.book, box, keeping.visit)
    assert [comb.place for comb in combs] == list(range(1, 12))
    assert combs[4].typed == "E1O2S3P1H1"
    assert combs[4].word == "E1O2S3P1H1"
    assert combs[4].sides[Face.A].look is Origin.EIGHTHS
    assert combs[4].sides[Face.A].word == "laid out"
    assert combs[8].sides[Face.A].word == "not looked at"
    assert combs[8].sides[Face.A].is_blank


def test_one_comb_alone_is_the_same(keeping: Keeping, desk: Desk) -> None:
    box = desk.box()
    assert box is not None
    for placed in box.frames:
        one = comb_on_show(keeping.book, placed, keeping.visit)
        among = combs_on_show(keeping.book, box, keeping.visit)[placed.place - 1]
        assert (one.typed, one.word, one.marks) == (among.typed, among.word, among.marks)
        assert all(np.array_equal(one.sides[face].cells, among.sides[face].cells) for face in one.sides)


def test_a_day_without_a_visit_shows_bare_combs(keeping: Keeping, desk: Desk) -> None:
    box = desk.box()
    assert box is not None
    assert all(
        side.is_blank for comb in combs_on_show(keeping.book, box, None) for side in comb.sides.values()
    )
    assert comb_on_show(keeping.book, box.frames[0], None).word == ""


def test_words_say_how_a_comb_came_to_be(keeping: Keeping, desk: Desk) -> None:
    visit = desk.spot.visit_id
    assert visit is not None
    book = keeping.book
    book.do(LayOutComb(visit, keeping.frame(1), "="))
    book.do(LayOutComb(visit, keeping.frame(2), "?"))
    keeping.paint(3, Face.A, Content.EGGS, visit=visit)
    box = desk.box()
    assert box is not None
    combs = combs_on_show(book, box, visit)
    assert combs[0].word == "="
    assert combs[0].sides[Face.A].word == "unchanged"
    assert combs[0].sides[Face.A].look is Origin.EIGHTHS
    assert combs[1].word == "assumed"
    assert combs[1].sides[Face.B].look is Origin.ASSUMED
    assert combs[2].word == "painted"
    assert combs[2].sides[Face.A].word == ""
    assert [comb.is_emphatic for comb in combs[:3]] == [False, True, True]


def test_free_places_and_dummies_say_so(keeping: Keeping, desk: Desk) -> None:
    keeping.book.do(TakeFrame(keeping.frame(11), LATER))
    box = desk.box()
    assert box is not None
    assert combs_on_show(keeping.book, box, desk.spot.visit_id)[10].word == "free"
    keeping.book.do(AddFrame(box.part.id, 11, LATER, make=FrameMake.DUMMY))
    box = desk.box()
    assert box is not None
    dummy = combs_on_show(keeping.book, box, desk.spot.visit_id)[10]
    assert dummy.word == "dummy board"
    assert not dummy.is_comb


def test_marks_belong_to_a_cell_a_side_or_the_comb(keeping: Keeping, desk: Desk) -> None:
    visit, frame = keeping.visit, keeping.frame(5)
    for face, cell in ((Face.A, 7), (Face.A, None), (None, None)):
        keeping.book.do(AddMark(visit, MarkKind.NOTE, frame, face, cell, text="chalk"))
    box = desk.box()
    assert box is not None
    comb = combs_on_show(keeping.book, box, visit)[4]
    assert [mark.cell for mark in comb.on_side(Face.A)] == [7]
    assert len(comb.without_cell(Face.A)) == len(comb.without_cell(None)) == 1
    assert comb.on_side(Face.B) == ()
    assert combs_on_show(keeping.book, box, visit)[5].marks == ()


def test_last_time_is_said_in_whole_eighths_also_of_a_painted_side(keeping: Keeping, desk: Desk) -> None:
    visit = desk.spot.visit_id
    assert visit is not None
    last = keeping.book.read.last_sides(keeping.frame(5), visit)
    frame_type = keeping.book.read.frame_type(keeping.box.frame_type)
    assert last_text(last, frame_type) == "E1 O2 S3 P1 H1"
    keeping.paint(7, Face.A, Content.EGGS, count=frame_type.lattice.cells // 2)
    box = desk.box()
    assert box is not None
    assert combs_on_show(keeping.book, box, keeping.visit)[6].painted_text == "E4 /"
    assert combs_on_show(keeping.book, box, keeping.visit)[7].painted_text == ""
