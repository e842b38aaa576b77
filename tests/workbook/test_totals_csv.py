import csv
import io
from collections.abc import Callable
from typing import TextIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import Colony, Question
from beeworkbook.comb.contents import ALL_BROOD, Content, Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.workbook.edits import LayOutComb, PassOver, RenameRecord, SetAnswer, SetCovered, SetNote
from beeworkbook.workbook.totals_csv import (
    SIDE_COLUMNS,
    VISIT_COLUMNS,
    all_colonies,
    csv_text,
    safe_cell,
    write_sides,
    write_visits,
)
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, days_on


def _read(write: Callable[[TextIO], int]) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(csv_text(write), newline="")))


def _sides(keeping: Keeping) -> list[dict[str, str]]:
    read = keeping.book.read
    return _read(lambda stream: write_sides(read, all_colonies(read), CAME, days_on(LATER, 99), stream))


def _visits(keeping: Keeping) -> list[dict[str, str]]:
    read = keeping.book.read
    return _read(lambda stream: write_visits(read, all_colonies(read), CAME, days_on(LATER, 99), stream))


def test_a_line_a_side_has_full_figures(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "S8 / E4W3"))
    lines = [line for line in _sides(keeping) if line["day"] == LOOK.isoformat()]
    deep = FRAME_TYPES["bs_deep"]
    whole, part = lines
    assert (whole["colony"], whole["comb"], whole["side"], whole["origin"]) == ("Wall", "5", "A", "eighths")
    assert float(whole["sealed_dm2"]) == pytest.approx(deep.area_dm2)
    assert float(whole["sealed_cells"]) == pytest.approx(deep.area_dm2 * 400)
    assert float(whole["eggs_cells"]) == 0
    assert part["bees_eighths"] == "3.0"
    assert float(part["eggs_dm2"]) == pytest.approx(deep.area_dm2 / 2, rel=0.01)
    assert list(whole) == list(SIDE_COLUMNS)


def test_what_nobody_looked_at_is_blank_and_never_nought(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(1), "?"))
    keeping.book.do(SetCovered(keeping.visit, keeping.frame(5), Face.B, 4))
    lines = [line for line in _sides(keeping) if line["day"] == LOOK.isoformat()]
    assumed = [line for line in lines if line["origin"] == "assumed"]
    assert len(assumed) == 2
    figures = [column for column in SIDE_COLUMNS if column.endswith(("_cells", "_dm2"))]
    assert all(line[column] == "" for line in lines for column in figures)
    assert all(line["bees_eighths"] == "" for line in assumed)
    assert [line["bees_eighths"] for line in lines if line not in assumed] == ["4.0"]


def test_a_line_a_visit_says_what_was_asked_and_leaves_the_rest_blank(keeping: Keeping) -> None:
    keeping.book.do(SetAnswer(keeping.visit, Question.STORES, "8 kg"))
    keeping.book.do(SetAnswer(keeping.visit, Question.EGGS, "n"))
    keeping.book.do(PassOver(keeping.colony, LATER))
    came, look, passed = _visits(keeping)
    assert list(look) == list(VISIT_COLUMNS)
    assert (look["level"], look["stores_kg"], look["typed_stores"]) == ("one_line", "8.0", "8 kg")
    assert (look["eggs_seen"], look["young_seen"], look["worker_brood_dm2"]) == ("no", "", "")
    assert passed["level"] == "passed_over"
    told = {"day", "colony", "visit", "level", "combs_in_hive"}
    assert {column for column, value in passed.items() if value} <= told
    assert (came["brood_at_least"], came["worker_brood_high_dm2"]) == ("yes", "")


def test_brood_that_was_drawn_is_summed(keeping: Keeping) -> None:
    keeping.paint(5, Face.A, Content.SEALED, 0, 2000)
    keeping.paint(6, Face.B, Content.EGGS, 0, 500)
    look = next(line for line in _visits(keeping) if line["day"] == LOOK.isoformat())
    sides = [line for line in _sides(keeping) if line["day"] == LOOK.isoformat()]
    assert look["brood_combs"] == "2"
    assert float(look["sealed_cells"]) == pytest.approx(float(sides[0]["sealed_cells"]))
    assert float(look["worker_brood_dm2"]) == pytest.approx(
        float(sides[0]["sealed_dm2"]) + float(sides[1]["eggs_dm2"])
    )


