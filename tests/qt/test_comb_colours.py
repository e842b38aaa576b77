import numpy as np
import pytest

from beeworkbook.comb.contents import CONTENTS, Content, Origin
from beeworkbook.comb.lattice import fit_lattice
from beeworkbook.comb.legend import GROUND_DARK, INK, LOOKS, fill_of
from beeworkbook.qt.cell_map import Sight, cell_map
from beeworkbook.qt.comb_colours import OUTSIDE, Paint, colour_table, packed, unpacked

LIGHT = Paint(Origin.PAINTED, dark=False, beside="#E9EDEA", edge="#6F7D79")
DARK = Paint(Origin.PAINTED, dark=True, beside="#12191B", edge="#7D8D88")


def as_hex(colour: int) -> str:
    return f"#{int(colour) & 0xFFFFFF:06X}"


@pytest.mark.parametrize("paint", [LIGHT, DARK])
def test_without_ink_a_cell_has_its_own_fill_and_with_all_ink_the_ink(paint: Paint) -> None:
    table = colour_table(paint).colours
    for content in CONTENTS:
        assert as_hex(table[content, 0]) == fill_of(content, dark=paint.dark).upper()
    assert as_hex(table[Content.EGGS, 255]) == INK.upper()
    assert as_hex(table[OUTSIDE, 0]) == as_hex(table[OUTSIDE, 255]) == paint.beside


def test_lines_on_the_bare_ground_are_seen_in_the_dark() -> None:
    assert as_hex(colour_table(DARK).colours[Content.NOT_RECORDED, 0]) == GROUND_DARK
    assert as_hex(colour_table(DARK).colours[Content.NOT_RECORDED, 255]) == DARK.edge


def test_an_assumed_side_stands_nearer_to_the_ground() -> None:
    ground = unpacked(colour_table(LIGHT).colours[Content.NOT_RECORDED, 0])
    painted = unpacked(colour_table(LIGHT).colours)
    assumed = unpacked(colour_table(Paint(Origin.ASSUMED, False, LIGHT.beside, LIGHT.edge)).colours)
    for content in (Content.EGGS, Content.SEALED, Content.STORES):
        far, near = (np.abs(table[content, 0] - ground).sum() for table in (painted, assumed))
        assert near == pytest.approx(far * LOOKS[Origin.ASSUMED].strength, abs=2.0)


def test_only_painted_sides_show_single_cells_and_only_others_dash_their_regions() -> None:
    made = cell_map(fit_lattice(80.0, 60.0), Sight(4.0, 0.0, 0.0), 320, 240)
    wall, outline = colour_table(LIGHT).lines(made)
    assert wall.any()
    laid_out = colour_table(Paint(Origin.EIGHTHS, False, LIGHT.beside, LIGHT.edge))
    bare, dashed = laid_out.lines(made)
    assert not bare.any()
    assert 0.4 < np.count_nonzero(dashed) / np.count_nonzero(outline) < 0.8


def test_colours_are_packed_and_unpacked() -> None:
    rgb = np.array([[1.0, 2.0, 3.0], [255.0, 0.0, 128.0]])
    assert [as_hex(colour) for colour in packed(rgb)] == ["#010203", "#FF0080"]
    assert np.array_equal(unpacked(packed(rgb)), rgb)
