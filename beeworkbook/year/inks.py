"""Brushes and pens of the chart: the comb's own fills and patterns, and lines that differ without colour.

Colours and patterns come from comb/legend.py, their geometry from comb/patterns.py, the chrome's from the
palette. In black only, fills are white and all ink is black.
"""

from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QImage, QPainter, QPen, QTransform

from beeworkbook.comb.contents import Content, Origin
from beeworkbook.comb.legend import INK, LEGEND, LOOKS, OUTLINE_INK
from beeworkbook.comb.patterns import MarkShape, tile
from beeworkbook.qt.comb_inks import SCREEN_PX_PER_MM, draw_marks
from beeworkbook.qt.palette import LIGHT, Palette
from beeworkbook.year.panes import LAST_YEAR_STYLE

_FINEST: Final = 4
_WIDE_TILE_PX: Final = 256
_PAPER: Final = replace(
    LIGHT,
    ground="#FFFFFF",
    board="#FFFFFF",
    sunk="#FFFFFF",
    ink="#000000",
    second_ink="#000000",
    edge="#000000",
    rule="#A0A0A0",
    focus="#000000",
    propolis="#000000",
    soon="#000000",
    well="#000000",
)


@dataclass(frozen=True)
class LineStyle:
    """One of the lines that must be told apart: a colour of the palette, dashes, a width in pixels."""

    colour: str
    dashes: tuple[float, ...]
    width: float = 1.8


LINE_STYLES: Final = (
    LineStyle("focus", (), 2.2),
    LineStyle("propolis", (5.0, 2.2)),
    LineStyle("well", (1.4, 1.8), 2.2),
    LineStyle("soon", (7.0, 2.0, 1.4, 2.0)),
    LineStyle("second_ink", (), 1.2),
    LineStyle("focus", (2.6, 1.6)),
    LineStyle("propolis", (1.2, 1.2), 2.0),
    LineStyle("well", (9.0, 2.4)),
)
_LAST_YEAR: Final = LineStyle("edge", (3.0, 2.4), 1.2)


@dataclass(frozen=True)
class Fill:
    """How one content is filled: in colour or in black only, assumed or seen, on this ground."""

    content: Content
    ground: str
    colour: bool = True
    assumed: bool = False

    @property
    def colours(self) -> tuple[QColor, QColor]:
        """The fill, and the ink of its pattern with its strength as alpha."""
        entry = LEGEND[self.content]
        ink = QColor(INK if self.colour else "#000000")
        ink.setAlphaF(entry.screen_ink if self.colour else 1.0)
        fill = QColor(entry.fill if self.colour else "#FFFFFF")
        if self.assumed:
            strength = LOOKS[Origin.ASSUMED].strength
            fill = _mixed(QColor(self.ground), fill, strength)
            ink.setAlphaF(ink.alphaF() * strength)
        return fill, ink

    @property
    def stand_in(self) -> QColor:
        """A colour that is no other fill's and none of the chrome's."""
        return QColor(253, 16 * int(self.content) + 1, 5 if self.assumed else 3)


@dataclass(frozen=True)
class Inks:
    """All that the chart is drawn with. px_per_px: pixels of the picture to one of the window's own.

    plain: a plain stand-in for each fill, for a vector file that lays the patterns itself.
    """

    palette: Palette = LIGHT
    px_per_px: float = 1.0
    colour: bool = True
    plain: bool = False

    @property
    def chrome(self) -> Palette:
        """The colours of all but the contents."""
        return self.palette if self.colour else _PAPER

    def brush(self, content: Content, *, assumed: bool = False, fine: bool = False) -> QBrush:
        """The fill of a content with its pattern; paler where it is only assumed.

        fine: for a painter whose unit is the picture's pixel, else the window's own.
        """
        fill = Fill(content, self.chrome.board, self.colour, assumed)
        return QBrush(fill.stand_in) if self.plain else _brush(fill, self.px_per_px, fine)

    @property
    def outline(self) -> QPen:
        """Of the bands: pale fills cannot stand off a pale ground. One pixel of the picture wide.

        Qt takes five times as long over the pixels of a wider line, so a fine one is darker instead.
        """
        ink = QColor(INK if self.colour else "#000000")
        ink.setAlphaF(OUTLINE_INK if self.px_per_px < 1.5 else 0.9)
        return _pen(ink, 1.0)

    @property
    def top(self) -> QPen:
        """Of the upper edge of a stack."""
        return _pen(QColor(self.chrome.ink), 1.5)

    def line(self, style: int) -> QPen:
        """Of a curve that must be told from others."""
        found = line_style(style)
        pen = _pen(QColor(getattr(self.chrome, found.colour)), found.width)
        if found.dashes:
            pen.setDashPattern(list(found.dashes))
            pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        return pen

    def line_colour(self, style: int) -> QColor:
        """The colour of that curve, for its dots and its name."""
        return QColor(getattr(self.chrome, line_style(style).colour))

    def hair(self, name: str = "rule") -> QPen:
        """A thin line in one of the chrome's colours."""
        return _pen(QColor(getattr(self.chrome, name)), 1.0)


