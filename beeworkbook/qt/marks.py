"""The marks seen on a comb, drawn as small pale discs: the queen, six kinds of queen cell, a note.

The discs stand on any content in either theme, so they carry their own ground and ink. They are drawn,
not typed, because the fonts lack the signs.
"""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QPainter, QPainterPath, QPen

from beeworkbook.comb.contents import CellKind, MarkKind
from beeworkbook.comb.names import cell_kind_name
from beeworkbook.words import say

DISC_PX: Final = 24.0
"""Width of a disc on the bench, in the window's own pixels."""
DISC_GROUND: Final = QColor("#FBFDFA")
DISC_INK: Final = QColor("#0B1517")
_GRID: Final = 24.0


def mark_name(kind: MarkKind, cell_kind: CellKind | None = None, text: str = "") -> str:
    """What a mark says, in words."""
    if kind is MarkKind.QUEEN:
        return say("queen seen")
    if kind is MarkKind.QUEEN_CELL:
        return cell_kind_name(cell_kind) if cell_kind else say("queen cell")
    return say("note: {text}", text=text) if text else say("note")


def paint_mark(
    painter: QPainter,
    centre: QPointF,
    kind: MarkKind,
    cell_kind: CellKind | None = None,
    *,
    width: float = DISC_PX,
    chosen: QColor | None = None,
) -> None:
    """A mark's disc round `centre`, `width` across; with a ring of the colour `chosen` when picked up."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(centre)
    painter.scale(width / _GRID, width / _GRID)
    if chosen is not None:
        painter.setPen(QPen(chosen, 2.5))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawEllipse(QPointF(0, 0), 14.0, 14.0)
    painter.setPen(QPen(DISC_INK, 1.25))
    painter.setBrush(DISC_GROUND)
    painter.drawEllipse(QPointF(0, 0), 11.4, 11.4)
    paint_sign(painter, kind, cell_kind, DISC_INK)
    painter.restore()


def paint_sign(painter: QPainter, kind: MarkKind, cell_kind: CellKind | None, ink: QColor) -> None:
    """The bare sign of a mark round the origin, on a grid of 24: the painter is already scaled."""
    painter.setPen(_pen(ink))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    if kind is MarkKind.QUEEN:
        _paint_queen(painter)
    elif kind is MarkKind.QUEEN_CELL:
        _CELLS[cell_kind or CellKind.CHARGED](painter)
    else:
        _paint_note(painter)


def paint_small_sign(
    painter: QPainter, rect: QRectF, kind: MarkKind, cell_kind: CellKind | None, ink: QColor
) -> None:
    """The bare sign fitted into a small square, as it stands over the box's combs."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(rect.center())
    side = min(rect.width(), rect.height()) / 16.0
    painter.scale(side, side)
    paint_sign(painter, kind, cell_kind, ink)
    painter.restore()


def _pen(ink: QColor, width: float = 1.6) -> QPen:
    return QPen(ink, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.MiterJoin)


def _paint_queen(painter: QPainter) -> None:
    painter.drawEllipse(QPointF(0, -2.6), 3.7, 3.7)
    painter.drawLine(QPointF(0, 1.1), QPointF(0, 7.2))
    painter.drawLine(QPointF(-2.8, 4.2), QPointF(2.8, 4.2))


def _walls(*, tip: bool) -> QPainterPath:
    """A queen cell hanging from the comb, seen from the side; open below unless it has a tip."""
    path = QPainterPath(QPointF(-3.6, -5.6))
    path.lineTo(-3.6, 0.6)
    if tip:
        path.quadTo(QPointF(-3.4, 3.6), QPointF(0, 6.8))
        path.quadTo(QPointF(3.4, 3.6), QPointF(3.6, 0.6))
    else:
        path.quadTo(QPointF(-3.6, 2.8), QPointF(-2.2, 4.6))
        path.moveTo(2.2, 4.6)
        path.quadTo(QPointF(3.6, 2.8), QPointF(3.6, 0.6))
    path.lineTo(3.6, -5.6)
    return path


def _bar(painter: QPainter) -> None:
    painter.drawLine(QPointF(-5.6, -5.6), QPointF(5.6, -5.6))


def _dot(painter: QPainter, x: float, y: float, rx: float, ry: float) -> None:
    painter.setBrush(QBrush(painter.pen().color()))
    painter.setPen(Qt.PenStyle.NoPen)
    painter.drawEllipse(QPointF(x, y), rx, ry)


def _paint_play_cup(painter: QPainter) -> None:
    _bar(painter)
    path = QPainterPath(QPointF(-4.0, -5.6))
    path.quadTo(QPointF(-5.4, 0.6), QPointF(-2.6, 2.6))
    path.moveTo(2.6, 2.6)
    path.quadTo(QPointF(5.4, 0.6), QPointF(4.0, -5.6))
    painter.drawPath(path)


def _paint_with_egg(painter: QPainter) -> None:
    _bar(painter)
    painter.drawPath(_walls(tip=False))
    painter.drawLine(QPointF(0, -4.8), QPointF(0, -1.0))


def _paint_charged(painter: QPainter) -> None:
    _bar(painter)
    painter.drawPath(_walls(tip=False))
    _dot(painter, 0, -1.6, 1.9, 2.3)


def _paint_sealed(painter: QPainter) -> None:
    _bar(painter)
    painter.drawPath(_walls(tip=True))
    painter.drawLine(QPointF(-3.6, 1.6), QPointF(3.6, 1.6))


def _paint_emerged(painter: QPainter) -> None:
    _bar(painter)
    painter.drawPath(_walls(tip=False))
    # The lid she cut, hanging by its hinge.
    painter.drawPolyline([QPointF(2.2, 4.6), QPointF(5.0, 6.6), QPointF(1.4, 8.0)])


def _paint_torn_down(painter: QPainter) -> None:
    _bar(painter)
    painter.drawPath(_walls(tip=True))
    painter.drawLine(QPointF(-6.0, 3.4), QPointF(6.0, -3.4))


def _paint_note(painter: QPainter) -> None:
    painter.drawPolyline(
        [QPointF(-4.4, -5.6), QPointF(4.4, -5.6), QPointF(4.4, 5.6), QPointF(-4.4, 5.6), QPointF(-4.4, -5.6)]
    )
    for y in (-2.2, 0.8):
        painter.drawLine(QPointF(-2.2, y), QPointF(2.2, y))


_CELLS: Final[dict[CellKind, Callable[[QPainter], None]]] = {
    CellKind.PLAY_CUP: _paint_play_cup,
    CellKind.WITH_EGG: _paint_with_egg,
    CellKind.CHARGED: _paint_charged,
    CellKind.SEALED: _paint_sealed,
    CellKind.EMERGED: _paint_emerged,
    CellKind.TORN_DOWN: _paint_torn_down,
}
