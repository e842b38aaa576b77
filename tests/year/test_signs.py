"""Every sign is a drawing of its own, told by its shape."""

from itertools import combinations

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QImage

from beeworkbook.colony.timeline import MarkSort
from beeworkbook.year.panes import DotShape
from beeworkbook.year.signs import dot_words, paint_dot, paint_sort, paint_whisker, sort_words
from tests.year.drawing import canvas, changed, colour_at, painter_on

pytestmark = pytest.mark.usefixtures("fonts")
INK, GROUND = QColor("#000000"), QColor("#ffffff")


def sign(sort: MarkSort) -> QImage:
    image = canvas(40, 40)
    painter = painter_on(image)
    paint_sort(painter, QRectF(4, 4, 32, 32), sort, INK)
    painter.end()
    return image


def dot(shape: DotShape) -> QImage:
    image = canvas(40, 40)
    painter = painter_on(image)
    paint_dot(painter, QPointF(20, 20), shape, INK, GROUND, 8)
    painter.end()
    return image


def whisker(high: float | None, shape: DotShape) -> QImage:
    image = canvas(40, 100)
    painter = painter_on(image)
    paint_whisker(painter, 20, 80, high, shape, INK)
    painter.end()
    return image


@pytest.mark.parametrize("sort", list(MarkSort))
def test_every_mark_has_a_sign_and_a_word(sort: MarkSort) -> None:
    assert changed(sign(sort)) > 20
    assert sort_words(sort)


def test_no_two_signs_are_alike() -> None:
    pictures = {sort: sign(sort) for sort in MarkSort}
    for one, other in combinations(MarkSort, 2):
        differing = sum(
            pictures[one].pixel(x, y) != pictures[other].pixel(x, y) for x in range(40) for y in range(40)
        )
        assert differing > 40, (one, other)


def test_a_full_dot_is_filled_and_a_hollow_one_is_not() -> None:
    assert colour_at(dot(DotShape.FULL), QPointF(20, 20)) == INK
    assert colour_at(dot(DotShape.HOLLOW), QPointF(20, 20)) == GROUND
    assert {dot_words(shape) for shape in DotShape} == {dot_words(shape) for shape in DotShape}
    assert len({dot_words(shape) for shape in DotShape}) == 3


def test_a_dot_of_at_least_is_open_upwards() -> None:
    cup = dot(DotShape.OPEN)
    middle = [cup.pixelColor(20, y) for y in range(40)]
    assert all(colour == GROUND for colour in middle[:20])
    assert any(colour.value() < 80 for colour in middle[24:])


def test_the_band_of_a_line_has_ends_and_that_of_combs_has_none() -> None:
    ended, plain = whisker(20, DotShape.HOLLOW), whisker(20, DotShape.FULL)
    assert changed(ended.copy(0, 18, 40, 4)) > changed(plain.copy(0, 18, 40, 4))


def test_what_is_open_upwards_fades_upwards() -> None:
    fading = whisker(None, DotShape.OPEN)
    assert changed(fading.copy(0, 40, 40, 40)) > 0
    assert changed(fading.copy(0, 0, 40, 40)) == 0
