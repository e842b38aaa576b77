"""The brush on the bench and the small pictures of the box beside their floors.

Run with: python -m pytest tests/benchmarks/bench_bench.py --benchmark-enable -s
200 % is measured as a canvas of twice the pixels each way, which is what a screen at 200 % asks for.
"""

import itertools
from collections.abc import Callable

import numpy as np
import numpy.typing as npt
import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, QRect, Qt
from PySide6.QtGui import QImage, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytest_benchmark.fixture import BenchmarkFixture

from beeworkbook.bench.canvas import SideCanvas
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.numbers import side_numbers, tally_of
from beeworkbook.comb.contents import CONTENTS, Content, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.lattice import Cells, Lattice
from beeworkbook.comb.side import CellPatch
from beeworkbook.comb.strokes import sweep
from beeworkbook.qt.comb_colours import colour_table
from beeworkbook.qt.comb_painter import face_picture, paint_of, thumbnail
from beeworkbook.qt.palette import LIGHT
from beeworkbook.qt.thumbnail import Sights
from tests.benchmarks.turns import by_turns
from tests.comb.drawn import brood_side

FRAME = FRAME_TYPES["dadant_blatt"]
LATTICE: Lattice = FRAME.lattice
SIDES = 22
SCALES = (1, 2)
EVENTS = 24
STEP_PX = 6.0

Print = Callable[[str], None]


@pytest.fixture
def show(benchmark: BenchmarkFixture, capsys: pytest.CaptureFixture[str]) -> Print:
    """Prints a line where benchmarks are on; the benchmark is skipped where they are off."""
    if benchmark.disabled:  # type: ignore[no-untyped-call, unused-ignore]
        pytest.skip("benchmarks are off")

    def line(text: str) -> None:
        with capsys.disabled():
            print(f"\n  {text}", end="")

    return line


class ReadyPicture(QWidget):
    """The floor of the brush: the same event shows the same rectangle of a picture that is ready."""

    def __init__(self, image: QImage, rects: list[QRect]) -> None:
        super().__init__()
        self.image, self.rects, self.at = image, rects, 0
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMouseTracking(True)
        self.resize(image.width(), image.height())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:  # noqa: N802 - Qt's spelling
        del event
        self.update(self.rects[self.at % len(self.rects)])
        self.at += 1

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802 - Qt's spelling
        painter = QPainter(self)
        painter.drawImage(event.rect(), self.image, event.rect())
        painter.end()


def moved(widget: QWidget, at: QPointF) -> None:
    """One pointer event, and the painting it asks for, done."""
    event = QMouseEvent(
        QEvent.Type.MouseMove,
        at,
        widget.mapToGlobal(at),
        Qt.MouseButton.NoButton,
        Qt.MouseButton.LeftButton,
        Qt.KeyboardModifier.NoModifier,
    )
    QApplication.sendEvent(widget, event)
    QApplication.processEvents()


def pressed(widget: QWidget, at: QPointF, kind: QEvent.Type) -> None:
    button = Qt.MouseButton.LeftButton
    QApplication.sendEvent(
        widget,
        QMouseEvent(kind, at, widget.mapToGlobal(at), button, button, Qt.KeyboardModifier.NoModifier),
    )


