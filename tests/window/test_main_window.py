"""The window put together: rooms, keys, menus, what it says and what it remembers."""

from functools import partial
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Arrival, Colony
from beeworkbook.comb.contents import Face
from beeworkbook.qt.desk import View
from beeworkbook.qt.memory import Memory
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.window.actions import ACTIONS
from beeworkbook.window.first_start import FirstStart
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.window.shell import Shell
from beeworkbook.window.stands import StandsStrip
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony
from beeworkbook.workbook.edits.place import AddApiary, RemoveRecord, RenameRecord
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, make_orchard
from tests.window.conftest import CTRL, NO_MODIFIER, SHIFT, press, write

ROOMS = {
    Qt.Key.Key_1: View.ROUND,
    Qt.Key.Key_2: View.BOX,
    Qt.Key.Key_3: View.BENCH,
    Qt.Key.Key_5: View.STACK,
    Qt.Key.Key_6: View.YEAR,
    Qt.Key.Key_7: View.DAYS,
    Qt.Key.Key_8: View.PAPERS,
}


def test_it_begins_in_the_round_of_the_first_apiary(window: MainWindow) -> None:
    assert window.desk.spot.view is View.ROUND
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Pear Tree"
    assert window.shell.windowTitle() == "Orchard book"


@pytest.mark.parametrize("key", list(ROOMS))
def test_each_room_has_its_key_and_takes_the_keyboard(window: MainWindow, key: Qt.Key) -> None:
    press(key, CTRL)
    view = ROOMS[key]
    assert window.desk.spot.view is view
    shown = window.rooms.views.currentWidget()
    assert shown is window.face(view)
    focus = QApplication.focusWidget()
    assert focus is not None
    assert shown.isAncestorOf(focus) or shown is focus


def test_f6_goes_a_depth_down_and_shift_f6_one_up(window: MainWindow) -> None:
    views = []
    for modifier in (NO_MODIFIER, NO_MODIFIER, NO_MODIFIER, SHIFT, SHIFT, SHIFT):
        press(Qt.Key.Key_F6, modifier)
        views.append(window.desk.spot.view)
    assert views == [View.BOX, View.BENCH, View.BENCH, View.BOX, View.ROUND, View.ROUND]


def test_the_page_keys_leaf_through_visits_in_every_room(window: MainWindow) -> None:
    desk = window.desk
    days = [visit.day for visit in desk.visits()]
    assert len(days) == 2
    for view in (View.BOX, View.BENCH, View.STACK, View.YEAR, View.DAYS, View.PAPERS):
        window.go_to(view)
        desk.go(visit_id=desk.visits()[-1].id)
        press(Qt.Key.Key_PageUp)
        assert (view, desk.spot.day) == (view, days[0])
        press(Qt.Key.Key_PageDown)
        assert (view, desk.spot.day) == (view, days[1])


def test_the_page_keys_say_when_there_is_no_other_visit(window: MainWindow) -> None:
    window.go_to(View.BOX)
    window.desk.go(visit_id=window.desk.visits()[0].id)
    press(Qt.Key.Key_PageUp)
    assert "no earlier visit" in window.told_line.sentence


def test_undo_and_redo_name_their_step_in_the_menu(window: MainWindow) -> None:
    undo, redo = (window.actions_by_name[name] for name in ("undo", "redo"))
    assert not undo.isEnabled()
    assert undo.text() == "Undo"
    desk = window.desk
    assert desk.colony is not None
    desk.do(RenameRecord(Colony, desk.colony.id, "Plum Tree"))
    assert undo.text() == "Undo: rename the colony"
    press(Qt.Key.Key_Z, CTRL)
    assert desk.colony.name == "Pear Tree"
    assert redo.text() == "Redo: rename the colony"
    assert "Taken back: rename the colony" in window.told_line.sentence
    press(Qt.Key.Key_Z, CTRL | SHIFT)
    assert desk.colony.name == "Plum Tree"


def test_undo_goes_to_the_place_it_changes(window: MainWindow) -> None:
    desk = window.desk
    window.go_to(View.BOX)
    pear = desk.spot.colony_id
    visit_id, frame_id = desk.visit_to_write(), desk.spot.frame_id
    assert visit_id is not None
    assert frame_id is not None
    desk.do(LayOutComb(visit_id, frame_id, "S4"))
    press(Qt.Key.Key_PageDown, CTRL)
    assert desk.spot.colony_id != pear
    press(Qt.Key.Key_Z, CTRL)
    assert (desk.spot.colony_id, desk.spot.visit_id, desk.spot.frame_id) == (pear, visit_id, frame_id)
    assert desk.book.read.side(visit_id, frame_id, Face.A) is None


