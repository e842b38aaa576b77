"""Charts by hand for the tests of what is drawn, and ways to look at pictures."""

from datetime import date

from PySide6.QtCore import QPointF
from PySide6.QtGui import QColor, QImage, QPainter

from beeworkbook.colony.records import ColonyId
from beeworkbook.colony.timeline import MarkSort, SeasonPoint
from beeworkbook.year.choice import Measure
from beeworkbook.year.day_axis import DayAxis
from beeworkbook.year.panes import ChartModel, Entry, Pane, PaneKey, PlacedMark, Stop
from beeworkbook.year.stacking import brood_sample, curves, dots, drone_bands, gaps, samples, stage_bands
from tests.year import pointing
from tests.year.pointing import at_least, by_comb, by_line

AXIS = DayAxis(date(2026, 3, 1), date(2026, 11, 1))
POINTS: tuple[SeasonPoint, ...] = (
    by_comb("2026-04-10", 5, 10, 20, drone=4),
    by_comb("2026-05-01", 10, 20, 40, drone=6),
    by_line("2026-05-10", 75),
    at_least("2026-05-20", 30),
    by_comb("2026-06-01", 12, 24, 48),
    by_comb("2026-09-01", 4, 6, 10),
)


def model(points: tuple[SeasonPoint, ...] = POINTS, marks: tuple[PlacedMark, ...] = ()) -> ChartModel:
    """A stacked chart of these points."""
    held = samples(points, AXIS, brood_sample(Measure.AREA))
    pane = Pane(
        PaneKey.BROOD,
        "worker brood",
        "dm²",
        low=-10.0,
        high=100.0,
        bands=(*stage_bands(points, AXIS, Measure.AREA), *drone_bands(points, AXIS, Measure.AREA)),
        curves=curves(held, 0),
        dots=dots(held),
        gaps=gaps(held),
    )
    stops = tuple(
        Stop(
            AXIS.place(point.day),
            point.day,
            (Entry(ColonyId(1), "Pear", 0, point, pointing.figures(point, 4)),),
        )
        for point in points
    )
    return ChartModel("Pear", "brood over the season 2026", AXIS, (pane,), marks, stops, stacked=True)


def mark(day: str, sort: MarkSort = MarkSort.FEED, text: str = "2 L 1:1 given") -> PlacedMark:
    """Something that happened."""
    on = date.fromisoformat(day)
    return PlacedMark(AXIS.place(on), on, sort, text)


def canvas(width: int = 400, height: int = 300, ground: str = "#ffffff") -> QImage:
    """A picture of one colour."""
    made = QImage(width, height, QImage.Format.Format_RGB32)
    made.fill(QColor(ground))
    return made


def painter_on(image: QImage) -> QPainter:
    """A painter, smooth; end it."""
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    return painter


def changed(image: QImage, ground: str = "#ffffff") -> int:
    """How many pixels are no longer the ground's."""
    plain = QColor(ground).rgb()
    return sum(image.pixel(x, y) != plain for y in range(image.height()) for x in range(image.width()))


def colour_at(image: QImage, at: QPointF) -> QColor:
    """The colour at a point of the window."""
    ratio = image.devicePixelRatio()
    return image.pixelColor(round(at.x() * ratio), round(at.y() * ratio))
