"""What lies round and over the comb on the bench: the frame's wood, the brush, the cursor, a line in hand."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QImage, QPainter, QPainterPath, QPen, QPolygonF

from beeworkbook.bench.hand import Hand
from beeworkbook.bench.tools.base import ToolName
from beeworkbook.bench.viewport import Viewport
from beeworkbook.colony.records import Mark
from beeworkbook.comb.contents import Content
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.lattice import Lattice, Points
from beeworkbook.comb.orientation import EntranceMark
from beeworkbook.qt import theme
from beeworkbook.qt.marks import DISC_GROUND, DISC_INK, DISC_PX, paint_mark
from beeworkbook.qt.palette import Palette

_LUG: Final = 7
_BAR: Final = 4
_TAG: Final = 15
_ROUND: Final = {ToolName.BRUSH, ToolName.ERASE}


@dataclass(frozen=True)
class FrameLook:
    """Where the entrance is, whether the keeper is at this side, whether it has the keyboard."""

    entrance: EntranceMark
    current: bool
    focused: bool


def paint_frame(painter: QPainter, whole: QRect, comb: QRect, palette: Palette, look: FrameLook) -> None:
    """The frame round the comb: top bar with its lugs, side bars, and where the entrance is.

    The side the keeper is at is drawn in the focus colour, heavier while it has the keyboard.
    """
    painter.fillRect(whole, QColor(palette.ground))
    wood = QRectF(comb).adjusted(-2.5, -2.5, 2.5, 2.5)
    colour = QColor(palette.focus if look.current else palette.edge)
    painter.setPen(QPen(colour, 2.0 if look.focused else 1.0))
    painter.setBrush(QColor(palette.sunk))
    painter.drawRect(wood)
    for left in (wood.left() - 2, wood.right() - _LUG + 2):
        painter.fillRect(QRectF(left, wood.top() - 2.5, _LUG, 4.0), colour)
    _paint_entrance(painter, wood, palette, look.entrance)


def _paint_entrance(painter: QPainter, wood: QRectF, palette: Palette, entrance: EntranceMark) -> None:
    bar = {
        EntranceMark.LEFT: QRectF(wood.left() - 1, wood.top(), _BAR, wood.height()),
        EntranceMark.RIGHT: QRectF(wood.right() + 1 - _BAR, wood.top(), _BAR, wood.height()),
        EntranceMark.FACE: QRectF(wood.left(), wood.bottom() + 1 - _BAR, wood.width(), _BAR),
    }.get(entrance)
    if bar is not None:
        painter.fillRect(bar, QColor(palette.ink))


def paint_blank_word(painter: QPainter, comb: QRectF, word: str, palette: Palette) -> None:
    """A word in the middle of a bare side."""
    painter.setPen(QColor(palette.second_ink))
    painter.setFont(theme.sans(theme.BODY_PX, italic=True))
    painter.drawText(comb, Qt.AlignmentFlag.AlignCenter, word)


def brush_rect(at: QPointF, radius: float) -> QRect:
    """What the brush and its tag may cover round a place."""
    reach = _reach(radius) + 1
    return QRect(round(at.x()) - reach, round(at.y()) - reach, 2 * reach + _TAG, 2 * reach + _TAG)


def mark_rect(at: QPointF) -> QRect:
    """What a mark's disc and its ring may cover round a place."""
    reach = DISC_PX / 2 + 6
    return QRectF(at.x() - reach, at.y() - reach, 2 * reach, 2 * reach).toAlignedRect()


def paint_brush(
    painter: QPainter, at: QPointF, view: Viewport, hand: Hand, *, tag: bool, cross: bool
) -> None:
    """The brush as a ring in its true size, if asked with its content's letter beside it and a cross.

    Of an empty hand there is no more than the cross.
    """
    radius = hand.radius_mm * view.scale if hand.tool in _ROUND and not hand.is_empty else 0.0
    letter = _letter(hand) if tag and not hand.is_empty else ""
    stamp = _brush_stamp(round(radius, 1), letter, view.ratio, cross=cross)
    reach = _reach(radius)
    painter.drawImage(QPoint(round(at.x()) - reach, round(at.y()) - reach), stamp)


def _reach(radius: float) -> int:
    return math.ceil(max(radius, 6.0)) + 3


