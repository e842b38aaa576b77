import io
from dataclasses import replace

import numpy as np
import pytest

from beeworkbook.colony.sheet_models import SheetComb, SheetSide
from beeworkbook.comb.contents import Content, Face, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.lattice import read_only
from beeworkbook.comb.side import blank_cells
from beeworkbook.papers.comb_picture import comb_outlines, content_fill, draw_comb, pattern_form
from beeworkbook.papers.options import PaperOptions
from beeworkbook.papers.page import Document
from beeworkbook.papers.rect import Rect
from tests.papers import invented
from tests.papers.printed import Picture, Printed, cut

LATTICE = FRAME_TYPES["bs_deep"].lattice
PLACE = Rect(20, 20, 55.3, 55.3 * LATTICE.height_mm / LATTICE.width_mm)


def shown(side: SheetSide, *, colour: bool = True) -> tuple[Picture, bytes]:
    stream = io.BytesIO()
    document = Document(stream, PaperOptions(colour=colour), "a comb")
    combs = (SheetComb(1, "bs_deep", LATTICE, side),)
    for drawn, outlines in comb_outlines(combs).items():
        draw_comb(document, PLACE, LATTICE, drawn, outlines)
    document.close()
    printed = Printed(stream.getvalue())
    return cut(printed.picture(dpi=300), PLACE, 300), printed.reader.pages[0].get_contents().get_data()  # type: ignore[union-attr]


def comb(place: int, origin: Origin) -> SheetSide:
    return invented.side("bs_deep", place, 11, Face.A, origin)


def test_a_side_nobody_looked_at_draws_nothing() -> None:
    picture, _ = shown(SheetSide(Face.A))
    assert (picture == 255).all()


def test_a_side_of_which_nothing_was_said_stays_blank() -> None:
    picture, _ = shown(SheetSide(Face.A, cells=blank_cells(LATTICE), origin=Origin.EIGHTHS))
    assert (picture == 255).all()


def test_only_what_was_said_is_filled() -> None:
    half = np.full(LATTICE.cells, Content.NOT_RECORDED, np.uint8)
    half[: LATTICE.cells // 2] = Content.STORES
    picture, _ = shown(SheetSide(Face.A, cells=read_only(half), origin=Origin.PAINTED))
    rows = picture.shape[0]
    assert picture[: rows // 2 - 20].mean() < 225
    assert (picture[rows // 2 + 20 :] == 255).all()


@pytest.mark.parametrize("content", [content for content in Content if content is not Content.NOT_RECORDED])
def test_a_whole_side_has_the_fill_of_its_content(content: Content) -> None:
    picture, _ = shown(SheetSide(Face.A, cells=blank_cells(LATTICE, content), origin=Origin.PAINTED))
    fill = np.round(np.array(content_fill(content)) * 255)
    near = (np.abs(picture.astype(int) - fill) <= 2).all(axis=2)
    assert near.mean() > 0.3


def test_outlines_are_full_when_painted_broken_when_laid_out() -> None:
    _, painted = shown(comb(5, Origin.PAINTED))
    _, laid = shown(comb(5, Origin.EIGHTHS))
    assert b"B*" in painted
    assert b"] 0 d" not in painted
    assert b"f*" in laid
    assert b"[26 17] 0 d" in laid


def test_an_unchanged_side_looks_like_what_it_copies() -> None:
    _, copied = shown(comb(5, Origin.UNCHANGED))
    _, laid = shown(comb(5, Origin.EIGHTHS))
    assert copied == laid
    _, fine = shown(replace(comb(5, Origin.UNCHANGED), grain=Origin.PAINTED))
    assert b"B*" in fine


def test_an_assumed_side_is_paler_and_without_pattern() -> None:
    laid, _ = shown(comb(5, Origin.EIGHTHS))
    assumed, described = shown(comb(5, Origin.ASSUMED))
    assert assumed.mean() > laid.mean() + 40
    assert b" Do" not in described


def test_black_only_leaves_the_paper_white_under_the_pattern() -> None:
    picture, _ = shown(comb(5, Origin.EIGHTHS), colour=False)
    assert (picture.max(axis=2).astype(int) - picture.min(axis=2) == 0).all()
    assert np.median(picture) == 255


def test_a_broken_border_is_drawn_once_and_the_edge_of_the_comb_not_at_all() -> None:
    whole, described = shown(
        SheetSide(Face.A, cells=blank_cells(LATTICE, Content.STORES), origin=Origin.EIGHTHS)
    )
    assert b" d " not in described
    assert whole.mean() < 255


def test_a_pattern_is_kept_once_for_combs_of_one_size() -> None:
    stream = io.BytesIO()
    document = Document(stream, PaperOptions(), "patterns")
    first = pattern_form(document, Content.SEALED, 55.3, 31.1, 10)
    assert pattern_form(document, Content.SEALED, 55.3, 31.1, 10) == first
    assert pattern_form(document, Content.SEALED, 50.0, 31.1, 10) != first
