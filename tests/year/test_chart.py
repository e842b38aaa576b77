"""The chart is laid out on any size, and its fields say where every value is."""

from itertools import pairwise

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from beeworkbook.colony.timeline import MarkSort
from beeworkbook.qt.palette import DARK, LIGHT, Palette
from beeworkbook.year.chart import AXIS_PX, Chart, ChartSize, nice_ticks
from beeworkbook.year.inks import Inks
from tests.year.drawing import canvas, changed, mark, model, painter_on

pytestmark = pytest.mark.usefixtures("fonts")


@pytest.mark.parametrize(("width", "height"), [(1090, 560), (640, 360), (2100, 1100)])
def test_the_panes_take_the_room_there_is(width: int, height: int) -> None:
    chart = Chart(model(marks=(mark("2026-04-20", MarkSort.QUEEN),)), Inks(LIGHT), ChartSize(width, height))
    ((_, field),) = chart.fields()
    assert field.rect.left() == pytest.approx(AXIS_PX + 12)
    assert field.rect.right() == pytest.approx(width - 18, abs=1)
    assert field.rect.height() > height * 0.6
    assert chart.plot() == field.rect
    assert (chart.size.width(), chart.size.height()) == (width, height)


def test_a_titled_chart_leaves_room_for_its_title() -> None:
    plain, titled = (
        Chart(model(), Inks(LIGHT), ChartSize(1000, 500, titled=held)).plot().top() for held in (False, True)
    )
    assert titled > plain + 30


@pytest.mark.parametrize("palette", [LIGHT, DARK])
def test_the_whole_is_painted_on_the_board(palette: Palette) -> None:
    held = palette
    image = canvas(800, 400, "#ff00ff")
    painter = painter_on(image)
    Chart(model(), Inks(held), ChartSize(800, 400)).paint(painter)
    painter.end()
    assert image.pixelColor(2, 2).name() == held.board.lower()
    assert image.pixelColor(797, 397).name() == held.board.lower()
    assert changed(image, held.board) > 5000


@given(st.floats(0, 50), st.floats(0.5, 1e6), st.integers(1, 12))
@example(below=4, high=48.0, most=2)
def test_ticks_are_round_few_and_hold_nought(below: float, high: float, most: int) -> None:
    ticks = nice_ticks(-below * high / 100, high, most)
    assert 0 in ticks
    # A step of 5, 2 or 1 leaves at most one tick too many: 2 × 10 does not fit where 10 twice does.
    assert 1 <= sum(tick > 0 for tick in ticks) <= max(most, 1)
    assert all(-below * high / 100 - 1e-6 <= tick <= high * (1 + 1e-6) for tick in ticks)
    steps = {round(after - before, 6) for before, after in pairwise(ticks)}
    assert len(steps) <= 1
    for step in steps:
        assert f"{step:e}"[0] in "125"
