"""The sheet of lines: one editor moved about, what it says to the eye and aloud, the mouse, scrolling."""

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QToolTip
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Question
from beeworkbook.colony.sentences import Field, Target
from beeworkbook.rounds.columns import MARGIN
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.rounds.sheet import RoundSheet
from beeworkbook.rounds.walk import Spot
from tests.rounds.conftest import Keys


def _spot(view: RoundView, at: int, target: Target) -> Spot:
    return Spot(view.rows[at].colony.id, target)


def _middle(sheet: RoundSheet, spot: Spot) -> QPoint:
    rect = sheet.field_rect(spot)
    assert rect is not None
    return rect.center()


def _click(view: RoundView, spot: Spot) -> None:
    QTest.mouseClick(view.sheet.viewport(), Qt.MouseButton.LeftButton, pos=_middle(view.sheet, spot))


def test_every_field_has_a_name_and_says_what_may_be_typed(view: RoundView) -> None:
    for target in view.targets:
        view.sheet.go(_spot(view, 0, target))
        editor = view.sheet.editor
        assert editor.accessibleName().startswith("Pear Tree, ")
        assert editor.accessibleDescription()
        assert editor.toolTip()
    view.sheet.go(_spot(view, 0, Question.STORES))
    assert view.sheet.editor.accessibleName() == "Pear Tree, stores, last time 7 kg"
    assert "kilograms" in view._hint.text()


def test_a_refusal_is_read_aloud(view: RoundView, keys: Keys) -> None:
    view.sheet.go(_spot(view, 0, Question.SEAMS))
    keys.type("many\t")
    assert view.sheet.editor.accessibleDescription() == view.sheet.trouble.text() != ""


def test_a_click_finishes_the_field_in_hand_and_goes_to_another(view: RoundView, keys: Keys) -> None:
    keys.type("y4-6")
    _click(view, _spot(view, 2, Question.STORES))
    assert view.sheet.spot == _spot(view, 2, Question.STORES)
    assert view.rows[0].now.answers[Question.EGGS].typed == "4-6"
    assert view.sheet.editor.isVisible()
    keys.type("9\t")
    assert view.rows[2].now.answers[Question.STORES].number == 9


def test_a_click_on_what_is_not_asked_goes_to_the_field_before_it(view: RoundView, keys: Keys) -> None:
    keys.type("n")
    _click(view, _spot(view, 0, Question.CELLS))
    assert view.sheet.spot == _spot(view, 0, Question.STORES)
    name = QPoint(MARGIN + 60, _middle(view.sheet, _spot(view, 1, Question.EGGS)).y())
    QTest.mouseClick(view.sheet.viewport(), Qt.MouseButton.LeftButton, pos=name)
    assert view.sheet.spot == _spot(view, 1, Question.OPENED)


def test_the_editor_covers_its_field_and_grows_with_its_words(view: RoundView, keys: Keys) -> None:
    spot = _spot(view, 0, Question.CELLS)
    view.sheet.go(spot)
    rect = view.sheet.field_rect(spot)
    assert rect is not None
    narrow = view.sheet.editor.geometry()
    assert narrow.left() <= rect.left()
    assert narrow.right() >= rect.right() - 8
    keys.type("2U 1C 5B 1S 6A 1E 7B")
    assert view.sheet.editor.width() > narrow.width() + 40
    view.sheet.go(_spot(view, 0, Field.NEXT))
    keys.type("23 September 2026")
    assert view.sheet.editor.geometry().right() <= view.sheet.viewport().width()


def test_a_narrow_window_scrolls_across_and_keeps_the_colony_in_sight(view: RoundView) -> None:
    view.resize(760, 500)
    view.sheet.go(_spot(view, 0, Field.NEXT))
    bar = view.sheet.horizontalScrollBar()
    assert bar.maximum() > 0
    assert bar.value() > 0
    assert view.sheet.viewport().rect().contains(view.sheet.editor.geometry())
    view.sheet.go(_spot(view, 0, Question.OPENED))
    assert bar.value() == 0
    bar.setValue(bar.maximum())
    place = QPoint(MARGIN + 60, _middle(view.sheet, _spot(view, 2, Question.EGGS)).y())
    assert view.sheet.spot_at(place) == _spot(
        view, 2, Question.OPENED
    )  # over the name, not what lies under it


