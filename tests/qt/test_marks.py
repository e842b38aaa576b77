import itertools

import numpy as np
import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from beeworkbook.comb.contents import CellKind, MarkKind
from beeworkbook.qt.marks import DISC_INK, mark_name, paint_mark, paint_small_sign

ALL: list[tuple[MarkKind, CellKind | None]] = [
    (MarkKind.QUEEN, None),
    *((MarkKind.QUEEN_CELL, kind) for kind in CellKind),
    (MarkKind.NOTE, None),
]


def drawn(kind: MarkKind, cell_kind: CellKind | None, *, small: bool = False) -> np.ndarray:
    image = QImage(32, 32, QImage.Format.Format_RGB32)
    image.fill(QColor("#E3A674"))
    painter = QPainter(image)
    if small:
        paint_small_sign(painter, QRectF(8, 8, 16, 16), kind, cell_kind, DISC_INK)
    else:
        paint_mark(painter, QPointF(16, 16), kind, cell_kind)
    painter.end()
    return np.frombuffer(image.constBits(), np.uint32).reshape(32, 32).copy()


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("small", [False, True])
def test_no_two_marks_look_alike(small: bool) -> None:
    pictures = [drawn(*mark, small=small) for mark in ALL]
    for first, second in itertools.combinations(pictures, 2):
        assert np.count_nonzero(first != second) > 8


@pytest.mark.usefixtures("qapp")
def test_a_mark_picked_up_has_a_ring() -> None:
    image = QImage(40, 40, QImage.Format.Format_RGB32)
    image.fill(QColor("#E3A674"))
    painter = QPainter(image)
    paint_mark(painter, QPointF(20, 20), MarkKind.QUEEN, chosen=QColor("#0F5C73"))
    painter.end()
    assert image.pixelColor(20, 6) == QColor("#0F5C73")


def test_marks_have_names() -> None:
    names = [mark_name(kind, cell) for kind, cell in ALL]
    assert len(set(names)) == len(ALL)
    assert mark_name(MarkKind.QUEEN_CELL) == "queen cell"
    assert mark_name(MarkKind.NOTE, text="chalk") == "note: chalk"
