"""Settings of the book are one undo step; those of the window are remembered; own frames come and go."""

import pytest
from PySide6.QtCore import Qt

from beeworkbook.colony.records import OwnFrame
from beeworkbook.qt.memory import Memory
from beeworkbook.qt.palette import DARK
from beeworkbook.window.dialogs.frame_choice import frame_options
from beeworkbook.window.dialogs.settings import SettingsForm, languages
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.place import AddOwnFrame
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY
from tests.window.conftest import CTRL, Answerer, press, write


def test_title_and_hemisphere_are_kept_as_one_step(window: MainWindow, answer: Answerer) -> None:
    def fill(form: object) -> None:
        assert isinstance(form, SettingsForm)
        form.title.line.selectAll()
        write("Southern book")
        form.hemisphere.choose("south")
        form.dark.box.setChecked(True)
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_Comma, CTRL)
    book = window.desk.book
    assert (book.title, book.setting("hemisphere")) == ("Southern book", "south")
    assert window.shell.windowTitle() == "Southern book"
    assert window.desk.palette == DARK
    window.desk.undo()
    assert book.title == "Orchard book"
    assert book.setting("hemisphere", "north") == "north"


def test_leaving_the_settings_changes_nothing(window: MainWindow, answer: Answerer, memory: Memory) -> None:
    before = window.desk.book.undo_label
    answer(lambda _form: press(Qt.Key.Key_Return))
    press(Qt.Key.Key_Comma, CTRL)
    assert window.desk.book.undo_label == before
    assert memory.get("language") is None


def test_a_frame_of_ones_own_is_added_changed_and_taken_out(window: MainWindow, answer: Answerer) -> None:
    def own() -> tuple[OwnFrame, ...]:
        return window.desk.book.read.find(OwnFrame)

    def add(form: object) -> None:
        assert isinstance(form, SettingsForm)
        form.name.line.setFocus()
        write("Grandfather")
        for line, number in ((form.width_mm, "300"), (form.height_mm, "250,5")):
            line.line.setFocus()
            write(number)
        press(Qt.Key.Key_Return)

    answer(add)
    press(Qt.Key.Key_Comma, CTRL)
    frame = own()[0]
    assert (frame.name, frame.inside_width_mm, frame.inside_height_mm) == ("Grandfather", 300.0, 250.5)
    assert "Grandfather" in window.told_line.sentence
    assert frame_options(window.desk.book)[0] == ("Grandfather, 300 × 251 mm inside", frame.id)

    def change(form: object) -> None:
        assert isinstance(form, SettingsForm)
        form.frame.choose(frame)
        assert form.width_mm.text == "300"
        form.name.line.setText("Old Grandfather")
        press(Qt.Key.Key_Return)

    answer(change)
    press(Qt.Key.Key_Comma, CTRL)
    assert own()[0].name == "Old Grandfather"

    def remove(form: object) -> None:
        assert isinstance(form, SettingsForm)
        form.frame.choose(own()[0])
        form.gone.box.setChecked(True)
        press(Qt.Key.Key_Return)

    answer(remove)
    press(Qt.Key.Key_Comma, CTRL)
    assert own() == ()
    window.desk.undo()
    assert len(own()) == 1


def test_a_frame_that_a_box_takes_stays(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    frame_id = str(desk.do(AddOwnFrame("Grandfather", 300, 250)))
    hive = desk.hive_day()
    assert hive is not None
    from beeworkbook.colony.records import PartKind

    desk.do(AddPart(hive.hive.id, PartKind.SUPER, DAY, frame_type=frame_id, places=10))
    frame = desk.book.read.find(OwnFrame)[0]

    def remove(form: object) -> None:
        assert isinstance(form, SettingsForm)
        form.frame.choose(frame)
        form.gone.box.setChecked(True)
        press(Qt.Key.Key_Return)
        assert "so it stays" in form.wrong.text()

    answer(remove)
    press(Qt.Key.Key_Comma, CTRL)
    assert desk.book.read.find(OwnFrame) == (frame,)


@pytest.mark.parametrize(
    ("width", "height", "sentence"), [("", "250", "needs its inside width"), ("5", "250", "60")]
)
def test_a_frame_that_cannot_be_is_refused_in_words(
    window: MainWindow, answer: Answerer, width: str, height: str, sentence: str
) -> None:
    def add(form: object) -> None:
        assert isinstance(form, SettingsForm)
        form.name.line.setText("Odd")
        form.width_mm.line.setText(width)
        form.height_mm.line.setText(height)
        press(Qt.Key.Key_Return)
        assert sentence in form.wrong.text()

    answer(add)
    press(Qt.Key.Key_Comma, CTRL)
    assert window.desk.book.read.find(OwnFrame) == ()


def test_the_settings_of_a_book_open_for_looking_are_still(
    window: MainWindow, answer: Answerer, memory: Memory
) -> None:
    path = window.desk.book.path
    window.opener.put_away()
    window.opener.furnish(Workbook.open(path, today=DAY, read_only=True))
    again = window.opener.window
    assert again is not None

    def look(form: object) -> None:
        assert isinstance(form, SettingsForm)
        assert not form.title.widget.isEnabled()
        assert form.dark.widget.isEnabled()
        form.dark.box.setChecked(True)
        form.dark.box.setFocus()
        press(Qt.Key.Key_Return)

    answer(look)
    press(Qt.Key.Key_Comma, CTRL)
    assert memory.get("dark") is True


def test_english_is_always_there() -> None:
    assert languages()[0] == ("English", "")