def test_the_line_in_the_menu_bar_says_when_it_was_kept_and_gives_way_to_nothing(window: MainWindow) -> None:
    line = window.told_line
    assert line.kept.text() == ""
    assert window.desk.colony is not None
    window.desk.do(RenameRecord(Colony, window.desk.colony.id, "Plum Tree"))
    assert line.kept.text().startswith("kept ")
    menus = window.shell.menuBar()
    last = menus.actionGeometry(menus.actions()[-1]).right()
    window.tell("A long sentence. " * 30)
    QApplication.processEvents()
    assert line.geometry().left() > last
    assert line.geometry().right() <= menus.width()
    assert line.told.text().endswith("…")
    assert line.sentence.startswith("A long sentence.")
    assert line.kept.isVisible()
    assert line.kept.width() >= line.kept.sizeHint().width()


def test_the_window_goes_dark_and_light_by_a_key_and_remembers(window: MainWindow, memory: Memory) -> None:
    seen: list[object] = []
    window.desk.palette_changed.connect(seen.append)
    press(Qt.Key.Key_D, CTRL | SHIFT)
    assert seen == [DARK]
    assert memory.get("dark") is True
    assert window.actions_by_name["dark"].isChecked()
    app = QApplication.instance()
    assert isinstance(app, QApplication)
    assert DARK.ground in app.styleSheet()
    press(Qt.Key.Key_D, CTRL | SHIFT)
    assert memory.get("dark") is False
    assert not window.actions_by_name["dark"].isChecked()


def test_dark_repaints_what_is_painted_by_hand(window: MainWindow) -> None:
    for view in (View.BOX, View.STACK):
        window.go_to(view)
        QApplication.processEvents()
        light = window.shell.grab().toImage()
        window.desk.set_palette(DARK)
        QApplication.processEvents()
        dark = window.shell.grab().toImage()
        window.desk.set_palette(LIGHT)
        for place in (QPoint(4, 40), QPoint(100, 110), QPoint(60, 90)):
            assert light.pixelColor(place).lightness() > 150, (view, place)
            assert dark.pixelColor(place).lightness() < 90, (view, place)


def test_it_opens_again_where_it_was_left(opener: Opener, orchard: Path) -> None:
    assert opener.begin(orchard)
    first = opener.window
    assert first is not None
    gate = next(colony for colony in first.desk.book.read.find(Colony) if colony.name == "Gate")
    first.desk.go(colony_id=gate.id, view=View.BENCH)
    first.desk.go(visit_id=first.desk.visits()[0].id)
    spot = first.desk.spot
    opener.put_away()
    assert opener.begin(None)
    assert opener.window is not None
    assert opener.window is not first
    again = opener.window.desk.spot
    assert (again.view, again.colony_id, again.visit_id, again.frame_id) == (
        spot.view,
        spot.colony_id,
        spot.visit_id,
        spot.frame_id,
    )


@pytest.mark.parametrize(
    "spots", ["nonsense", {"x": 1}, {"{path}": {"view": "attic", "colony_id": "one", "frame_id": 99999}}]
)
def test_a_spoilt_memory_is_no_reason_not_to_open(
    opener: Opener, orchard: Path, memory: Memory, spots: object
) -> None:
    if isinstance(spots, dict):
        spots = {name.format(path=orchard): value for name, value in spots.items()}
    memory.put("spots", spots)
    assert opener.begin(orchard)
    assert opener.window is not None
    assert opener.window.desk.colony is not None
    assert opener.window.desk.spot.view is View.ROUND


def test_what_is_being_typed_is_kept_when_the_window_closes(opener: Opener, orchard: Path) -> None:
    assert opener.begin(orchard)
    window = opener.window
    assert window is not None
    window.go_to(View.BOX)
    window.desk.go(visit_id=window.desk.visits()[-1].id)
    frame_id, visit_id = window.desk.spot.frame_id, window.desk.spot.visit_id
    assert frame_id is not None
    assert visit_id is not None
    window.key_line.begin("")
    write("S4H4")
    window.shell.close()
    book = Workbook.open(orchard, today=DAY)
    side = book.read.side(visit_id, frame_id, Face.A)
    book.close()
    assert side is not None
    assert side.typed == "S4H4"


