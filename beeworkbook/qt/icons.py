"""Our own drawings: parts of a hive in elevation, and the few signs of state. No image files.

Drawn on a grid of 20 units with lines of 1.75, square ends; filled only when *on*.
"""

from collections.abc import Callable, Sequence
from enum import StrEnum
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPainterPath, QPen, QPixmap, QPolygonF

from beeworkbook.colony.records import PartKind

GRID: Final = 20.0
LINE: Final = 1.75

PART_HEIGHTS: Final[dict[PartKind, float]] = {
    PartKind.STAND: 5.0,
    PartKind.FLOOR: 3.0,
    PartKind.NUCLEUS_BOX: 11.0,
    PartKind.BROOD_BOX: 11.0,
    PartKind.EXCLUDER: 1.5,
    PartKind.SUPER: 7.0,
    PartKind.CLEARER_BOARD: 2.0,
    PartKind.CROWN_BOARD: 2.0,
    PartKind.FEEDER: 6.0,
    PartKind.LIFT: 7.0,
    PartKind.ROOF: 5.0,
}
"""Height of a part in grid units: how it looks, not how it measures."""


class State(StrEnum):
    """The state of a colony in the walk, always with a word beside it."""

    DONE = "done"
    OVERDUE = "overdue"
    SOON = "soon"
    SHUT = "shut"
    OUTSIDE = "outside"
    PASSED = "passed"
    PLAIN = "plain"


def paint_state(painter: QPainter, rect: QRectF, state: State, colour: QColor) -> None:
    """The sign of a state: tick, triangle, dot, square, ring, dash; each its own shape."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    if state is State.DONE:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(_pen(colour, rect.width() / 6))
        painter.drawPolyline(QPolygonF(_points(rect, (0.1, 0.55), (0.4, 0.85), (0.92, 0.18))))
    elif state is State.OVERDUE:
        painter.drawPolygon(QPolygonF(_points(rect, (0.5, 0.05), (1.0, 0.92), (0.0, 0.92))))
    elif state is State.SOON:
        painter.drawEllipse(rect.adjusted(1, 1, -1, -1))
    elif state is State.SHUT:
        painter.drawRect(rect.adjusted(1.5, 1.5, -1.5, -1.5))
    elif state in {State.OUTSIDE, State.PASSED}:
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(_pen(colour, rect.width() / 6))
        if state is State.OUTSIDE:
            painter.drawEllipse(rect.adjusted(1.5, 1.5, -1.5, -1.5))
        else:
            painter.drawPolyline(QPolygonF(_points(rect, (0.1, 0.5), (0.9, 0.5))))
    painter.restore()


def stack_height(kinds: Sequence[PartKind]) -> float:
    """The height of a stack in grid units."""
    return sum(PART_HEIGHTS[kind] for kind in kinds)


def part_rects(rect: QRectF, kinds: Sequence[PartKind]) -> list[QRectF]:
    """Where each part of a stack is drawn inside `rect`, from the ground up, standing on its lower edge."""
    height = stack_height(kinds) or 1.0
    unit = min(rect.height() / height, rect.width() / 20.0)
    made, bottom = [], rect.bottom()
    for kind in kinds:
        part_height = PART_HEIGHTS[kind] * unit
        width = _part_width(kind) * unit
        made.append(QRectF(rect.center().x() - width / 2, bottom - part_height, width, part_height))
        bottom -= part_height
    return made


def paint_hive(
    painter: QPainter, rect: QRectF, kinds: Sequence[PartKind], ink: QColor, fill: QColor, *, on: bool = False
) -> None:
    """A hive in elevation, the parts from the ground up; heavier ink when it is the chosen one."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    width = 1.7 if on else 1.2
    for kind, part in zip(kinds, part_rects(rect, kinds), strict=True):
        paint_part(painter, part, kind, _pen(ink, width), fill)
    painter.restore()


def paint_part(painter: QPainter, rect: QRectF, kind: PartKind, pen: QPen, fill: QColor) -> None:
    """One part of a hive in elevation."""
    painter.setPen(pen)
    painter.setBrush(fill)
    _PAINTERS.get(kind, _paint_board)(painter, rect)


