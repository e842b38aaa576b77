from dataclasses import replace

import pytest

from beeworkbook.colony.asked import heading
from beeworkbook.colony.records import Question
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.round_columns import TICK_MM
from beeworkbook.papers.round_sheet import ROW_MM
from tests.papers import invented
from tests.papers.printed import print_round


@pytest.mark.parametrize("paper", list(Paper))
def test_a_round_sheet_lies_across_its_paper(paper: Paper) -> None:
    printed = print_round(invented.round_model(), PaperOptions(paper))
    assert printed.size_mm() == pytest.approx((paper.height_mm, paper.width_mm), abs=0.05)
    assert printed.least_text_pt() >= 7.5


def test_rows_and_boxes_are_high_enough_for_gloves() -> None:
    # Tick boxes of 7 mm, rows of 9: the design's own rule for papers.
    assert TICK_MM >= 7
    assert ROW_MM >= 9


@pytest.mark.parametrize("paper", list(Paper))
def test_every_colony_is_printed_once_in_stand_order(paper: Paper) -> None:
    model = invented.round_model(6)
    text = print_round(model, PaperOptions(paper)).whole_text
    places = [text.index(row.colony_name) for row in model.rows if row.colony_name != "Zażółć gęślą jaźń"]
    assert places == sorted(places)
    assert "Zażółć" in text


def test_headings_stand_again_on_every_page() -> None:
    printed = print_round(invented.round_model(30))
    assert printed.pages > 2
    for page in range(printed.pages):
        text = " ".join(printed.text(page).split())
        for question in Question:
            assert heading(question) in text
        for words in ("bring", "stand", "colony", f"page {page + 1} of {printed.pages}", "local law"):
            assert words in text


def test_last_time_and_what_to_bring_are_printed() -> None:
    text = print_round(invented.round_model()).whole_text
    for words in (
        "7/4.2",
        "2L 1:1",
        "last time 9 May",
        "feed look, 18 May",
        "2 L syrup 1:1",
        "Bring: smoker fuel.",
    ):
        assert words in text


def test_polish_greek_and_cyrillic_names_print_right() -> None:
    text = print_round(invented.round_model()).whole_text
    for name in ("Zażółć gęślą", "Μέλισσα", "Пчёлка"):
        assert name in text


def test_place_names_can_be_left_off() -> None:
    text = print_round(invented.round_model(), PaperOptions(place_names=False)).whole_text
    assert "Long Orchard" not in text
    assert "XY 123 456" not in text
    assert "Round" in text


def test_an_apiary_without_colonies_still_has_its_sheet() -> None:
    printed = print_round(invented.round_model(rows=0))
    assert printed.pages == 1
    assert "opened" in printed.text()


def test_few_rows_are_higher_and_stay_on_the_page() -> None:
    printed = print_round(invented.round_model(11))
    assert printed.pages == 1
    picture = printed.picture(dpi=72)
    assert (picture[-int(8 / 25.4 * 72) + 3 :] == 255).all()


def test_black_only_has_no_colour() -> None:
    picture = print_round(invented.round_model(), replace(PaperOptions(), colour=False)).picture().astype(int)
    assert (picture.max(axis=2) - picture.min(axis=2)).max() <= 1
