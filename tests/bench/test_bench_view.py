from dataclasses import replace
from datetime import timedelta
from functools import partial

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QHelpEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QMenu, QToolTip
from pytestqt.qtbot import QtBot

from beeworkbook.bench.bench_view import FOLD_WIDTH, BenchView
from beeworkbook.bench.canvas import SideCanvas
from beeworkbook.bench.mark_menu import fill_mark_menu
from beeworkbook.bench.tools.base import ToolName
from beeworkbook.colony.records import FrameMake, Mark, Side, Visit, VisitId
from beeworkbook.comb.contents import CellFate, CellKind, Content, Face, MarkKind, Origin
from beeworkbook.comb.lattice import Point
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK
from beeworkbook.workbook.edits.frames import AddFrame, TakeFrame
from beeworkbook.workbook.edits.marks import ChangeMark
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit
from tests.workbook.keeping import LATER, Keeping

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def bench(desk: Desk, keeping: Keeping, qtbot: QtBot) -> BenchView:
    desk.go(frame_id=keeping.frame(5), view=View.BENCH)
    made = BenchView(desk)
    qtbot.addWidget(made)
    made.resize(1090, 340)
    made.show()
    qtbot.waitExposed(made)
    made.take_focus()
    return made


def canvas(bench: BenchView, face: Face = Face.A) -> SideCanvas:
    return bench.sides[face].canvas


def noted(desk: Desk, face: Face = Face.A) -> Side | None:
    spot = desk.spot
    assert spot.visit_id is not None
    assert spot.frame_id is not None
    return desk.book.read.side(spot.visit_id, spot.frame_id, face)


def type_comb(desk: Desk, text: str) -> None:
    spot = desk.spot
    assert spot.visit_id is not None
    assert spot.frame_id is not None
    desk.do(LayOutComb(spot.visit_id, spot.frame_id, text))


def paint(bench: BenchView, face: Face, start: Point, end: Point) -> None:
    if bench.hand.is_empty:
        bench.hand.take_content(Content.SEALED)
    drag(bench, face, start, end)


def drag(bench: BenchView, face: Face, start: Point, end: Point) -> None:
    made = canvas(bench, face)
    assert made.view is not None
    places = [QPointF(*made.view.to_px(point)).toPoint() for point in (start, end)]
    QTest.mousePress(made, LEFT, pos=places[0])
    QTest.mouseRelease(made, LEFT, pos=places[1])


def marks(desk: Desk) -> list[Mark]:
    assert desk.spot.visit_id is not None
    return list(desk.book.read.marks(desk.spot.visit_id))


# --- painting -----------------------------------------------------------------------------------


def test_a_finished_stroke_is_kept_at_once_and_is_one_step(bench: BenchView, desk: Desk) -> None:
    QTest.keyClick(canvas(bench), Qt.Key.Key_E)
    paint(bench, Face.A, (150.0, 90.0), (152.0, 90.0))
    side = noted(desk)
    assert side is not None
    assert side.origin is Origin.PAINTED
    assert desk.book.undo_label == "paint eggs on 5A"
    assert canvas(bench).side.counts[Content.EGGS] > 10
    desk.undo()
    assert noted(desk) is None
    assert canvas(bench).side.counts[Content.EGGS] == 0
    desk.redo()
    assert canvas(bench).side.counts[Content.EGGS] > 10


def test_painting_on_a_laid_out_side_makes_it_painted(bench: BenchView, desk: Desk) -> None:
    type_comb(desk, "E1O2S4H1")
    assert canvas(bench).side.look == Origin.EIGHTHS
    paint(bench, Face.A, (150.0, 90.0), (152.0, 90.0))
    assert canvas(bench).side.look == Origin.PAINTED
    assert canvas(bench, Face.B).side.look == Origin.EIGHTHS


def test_the_first_stroke_of_a_day_begins_its_visit(bench: BenchView, desk: Desk, keeping: Keeping) -> None:
    desk.go(day=LATER - timedelta(days=2), frame_id=keeping.frame(5))
    assert desk.spot.visit_id is None
    paint(bench, Face.A, (150.0, 90.0), (152.0, 90.0))
    assert desk.spot.visit_id is not None
    visit = desk.book.read.get(Visit, desk.spot.visit_id)
    assert visit is not None
    assert visit.day == LATER - timedelta(days=2)
    assert canvas(bench).side.counts[Content.SEALED] > 10


