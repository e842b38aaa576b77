import pytest

from beeworkbook.colony.figures import visit_figures
from beeworkbook.colony.page_rows import PageRow, page_rows, row_text
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
    Queen,
    QueenId,
    Question,
    VisitId,
)
from beeworkbook.colony.story import Field, VisitStory
from beeworkbook.colony.totals import VisitTotals
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind
from beeworkbook.comb.frames import FrameType
from tests.colony.making import DAY, answers, comb, totals, visit

ZANDER = FrameType("zander", "Zander", 400, 200)


def rows(made: VisitTotals, **known: object) -> dict[str, PageRow]:
    story = VisitStory(made, visit_figures(made, ZANDER), **known)  # type: ignore[arg-type]
    told = page_rows(story)
    assert len({row.label for row in told}) == len(told)
    return {row.label: row for row in told}


@pytest.mark.parametrize(
    ("question", "typed", "label", "value"),
    [
        ("opened", "y", "Opened", "yes"),
        ("queen", "5A blue", "Queen", "seen on 5A, blue mark"),
        ("queen", "y", "Queen", "seen"),
        ("queen", "n", "Queen", "looked for, not seen"),
        ("eggs", "4-6", "Eggs", "seen, on 4 to 6"),
        ("eggs", "n", "Eggs", "none seen"),
        ("young", "y", "Open brood", "seen"),
        ("brood", "7/4.2", "Brood", "on 7 combs, worth 4.2"),
        ("brood", "7", "Brood", "on 7 combs"),
        ("brood", "y", "Brood", "seen"),
        ("brood", "n", "Brood", "none"),
        ("seams", "n", "Bees", "no seam filled"),
        ("cells", "1c 5b 2u", "Cells", "a charged cell on 5B, two play cups"),
        ("cells", "n", "Cells", "none seen"),
        ("cells", "y", "Cells", "seen"),
        ("stores", "8", "Stores", "about 8 kg"),
        ("stores", "y", "Stores", "some"),
        ("stores", "n", "Stores", "none"),
        ("pollen", "y", "Pollen", "coming in"),
        ("temper", "qs", "Temper", "quiet, steady"),
        ("room", "s", "Room", "super on"),
        ("drawn", "3", "Drawn", "3 combs being drawn"),
        ("signs", "n", "Signs", "none seen"),
    ],
)
def test_an_answer_is_told_plainly(question: str, typed: str, label: str, value: str) -> None:
    row = rows(totals(of=visit(level=Level.ONE_LINE), said=answers(**{question: typed})))[label]
    assert (row.value, row.recorded) == (value, True)


def test_what_was_not_noted_is_said_to_be_so_and_never_no() -> None:
    told = rows(totals(of=visit(level=Level.ONE_LINE)))
    assert {row.value for row in told.values()} == {"not recorded"}
    assert not any(row.recorded for row in told.values())
    told = rows(totals(said=answers(**{question.value: "-" for question in Question})))
    asked = [row for row in told.values() if isinstance(row.target, Question)]
    assert {row.value for row in asked} == {"not looked for"}
    assert not any(row.recorded for row in asked)


def test_questions_a_round_left_out_are_not_said_to_be_missing() -> None:
    told = rows(totals(said=answers(temper="q")), asked=frozenset({Question.EGGS}))
    assert "Eggs" in told
    assert "Temper" in told
    assert "Signs" not in told


def test_combs_that_were_drawn_speak_for_themselves() -> None:
    told = rows(totals(*comb(2, {Content.EGGS: 2, Content.SEALED: 4, Content.DRONE: 2}), combs=1))
    assert told["Opened"].value == "yes"
    assert told["Eggs"].value == "seen, on 2"
    assert told["Brood"].value == "on 1 comb, worth 1"
    assert told["In cells"].value == "about 4\u202f800 cells: 1\u202f600 eggs, 3\u202f200 sealed"
    assert told["Drone brood"].value == "about 920 cells"
    assert told["Brood"].frames == {FrameId(2)}
    assert not told["Open brood"].recorded


def test_some_combs_only_are_never_all() -> None:
    told = rows(totals(*comb(2, {Content.SEALED: 8}), *comb(3, {Content.STORES: 8}), combs=11))
    assert told["Brood"].value == "on 1 comb or more, worth 1 or more"
    assert "2 of 11 combs" in told["Brood"].basis
    assert "or more" in told["In cells"].value
    assert told["Stores"].value == "about 2 kg on the combs looked at"
    assert "0.25 kg per dm²" in told["Stores"].basis


def test_bees_from_seams_and_from_sides() -> None:
    seams = rows(totals(said=answers(seams="8")))["Bees"]
    assert seams.value == "8 seams, about 11\u202f000 bees"
    assert "Simpson" in seams.basis
    covered = rows(totals(*comb(1, {Content.EMPTY: 8}, covered=8), combs=1))["Bees"]
    assert covered.value == "about 2\u202f000"
    plain = totals(said=answers(seams="8"))
    unknown = page_rows(VisitStory(plain, visit_figures(plain)))
    assert "8 seams" in [row.value for row in unknown]


def test_marks_feed_and_hefts_of_the_day() -> None:
    feed = Feed(FeedId(1), ColonyId(1), DAY, FeedKind.SYRUP, given_litres=2, sugar_parts=1, water_parts=1)
    told = rows(
        totals(of=visit(level=Level.NOT_OPENED)),
        marks=(
            Mark(MarkId(1), VisitId(1), MarkKind.QUEEN_CELL, FrameId(6), Face.B, cell_kind=CellKind.SEALED),
        ),
        places={FrameId(6): 6},
        feeds=(feed,),
        events=(Event(EventId(1), ColonyId(1), DAY, EventKind.HEFT, left_kg=14, right_kg=15),),
    )
    assert told["Opened"].value == "no"
    assert told["Cells"].value == "a sealed queen cell on 6B"
    assert told["Cells"].frames == {FrameId(6)}
    assert told["Feed"].value == "2 L 1:1 given"
    assert told["Heft"].value == "14 + 15 kg, together 29"
    assert told["Heft"].target is Field.HEFT


def test_a_colour_proposes_a_year_only_while_none_is_known() -> None:
    queen = Queen(QueenId(1), mark_colour="blue")
    assert rows(totals(said=answers(queen="5A")), queen=queen)["Queen"].basis == "blue, so perhaps 2025"
    known = Queen(QueenId(1), mark_colour="blue", year=2020)
    assert rows(totals(said=answers(queen="5A")), queen=known)["Queen"].basis == ""


def test_a_colony_passed_over_is_a_fact() -> None:
    told = rows(totals(of=visit(level=Level.PASSED_OVER)))
    assert [row_text(row) for row in told.values()] == ["Opened: passed over"]
