"""The Year follows the keeper and the book, and leads to visits."""

from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Apiary, Colony
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK
from beeworkbook.workbook.edits.mend import RemoveVisit
from beeworkbook.workbook.edits.place import RemoveRecord
from beeworkbook.year.choice import Arrangement
from beeworkbook.year.year_view import YearView
from tests.year.season_book import SeasonBook


@pytest.fixture
def year(desk: Desk, qtbot: QtBot) -> YearView:
    made = YearView(desk)
    qtbot.addWidget(made)
    made.resize(1000, 600)
    with qtbot.waitExposed(made):
        made.show()
    return made


def days(year: YearView) -> list[date]:
    assert year.model is not None
    return [stop.day for stop in year.model.stops]


def test_it_shows_the_colony_and_season_the_keeper_is_at(
    year: YearView, desk: Desk, season_book: SeasonBook
) -> None:
    assert year.choice.colony_ids == (season_book.pear,)
    assert days(year)[0] == date(2026, 4, 18)
    desk.go(visit_id=season_book.visit("2025-06-06"))
    assert days(year)[-1] == date(2025, 6, 6)
    desk.go(colony_id=season_book.gate)
    assert year.model is not None
    assert year.model.title == "Gate"


def test_a_click_leads_into_the_box(year: YearView, desk: Desk, season_book: SeasonBook) -> None:
    place = QPoint(round(year.glass.stop_px(1)), 200)
    QTest.mouseClick(year.glass, Qt.MouseButton.LeftButton, pos=place)
    assert (desk.spot.visit_id, desk.spot.view) == (season_book.visit("2026-04-25"), View.BOX)


def test_leafing_marks_the_visit_without_gathering(
    year: YearView, desk: Desk, season_book: SeasonBook
) -> None:
    before = year.model
    desk.go(visit_id=season_book.visit("2026-04-25"))
    assert year.model is before
    QTest.keyClick(year.glass, Qt.Key.Key_Left)
    assert year.glass.reading is not None
    assert year.glass.reading.heading == "Sat 25 April 2026"


def test_what_is_switched_on_is_shown(year: YearView) -> None:
    year.controls.boxes["stores"].click()
    year.controls.boxes["bees"].click()
    assert year.model is not None
    assert len(year.model.panes) == 3
    year.controls.arrangements[Arrangement.ROW].click()
    assert year.model is not None
    assert year.model.axis.since == date(2025, 4, 1)


def test_the_year_can_be_stepped_without_moving_the_keeper(year: YearView, desk: Desk) -> None:
    spot = desk.spot
    year.controls.year_back.click()
    assert days(year)[-1] == date(2025, 6, 6)
    assert desk.spot == spot


def test_a_change_in_the_book_is_seen(year: YearView, desk: Desk, season_book: SeasonBook) -> None:
    desk.do(RemoveVisit(season_book.visit("2026-04-25")))
    assert date(2026, 4, 25) not in days(year)


def test_out_of_sight_it_waits(year: YearView, desk: Desk, season_book: SeasonBook) -> None:
    year.hide()
    desk.do(RemoveVisit(season_book.visit("2026-04-25")))
    desk.set_palette(DARK)
    year.show()
    assert date(2026, 4, 25) not in days(year)
    assert year.glass.grab().toImage().pixelColor(2, 2).name() == DARK.board.lower()


def test_colonies_beside_it_go_with_another_colony(
    year: YearView, desk: Desk, season_book: SeasonBook
) -> None:
    year.controls.colonies.menu().actions()[1].trigger()
    assert list(year.choice.colony_ids) == [season_book.pear, season_book.gate]
    assert year.model is not None
    assert not year.model.stacked
    desk.go(colony_id=season_book.gate)
    assert list(year.choice.colony_ids) == [season_book.gate]


def test_the_keyboard_goes_to_the_chart(year: YearView, qtbot: QtBot) -> None:
    year.activateWindow()
    year.take_focus()
    qtbot.waitUntil(year.glass.hasFocus)
    QTest.keyClick(year.glass, Qt.Key.Key_Left)
    assert year.glass.reading is not None
    assert year.glass.reading.heading == "Sat 16 May 2026"


def test_what_is_seen_can_be_written(year: YearView, tmp_path: Path) -> None:
    for name in ("chart.png", "chart.svg"):
        year.save_picture(tmp_path / name)
        assert (tmp_path / name).stat().st_size > 5000
    year.save_table(tmp_path / "chart.csv")
    assert (tmp_path / "chart.csv").read_text(encoding="utf-8").count("Pear") == 6


def test_it_can_be_written_before_it_was_ever_seen(desk: Desk, qtbot: QtBot, tmp_path: Path) -> None:
    unseen = YearView(desk)
    qtbot.addWidget(unseen)
    unseen.save_picture(tmp_path / "chart.svg")
    assert "Pear" in (tmp_path / "chart.svg").read_text(encoding="utf-8")


def test_without_a_colony_it_says_so(year: YearView, desk: Desk, season_book: SeasonBook) -> None:
    apiary = desk.spot.apiary_id
    assert apiary is not None
    desk.do(RemoveRecord(Colony, season_book.pear))
    desk.do(RemoveRecord(Colony, season_book.gate))
    desk.do(RemoveRecord(Apiary, apiary))
    assert desk.spot.colony_id is None
    assert year.model is None
    assert not year.glass.grab().isNull()
