import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.comb.contents import Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.lattice import fit_lattice
from beeworkbook.papers.comb_forms import (
    BARS,
    LEAST_COMB_MM2,
    TICKS,
    Form,
    SidePlan,
    field_form,
    form_for,
    form_for_all,
    forms,
    words_form,
)
from beeworkbook.papers.options import Paper
from beeworkbook.papers.rect import Rect

EVERY = [form for paper in Paper for form in forms(paper)]
MARKED = [form for form in EVERY if form.markers]


def named(form: Form) -> str:
    return f"{form.paper} {form.name}"


def sides(form: Form) -> list[SidePlan]:
    return [side for row in form.rows for side in (row.a, row.b)]


def places(form: Form) -> list[Rect]:
    """Everything drawn on a page but the markers."""
    drawn = [rect for side in sides(form) for rect in (side.comb, *side.ticks, *side.bars)]
    letters = [Rect(bar.x - 3.0, bar.y, 3.0, bar.height) for side in sides(form) for bar in side.bars]
    return [*drawn, *letters, *form.codes, form.header, *form.foot]


@pytest.mark.parametrize("form", EVERY, ids=named)
def test_nothing_on_a_page_lies_over_anything_else_or_off_the_paper(form: Form) -> None:
    paper = Rect(0, 0, form.paper.width_mm, form.paper.height_mm).inset(4.0)
    drawn = [place.inset(0.01) for place in places(form)]
    assert all(paper.holds(place) for place in drawn)
    assert not any(one.overlaps(other) for one, other in itertools.combinations(drawn, 2))


@pytest.mark.parametrize("form", MARKED, ids=named)
def test_21_markers_of_8_mm_stand_in_three_columns_and_seven_rows_with_white_round_them(form: Form) -> None:
    assert len(form.markers) == 21
    assert {(marker.width, marker.height) for marker in form.markers} == {(8.0, 8.0)}
    assert len({round(marker.x, 3) for marker in form.markers}) == 3
    assert len({round(marker.y, 3) for marker in form.markers}) == 7
    quiet = [marker.inset(-0.9) for marker in form.markers]
    assert not any(place.overlaps(marker) for place in places(form) for marker in quiet)


@pytest.mark.parametrize("form", MARKED, ids=named)
def test_two_codes_of_17_mm_have_white_round_them(form: Form) -> None:
    assert len(form.codes) == 2
    assert all(min(code.width, code.height) >= 17 for code in form.codes)
    others = [place for place in places(form) if place not in form.codes]
    # Two and a half of 21 squares; ISO/IEC 18004 asks for four, and the reader of the tests does with it.
    quiet = [code.inset(-2.0) for code in form.codes]
    assert not any(place.overlaps(code) for place in (*others, *form.markers) for code in quiet)


@pytest.mark.parametrize("form", EVERY, ids=named)
def test_every_side_has_its_ticks_and_bars(form: Form) -> None:
    for side in sides(form):
        assert len(side.ticks) == len(TICKS)
        assert len(side.bars) == (len(BARS) if form.markers else 0)
        assert all(tick.width == tick.height == 5.0 for tick in side.ticks)
        assert all(bar.width / 8 == pytest.approx(4.6) for bar in side.bars)
        assert all(bar.height >= 3.7 for bar in side.bars)


@pytest.mark.parametrize("form", EVERY, ids=named)
def test_the_right_half_mirrors_the_left(form: Form) -> None:
    width = form.paper.width_mm
    for row in form.rows:
        assert row.a.face is Face.A
        assert row.b.face is Face.B
        assert row.b.comb.right == pytest.approx(width - row.a.comb.x)
        assert row.whole.holds(Rect(row.whole.x, row.a.comb.y, 1, row.a.comb.height - 1e-6))
        for one, other in itertools.pairwise(row.b.ticks):
            assert one.x < other.x or one.y < other.y


@pytest.mark.parametrize("paper", [Paper.A4, Paper.LETTER])
@pytest.mark.parametrize("frame", list(FRAME_TYPES))
def test_every_frame_finds_a_form_that_prints_it_large_enough(frame: str, paper: Paper) -> None:
    kind = FRAME_TYPES[frame]
    form = form_for(paper, kind.inside_width_mm, kind.inside_height_mm)
    assert form.comb_area_mm2(kind.inside_width_mm, kind.inside_height_mm) >= LEAST_COMB_MM2


def test_a_usual_brood_frame_goes_six_to_a_page() -> None:
    for frame in ("bs_deep", "langstroth_deep", "zander", "de_normal", "dadant_blatt"):
        kind = FRAME_TYPES[frame]
        assert len(form_for(Paper.A4, kind.inside_width_mm, kind.inside_height_mm).rows) == 6


@given(st.floats(60, 700), st.floats(60, 700))
def test_any_frame_finds_a_form(wide: float, high: float) -> None:
    for paper in Paper:
        form = form_for(paper, wide, high)
        assert (
            form.comb_area_mm2(wide, high)
            <= max(each.comb_area_mm2(wide, high) for each in forms(paper)) + 1e-6
        )


def test_a_box_of_mixed_frames_takes_a_form_all_of_them_can_be_read_on() -> None:
    deep, shallow = fit_lattice(338, 190), fit_lattice(338, 114)
    form = form_for_all(Paper.A4, [deep, shallow])
    assert (
        min(form.comb_area_mm2(each.width_mm, each.height_mm) for each in (deep, shallow)) >= LEAST_COMB_MM2
    )


def test_a_box_without_combs_has_a_form_too() -> None:
    assert form_for_all(Paper.A4, []) is field_form(Paper.A4)


@pytest.mark.parametrize("paper", list(Paper))
def test_a_page_of_words_has_the_room_of_the_others_and_nothing_to_be_read_back(paper: Paper) -> None:
    form = words_form(paper)
    assert (form.number, form.markers, form.codes, form.is_of_words) == (0, (), (), True)
    assert form.body == field_form(paper).body
    assert not any(other.is_of_words for other in forms(paper))
