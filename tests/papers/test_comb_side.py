from dataclasses import replace

import numpy as np
import pytest

from beeworkbook.colony.sheet_models import SheetSide
from beeworkbook.comb.contents import Content, Face, MarkKind, Origin
from beeworkbook.papers.comb_side import bar_eighths
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.papers.rect import Rect
from tests.papers import invented
from tests.papers.printed import cut, darkness, print_combs


def test_bars_show_shares_in_eighths() -> None:
    side = invented.side("bs_deep", 5, 11, Face.A)
    shown = bar_eighths(side)
    asked = invented.eighths_of(5, 11)
    assert shown["sealed"] == pytest.approx(asked[Content.SEALED], abs=0.01)
    assert shown["stores"] == pytest.approx(asked[Content.STORES], abs=0.01)
    assert shown["bees"] == 7.0


def test_a_side_without_cells_has_empty_bars() -> None:
    assert set(bar_eighths(SheetSide(Face.A)).values()) == {0.0}


def test_a_bar_has_teeth_at_the_eighths() -> None:
    printed = print_combs(invented.model())
    place = printed.maps[0].pages[0].field("box1.comb2.B.bar.open").place
    picture = printed.picture(0, 300)
    for eighth in range(1, 8):
        x = place.x + place.width * eighth / 8
        assert darkness(cut(picture, Rect(x - 0.1, place.bottom - 0.7, 0.2, 0.4), 300)) > 0.4
        between = Rect(x + 1.5, place.bottom - 0.8, 1.5, 0.4)
        assert darkness(cut(picture, between, 300)) < 0.01


@pytest.mark.parametrize("frame", ["bs_deep", "bs_shallow"])
def test_the_crosses_part_a_blank_comb_into_eighths(frame: str) -> None:
    printed = print_combs(invented.model(invented.box(frame, 3)))
    place = printed.maps[0].pages[0].field("box1.comb1.A.comb").place
    picture = printed.picture(0, 300)
    for column in (1, 2, 3):
        x, y = place.x + place.width * column / 4, place.centre[1]
        assert darkness(cut(picture, Rect(x - 0.5, y - 0.5, 1, 1), 300)) > 0.05


def test_the_entrance_end_is_a_firm_bar_outside_the_comb() -> None:
    printed = print_combs(invented.model(invented.box(places=2)))
    picture, page = printed.picture(0, 300), printed.maps[0].pages[0]
    a, b = (page.field(f"box1.comb1.{face}.comb").place for face in "AB")
    assert darkness(cut(picture, Rect(a.x - 0.7, a.y + 2, 0.5, a.height - 4), 300)) > 0.9
    assert darkness(cut(picture, Rect(a.right + 0.3, a.y + 2, 0.4, a.height - 4), 300)) < 0.1
    assert darkness(cut(picture, Rect(b.right + 0.2, b.y + 2, 0.5, b.height - 4), 300)) > 0.9


def test_a_mark_is_drawn_on_its_cell_and_kept_whole_at_the_edge() -> None:
    box = invented.box(places=1)
    comb = box.combs[0]
    marks = (
        invented.mark(1, MarkKind.QUEEN, comb.lattice.cells - 1),
        invented.mark(2, MarkKind.QUEEN, 10**9),
    )
    marked = replace(comb, side_a=replace(comb.side_a, marks=marks))
    model = invented.model(replace(box, combs=(marked,)), filled=True)
    plain = invented.model(box, filled=True)
    difference = np.abs(
        print_combs(model).picture(0, 150).astype(int) - print_combs(plain).picture(0, 150).astype(int)
    )
    place = print_combs(model).maps[0].pages[0].field("box1.comb1.A.comb").place
    changed = cut(difference.astype(np.uint8), place)
    rows, columns = np.nonzero(changed.sum(axis=2))
    assert rows.max() <= changed.shape[0] - 2
    assert rows.min() > changed.shape[0] - 35
    assert columns.min() > changed.shape[1] - 35
    assert "Q" in print_combs(model).text(0)


def test_a5_ticks_have_their_signs_beside_them() -> None:
    printed = print_combs(
        invented.model(invented.box(places=2)), options=PaperOptions(Paper.A5, colour=False)
    )
    page, picture = printed.maps[0].pages[0], printed.picture(0)
    for face in "AB":
        place = page.field(f"box1.comb1.{face}.eggs").place
        assert darkness(cut(picture, Rect(place.x - 2.4, place.y + 1, 2.0, place.height - 2))) > 0.03


def test_unchanged_sides_are_ticked_as_looked_at() -> None:
    printed = print_combs(invented.model(invented.box(places=2, origins={1: Origin.UNCHANGED}), filled=True))
    place = printed.maps[0].pages[0].field("box1.comb1.A.looked").place
    assert darkness(cut(printed.picture(0), place.inset(0.6))) > 0.05
