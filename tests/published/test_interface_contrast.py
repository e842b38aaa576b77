"""The interface against the contrasts of WCAG 2.2: 4.5 : 1 for text (1.4.3), 3 : 1 for controls (1.4.11)."""

import pytest

from beeworkbook.comb.colour import contrast_ratio, rgb_of
from beeworkbook.comb.contents import Content
from beeworkbook.comb.legend import INK, fill_of
from beeworkbook.qt.palette import DARK, LIGHT, Palette

THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=["light", "dark"])
TEXT = 4.5
GRAPHIC = 3.0


def contrast(one: str, other: str) -> float:
    return contrast_ratio(rgb_of(one), rgb_of(other))


@THEMES
def test_all_text_can_be_read_on_every_surface(theme: Palette) -> None:
    assert min(contrast(text, surface) for text in theme.texts for surface in theme.surfaces) >= TEXT


@THEMES
def test_the_main_ink_reaches_the_strictest_level(theme: Palette) -> None:
    """WCAG 2.2, 1.4.6: 7 : 1."""
    assert min(contrast(theme.ink, surface) for surface in theme.surfaces) >= 7


@THEMES
def test_edges_of_controls_and_the_focus_stand_off(theme: Palette) -> None:
    assert min(contrast(theme.edge, surface) for surface in theme.surfaces) >= GRAPHIC
    assert min(contrast(theme.focus, surface) for surface in theme.surfaces) >= GRAPHIC


@THEMES
def test_the_combs_ground_carries_the_ink_of_its_theme(theme: Palette) -> None:
    """A side of which nothing is recorded says so in the chrome's inks."""
    ground = fill_of(Content.NOT_RECORDED, dark=theme is DARK)
    assert contrast(theme.ink, ground) >= TEXT
    assert contrast(theme.second_ink, ground) >= TEXT


@pytest.mark.parametrize("content", [content for content in Content if content is not Content.NOT_RECORDED])
def test_comb_ink_stands_on_every_fill(content: Content) -> None:
    assert contrast(INK, fill_of(content)) >= GRAPHIC
