import pytest

from beeworkbook.colony.records import (
    ColonyId,
    DueKind,
    EventKind,
    FrameMake,
    PartKind,
    Question,
    Reply,
    VisitId,
)
from beeworkbook.colony.sheet_models import CombSheetModel, SheetAnswer, is_sheet_code
from beeworkbook.comb.contents import Content, Face, MarkKind, Origin
from beeworkbook.workbook.edits import (
    AddDue,
    AddEvent,
    AddFrame,
    AddMark,
    AddPart,
    BeginRound,
    BeginVisit,
    KeepSheet,
    LayOutComb,
    PassOver,
    SetAnswer,
    SetFeedLeft,
    SetHeft,
    SetNext,
    SetNote,
    TakeFrame,
    TurnFrame,
)
from beeworkbook.workbook.edits.line import OnLine
from beeworkbook.workbook.edits.mend import RemoveVisit
from beeworkbook.workbook.sheets import BookSheet, blank_sheet, filled_sheet, kept_sheets, round_sheet_of
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, as_int, days_on


class _Map:
    """A field map of two pages, as the papers would give it."""

    pages = ("first", "second")

    def to_json(self) -> str:
        return '{"fields": []}'


def _blank(
    keeping: Keeping, day: object = LATER, colony: ColonyId | None = None, *, supers: bool = False
) -> BookSheet:
    sheet = blank_sheet(keeping.book, colony or keeping.colony, day, supers=supers)  # type: ignore[arg-type]
    assert sheet is not None
    return sheet


def test_a_blank_sheet_is_made_of_the_real_hive_with_last_time_small(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "E1O2S4H1 / S8"))
    keeping.book.do(SetAnswer(keeping.visit, Question.TEMPER, "quiet"))
    sheet = _blank(keeping)
    assert (sheet.colony_name, sheet.stand_name, sheet.apiary_name) == ("Wall", "1", "Lower Orchard")
    assert is_sheet_code(sheet.code)
    assert (sheet.revision, sheet.visit, sheet.queen) == (1, None, "marked blue")
    assert [comb.place for comb in sheet.boxes[0].combs] == list(range(1, 12))
    assert (sheet.boxes[0].kind, sheet.boxes[0].name, sheet.boxes[0].places) == (
        PartKind.BROOD_BOX,
        "Brood box",
        11,
    )
    comb = sheet.boxes[0].combs[4]
    assert (comb.side_a.last, comb.side_b.last, comb.side_a.last_day) == ("E1 O2 S4 H1", "S8", LOOK)
    assert comb.side_a.cells is None
    assert sheet.boxes[0].combs[0].side_a.last == "F8"
    assert sheet.boxes[0].combs[0].side_a.last_day == CAME
    assert sheet.boxes[0].combs[3].side_a.last == ""
    assert sheet.last is not None
    assert sheet.last.day == LOOK
    assert sheet.last.answers[Question.TEMPER].typed == "quiet"
    assert sheet.last.sentences == ()