def test_what_nobody_named_on_a_side_noted_in_part_is_blank(keeping: Keeping) -> None:
    keeping.book.do(LayOutComb(keeping.visit, keeping.frame(5), "H3 / H3C5"))
    lines = [line for line in _sides(keeping) if line["day"] == LOOK.isoformat()]
    figures = [column for column in SIDE_COLUMNS if column.endswith(("_cells", "_dm2"))]
    part, whole = lines
    assert {column for column in figures if part[column]} == {"side_dm2", "stores_cells", "stores_dm2"}
    assert all(whole[column] for column in figures)
    assert float(whole["eggs_cells"]) == 0


def test_no_brood_is_claimed_of_sides_noted_in_part(keeping: Keeping) -> None:
    stages = [f"{content.name.lower()}_{unit}" for content in ALL_BROOD for unit in ("cells", "dm2")]
    silent = ["brood_combs", "brood_worth", "worker_brood_dm2", *stages, "pollen_dm2", "eggs_seen"]
    for place in range(1, 12):
        keeping.book.do(LayOutComb(keeping.visit, keeping.frame(place), "H3"))
    look = next(line for line in _visits(keeping) if line["day"] == LOOK.isoformat())
    assert look["combs_seen"] == look["combs_in_hive"] == "11"
    assert float(look["stores_kg"]) > 0
    assert [look[column] for column in silent] == [""] * len(silent)
    for place in range(1, 12):
        keeping.book.do(LayOutComb(keeping.visit, keeping.frame(place), "H3."))
    look = next(line for line in _visits(keeping) if line["day"] == LOOK.isoformat())
    assert (look["brood_combs"], float(look["worker_brood_dm2"]), float(look["eggs_dm2"])) == ("0", 0, 0)
    assert float(look["pollen_dm2"]) == 0
    assert look["eggs_seen"] == ""


@pytest.mark.parametrize("lead", ["=", "+", "-", "@", "\t", "\r", "\n"])
def test_no_cell_is_taken_for_a_formula(keeping: Keeping, lead: str) -> None:
    danger = lead + 'cmd|"/c calc"!A0'
    keeping.book.do(SetNote(keeping.visit, danger))
    keeping.book.do(RenameRecord(Colony, keeping.colony, "=1+1"))
    look = next(line for line in _visits(keeping) if line["day"] == LOOK.isoformat())
    assert look["note"] == "'" + danger
    assert look["colony"] == "'=1+1"


@given(st.text())
def test_a_safe_cell_is_the_text_or_the_text_behind_an_apostrophe(text: str) -> None:
    cell = safe_cell(text)
    assert cell in {text, "'" + text}
    assert not cell.startswith(("=", "+", "-", "@", "\t", "\r", "\n"))


def test_numbers_are_full_and_without_what_binary_leaves_behind_and_blanks_stay_blank() -> None:
    assert [safe_cell(value) for value in (None, -3, 2568.7999999999997, 1 / 3, True, False, "")] == [
        "",
        "-3",
        "2568.8",
        "0.333333",
        "yes",
        "no",
        "",
    ]


def test_only_the_asked_days_are_written(keeping: Keeping) -> None:
    read = keeping.book.read
    lines = _read(lambda stream: write_visits(read, (keeping.colony,), LOOK, days_on(LOOK, 1), stream))
    assert [line["day"] for line in lines] == [LOOK.isoformat()]
    stream = io.StringIO()
    assert write_visits(read, (), LOOK, LATER, stream) == 0


def test_no_column_is_there_twice() -> None:
    for columns in (SIDE_COLUMNS, VISIT_COLUMNS):
        assert len(set(columns)) == len(columns)
        assert not any(Content.NOT_RECORDED.name.lower() in column for column in columns)
