"""Pointing reads the nearest visit; clicking and Enter open it; only a strip is painted again."""

from typing import Final

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.year import glass as glass_module
from beeworkbook.year.choice import Measure
from beeworkbook.year.glass import ChartGlass
from beeworkbook.year.inks import Inks
from tests.year.drawing import POINTS, colour_at, model

pytestmark = pytest.mark.usefixtures("fonts")
WIDE: Final = 900


@pytest.fixture
def glass(qtbot: QtBot) -> ChartGlass:
    made = ChartGlass()
    qtbot.addWidget(made)
    made.resize(WIDE, 500)
    made.show_model(model(), Measure.AREA, Inks(LIGHT))
    with qtbot.waitExposed(made):
        made.show()
    return made


def point_at(glass: ChartGlass, at: int, off: float = 0.0) -> QPoint:
    place = QPoint(round(glass.stop_px(at) + off), 200)
    QTest.mouseMove(glass, place)
    return place


def test_pointing_reads_the_nearest_visit(glass: ChartGlass) -> None:
    point_at(glass, 1, 6)
    assert glass.at == 1
    assert glass.reading is not None
    assert glass.reading.heading == "Fri 1 May 2026"


def test_far_from_any_visit_nothing_is_read(glass: ChartGlass) -> None:
    point_at(glass, 1)
    far = round((glass.stop_px(4) + glass.stop_px(5)) / 2)
    QTest.mouseMove(glass, QPoint(far, 200))
    assert glass.at is None
    assert glass.reading is None


def test_a_click_opens_the_visit(glass: ChartGlass, qtbot: QtBot) -> None:
    place = point_at(glass, 2)
    with qtbot.waitSignal(glass.visit_chosen) as told:
        QTest.mouseClick(glass, Qt.MouseButton.LeftButton, pos=place)
    assert told.args == [POINTS[2].visit_id]


def test_a_click_between_visits_opens_nothing(glass: ChartGlass, qtbot: QtBot) -> None:
    far = round((glass.stop_px(4) + glass.stop_px(5)) / 2)
    with qtbot.assertNotEmitted(glass.visit_chosen):
        QTest.mouseClick(glass, Qt.MouseButton.LeftButton, pos=QPoint(far, 200))


def test_keys_go_from_visit_to_visit_and_open(glass: ChartGlass, qtbot: QtBot) -> None:
    QTest.keyClick(glass, Qt.Key.Key_Left)
    assert glass.at == len(POINTS) - 1
    QTest.keyClick(glass, Qt.Key.Key_Left)
    QTest.keyClick(glass, Qt.Key.Key_Left)
    assert glass.at == len(POINTS) - 3
    QTest.keyClick(glass, Qt.Key.Key_Home)
    QTest.keyClick(glass, Qt.Key.Key_Left)
    assert glass.at == 0
    with qtbot.waitSignal(glass.visit_chosen) as told:
        QTest.keyClick(glass, Qt.Key.Key_Return)
    assert told.args == [POINTS[0].visit_id]
    QTest.keyClick(glass, Qt.Key.Key_End)
    assert glass.at == len(POINTS) - 1
    QTest.keyClick(glass, Qt.Key.Key_Escape)
    assert glass.at is None


def test_the_keyboard_begins_at_the_chosen_visit(glass: ChartGlass) -> None:
    glass.show_chosen(POINTS[3].visit_id)
    QTest.keyClick(glass, Qt.Key.Key_Right)
    assert glass.at == 3


def test_a_screen_reader_hears_the_reading(glass: ChartGlass, qtbot: QtBot) -> None:
    glass.activateWindow()
    glass.setFocus()
    qtbot.waitUntil(glass.hasFocus)
    QTest.keyClick(glass, Qt.Key.Key_Home)
    assert glass.accessibleDescription().startswith("Fri 10 April 2026\nworker brood about 35 dm²")


def test_the_line_the_panel_and_the_chosen_visit_are_painted(glass: ChartGlass) -> None:
    glass.show_chosen(POINTS[0].visit_id)
    point_at(glass, 4)
    image = glass.grab().toImage()
    foot = glass.plot.bottom() - 4
    assert colour_at(image, QPointF(round(glass.stop_px(4)), foot)) == QColor(LIGHT.focus)
    chosen = [colour_at(image, QPointF(round(glass.stop_px(0)) + step, foot)).name() for step in (-1, 0)]
    assert LIGHT.focus.lower() in chosen
    panel = glass.panel_rect(4)
    assert colour_at(image, QPointF(panel.left(), panel.center().y())) == QColor(LIGHT.edge)
    assert glass.rect().contains(panel)


def test_the_panel_stays_inside_at_the_right(glass: ChartGlass) -> None:
    assert glass.panel_rect(5).right() < WIDE
    assert glass.panel_rect(0).left() > glass.stop_px(0)


def test_the_chart_is_not_painted_again_for_a_hover(
    glass: ChartGlass, monkeypatch: pytest.MonkeyPatch
) -> None:
    glass.grab()
    painted: list[object] = []
    monkeypatch.setattr(glass_module, "Chart", lambda *_args: painted.append(1))
    for at in range(5):
        point_at(glass, at)
        glass.grab()
    assert painted == []


def test_another_size_or_theme_is_another_picture(glass: ChartGlass, qtbot: QtBot) -> None:
    before = glass.stop_px(4)
    glass.resize(700, 400)
    qtbot.wait(1)
    glass.grab()
    assert glass.stop_px(4) < before
    glass.show_model(model(), Measure.AREA, Inks(DARK))
    assert glass.grab().toImage().pixelColor(2, 2).name() == DARK.board.lower()


@pytest.mark.parametrize("empty", [None, model(())])
def test_an_empty_chart_says_so(glass: ChartGlass, empty: object) -> None:
    glass.show_model(None if empty is None else model(()), Measure.AREA, Inks(LIGHT))
    image = glass.grab().toImage()
    middle = image.copy(60, 200, WIDE - 120, 100)
    assert any(
        middle.pixelColor(x, y) != QColor(LIGHT.board) for x in range(middle.width()) for y in range(100)
    )
    assert glass.stop_near(300) is None


def test_of_several_visits_that_day_the_nearest_dot_is_opened(glass: ChartGlass) -> None:
    assert glass.visit_at(1) == POINTS[1].visit_id
    assert glass.visit_at(1, 100.0) == POINTS[1].visit_id
