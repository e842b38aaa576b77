from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.bench.bench_view import BenchView
from beeworkbook.bench.box_view import BoxView
from beeworkbook.bench.key_line import KeyLine
from beeworkbook.comb.contents import Face, MarkKind, Origin
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginRound
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import LATER, Keeping


class Walk(QWidget):
    """Box and key line as the window puts them together."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self.box, self.line = BoxView(desk), KeyLine(desk)
        column = QVBoxLayout(self)
        column.addWidget(self.box)
        column.addWidget(self.line)
        self.box.typing_started.connect(self.line.begin)
        self.line.left.connect(self.box.take_focus)


@pytest.fixture
def walk(desk: Desk, qtbot: QtBot) -> Walk:
    made = Walk(desk)
    qtbot.addWidget(made)
    made.resize(1090, 260)
    made.show()
    qtbot.waitExposed(made)
    made.box.take_focus()
    return made


class Fingers:
    """Types where the keyboard is, and counts the keys."""

    def __init__(self, walk: Walk) -> None:
        self.walk = walk
        self.keys = 0

    def type(self, text: str) -> None:
        for sign in text:
            QTest.keyClicks(self._focus(), sign)
            self.keys += 1

    def enter(self) -> None:
        QTest.keyClick(self._focus(), Qt.Key.Key_Return)
        self.keys += 1

    def _focus(self) -> QWidget:
        return self.walk.line.field if self.walk.line.field.hasFocus() else self.walk.box.row


def texts(desk: Desk, walk: Walk) -> list[str]:
    assert desk.spot.visit_id is not None
    return [comb.typed for comb in walk.box.row.combs]


def test_a_letter_begins_to_type_and_enter_goes_on(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    fingers = Fingers(walk)
    fingers.type("e1o2s4h1")
    assert walk.line.field.text() == "E1o2s4h1"
    assert (
        walk.line._reading.accessibleName()
        == "eggs 1, open 2, sealed 4, stores 1: 8 of 8 eighths of each side"
    )
    fingers.enter()
    assert desk.spot.frame_id == keeping.frame(2)
    assert walk.line.field.hasFocus()
    assert texts(desk, walk)[0] == "E1O2S4H1"
    assert desk.book.undo_label == "type comb 1"


def test_a_box_of_eleven_by_comb_takes_at_most_seventy_keys(walk: Walk, desk: Desk) -> None:
    """Two stores, two stores and pollen, five brood of three or four contents, two foundation."""
    combs = ("h", "h6p2", "o2s4h2", "e1o2s4h1", "e2o2s4", "e1o2s4h1", "o2s4h2", "h6p2", "h", "f", "f")
    fingers = Fingers(walk)
    for text in combs:
        fingers.type(text)
        fingers.enter()
    assert fingers.keys <= 70
    assert texts(desk, walk) == [text.upper() for text in combs]


def test_every_side_on_its_own_with_bees_takes_at_most_170_keys(walk: Walk, desk: Desk) -> None:
    brood = "e1o2s4h1w6/e1o2s5w6"
    combs = (
        "hw1/hw2",
        "h6p2w3/h6p2w4",
        brood,
        brood,
        brood,
        brood,
        brood,
        "h6p2w4/h6p2w3",
        "hw2/hw1",
        "f/f",
        "f/f",
    )
    fingers = Fingers(walk)
    for text in combs:
        fingers.type(text)
        fingers.enter()
    assert fingers.keys <= 170
    assert "" not in texts(desk, walk)


def test_a_week_later_four_changed_takes_at_most_sixty(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    for place in range(6, 12):
        desk.do(_typed(keeping, place, "F"))
    fingers = Fingers(walk)
    for text in ("=", "=", "e1o2s4h1", "e2o2s4", "e1o2s4h1", "o2s4h2", "=", "=", "=", "=", "="):
        fingers.type(text)
        fingers.enter()
    assert fingers.keys <= 60
    assert texts(desk, walk)[0] == "="
    assert walk.box.row.combs[0].sides[Face.A].look is Origin.EIGHTHS


def _typed(keeping: Keeping, place: int, text: str) -> LayOutComb:
    return LayOutComb(keeping.visit, keeping.frame(place), text)


def test_what_cannot_be_read_stays_with_its_reason_and_nothing_else_is_lost(
    walk: Walk, desk: Desk, keeping: Keeping
) -> None:
    fingers = Fingers(walk)
    fingers.type("s4")
    fingers.enter()
    fingers.type("e1h9")
    assert "eight" in walk.line._reading.accessibleName()
    assert walk.line.field._wrong == 2
    fingers.enter()
    assert desk.spot.frame_id == keeping.frame(2)
    assert walk.line.field.text() == "e1h9"
    assert walk.line.field.cursorPosition() == len("e1h9")
    QTest.keyClick(walk.line.field, Qt.Key.Key_Backspace)
    assert walk.line.field.text() == "e1h"
    assert texts(desk, walk)[:2] == ["S4", ""]
    assert not walk.line.grab().isNull()


def test_what_could_not_be_read_stands_there_again_until_it_is_mended_or_given_up(
    walk: Walk, desk: Desk, keeping: Keeping
) -> None:
    first = desk.spot.frame_id
    fingers = Fingers(walk)
    fingers.type("s9")
    desk.go(frame_id=keeping.frame(4))
    assert list(walk.line.untaken.values()) == ["S9"]
    assert walk.line.field.text() != "S9"
    desk.go(frame_id=first)
    assert walk.line.field.text() == "S9"
    assert "eight" in walk.line._reading.accessibleName()
    walk.line.field.setFocus()
    walk.line.field.clear()
    fingers.type("s4h4")
    fingers.enter()
    assert not walk.line.untaken
    desk.go(frame_id=first)
    assert walk.line.field.text().upper() == "S4H4"
    walk.line.field.setFocus()
    walk.line.field.clear()
    fingers.type("zz")
    assert not walk.line.finish()
    walk.line.refresh()
    QTest.keyClick(walk.line.field, Qt.Key.Key_Escape)
    assert not walk.line.untaken
    assert walk.line.field.text().upper() == "S4H4"


def test_undo_in_the_field_is_the_fields_own(walk: Walk, desk: Desk) -> None:
    before = desk.book.undo_label
    fingers = Fingers(walk)
    fingers.type("e1")
    QTest.keyClick(walk.line.field, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert walk.line.field.text() != "E1"
    assert desk.book.undo_label == before


def test_escape_gives_up_and_goes_back(walk: Walk, desk: Desk, qtbot: QtBot) -> None:
    fingers = Fingers(walk)
    fingers.type("e1")
    with qtbot.waitSignal(walk.line.left):
        QTest.keyClick(walk.line.field, Qt.Key.Key_Escape)
    assert walk.line.field.text() == ""
    assert texts(desk, walk)[0] == ""
    assert walk.box.row.hasFocus()


def test_going_elsewhere_keeps_what_was_typed(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    Fingers(walk).type("s4")
    desk.go(frame_id=keeping.frame(7))
    assert texts(desk, walk)[0] == "S4"
    walk.line.begin("h2")
    walk.box.take_focus()
    assert texts(desk, walk)[6] == "H2"
    walk.line.begin("h3")
    assert walk.line.finish()
    assert texts(desk, walk)[6] == "H3"


def test_up_and_down_go_from_comb_to_comb(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    Fingers(walk).type("s4")
    QTest.keyClick(walk.line.field, Qt.Key.Key_Down)
    assert desk.spot.frame_id == keeping.frame(2)
    QTest.keyClick(walk.line.field, Qt.Key.Key_Up)
    assert walk.line.field.text() == "S4"
    assert walk.line.field.selectedText() == "S4"


def test_the_last_comb_gives_the_keyboard_back(
    walk: Walk, desk: Desk, keeping: Keeping, qtbot: QtBot
) -> None:
    desk.go(frame_id=keeping.frame(11))
    fingers = Fingers(walk)
    fingers.type("f")
    with qtbot.waitSignal(walk.line.left):
        fingers.enter()
    assert texts(desk, walk)[10] == "F"


def test_after_the_last_comb_nothing_is_typed_over_in_silence(
    walk: Walk, desk: Desk, keeping: Keeping
) -> None:
    told: list[str] = []
    desk.told.connect(told.append)
    desk.go(frame_id=keeping.frame(11))
    fingers = Fingers(walk)
    fingers.type("h8")
    fingers.enter()
    assert told == ["That was the last comb."]  # no round was held on this day
    fingers.type("s")
    assert walk.box.row.hasFocus()
    assert texts(desk, walk)[10] == "H"
    assert "noted already" in told[-1]
    fingers.type("s")
    assert walk.line.field.text() == "S"
    fingers.enter()
    assert texts(desk, walk)[10] == "S"
    desk.go(frame_id=keeping.frame(10))
    desk.go(frame_id=keeping.frame(11))
    fingers.type("f")
    assert walk.line.field.text() == "F"


def test_enter_after_the_last_comb_leads_back_to_the_line(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    told: list[str] = []
    desk.told.connect(told.append)
    assert desk.spot.apiary_id is not None
    desk.do(BeginRound(desk.spot.apiary_id, LATER))
    desk.go(frame_id=keeping.frame(11))
    fingers = Fingers(walk)
    fingers.type("h8")
    fingers.enter()
    assert told == ["That was the last comb. Enter again goes back to the line."]
    seen = [desk.spot.view]
    fingers.enter()
    assert [*seen, desk.spot.view] == [View.BOX, View.ROUND]


def test_last_time_stands_beside_it(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    desk.go(frame_id=keeping.frame(5))
    assert walk.line._last.accessibleName() == "last time E1 O2 S3 P1 H1"
    desk.go(frame_id=keeping.frame(10))
    assert "foundation" in walk.line._last.accessibleName() or "F" in walk.line._last.accessibleName()


def test_typing_on_a_day_without_a_visit_begins_one(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    desk.go(day=LATER - timedelta(days=2), frame_id=keeping.frame(3))
    assert desk.spot.visit_id is None
    fingers = Fingers(walk)
    walk.box.take_focus()
    fingers.type("s4")
    fingers.enter()
    assert desk.spot.visit_id is not None
    assert texts(desk, walk)[2] == "S4"
    assert desk.spot.frame_id == keeping.frame(4)


def test_what_the_book_refuses_is_said_beside_the_field(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    desk.go(frame_id=keeping.frame(7))
    fingers = Fingers(walk)
    fingers.type("=")
    fingers.enter()
    assert desk.spot.frame_id == keeping.frame(7)
    assert "not noted before" in walk.line._reading.accessibleName()
    assert walk.line.field._wrong == 0


def test_each_comb_typed_is_a_step_of_its_own(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    for text in ("s4", "h2"):
        desk.go(frame_id=keeping.frame(7))
        walk.line.begin(text)
        walk.line.finish()
    desk.undo()
    assert texts(desk, walk)[6] == "S4"


def test_marks_are_typed_too(walk: Walk, desk: Desk) -> None:
    fingers = Fingers(walk)
    fingers.type("s4qkc")
    fingers.enter()
    assert desk.spot.visit_id is not None
    kinds = [mark.kind for mark in desk.book.read.marks(desk.spot.visit_id)]
    assert kinds == [MarkKind.QUEEN, MarkKind.QUEEN_CELL]


def test_a_painted_comb_is_read_back_behind_the_empty_field(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    keeping.paint(1, Face.A, count=1300, visit=desk.spot.visit_id)
    assert walk.line.field.text() == ""
    assert walk.line.field.placeholderText().startswith("E4")


def test_digits_on_the_bench_begin_to_type(desk: Desk, qtbot: QtBot) -> None:
    bench, line = BenchView(desk), KeyLine(desk)
    for made in (bench, line):
        qtbot.addWidget(made)
    bench.typing_started.connect(line.begin)
    bench.take_letter("H")
    bench.take_letter("3")
    assert line.field.text() == "H3"


def test_it_goes_dark(walk: Walk, desk: Desk) -> None:
    light = walk.grab().toImage()
    desk.set_palette(DARK)
    assert walk.grab().toImage() != light


def test_a_comb_typed_where_the_keyboard_was_not_known_to_be_is_kept_all_the_same(
    walk: Walk, desk: Desk, keeping: Keeping, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Some desktops hand keys to a window they never told that it is the active one."""
    monkeypatch.setattr(walk.line.field, "hasFocus", lambda: False)
    desk.go(day=LATER - timedelta(days=2), frame_id=keeping.frame(3))
    QTest.keyClicks(walk.line.field, "h8")
    QTest.keyClick(walk.line.field, Qt.Key.Key_Return)
    assert desk.spot.visit_id is not None
    assert texts(desk, walk)[2] == "H"