def test_a_frame_turned_since_has_its_figures_at_its_other_side(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S4 / H8"))
    keeping.book.do(TurnFrame(keeping.frame(5), LATER))
    comb = _blank(keeping).boxes[0].combs[4]
    assert (comb.side_a.last, comb.side_b.last) == ("H8", "S4")


def test_boxes_are_told_apart_and_a_dummy_is_named(keeping: Keeping) -> None:
    hive = keeping.book.read.hive_day(keeping.colony, LOOK)
    assert hive is not None
    for name in ("", "", "heather"):
        keeping.book.do(
            AddPart(hive.hive.id, PartKind.SUPER, LOOK, name=name, frame_type="bs_shallow", places=2)
        )
    keeping.book.do(TakeFrame(keeping.frame(11), LOOK))
    keeping.book.do(AddFrame(keeping.box.id, 11, LOOK, make=FrameMake.DUMMY))
    assert [box.name for box in _blank(keeping).boxes] == ["Brood box"]
    boxes = _blank(keeping, supers=True).boxes
    assert [box.name for box in boxes] == ["Brood box", "Super 1", "Super 2", "heather"]
    assert boxes[0].remark == "11 dummy board"
    assert boxes[1].remark == "1 free, 2 free"


def test_a_colony_never_looked_at_has_a_sheet_without_last_time(keeping: Keeping) -> None:
    other = keeping.another(flank=None)
    keeping.book.do(RemoveVisit(keeping.book.read.visits(other)[0].id))
    sheet = _blank(keeping, colony=other)
    assert sheet.last is None
    assert all(comb.side_a.last == "" for comb in sheet.boxes[0].combs)


def test_free_places_and_dummies_are_told_beside_the_box(keeping: Keeping) -> None:
    keeping.book.do(TakeFrame(keeping.frame(11), LOOK))
    assert _blank(keeping).boxes[0].remark == "11 free"
    assert len(_blank(keeping).boxes[0].combs) == 10


def test_a_filled_sheet_says_what_was_found(keeping: Keeping) -> None:
    five = keeping.frame(5)
    keeping.paint(5, Face.A, Content.SEALED, 0, 2000)
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(1), "?"))
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(6), "S4W5Q"))
    keeping.book.do(AddMark(keeping.visit, MarkKind.NOTE, text="wax moth? ask"))
    keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN_CELL, five, Face.A, 7))
    feed = keeping.book.read.feeds(keeping.colony)[0]
    keeping.book.do(SetFeedLeft(feed.id, "0.5", LOOK, keeping.visit))
    sheet = filled_sheet(keeping.book, keeping.visit)
    assert sheet is not None
    assert (sheet.day, sheet.visit_id, sheet.colony_id) == (LOOK, keeping.visit, keeping.colony)
    combs = sheet.boxes[0].combs
    assert combs[4].side_a.cells is not None
    assert combs[4].side_a.cells.tolist() == keeping.cells(5).tolist()
    assert combs[4].side_a.origin is Origin.PAINTED
    assert [mark.cell for mark in combs[4].side_a.marks] == [7]
    assert combs[4].side_b.cells is None
    assert (combs[0].side_a.origin, combs[0].side_a.figures, combs[0].side_a.last) == (
        Origin.ASSUMED,
        "",
        "",
    )
    assert (combs[5].side_a.figures, combs[5].side_a.bees_eighths) == ("S4", 5)
    assert [mark.kind for mark in combs[5].marks] == [MarkKind.QUEEN]
    assert sheet.visit is not None
    assert [mark.text for mark in sheet.visit.marks] == ["wax moth? ask"]
    assert any("Brood" in sentence for sentence in sheet.visit.sentences)
    assert "0.5 L left" in sheet.visit.feed.left
    assert sheet.last is not None
    assert sheet.last.day == CAME


def test_last_time_is_what_the_combs_say_where_nothing_was_typed(keeping: Keeping) -> None:
    for place in (4, 5, 6):
        keeping.book.do(LayOutComb(keeping.visit, keeping.frame(place), "E1O2S4H1"))
    keeping.book.do(AddMark(keeping.visit, MarkKind.QUEEN, keeping.frame(5), Face.A))
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "4-6"))
    last = _blank(keeping).last
    assert last is not None
    assert last.answers[Question.EGGS].typed == "4-6"
    assert last.combs == {
        Question.OPENED: "yes",
        Question.YOUNG: "4–6",
        Question.BROOD: "3/2.6+",
        Question.STORES: "0.6+ kg",  # an eighth of three combs, so 2.4 dm² at 0.25 kg
        Question.QUEEN: "5A",
    }
    assert last.heft == ""
    row = round_sheet_of(keeping.book, keeping.book.read.apiaries()[0].id, LATER).rows[0]
    assert row.last == last


def test_last_time_is_what_the_combs_say_where_the_line_was_at_odds(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(4), "E1O2S4H1"))
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "6"))
    last = _blank(keeping).last
    assert last is not None
    assert (last.answers[Question.EGGS].typed, last.combs[Question.EGGS]) == ("6", "4")


def test_a_colony_passed_over_keeps_the_last_look_and_says_that_it_was_passed(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.TEMPER, "q"))
    keeping.book.do(PassOver(keeping.colony, days_on(LOOK, 2), reason="rain"))
    assert LOOK < days_on(LOOK, 2) < LATER
    row = round_sheet_of(keeping.book, keeping.book.read.apiaries()[0].id, LATER).rows[0]
    assert row.last is not None
    assert (row.last.day, row.last.answers[Question.TEMPER].typed) == (LOOK, "q")
    assert row.passed.startswith("passed over")
    assert row.passed.endswith(": rain")
    blank = _blank(keeping).last
    assert blank is not None
    assert blank.day == LOOK
    passed = keeping.book.read.visits(keeping.colony)[-1]
    filled = filled_sheet(keeping.book, passed.id)
    assert filled is not None
    assert filled.visit is not None
    assert filled.visit.sentences == ("Opened: passed over.",)


