from dataclasses import replace
from datetime import date

import cv2
import numpy as np
import pytest

from beeworkbook.colony.records import Way
from beeworkbook.colony.sheet_models import CombSheetModel, SheetBox, SheetComb, SheetSide
from beeworkbook.comb.contents import Content, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.papers.comb_forms import LEAST_COMB_MM2
from beeworkbook.papers.field_map import FieldKind
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.rect import Rect
from tests.papers import invented
from tests.papers.printed import DPI, Printed, cut, darkness, print_combs

A4 = PaperOptions()
READ_BACK = (Paper.A4, Paper.LETTER)


@pytest.fixture(scope="module")
def blank() -> Printed:
    return print_combs(invented.model())


@pytest.fixture(scope="module")
def filled() -> Printed:
    return print_combs(invented.model(invented.marked_box(), filled=True))


@pytest.mark.parametrize("paper", list(Paper))
def test_the_page_has_the_size_of_its_paper(paper: Paper) -> None:
    printed = print_combs(invented.model(), options=PaperOptions(paper))
    assert printed.size_mm() == pytest.approx((paper.width_mm, paper.height_mm), abs=0.05)


def test_eleven_combs_and_the_page_take_two_pages_of_six(blank: Printed) -> None:
    assert blank.pages == 2
    combs = [
        {field.name.split(".")[1] for field in page.fields if field.kind is FieldKind.COMB}
        for page in blank.maps[0].pages
    ]
    assert [len(page) for page in combs] == [6, 5]


def test_a_british_deep_is_printed_55_by_31(blank: Printed) -> None:
    place = blank.maps[0].pages[0].field("box1.comb1.A.comb").place
    assert (round(place.width), round(place.height)) == (55, 31)


@pytest.mark.parametrize("paper", READ_BACK)
@pytest.mark.parametrize("frame", list(FRAME_TYPES))
def test_every_comb_is_large_enough_and_in_true_proportion(frame: str, paper: Paper) -> None:
    printed = print_combs(invented.model(invented.box(frame, 2)), options=PaperOptions(paper))
    place = printed.maps[0].pages[0].field("box1.comb2.B.comb").place
    kind = FRAME_TYPES[frame]
    assert place.area_mm2 >= LEAST_COMB_MM2
    assert place.width / place.height == pytest.approx(kind.inside_width_mm / kind.inside_height_mm)


@pytest.mark.parametrize("paper", READ_BACK)
@pytest.mark.parametrize(
    ("frame", "way"),
    [("bs_deep", Way.COLD), ("layens", Way.WARM), ("bs_shallow", Way.COLD), ("zander", Way.WARM)],
)
def test_all_markers_of_every_page_are_read_where_the_map_says(frame: str, way: Way, paper: Paper) -> None:
    model = invented.model(invented.box(frame, 7), filled=True, way=way)
    printed = print_combs(model, options=PaperOptions(paper, colour=False))
    detector = cv2.aruco.ArucoDetector(cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_APRILTAG_36h11))
    for page, plan in enumerate(printed.maps[0].pages):
        corners, numbers, _ = detector.detectMarkers(cv2.cvtColor(printed.picture(page), cv2.COLOR_RGB2GRAY))
        read = {
            int(number): corner[0] * 25.4 / DPI
            for number, corner in zip(numbers.ravel(), corners, strict=True)
        }
        assert len(plan.markers) == 21
        assert set(read) == {marker.number for marker in plan.markers}
        for marker in plan.markers:
            place = marker.place
            expected = [
                (place.x, place.y),
                (place.right, place.y),
                (place.right, place.bottom),
                (place.x, place.bottom),
            ]
            assert np.abs(read[marker.number] - expected).max() < 0.3


