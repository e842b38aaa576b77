from dataclasses import replace

import pytest

from beeworkbook.colony.records import Way
from beeworkbook.colony.sheet_models import SheetSide
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.side_words import origin_word
from tests.papers import invented
from tests.papers.printed import print_combs


@pytest.mark.parametrize(
    ("origin", "long", "short"),
    [
        (Origin.PAINTED, "painted", "painted"),
        (Origin.EIGHTHS, "laid out", "laid out"),
        (Origin.UNCHANGED, "looked at, unchanged", "unchanged"),
        (Origin.ASSUMED, "assumed, not looked at", "assumed"),
    ],
)
def test_how_a_side_came_to_be_is_a_word(origin: Origin, long: str, short: str) -> None:
    side = invented.side("bs_deep", 2, 3, Face.A, origin)
    assert (origin_word(side), origin_word(side, short=True)) == (long, short)
    assert origin_word(SheetSide(Face.A)) == "not looked at"


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("frame", ["bs_deep", "bs_shallow", "layens"])
def test_every_side_has_its_label_and_cold_way_its_entrance_end(frame: str, paper: Paper) -> None:
    text = print_combs(invented.model(invented.box(frame, 3)), options=PaperOptions(paper)).text(0)
    for label in ("1A", "1B", "3A", "3B"):
        assert label in text
    assert text.count("entrance end") == 6


def test_warm_way_only_side_a_is_towards_the_entrance() -> None:
    text = print_combs(invented.model(invented.box(places=3), way=Way.WARM)).text(0)
    assert text.count("towards the entrance") == 3


def test_figures_too_long_for_a_line_begin_in_the_line_above() -> None:
    box = invented.box(places=1)
    last = "E0.5 O1 S2.5 D0.5 P0.75 N0.5 H1.25 C1"
    side = replace(box.combs[0].side_a, last=last)
    comb = replace(box.combs[0], side_a=side)
    text = print_combs(invented.model(replace(box, combs=(comb,)))).text(0)
    assert all(part in text for part in last.split())


def test_a_side_without_a_last_time_says_nothing() -> None:
    box = invented.box(places=1)
    sides = (SheetSide(Face.A), SheetSide(Face.B, last="H8"))
    comb = replace(box.combs[0], side_a=sides[0], side_b=sides[1])
    text = print_combs(invented.model(replace(box, combs=(comb,)), last=None)).text(0)
    assert "9 May" not in text
    assert "H8" in text