def test_a_stroke_that_cannot_be_kept_is_shown_no_longer(
    bench: BenchView, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(desk, "note", lambda *_args, **_named: None)
    paint(bench, Face.A, (150.0, 90.0), (152.0, 90.0))
    assert not canvas(bench).side.cells.any()


def test_what_was_only_assumed_does_not_count_when_it_is_painted_on(
    bench: BenchView, desk: Desk, qtbot: QtBot
) -> None:
    type_comb(desk, "?")
    assert canvas(bench).side.look == Origin.ASSUMED
    with qtbot.waitSignal(desk.told) as told:
        paint(bench, Face.A, (150.0, 90.0), (152.0, 90.0))
    assert "only assumed" in told.args[0]
    counts = canvas(bench).side.counts
    assert counts[Content.SEALED] > 10
    assert counts[Content.SEALED] + counts[Content.NOT_RECORDED] == sum(counts)
    desk.undo()
    side = noted(desk)
    assert side is not None
    assert side.origin is Origin.ASSUMED


def test_both_sides_are_painted_each_for_itself(bench: BenchView, desk: Desk) -> None:
    paint(bench, Face.B, (150.0, 90.0), (152.0, 90.0))
    assert desk.spot.face is Face.B
    assert noted(desk, Face.B) is not None
    assert noted(desk, Face.A) is None


# --- keys ---------------------------------------------------------------------------------------


def test_letters_are_contents_and_the_free_ones_tools(bench: BenchView, qtbot: QtBot) -> None:
    with qtbot.waitSignal(bench.content_changed) as told:
        QTest.keyClick(canvas(bench), Qt.Key.Key_P)
    assert told.args == [Content.POLLEN]
    QTest.keyClick(canvas(bench), Qt.Key.Key_R)
    assert bench.hand.tool == ToolName.ELLIPSE
    for key in "mc]":
        QTest.keyClicks(canvas(bench), key)
    assert bench.hand.only is Content.EMPTY
    assert bench.hand.radius_mm > 12
    assert "only over empty comb" in bench.hand.words


def test_zoom_by_keys(bench: BenchView) -> None:
    QTest.keyClicks(canvas(bench), "++")
    view = canvas(bench).view
    assert view is not None
    assert view.zoom > 1
    QTest.keyClicks(canvas(bench), "z")
    view = canvas(bench).view
    assert view is not None
    assert view.zoom == 1


def test_a_digit_begins_to_type_the_content_in_the_hand(bench: BenchView, qtbot: QtBot) -> None:
    QTest.keyClick(canvas(bench), Qt.Key.Key_E)
    with qtbot.waitSignal(bench.typing_started) as told:
        QTest.keyClicks(canvas(bench), "3")
    assert told.args == ["E3"]


def test_marks_by_keys_lie_on_the_cell_of_the_cursor(bench: BenchView, desk: Desk) -> None:
    QTest.keyClick(canvas(bench), Qt.Key.Key_Right)
    cell = canvas(bench).cursor_cell.cell
    QTest.keyClicks(canvas(bench), "q")
    QTest.keyClick(canvas(bench), Qt.Key.Key_Down)
    QTest.keyClicks(canvas(bench), "kc")
    queen, queen_cell = marks(desk)
    assert (queen.kind, queen.face, queen.cell) == (MarkKind.QUEEN, Face.A, cell)
    assert (queen_cell.kind, queen_cell.cell_kind) == (MarkKind.QUEEN_CELL, CellKind.CHARGED)
    assert queen_cell.cell != cell
    QTest.keyClick(canvas(bench), Qt.Key.Key_Delete)
    assert marks(desk) == [queen]


def test_a_mark_without_a_place_is_given_none(bench: BenchView, desk: Desk) -> None:
    bench.take_letter("Q")
    assert [(mark.face, mark.cell) for mark in marks(desk)] == [(Face.A, None)]
    assert bench.sides[Face.A]._word_label.accessibleName() == "nothing recorded, queen seen"
    type_comb(desk, "S4KC")
    assert "charged queen cell on this comb" in bench.sides[Face.A]._word_label.accessibleName()
    assert "queen" not in bench.sides[Face.B]._word_label.accessibleName()


@pytest.mark.parametrize("width", [1010, 620])
def test_the_question_for_a_queen_cell_has_the_whole_heading(bench: BenchView, width: int) -> None:
    bench.resize(width, 420)
    side = bench.sides[Face.A]
    QTest.keyClicks(canvas(bench), "kk")
    QTest.qWait(0)
    assert side._hint.text() == "cell: U cup · E egg · C charged · S sealed · M emerged · T torn"
    assert side._hint.width() == side.width()
    bench.refresh()
    assert not side._comb_label.isVisible()
    QTest.keyClick(canvas(bench), Qt.Key.Key_Escape)
    assert side._comb_label.isVisible()
    assert side._faces_label.isVisible()
    assert side._hint.accessibleName() == bench.hand.words


def test_nothing_is_painted_while_a_letter_is_waited_for(bench: BenchView, desk: Desk) -> None:
    side = canvas(bench)
    bench.hand.take_content(Content.SEALED)
    QTest.keyClick(side, Qt.Key.Key_Right)
    cell = side.cursor_cell.cell
    QTest.keyClicks(side, "k")
    for key, modifier in (
        (Qt.Key.Key_Space, Qt.KeyboardModifier.NoModifier),
        (Qt.Key.Key_Delete, Qt.KeyboardModifier.NoModifier),
    ):
        QTest.keyClick(side, key, modifier)
    drag(bench, Face.A, (100.0, 60.0), (140.0, 90.0))
    assert noted(desk) is None
    assert side.cursor_cell.cell == cell
    QTest.keyClicks(side, "c")
    assert [(mark.cell, mark.cell_kind) for mark in marks(desk)] == [(cell, CellKind.CHARGED)]
    QTest.keyClick(side, Qt.Key.Key_Space)
    assert noted(desk) is not None


def test_bees_are_noted_in_eighths(bench: BenchView, desk: Desk) -> None:
    QTest.keyClicks(canvas(bench), "w")
    assert "eighths" in bench.sides[Face.A]._hint.accessibleName()
    QTest.keyClicks(canvas(bench), "5")
    side = noted(desk)
    assert side is not None
    assert side.covered == 5
    assert "bees on 5/8" in bench.sides[Face.A]._word_label.accessibleName()


def test_escape_stops_waiting_for_a_second_letter(bench: BenchView, desk: Desk) -> None:
    QTest.keyClicks(canvas(bench), "k")
    QTest.keyClick(canvas(bench), Qt.Key.Key_Escape)
    QTest.keyClicks(canvas(bench), "c")
    assert marks(desk) == []
    assert bench.hand.content is Content.EMPTY


def test_enter_is_the_next_comb(bench: BenchView, desk: Desk, keeping: Keeping) -> None:
    QTest.keyClick(canvas(bench), Qt.Key.Key_Return)
    assert desk.spot.frame_id == keeping.frame(6)
    assert not desk.step_comb(100)


def test_one_content_is_changed_for_another_all_over_the_side(bench: BenchView, desk: Desk) -> None:
    type_comb(desk, "S4H4")
    before = canvas(bench).side.counts
    at = int(np.flatnonzero(canvas(bench).side.cells == Content.STORES)[0])
    canvas(bench).cursor_cell.put(at)
    QTest.keyClicks(canvas(bench), "nj")
    after = canvas(bench).side.counts
    assert after[Content.STORES] == 0
    assert after[Content.NECTAR] == before[Content.STORES]
    assert desk.book.undo_label == "change sealed stores to nectar or thin syrup on 5A"


def test_as_last_time_is_copied_and_as_coarse(bench: BenchView, desk: Desk) -> None:
    QTest.keyClicks(canvas(bench), "=")
    side = noted(desk)
    assert side is not None
    assert (side.origin, side.grain) == (Origin.UNCHANGED, Origin.EIGHTHS)
    assert canvas(bench).side.look == Origin.EIGHTHS


def test_as_last_time_of_a_side_never_seen_is_refused_in_words(
    bench: BenchView, desk: Desk, keeping: Keeping, qtbot: QtBot
) -> None:
    desk.go(frame_id=keeping.frame(7))
    with qtbot.waitSignal(desk.told) as told:
        bench.take_letter("=")
    assert "not looked at before" in told.args[0]


def test_nothing_changes_when_nothing_is_pointed_at(bench: BenchView, desk: Desk, qtbot: QtBot) -> None:
    with qtbot.waitSignal(desk.told):
        bench.take_letter("J")
    assert noted(desk) is None


# --- what is shown ------------------------------------------------------------------------------


def test_the_words_round_a_side(bench: BenchView, desk: Desk) -> None:
    type_comb(desk, "E1O2S4H1")
    side = bench.sides[Face.A]
    assert side._comb_label.text() == "Comb 5"
    assert side._faces_label.text() == "side A, facing comb 4"
    assert bench.sides[Face.B]._faces_label.text() == "side B, facing comb 6"
    assert side._word_label.accessibleName() == "laid out"
    assert side._entrance.text() == "entrance end"
    assert side._left.isVisibleTo(side)
    assert not side._right.isVisibleTo(side)
    assert side._numbers.accessibleName().startswith("about 2\u202f200 brood cells: 320 eggs, 640 open")
    assert side._hint.accessibleName() == bench.hand.words
    assert bench.sides[Face.B]._hint.accessibleName().startswith("comb: about")
    assert canvas(bench).accessibleName().startswith("comb 5 side A, laid out")


def test_the_numbers_follow_a_stroke_before_it_ends(bench: BenchView, qtbot: QtBot) -> None:
    made = canvas(bench)
    bench.hand.take_content(Content.SEALED)
    assert made.view is not None
    QTest.mousePress(made, LEFT, pos=QPointF(*made.view.to_px((150.0, 90.0))).toPoint())
    qtbot.waitUntil(lambda: bench.sides[Face.A]._numbers.accessibleName().startswith("about"))
    QTest.keyClick(made, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: bench.sides[Face.A]._numbers.accessibleName() == "")


def test_the_last_visit_shines_through_when_it_is_asked(bench: BenchView, qtbot: QtBot) -> None:
    assert not canvas(bench)._rings
    with qtbot.waitSignal(bench.shine_changed) as told:
        bench.set_shine_through(on=True)
    assert told.args == [True]
    assert canvas(bench)._rings
    assert "dashed: as on 8 May" in bench.sides[Face.B]._hint.accessibleName()
    QTest.keyClicks(canvas(bench), "y")
    assert not canvas(bench)._rings


def test_what_shines_through_bears_the_day_the_comb_was_looked_at(
    bench: BenchView, desk: Desk, keeping: Keeping
) -> None:
    later = desk.do(BeginVisit(keeping.colony, LATER + timedelta(days=7)))
    desk.go(visit_id=later, frame_id=keeping.frame(5))
    bench.set_shine_through(on=True)
    assert "dashed: as on 8 May" in bench.sides[Face.B]._hint.accessibleName()
    desk.go(frame_id=keeping.frame(7))
    assert "not looked at before" in bench.sides[Face.B]._hint.accessibleName()


def test_a_dummy_board_has_nothing_to_paint(bench: BenchView, desk: Desk, keeping: Keeping) -> None:
    desk.do(TakeFrame(keeping.frame(11), LATER))
    box = desk.box()
    assert box is not None
    made = desk.do(AddFrame(box.part.id, 11, LATER, make=FrameMake.DUMMY))
    desk.go(frame_id=made)
    assert bench._nothing.text() == "Place 11: dummy board."
    assert not bench._row.isVisibleTo(bench)
    desk.go(frame_id=keeping.frame(5))
    assert bench._row.isVisibleTo(bench)


def test_on_a_narrow_bench_the_second_side_folds(bench: BenchView, desk: Desk, qtbot: QtBot) -> None:
    bench.resize(FOLD_WIDTH - 100, 340)
    assert not bench.sides[Face.B].isVisible()
    assert bench._other.isVisible()
    QTest.mouseClick(bench._other, LEFT)
    assert desk.spot.face is Face.B
    assert bench.sides[Face.B].isVisible()
    assert not bench.sides[Face.A].isVisible()
    bench.resize(1090, 340)
    qtbot.waitUntil(lambda: bench.sides[Face.A].isVisible() and bench.sides[Face.B].isVisible())


def test_turning_to_a_side_leads_from_the_box_to_the_bench(bench: BenchView, desk: Desk) -> None:
    desk.go(view=View.BOX)
    canvas(bench, Face.B).setFocus()
    canvas(bench, Face.B).entered.emit()
    assert (desk.spot.view, desk.spot.face) == (View.BENCH, Face.B)


def test_a_change_elsewhere_is_followed(bench: BenchView, desk: Desk) -> None:
    type_comb(desk, "H8")
    assert canvas(bench).side.counts[Content.STORES] > 2000
    type_comb(desk, "")
    assert canvas(bench).side.counts[Content.STORES] == 0
    assert canvas(bench).side.is_bare


def test_marks_are_shown_on_their_side(bench: BenchView, desk: Desk) -> None:
    bench.add_mark(Face.B, 900, MarkKind.NOTE, text="chalk")
    assert [mark.text for mark in canvas(bench, Face.B).marks] == ["chalk"]
    canvas(bench, Face.B).mark_moved.emit(marks(desk)[0], 950)
    assert [mark.cell for mark in marks(desk)] == [950]


def _tip_is(words: str) -> bool:
    return QToolTip.text() == words


def test_a_mark_pointed_at_says_what_it_is_and_what_became_of_it(
    bench: BenchView, desk: Desk, qtbot: QtBot
) -> None:
    bench.add_mark(Face.A, 900, MarkKind.NOTE, text="chalk brood")
    bench.add_mark(Face.A, 400, MarkKind.QUEEN_CELL, CellKind.CHARGED)
    cell = next(mark for mark in marks(desk) if mark.cell == 400)
    desk.do(ChangeMark(replace(cell, fate=CellFate.KNOCKED_DOWN)))
    held = canvas(bench)
    for number, words in ((900, "note: chalk brood"), (400, "charged queen cell, knocked down"), (10, "")):
        at = held.place_of(number).toPoint()
        QApplication.sendEvent(held, QHelpEvent(QEvent.Type.ToolTip, at, held.mapToGlobal(at)))
        qtbot.waitUntil(partial(_tip_is, words))
    held.cursor_cell.put(400)
    assert held.accessibleDescription().endswith("charged queen cell, knocked down")


def test_it_goes_dark(bench: BenchView, desk: Desk) -> None:
    light = bench.grab().toImage()
    desk.set_palette(DARK)
    assert bench.grab().toImage() != light


def test_a_right_click_opens_the_menu_of_the_cell(bench: BenchView, qtbot: QtBot) -> None:
    canvas(bench).menu_asked.emit(500, None, bench.mapToGlobal(bench.rect().center()))
    qtbot.waitUntil(lambda: any(menu.isVisible() for menu in bench.findChildren(QMenu)))
    for menu in bench.findChildren(QMenu):
        menu.close()


# --- an empty hand --------------------------------------------------------------------------------


def test_an_empty_hand_paints_nothing_and_says_so(bench: BenchView, desk: Desk, keeping: Keeping) -> None:
    """Neither a click, nor a drag, nor Space, nor Shift with the arrows colours a cell."""
    told: list[str] = []
    desk.told.connect(told.append)
    before, label = keeping.everything(), desk.book.undo_label
    drag(bench, Face.A, (150.0, 90.0), (170.0, 90.0))
    made = canvas(bench)
    for modifier in (Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier):
        QTest.keyClick(made, Qt.Key.Key_Right, modifier)
    QTest.keyClick(made, Qt.Key.Key_Space)
    bench.take_letter("J")
    assert keeping.everything() == before
    assert desk.book.undo_label == label
    assert made.cursor_cell.cell is not None
    assert bench.sides[Face.A]._hint.accessibleName() == "hand empty: choose a content to paint"
    assert len(told) == 3
    assert told[0].startswith("The hand is empty")


def test_a_click_of_an_empty_hand_puts_the_cell_cursor_there(bench: BenchView) -> None:
    made = canvas(bench)
    at = QPointF(*(made.view.to_px((150.0, 90.0)) if made.view else (0, 0))).toPoint()
    QTest.mouseClick(made, LEFT, pos=at)
    assert made.cursor_cell.cell == made.cell_at(QPointF(at))
    bench.take_letter("Q")
    assert [mark.cell for mark in bench.desk.book.read.marks(VisitId(3))] == [made.cursor_cell.cell]


def test_a_letter_or_a_tool_fills_the_hand_and_esc_empties_it(bench: BenchView, desk: Desk) -> None:
    made = canvas(bench)
    QTest.keyClick(made, Qt.Key.Key_E)
    drag(bench, Face.A, (150.0, 90.0), (152.0, 90.0))
    label = desk.book.undo_label
    assert label == "paint eggs on 5A"
    QTest.keyClick(made, Qt.Key.Key_Escape)
    assert bench.hand.is_empty
    drag(bench, Face.A, (50.0, 90.0), (52.0, 90.0))
    assert desk.book.undo_label == label
    QTest.keyClick(made, Qt.Key.Key_V)
    assert not bench.hand.is_empty
    assert bench.hand.words == "painting eggs, brush 24 mm"


def test_esc_lets_the_stroke_go_before_it_empties_the_hand(bench: BenchView) -> None:
    made = canvas(bench)
    QTest.keyClick(made, Qt.Key.Key_E)
    assert made.view is not None
    QTest.mousePress(made, LEFT, pos=QPointF(*made.view.to_px((150.0, 90.0))).toPoint())
    QTest.keyClick(made, Qt.Key.Key_Escape)
    assert not bench.hand.is_empty
    QTest.mouseRelease(made, LEFT)
    QTest.keyClick(made, Qt.Key.Key_Escape)
    assert bench.hand.is_empty


def test_combs_of_a_page_are_painted_in_one_go_and_another_page_empties_the_hand(
    bench: BenchView, desk: Desk, keeping: Keeping
) -> None:
    bench.choose_content(Content.EGGS)
    desk.step_comb(1)
    assert not bench.hand.is_empty
    bench.hand.resize(1)
    desk.go(view=View.BOX)
    assert not bench.hand.is_empty
    desk.leaf(-1)
    assert bench.hand.is_empty
    bench.choose_content(Content.EGGS)
    desk.go(colony_id=keeping.another())
    assert bench.hand.is_empty


def test_beginning_the_days_visit_by_a_stroke_keeps_the_hand(bench: BenchView, desk: Desk) -> None:
    desk.go(day=LATER - timedelta(days=2))
    bench.choose_content(Content.EGGS)
    drag(bench, Face.A, (150.0, 90.0), (152.0, 90.0))
    assert desk.spot.visit_id is not None
    assert not bench.hand.is_empty


def test_undoing_the_first_stroke_of_a_day_takes_its_visit_along(bench: BenchView, desk: Desk) -> None:
    visits = desk.visits()
    desk.go(day=LATER - timedelta(days=2))
    paint(bench, Face.A, (150.0, 90.0), (152.0, 90.0))
    assert len(desk.visits()) == len(visits) + 1
    desk.undo()
    assert desk.visits() == visits
    assert (desk.spot.day, desk.spot.visit_id) == (LATER - timedelta(days=2), None)
    desk.redo()
    assert noted(desk) is not None


def test_a_dialog_over_the_window_empties_the_hand(bench: BenchView, qtbot: QtBot) -> None:
    bench.choose_content(Content.EGGS)
    with qtbot.waitActive(bench):
        bench.activateWindow()
    dialog = QDialog(bench)
    dialog.setModal(True)
    with qtbot.waitActive(dialog):
        dialog.show()
    assert bench.hand.is_empty
    dialog.close()


def test_what_the_menu_changes_needs_something_in_the_hand(bench: BenchView, desk: Desk) -> None:
    type_comb(desk, "H8")
    for content, offered in ((None, 0), (Content.NECTAR, 1)):
        if content is not None:
            bench.choose_content(content)
        menu = QMenu()
        fill_mark_menu(menu, bench, Face.A, 100, None)
        assert sum(action.text().startswith("Change all") for action in menu.actions()) == offered


@pytest.mark.parametrize("width", [1090, 1091])
def test_both_sides_are_as_wide_to_the_pixel(bench: BenchView, width: int) -> None:
    bench.resize(width, 340)
    bench.show()
    QApplication.processEvents()
    assert bench.sides[Face.A].canvas.width() == bench.sides[Face.B].canvas.width()