def icon(name: str, ink: str, on: str | None = None) -> QIcon:
    """A small drawn icon by name; see ICON_NAMES.

    Errors: KeyError for a name that has no drawing.
    """
    return drawn_icon(_ICONS[name], ink, on)


def drawn_icon(draw: Callable[[QPainter], None], ink: str, on: str | None = None) -> QIcon:
    """An icon from a drawing on the grid; `on` is what its closed shapes are filled with."""
    made = QIcon()
    for scale in (1, 2):
        pixmap = QPixmap(QSize(20 * scale, 20 * scale))
        pixmap.setDevicePixelRatio(scale)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(_pen(QColor(ink), LINE))
        painter.setBrush(QColor(on) if on else Qt.BrushStyle.NoBrush)
        draw(painter)
        painter.end()
        made.addPixmap(pixmap)
    return made


def program_icon() -> QIcon:
    """A frame with lugs, three nested brood arcs low in it, a propolis edge on limewash."""
    made = QIcon()
    for size in (16, 24, 32, 48, 64, 128, 256):
        pixmap = QPixmap(size, size)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(size / GRID, size / GRID)
        _paint_program_icon(painter)
        painter.end()
        made.addPixmap(pixmap)
    return made


# --- parts ------------------------------------------------------------------------------------


def _part_width(kind: PartKind) -> float:
    widths = {PartKind.ROOF: 20.0, PartKind.NUCLEUS_BOX: 11.0, PartKind.STAND: 17.0}
    return widths.get(kind, 18.0)


def _paint_box(painter: QPainter, rect: QRectF) -> None:
    painter.drawRect(rect)
    handle = QRectF(0, 0, rect.width() * 0.3, max(1.2, rect.height() * 0.12))
    handle.moveCenter(QPointF(rect.center().x(), rect.top() + rect.height() * 0.42))
    painter.drawRect(handle)


def _paint_board(painter: QPainter, rect: QRectF) -> None:
    painter.drawRect(rect)


def _paint_excluder(painter: QPainter, rect: QRectF) -> None:
    painter.drawRect(rect)
    steps = 7
    for i in range(1, steps):
        x = rect.left() + rect.width() * i / steps
        painter.drawLine(QPointF(x, rect.top()), QPointF(x, rect.bottom()))


def _paint_floor(painter: QPainter, rect: QRectF) -> None:
    painter.drawRect(rect)
    painter.drawLine(
        QPointF(rect.left() + rect.width() * 0.3, rect.top() + rect.height() * 0.3),
        QPointF(rect.left() + rect.width() * 0.7, rect.top() + rect.height() * 0.3),
    )


def _paint_stand(painter: QPainter, rect: QRectF) -> None:
    rail = QRectF(rect.left(), rect.top(), rect.width(), rect.height() * 0.3)
    painter.drawRect(rail)
    for share in (0.12, 0.88):
        x = rect.left() + rect.width() * share
        painter.drawLine(QPointF(x, rail.bottom()), QPointF(x, rect.bottom()))


def _paint_roof(painter: QPainter, rect: QRectF) -> None:
    cap = QRectF(rect.left(), rect.top(), rect.width(), rect.height() * 0.35)
    skirt = QRectF(rect.left() + rect.width() * 0.03, cap.bottom(), rect.width() * 0.94, rect.height() * 0.65)
    painter.drawRect(skirt)
    painter.drawRect(cap)


def _paint_feeder(painter: QPainter, rect: QRectF) -> None:
    painter.drawRect(rect)
    level = rect.top() + rect.height() * 0.45
    painter.drawLine(QPointF(rect.left(), level), QPointF(rect.right(), level))


_PAINTERS: Final[dict[PartKind, Callable[[QPainter, QRectF], None]]] = {
    PartKind.STAND: _paint_stand,
    PartKind.FLOOR: _paint_floor,
    PartKind.NUCLEUS_BOX: _paint_box,
    PartKind.BROOD_BOX: _paint_box,
    PartKind.SUPER: _paint_box,
    PartKind.LIFT: _paint_box,
    PartKind.EXCLUDER: _paint_excluder,
    PartKind.FEEDER: _paint_feeder,
    PartKind.ROOF: _paint_roof,
}


