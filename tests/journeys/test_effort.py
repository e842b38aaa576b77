"""The effort a round takes, in the whole window, counted as keys and clicks.

The counts are those of the design: a line at most 26, a box of eleven by comb at most 70, every side on
its own with bees at most 170, the same box a week later with four combs changed at most 60. A round of
six is their sum: six lines, three boxes by comb, one comb painted.
"""

from datetime import timedelta
from functools import partial
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Question, Side
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.qt.desk import View
from beeworkbook.qt.memory import Memory
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.rounds.walk import Spot
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.window.shell import Shell
from beeworkbook.workbook.workbook import Workbook
from tests.journeys.conftest import Fingers
from tests.rounds.orchard import DAY, make_orchard
from tests.window.conftest import Answerer, hand

pytestmark = pytest.mark.journey

NAMES = ("Pear Tree", "Gate", "Wall", "Elder", "Nuc 2", "Brook")
LINE = "yyy7/4.2\ty8\t8\tnyqy\n"
BOX = ("h", "h6p2", "o2s4h2", "e1o2s4h1", "e2o2s4", "e1o2s4h1", "o2s4h2", "h6p2", "h", "f", "f")
BROOD = "e1o2s4h1w6/e1o2s5w6"
SIDES = (
    *("hw1/hw2", "h6p2w3/h6p2w4", BROOD, BROOD, BROOD, BROOD, BROOD),
    *("h6p2w4/h6p2w3", "hw2/hw1", "f/f", "f/f"),
)
LATER = ("=", "=", "e1o2s4h1", "e2o2s4", "e1o2s4h1", "o2s4h2", "=", "=", "=", "=", "=")
CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


class Afternoon:
    """The window on a round of six on a day."""

    def __init__(self, shell: Shell, memory: Memory, path: Path) -> None:
        self.day = DAY
        self.opener = Opener(shell, memory, lambda: self.day)
        make_orchard(path, names=NAMES).close()
        assert self.opener.begin(path)
        QApplication.processEvents()
        shell.activateWindow()
        hand()

    @property
    def window(self) -> MainWindow:
        assert self.opener.window is not None
        return self.opener.window

    def typed(self) -> dict[tuple[int, Face], str]:
        """What was typed of the box in hand, by place and side."""
        visit_id = self.window.desk.spot.visit_id
        assert visit_id is not None
        return {(s.place, s.face): s.typed for s in self.window.desk.book.read.find(Side, visit_id=visit_id)}

    def into_box(self, fingers: Fingers) -> None:
        """A depth down, to the first comb."""
        while self.window.desk.spot.view is not View.BOX:
            fingers.press(Qt.Key.Key_F6)
        box = self.window.desk.box()
        assert box is not None
        assert box.frames[0].frame is not None
        if self.window.desk.spot.frame_id != box.frames[0].frame.id:
            fingers.press(Qt.Key.Key_Home)
        assert self.window.desk.spot.frame_id == box.frames[0].frame.id

    def enter(self, fingers: Fingers, combs: tuple[str, ...]) -> None:
        """Type a whole box, Enter going from comb to comb."""
        for text in combs:
            fingers.type(f"{text}\n")


def _grew(book: Workbook, steps: int) -> bool:
    return len(book._history) > steps


@pytest.fixture
def afternoon(shell: Shell, memory: Memory, tmp_path: Path) -> Afternoon:
    return Afternoon(shell, memory, tmp_path / "orchard.beebook")


def test_each_way_to_enter_a_box_keeps_its_promise(afternoon: Afternoon) -> None:
    desk = afternoon.window.desk
    counts = {}
    for name, combs in (("by comb", BOX), ("every side", SIDES)):
        fingers = Fingers()
        afternoon.into_box(fingers)
        afternoon.enter(fingers, combs)
        counts[name] = fingers.count
        typed = afternoon.typed()
        assert len(typed) == 22
        assert all(typed.values())
        afternoon.window.go_to(View.ROUND)
        desk.go(colony_id=afternoon.window.stands.cards()[1].colony_id)
    assert counts["by comb"] <= 70
    assert counts["every side"] <= 170


def test_a_week_later_four_combs_changed(afternoon: Afternoon) -> None:
    desk = afternoon.window.desk
    afternoon.into_box(Fingers())
    afternoon.enter(Fingers(), BOX)
    before = desk.spot.visit_id
    afternoon.day = DAY + timedelta(days=7)
    desk.go(view=View.ROUND, day=afternoon.day, visit_id=None)
    fingers = Fingers()
    afternoon.into_box(fingers)
    afternoon.enter(fingers, LATER)
    assert fingers.count <= 60
    assert desk.spot.visit_id not in {None, before}
    origins = {side.place: side.origin for side in desk.book.read.sides(desk.spot.visit_id)}
    assert len(origins) == 11
    unchanged = {place for place, origin in origins.items() if origin is Origin.UNCHANGED}
    assert unchanged == {1, 2, 7, 8, 9, 10, 11}


def test_a_round_of_six(afternoon: Afternoon, fingers: Fingers, answer: Answerer, qtbot: QtBot) -> None:
    window = afternoon.window
    desk = window.desk
    answer(lambda _form: fingers.press(Qt.Key.Key_Return))
    fingers.press(Qt.Key.Key_R, CTRL)
    view = window.face(View.ROUND)
    assert isinstance(view, RoundView)
    view.sheet.go(Spot(view.rows[0].colony.id, Question.OPENED))

    lines = Fingers()
    for _ in NAMES:
        lines.type(LINE)
    assert lines.count <= 6 * 26
    assert all(row.now.visit is not None for row in view.rows)

    boxes = Fingers()
    for row in view.rows[:3]:
        view.sheet.go(Spot(row.colony.id, Question.OPENED))
        afternoon.into_box(boxes)
        afternoon.enter(boxes, BOX)
        assert len(afternoon.typed()) == 22
        boxes.press(Qt.Key.Key_Escape)
        boxes.press(Qt.Key.Key_F6, SHIFT)
        assert desk.spot.view is View.ROUND
    assert boxes.count <= 3 * (70 + 3), "a box, and a key down to it and up again"

    painting = Fingers()
    view.sheet.go(Spot(view.rows[3].colony.id, Question.OPENED))
    painting.press(Qt.Key.Key_F6)
    painting.press(Qt.Key.Key_F6)
    canvas = window.bench.sides[Face.A].canvas
    middle = canvas.rect().center()
    for letter, high in (("h", -60), ("s", 0), ("e", 40)):
        painting.type(letter)
        steps = len(desk.book._history)
        painting.draw(canvas, [middle + QPoint(step, high) for step in range(-120, 121, 20)])
        qtbot.waitUntil(partial(_grew, desk.book, steps))
    assert painting.count <= 12
    assert lines.count + boxes.count + painting.count + fingers.count <= 390
    assert desk.spot.day == DAY
