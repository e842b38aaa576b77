"""A pane paints its bands, dots and reasons on pixels, whatever its own units are."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF

from beeworkbook.comb.contents import Content
from beeworkbook.qt.palette import LIGHT
from beeworkbook.year.chart import Chart, ChartSize
from beeworkbook.year.inks import Inks
from beeworkbook.year.pane_item import PaneItem, fast_polygon
from tests.year.drawing import AXIS, canvas, changed, colour_at, model, painter_on

pytestmark = pytest.mark.usefixtures("fonts")


def test_the_fast_polygon_has_its_corners() -> None:
    found = fast_polygon(np.array([1.0, 2.0, 4.0]), np.array([3.0, 4.0, 5.0]))
    assert [(found.at(i).x(), found.at(i).y()) for i in range(found.size())] == [(1, 3), (2, 4), (4, 5)]


def test_the_item_is_as_large_as_its_pane() -> None:
    pane = model().panes[0]
    item = PaneItem(pane, AXIS.days, (0.0,), (), (), Inks(LIGHT), stacked=True)
    rect = item.boundingRect()
    assert (rect.left(), rect.right(), rect.top(), rect.bottom()) == (0, 245, -10, 100)


def test_a_dot_a_band_and_a_reason_stand_at_their_values() -> None:
    inks = Inks(LIGHT, plain=True)
    chart = Chart(model(), inks, ChartSize(1000, 500))
    image = canvas(1000, 500)
    painter = painter_on(image)
    chart.paint(painter)
    painter.end()
    pane, field = chart.fields()[0]
    full = pane.dots[0]
    assert colour_at(image, QPointF(field.x(full.x), field.y(full.y))).name() == LIGHT.ink.lower()
    open_brood = QPointF(field.x(47) + 3, field.y(12))
    assert colour_at(image, open_brood) == inks.brush(Content.OPEN).color()
    assert pane.gaps
    left, right = field.x(pane.gaps[0].left) + 20, field.x(pane.gaps[0].right) - 20
    words = image.copy(round(left), round(field.y(0)) - 74, round(right - left), 68)
    assert changed(words, LIGHT.board) > 300