class Painting:
    """A canvas and a hand that goes to and fro over the brood, a step of a few pixels an event."""

    def __init__(self, scale: int) -> None:
        self.scale = scale
        self.cells: Cells = brood_side(LATTICE)
        self.canvas = SideCanvas(Hand(), LIGHT)
        self.canvas.hand.take_content(Content.SEALED)
        self.canvas.resize(525 * scale, 310 * scale)
        self.canvas.show_side(LATTICE, self.cells)
        self.canvas.show()
        QApplication.processEvents()
        self.patches: list[CellPatch] = []
        self.canvas.side.painted.connect(lambda patch, _content: self.patches.append(patch))
        self.step = 0

    def place(self, step: int) -> QPointF:
        """Where the hand is after so many events of a stroke."""
        assert self.canvas.view is not None
        x, y = self.canvas.view.to_px((LATTICE.width_mm * 0.3, LATTICE.height_mm * 0.5))
        return QPointF(x + step * STEP_PX * self.scale, y + step * 0.4 * STEP_PX * self.scale)

    def event(self) -> None:
        """One event of a stroke; the stroke ends and a new one begins after some of them."""
        step = self.step % EVENTS
        if step == 0:
            if self.step:
                pressed(self.canvas, self.place(EVENTS - 1), QEvent.Type.MouseButtonRelease)
                self.canvas.side.revert()
            pressed(self.canvas, self.place(0), QEvent.Type.MouseButtonPress)
        moved(self.canvas, self.place(step))
        # The totals are said in words a few times a second; here they are reckoned at every event.
        tally_of(FRAME, self.canvas.side.counts, drone_cells=True)
        self.step += 1


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("scale", SCALES)
def bench_brush(benchmark: BenchmarkFixture, show: Print, scale: int) -> None:
    """Pointer event → cells → contents, undo, totals → pixels, beside the same event over a ready picture."""
    painting = Painting(scale)
    rects = _rects_of_a_stroke(painting)
    _check_a_stroke(painting)
    ready = ReadyPicture(painting.canvas.grab().toImage(), rects)
    ready.show()
    QApplication.processEvents()
    at = [0]

    def floor() -> None:
        moved(ready, painting.place(at[0] % EVENTS))
        at[0] += 1

    turns = by_turns(painting.event, floor, rounds=40 * EVENTS, loops=1)
    show(turns.line(f"brush at {100 * scale} %, event to pixels", 8))
    benchmark(painting.event)


def _rects_of_a_stroke(painting: Painting) -> list[QRect]:
    """What the canvas paints again at each event of a stroke."""
    rects: list[QRect] = []
    original = painting.canvas.paintEvent

    def noting(event: QPaintEvent) -> None:
        rects.append(event.rect())
        original(event)

    painting.canvas.paintEvent = noting  # type: ignore[method-assign]
    for _ in range(EVENTS):
        painting.event()
    painting.canvas.paintEvent = original  # type: ignore[method-assign]
    assert len(rects) >= EVENTS
    return rects[-EVENTS:]


def _check_a_stroke(painting: Painting) -> None:
    """The stroke painted what the brush swept, counts and picture are those of the cells, undo undoes it."""
    painting.event()
    patch = painting.patches[-1]
    canvas, view = painting.canvas, painting.canvas.view
    assert view is not None
    points = [view.to_mm(painting.place(step).x(), painting.place(step).y()) for step in range(EVENTS)]
    swept = {
        int(cell)
        for start, end in itertools.pairwise(points)
        for cell in sweep(LATTICE, start, end, canvas.hand.radius_mm)
    }
    assert set(patch.indices.tolist()) == {cell for cell in swept if painting.cells[cell] != Content.SEALED}
    assert np.array_equal(patch.inverse.apply(patch.apply(painting.cells)), painting.cells)
    side = canvas.side
    assert side.counts == np.bincount(side.cells, minlength=len(CONTENTS)).tolist()
    assert side.picture is not None
    anew = face_picture(
        LATTICE,
        view.sight,
        *view.picture_size,
        paint_of(LIGHT, Origin.PAINTED, beside=LIGHT.sunk),
        view.ratio,
    )
    anew.show(side.cells)
    assert np.array_equal(anew.pixels, side.picture.pixels)
    assert side_numbers(tally_of(FRAME, side.counts, drone_cells=True)).startswith("about")