@pytest.mark.parametrize("paper", READ_BACK)
def test_both_codes_of_a_page_say_what_is_printed_plainly(paper: Paper) -> None:
    printed = print_combs(invented.model(), options=PaperOptions(paper))
    for page, plan in enumerate(printed.maps[0].pages):
        plain = f"K3QF7 P{page + 1} R4"
        assert plan.plain == plain
        assert plain in printed.text(page)
        assert len(plan.codes) == 2
        for place in plan.codes:
            assert min(place.width, place.height) >= 17
            read, _, _ = cv2.QRCodeDetector().detectAndDecode(
                cut(printed.picture(page, 200), place.inset(-2), 200)
            )
            assert read == plain
        first, second = (place.centre for place in plan.codes)
        assert first[0] > paper.width_mm / 2 > second[0]
        assert first[1] < paper.height_mm / 2 < second[1]


@pytest.mark.parametrize("paper", list(Paper))
@pytest.mark.parametrize("frame", ["bs_deep", "bs_shallow", "bs_14x12"])
def test_the_picture_has_every_box_where_the_map_says(frame: str, paper: Paper) -> None:
    printed = print_combs(invented.model(invented.box(frame, 8)), options=PaperOptions(paper, colour=False))
    for page, plan in enumerate(printed.maps[0].pages):
        picture = printed.picture(page)
        for field in plan.fields:
            place = field.place
            if field.kind is FieldKind.WRITE:
                continue
            left_edge = Rect(place.x - 0.2, place.y + 1.2, 0.4, place.height - 2.4)
            assert darkness(cut(picture, left_edge)) > 0.3, field
            if field.kind is FieldKind.TICK:
                right_edge = Rect(place.right - 0.2, place.y + 1.0, 0.4, place.height - 2.0)
                assert darkness(cut(picture, right_edge)) > 0.3, field
                assert darkness(cut(picture, place.inset(0.6))) < 0.01, field
                assert min(place.width, place.height) >= 5


def test_the_fields_of_a_page_do_not_overlap(blank: Printed) -> None:
    for plan in blank.maps[0].pages:
        places = [field.place.inset(0.01) for field in plan.fields]
        quiet = [marker.place.inset(-0.8) for marker in plan.markers]
        for index, place in enumerate(places):
            assert not any(place.overlaps(other) for other in places[index + 1 :])
            assert not any(place.overlaps(marker) for marker in quiet)


def test_every_side_has_its_ticks_and_bars(blank: Printed) -> None:
    names = {field.name for page in blank.maps[0].pages for field in page.fields}
    for place in range(1, 12):
        for face in "AB":
            side = f"box1.comb{place}.{face}"
            assert {f"{side}.{tick}" for tick in ("looked", "eggs", "queen", "queen_cell")} <= names
            bars = ("bees", "sealed", "open", "drone", "pollen", "stores")
            assert {f"{side}.bar.{bar}" for bar in bars} <= names
    questions = {
        f"page.{question}.{reply}"
        for question in ("queen", "eggs", "cells", "signs")
        for reply in ("yes", "no", "not_looked")
    }
    lines = {
        f"page.{line}"
        for line in ("temper", "stores", "feed_given", "feed_left", "weather", "next", "notes.left")
    }
    assert questions | lines | {"date.day1", "date.year2"} <= names


def test_an_eighth_of_a_bar_is_at_least_4_6_mm(blank: Printed) -> None:
    bars = [
        field.place for page in blank.maps[0].pages for field in page.fields if field.kind is FieldKind.BAR
    ]
    assert min(place.width for place in bars) / 8 >= 4.6 - 1e-9


def test_a_blank_sheet_shows_last_time_small_and_leaves_the_comb_almost_empty(blank: Printed) -> None:
    text = " ".join(blank.text(0).split())
    assert "H5 N2 C1" in text
    assert "9 May" in text
    place = blank.maps[0].pages[0].field("box1.comb4.A.comb").place
    assert darkness(cut(blank.picture(0), place.inset(1.2))) < 0.01


def test_a_page_carries_letters_legend_entrance_and_cautions(blank: Printed) -> None:
    text = " ".join(blank.text(0).split())
    for words in (
        "entrance end",
        "sealed",
        "foundation",
        "queen cell",
        "1A",
        "6B",
        "product label and local law",
    ):
        assert words in text
    assert "it may be notifiable" in text


