"""The look of the chrome: fonts and one style sheet, both from a palette. The comb's colours are elsewhere."""

from typing import Final

from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication

from beeworkbook.qt.palette import Palette
from beeworkbook.resources import resource

SANS: Final = "Lato"
SERIF: Final = "Gentium Book Plus"

NAME_PX: Final = 22
COMB_PX: Final = 19
NOTE_PX: Final = 15
BODY_PX: Final = 14
LABEL_PX: Final = 12

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


def style_sheet(p: Palette) -> str:
    """Rules, not boxes; corners of two pixels; no shadows; focus always to be seen."""
    return f"""
* {{ font-family: "{SANS}"; font-size: {BODY_PX}px; color: {p.ink}; }}
QMainWindow, QDialog, QWidget#ground {{ background: {p.ground}; }}
QWidget#board, QScrollArea#board, QScrollArea#board > QWidget > QWidget {{ background: {p.board}; }}
QLabel {{ background: transparent; }}
QLabel#small {{ font-size: {LABEL_PX}px; color: {p.second_ink}; }}
QLabel#name {{ font-family: "{SERIF}"; font-weight: bold; font-size: {NAME_PX}px; }}
QLabel#head {{ font-family: "{SERIF}"; font-weight: bold; font-size: {COMB_PX}px; }}
QLabel#note, QPlainTextEdit#note {{ font-family: "{SERIF}"; font-size: {NOTE_PX}px; }}
QLabel#overdue {{ color: {p.propolis}; }}
QFrame#rule {{ background: {p.rule}; border: none; max-height: 1px; min-height: 1px; }}
QFrame#edge {{ background: {p.edge}; border: none; max-height: 1px; min-height: 1px; }}
QMenuBar {{ background: {p.sunk}; border-bottom: 1px solid {p.rule}; padding: 0 6px; }}
QMenuBar::item {{ padding: 5px 9px; background: transparent; }}
QMenuBar::item:selected {{ background: {p.selection}; }}
QMenu {{ background: {p.board}; border: 1px solid {p.edge}; padding: 4px 0; }}
QMenu::item {{ padding: 5px 26px 5px 18px; }}
QMenu::item:selected {{ background: {p.selection}; }}
QMenu::item:disabled {{ color: {p.edge}; }}
QMenu::separator {{ height: 1px; background: {p.rule}; margin: 4px 10px; }}
QToolTip {{ background: {p.board}; color: {p.ink}; border: 1px solid {p.edge}; padding: 3px 6px; font-size: {LABEL_PX}px; }}
QPushButton, QToolButton {{ background: {p.board}; border: 1px solid {p.edge}; border-radius: 2px; padding: 4px 12px; }}
QToolButton {{ padding: 3px 6px; }}
QPushButton:hover, QToolButton:hover {{ background: {p.selection}; }}
QPushButton:pressed, QToolButton:pressed, QToolButton:checked, QPushButton:checked {{ background: {p.selection}; border-color: {p.focus}; }}
QPushButton:focus, QToolButton:focus {{ border: 2px solid {p.focus}; padding: 3px 11px; }}
QToolButton:focus {{ padding: 2px 5px; }}
QPushButton:default {{ border: 1px solid {p.focus}; font-weight: bold; }}
QPushButton:default:focus {{ border: 2px solid {p.focus}; }}
QPushButton:disabled, QToolButton:disabled {{ color: {p.edge}; border-color: {p.rule}; }}
QPushButton#quiet, QToolButton#quiet {{ background: transparent; border: 1px solid transparent; }}
QPushButton#quiet:hover, QToolButton#quiet:hover {{ background: {p.selection}; }}
QPushButton#quiet:focus, QToolButton#quiet:focus {{ border: 2px solid {p.focus}; }}
QLineEdit, QPlainTextEdit, QTextEdit, QComboBox, QSpinBox, QDoubleSpinBox, QDateEdit {{
  background: {p.board}; border: 1px solid {p.edge}; border-radius: 2px; padding: 3px 6px;
  selection-background-color: {p.selection}; selection-color: {p.ink}; }}
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QComboBox:focus, QSpinBox:focus, QDoubleSpinBox:focus,
QDateEdit:focus {{ border: 2px solid {p.focus}; padding: 2px 5px; }}
QLineEdit:read-only {{ background: {p.ground}; }}
QComboBox QAbstractItemView {{ background: {p.board}; border: 1px solid {p.edge}; selection-background-color: {p.selection};
  selection-color: {p.ink}; outline: 0; }}
QComboBox::drop-down {{ border: none; width: 20px; }}
QCheckBox, QRadioButton {{ background: transparent; spacing: 7px; padding: 2px; border: 1px solid transparent; }}
QCheckBox:focus, QRadioButton:focus {{ border: 1px solid {p.focus}; border-radius: 2px; }}
QListView, QTreeView, QTableView, QListWidget, QTableWidget {{ background: {p.board}; border: 1px solid {p.rule};
  gridline-color: {p.rule}; outline: 0; }}
QListView:focus, QTreeView:focus, QTableView:focus {{ border: 1px solid {p.focus}; }}
QListView::item, QListWidget::item {{ padding: 4px 6px; }}
QListView::item:selected, QTreeView::item:selected, QTableView::item:selected {{ background: {p.selection}; color: {p.ink}; }}
QHeaderView::section {{ background: {p.ground}; border: none; border-bottom: 1px solid {p.edge}; padding: 4px 6px;
  font-size: {LABEL_PX}px; color: {p.second_ink}; }}
QScrollArea {{ border: none; background: transparent; }}
QScrollBar:vertical {{ background: {p.ground}; width: 11px; margin: 0; }}
QScrollBar:horizontal {{ background: {p.ground}; height: 11px; margin: 0; }}
QScrollBar::handle {{ background: {p.rule}; border-radius: 2px; min-height: 26px; min-width: 26px; margin: 2px; }}
QScrollBar::handle:hover {{ background: {p.edge}; }}
QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
QProgressBar {{ background: {p.sunk}; border: 1px solid {p.rule}; border-radius: 2px; text-align: center; height: 16px; }}
QProgressBar::chunk {{ background: {p.selection}; }}
QGroupBox {{ border: none; border-top: 1px solid {p.rule}; margin-top: 18px; padding-top: 6px; }}
QGroupBox::title {{ subcontrol-origin: margin; left: 0; color: {p.second_ink}; font-size: {LABEL_PX}px; }}
QSplitter::handle {{ background: {p.rule}; }}
"""