@lru_cache(maxsize=16)
def _brush_stamp(radius: float, letter: str, ratio: float, *, cross: bool) -> QImage:
    """The brush drawn once: it goes with the pointer, and a ready picture is quicker than two rings."""
    reach = _reach(radius)
    side = 2 * reach + (_TAG if letter else 0)
    image = QImage(round(side * ratio), round(side * ratio), QImage.Format.Format_ARGB32_Premultiplied)
    image.setDevicePixelRatio(ratio)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    at = QPointF(reach, reach)
    for colour, width in ((DISC_GROUND, 3.0), (DISC_INK, 1.25)):
        painter.setPen(QPen(colour, width))
        if radius:
            painter.drawEllipse(at, radius, radius)
        if cross:
            painter.drawLine(at - QPointF(4, 0), at + QPointF(4, 0))
            painter.drawLine(at - QPointF(0, 4), at + QPointF(0, 4))
    if letter:
        _paint_tag(painter, at + QPointF(radius * 0.7 + 2, radius * 0.7 + 2), letter)
    painter.end()
    return image


def _letter(hand: Hand) -> str:
    if hand.tool is ToolName.ERASE or hand.content is Content.NOT_RECORDED:
        return "\u00d7"
    return "?" if hand.tool is ToolName.PICK else installed_letters().contents.get(hand.content, "")


def _paint_tag(painter: QPainter, at: QPointF, letter: str) -> None:
    rect = QRectF(at.x(), at.y(), _TAG, _TAG)
    painter.setPen(QPen(DISC_INK, 1.0))
    painter.setBrush(DISC_GROUND)
    painter.drawRoundedRect(rect, 2, 2)
    painter.setFont(theme.sans(theme.LABEL_PX, bold=True))
    painter.drawText(rect, Qt.AlignmentFlag.AlignCenter, letter)


def paint_cell_cursor(
    painter: QPainter, view: Viewport, lattice: Lattice, cell: int, palette: Palette
) -> None:
    """The cell the keyboard is at, its walls in the focus colour on a pale casing."""
    x, y = lattice.centres[cell].tolist()
    corners = [QPointF(*view.to_px((x + dx, y + dy))) for dx, dy in lattice.hexagon_mm.tolist()]
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width in ((DISC_GROUND, 5.0), (QColor(palette.focus), 2.5)):
        painter.setPen(QPen(QBrush(colour), width))
        painter.drawPolygon(QPolygonF(corners))


def paint_shape(painter: QPainter, view: Viewport, shape: Points) -> None:
    """The line of a tool at work."""
    path = QPainterPath()
    for at, (x, y) in enumerate(shape.tolist()):
        place = QPointF(*view.to_px((x, y)))
        if at:
            path.lineTo(place)
        else:
            path.moveTo(place)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width in ((DISC_GROUND, 3.5), (DISC_INK, 1.5)):
        painter.setPen(QPen(colour, width))
        painter.drawPath(path)


def paint_stretched(
    painter: QPainter, view: Viewport, old: Viewport | None, image: QImage, palette: Palette
) -> None:
    """The picture of a moment ago, put where it would be now."""
    painter.fillRect(QRect(view.left, view.top, view.width, view.height), QColor(palette.sunk))
    if old is not None:
        corners = ((old.left, old.top), (old.left + old.width, old.top + old.height))
        (x0, y0), (x1, y1) = (view.to_px(old.to_mm(*corner)) for corner in corners)
        painter.drawImage(QRectF(x0, y0, x1 - x0, y1 - y0), image)


def paint_marks(
    painter: QPainter,
    rect: QRect,
    places: Sequence[tuple[Mark, QPointF]],
    chosen: Mark | None,
    palette: Palette,
) -> None:
    """The marks whose discs lie in a rectangle; the one in hand with a ring."""
    for mark, at in places:
        if mark_rect(at).intersects(rect):
            ring = QColor(palette.focus) if mark is chosen else None
            paint_mark(painter, at, mark.kind, mark.cell_kind, chosen=ring)


def paint_part(painter: QPainter, image: QImage, view: Viewport, rect: QRect) -> None:
    """The part of the ready picture that lies in a rectangle of the canvas."""
    whole = QRect(view.left, view.top, view.width, view.height)
    if view.ratio != int(view.ratio):
        # The two grids do not meet: the painter's clip has to cut between pixels.
        painter.drawImage(whole.topLeft(), image)
        return
    part, ratio = whole.intersected(rect), int(view.ratio)
    left, top = (part.left() - view.left) * ratio, (part.top() - view.top) * ratio
    painter.drawImage(part, image, QRect(left, top, part.width() * ratio, part.height() * ratio))
