"""The two themes; their contrasts are tested in tests/published/test_interface_contrast.py."""

import re

from beeworkbook.qt.palette import COLOUR_NAMES, DARK, LIGHT, palette


def test_every_colour_is_written_in_full() -> None:
    for theme in (LIGHT, DARK):
        assert all(re.fullmatch("#[0-9A-F]{6}", getattr(theme, name)) for name in COLOUR_NAMES)


def test_the_themes_share_no_colour() -> None:
    assert not {getattr(LIGHT, name) for name in COLOUR_NAMES} & {
        getattr(DARK, name) for name in COLOUR_NAMES
    }


def test_the_theme_is_chosen_by_name() -> None:
    assert palette(dark=True) is DARK
    assert palette(dark=False) is LIGHT
