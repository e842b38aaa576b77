import itertools

import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.bench.stack_strip import StackStrip
from beeworkbook.colony.records import PartKind
from beeworkbook.qt.desk import Desk
from beeworkbook.workbook.edits.hive import AddPart
from tests.workbook.keeping import CAME


@pytest.fixture
def strip(desk: Desk, qtbot: QtBot) -> StackStrip:
    hive = desk.hive_day()
    assert hive is not None
    desk.do(AddPart(hive.hive.id, PartKind.SUPER, CAME, frame_type="bs_shallow", places=10))
    made = StackStrip(desk)
    qtbot.addWidget(made)
    made.resize(84, 150)
    made.show_hive(desk.hive_day())
    return made


def middle_of(strip: StackStrip, kind: PartKind) -> QPointF:
    for part, rect in zip(strip._stack, strip._rects(), strict=True):
        if part.part.kind is kind:
            return rect.center()
    raise AssertionError(kind)


def test_a_click_on_a_box_looks_into_it_and_on_others_does_nothing(strip: StackStrip, desk: Desk) -> None:
    brood = desk.spot.part_id
    QTest.mouseClick(strip, Qt.MouseButton.LeftButton, pos=middle_of(strip, PartKind.SUPER).toPoint())
    assert desk.spot.part_id != brood
    QTest.mouseClick(strip, Qt.MouseButton.LeftButton, pos=middle_of(strip, PartKind.FLOOR).toPoint())
    assert desk.spot.part_id != brood
    QTest.mouseClick(strip, Qt.MouseButton.LeftButton, pos=middle_of(strip, PartKind.BROOD_BOX).toPoint())
    assert desk.spot.part_id == brood


def test_arrows_go_from_box_to_box(strip: StackStrip, desk: Desk) -> None:
    brood = desk.spot.part_id
    QTest.keyClick(strip, Qt.Key.Key_Up)
    assert desk.spot.part_id != brood
    QTest.keyClick(strip, Qt.Key.Key_Up)
    QTest.keyClick(strip, Qt.Key.Key_Down)
    assert desk.spot.part_id == brood


def test_the_parts_stand_on_one_another_from_the_ground_up(strip: StackStrip) -> None:
    rects = strip._rects()
    for below, above in itertools.pairwise(rects):
        assert above.bottom() == pytest.approx(below.top())
    assert "brood" in strip.accessibleDescription()
    assert not strip.grab().isNull()


def test_no_hive_is_an_empty_strip(strip: StackStrip) -> None:
    strip.show_hive(None)
    assert strip.part_at(QPointF(10, 10)) is None
    assert not strip.grab().isNull()
