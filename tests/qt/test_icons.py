"""Every part of a hive and every sign of state has a drawing, and no two signs look alike."""

from itertools import combinations, pairwise

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter

from beeworkbook.colony.records import PartKind
from beeworkbook.qt.icons import (
    ICON_NAMES,
    PART_HEIGHTS,
    State,
    icon,
    paint_hive,
    paint_state,
    part_rects,
    program_icon,
)

pytestmark = pytest.mark.usefixtures("qapp")


def _picture(state: State) -> bytes:
    image = QImage(20, 20, QImage.Format.Format_Grayscale8)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    paint_state(painter, QRectF(4, 4, 12, 12), state, QColor("black"))
    painter.end()
    return bytes(image.constBits())


def test_signs_of_state_differ_in_shape() -> None:
    pictures = {state: _picture(state) for state in State}
    for one, other in combinations(State, 2):
        assert pictures[one] != pictures[other]


def test_every_part_has_a_height() -> None:
    assert set(PART_HEIGHTS) == set(PartKind)


def test_parts_stand_on_one_another_inside_the_field() -> None:
    field = QRectF(0, 0, 40, 60)
    kinds = [
        PartKind.STAND,
        PartKind.FLOOR,
        PartKind.BROOD_BOX,
        PartKind.EXCLUDER,
        PartKind.SUPER,
        PartKind.ROOF,
    ]
    rects = part_rects(field, kinds)
    assert rects[0].bottom() == field.bottom()
    for below, above in pairwise(rects):
        assert abs(above.bottom() - below.top()) < 1e-6
    assert rects[-1].top() >= field.top() - 1e-6


def test_a_hive_leaves_ink() -> None:
    image = QImage(60, 80, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    paint_hive(painter, QRectF(5, 5, 50, 70), list(PartKind), QColor("black"), QColor("white"), on=True)
    painter.end()
    assert any(image.pixelColor(30, y) != QColor("white") for y in range(80))


def test_every_icon_can_be_drawn() -> None:
    for name in ICON_NAMES:
        assert not icon(name, "#18272B").isNull()
    assert len(program_icon().availableSizes()) == 7
