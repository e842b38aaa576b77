"""Every tool has a drawing of its own that stays inside the grid of the icons."""

from collections.abc import Callable
from itertools import combinations

import pytest
from PySide6.QtGui import QColor, QImage, QPainter

from beeworkbook.bench.tool_icons import TOOL_DRAWINGS, draw_larger, draw_only, draw_smaller
from beeworkbook.bench.tools.base import ToolName

pytestmark = pytest.mark.usefixtures("qapp")
DRAWINGS: list[Callable[[QPainter], None]] = [*TOOL_DRAWINGS.values(), draw_smaller, draw_larger, draw_only]


def _picture(draw: Callable[[QPainter], None]) -> QImage:
    image = QImage(28, 28, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    painter.translate(4, 4)
    draw(painter)
    painter.end()
    return image


def test_every_tool_is_drawn_and_no_two_alike() -> None:
    assert set(TOOL_DRAWINGS) == set(ToolName)
    pictures = [_picture(draw) for draw in DRAWINGS]
    for one, other in combinations(pictures, 2):
        assert one != other


@pytest.mark.parametrize("draw", DRAWINGS)
def test_a_drawing_stays_inside_its_grid(draw: Callable[[QPainter], None]) -> None:
    image = _picture(draw)
    inked = [(x, y) for x in range(28) for y in range(28) if image.pixelColor(x, y) != QColor("white")]
    assert len(inked) > 8
    assert all(4 <= x < 24 and 4 <= y < 24 for x, y in inked)