def test_what_was_typed_on_an_empty_day_stays_with_its_day(walk: Walk, desk: Desk, keeping: Keeping) -> None:
    empty, other = LATER - timedelta(days=2), LATER - timedelta(days=3)
    desk.go(day=empty, frame_id=keeping.frame(3))
    Fingers(walk).type("h8")
    desk.go(day=other)
    begun = [visit for visit in desk.book.read.visits(keeping.colony) if visit.day in {empty, other}]
    assert [visit.day for visit in begun] == [empty]
    assert {side.frame_id for side in desk.book.read.sides(begun[0].id)} == {keeping.frame(3)}


def test_a_comb_typed_on_an_empty_day_is_one_step_with_its_visit(
    walk: Walk, desk: Desk, keeping: Keeping
) -> None:
    before = desk.book.read.visits(keeping.colony)
    desk.go(day=LATER - timedelta(days=2), frame_id=keeping.frame(3))
    fingers = Fingers(walk)
    fingers.type("h8")
    fingers.enter()
    desk.undo()
    assert desk.book.read.visits(keeping.colony) == before
    assert (desk.spot.day, desk.spot.visit_id) == (LATER - timedelta(days=2), None)
    desk.redo()
    assert desk.spot.visit_id is not None
    assert texts(desk, walk)[2] == "H"


def test_where_nothing_can_be_written_it_is_said_beside_the_field_and_the_text_stays(
    walk: Walk, desk: Desk, keeping: Keeping, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_edit: object, **_named: object) -> None:
        raise RefusedError("The disk is full.")

    desk.go(day=LATER - timedelta(days=2), frame_id=keeping.frame(3))
    monkeypatch.setattr(desk.book, "do", refuse)
    fingers = Fingers(walk)
    fingers.type("h8")
    fingers.enter()
    assert walk.line.field.text() == "H8"
    assert walk.line._reading.accessibleName() == "The disk is full."
    assert desk.spot.frame_id == keeping.frame(3)
    monkeypatch.undo()
    fingers.enter()
    assert texts(desk, walk)[2] == "H"
