"""The ruler is the date picker: bars, empty days, arrows and keys all lead somewhere."""

import subprocess
import sys
from datetime import date

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from beeworkbook.colony.kinds import DueKind
from beeworkbook.colony.records import Question
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.palette import DARK
from beeworkbook.workbook.edits.dues import AddDue
from beeworkbook.workbook.edits.mend import RemoveVisit
from beeworkbook.workbook.edits.visit import SetAnswer
from beeworkbook.year.ruler import HEIGHT, RulerView
from beeworkbook.year.ruler_paint import ruler_field
from tests.year.season_book import SeasonBook


@pytest.fixture
def ruler(desk: Desk, qtbot: QtBot) -> RulerView:
    made = RulerView(desk)
    qtbot.addWidget(made)
    made.resize(1000, HEIGHT)
    with qtbot.waitExposed(made):
        made.show()
    return made


def spot(ruler: RulerView, day: date) -> QPoint:
    model = ruler.model
    assert model is not None
    field = ruler_field(model, ruler.width(), ruler.height())
    return QPoint(round(field.x(model.axis.place(day))), 30)


def days(ruler: RulerView) -> list[str]:
    assert ruler.model is not None
    return [bar.day.isoformat() for bar in ruler.model.bars]


def test_it_shows_the_season_of_the_day(ruler: RulerView, desk: Desk, season_book: SeasonBook) -> None:
    assert days(ruler)[0] == "2026-04-18"
    desk.go(visit_id=season_book.visit("2025-06-06"))
    assert days(ruler) == ["2025-04-01", "2025-05-16", "2025-06-06"]


def test_a_click_on_a_bar_goes_to_its_visit(ruler: RulerView, desk: Desk, season_book: SeasonBook) -> None:
    QTest.mouseClick(ruler, Qt.MouseButton.LeftButton, pos=spot(ruler, date(2026, 4, 25)))
    assert desk.spot.visit_id == season_book.visit("2026-04-25")


def test_a_click_on_an_empty_day_goes_to_that_day(ruler: RulerView, desk: Desk) -> None:
    QTest.mouseClick(ruler, Qt.MouseButton.LeftButton, pos=spot(ruler, date(2026, 7, 14)))
    assert (desk.spot.day, desk.spot.visit_id) == (date(2026, 7, 14), None)
    assert desk.spot.colony_id is not None


def test_the_arrows_leaf(ruler: RulerView, desk: Desk, season_book: SeasonBook) -> None:
    QTest.mouseClick(ruler, Qt.MouseButton.LeftButton, pos=QPoint(20, 28))
    assert desk.spot.visit_id == season_book.visit("2026-05-09")
    QTest.mouseClick(ruler, Qt.MouseButton.LeftButton, pos=QPoint(980, 28))
    assert desk.spot.visit_id == season_book.visit("2026-05-16")
    QTest.mouseClick(ruler, Qt.MouseButton.RightButton, pos=QPoint(20, 28))
    assert desk.spot.visit_id == season_book.visit("2026-05-16")


def test_keys_leaf_and_go_by_days(ruler: RulerView, desk: Desk, season_book: SeasonBook) -> None:
    QTest.keyClick(ruler, Qt.Key.Key_Left)
    assert desk.spot.visit_id == season_book.visit("2026-05-09")
    QTest.keyClick(ruler, Qt.Key.Key_Right)
    assert desk.spot.visit_id == season_book.visit("2026-05-16")
    QTest.keyClick(ruler, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    assert desk.spot.day == date(2026, 5, 17)
    assert desk.visit is None
    QTest.keyClick(ruler, Qt.Key.Key_Home)
    assert desk.spot.visit_id == season_book.visit("2026-04-18")
    QTest.keyClick(ruler, Qt.Key.Key_End)
    assert desk.spot.visit_id == season_book.visit("2026-05-18")


def test_a_tooltip_says_the_day_and_its_figures(ruler: RulerView) -> None:
    assert ruler.words_at(spot(ruler, date(2026, 4, 25)).x()).splitlines()[:2] == [
        "Sat 25 April 2026",
        "brood: about 58 dm²",
    ]
    assert "no visit" in ruler.words_at(spot(ruler, date(2026, 8, 1)).x())
    assert "Left" in ruler.words_at(5)
    assert "Right" in ruler.words_at(995)


def test_a_change_is_seen_at_once(ruler: RulerView, desk: Desk, season_book: SeasonBook) -> None:
    visit = season_book.visit("2026-04-25")

    def height() -> float | None:
        assert ruler.model is not None
        return next(bar.height for bar in ruler.model.bars if bar.visit_id == visit)

    before = height()
    desk.do(SetAnswer(visit, Question.BROOD, "2/1"))
    after = height()
    assert before is not None
    assert after is not None
    assert after < before
    desk.do(RemoveVisit(visit))
    assert "2026-04-25" not in days(ruler)
    desk.undo()
    assert "2026-04-25" in days(ruler)


def test_what_is_due_next_is_marked(ruler: RulerView, desk: Desk, season_book: SeasonBook) -> None:
    desk.do(AddDue(DueKind.LOOK, date(2026, 5, 27), "a week", colony_id=season_book.pear))
    assert ruler.model is not None
    assert ruler.model.due == min(due.day for due in desk.book.read.dues(colony_id=season_book.pear))


def test_a_hidden_ruler_catches_up_when_it_is_seen(
    ruler: RulerView, desk: Desk, season_book: SeasonBook
) -> None:
    ruler.hide()
    desk.do(RemoveVisit(season_book.visit("2026-04-25")))
    ruler.show()
    assert "2026-04-25" not in days(ruler)


def test_a_screen_reader_hears_the_visit(ruler: RulerView, qtbot: QtBot) -> None:
    ruler.activateWindow()
    ruler.setFocus()
    qtbot.waitUntil(ruler.hasFocus)
    assert "16 May" in ruler.accessibleDescription()
    QTest.keyClick(ruler, Qt.Key.Key_Left)
    assert "at least" in ruler.accessibleDescription()
    assert ruler.accessibleName()


def test_it_is_painted_low_tall_and_dark(ruler: RulerView, desk: Desk) -> None:
    low = ruler.grab().toImage()
    desk.set_palette(DARK)
    dark = ruler.grab().toImage()
    assert dark.pixelColor(2, 2).name() == DARK.ground.lower()
    assert low != dark
    QTest.mouseMove(ruler, spot(ruler, date(2026, 8, 1)))
    ruler.resize(1000, 200)
    assert ruler.grab().height() == 200


def test_the_chart_library_is_not_loaded_with_the_ruler() -> None:
    """It takes half a second, which a start must not wait for."""
    code = "import sys, beeworkbook.year.ruler; sys.exit('pyqtgraph' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
