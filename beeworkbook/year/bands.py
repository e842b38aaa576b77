"""Bands and curves drawn with a plain painter: by the chart as one item, and by the ruler when it is tall."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPolygonF

from beeworkbook.comb.contents import Content
from beeworkbook.comb.names import content_name, content_short
from beeworkbook.qt import theme
from beeworkbook.year.inks import Inks
from beeworkbook.year.panes import Band, Curve, Values

Polygon = Callable[[Values, Values], QPolygonF]
_PLATE: Final = 3.0
_TRIED: Final = 24
"""Places along a band at which its name is tried."""


@dataclass(frozen=True)
class Field:
    """How a pane's values lie on pixels: x to the right, y upwards."""

    rect: QRectF
    x_low: float
    x_high: float
    y_low: float
    y_high: float

    def x(self, value: float) -> float:
        """Pixels from the left."""
        return self.rect.left() + (value - self.x_low) * self.x_scale

    def y(self, value: float) -> float:
        """Pixels from the top."""
        return self.rect.bottom() - (value - self.y_low) * self.y_scale

    @property
    def x_scale(self) -> float:
        """Pixels a day."""
        return self.rect.width() / ((self.x_high - self.x_low) or 1.0)

    @property
    def y_scale(self) -> float:
        """Pixels a unit."""
        return self.rect.height() / ((self.y_high - self.y_low) or 1.0)

    def xs(self, values: Values) -> Values:
        """As x, of many."""
        placed: Values = self.rect.left() + (values - self.x_low) * self.x_scale
        return placed

    def ys(self, values: Values) -> Values:
        """As y, of many."""
        placed: Values = self.rect.bottom() - (values - self.y_low) * self.y_scale
        return placed


def plain_polygon(x: Values, y: Values) -> QPolygonF:
    """A polygon of these corners. Shapes: x and y (n,)."""
    return QPolygonF([QPointF(*corner) for corner in zip(x.tolist(), y.tolist(), strict=True)])


def paint_bands(
    painter: QPainter, bands: Iterable[Band], field: Field, inks: Inks, polygon: Polygon = plain_polygon
) -> None:
    """Every band filled with its content's pattern and outlined."""
    fine = inks.px_per_px
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    # Drawn in the picture's own pixels: a pattern that has to be scaled takes ten times as long.
    painter.scale(1 / fine, 1 / fine)
    painter.setPen(inks.outline)
    for band in bands:
        x = field.xs(band.x) * fine
        painter.setBrush(inks.brush(band.content, assumed=band.assumed, fine=True))
        painter.drawPolygon(
            polygon(
                np.concatenate((x, x[::-1])),
                np.concatenate((field.ys(band.high), field.ys(band.low[::-1]))) * fine,
            )
        )
    painter.restore()


def paint_curves(
    painter: QPainter,
    curves: Iterable[Curve],
    field: Field,
    inks: Inks,
    *,
    stacked: bool,
    polygon: Polygon = plain_polygon,
) -> None:
    """Every curve; the one over a stack is its plain upper edge."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for curve in curves:
        painter.setPen(inks.top if stacked and curve.style == 0 else inks.line(curve.style))
        painter.drawPolyline(polygon(field.xs(curve.x), field.ys(curve.y)))


# --- labels at the bands ------------------------------------------------------------------------


def label_bands(painter: QPainter, bands: Sequence[Band], field: Field, inks: Inks) -> None:
    """The name of each content once, on a plate where its band is thickest and the name fits."""
    painter.setFont(theme.sans(theme.LABEL_PX))
    metrics = QFontMetricsF(painter.font())
    taken: list[QRectF] = []
    for content in dict.fromkeys(band.content for band in bands):
        own = [band for band in bands if band.content is content]
        spot = _roomiest(own, field, metrics, taken, field.rect)
        if spot is not None:
            taken.append(spot[0])
            paint_plate(painter, spot[0], spot[1], inks)


def paint_plate(painter: QPainter, plate: QRectF, text: str, inks: Inks) -> None:
    """A word that stands on a pattern, on a piece of the board."""
    ground = QColor(inks.chrome.board)
    ground.setAlphaF(0.88)
    painter.fillRect(plate, ground)
    painter.setPen(QColor(inks.chrome.ink))
    painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, text)


def _roomiest(
    bands: Sequence[Band], field: Field, metrics: QFontMetricsF, taken: Sequence[QRectF], within: QRectF
) -> tuple[QRectF, str] | None:
    """The plate of a content's name, and the name, long where it fits; None if it fits nowhere."""
    content = bands[0].content
    for text in dict.fromkeys((content_name(content), content_short(content))):
        size = metrics.horizontalAdvance(text) + 2 * _PLATE, metrics.height()
        best: tuple[float, QRectF] | None = None
        for band in bands:
            for room, plate in _plates(band, field, *size):
                if best is not None and room <= best[0]:
                    continue
                if within.contains(plate) and not any(plate.intersects(other) for other in taken):
                    best = (room, plate)
        if best is not None:
            return best[1], text
    return None


def _plates(band: Band, field: Field, width: float, height: float) -> Iterable[tuple[float, QRectF]]:
    """Plates along the band in which the text stays, with the room round each."""
    x, low, high = field.xs(band.x), field.ys(band.low), field.ys(band.high)
    if x[-1] - x[0] < width:
        return
    centres = np.linspace(x[0] + width / 2, x[-1] - width / 2, _TRIED)
    across = (centres[:, None] + np.linspace(-width / 2, width / 2, 5)).ravel()
    tops = np.interp(across, x, high).reshape(_TRIED, 5).max(axis=1)
    bottoms = np.interp(across, x, low).reshape(_TRIED, 5).min(axis=1)
    for centre, top, bottom in zip(centres.tolist(), tops.tolist(), bottoms.tolist(), strict=True):
        room = bottom - top - height
        if room >= 0:
            yield room, QRectF(centre - width / 2, (top + bottom - height) / 2, width, height)
        elif band.content is Content.DRONE:
            # Drones are few and hang below the axis: their name hangs below them.
            yield room, QRectF(centre - width / 2, bottom + 1, width, height)


def label_curves(painter: QPainter, curves: Iterable[Curve], field: Field, inks: Inks) -> None:
    """The name of each curve at its end, moved apart where two would lie on one another."""
    painter.setFont(theme.sans(theme.LABEL_PX))
    metrics = QFontMetricsF(painter.font())
    taken: list[QRectF] = []
    named = sorted((curve for curve in curves if curve.name), key=lambda curve: -float(curve.y[-1]))
    for curve in named:
        width, height = metrics.horizontalAdvance(curve.name) + 2 * _PLATE, metrics.height()
        x, y = field.x(float(curve.x[-1])) + 8, field.y(float(curve.y[-1])) - height / 2
        if x + width > field.rect.right():
            x, y = field.rect.right() - width, y - height
        plate = _apart(QRectF(x, y, width, height), taken, field.rect)
        taken.append(plate)
        ground = QColor(inks.chrome.board)
        ground.setAlphaF(0.8)
        painter.fillRect(plate, ground)
        painter.setPen(inks.line_colour(curve.style))
        painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, curve.name)


def _apart(plate: QRectF, taken: Sequence[QRectF], within: QRectF) -> QRectF:
    """The nearest free place above or below, inside the pane."""
    for step in range(24):
        for way in (1, -1):
            moved = plate.translated(0, way * step * plate.height() * 0.5)
            if within.contains(moved) and not any(moved.intersects(other) for other in taken):
                return moved
    return plate