def test_a_low_window_scrolls_to_the_line_in_hand(view: RoundView) -> None:
    view.resize(1090, 330)
    view.sheet.go(_spot(view, 3, Question.EGGS))
    assert view.sheet.verticalScrollBar().value() > 0
    assert view.sheet.viewport().rect().contains(view.sheet.editor.geometry())
    view.sheet.go(_spot(view, 0, Question.EGGS))
    assert view.sheet.verticalScrollBar().value() == 0


def test_a_tooltip_says_it_in_full(view: RoundView, keys: Keys) -> None:
    keys.type("yyn")
    note = view.sheet.tip_at(_middle(view.sheet, _spot(view, 0, Field.NOTE)))
    assert "last time: Super to go on next time" in note
    offered = view.sheet.tip_at(_middle(view.sheet, _spot(view, 0, Field.NEXT)))
    assert "Sat 23 May: seven days" in offered
    rect = view.sheet.field_rect(_spot(view, 0, Question.QUEEN))
    assert rect is not None
    assert view.sheet.tip_at(QPoint(rect.center().x(), 8)).startswith("Was the queen seen")
    assert view.sheet.tip_at(QPoint(MARGIN + 60, rect.center().y())) == "Pear Tree"
    assert view.sheet.tip_at(QPoint(4, 4000)) == ""


def test_a_right_click_on_a_heading_asks_for_the_columns(view: RoundView, qtbot: QtBot) -> None:
    rect = view.sheet.field_rect(_spot(view, 0, Question.QUEEN))
    assert rect is not None
    port = view.sheet.viewport()
    opened: list[QPoint] = []
    view.head.open_menu_at = opened.append  # type: ignore[method-assign, assignment]
    for y, asked in ((8, True), (rect.center().y(), False)):
        place = QPoint(rect.center().x(), y)
        event = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, place, port.mapToGlobal(place))
        if asked:
            with qtbot.waitSignal(view.sheet.heading_menu, timeout=200) as told:
                view.sheet.contextMenuEvent(event)
            assert told.args is not None
            assert told.args[0] is Question.QUEEN
        else:
            with qtbot.assertNotEmitted(view.sheet.heading_menu):
                view.sheet.contextMenuEvent(event)
    assert len(opened) == 1


def test_what_there_is_to_mention_stands_under_the_line_in_hand_and_stops_nobody(
    view: RoundView, keys: Keys
) -> None:
    calm = view.sheet.wanted_height()
    view.sheet.go(_spot(view, 0, Question.STORES))
    keys.type("2\t")
    assert view.rows[0].notes
    assert view.sheet.wanted_height() > calm
    assert "Less than 4.5 kg in store" in view.sheet.tip_at(
        QPoint(MARGIN + 60, _middle(view.sheet, _spot(view, 0, Question.EGGS)).y())
    )
    keys.type("\n")
    assert view.sheet.wanted_height() == calm


def test_the_keyboard_comes_to_the_field_it_was_in(view: RoundView, qtbot: QtBot) -> None:
    view.sheet.go(_spot(view, 1, Question.TEMPER))
    view.head.weather.setFocus()
    assert not view.sheet.editor.isVisible()
    view.sheet.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(view.sheet.editor.hasFocus)
    assert view.sheet.spot == _spot(view, 1, Question.TEMPER)


def test_the_editor_is_put_away_with_a_line_that_went(view: RoundView) -> None:
    view.sheet.go(_spot(view, 3, Question.EGGS))
    view.sheet.set_rows(view.rows[:2], view.targets)
    assert view.sheet.spot is None
    assert not view.sheet.editor.isVisible()


def test_a_long_note_is_kept_whole(view: RoundView, keys: Keys) -> None:
    view.sheet.go(_spot(view, 0, Field.NOTE))
    view.sheet.editor.setText("calm " * 300)
    keys.type(".\t")
    visit = view.rows[0].now.visit
    assert visit is not None
    assert len(visit.note) > 1400


def test_a_tooltip_goes_when_something_is_typed(view: RoundView, keys: Keys, qtbot: QtBot) -> None:
    QToolTip.showText(QPoint(40, 40), "y or n", view.sheet.editor)
    assert QToolTip.isVisible()
    keys.type("4")
    qtbot.waitUntil(lambda: not QToolTip.isVisible(), timeout=2000)
