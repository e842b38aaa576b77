"""The season chart beside its floors: first paint of ten bands of two hundred points, and the hover.

Run with: python -m pytest tests/benchmarks/bench_year.py --benchmark-enable -s
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QImage, QMouseEvent, QPainter, QPaintEvent, QPen, QPixmap
from PySide6.QtWidgets import QApplication, QWidget
from pytest_benchmark.fixture import BenchmarkFixture

from beeworkbook.colony.figures import VisitFigures
from beeworkbook.colony.records import ColonyId, Level, VisitId
from beeworkbook.colony.timeline import SeasonPoint
from beeworkbook.comb.contents import Content
from beeworkbook.qt import theme
from beeworkbook.qt.palette import LIGHT
from beeworkbook.year.bands import Field
from beeworkbook.year.chart import Chart, ChartSize
from beeworkbook.year.choice import Measure
from beeworkbook.year.day_axis import DayAxis
from beeworkbook.year.glass import ChartGlass
from beeworkbook.year.inks import Inks
from beeworkbook.year.pane_item import fast_polygon
from beeworkbook.year.panes import Band, ChartModel, Dot, DotShape, Entry, Pane, PaneKey, Stop
from tests.benchmarks.turns import by_turns

BANDS = (
    Content.EGGS,
    Content.OPEN,
    Content.SEALED,
    Content.BROOD,
    Content.DRONE,
    Content.POLLEN,
    Content.NECTAR,
    Content.STORES,
    Content.EMPTY,
    Content.FOUNDATION,
)
POINTS = 200
WIDTH, HEIGHT = 1090, 560
AXIS = DayAxis(date(2026, 3, 1), date(2026, 11, 1))

Print = Callable[[str], None]


@pytest.fixture
def show(benchmark: BenchmarkFixture, capsys: pytest.CaptureFixture[str]) -> Print:
    """Prints a line where benchmarks are on; the benchmark is skipped where they are off."""
    if benchmark.disabled:  # type: ignore[no-untyped-call, unused-ignore]
        pytest.skip("benchmarks are off")

    def line(text: str) -> None:
        with capsys.disabled():
            print(f"\n  {text}", end="")

    return line


@pytest.fixture
def app(qapp: QApplication) -> QApplication:
    theme.load_fonts()
    return qapp


def bands() -> tuple[Band, ...]:
    """Ten bands over one another, each a season's hump with a tremble."""
    x = np.linspace(10, AXIS.days - 10, POINTS)
    rng = np.random.default_rng(5)
    low, made = np.zeros(POINTS), []
    for content in BANDS:
        hump = 9 * np.exp(-(((x - 110) / 60) ** 2)) + 0.5 + 0.3 * rng.random(POINTS)
        made.append(Band(content, x, low, low + hump))
        low = low + hump
    return tuple(made)


def model(dots: bool) -> ChartModel:
    held = bands()
    pane = Pane(PaneKey.BROOD, "worker brood", "dm²", -3.0, float(held[-1].high.max()) * 1.05, bands=held)
    if not dots:
        return ChartModel("Pear", "", AXIS, (pane,), (), (), stacked=True)
    places = np.linspace(10, AXIS.days - 10, 40)
    points = [_point(AXIS.since + timedelta(days=int(place))) for place in places]
    return ChartModel(
        "Pear",
        "",
        AXIS,
        (
            replace(
                pane,
                dots=tuple(
                    Dot(AXIS.place(p.day), 40.0, 36.0, 44.0, DotShape.FULL, p.visit_id) for p in points
                ),
            ),
        ),
        (),
        tuple(
            Stop(AXIS.place(p.day), p.day, (Entry(ColonyId(1), "Pear", 0, p, _figures(p)),)) for p in points
        ),
        stacked=True,
    )


def _point(day: date) -> SeasonPoint:
    from tests.year.pointing import by_comb

    return by_comb(day.isoformat(), 6, 12, 22, drone=1.5)


def _figures(point: SeasonPoint) -> VisitFigures:
    return VisitFigures(
        VisitId(point.visit_id), point.day, Level.BY_COMB, None, None, None, None, None, None, 11, 11
    )


def blank(scale: float) -> QImage:
    made = QImage(int(WIDTH * scale), int(HEIGHT * scale), QImage.Format.Format_RGB32)
    made.setDevicePixelRatio(scale)
    made.fill(QColor(LIGHT.board))
    return made