def test_a_large_screen_gets_a_wider_page_and_a_taller_ruler(window: MainWindow, shell: Shell) -> None:
    narrow, low = window.rooms.side.width(), window.rooms.ruler.height()
    shell.resize(2560, 1380)
    QApplication.processEvents()
    assert window.rooms.side.width() > narrow
    assert window.rooms.ruler.height() > low


@pytest.mark.parametrize("size", [(1280, 680), (1366, 705), (2560, 1380)])
def test_every_room_holds_in_the_window(window: MainWindow, shell: Shell, size: tuple[int, int]) -> None:
    shell.resize(*size)
    for view in ROOMS.values():
        window.go_to(view)
        QApplication.processEvents()
        assert (shell.width(), shell.height()) == size, view
        assert window.minimumSizeHint().width() <= size[0], view


def test_a_narrow_window_still_shows_box_and_bench(window: MainWindow, shell: Shell) -> None:
    shell.resize(shell.minimumSize())
    for view in (View.ROUND, View.BOX, View.BENCH, View.STACK, View.DAYS, View.PAPERS):
        window.go_to(view)
        QApplication.processEvents()
        assert window.minimumSizeHint().width() <= shell.minimumWidth(), view


def test_a_book_open_for_looking_keeps_its_writing_actions_still(opener: Opener, orchard: Path) -> None:
    orchard.chmod(0o444)
    book = Workbook.open(orchard, today=DAY, read_only=True)
    opener.furnish(book)
    window = opener.window
    assert window is not None
    for spec in ACTIONS:
        action = window.actions_by_name[spec.name]
        assert action.isEnabled() is not (spec.writes or spec.name in {"undo", "redo"}), spec.name
    assert window.told_line.kept.text() == "open for looking only"
    for view in ROOMS.values():
        window.go_to(view)
    assert window.desk.visits()


def test_a_workbook_without_a_colony_offers_two_ways_to_begin(opener: Opener, tmp_path: Path) -> None:
    assert opener.create(tmp_path / "mine.beebook", "Mine")
    window = opener.window
    assert window is not None
    assert isinstance(window.rooms.views.currentWidget(), FirstStart)
    views = [window.desk.spot.view]
    window.desk.do(AddApiary("Home"))
    views.append(window.desk.spot.view)
    window.desk.do(ArriveColony(ArrivalSpec("Reed", Arrival.SWARM, DAY, window.desk.spot.apiary_id)))
    views.append(window.desk.spot.view)
    window.desk.undo()
    views.append(window.desk.spot.view)
    assert views == [View.FIRST, View.FIRST, View.ROUND, View.FIRST]


def test_the_last_colony_of_an_apiary_may_go(window: MainWindow) -> None:
    for colony in window.desk.book.read.find(Colony):
        for view in ROOMS.values():
            window.desk.go(view=view)
        window.desk.do(RemoveRecord(Colony, colony.id))
        QApplication.processEvents()
    assert window.desk.spot.view is View.FIRST
    for view in ROOMS.values():
        window.go_to(view)
        QApplication.processEvents()
    window.desk.undo()
    assert window.desk.colony is not None


def test_a_very_long_name_widens_nothing(window: MainWindow, shell: Shell) -> None:
    assert window.desk.colony is not None
    name = "The colony by the old mill beyond the orchard " * 4
    window.desk.do(RenameRecord(Colony, window.desk.colony.id, name))
    for view in ROOMS.values():
        window.go_to(view)
        QApplication.processEvents()
        assert window.minimumSizeHint().width() <= 1280, view
        assert shell.width() == 1366, view


def _is_in_sight(stands: StandsStrip, at: int) -> bool:
    field, port = stands._fields[at], stands.viewport()
    return port.rect().contains(field.mapTo(port, field.rect().center()))


def test_thirty_colonies_scroll_to_the_one_in_hand(opener: Opener, tmp_path: Path, qtbot: QtBot) -> None:
    path = tmp_path / "many.beebook"
    make_orchard(path, names=tuple(f"Stand {number}" for number in range(1, 31))).close()
    assert opener.begin(path)
    window = opener.window
    assert window is not None
    QApplication.processEvents()
    cards = window.stands.cards()
    assert len(cards) == 30
    for at in (29, 0, 15):
        window.desk.go(colony_id=cards[at].colony_id, view=View.BOX)
        qtbot.waitUntil(partial(_is_in_sight, window.stands, at))
    assert window.stands.before.isVisible()
    assert window.stands.after.isVisible()
    window.stands.before.click()
    assert window.stands.horizontalScrollBar().value() >= 0
