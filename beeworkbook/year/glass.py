"""The chart as the window shows it: one kept picture, and over it the line and the panel of one day.

Moving the pointer paints a strip of the kept picture, a line and a ready panel, and never the chart.
"""

from bisect import bisect_left
from typing import Final

from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, QSizeF, Qt, Signal
from PySide6.QtGui import (
    QAccessible,
    QColor,
    QFocusEvent,
    QHideEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QPixmap,
    QResizeEvent,
)
from PySide6.QtWidgets import QSizePolicy, QWidget

from beeworkbook.colony.records import VisitId
from beeworkbook.qt import theme
from beeworkbook.words import date_words, say
from beeworkbook.year.bands import Field
from beeworkbook.year.chart import Chart, ChartSize
from beeworkbook.year.choice import Measure
from beeworkbook.year.inks import Inks
from beeworkbook.year.panes import ChartModel, Pane
from beeworkbook.year.reading_panel import panel_picture
from beeworkbook.year.readings import DayReading, read_stop
from beeworkbook.year.rows import empty_words

_NEAR_PX: Final = 40.0
_REACH: Final = 7
"""How far the line and its rings reach to either side, in pixels."""
_BESIDE: Final = 14
_FLAG_PX: Final = 20


class ChartGlass(QWidget):
    """A chart that is looked at and pointed at."""

    visit_chosen = Signal(object)
    """The VisitId that was clicked or opened by Enter."""

    def __init__(self) -> None:
        """A glass with nothing behind it."""
        super().__init__()
        self._model: ChartModel | None = None
        self._measure = Measure.AREA
        self._inks = Inks()
        self._chosen: VisitId | None = None
        self._chart: QPixmap | None = None
        self._picture: QPixmap | None = None
        self._fields: tuple[tuple[Pane, Field], ...] = ()
        self._plot = QRectF()
        self._places: list[float] = []
        self._at: int | None = None
        self._panels: dict[int, QPixmap] = {}
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(320, 240)
        self.setAccessibleName(say("Chart of the season"))
        self.setWhatsThis(
            say("Left and Right go from visit to visit, Enter opens the visit, Escape lets go.")
        )

    # --- what is behind it --------------------------------------------------------------------

    def show_model(self, model: ChartModel | None, measure: Measure, inks: Inks) -> None:
        """Put another chart behind the glass."""
        self._model, self._measure, self._inks = model, measure, inks
        self._places = [stop.x for stop in model.stops] if model else []
        self._at = None
        self._forget()

    def show_chosen(self, visit_id: VisitId | None) -> None:
        """Mark the visit the keeper is at."""
        if visit_id != self._chosen:
            self._chosen = visit_id
            self._picture = None
            self.update()

    @property
    def at(self) -> int | None:
        """The stop that is read now."""
        return self._at

    @property
    def reading(self) -> DayReading | None:
        """What the panel says now."""
        if self._model is None or self._at is None:
            return None
        return read_stop(self._model.stops[self._at], self._measure, stacked=self._model.stacked)

    @property
    def plot(self) -> QRectF:
        """Where the panes are, from the top of the first to the bottom of the last."""
        self._ready()
        return self._plot

    def stop_px(self, at: int) -> float:
        """Where a stop's line stands, in pixels from the left."""
        if not self._fields:
            self._ready()
        return self._fields[0][1].x(self._places[at])

    def _forget(self) -> None:
        self._chart = self._picture = None
        self._panels.clear()
        self.update()

    def _ready(self) -> QPixmap | None:
        """The kept picture: the chart, and over it the visit the keeper is at."""
        if self._model is None:
            return None
        if self._chart is None:
            self._chart = self._painted(self._model)
        if self._picture is None:
            self._picture = QPixmap(self._chart)
            painter = QPainter(self._picture)
            self._paint_chosen(painter, self._model)
            painter.end()
        return self._picture

    def _painted(self, model: ChartModel) -> QPixmap:
        ratio = self.devicePixelRatioF()
        self._inks = Inks(self._inks.palette, ratio, self._inks.colour)
        chart = Chart(model, self._inks, ChartSize(self.width(), self.height()))
        made = QPixmap(round(self.width() * ratio), round(self.height() * ratio))
        made.setDevicePixelRatio(ratio)
        painter = QPainter(made)
        chart.paint(painter)
        painter.end()
        self._fields, self._plot = chart.fields(), chart.plot()
        return made

    # --- going from stop to stop ----------------------------------------------------------------

    def go_to_stop(self, at: int | None) -> None:
        """Read another stop, or none."""
        if at == self._at or (at is not None and not 0 <= at < len(self._places)):
            return
        self._dirty()
        self._at = at
        self._dirty()
        if self.hasFocus() or QAccessible.isActive():
            reading = self.reading
            self.setAccessibleDescription(reading.text if reading else "")

    def stop_near(self, x: float) -> int | None:
        """The stop nearest to a pixel, if one is near."""
        if not self._places or self._ready() is None:
            return None
        field = self._fields[0][1]
        place = field.x_low + (x - field.rect.left()) / field.x_scale
        after = bisect_left(self._places, place)
        near = min(
            (at for at in (after - 1, after) if 0 <= at < len(self._places)),
            key=lambda at: abs(self._places[at] - place),
        )
        return near if abs(self._places[near] - place) * field.x_scale <= _NEAR_PX else None

    def visit_at(self, at: int, y: float | None = None) -> VisitId:
        """The visit a click at a stop opens: of several that day the one whose dot is nearest."""
        model = self._model
        assert model is not None  # noqa: S101  # there are no stops without a model
        stop = model.stops[at]
        if y is None:
            return stop.visit_id
        ids = {entry.point.visit_id for entry in stop.entries}
        dots = [
            (abs(field.y(dot.y) - y), dot.visit_id)
            for pane, field in self._fields
            for dot in pane.dots
            if dot.visit_id in ids
        ]
        return min(dots, key=lambda found: found[0])[1] if dots else stop.visit_id

    # --- hands ------------------------------------------------------------------------------------

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Read the visit nearest to the pointer."""
        near = self.stop_near(event.position().x())
        if (near is None) != (self._at is None):
            self.setCursor(Qt.CursorShape.ArrowCursor if near is None else Qt.CursorShape.PointingHandCursor)
        self.go_to_stop(near)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Open the visit under the pointer."""
        near = self.stop_near(event.position().x())
        if event.button() == Qt.MouseButton.LeftButton and near is not None:
            self.visit_chosen.emit(self.visit_at(near, event.position().y()))

    def leaveEvent(self, _event: QEvent) -> None:
        """The pointer has gone."""
        if not self.hasFocus():
            self.go_to_stop(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right go from visit to visit, Enter opens it, Escape lets go."""
        key, last = event.key(), len(self._places) - 1
        if key in {Qt.Key.Key_Left, Qt.Key.Key_Right} and self._places:
            step = 1 if key == Qt.Key.Key_Right else -1
            self.go_to_stop(self._start() if self._at is None else max(0, min(last, self._at + step)))
        elif key in {Qt.Key.Key_Home, Qt.Key.Key_End} and self._places:
            self.go_to_stop(0 if key == Qt.Key.Key_Home else last)
        elif key in {Qt.Key.Key_Return, Qt.Key.Key_Enter} and self._at is not None:
            self.visit_chosen.emit(self.visit_at(self._at))
        elif key == Qt.Key.Key_Escape and self._at is not None:
            self.go_to_stop(None)
        else:
            super().keyPressEvent(event)

    def _start(self) -> int:
        """Where the keyboard begins: at the chosen visit, else at the last."""
        chosen = self._chosen_stop()
        return len(self._places) - 1 if chosen is None else chosen

    def _chosen_stop(self) -> int | None:
        stops = self._model.stops if self._model else ()
        return next((at for at, stop in enumerate(stops) if stop.visit_id == self._chosen), None)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show where the keyboard is."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The keyboard has gone elsewhere."""
        super().focusOutEvent(event)
        self.go_to_stop(None)
        self.update()

    def hideEvent(self, event: QHideEvent) -> None:
        """Out of sight its pictures are let go: they are large, and soon painted again."""
        super().hideEvent(event)
        self._forget()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another size is another picture."""
        super().resizeEvent(event)
        self._forget()

    # --- painting -----------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """The part of the kept picture that is asked for, then the line and the panel over it."""
        painter = QPainter(self)
        picture = self._ready()
        if picture is None or not self._places:
            painter.fillRect(self.rect(), QColor(self._inks.chrome.board))
            self._paint_words(painter, empty_words())
        else:
            dirty, ratio = event.rect(), picture.devicePixelRatio()
            corner, size = dirty.topLeft() * ratio, dirty.size() * ratio
            painter.drawPixmap(QRectF(dirty), picture, QRectF(QPointF(corner), QSizeF(size)))
        if self._at is not None:
            self._paint_line(painter, self._at)
            painter.drawPixmap(self.panel_rect(self._at).topLeft(), self._panel(self._at))
        if self.hasFocus():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
            painter.setPen(QPen(QColor(self._inks.chrome.focus), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(self.rect().adjusted(1, 1, -1, -1))

    def _paint_words(self, painter: QPainter, words: str) -> None:
        painter.setFont(theme.sans(theme.NOTE_PX))
        painter.setPen(QColor(self._inks.chrome.second_ink))
        flags = int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap)
        painter.drawText(QRectF(self.rect()).adjusted(60, 40, -60, -40), flags, words)

    def _paint_chosen(self, painter: QPainter, model: ChartModel) -> None:
        """A line and a flag with the date at the visit the keeper is at."""
        at = self._chosen_stop()
        if at is None:
            return
        focus = QColor(self._inks.chrome.focus)
        x = round(self._fields[0][1].x(self._places[at]))
        words = date_words(model.stops[at].day)
        painter.setPen(QPen(focus, 1.4))
        painter.drawLine(QPointF(x, self._plot.top()), QPointF(x, self._plot.bottom()))
        painter.setFont(theme.sans(theme.LABEL_PX, bold=True))
        wide = painter.fontMetrics().horizontalAdvance(words) + 10
        left = x if x + wide < self.width() else x - wide
        # Under the heading of the pane, which stands at its left.
        flag = QRectF(left, self._plot.top() + _FLAG_PX, wide, 17)
        painter.fillRect(flag, focus)
        painter.setPen(QColor(self._inks.chrome.board))
        painter.drawText(flag, Qt.AlignmentFlag.AlignCenter, words)

    def _paint_line(self, painter: QPainter, at: int) -> None:
        """The line through all panes, with a ring round each dot that is read."""
        x = round(self.stop_px(at))
        focus = QColor(self._inks.chrome.focus)
        painter.setPen(QPen(focus, 1))
        painter.drawLine(x, int(self._plot.top()), x, int(self._plot.bottom()))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(focus, 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for spot in self._rings(at):
            painter.drawEllipse(spot, 6.0, 6.0)

    def _rings(self, at: int) -> list[QPointF]:
        stop = self._model.stops[at] if self._model else None
        if stop is None:
            return []
        return [
            QPointF(field.x(dot.x), field.y(dot.y))
            for pane, field in self._fields
            for dot in pane.dots
            if dot.visit_id == stop.visit_id
        ]

    def _panel(self, at: int) -> QPixmap:
        if at not in self._panels:
            model = self._model
            assert model is not None  # noqa: S101  # there are no stops without a model
            reading = read_stop(model.stops[at], self._measure, stacked=model.stacked)
            self._panels[at] = panel_picture(reading, self._inks)
        return self._panels[at]

    def panel_rect(self, at: int) -> QRect:
        """Where the panel of a stop stands: beside its line, on the side where there is room."""
        size = self._panel(at).deviceIndependentSize().toSize()
        x = round(self.stop_px(at))
        fits = x + _BESIDE + size.width() < self.width()
        left = x + _BESIDE if fits else x - _BESIDE - size.width()
        return QRect(QPoint(max(2, left), round(self._plot.top()) + _FLAG_PX + 24), size)

    def _dirty(self) -> None:
        """Ask for what the line and the panel of the stop cover."""
        if self._at is None or self._ready() is None:
            return
        x = round(self.stop_px(self._at))
        top, bottom = int(self._plot.top()) - 2, int(self._plot.bottom()) + 3
        self.update(QRect(x - _REACH - 1, top, 2 * _REACH + 2, bottom - top))
        self.update(self.panel_rect(self._at))
