"""What stands round the panes finds its place and never loses a sign."""

from datetime import date

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.colony.timeline import MarkSort
from beeworkbook.qt.palette import LIGHT
from beeworkbook.year.day_axis import DayAxis
from beeworkbook.year.inks import Inks
from beeworkbook.year.panes import Pane, PaneKey
from beeworkbook.year.rows import (
    LANE_PX,
    AmountAxis,
    KeyRow,
    MarkRow,
    MonthRow,
    TitleRow,
    empty_words,
    lay_marks,
)
from tests.year.drawing import AXIS, canvas, changed, mark, model

pytestmark = pytest.mark.usefixtures("fonts")
INKS = Inks(LIGHT)


def test_marks_far_apart_stand_in_one_lane_with_their_words() -> None:
    laid = lay_marks((mark("2026-04-01"), mark("2026-07-01")), AXIS.days, 1000)
    assert [(lane, text) for _, _, lane, text in laid] == [(0, "2 L 1:1 given")] * 2
    assert [x for _, x, _, _ in laid] == [
        mark("2026-04-01").x / 245 * 1000,
        mark("2026-07-01").x / 245 * 1000,
    ]


def test_marks_of_one_day_stand_below_one_another() -> None:
    laid = lay_marks((mark("2026-04-01"), mark("2026-04-01", MarkSort.QUEEN, "queen seen")), AXIS.days, 1000)
    assert [lane for _, _, lane, _ in laid] == [0, 1]
    assert all(text for _, _, _, text in laid)


def test_words_give_way_where_many_marks_crowd() -> None:
    many = tuple(mark(f"2026-04-{day:02d}") for day in range(1, 21))
    laid = lay_marks(many, AXIS.days, 1000)
    assert len(laid) == len(many)
    assert sum(bool(text) for _, _, _, text in laid) < 5
    taken = [(lane, round(x)) for _, x, lane, _ in laid]
    assert len(set(taken)) == len(taken)


def test_words_never_run_out_of_the_chart() -> None:
    ((_, _, _, text),) = lay_marks((mark("2026-10-30"),), AXIS.days, 1000)
    assert text == ""


def test_a_row_is_as_high_as_its_lanes() -> None:
    assert MarkRow((), AXIS.days, INKS, 1000).minimumHeight() < LANE_PX
    two = MarkRow((mark("2026-04-01"), mark("2026-04-01")), AXIS.days, INKS, 1000)
    assert two.minimumHeight() == 2 * LANE_PX + 4


def test_the_axis_says_an_amount_below_nought_as_an_amount() -> None:
    pane = Pane(PaneKey.BROOD, "brood", "dm²", -20.0, 100.0)
    axis = AmountAxis(pane, (-20.0, 0.0, 50.0, 100.0), INKS, 54)
    axis.setGeometry(QRectF(0, 0, 54, 240))
    image = canvas(54, 240)
    painter = QPainter(image)
    line, ticks, texts = axis.generateDrawSpecs(painter)
    painter.end()
    assert [text for _, _, text in texts] == ["20", "0", "50", "100"]
    assert [tick[1].y() for tick in ticks] == [240, 200, 100, 0]
    assert line[1].x() == line[2].x() == 54


def test_the_key_explains_what_occurs_in_as_many_lines_as_it_needs() -> None:
    wide, narrow = KeyRow(model(), INKS, 1400), KeyRow(model(), INKS, 320)
    assert narrow.minimumHeight() > wide.minimumHeight() > 0
    assert KeyRow(model(()), INKS, 1000).minimumHeight() == 0


@pytest.mark.parametrize(
    "row", [lambda: MonthRow(AXIS, INKS), lambda: TitleRow(model(), INKS), lambda: KeyRow(model(), INKS, 600)]
)
def test_a_row_paints_what_it_says(row: object) -> None:
    made = row()  # type: ignore[operator]
    made.setGeometry(QRectF(0, 0, 600, 40))
    image = canvas(600, 40)
    painter = QPainter(image)
    made.paint(painter)
    painter.end()
    assert changed(image) > 200


def test_months_that_would_lie_on_one_another_are_left_out() -> None:
    decade = DayAxis(date(2016, 1, 1), date(2026, 1, 1), Hemisphere.NORTH)
    row = MonthRow(decade, INKS)
    row.setGeometry(QRectF(0, 0, 600, 24))
    image = canvas(600, 24)
    painter = QPainter(image)
    row.paint(painter)
    painter.end()
    blank = sum(not changed(image.copy(x, 6, 1, 18)) for x in range(600))
    assert blank > 60
    assert "Nothing" in empty_words()