def line_style(style: int) -> LineStyle:
    """The look of a curve by its number; they repeat where there are very many."""
    return _LAST_YEAR if style == LAST_YEAR_STYLE else LINE_STYLES[style % len(LINE_STYLES)]


def _pen(colour: QColor, width: float) -> QPen:
    return QPen(colour, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)


def _mixed(ground: QColor, fill: QColor, share: float) -> QColor:
    one, other = ground.getRgb()[:3], fill.getRgb()[:3]  # type: ignore[index]
    return QColor(*(round(a + (b - a) * share) for a, b in zip(one, other, strict=True)))


@lru_cache(maxsize=64)
def _brush(fill: Fill, px_per_px: float, fine: bool) -> QBrush:  # noqa: FBT001 - a key of the cache
    brush = QBrush(pattern_tile(fill, px_per_px))
    # The tile is as fine as the picture, so that a pattern is as sharp as a line at any scale.
    if not fine and px_per_px != 1:
        brush.setTransform(QTransform.fromScale(1 / px_per_px, 1 / px_per_px))
    return brush


def pattern_tile(fill: Fill, px_per_px: float) -> QImage:
    """The least picture of a fill that carries on when it is laid edge to edge."""
    ground, ink = fill.colours
    pattern = LEGEND[fill.content].pattern
    if pattern.shape is MarkShape.NONE:
        return _plain(4, 4, ground)
    found = tile(pattern, pattern.strip_mm)
    scale = SCREEN_PX_PER_MM * px_per_px
    width, height = max(2, round(found.width_mm * scale)), max(2, round(found.height_mm * scale))
    # Drawn large and averaged: Qt draws slanting lines under a pixel too thin.
    large = QImage(width * _FINEST, height * _FINEST, QImage.Format.Format_ARGB32_Premultiplied)
    large.fill(Qt.GlobalColor.transparent)
    painter = QPainter(large)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    # The tile is stretched by less than a pixel so that it is whole pixels wide.
    painter.scale(large.width() / found.width_mm, large.height() / found.height_mm)
    draw_marks(painter, found.marks, QColor(ink.red(), ink.green(), ink.blue()))
    painter.end()
    small = large.scaled(
        width, height, Qt.AspectRatioMode.IgnoreAspectRatio, Qt.TransformationMode.SmoothTransformation
    )
    made = _plain(width, height, ground)
    painter = QPainter(made)
    painter.setOpacity(ink.alphaF())
    painter.drawImage(QRectF(0, 0, width, height), small)
    painter.end()
    return _repeated(made)


def _repeated(tile_picture: QImage) -> QImage:
    """The tile several times side by side: Qt lays a wide picture four times as fast as a narrow one."""
    times = -(-_WIDE_TILE_PX // tile_picture.width())
    made = _plain(tile_picture.width() * times, tile_picture.height(), QColor(0, 0, 0))
    painter = QPainter(made)
    for at in range(times):
        painter.drawImage(at * tile_picture.width(), 0, tile_picture)
    painter.end()
    return made


def _plain(width: int, height: int, fill: QColor) -> QImage:
    made = QImage(width, height, QImage.Format.Format_RGB32)
    made.fill(fill)
    return made