def test_warm_way_marks_side_a_as_the_entrance_face() -> None:
    text = print_combs(invented.model(way=Way.WARM)).text(0)
    assert text.count("towards the entrance") == 6
    assert "entrance end" not in text


def test_a_filled_bar_is_as_long_as_the_share_of_the_side(filled: Printed) -> None:
    place = filled.maps[0].pages[0].field("box1.comb1.A.bar.stores").place
    row = cut(filled.picture(0, 300), Rect(place.x, place.centre[1] - 0.3, place.width, 0.6), 300)
    dark = row.mean(axis=(0, 2)) < 128
    assert dark.mean() == pytest.approx(5 / 8, abs=0.01)


def test_a_filled_sheet_ticks_what_was_seen(filled: Printed) -> None:
    page = filled.maps[0].pages[0]

    def ticked(name: str) -> bool:
        return darkness(cut(filled.picture(0), page.field(name).place.inset(0.6))) > 0.05

    assert ticked("box1.comb5.A.queen")
    assert not ticked("box1.comb5.B.queen")
    assert ticked("box1.comb6.B.queen_cell")
    assert ticked("box1.comb4.A.eggs")
    assert not ticked("box1.comb1.A.eggs")


def test_what_is_assumed_is_named_and_not_counted(filled: Printed) -> None:
    page, picture = filled.maps[0].pages[1], filled.picture(1)
    assert filled.text(1).count("assumed, not looked at") == 2
    assert darkness(cut(picture, page.field("box1.comb9.A.looked").place.inset(0.6))) < 0.01
    for bar in ("bees", "sealed", "stores"):
        place = page.field(f"box1.comb9.A.bar.{bar}").place
        assert darkness(cut(picture, Rect(place.x + 0.6, place.centre[1] - 0.3, 4.0, 0.6))) < 0.02


def test_a_side_nobody_looked_at_stays_empty(filled: Printed) -> None:
    place = filled.maps[0].pages[1].field("box1.comb8.B.comb").place
    assert darkness(cut(filled.picture(1), place.inset(1.0))) < 0.001
    assert "not looked at" in filled.text(1)


def test_marks_without_a_place_are_told_in_words_only(filled: Printed) -> None:
    text = filled.whole_text
    assert "3A: play cup" in text
    assert "6B: charged queen cell, chosen" in text
    assert "4A, note 1: a hole gnawed by a mouse last winter" in text


def test_painted_is_told_from_laid_out_in_word_and_line() -> None:
    laid = print_combs(invented.model(invented.box(places=3), filled=True))
    painted = print_combs(
        invented.model(invented.box(places=3, origins=dict.fromkeys((1, 2, 3), Origin.PAINTED)), filled=True)
    )
    assert "laid out" in laid.text()
    assert "painted" not in laid.text().replace("were painted", "")
    assert painted.text().count("painted") > laid.text().count("painted")


def test_22_combs_filled_with_fonts_are_small() -> None:
    both = (invented.box(), invented.box(name="Upper brood box"))
    printed = print_combs(invented.model(*both, filled=True))
    assert len(printed.maps[0].pages) >= 4
    assert len(printed.written) <= 150_000


def test_the_same_sheet_is_the_same_bytes() -> None:
    model = invented.model(invented.marked_box(), filled=True)
    assert print_combs(model).written == print_combs(model).written


def test_all_fonts_are_embedded_and_no_text_is_under_7_5_points(filled: Printed, blank: Printed) -> None:
    for printed in (filled, blank):
        assert printed.least_text_pt() >= 7.5 - 1e-6
        for page in printed.reader.pages:
            for font in page["/Resources"]["/Font"].values():  # type: ignore[index]
                described = font.get_object()["/FontDescriptor"].get_object()
                assert "/FontFile2" in described


def test_polish_greek_and_cyrillic_names_print_right() -> None:
    model = invented.model(
        colony_name="Zażółć gęślą jaźń", apiary_name="Μέλισσα η Πρώτη", queen="Пчёлка, синяя"
    )
    text = print_combs(model).whole_text
    for words in ("Zażółć gęślą jaźń", "Μέλισσα η Πρώτη", "Пчёлка, синяя"):
        assert words in text


