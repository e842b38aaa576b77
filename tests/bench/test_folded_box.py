import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.bench.folded_box import FOLDED_PX, FoldedBox
from beeworkbook.bench.on_show import combs_on_show
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.palette import DARK, LIGHT
from tests.workbook.keeping import Keeping


@pytest.fixture
def strip(desk: Desk, keeping: Keeping, qtbot: QtBot) -> FoldedBox:
    box = desk.box()
    assert box is not None
    made = FoldedBox(LIGHT)
    qtbot.addWidget(made)
    made.resize(800, FOLDED_PX)
    made.show_box(box, combs_on_show(keeping.book, box, keeping.visit), "brood box")
    return made


def test_it_names_the_box_and_shows_its_combs(strip: FoldedBox) -> None:
    assert strip.accessibleName() == "brood box, 11 combs"
    assert strip.height() == FOLDED_PX
    image = strip.grab().toImage()
    colours = {image.pixelColor(x, 15).name() for x in range(130, 700)}
    assert len(colours) > 20


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Space])
def test_keys_and_clicks_unfold_it(strip: FoldedBox, keeping: Keeping, qtbot: QtBot, key: Qt.Key) -> None:
    with qtbot.waitSignal(strip.opened) as told:
        QTest.keyClick(strip, key)
    assert told.args == [keeping.box.id]
    with qtbot.waitSignal(strip.opened):
        QTest.mouseClick(strip, Qt.MouseButton.LeftButton)
    with qtbot.assertNotEmitted(strip.opened):
        QTest.keyClick(strip, Qt.Key.Key_A)


def test_it_goes_dark(strip: FoldedBox) -> None:
    light = strip.grab().toImage()
    strip.set_palette(DARK)
    assert strip.grab().toImage() != light


def test_a_long_name_takes_more_room_but_not_without_end(
    strip: FoldedBox, desk: Desk, keeping: Keeping
) -> None:
    box = desk.box()
    assert box is not None
    combs = combs_on_show(keeping.book, box, keeping.visit)
    starts = []
    for name in ("super", "brood box", "lower brood box", "a box with a name as long as a summer"):
        strip.show_box(box, combs, name)
        starts.append(strip._slip(1).left())
        assert strip._slip(len(combs)).right() <= strip.width()
    assert starts[0] == starts[1] < starts[2] < starts[3]
