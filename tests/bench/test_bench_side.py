from PySide6.QtGui import QColor
from pytestqt.qtbot import QtBot

from beeworkbook.bench.bench_side import Arrow, BenchSide
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.on_show import comb_on_show
from beeworkbook.colony.records import Way
from beeworkbook.comb.contents import Content, Face
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.palette import LIGHT
from tests.workbook.keeping import Keeping


def test_arrows_point_both_ways(qtbot: QtBot) -> None:
    for left in (True, False):
        arrow = Arrow(left=left)
        qtbot.addWidget(arrow)
        arrow.colour = QColor("black")
        image = arrow.grab().toImage()
        dark = [sum(image.pixelColor(x, y).lightness() < 100 for y in range(11)) for x in (2, 8)]
        # The tip is narrow, the tail wide.
        assert (dark[0] < dark[1]) is left


def test_on_the_warm_way_side_a_is_towards_the_entrance(desk: Desk, keeping: Keeping, qtbot: QtBot) -> None:
    box = desk.box()
    assert box is not None
    comb = comb_on_show(keeping.book, box.frames[4], keeping.visit)
    words = {}
    for face in Face:
        side = BenchSide(face, Hand(), LIGHT, with_comb=True)
        qtbot.addWidget(side)
        side.show_comb(comb, 11, Way.WARM)
        words[face] = side._entrance.text()
    assert words == {Face.A: "towards the entrance", Face.B: ""}


def test_only_cells_that_differ_are_drawn_again(desk: Desk, keeping: Keeping, qtbot: QtBot) -> None:
    box = desk.box()
    assert box is not None
    keeping.paint(5, Face.A, Content.EGGS)
    side = BenchSide(Face.A, Hand(), LIGHT, with_comb=True)
    qtbot.addWidget(side)
    side.resize(500, 320)
    side.show_comb(comb_on_show(keeping.book, box.frames[4], keeping.visit), 11, Way.COLD)
    picture = side.canvas.side.picture
    keeping.paint(5, Face.A, Content.POLLEN, first=300)
    after = comb_on_show(keeping.book, box.frames[4], keeping.visit)
    side.show_comb(after, 11, Way.COLD)
    assert side.canvas.side.picture is picture
    assert (side.canvas.side.cells == after.sides[Face.A].cells).all()
    side.forget()
    side.show_comb(after, 11, Way.COLD)
    assert side.tally is not None
    assert side.tally.cells[Content.POLLEN] > 30


def test_the_numbers_stand_right_below_the_comb(desk: Desk, keeping: Keeping, qtbot: QtBot) -> None:
    box = desk.box()
    assert box is not None
    side = BenchSide(Face.A, Hand(), LIGHT, with_comb=True)
    qtbot.addWidget(side)
    side.show_comb(comb_on_show(keeping.book, box.frames[4], keeping.visit), 11, Way.COLD)
    side.resize(500, 900)
    side.show()
    view = side.canvas.view
    assert view is not None
    qtbot.waitUntil(lambda: side.canvas.height() < 320)
    assert side.canvas.height() >= view.height
