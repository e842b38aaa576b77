"""The drawn signs of the chart: dots by how well a visit looked, and marks of what happened.

Drawn, not typed, because the fonts lack them; each is told by its shape alone.
"""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QPolygonF

from beeworkbook.colony.timeline import MarkSort
from beeworkbook.comb.contents import MarkKind
from beeworkbook.qt.marks import paint_small_sign
from beeworkbook.words import say
from beeworkbook.year.panes import DotShape

RADIUS: Final = 3.6
_GRID: Final = 16.0


def dot_words(shape: DotShape) -> str:
    """What a shape of dot means, for the key."""
    words = {
        DotShape.FULL: say("combs noted, with how far an eye may be off"),
        DotShape.HOLLOW: say("said in one line, with its wider band"),
        DotShape.OPEN: say("combs missing: at least so much, not joined"),
    }
    return words[shape]


def sort_words(sort: MarkSort) -> str:
    """What a mark is about, for the key and for screen readers."""
    words = {
        MarkSort.ARRIVAL: say("came"),
        MarkSort.QUEEN: say("queen"),
        MarkSort.FEED: say("feed"),
        MarkSort.SUPER: say("super"),
        MarkSort.SWARM: say("swarm or split"),
        MarkSort.END: say("end"),
        MarkSort.OTHER: say("other"),
    }
    return words[sort]


def paint_dot(
    painter: QPainter, at: QPointF, shape: DotShape, ink: QColor, ground: QColor, radius: float = RADIUS
) -> None:
    """A dot: full; hollow; or a cup open upwards."""
    if shape is DotShape.FULL:
        painter.setPen(QPen(ground, 1.0))
        painter.setBrush(ink)
        painter.drawEllipse(at, radius, radius)
        return
    painter.setPen(QPen(ink, 1.6))
    painter.setBrush(ground)
    if shape is DotShape.HOLLOW:
        painter.drawEllipse(at, radius + 0.2, radius + 0.2)
        return
    wide, top = radius + 0.6, at.y() - radius - 1.6
    path = QPainterPath(QPointF(at.x() - wide, top))
    path.lineTo(at.x() - wide, at.y() - 0.4)
    path.arcTo(QRectF(at.x() - wide, at.y() - 0.4 - wide, 2 * wide, 2 * wide), 180, 180)
    path.lineTo(at.x() + wide, top)
    painter.drawPath(path)


def paint_whisker(
    painter: QPainter, x: float, low_y: float, high_y: float | None, shape: DotShape, ink: QColor
) -> None:
    """The band of a value: plain for noted combs, with ends for one line, fading upwards where it is open."""
    painter.setPen(QPen(ink, 1.0))
    if high_y is None:
        for step in range(4):
            top = low_y - 7 - step * 5
            painter.drawLine(QPointF(x, top), QPointF(x, top - 2.6 + 0.5 * step))
        return
    painter.drawLine(QPointF(x, low_y), QPointF(x, high_y))
    if shape is DotShape.HOLLOW:
        for y in (low_y, high_y):
            painter.drawLine(QPointF(x - 3.2, y), QPointF(x + 3.2, y))


def paint_sort(painter: QPainter, rect: QRectF, sort: MarkSort, ink: QColor) -> None:
    """The sign of what happened, fitted into a small square."""
    if sort is MarkSort.QUEEN:
        paint_small_sign(painter, rect, MarkKind.QUEEN, None, ink)
        return
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(rect.topLeft())
    painter.scale(rect.width() / _GRID, rect.height() / _GRID)
    painter.setPen(QPen(ink, 1.5, Qt.PenStyle.SolidLine, Qt.PenCapStyle.SquareCap, Qt.PenJoinStyle.MiterJoin))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    _SORTS[sort](painter)
    painter.restore()


def _arrival(painter: QPainter) -> None:
    """A hive set down on its stand."""
    painter.drawRect(QRectF(3.5, 4.5, 9, 6.5))
    painter.drawLine(QPointF(2, 14), QPointF(14, 14))
    painter.drawLine(QPointF(5, 11), QPointF(5, 14))
    painter.drawLine(QPointF(11, 11), QPointF(11, 14))
    painter.drawLine(QPointF(2.5, 2.5), QPointF(13.5, 2.5))


def _feed(painter: QPainter) -> None:
    """A drop."""
    path = QPainterPath(QPointF(8, 1.8))
    path.cubicTo(QPointF(10.5, 5.6), QPointF(12.4, 7.8), QPointF(12.4, 10.2))
    path.cubicTo(QPointF(12.4, 12.8), QPointF(10.4, 14.4), QPointF(8, 14.4))
    path.cubicTo(QPointF(5.6, 14.4), QPointF(3.6, 12.8), QPointF(3.6, 10.2))
    path.cubicTo(QPointF(3.6, 7.8), QPointF(5.5, 5.6), QPointF(8, 1.8))
    painter.drawPath(path)


def _super(painter: QPainter) -> None:
    """A shallow box over a deeper one."""
    painter.drawRect(QRectF(2.5, 2.5, 11, 4.5))
    painter.drawLine(QPointF(2.5, 9.5), QPointF(2.5, 14))
    painter.drawLine(QPointF(13.5, 9.5), QPointF(13.5, 14))
    painter.drawLine(QPointF(2.5, 9.5), QPointF(13.5, 9.5))


def _swarm(painter: QPainter) -> None:
    """A cluster hanging from a twig."""
    painter.drawLine(QPointF(1.5, 3.5), QPointF(14.5, 2.5))
    path = QPainterPath(QPointF(4.5, 4))
    path.cubicTo(QPointF(4.2, 9), QPointF(6, 12.5), QPointF(8, 14.6))
    path.cubicTo(QPointF(10, 12.5), QPointF(11.8, 9), QPointF(11.5, 3.6))
    painter.drawPath(path)


def _end(painter: QPainter) -> None:
    """A full stop to a line."""
    painter.drawLine(QPointF(1.5, 8), QPointF(11, 8))
    painter.drawLine(QPointF(12.5, 3), QPointF(12.5, 13))


def _other(painter: QPainter) -> None:
    """A pointed leaf of paper."""
    painter.drawPolygon(QPolygonF([QPointF(8, 2.5), QPointF(13.5, 8), QPointF(8, 13.5), QPointF(2.5, 8)]))


_SORTS: Final[dict[MarkSort, Callable[[QPainter], None]]] = {
    MarkSort.ARRIVAL: _arrival,
    MarkSort.FEED: _feed,
    MarkSort.SUPER: _super,
    MarkSort.SWARM: _swarm,
    MarkSort.END: _end,
    MarkSort.OTHER: _other,
}
