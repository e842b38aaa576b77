"""A side as a picture, for every face that shows one: kept for painting on, small, or once and for all.

The front of cell_map, comb_inks, comb_colours, face_picture and thumbnail. Faces ask here; how pixels
come about is those modules' own affair.
"""

from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPen

from beeworkbook.comb.contents import Content, Origin
from beeworkbook.comb.lattice import Cells, Lattice
from beeworkbook.comb.legend import INK, OUTLINE_INK, fill_of
from beeworkbook.qt.cell_map import Sight, cell_map
from beeworkbook.qt.comb_colours import Paint, colour_table
from beeworkbook.qt.comb_inks import strip_ink
from beeworkbook.qt.face_picture import FacePicture
from beeworkbook.qt.palette import DARK, Palette
from beeworkbook.qt.thumbnail import Thumbnail, sights

_DASHES: Final = (3.0, 3.0)


def paint_of(palette: Palette, look: Origin = Origin.PAINTED, *, beside: str | None = None) -> Paint:
    """The colours of a side in a theme; `beside` is what lies round the comb, the board unless said."""
    return Paint(look, palette == DARK, beside or palette.board, palette.edge)


def face_picture(
    lattice: Lattice, sight: Sight, width: int, height: int, paint: Paint, px_per_px: float = 1.0
) -> FacePicture:
    """The picture to paint on: width × height pixels of the screen. Fill it with show(), then patch().

    px_per_px pixels of the screen are one of the window's own.
    """
    made = FacePicture(
        cell_map(lattice, sight, width, height, line_px=px_per_px), colour_table(paint), px_per_px
    )
    made.image.setDevicePixelRatio(px_per_px)
    return made


def thumbnail(lattice: Lattice, width: int, height: int, paint: Paint, px_per_px: float = 1.0) -> Thumbnail:
    """The small picture of a side: width × height pixels of the screen. Fill it with show(), then patch()."""
    return Thumbnail(sights(lattice, width, height), paint, px_per_px)


def side_image(lattice: Lattice, cells: Cells, paint: Paint, width: int, px_per_px: float = 1.0) -> QImage:
    """A whole side as a picture of its own, so many pixels of the screen wide, in true proportion."""
    scale = width / lattice.width_mm
    height = max(1, round(lattice.height_mm * scale))
    picture = face_picture(lattice, Sight(scale, 0.0, 0.0), width, height, paint, px_per_px)
    picture.show(cells)
    return picture.image.copy()


def swatch(content: Content, width: int, height: int, palette: Palette, px_per_px: float = 1.0) -> QImage:
    """A content as the legend shows it: fill, pattern and outline; not recorded has a dashed edge."""
    colours = colour_table(paint_of(palette)).colours[content]
    wide, high = round(width * px_per_px), round(height * px_per_px)
    pixels = colours.take(strip_ink(content, wide, high, px_per_px))
    image = QImage(pixels.data, wide, high, 4 * wide, QImage.Format.Format_RGB32).copy()
    painter = QPainter(image)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if content is Content.NOT_RECORDED:
        painter.setPen(dashed_pen(palette, px_per_px))
    else:
        ink = QColor(INK)
        ink.setAlphaF(OUTLINE_INK)
        painter.setPen(QPen(ink, px_per_px))
    half = px_per_px / 2
    painter.drawRect(QRectF(half, half, wide - px_per_px, high - px_per_px))
    painter.end()
    image.setDevicePixelRatio(px_per_px)
    return image


def paint_bare(painter: QPainter, rect: QRectF, palette: Palette) -> None:
    """A side that was not looked at: bare ground with a dashed edge."""
    painter.fillRect(rect, QColor(fill_of(Content.NOT_RECORDED, dark=palette == DARK)))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(dashed_pen(palette))
    painter.drawRect(rect.adjusted(0.5, 0.5, -0.5, -0.5))


def dashed_pen(palette: Palette, width: float = 1.0) -> QPen:
    """The edge of what is not recorded."""
    pen = QPen(QColor(palette.edge), width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setDashPattern(list(_DASHES))
    return pen
