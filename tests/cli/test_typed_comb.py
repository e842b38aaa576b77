import json

import pytest

from beeworkbook.comb.frames import FRAME_TYPES
from tests.cli.conftest import Typed


def test_the_example_is_laid_out_and_added_up(typed: Typed) -> None:
    told = typed("comb", "E1O2S4H1 / S2O2.", "--frame", "zander")
    assert told.code == 0
    # 400 worker cells and 125 g of stores an eighth of a Zander side: bees-online.at 2020.
    assert "eggs                 1    400    1" in told.out
    assert "2\u202f800 cells of worker brood" in told.out
    assert "empty comb          4  1\u202f600    4" in told.out


def test_json_has_full_figures_and_exact_cells(typed: Typed) -> None:
    held = json.loads(typed("comb", "e1o2s4h1 w5 kc", "--frame", "zander", "--json", "--cells").out)
    assert held["frame"] == "zander"
    assert held["queen_cells"] == ["charged"]
    side = held["sides"]["A"]
    cells = {each["content"]: each["lattice_cells"] for each in side["contents"]}
    assert sum(cells.values()) == FRAME_TYPES["zander"].lattice.cells
    assert side["stores_kg"] == pytest.approx(0.125, rel=0.01)
    # 1 000 bees on a Zander side, five eighths of it: Imdorf, Rickli & Fluri 1996.
    assert side["bees"] == pytest.approx(625)
    assert side["notation"].count("\n") >= FRAME_TYPES["zander"].lattice.rows - 1


def test_bees_and_marks_are_read_back(typed: Typed) -> None:
    told = typed("comb", "S4W8QKS / = / KU")
    assert told.code == 0
    assert "800 bees" in told.out
    assert "queen seen" in told.out
    assert "sealed queen cell" in told.out
    assert "side B: looked at, unchanged" in told.out
    assert "on the comb: play cup" in told.out


@pytest.mark.parametrize(
    ("comb", "words"), [("?", "as last time"), ("-", "not looked at"), ("=", "unchanged")]
)
def test_a_side_without_eighths_has_no_figures(typed: Typed, comb: str, words: str) -> None:
    told = typed("comb", "--", comb)
    assert told.code == 0
    assert words in told.out
    assert "cells" not in told.out


def test_the_cells_are_shown_in_letters(typed: Typed) -> None:
    told = typed("comb", "F", "--cells")
    assert told.code == 0
    assert "F" in told.out.splitlines()[-1]


@pytest.mark.parametrize(
    ("comb", "part"),
    [
        ("E1O2X", "At letter 5: “X” is none of the letters."),
        ("E9", "At letter 1: That makes 9 eighths: a side has eight."),
        ("E1E1", "At letter 3"),
        ("", "Nothing is said"),
        ("   ", "Nothing is said"),
        ("S" + "9" * 400, "too long"),
        ("a/b/c/d", "At letter"),
    ],
)
def test_what_cannot_be_read_is_pointed_at(typed: Typed, comb: str, part: str) -> None:
    told = typed("comb", comb)
    assert (told.code, told.out) == (2, "")
    assert part in told.err
    assert told.err.count("\n") == 1


def test_an_unknown_frame_leads_to_the_list(typed: Typed) -> None:
    told = typed("comb", "F", "--frame", "shed")
    assert told.code == 2
    assert "beeworkbook frames" in told.err