# --- icons ------------------------------------------------------------------------------------


def _paint_back(painter: QPainter) -> None:
    painter.drawPolyline(QPolygonF([QPointF(12.5, 4), QPointF(6.5, 10), QPointF(12.5, 16)]))


def _paint_on(painter: QPainter) -> None:
    painter.drawPolyline(QPolygonF([QPointF(7.5, 4), QPointF(13.5, 10), QPointF(7.5, 16)]))


def _paint_frame_icon(painter: QPainter) -> None:
    painter.drawLine(QPointF(1, 4), QPointF(19, 4))
    painter.drawRect(QRectF(4, 4, 12, 12))
    painter.drawArc(QRectF(7, 9, 6, 8), 0, 180 * 16)


def _paint_box_icon(painter: QPainter) -> None:
    _paint_box(painter, QRectF(3, 4, 14, 12))


def _paint_smoker(painter: QPainter) -> None:
    painter.drawRect(QRectF(4, 8, 7, 9))
    painter.drawPolyline(QPolygonF([QPointF(4, 8), QPointF(7, 3), QPointF(10, 4), QPointF(11, 8)]))
    painter.drawPolyline(QPolygonF([QPointF(14, 8), QPointF(17, 7), QPointF(17, 17), QPointF(14, 16)]))


def _paint_tool(painter: QPainter) -> None:
    painter.drawPolyline(QPolygonF([QPointF(4, 4), QPointF(6, 3), QPointF(8, 5), QPointF(15, 16)]))
    painter.drawLine(QPointF(13, 17.5), QPointF(17, 15))


def _paint_plus(painter: QPainter) -> None:
    painter.drawLine(QPointF(10, 4), QPointF(10, 16))
    painter.drawLine(QPointF(4, 10), QPointF(16, 10))


def _paint_sheet(painter: QPainter) -> None:
    painter.drawRect(QRectF(4.5, 2.5, 11, 15))
    for y in (6.5, 10, 13.5):
        painter.drawLine(QPointF(7, y), QPointF(13, y))


_ICONS: Final[dict[str, Callable[[QPainter], None]]] = {
    "back": _paint_back,
    "on": _paint_on,
    "frame": _paint_frame_icon,
    "box": _paint_box_icon,
    "smoker": _paint_smoker,
    "tool": _paint_tool,
    "plus": _paint_plus,
    "sheet": _paint_sheet,
}
ICON_NAMES: Final = tuple(_ICONS)


def _paint_program_icon(painter: QPainter) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor("#E9EDEA"))
    painter.drawRoundedRect(QRectF(0.5, 0.5, 19, 19), 2, 2)
    painter.setBrush(QColor("#7C2D1E"))
    painter.drawRect(QRectF(0.5, 17.6, 19, 1.9))
    arcs = (("#E3A674", 5.6), ("#91B8EB", 3.9), ("#336897", 2.2))
    for colour, radius in arcs:
        painter.setBrush(QColor(colour))
        path = QPainterPath(QPointF(10 - radius, 14.2))
        path.arcTo(QRectF(10 - radius, 14.2 - radius * 1.25, 2 * radius, radius * 2.5), 180, -180)
        path.closeSubpath()
        painter.drawPath(path)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(_pen(QColor("#18272B"), 1.3))
    painter.drawLine(QPointF(1.5, 4), QPointF(18.5, 4))
    painter.drawRect(QRectF(3.6, 4, 12.8, 10.9))


def _pen(colour: QColor, width: float) -> QPen:
    return QPen(colour, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.SquareCap, Qt.PenJoinStyle.MiterJoin)


def _points(rect: QRectF, *shares: tuple[float, float]) -> list[QPointF]:
    return [QPointF(rect.left() + x * rect.width(), rect.top() + y * rect.height()) for x, y in shares]
