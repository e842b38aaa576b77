from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Question
from beeworkbook.qt.desk import View
from beeworkbook.qt.memory import Memory
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.window.actions import ACTIONS
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.window.shell import Shell
from tests.rounds.orchard import DAY


def reopened_at(view: View, shell: Shell, memory: Memory, orchard: Path) -> MainWindow:
    """The window of a start on a workbook that was left in this view."""
    memory.put("spots", {str(orchard.resolve()): {"view": view.value}})
    memory.put("last_workbook", str(orchard))
    opener = Opener(shell, memory, lambda: DAY)
    assert opener.begin(None, box_first=True)
    assert opener.window is not None
    return opener.window


@pytest.mark.parametrize("view", [View.BOX, View.BENCH])
def test_the_box_is_seen_first_and_stays_where_it_is(
    view: View, qtbot: QtBot, shell: Shell, memory: Memory, orchard: Path
) -> None:
    window = reopened_at(view, shell, memory, orchard)
    assert not window.is_furnished
    with qtbot.waitSignal(window.furnished):
        QApplication.processEvents()
        place = window.box.mapTo(shell, window.box.rect().topLeft()), window.box.size()
        assert window.box.isVisible()
        assert window.box.row.combs
    assert window.desk.spot.view is view
    QApplication.processEvents()
    assert (window.box.mapTo(shell, window.box.rect().topLeft()), window.box.size()) == place
    assert window.bench.isVisible()
    assert window.page.isVisible()
    assert window.stands.isVisible()
    assert window.ruler.isVisible()


def test_where_the_box_is_not_seen_all_is_there_at_once(shell: Shell, memory: Memory, orchard: Path) -> None:
    window = reopened_at(View.ROUND, shell, memory, orchard)
    assert window.is_furnished
    QApplication.processEvents()
    assert window.face(View.ROUND).isVisible()


def test_every_action_stands_in_its_menu(window: MainWindow) -> None:
    for spec in ACTIONS:
        action = window.actions_by_name[spec.name]
        assert action in window.menus[spec.menu].actions()
        assert spec.keys in action.toolTip()


def test_a_window_closed_before_it_is_furnished_keeps_where_the_keeper_was(
    shell: Shell, memory: Memory, orchard: Path
) -> None:
    window = reopened_at(View.BOX, shell, memory, orchard)
    assert not window.is_furnished
    shell.close()
    assert memory.get("spots")[str(orchard.resolve())]["view"] == "box"
    QApplication.processEvents()
    assert not window.is_furnished


def test_typing_goes_from_the_box_to_the_key_line(
    qtbot: QtBot, shell: Shell, memory: Memory, orchard: Path
) -> None:
    window = reopened_at(View.BOX, shell, memory, orchard)
    with qtbot.waitSignal(window.furnished):
        QApplication.processEvents()
    qtbot.waitUntil(lambda: QApplication.focusWidget() is window.box.row)
    QTest.keyClick(window.box.row, Qt.Key.Key_E)
    focus = QApplication.focusWidget()
    assert focus is not None
    assert window.key_line.isAncestorOf(focus)


def test_what_shines_through_by_key_is_ticked_in_the_menu(window: MainWindow) -> None:
    window.go_to(View.BENCH)
    window.bench.take_letter("Y")
    assert window.actions_by_name["shine_through"].isChecked()
    window.actions_by_name["shine_through"].trigger()
    assert not window.bench._shines


def test_bees_and_queen_of_the_legend_do_what_their_letters_do(window: MainWindow) -> None:
    window.go_to(View.BENCH)
    QTest.mouseClick(window.legend.mark_keys[0], Qt.MouseButton.LeftButton)
    assert "eighths" in window.bench.reader.asks
    window.bench.reader.forget()
    QTest.mouseClick(window.legend.mark_keys[2], Qt.MouseButton.LeftButton)
    assert "cell: U cup" in window.bench.reader.asks


def test_tools_are_beside_the_legend_where_the_combs_are(window: MainWindow) -> None:
    window.go_to(View.BENCH)
    assert window.hand_strip.isVisible()
    assert window.hand_strip.hand is window.bench.hand
    window.go_to(View.ROUND)
    assert not window.hand_strip.isVisible()


def test_a_sentence_of_the_page_lights_its_combs_and_leads_to_its_field(
    window: MainWindow, qtbot: QtBot
) -> None:
    window.go_to(View.BOX)
    frame_id = window.desk.spot.frame_id
    window.page.pointed.emit(frozenset({frame_id}))
    assert window.box.row.lit == {frame_id}
    window.page.pointed.emit(frozenset())
    assert not window.box.row.lit
    window.page.field_asked.emit(Question.TEMPER)
    assert window.desk.spot.view is View.ROUND
    view = window.face(View.ROUND)
    assert isinstance(view, RoundView)
    assert view.sheet.spot is not None
    assert (view.sheet.spot.colony_id, view.sheet.spot.target) == (
        window.desk.spot.colony_id,
        Question.TEMPER,
    )
    qtbot.waitUntil(view.sheet.editor.hasFocus)