def test_a_filled_sheet_leaves_out_nothing_that_has_no_field_of_its_own(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.OPENED, "n"))
    for question, typed in ((Question.POLLEN, "y"), (Question.ROOM, "2"), (Question.DRAWN, "3")):
        keeping.book.do(SetAnswer(keeping.visit, question, typed))
    keeping.book.do(SetHeft(keeping.colony, LOOK, 14.0, 15.5, keeping.visit))
    sheet = filled_sheet(keeping.book, keeping.visit)
    assert sheet is not None
    assert sheet.visit is not None
    assert sheet.visit.sentences == (
        "Opened: no.",
        "Pollen: coming in.",
        "Room: 2 supers.",
        "Drawn: 3 combs being drawn.",
        "Heft: 14 + 15.5 kg, together 29.5.",
    )
    keeping.book.do(SetAnswer(keeping.visit, Question.OPENED, "y"))
    opened = filled_sheet(keeping.book, keeping.visit)
    assert opened is not None
    assert opened.visit is not None
    assert not any(sentence.startswith("Opened") for sentence in opened.visit.sentences)


def test_that_a_hive_was_not_opened_is_told_as_last_time(keeping: Keeping) -> None:
    day = days_on(LOOK, 2)
    apiary = keeping.book.read.apiaries()[0]
    keeping.book.do(OnLine(apiary.id, keeping.colony, day, (SetNote(VisitId(0), "flying well"),)))
    row = round_sheet_of(keeping.book, apiary.id, LATER).rows[0]
    assert row.last is not None
    assert (row.last.day, row.last.answers) == (day, {Question.OPENED: SheetAnswer("no", Reply.NO)})


def test_the_heft_of_a_hive_not_opened_is_told_as_last_time(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.OPENED, "n"))
    keeping.book.do(SetHeft(keeping.colony, LOOK, 14.0, 15.5, keeping.visit))
    row = round_sheet_of(keeping.book, keeping.book.read.apiaries()[0].id, LATER).rows[0]
    assert row.last is not None
    assert row.last.heft == "14+15.5 kg"
    assert row.last.combs == {}


def test_there_is_no_sheet_without_a_hive(keeping: Keeping) -> None:
    keeping.book.do(AddEvent(keeping.colony, LOOK, EventKind.DIED))
    assert blank_sheet(keeping.book, keeping.colony, LATER) is None
    assert filled_sheet(keeping.book, VisitId(99)) is None
    late = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    assert filled_sheet(keeping.book, late) is None


def test_sheets_printed_together_have_codes_of_their_own_and_keep_them(keeping: Keeping) -> None:
    other = keeping.another()
    sheets = (_blank(keeping), _blank(keeping, colony=other))
    assert sheets[0].code != sheets[1].code
    kept = kept_sheets(sheets, (_Map(), _Map()), "A4", LATER)
    for sheet in kept:
        assert (sheet.pages, sheet.paper, sheet.field_map) == (2, "A4", '{"fields": []}')
        keeping.book.do(KeepSheet(sheet))
    again = _blank(keeping)
    assert (again.code, again.revision) == (sheets[0].code, 2)
    later = (_blank(keeping, days_on(LATER, 7)), _blank(keeping, days_on(LATER, 7), other))
    assert len({sheet.code for sheet in (*sheets, *later)}) == 4
    plain = CombSheetModel("x", 1, "", "", LATER, sheets[0].way, ())
    with pytest.raises(TypeError):
        kept_sheets((plain,), (_Map(),), "A4", LATER)


def test_the_round_sheet_has_a_row_a_colony_with_last_time_and_what_to_bring(keeping: Keeping) -> None:
    other = keeping.another()
    apiary = keeping.book.read.apiaries()[0]
    keeping.book.do(SetAnswer(keeping.visit, Question.QUEEN, "-"))
    keeping.book.do(SetNext(keeping.visit, LATER, "a week"))
    keeping.book.do(AddDue(DueKind.BRING, LATER, "a super", keeping.colony))
    keeping.book.do(AddDue(DueKind.BRING, LATER, "smoker fuel", apiary_id=apiary.id))
    keeping.book.do(BeginRound(apiary.id, LOOK, left_out="temper"))
    sheet = round_sheet_of(keeping.book, apiary.id, LATER)
    assert [row.colony_name for row in sheet.rows] == ["Wall", "Gate"]
    assert sheet.bring == ("smoker fuel",)
    assert sheet.left_out == {Question.TEMPER}
    row = sheet.rows[0]
    assert row.hive == "1 brood box"
    assert row.bring == ("feed", "a super")
    assert row.due.startswith("feed look, 3 May")
    assert row.last is not None
    assert row.last.answers[Question.QUEEN].reply is Reply.NOT_LOOKED
    assert row.last.next_day == LATER
    keeping.book.do(AddEvent(other, LOOK, EventKind.SOLD))
    assert len(round_sheet_of(keeping.book, apiary.id, LATER).rows) == 1
    with pytest.raises(ValueError, match="no such apiary"):
        round_sheet_of(keeping.book, apiary.id + 99, LATER)  # type: ignore[arg-type]
