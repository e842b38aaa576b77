"""The hive from stand to roof: parts chosen, moved, taken and put on by keys and by dragging."""

from datetime import date

import pytest
from PySide6.QtCore import QEvent, QMimeData, QPoint, QPointF, Qt
from PySide6.QtGui import QDrag, QDragEnterEvent, QDragMoveEvent, QDropEvent, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from beeworkbook.colony.records import PartKind, PartStay
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.form import Form
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.stack_view import KIND_MIME, PART_MIME, StackView, part_words
from beeworkbook.workbook.edits.hive import AddPart
from tests.rounds.orchard import DAY
from tests.window.conftest import CTRL, Answerer, hand, press, write

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture
def stack(window: MainWindow) -> StackView:
    window.go_to(View.STACK)
    face = window.face(View.STACK)
    assert isinstance(face, StackView)
    QApplication.processEvents()
    return face


def kinds(stack: StackView) -> list[PartKind]:
    hive = stack._desk.hive_day()
    assert hive is not None
    return [part.part.kind for part in hive.stack]


PLAIN = [PartKind.STAND, PartKind.FLOOR, PartKind.BROOD_BOX, PartKind.CROWN_BOARD, PartKind.ROOF]


def test_the_parts_stand_from_the_ground_up_and_the_box_is_chosen(stack: StackView) -> None:
    assert kinds(stack) == PLAIN
    rects = stack.picture.rects()
    assert [rect.top() for rect in rects] == sorted((rect.top() for rect in rects), reverse=True)
    assert stack.picture.chosen is not None
    assert stack.picture.chosen.part.kind is PartKind.BROOD_BOX
    assert stack.picture.accessibleName() == "Stack: brood box: 11 of 11 places"
    assert hand() is stack.picture


def test_up_and_down_choose_and_stop_at_the_ends(stack: StackView) -> None:
    press(Qt.Key.Key_Up, times=9)
    assert stack.picture.chosen is not None
    assert part_words(stack.picture.chosen) == "roof"
    press(Qt.Key.Key_Down, times=9)
    assert part_words(stack.picture.chosen) == "stand"


def test_a_super_is_put_on_by_its_button_in_its_usual_place(stack: StackView, answer: Answerer) -> None:
    button = stack.kind_buttons[PartKind.SUPER]
    button.setFocus()

    def fill(form: object) -> None:
        assert isinstance(form, Form)
        write("12 5")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_Space)
    assert kinds(stack) == [*PLAIN[:3], PartKind.SUPER, *PLAIN[3:]]
    assert stack.picture.chosen is not None
    assert stack.picture.chosen.part.kind is PartKind.SUPER
    assert stack.picture.chosen.stay.since == date(2026, 5, 12)
    assert part_words(stack.picture.chosen) == "super: 11 of 11 places"
    stack._desk.undo()
    assert kinds(stack) == PLAIN


def test_ctrl_and_arrows_move_a_part_and_delete_takes_it_off(stack: StackView) -> None:
    desk = stack._desk
    hive = desk.hive_day()
    assert hive is not None
    desk.do(AddPart(hive.hive.id, PartKind.EXCLUDER, DAY))
    desk.do(AddPart(hive.hive.id, PartKind.SUPER, DAY, frame_type="bs_shallow", places=10))
    assert kinds(stack)[2:5] == [PartKind.BROOD_BOX, PartKind.EXCLUDER, PartKind.SUPER]
    stack.take_focus()
    press(Qt.Key.Key_Up)
    press(Qt.Key.Key_Up, CTRL)
    assert kinds(stack)[2:5] == [PartKind.BROOD_BOX, PartKind.SUPER, PartKind.EXCLUDER]
    assert stack.picture.chosen is not None
    assert stack.picture.chosen.part.kind is PartKind.EXCLUDER
    press(Qt.Key.Key_Delete)
    assert PartKind.EXCLUDER not in kinds(stack)
    desk.undo()
    assert kinds(stack)[4] is PartKind.EXCLUDER


def test_enter_and_a_double_click_open_the_box(stack: StackView, window: MainWindow) -> None:
    press(Qt.Key.Key_Return)
    assert window.desk.spot.view is View.BOX
    window.go_to(View.STACK)
    centre = stack.picture.rects()[2].center().toPoint()
    QTest.mouseClick(stack.picture, LEFT, pos=centre)
    QTest.mouseDClick(stack.picture, LEFT, pos=centre)
    assert window.desk.spot.view is View.BOX


def test_a_click_chooses_the_part_under_it(stack: StackView) -> None:
    for level, rect in enumerate(stack.picture.rects()):
        QTest.mouseClick(stack.picture, LEFT, pos=rect.center().toPoint())
        assert stack.picture._at == level