def test_place_names_can_be_left_off() -> None:
    named = print_combs(invented.model()).whole_text
    bare = print_combs(invented.model(), options=replace(A4, place_names=False)).whole_text
    for words in ("Long Orchard", "XY 123 456"):
        assert words in named
        assert words not in bare
    assert "Pear Tree" in bare


def test_long_notes_flow_on_to_another_page_whole() -> None:
    words = [f"word{number}" for number in range(1500)]
    model = invented.model(filled=True, visit=invented.visit(note=" ".join(words)))
    printed = print_combs(model)
    assert printed.pages > 2
    assert len(printed.maps[0].pages) == 2
    text = printed.whole_text.split()
    assert [word for word in text if word.startswith("word")] == words


def test_black_only_has_no_colour() -> None:
    model = invented.model(invented.marked_box(), filled=True)
    picture = print_combs(model, options=replace(A4, colour=False)).picture(0).astype(int)
    assert np.abs(picture - picture.mean(axis=2, keepdims=True)).max() <= 1


def test_several_boxes_each_begin_a_page() -> None:
    boxes = (invented.box(places=7), invented.box("bs_shallow", 4, name="Super"))
    printed = print_combs(invented.model(*boxes))
    first = [
        min(field.name for field in page.fields if field.kind is FieldKind.COMB)
        for page in printed.maps[0].pages
    ]
    assert first == ["box1.comb1.A.comb", "box1.comb7.A.comb", "box2.comb1.A.comb"]
    assert "Super, combs 1 to 4" in printed.text(2)
    assert len({page.layout for page in printed.maps[0].pages}) == 2


def test_a_filled_sheet_leaves_out_boxes_of_which_nothing_was_noted_and_says_so() -> None:
    upper = invented.box("bs_shallow", 4, name="Super 1")
    bare = replace(upper, combs=tuple(SheetComb(c.place, c.frame_name, c.lattice) for c in upper.combs))
    printed = print_combs(invented.model(invented.box(), bare, filled=True))
    assert printed.pages == 2
    assert "No comb noted: Super 1." in printed.whole_text
    assert print_combs(invented.model(invented.box(), bare)).pages == 3


def test_the_fields_of_the_page_stand_where_there_is_room_first() -> None:
    printed = print_combs(invented.model(invented.box(), invented.box("bs_shallow", 4, name="Super")))
    assert printed.maps[0].pages[1].field("page.temper").kind is FieldKind.WRITE
    assert "Temper" not in printed.text(2)


def test_a_full_last_page_is_followed_by_one_for_the_fields_of_the_page() -> None:
    printed = print_combs(invented.model(invented.box(places=12)))
    assert printed.pages == 3
    assert printed.maps[0].pages[2].field("page.temper").kind is FieldKind.WRITE


def test_tall_frames_are_fewer_a_page() -> None:
    page = print_combs(invented.model(invented.box("layens", 10))).maps[0].pages[0]
    assert sum(field.kind is FieldKind.COMB for field in page.fields) == 8


def test_a_colony_without_combs_still_has_a_page_for_its_fields() -> None:
    printed = print_combs(replace_boxes(invented.model()))
    assert printed.pages == 1
    assert printed.maps[0].pages[0].field("page.eggs.yes").kind is FieldKind.TICK


def replace_boxes(model: CombSheetModel) -> CombSheetModel:
    return replace(model, boxes=())


def test_a_whole_apiary_is_one_document_with_a_map_each() -> None:
    models = [invented.model(invented.box(places=3), code=code) for code in ("K3QF7", "AAAA2")]
    printed = print_combs(*models)
    assert printed.pages == 2
    assert [found.code for found in printed.maps] == ["K3QF7", "AAAA2"]
    assert "AAAA2 P1 R4" in printed.text(1)


def test_no_colony_is_refused() -> None:
    with pytest.raises(ValueError, match="no colony"):
        print_combs()