@pytest.mark.parametrize("scale", [1.0, 2.0])
def bench_first_paint(benchmark: BenchmarkFixture, show: Print, app: QApplication, scale: float) -> None:
    """The whole chart from its values to pixels, beside the same ten polygons by a painter."""
    assert app is not None
    held, inks = model(dots=False), Inks(LIGHT, scale)
    chart = Chart(held, inks, ChartSize(WIDTH, HEIGHT))
    (pane, field) = chart.fields()[0]
    corners = [polygon_corners(band, field) for band in pane.bands]
    ready = [
        (fast_polygon(x * scale, y * scale), inks.brush(band.content, fine=True))
        for band, (x, y) in zip(pane.bands, corners, strict=True)
    ]

    pen = inks.outline

    def thing() -> QImage:
        image = blank(scale)
        painter = QPainter(image)
        Chart(held, inks, ChartSize(WIDTH, HEIGHT)).paint(painter)
        painter.end()
        return image

    def floor() -> QImage:
        image = blank(scale)
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(1 / scale, 1 / scale)
        painter.setPen(pen)
        for polygon, brush in ready:
            painter.setBrush(brush)
            painter.drawPolygon(polygon)
        painter.end()
        return image

    # Right: in the middle of every band the chart and the bare polygons have the very same pixel.
    painted, bare = thing(), floor()
    for band in pane.bands:
        at = POINTS // 2 + 17
        x = int(field.x(float(band.x[at])) * scale)
        y = int(field.y(float(band.low[at] + band.high[at]) / 2) * scale)
        assert painted.pixelColor(x, y) == bare.pixelColor(x, y), band.content
    turns = by_turns(thing, floor, rounds=40, loops=1)
    show(turns.line(f"season chart, first paint, {scale:.0%}", 3))
    benchmark.pedantic(thing, rounds=3)  # type: ignore[no-untyped-call, unused-ignore]


def polygon_corners(band: Band, field: Field) -> tuple[np.ndarray, np.ndarray]:
    x = field.xs(band.x)
    return np.concatenate((x, x[::-1])), np.concatenate((field.ys(band.high), field.ys(band.low[::-1])))


class ReadyPicture(QWidget):
    """The floor of the hover: a ready picture with a line where the pointer is."""

    def __init__(self, picture: QPixmap, tall: QRectF) -> None:
        super().__init__()
        self._picture, self._tall, self._x = picture, tall, 0
        self.resize(WIDTH, HEIGHT)
        self.setMouseTracking(True)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's own spelling
        for x in (self._x, round(event.position().x())):
            self.update(self._strip(x))
        self._x = round(event.position().x())

    def _strip(self, x: int) -> QRect:
        return QRect(x - 8, int(self._tall.top()) - 2, 16, int(self._tall.height()) + 5)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's own spelling
        painter = QPainter(self)
        rect, ratio = event.rect(), self._picture.devicePixelRatio()
        source = QRectF(QPointF(rect.topLeft() * ratio), (rect.size() * ratio).toSizeF())
        painter.drawPixmap(QRectF(rect), self._picture, source)
        painter.setPen(QPen(QColor(LIGHT.focus), 1))
        painter.drawLine(self._x, int(self._tall.top()), self._x, int(self._tall.bottom()))


def moved(widget: QWidget, x: float) -> None:
    """A pointer event, and the painting it asks for."""
    at = QPointF(x, 300.0)
    event = QMouseEvent(
        QEvent.Type.MouseMove, at, widget.mapToGlobal(at), Qt.MouseButton.NoButton, Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    QApplication.sendEvent(widget, event)
    QApplication.sendPostedEvents(widget.window(), QEvent.Type.UpdateRequest.value)


def bench_hover(benchmark: BenchmarkFixture, show: Print, app: QApplication) -> None:
    """A pointer event that goes to the next visit, its line, rings and panel, beside a line alone."""
    assert app is not None
    glass = ChartGlass()
    glass.resize(WIDTH, HEIGHT)
    glass.show_model(model(dots=True), Measure.AREA, Inks(LIGHT))
    glass.show()
    QApplication.processEvents()
    places = [glass.stop_px(at) for at in range(8, 24)]
    ready = ReadyPicture(glass.grab(), glass.plot)
    ready.show()
    QApplication.processEvents()
    step = [0, 0]

    def thing() -> None:
        step[0] += 1
        moved(glass, places[step[0] % len(places)])

    def floor() -> None:
        step[1] += 1
        moved(ready, places[step[1] % len(places)])

    for _ in places:
        thing()
    assert glass.at is not None
    assert glass.stop_px(glass.at) == places[step[0] % len(places)]
    colour = glass.grab().toImage().pixelColor(QPoint(round(glass.stop_px(glass.at)), 500))
    assert colour == QColor(LIGHT.focus)
    turns = by_turns(thing, floor, rounds=150, loops=4)
    show(turns.line("season chart, hover to the next visit", 4))
    benchmark.pedantic(thing, rounds=3)  # type: ignore[no-untyped-call, unused-ignore]
