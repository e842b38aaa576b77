"""Bars, the chosen visit and the day that is due are drawn where they belong, low and tall."""

from dataclasses import replace
from datetime import date

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QImage

from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.qt.palette import DARK, LIGHT, Palette
from beeworkbook.year.inks import Inks
from beeworkbook.year.ruler_bars import RulerModel, ruler_model
from beeworkbook.year.ruler_paint import RulerLook, bar_width, paint_arrow, paint_ruler, ruler_field
from tests.year.drawing import canvas, changed, colour_at, painter_on
from tests.year.pointing import at_least, by_comb, by_line, not_opened, visit_id

pytestmark = pytest.mark.usefixtures("fonts")
WIDTH = 1000
POINTS = (
    by_comb("2026-04-10", 5, 10, 20),
    by_line("2026-04-24", 40),
    at_least("2026-05-08", 30),
    not_opened("2026-05-15"),
    by_comb("2026-05-22", 10, 10, 20),
)
NOBODY = RulerLook(None, date(2026, 9, 1))


def made() -> RulerModel:
    return ruler_model(2026, Hemisphere.NORTH, POINTS, (), (), date(2026, 6, 10))


def picture(look: RulerLook = NOBODY, height: int = 56, palette: Palette = LIGHT) -> QImage:
    held = palette
    image = canvas(WIDTH, height, held.ground)
    painter = painter_on(image)
    paint_ruler(painter, made(), look, Inks(held), WIDTH, height)
    painter.end()
    return image


def spot(day: str, dm2: float, height: int = 56) -> QPointF:
    model = made()
    field = ruler_field(model, WIDTH, height)
    return QPointF(field.x(model.axis.place(date.fromisoformat(day))), field.y(dm2))


@pytest.mark.parametrize("palette", [LIGHT, DARK])
def test_noted_combs_are_a_solid_bar_and_a_line_is_a_hollow_one(palette: Palette) -> None:
    held = palette
    image = picture(palette=palette)
    assert colour_at(image, spot("2026-04-10", 20)) == QColor(held.edge)
    assert colour_at(image, spot("2026-04-24", 20)) == QColor(held.board)


def test_a_bar_of_at_least_has_no_top() -> None:
    field = ruler_field(made(), WIDTH, 56)
    half = round(bar_width(field) / 2)
    hollow, open_ = spot("2026-04-24", 40), spot("2026-05-08", 30)
    image = picture()
    across = [
        sum(
            colour_at(image, at + QPointF(step, 1)).name().upper() not in {LIGHT.ground, LIGHT.board}
            for step in range(-half + 3, half - 2)
        )
        for at in (hollow, open_)
    ]
    assert across[0] > 3
    assert across[1] == 0


def test_the_chosen_visit_has_the_focus_colour_and_its_date_above() -> None:
    look = RulerLook(visit_id("2026-05-22"), date(2026, 5, 22))
    image = picture(look)
    assert colour_at(image, spot("2026-05-22", 20)) == QColor(LIGHT.focus)
    top = spot("2026-05-22", 40)
    above = QRectF(top.x() - 20, top.y() - 16, 40, 15).toRect()
    assert changed(image.copy(above), LIGHT.ground) > 60


def test_a_day_without_a_visit_is_a_line() -> None:
    image = picture(RulerLook(None, date(2026, 7, 1)))
    found = [colour_at(image, spot("2026-07-01", 5) + QPointF(step, 0)).red() for step in (-1, 0, 1)]
    assert min(found) < 90
    assert min(colour_at(image, spot("2026-07-08", 5) + QPointF(step, 0)).red() for step in (-1, 0, 1)) > 200


def test_what_is_due_is_a_mark_below_the_axis() -> None:
    image = picture()
    x = round(spot("2026-06-10", 0).x())
    below = image.copy(x - 6, 40, 12, 8)
    assert changed(below, LIGHT.ground) > 30
    assert colour_at(image, QPointF(x, 43)) == QColor(LIGHT.ink)


def test_the_day_under_the_pointer_is_shown() -> None:
    plain, pointed = picture(), picture(replace(NOBODY, pointed=150.0))
    assert plain != pointed


def test_a_tall_ruler_is_a_chart_of_stages() -> None:
    image = picture(height=200)
    model = made()
    field = ruler_field(model, WIDTH, 200)
    colours = {image.pixelColor(round(field.x(61)), y).name() for y in range(20, 180)}
    assert len(colours) > 6
    assert changed(image, LIGHT.ground) > changed(picture(), LIGHT.ground) * 2


def test_an_arrow_points_its_way() -> None:
    left, right = canvas(20, 20), canvas(20, 20)
    for image, way in ((left, True), (right, False)):
        painter = painter_on(image)
        paint_arrow(painter, QRectF(4, 4, 12, 12), QColor("#000000"), left=way)
        painter.end()
    assert changed(left.copy(12, 0, 8, 20)) > changed(left.copy(0, 0, 8, 20))
    assert changed(right.copy(0, 0, 8, 20)) > changed(right.copy(12, 0, 8, 20))