def _size(scale: int) -> tuple[int, int]:
    width = 84 * scale
    return width, round(width * LATTICE.height_mm / LATTICE.width_mm)


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("scale", SCALES)
def bench_thumbnails(benchmark: BenchmarkFixture, show: Print, scale: int) -> None:
    """All 22 sides of a box as antialiased small pictures, beside a blit of 22 ready ones."""
    width, height = _size(scale)
    sides = [brood_side(LATTICE, seed=seed) for seed in range(SIDES)]
    pictures = [thumbnail(LATTICE, width, height, paint_of(LIGHT)) for _ in sides]
    screen = QImage(12 * width, 3 * height, QImage.Format.Format_RGB32)

    def blit() -> None:
        painter = QPainter(screen)
        for at, picture in enumerate(pictures):
            painter.drawImage(at % 11 * (width + 4), at // 11 * (height + 4), picture.image)
        painter.end()

    def draw() -> None:
        for picture, cells in zip(pictures, sides, strict=True):
            picture.show(cells)
        blit()

    draw()
    for picture, cells in zip(pictures, sides, strict=True):
        _check_picture(picture.pixels, cells, width, height)
    turns = by_turns(draw, blit, rounds=60, loops=2)
    show(turns.line(f"22 small pictures at {100 * scale} % ({width} × {height})", 50))
    benchmark(draw)


def _check_picture(pixels: npt.NDArray[np.uint32], cells: Cells, width: int, height: int) -> None:
    """Every pixel that one content fills has the content's own colours; every other one is a blend."""
    sight = Sights(LATTICE, width, height)
    corners = cells[sight.corner]
    middle = cells[sight.middle[:, :-1]]
    alike = np.ones_like(middle, np.bool_)
    for corner in (corners[:-1, :-1], corners[:-1, 1:], corners[1:, :-1], corners[1:, 1:]):
        alike &= corner == middle
    table = colour_table(paint_of(LIGHT)).colours
    for content in CONTENTS:
        own = np.isin(pixels[alike & (middle == content)], table[content])
        assert own.all()
    assert 0.05 < 1 - alike.mean() < 0.9
    assert not np.isin(pixels[~alike], table[:, 0]).all()


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("scale", SCALES)
def bench_thumbnail_after_a_stroke(benchmark: BenchmarkFixture, show: Print, scale: int) -> None:
    """The small picture after one stroke, beside the same small rectangle of a ready picture.

    Both on screen, through a widget, as the box shows it; and bare, painter and image only.
    """
    width, height = _size(scale)
    cells = brood_side(LATTICE)
    picture = thumbnail(LATTICE, width, height, paint_of(LIGHT))
    picture.show(cells)
    stroke = sweep(LATTICE, (200.0, 120.0), (216.0, 128.0), 12.0)
    states = [cells.copy(), cells.copy()]
    states[1][stroke] = Content.SEALED
    rect = picture.patch(stroke, states[0])
    for state in (1, 0):
        picture.patch(stroke, states[state])
        anew = thumbnail(LATTICE, width, height, paint_of(LIGHT))
        anew.show(states[state])
        assert np.array_equal(anew.pixels, picture.pixels)
    screen, at = QImage(width, height, QImage.Format.Format_RGB32), [0]
    shown = ReadyPicture(picture.image, [rect])
    shown.show()
    QApplication.processEvents()

    def patched() -> QRect:
        at[0] += 1
        return picture.patch(stroke, states[at[0] % 2])

    def on_screen(changed: QRect) -> None:
        shown.update(changed)
        QApplication.processEvents()

    def bare(changed: QRect) -> None:
        painter = QPainter(screen)
        painter.drawImage(QPoint(changed.left(), changed.top()), picture.image, changed)
        painter.end()

    name = f"small picture after a stroke of {len(stroke)} cells, {100 * scale} %"
    turns = by_turns(lambda: on_screen(patched()), lambda: on_screen(rect), rounds=2000, loops=1)
    show(turns.line(name, 5))
    turns = by_turns(lambda: bare(patched()), lambda: bare(rect), rounds=2000, loops=1)
    show(turns.line("  the same without a widget", 5))
    benchmark(lambda: on_screen(patched()))
