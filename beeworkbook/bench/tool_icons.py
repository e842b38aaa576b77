"""Our own drawings of what the hand can hold, on the grid of the icons: 20 units, lines of 1.75.

Drawn as the things a keeper has about: a brush, a pail, a scraper, a frame; filled only when held.
"""

from collections.abc import Callable, Mapping
from typing import Final

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter, QPainterPath, QPolygonF

from beeworkbook.bench.tools.base import ToolName


def _brush(painter: QPainter) -> None:
    painter.drawLine(QPointF(16.5, 3.5), QPointF(10, 10))
    tip = QPainterPath(QPointF(8.2, 8.8))
    tip.lineTo(11.2, 11.8)
    tip.cubicTo(10.4, 15.6, 6.6, 17, 3, 17)
    tip.cubicTo(4.6, 14.6, 4.2, 10.4, 8.2, 8.8)
    painter.drawPath(tip)


def _ellipse(painter: QPainter) -> None:
    painter.drawEllipse(QRectF(2.5, 5, 15, 10))
    painter.drawLine(QPointF(10, 10), QPointF(10.1, 10))


def _outline(painter: QPainter) -> None:
    line = QPainterPath(QPointF(6, 4.5))
    line.cubicTo(11, 1.5, 17.5, 5, 16, 9)
    line.cubicTo(15, 12, 18, 15, 13, 16.5)
    line.cubicTo(8, 18, 2, 15, 3.5, 10.5)
    painter.drawPath(line)


def _band(painter: QPainter) -> None:
    painter.drawRect(QRectF(3, 4, 14, 5))
    painter.drawPolyline(QPolygonF([QPointF(3, 9), QPointF(3, 16), QPointF(17, 16), QPointF(17, 9)]))


def _fill(painter: QPainter) -> None:
    pail = [QPointF(3, 9), QPointF(9, 3), QPointF(14.5, 9), QPointF(8.5, 15.5)]
    painter.drawPolygon(QPolygonF(pail))
    painter.drawLine(QPointF(16.5, 12.5), QPointF(16.5, 16.5))


def _pick(painter: QPainter) -> None:
    painter.drawPolyline(QPolygonF([QPointF(6, 3), QPointF(9, 11), QPointF(10, 16.5)]))
    painter.drawPolyline(QPolygonF([QPointF(14, 3), QPointF(11, 11), QPointF(10, 16.5)]))
    painter.drawLine(QPointF(6, 3), QPointF(14, 3))


def _erase(painter: QPainter) -> None:
    blade = [QPointF(9, 3.5), QPointF(16.5, 9.5), QPointF(11, 15), QPointF(4.5, 9)]
    painter.drawPolygon(QPolygonF(blade))
    painter.drawLine(QPointF(3, 17), QPointF(17, 17))


def draw_smaller(painter: QPainter) -> None:
    """A small round brush."""
    painter.drawEllipse(QPointF(10, 10), 2.2, 2.2)


def draw_larger(painter: QPainter) -> None:
    """A large round brush."""
    painter.drawEllipse(QPointF(10, 10), 6.5, 6.5)


def draw_only(painter: QPainter) -> None:
    """A board laid over another: what lies under it is not touched."""
    painter.drawRect(QRectF(7, 7, 10, 10))
    painter.drawPolyline(
        QPolygonF([QPointF(7, 13), QPointF(3, 13), QPointF(3, 3), QPointF(13, 3), QPointF(13, 7)])
    )


TOOL_DRAWINGS: Final[Mapping[ToolName, Callable[[QPainter], None]]] = {
    ToolName.BRUSH: _brush,
    ToolName.ELLIPSE: _ellipse,
    ToolName.OUTLINE: _outline,
    ToolName.BAND: _band,
    ToolName.FILL: _fill,
    ToolName.PICK: _pick,
    ToolName.ERASE: _erase,
}
