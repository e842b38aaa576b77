"""Bands lie where their values say, and are named once where their name fits."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor

from beeworkbook.comb.contents import Content
from beeworkbook.comb.legend import LEGEND
from beeworkbook.qt.palette import LIGHT
from beeworkbook.year.bands import (
    Field,
    label_bands,
    label_curves,
    paint_bands,
    paint_curves,
    plain_polygon,
)
from beeworkbook.year.inks import Inks
from beeworkbook.year.panes import Band, Curve
from tests.year.drawing import canvas, changed, colour_at, painter_on

pytestmark = pytest.mark.usefixtures("fonts")
FIELD = Field(QRectF(0, 0, 400, 300), 0.0, 100.0, 0.0, 30.0)
INKS = Inks(LIGHT, plain=True)


def band(content: Content, low: float, high: float, *, assumed: bool = False) -> Band:
    x = np.array([10.0, 90.0])
    return Band(content, x, np.full(2, low), np.full(2, high), assumed)


def test_values_lie_up_and_days_to_the_right() -> None:
    assert (FIELD.x(25), FIELD.y(30), FIELD.y(0)) == (100, 0, 300)
    assert FIELD.xs(np.array([0.0, 50.0])).tolist() == [0, 200]
    assert FIELD.ys(np.array([0.0, 15.0])).tolist() == [300, 150]


def test_a_polygon_has_its_corners() -> None:
    found = plain_polygon(np.array([1.0, 2.0]), np.array([3.0, 4.0]))
    assert [(found.at(i).x(), found.at(i).y()) for i in range(found.size())] == [(1, 3), (2, 4)]


@pytest.mark.parametrize("scale", [1.0, 2.0])
def test_a_band_fills_its_values_at_any_scale(scale: float) -> None:
    image = canvas(round(400 * scale), round(300 * scale))
    image.setDevicePixelRatio(scale)
    painter = painter_on(image)
    inks = Inks(LIGHT, scale, plain=True)
    paint_bands(painter, (band(Content.EGGS, 0, 10), band(Content.OPEN, 10, 20)), FIELD, inks)
    painter.end()
    eggs, open_ = inks.brush(Content.EGGS).color(), inks.brush(Content.OPEN).color()
    assert colour_at(image, QPointF(200, FIELD.y(5))) == eggs
    assert colour_at(image, QPointF(200, FIELD.y(15))) == open_
    assert colour_at(image, QPointF(200, FIELD.y(25))) == QColor("#ffffff")
    assert colour_at(image, QPointF(20, FIELD.y(5))) == QColor("#ffffff")


def test_a_pattern_is_drawn_over_the_fill() -> None:
    image = canvas()
    painter = painter_on(image)
    paint_bands(painter, (band(Content.SEALED, 0, 30),), FIELD, Inks(LIGHT))
    painter.end()
    seen = {image.pixelColor(x, y).name().upper() for x in range(100, 140) for y in range(100, 140)}
    assert LEGEND[Content.SEALED].fill in seen
    assert len(seen) > 5


def test_curves_are_drawn_through_their_values() -> None:
    image = canvas()
    painter = painter_on(image)
    curve = Curve(0, np.array([0.0, 100.0]), np.array([15.0, 15.0]))
    paint_curves(painter, (curve,), FIELD, INKS, stacked=False)
    painter.end()
    assert colour_at(image, QPointF(200, 150)) == QColor(LIGHT.focus)


def test_a_name_stands_once_in_the_thickest_of_its_bands() -> None:
    image = canvas()
    painter = painter_on(image)
    label_bands(painter, (band(Content.EGGS, 0, 3), band(Content.EGGS, 10, 28)), FIELD, INKS)
    painter.end()
    assert changed(image.copy(0, 0, 400, 200)) > 100
    assert changed(image.copy(0, 260, 400, 40)) == 0


def test_a_band_too_thin_for_its_name_goes_without() -> None:
    image = canvas()
    painter = painter_on(image)
    label_bands(painter, (band(Content.EGGS, 10, 11),), FIELD, INKS)
    painter.end()
    assert changed(image) == 0


def test_a_thin_band_of_drones_is_named_below_it() -> None:
    image = canvas()
    painter = painter_on(image)
    below = Field(FIELD.rect, 0.0, 100.0, -10.0, 20.0)
    label_bands(painter, (band(Content.DRONE, -1, 0),), below, INKS)
    painter.end()
    assert changed(image.copy(0, round(below.y(-1)), 400, 30)) > 100


def test_names_of_curves_that_end_together_are_moved_apart() -> None:
    image = canvas()
    painter = painter_on(image)
    ends = [Curve(at, np.array([0.0, 50.0]), np.array([10.0, 15.0]), name) for at, name in enumerate("AB")]
    label_curves(painter, ends, FIELD, INKS)
    painter.end()
    columns = image.copy(205, 0, 40, 300)
    rows = [y for y in range(300) if changed(columns.copy(0, y, 40, 1))]
    assert rows[-1] - rows[0] > 20
