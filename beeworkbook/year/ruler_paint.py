"""How the ruler is drawn: low as a row of bars, tall as a small chart; with a plain painter."""

from dataclasses import dataclass
from datetime import date
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPen, QPolygonF

from beeworkbook.colony.records import VisitId
from beeworkbook.qt import theme
from beeworkbook.words import date_words, say, two_figures
from beeworkbook.year.bands import Field, label_bands, paint_bands, paint_curves
from beeworkbook.year.inks import Inks
from beeworkbook.year.panes import DotShape
from beeworkbook.year.ruler_bars import Bar, RulerModel
from beeworkbook.year.signs import paint_dot, paint_whisker

SIDE_PX: Final = 38.0
MONTHS_PX: Final = 17.0
_TOP_PX: Final = 17.0
TALL_FROM: Final = 120
_ROOM: Final = 1.03
_BELOW: Final = 0.05


@dataclass(frozen=True)
class RulerLook:
    """What is chosen and pointed at on the ruler."""

    chosen: VisitId | None
    day: date
    pointed: float | None = None
    """The place under the pointer, where it is over no bar."""


def ruler_field(model: RulerModel, width: float, height: float) -> Field:
    """How days and dm² lie on a ruler of this size."""
    rect = QRectF(SIDE_PX, _TOP_PX, max(1.0, width - 2 * SIDE_PX), max(1.0, height - _TOP_PX - MONTHS_PX))
    tall = height >= TALL_FROM
    if not tall:
        return Field(rect, 0.0, float(model.axis.days), 0.0, model.high)
    high = max(model.high, *(sample.high or 0.0 for sample in model.dots), 0.0) * _ROOM
    return Field(rect, 0.0, float(model.axis.days), -_BELOW * high, high)


def bar_width(field: Field) -> float:
    """A bar is never wider than half a week."""
    return max(3.0, min(12.0, field.x_scale * 3.0))


def paint_ruler(
    painter: QPainter, model: RulerModel, look: RulerLook, inks: Inks, width: float, height: float
) -> None:
    """The whole ruler."""
    field = ruler_field(model, width, height)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    tall = height >= TALL_FROM
    if tall:
        _paint_rules(painter, model, field, inks)
    _paint_months(painter, model, field, inks, width)
    if tall:
        _paint_chart(painter, model, field, inks)
    paint_curves(painter, model.last_year, field, inks, stacked=False)
    _name_last_year(painter, model, field, inks)
    if not tall:
        for bar in model.bars:
            _paint_bar(painter, bar, field, inks, chosen=bar.visit_id == look.chosen)
    _paint_chosen(painter, model, look, field, inks, tall=tall)
    _paint_due(painter, model, field, inks)
    if look.pointed is not None:
        pen = QPen(QColor(inks.chrome.focus), 1.0)
        pen.setDashPattern([2.0, 2.0])
        painter.setPen(pen)
        x = field.x(look.pointed)
        painter.drawLine(QPointF(x, field.rect.top()), QPointF(x, field.rect.bottom()))