class Drags:
    """What a drag carries is caught where the system would take over, and dropped where a test says."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, stack: StackView) -> None:
        self._stack = stack
        self.carried: list[QMimeData] = []
        self.target = QPointF()
        monkeypatch.setattr(QDrag, "exec", lambda drag, *_actions: self._take(drag))

    def _take(self, drag: QDrag) -> Qt.DropAction:
        content = QMimeData()
        for form in drag.mimeData().formats():
            content.setData(form, drag.mimeData().data(form))
        self.carried.append(content)
        picture, action = self._stack.picture, Qt.DropAction.MoveAction
        none = Qt.KeyboardModifier.NoModifier
        at = self.target.toPoint()
        QApplication.sendEvent(picture, QDragEnterEvent(at, action, content, LEFT, none))
        QApplication.sendEvent(picture, QDragMoveEvent(at, action, content, LEFT, none))
        assert picture._gap is not None
        picture.grab()
        QApplication.sendEvent(picture, QDropEvent(self.target, action, content, LEFT, none))
        return action


@pytest.fixture
def drags(monkeypatch: pytest.MonkeyPatch, stack: StackView) -> Drags:
    return Drags(monkeypatch, stack)


def drag(widget: QWidget, start: QPoint) -> None:
    """Press, pull a little way, as a hand does; the rest is the drag's."""
    QTest.mousePress(widget, LEFT, pos=start)
    QTest.mouseMove(widget, start + QPoint(3, 3))
    for far in (12, 24):
        place = QPointF(start + QPoint(far, far))
        event = QMouseEvent(QEvent.Type.MouseMove, place, place, LEFT, LEFT, Qt.KeyboardModifier.NoModifier)
        QApplication.sendEvent(widget, event)
    QTest.mouseRelease(widget, LEFT, pos=start + QPoint(24, 24))


def test_a_part_is_dragged_to_another_level(stack: StackView, drags: Drags) -> None:
    rects = stack.picture.rects()
    drags.target = QPointF(rects[1].center().x(), rects[1].bottom() - 2)
    drag(stack.picture, rects[3].center().toPoint())
    assert drags.carried[0].hasFormat(PART_MIME)
    assert kinds(stack).index(PartKind.CROWN_BOARD) < kinds(stack).index(PartKind.BROOD_BOX)
    stack._desk.undo()
    assert kinds(stack) == PLAIN


def test_a_part_dragged_far_aside_is_taken_off(stack: StackView, drags: Drags) -> None:
    rects = stack.picture.rects()
    drags.target = QPointF(rects[0].right() + rects[0].width() + 40, rects[3].center().y())
    drag(stack.picture, rects[3].center().toPoint())
    assert PartKind.CROWN_BOARD not in kinds(stack)
    stays = stack._desk.book.read.find(PartStay)
    assert any(stay.until == DAY for stay in stays)


def test_a_button_is_dragged_to_where_its_part_goes(stack: StackView, drags: Drags, answer: Answerer) -> None:
    rects = stack.picture.rects()
    drags.target = QPointF(rects[2].center().x(), rects[2].top() + 1)
    answer(lambda _form: press(Qt.Key.Key_Return))
    button = stack.kind_buttons[PartKind.EXCLUDER]
    drag(button, button.rect().center())
    assert kinds(stack) == PLAIN, "it is asked for its day once the drag is over"
    QApplication.processEvents()
    assert drags.carried[0].hasFormat(KIND_MIME)
    assert kinds(stack) == [*PLAIN[:3], PartKind.EXCLUDER, *PLAIN[3:]]


def test_a_hive_of_an_earlier_day_is_shown_as_it_stood(stack: StackView) -> None:
    desk = stack._desk
    hive = desk.hive_day()
    assert hive is not None
    desk.do(AddPart(hive.hive.id, PartKind.FEEDER, DAY))
    assert PartKind.FEEDER in kinds(stack)
    press(Qt.Key.Key_PageUp)
    assert desk.spot.day < DAY
    assert kinds(stack) == PLAIN
    assert "as it stood on" in stack.lead.text()


def test_a_refused_part_stays_in_its_form(stack: StackView, answer: Answerer) -> None:
    def fill(form: object) -> None:
        assert isinstance(form, Form)
        write("2020-01-01")
        press(Qt.Key.Key_Return)
        assert form.isVisible()
        assert form.wrong.text() == "The hive did not stand here on that day."
        press(Qt.Key.Key_Escape)

    answer(fill)
    stack.kind_buttons[PartKind.FEEDER].click()
    assert kinds(stack) == PLAIN


def test_full_boxes_are_said_to_be_heavy(stack: StackView) -> None:
    assert "heavy" in stack.lead.text()


def test_every_part_has_a_button_that_says_what_it_does(stack: StackView) -> None:
    assert set(stack.kind_buttons) == set(PartKind)
    assert all(button.toolTip() for button in stack.kind_buttons.values())


def test_a_colony_that_stands_nowhere_says_so(stack: StackView, window: MainWindow) -> None:
    window.desk.go(day=date(2020, 1, 1), visit_id=None)
    assert stack.lead.text() == "It stood in no hive on this day."
    assert stack.picture.rects() == []
    press(Qt.Key.Key_Delete, on=stack.picture)
    stack.picture.grab()
