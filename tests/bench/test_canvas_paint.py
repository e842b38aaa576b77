import pytest
from PySide6.QtCore import QPointF, QRect, QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from beeworkbook.bench.canvas_paint import (
    FrameLook,
    brush_rect,
    mark_rect,
    paint_blank_word,
    paint_brush,
    paint_cell_cursor,
    paint_frame,
    paint_marks,
    paint_shape,
    paint_stretched,
)
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.tools.base import ToolName, Work
from beeworkbook.bench.tools.ellipse import EllipseTool
from beeworkbook.bench.viewport import Viewport
from beeworkbook.colony.records import FrameId, Mark, MarkId, VisitId
from beeworkbook.comb.contents import Face, MarkKind
from beeworkbook.comb.lattice import Lattice
from beeworkbook.comb.orientation import EntranceMark
from beeworkbook.qt.palette import LIGHT

GREY = QColor("#808080")


class Sheet:
    """A picture to draw on, and where it was drawn."""

    def __init__(self) -> None:
        self.image = QImage(300, 220, QImage.Format.Format_RGB32)
        self.image.fill(GREY)
        self.painter = QPainter(self.image)

    def drawn(self) -> QRect:
        self.painter.end()
        places = [(x, y) for x in range(300) for y in range(220) if self.image.pixelColor(x, y) != GREY]
        if not places:
            return QRect()
        xs, ys = [x for x, _ in places], [y for _, y in places]
        return QRect(min(xs), min(ys), max(xs) - min(xs) + 1, max(ys) - min(ys) + 1)


@pytest.fixture
def sheet(qapp: object) -> Sheet:
    del qapp
    return Sheet()


@pytest.mark.parametrize("tool", list(ToolName))
def test_a_brush_stays_in_the_rectangle_that_is_painted_again(
    sheet: Sheet, lattice: Lattice, tool: ToolName
) -> None:
    view, hand = Viewport.fitted(lattice, 300, 220, 1.0), Hand()
    hand.take_tool(tool)
    at = QPointF(120.0, 100.0)
    paint_brush(sheet.painter, at, view, hand, tag=True, cross=True)
    assert brush_rect(at, hand.radius_mm * view.scale).contains(sheet.drawn())


def test_a_mark_stays_in_its_rectangle_and_others_are_left_out(sheet: Sheet) -> None:
    here = Mark(MarkId(1), VisitId(1), MarkKind.QUEEN, FrameId(1), Face.A, 5)
    away = Mark(MarkId(2), VisitId(1), MarkKind.QUEEN, FrameId(1), Face.A, 9)
    places = [(here, QPointF(100, 100)), (away, QPointF(250, 180))]
    paint_marks(sheet.painter, QRect(80, 80, 40, 40), places, here, LIGHT)
    assert mark_rect(QPointF(100, 100)).contains(sheet.drawn())


def test_a_shape_stays_in_its_rectangle(sheet: Sheet, work: Work) -> None:
    view = Viewport.fitted(work.lattice, 300, 220, 1.0)
    tool = EllipseTool()
    tool.press(work, (100.0, 70.0))
    tool.move((140.0, 90.0))
    shape = tool.shape_mm
    assert shape is not None
    paint_shape(sheet.painter, view, shape)
    assert QRect(*view.around(shape)).contains(sheet.drawn())


def test_the_cell_cursor_is_round_its_cell(sheet: Sheet, lattice: Lattice) -> None:
    view = Viewport.fitted(lattice, 300, 220, 1.0)
    cell = lattice.cell(10, 10)
    paint_cell_cursor(sheet.painter, view, lattice, cell, LIGHT)
    x, y = view.to_px(tuple(lattice.centres[cell].tolist()))
    drawn = sheet.drawn()
    assert drawn.contains(int(x), int(y))
    assert drawn.width() < 3 * lattice.pitch_x_mm * view.scale


@pytest.mark.parametrize("entrance", list(EntranceMark))
def test_the_entrance_is_one_dark_bar_or_none(sheet: Sheet, entrance: EntranceMark) -> None:
    comb = QRect(20, 20, 200, 120)
    paint_frame(
        sheet.painter, QRect(0, 0, 240, 160), comb, LIGHT, FrameLook(entrance, current=False, focused=False)
    )
    sheet.painter.end()
    ink = LIGHT.ink.lower()
    found = {
        EntranceMark.LEFT: sheet.image.pixelColor(18, 80).name() == ink,
        EntranceMark.RIGHT: sheet.image.pixelColor(221, 80).name() == ink,
        EntranceMark.FACE: sheet.image.pixelColor(120, 141).name() == ink,
    }
    assert [mark for mark, is_there in found.items() if is_there] == (
        [] if entrance is EntranceMark.NONE else [entrance]
    )


def test_a_word_stands_on_a_bare_side(sheet: Sheet) -> None:
    paint_blank_word(sheet.painter, QRectF(20, 20, 200, 120), "not looked at", LIGHT)
    assert QRect(20, 20, 200, 120).contains(sheet.drawn())


def test_a_stretched_picture_fills_the_comb_meanwhile(sheet: Sheet, lattice: Lattice) -> None:
    old = Viewport.fitted(lattice, 300, 220, 1.0)
    image = QImage(*old.picture_size, QImage.Format.Format_RGB32)
    image.fill(QColor("#336897"))
    paint_stretched(sheet.painter, old.zoomed(2.0, (150.0, 100.0)), old, image, LIGHT)
    sheet.painter.end()
    assert sheet.image.pixelColor(150, 100).name() == "#336897"
