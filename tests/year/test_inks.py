"""Fills are the comb's own, and all that is drawn can be told apart without colour."""

from itertools import combinations

import pytest
from PySide6.QtGui import QColor
from PySide6.QtWidgets import QApplication

from beeworkbook.comb.colour import contrast_ratio, rgb_of
from beeworkbook.comb.contents import Content
from beeworkbook.comb.legend import LEGEND
from beeworkbook.qt.palette import DARK, LIGHT, Palette
from beeworkbook.year.inks import LINE_STYLES, Fill, Inks, line_style, pattern_tile
from beeworkbook.year.panes import LAST_YEAR_STYLE
from beeworkbook.year.stacking import STAGES

pytestmark = pytest.mark.usefixtures("fonts")
SHOWN = (*STAGES, Content.DRONE, Content.STORES)


def shares(fill: Fill) -> dict[int, float]:
    image = pattern_tile(fill, 2.0)
    found: dict[int, int] = {}
    for y in range(image.height()):
        for x in range(image.width()):
            found[image.pixel(x, y)] = found.get(image.pixel(x, y), 0) + 1
    return {colour: count / image.width() / image.height() for colour, count in found.items()}


@pytest.mark.parametrize("content", SHOWN)
def test_a_fill_is_the_legends_colour_where_its_pattern_is_not(content: Content) -> None:
    held = {
        QColor(colour).name().upper(): share for colour, share in shares(Fill(content, LIGHT.board)).items()
    }
    bare = 1 - LEGEND[content].pattern.ink_share
    assert held[LEGEND[content].fill.upper()] >= bare * 0.4


@pytest.mark.parametrize("content", SHOWN)
def test_in_black_only_the_pattern_alone_is_inked(content: Content) -> None:
    held = shares(Fill(content, "#FFFFFF", colour=False))
    ink = sum(share * (255 - QColor(colour).value()) / 255 for colour, share in held.items())
    assert all(QColor(colour).saturation() == 0 for colour in held)
    assert ink == pytest.approx(LEGEND[content].pattern.ink_share, abs=0.06)


@pytest.mark.parametrize("palette", [LIGHT, DARK])
def test_what_is_assumed_is_nearer_to_the_ground(palette: Palette) -> None:
    ground = palette.board
    for content in STAGES:
        seen, assumed = (Fill(content, ground, assumed=held).colours[0] for held in (False, True))
        away = [
            sum(abs(a - b) for a, b in zip(colour.getRgb()[:3], QColor(ground).getRgb()[:3], strict=True))  # type: ignore[index]
            for colour in (seen, assumed)
        ]
        assert away[1] == pytest.approx(away[0] * 0.4, abs=3)


def test_stand_ins_are_all_different_and_nobody_elses() -> None:
    held = [
        Fill(content, LIGHT.board, colour, assumed).stand_in.name()
        for content in Content
        for assumed in (False, True)
        for colour in (True,)
    ]
    assert len(set(held)) == len(held)
    others = {entry.fill.lower() for entry in LEGEND.values()}
    assert not others & set(held)


def test_lines_differ_without_colour() -> None:
    looks = [(style.dashes, style.width) for style in LINE_STYLES]
    assert all(one != other for one, other in combinations(looks, 2))
    assert line_style(LAST_YEAR_STYLE) not in LINE_STYLES
    assert line_style(len(LINE_STYLES)) == LINE_STYLES[0]


@pytest.mark.parametrize("palette", [LIGHT, DARK])
def test_lines_stand_off_the_board(palette: Palette) -> None:
    held = palette
    inks = Inks(held)
    for style in (LAST_YEAR_STYLE, *range(len(LINE_STYLES))):
        # WCAG 2.2, 1.4.11: 3 : 1 for what is needed to understand a drawing.
        assert contrast_ratio(rgb_of(inks.line_colour(style).name()), rgb_of(held.board)) >= 3.0


def test_black_only_is_black_only() -> None:
    inks = Inks(LIGHT, colour=False)
    assert {inks.line_colour(style).name() for style in range(len(LINE_STYLES))} == {"#000000"}
    assert inks.chrome.board == "#FFFFFF"


def test_a_brush_is_made_once(fonts: QApplication) -> None:
    assert fonts is not None
    one, other = Inks(LIGHT, 2.0), Inks(LIGHT, 2.0)
    assert (
        one.brush(Content.EGGS).textureImage().cacheKey()
        == other.brush(Content.EGGS).textureImage().cacheKey()
    )
    assert one.brush(Content.EGGS).transform().m11() == 0.5
    assert one.brush(Content.EGGS, fine=True).transform().isIdentity()
