import io

import pytest

from beeworkbook.colony.records import Way
from beeworkbook.comb.contents import KEY_LETTERS, Content
from beeworkbook.comb.names import content_short
from beeworkbook.papers.comb_forms import field_form
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.page import Document
from beeworkbook.papers.rect import Rect
from beeworkbook.papers.sheet_frame import draw_codes, draw_markers, draw_swatch, way_words
from beeworkbook.words import Catalogue, use_catalogue
from tests.papers import invented
from tests.papers.printed import Printed, cut, darkness, print_combs


@pytest.mark.parametrize("paper", list(Paper))
def test_the_legend_has_every_letter_with_its_whole_name(paper: Paper) -> None:
    text = print_combs(invented.model(invented.box(places=2)), options=PaperOptions(paper)).whole_text
    for content, letter in KEY_LETTERS.items():
        assert f"{letter} {content_short(content)}" in text
    for words in ("looked at", "W bees", "Q queen", "K queen cell"):
        assert words in text


def test_a_language_brings_its_own_letters() -> None:
    use_catalogue(Catalogue({"key letter: E": "J", "key letter: K": "M"}))
    try:
        text = print_combs(invented.model(invented.marked_box(), filled=True)).whole_text
    finally:
        use_catalogue({})
    assert "J eggs" in text
    assert "M queen cell" in text
    assert "MC" in text


def test_under_a_clip_stands_only_what_nobody_needs_at_the_hive() -> None:
    model = invented.model(invented.box(places=2))
    printed = print_combs(model)
    fields = printed.maps[0].pages[0].fields
    assert min(field.place.y for field in fields) > 15
    # The middle of the top 12 mm, where a clip bites, holds at most the one line of instructions.
    assert darkness(cut(printed.picture(0), Rect(80, 10.5, 50, 3.0))) < 0.001


def test_the_map_reference_stands_before_the_cautions() -> None:
    text = print_combs(invented.model()).whole_text
    assert "You are at XY 123 456. Stings:" in text
    assert "You are at" not in print_combs(invented.model(map_reference="")).whole_text


def test_a_very_long_name_is_shortened_and_keeps_clear_of_the_date() -> None:
    printed = print_combs(invented.model(invented.box(places=2), colony_name="Wall " * 40))
    place = printed.maps[0].pages[0].field("date.day1").place
    assert darkness(cut(printed.picture(0), Rect(place.x - 2.0, place.y, 1.4, place.height))) < 0.001
    assert "…" in printed.text(0)


def test_standing_says_only_what_is_known() -> None:
    bare = invented.model(apiary_name="", stand_name="", queen="", hive_name="")
    assert "stand" not in print_combs(bare).text(0).split("W")[0]
    full = print_combs(invented.model(hive_name="Cedar hive")).whole_text
    assert "Long Orchard, stand 1. Cedar hive. Queen: blue 2025, clipped." in full


def test_the_way_has_words() -> None:
    assert (way_words(Way.COLD), way_words(Way.WARM)) == ("cold way", "warm way")


def test_a_page_without_markers_has_none() -> None:
    stream = io.BytesIO()
    document = Document(stream, PaperOptions(Paper.A5), "")
    assert draw_markers(document, field_form(Paper.A5), 1) == ()
    draw_codes(document, field_form(Paper.A5), "K3QF7 P1 R4")
    document.close()
    assert (Printed(stream.getvalue()).picture() == 255).all()


@pytest.mark.parametrize("colour", [True, False])
def test_a_swatch_shows_colour_and_pattern(*, colour: bool) -> None:
    stream = io.BytesIO()
    document = Document(stream, PaperOptions(colour=colour), "")
    place = Rect(20, 20, 10, 6)
    draw_swatch(document, place, Content.DRONE)
    document.close()
    part = cut(Printed(stream.getvalue()).picture(dpi=300), place.inset(0.4), 300)
    spread = part.max(axis=2).astype(int) - part.min(axis=2)
    assert (spread.max() > 5) == colour
    assert part.std() > 20