def paint_arrow(painter: QPainter, rect: QRectF, colour: QColor, *, left: bool) -> None:
    """A filled arrow that leafs."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    tip, base = (rect.left(), rect.right()) if left else (rect.right(), rect.left())
    painter.drawPolygon(
        QPolygonF([QPointF(tip, rect.center().y()), QPointF(base, rect.top()), QPointF(base, rect.bottom())])
    )


def _paint_months(painter: QPainter, model: RulerModel, field: Field, inks: Inks, width: float) -> None:
    base = round(field.y(0)) + 0.5 if field.y_low == 0 else round(field.rect.bottom()) + 0.5
    painter.setPen(inks.hair("edge"))
    painter.drawLine(QPointF(12, base), QPointF(width - 12, base))
    painter.setFont(theme.sans(theme.LABEL_PX))
    metrics, after = QFontMetricsF(painter.font()), -1.0
    for month in model.axis.months():
        x = round(field.x(month.place)) + 0.5
        painter.setPen(inks.hair("edge"))
        painter.drawLine(QPointF(x, base), QPointF(x, base + 5))
        text = month.name if month.year is None else f"{month.name} {month.year}"
        if x > after:
            painter.setPen(QColor(inks.chrome.second_ink))
            painter.drawText(QPointF(x + 4, base + 13), text)
            after = x + metrics.horizontalAdvance(text) + 6


def _paint_bar(painter: QPainter, bar: Bar, field: Field, inks: Inks, *, chosen: bool) -> None:
    wide, base = bar_width(field), round(field.y(0)) + 0.5
    ink = QColor(inks.chrome.focus if chosen else inks.chrome.edge)
    x = field.x(bar.x)
    if bar.height is None or bar.shape is None:
        # Nobody noted brood: a stub says that somebody was here, and can be clicked.
        painter.setPen(QPen(ink, 1.4))
        painter.drawLine(QPointF(x, base - 4.5), QPointF(x, base))
        return
    top = min(base - 2.0, field.y(bar.height))
    rect = QRectF(x - wide / 2, top, wide, base - top)
    if bar.shape is DotShape.FULL:
        painter.fillRect(rect, ink)
        return
    painter.setPen(QPen(ink, 1.5 if chosen else 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    inner = rect.adjusted(0.6, 0.6, -0.6, 0)
    if bar.shape is DotShape.HOLLOW:
        painter.fillRect(inner, QColor(inks.chrome.board))
        painter.drawRect(inner)
        return
    painter.drawLine(inner.bottomLeft(), inner.topLeft())
    painter.drawLine(inner.bottomRight(), inner.topRight())
    # Open upwards: two short strokes go on where the top would be.
    pen = painter.pen()
    pen.setDashPattern([1.4, 1.8])
    painter.setPen(pen)
    for corner in (inner.topLeft(), inner.topRight()):
        painter.drawLine(corner, corner - QPointF(0, 6))


def _paint_rules(painter: QPainter, model: RulerModel, field: Field, inks: Inks) -> None:
    step = _round_half(model.high)
    faint = QColor(inks.chrome.rule)
    faint.setAlphaF(0.6)
    painter.setFont(theme.sans(theme.LABEL_PX))
    for at in range(3):
        value = at * step
        if value > field.y_high:
            break
        y = round(field.y(value)) + 0.5
        painter.setPen(faint if value else inks.hair("edge"))
        painter.drawLine(QPointF(field.rect.left(), y), QPointF(field.rect.right(), y))
        if value:
            painter.setPen(QColor(inks.chrome.second_ink))
            painter.drawText(QPointF(field.rect.left() + 3, y - 3), say("{dm2} dm²", dm2=two_figures(value)))


def _round_half(high: float) -> float:
    """A round step of which about two fit below the highest bar."""
    for step in (5, 10, 20, 25, 40, 50, 75, 100, 150, 200, 250, 400, 500):
        if step * 2.2 >= high:
            return float(step)
    return float(round(high / 2, -2))


def _paint_chart(painter: QPainter, model: RulerModel, field: Field, inks: Inks) -> None:
    paint_bands(painter, model.bands, field, inks)
    paint_curves(painter, model.line, field, inks, stacked=True)
    ink, ground = QColor(inks.chrome.ink), QColor(inks.chrome.board)
    for sample in model.dots:
        if sample.shape is not DotShape.FULL:
            high = None if sample.high is None else field.y(sample.high)
            low = field.y(sample.y if sample.high is None else sample.low)
            paint_whisker(painter, field.x(sample.x), low, high, sample.shape, ink)
    for sample in model.dots:
        paint_dot(painter, QPointF(field.x(sample.x), field.y(sample.y)), sample.shape, ink, ground, 3.0)
    for bar in model.bars:
        if bar.height is None:
            painter.setPen(QPen(ink, 1.4))
            painter.drawLine(QPointF(field.x(bar.x), field.y(0) - 5), QPointF(field.x(bar.x), field.y(0)))
    label_bands(painter, model.bands, field, inks)


def _name_last_year(painter: QPainter, model: RulerModel, field: Field, inks: Inks) -> None:
    """The words "last year" over its curve, where this year's bars leave room."""
    if not model.last_year:
        return
    painter.setFont(theme.sans(theme.LABEL_PX))
    text = say("last year")
    width = QFontMetricsF(painter.font()).horizontalAdvance(text)
    busy = max((field.x(bar.x) for bar in model.bars), default=field.rect.left()) + 60
    spots = [
        (field.x(float(x)), field.y(float(y)))
        for curve in model.last_year
        for x, y in zip(curve.x, curve.y, strict=True)
    ]
    free = [(x, y) for x, y in spots if busy < x < field.rect.right() - width]
    if free:
        x, y = free[len(free) // 2] if len(free) > 2 else free[0]
        painter.setPen(QColor(inks.chrome.second_ink))
        painter.drawText(QPointF(x + 4, max(12.0, y - 5)), text)


def _paint_chosen(
    painter: QPainter, model: RulerModel, look: RulerLook, field: Field, inks: Inks, *, tall: bool
) -> None:
    """The date over the chosen visit; over a day without a visit, with a line where its bar would stand."""
    focus = QColor(inks.chrome.focus)
    place = model.axis.place(look.day)
    x = field.x(place)
    chosen = next((bar for bar in model.bars if bar.visit_id == look.chosen), None)
    top = field.rect.top()
    if chosen is None or tall:
        painter.setPen(QPen(focus, 1.6))
        painter.drawLine(QPointF(x, top), QPointF(x, field.y(0)))
    elif chosen.height is not None:
        top = min(field.rect.bottom() - 12, field.y(chosen.height))
    else:
        top = field.rect.bottom() - 8
    text = date_words(look.day)
    if chosen is None:
        text = say("{day}, no visit", day=text)
    painter.setFont(theme.sans(theme.LABEL_PX, bold=True))
    wide = QFontMetricsF(painter.font()).horizontalAdvance(text) + 6
    left = min(max(4.0, x - wide / 2), field.rect.right() + SIDE_PX - wide - 4)
    room = QRectF(left, max(0.0, top - 16), wide, 15)
    ground = QColor(inks.chrome.ground)
    ground.setAlphaF(0.85)
    painter.fillRect(room, ground)
    painter.setPen(focus)
    painter.drawText(room, Qt.AlignmentFlag.AlignCenter, text)


def _paint_due(painter: QPainter, model: RulerModel, field: Field, inks: Inks) -> None:
    if model.due is None:
        return
    x, base = field.x(model.axis.place(model.due)), field.rect.bottom() + 2
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(inks.chrome.ink))
    painter.drawPolygon(QPolygonF([QPointF(x - 5, base), QPointF(x + 5, base), QPointF(x, base + 7)]))
