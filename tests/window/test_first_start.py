"""An empty workbook: two ways to begin, both by keys, and then the book is there."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.arrival import ArrivalForm
from beeworkbook.window.first_start import FirstStart
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY
from tests.window.conftest import Answerer, hand, press, write


def empty(opener: Opener, path: Path) -> tuple[MainWindow, FirstStart]:
    assert opener.create(path, "My bees")
    assert opener.window is not None
    QApplication.processEvents()
    opener.window.shell.activateWindow()
    hand()
    face = opener.window.face(View.FIRST)
    assert isinstance(face, FirstStart)
    assert face.isVisible()
    return opener.window, face


def test_the_first_colony_is_entered_with_its_apiary(
    opener: Opener, tmp_path: Path, answer: Answerer
) -> None:
    window, face = empty(opener, tmp_path / "mine.beebook")
    assert QApplication.focusWidget() is face.first_colony

    def fill(form: object) -> None:
        assert isinstance(form, ArrivalForm)
        write("Reed")
        form.apiary.line.setFocus()
        form.apiary.line.selectAll()
        write("Behind the barn")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_Return)
    assert window.desk.apiary is not None
    assert window.desk.apiary.name == "Behind the barn"
    assert window.desk.colony is not None
    assert window.desk.colony.name == "Reed"
    assert window.desk.spot.view is View.BOX
    assert window.stands.isVisible()
    assert hand() is window.key_line.field


def test_the_sample_is_looked_at_instead(opener: Opener, tmp_path: Path) -> None:
    _window, _face = empty(opener, tmp_path / "mine.beebook")
    press(Qt.Key.Key_Tab)
    press(Qt.Key.Key_Space)
    assert opener.window is not None
    assert opener.window.desk.book.is_sample
    assert opener.window.desk.colony is not None


def test_a_book_open_for_looking_cannot_begin_a_colony(opener: Opener, tmp_path: Path) -> None:
    _window, _face = empty(opener, tmp_path / "mine.beebook")
    opener.put_away()
    opener.furnish(Workbook.open(tmp_path / "mine.beebook", today=DAY, read_only=True))
    assert opener.window is not None
    face = opener.window.face(View.FIRST)
    assert isinstance(face, FirstStart)
    assert not face.first_colony.isEnabled()
    assert face.sample.isEnabled()
