"""The look of the chrome: fonts and one style sheet, both from a palette.

The comb's own colours are in comb/legend.py.
"""

from dataclasses import fields
from typing import Final

from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication

from beeworkbook.qt.palette import DARK, Palette
from beeworkbook.resources import resource

SANS: Final = "Lato"
SERIF: Final = "Gentium Book Plus"

NAME_PX: Final = 22
COMB_PX: Final = 19
NOTE_PX: Final = 15
BODY_PX: Final = 14
LABEL_PX: Final = 12

_SIZES: Final = ("NAME_PX", "COMB_PX", "NOTE_PX", "BODY_PX", "LABEL_PX")

_FILES: Final = (
    "Lato-Regular.ttf",
    "Lato-Bold.ttf",
    "Lato-Italic.ttf",
    "GentiumBookPlus-Regular.ttf",
    "GentiumBookPlus-Bold.ttf",
)


def load_fonts() -> None:
    """Make the shipped fonts known to Qt; where one is missing the system's own stands in."""
    for name in _FILES:
        QFontDatabase.addApplicationFont(str(resource("fonts", name)))


def sans(pixels: int = BODY_PX, *, bold: bool = False, italic: bool = False) -> QFont:
    """The font of all but names and notes."""
    return _font(SANS, pixels, bold=bold, italic=italic)


def serif(pixels: int = NOTE_PX, *, bold: bool = False) -> QFont:
    """The font of colony, comb and day (bold), and of the keeper's own notes."""
    return _font(SERIF, pixels, bold=bold, italic=False)


def apply_theme(app: QApplication, palette: Palette) -> None:
    """Dress the whole program in a palette."""
    app.setFont(sans())
    app.setPalette(_qt_palette(palette))
    app.setStyleSheet(style_sheet(palette))


def _font(family: str, pixels: int, *, bold: bool, italic: bool) -> QFont:
    font = QFont(family)
    font.setPixelSize(pixels)
    font.setBold(bold)
    font.setItalic(italic)
    return font


def _qt_palette(p: Palette) -> QPalette:
    made = QPalette()
    roles = QPalette.ColorRole
    for role, colour in (
        (roles.Window, p.ground),
        (roles.Base, p.board),
        (roles.AlternateBase, p.sunk),
        (roles.Button, p.board),
        (roles.WindowText, p.ink),
        (roles.Text, p.ink),
        (roles.ButtonText, p.ink),
        (roles.ToolTipBase, p.board),
        (roles.ToolTipText, p.ink),
        (roles.PlaceholderText, p.second_ink),
        (roles.Highlight, p.selection),
        (roles.HighlightedText, p.ink),
        (roles.Link, p.focus),
        (roles.Mid, p.rule),
        (roles.Dark, p.edge),
        (roles.Light, p.board),
    ):
        made.setColor(role, QColor(colour))
    for role in (roles.WindowText, roles.Text, roles.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, role, QColor(p.edge))
    return made


def style_sheet(palette: Palette) -> str:
    """Rules, not boxes; corners of two pixels; no shadows; focus always to be seen."""
    values = {field.name: str(getattr(palette, field.name)) for field in fields(palette)}
    values |= {name: f"{globals()[name]}" for name in _SIZES}
    values |= {"SANS": SANS, "SERIF": SERIF}
    values |= {"icons": resource("icons").as_posix(), "theme": "dark" if palette == DARK else "light"}
    sheet = resource("style.qss").read_text(encoding="utf-8")
    for name in sorted(values, key=len, reverse=True):
        sheet = sheet.replace(f"@{name}", values[name])
    return sheet