def test_a5_has_combs_and_ticks_but_nothing_to_be_read_back() -> None:
    printed = print_combs(invented.model(), options=PaperOptions(Paper.A5))
    page = printed.maps[0].pages[0]
    assert not printed.maps[0].read_back
    assert not page.markers
    assert not page.codes
    kinds = {field.kind for field in page.fields}
    assert FieldKind.BAR not in kinds
    assert {FieldKind.TICK, FieldKind.COMB} <= kinds
    assert printed.least_text_pt() >= 7.5


def test_paper_and_legend_agree_on_the_colour_of_each_cell() -> None:
    from beeworkbook.comb.colour import rgb_of
    from beeworkbook.comb.legend import INK, LEGEND

    model = invented.model(invented.box(places=6), filled=True)
    printed = print_combs(model)
    picture, ink = printed.picture(0, 400).astype(float), rgb_of(INK) * 255
    page, comb = printed.maps[0].pages[0], model.boxes[0].combs[3]
    place, lattice, cells = page.field("box1.comb4.A.comb").place, comb.lattice, comb.side_a.cells
    assert cells is not None
    x = (place.x + lattice.centres[:, 0] / lattice.width_mm * place.width) * 400 / 25.4
    y = (place.y + lattice.centres[:, 1] / lattice.height_mm * place.height) * 400 / 25.4
    shown = picture[y.astype(int), x.astype(int)]
    right = 0
    for content in {Content(int(code)) for code in np.unique(cells)}:
        fill = rgb_of(LEGEND[content].fill) * 255
        of_it = shown[cells == content]
        # Between the fill and the ink: on the straight line from one to the other.
        share = np.clip((of_it - fill) @ (ink - fill) / ((ink - fill) @ (ink - fill)), 0, 1)
        away = np.linalg.norm(of_it - fill - share[:, None] * (ink - fill), axis=1)
        right += int((away < 6).sum())
    assert right / len(cells) > 0.97


def test_the_date_is_set_in_single_digits() -> None:
    model = invented.model(filled=True, visit=invented.visit(day=date(2031, 12, 4)))
    text = print_combs(model).text(0)
    assert "041231" in "".join(word for word in text.split() if word.isdigit() and len(word) == 1)


def test_the_head_of_a_sheet_for_the_pocket_is_written_out() -> None:
    box = replace(invented.box(places=11), name="Brood box 1", remark="12 dummy board")
    text = print_combs(invented.model(box), options=PaperOptions(Paper.A5)).text(2)
    head = " ".join(text.split())
    assert "Brood box 1, combs 9 to 11 of 11, cold way. Page 3 of 4." in head
    assert "12 dummy board. Made for Sat 16 May 2026." in head
    assert "…" not in head


@pytest.mark.parametrize("paper", list(Paper))
def test_a_filled_sheet_without_combs_is_a_page_of_words(paper: Paper) -> None:
    told = invented.visit(sentences=("Opened: no.", "Heft: 14 + 15 kg, together 29."))
    model = invented.model(nothing_noted(), filled=True, visit=told)
    printed = print_combs(model, options=PaperOptions(paper))
    (page,) = printed.maps[0].pages
    assert (page.markers, page.codes, page.layout, printed.maps[0].read_back) == ((), (), 0, False)
    text = printed.whole_text
    assert "Opened: no. Heft: 14 + 15 kg, together 29." in text
    assert "Broken ones were laid out" not in text
    assert "foundation" not in text
    assert "bee inspector" in text
    picture = printed.picture(0)
    assert darkness(picture[len(picture) // 2 : len(picture) * 3 // 4]) < 0.001


def nothing_noted() -> SheetBox:
    """A box in which nobody noted a comb."""
    box = invented.box(places=11)
    combs = (replace(comb, side_a=bare(comb.side_a), side_b=bare(comb.side_b)) for comb in box.combs)
    return replace(box, combs=tuple(combs))


def bare(side: SheetSide) -> SheetSide:
    return replace(side, cells=None, origin=None, bees_eighths=None, figures="")
