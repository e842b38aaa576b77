"""The style sheet names every colour it asks for, and the shipped fonts are the ones used."""

import re

import pytest
from PySide6.QtGui import QFontInfo
from PySide6.QtWidgets import QApplication

from beeworkbook.qt import theme
from beeworkbook.qt.palette import DARK, LIGHT


def test_no_name_is_left_unfilled() -> None:
    for palette in (LIGHT, DARK):
        sheet = theme.style_sheet(palette)
        assert not re.search(r"@\w", sheet)
        assert palette.ground in sheet


def test_light_and_dark_differ() -> None:
    assert theme.style_sheet(LIGHT) != theme.style_sheet(DARK)


@pytest.mark.usefixtures("qapp")
def test_the_shipped_fonts_are_used() -> None:
    theme.load_fonts()
    assert QFontInfo(theme.sans()).family() == theme.SANS
    assert QFontInfo(theme.serif(bold=True)).family() == theme.SERIF


def test_the_theme_dresses_the_program(qapp: QApplication) -> None:
    theme.apply_theme(qapp, DARK)
    assert DARK.ground in qapp.styleSheet()
    theme.apply_theme(qapp, LIGHT)
    assert LIGHT.ground in qapp.styleSheet()
