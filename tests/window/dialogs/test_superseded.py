"""A queen superseded is one choice and two lines; supers and excluders stand among what happened too."""

from PySide6.QtCore import Qt

from beeworkbook.colony.records import EventKind, PartKind, Queen
from beeworkbook.window.dialogs.event_form import SUPERSEDED, EventForm
from beeworkbook.window.dialogs.happened import HappenedDialog, happened_to
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits.hive import AddPart, TakePart
from beeworkbook.workbook.story import queen_on
from tests.rounds.orchard import DAY, LAST
from tests.window.conftest import CTRL, SHIFT, Answerer, press, write


def _words(window: MainWindow) -> list[str]:
    assert window.desk.colony is not None
    return [line.words for line in happened_to(window.desk, window.desk.colony)]


def test_superseded_is_a_choice_that_notes_both_queens_in_one_step(
    window: MainWindow, answer: Answerer
) -> None:
    desk = window.desk
    assert desk.colony is not None
    before = desk.book.read.events(desk.colony.id)
    old = queen_on(desk.book.read, desk.colony.id, DAY)
    assert old is not None

    def fill(form: object) -> None:
        assert isinstance(form, EventForm)
        form.kind.choose(SUPERSEDED)
        assert form.mark.combo.isVisible()
        form.mark.choose("white")
        form.text.line.setFocus()
        write("two queens seen")
        form.year.line.setFocus()
        write("2026")
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_V, CTRL | SHIFT)
    gone, came = desk.book.read.events(desk.colony.id)[-2:]
    assert (gone.kind, gone.day, gone.text, gone.queen_id) == (
        EventKind.QUEEN_GONE,
        DAY,
        "superseded",
        old.id,
    )
    assert (came.kind, came.day) == (EventKind.QUEEN_CAME, DAY)
    young = queen_on(desk.book.read, desk.colony.id, DAY)
    assert young is not None
    assert (young.mark_colour, young.year, young.id != old.id) == ("white", 2026, True)
    assert _words(window)[:2] == [
        "queen came, of 2026, marked white, by supersedure, two queens seen",
        "queen gone, superseded",
    ]
    desk.undo()
    assert desk.book.read.events(desk.colony.id) == before
    assert desk.book.read.get(Queen, young.id) is None


def test_a_line_that_is_changed_offers_no_superseding(window: MainWindow) -> None:
    desk = window.desk
    assert desk.colony is not None
    event = desk.book.read.events(desk.colony.id)[-1]
    form = EventForm(None, desk, desk.colony, event)
    form.kind.choose(SUPERSEDED)
    assert form.kind.value is event.kind
    form.deleteLater()


def test_supers_and_excluders_stand_among_what_happened(window: MainWindow, answer: Answerer) -> None:
    desk = window.desk
    hive = desk.hive_day()
    assert hive is not None
    super_id = desk.do(AddPart(hive.hive.id, PartKind.SUPER, LAST, frame_type="bs_shallow", places=10))
    desk.do(AddPart(hive.hive.id, PartKind.EXCLUDER, LAST))  # lifts the super, and takes nothing off
    desk.do(TakePart(super_id, DAY))  # type: ignore[arg-type]
    words = _words(window)
    assert words[0] == "super taken off"
    counted = [words.count(line) for line in ("super put on", "queen excluder put on", "super taken off")]
    assert counted == [1, 1, 1]
    before = desk.book.undo_label

    def act(dialog: object) -> None:
        assert isinstance(dialog, HappenedDialog)
        dialog.list.setCurrentRow(0)
        dialog.list.setFocus()
        press(Qt.Key.Key_Delete)
        press(Qt.Key.Key_Return)
        assert dialog.list.item(0).text().endswith("super taken off")

    answer(act)
    press(Qt.Key.Key_H, CTRL)
    assert desk.book.undo_label == before
    assert "Stack" in window.told_line.sentence
