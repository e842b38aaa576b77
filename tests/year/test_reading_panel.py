"""The panel is as large as its words, with a swatch for each content."""

import pytest
from PySide6.QtGui import QColor

from beeworkbook.comb.contents import Content
from beeworkbook.comb.legend import LEGEND
from beeworkbook.qt.palette import DARK, LIGHT, Palette
from beeworkbook.year.inks import Inks
from beeworkbook.year.reading_panel import panel_picture
from beeworkbook.year.readings import DayReading, ReadRow

pytestmark = pytest.mark.usefixtures("fonts")
READING = DayReading(
    "Sat 16 May 2026",
    (
        ReadRow("worker brood", "about 42 dm²"),
        ReadRow("sealed brood", "20 dm²", Content.SEALED),
        ReadRow("Gate", "about 30 dm²", style=1),
    ),
    ("said in one line",),
)


def test_every_line_makes_it_higher() -> None:
    less = DayReading(READING.heading, READING.rows[:1], ())
    assert panel_picture(READING, Inks(LIGHT)).height() > panel_picture(less, Inks(LIGHT)).height() + 50


def test_it_is_as_fine_as_the_screen() -> None:
    one, two = (panel_picture(READING, Inks(LIGHT, scale)) for scale in (1.0, 2.0))
    assert two.width() == 2 * one.width()
    assert two.deviceIndependentSize() == one.deviceIndependentSize()


@pytest.mark.parametrize("palette", [LIGHT, DARK])
def test_a_content_has_its_swatch(palette: Palette) -> None:
    held = palette
    image = panel_picture(READING, Inks(held)).toImage()
    seen = {image.pixelColor(x, y).name().upper() for x in range(8, 26) for y in range(image.height())}
    assert LEGEND[Content.SEALED].fill in seen
    assert image.pixelColor(3, 3) == QColor(held.board)


def test_a_long_remark_does_not_make_it_wider_than_it_may_be() -> None:
    long = DayReading("Sat 16 May 2026", (), ("a very long note " * 20,))
    assert panel_picture(long, Inks(LIGHT)).width() <= 400
