from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from beeworkbook.qt.desk import View
from beeworkbook.qt.motion import Motion
from beeworkbook.window.leaf_slide import SLIDE_MS, LeafSlide
from beeworkbook.window.main_window import MainWindow
from tests.rounds.orchard import DAY, LAST
from tests.window.conftest import press


class Always(Motion):
    """A system that lets everything move."""

    def allowed(self) -> bool:
        return True


class Walk(QWidget):
    def __init__(self) -> None:
        super().__init__()
        self.first, self.last, self.field = QWidget(), QWidget(), QLineEdit()
        column = QVBoxLayout(self)
        for part in (QWidget(), self.first, self.last, self.field):
            column.addWidget(part)
        self.resize(400, 300)


def _slide(qtbot: QtBot) -> tuple[Walk, LeafSlide]:
    walk = Walk()
    qtbot.addWidget(walk)
    with qtbot.waitActive(walk):
        walk.show()
    return walk, LeafSlide(walk, walk.first, walk.last, Always())


def test_the_visit_that_is_left_goes_out_at_the_side_it_belongs_and_is_gone(qtbot: QtBot) -> None:
    assert SLIDE_MS == 120
    walk, slide = _slide(qtbot)
    for step in (1, -1):
        slide.leave(step)
        assert slide.is_running
        assert slide.y() == walk.first.y()
        assert slide.height() == walk.last.geometry().bottom() + 1 - walk.first.y()
        places: list[int] = []
        slide._run.valueChanged.connect(lambda _share, places=places: places.append(slide.x()))
        qtbot.waitUntil(lambda: not slide.is_running)
        assert not slide.isVisible()
        assert all(place * step <= 0 for place in places)
        assert max(abs(place) for place in places) > 300


def test_what_is_typed_meanwhile_arrives_and_ends_it(qtbot: QtBot) -> None:
    walk, slide = _slide(qtbot)
    walk.field.setFocus()
    slide.leave(1)
    QTest.keyClicks(walk.field, "e4")
    assert walk.field.text() == "e4"
    assert not slide.is_running
    slide.leave(1)
    assert slide.testAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
    QTest.mousePress(walk.first, Qt.MouseButton.LeftButton)
    assert not slide.is_running


def test_leafing_again_begins_again_with_what_is_shown_now(qtbot: QtBot) -> None:
    _walk, slide = _slide(qtbot)
    slide.leave(1)
    qtbot.waitUntil(lambda: slide.x() < 0)
    slide.leave(1)
    assert slide.is_running
    assert slide.x() == 0


def test_a_still_system_sees_no_motion(qtbot: QtBot) -> None:
    walk = Walk()
    qtbot.addWidget(walk)
    walk.show()
    slide = LeafSlide(walk, walk.first, walk.last)
    slide.leave(1)
    assert not slide.isVisible()


def test_leafing_in_the_window_shows_the_other_visit_at_once(window: MainWindow) -> None:
    window.go_to(View.BOX)
    window.desk.go(day=LAST)
    slide = window.rooms.walk.findChild(LeafSlide)
    assert isinstance(slide, LeafSlide)
    slide._motion = Always()
    window.desk.go(day=DAY)
    assert not slide.is_running
    press(Qt.Key.Key_PageUp)
    assert window.desk.spot.day == LAST
    assert slide.is_running
    slide.end()
