"""The papers: chosen, read sheet by sheet, shown at their true size, saved and kept."""

import io
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

import pypdf
import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Colony, ColonyId, PartKind, Sheet, VisitId
from beeworkbook.comb.contents import Content
from beeworkbook.papers.options import Paper
from beeworkbook.qt.desk import Desk, View
from beeworkbook.window.papers_view import PapersView, SheetKind
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.place import RenameRecord
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit
from beeworkbook.workbook.sheets import BookSheet, blank_sheet
from beeworkbook.workbook.workbook import Workbook
from tests.rounds.orchard import DAY, NAMES, make_orchard

WAIT_MS = 8000


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Workbook]:
    made = make_orchard(tmp_path / "orchard.beebook")
    yield made
    made.close()


@pytest.fixture
def desk(book: Workbook, qtbot: QtBot) -> Iterator[Desk]:  # noqa: ARG001  # a desk is an object of Qt
    made = Desk(book)
    made.go(view=View.PAPERS, day=book.today)
    yield made
    made.close()


@pytest.fixture
def view(desk: Desk, qtbot: QtBot) -> PapersView:
    made = PapersView(desk)
    made.resize(1000, 640)
    qtbot.addWidget(made)
    with qtbot.waitExposed(made):
        made.show()
    made.remake()
    shown(made, qtbot)
    return made


def shown(view: PapersView, qtbot: QtBot) -> list[str]:
    """The text of each page, once the sheet is there to be printed."""
    qtbot.waitUntil(view.print_button.isEnabled, timeout=WAIT_MS)
    assert view._made is not None
    return [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(view._made.pdf)).pages]


def made_anew(view: PapersView, qtbot: QtBot) -> list[str]:
    view.remake()
    return shown(view, qtbot)


def add_super(desk: Desk) -> None:
    hive = desk.hive_day()
    assert hive is not None
    desk.do(
        AddPart(
            hive.hive.id,
            PartKind.SUPER,
            DAY,
            frame_type="bs_shallow",
            places=10,
            new_frames=Content.FOUNDATION,
        )
    )


def test_the_blank_sheet_of_the_colony_in_hand_comes_first(view: PapersView, qtbot: QtBot) -> None:
    pages = shown(view, qtbot)
    assert len(pages) == 2
    assert all("Pear Tree" in page for page in pages)
    assert "2 pages" in view.state.text()
    qtbot.waitUntil(lambda: view._page_column.count() == 2, timeout=WAIT_MS)
    labels = [label for label in view.findChildren(QLabel) if label.objectName() == "paper"]
    assert [label.accessibleName() for label in labels] == ["Page 1 of 2", "Page 2 of 2"]
    page = labels[1]
    assert page.pixmap().height() > page.pixmap().width() > 200


def test_supers_are_left_out_until_they_are_asked_for(view: PapersView, desk: Desk, qtbot: QtBot) -> None:
    add_super(desk)
    assert not any("Super" in page for page in made_anew(view, qtbot))
    view.supers.box.click()
    assert any("Super" in page for page in made_anew(view, qtbot))
    view.choose_kind(SheetKind.ROUND)
    assert not view.supers.box.isEnabled()
    view.choose_kind(SheetKind.BLANK)
    assert view.supers.box.isEnabled()


def test_the_whole_apiary_is_read_a_sheet_at_a_time(
    view: PapersView, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    turns: list[ColonyId] = []

    def read(book: Workbook, colony_id: ColonyId, day: date, *, supers: bool) -> BookSheet | None:
        turns.append(colony_id)
        return blank_sheet(book, colony_id, day, supers=supers)

    monkeypatch.setattr("beeworkbook.window.papers_view.blank_sheet", read)
    view.all_button.click()
    view.remake()
    assert turns == []
    QApplication.processEvents()
    assert len(turns) < len(NAMES)  # the window had its turn between the sheets
    pages = shown(view, qtbot)
    assert len(turns) == len(NAMES)
    assert len(pages) == 2 * len(NAMES)
    assert [name for name in NAMES if any(name in page for page in pages)] == list(NAMES)


def test_a_filled_sheet_is_of_a_visit_and_a_round_sheet_of_the_apiary(
    view: PapersView, desk: Desk, qtbot: QtBot
) -> None:
    colony_id, hive = desk.spot.colony_id, desk.hive_day()
    assert colony_id is not None
    assert hive is not None
    frame = hive.boxes[0].frames[4].frame
    assert frame is not None
    visit_id = VisitId(int(str(desk.do(BeginVisit(colony_id, DAY)))))
    desk.do(LayOutComb(visit_id, frame.id, "E1O2S4H1"))
    desk.go(visit_id=visit_id)
    view.choose_kind(SheetKind.FILLED)
    assert any("E1 O2 S4 H1" in page for page in made_anew(view, qtbot))
    view.choose_kind(SheetKind.ROUND)
    (page,) = made_anew(view, qtbot)
    assert all(name in page for name in NAMES)
    assert "Round sheet" in str(view.kind.combo.currentText()).capitalize()


def test_paper_and_place_names_are_chosen(view: PapersView, qtbot: QtBot) -> None:
    view.paper.choose(Paper.LETTER)
    view.no_places.box.click()
    view.black.box.click()
    assert not view.options().colour
    assert not any("Orchard, stand" in page for page in made_anew(view, qtbot))
    assert view._made is not None
    box = pypdf.PdfReader(io.BytesIO(view._made.pdf)).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx((612, 792), abs=0.1)


def test_what_is_saved_is_what_was_shown_and_is_kept_once(
    view: PapersView, desk: Desk, qtbot: QtBot, tmp_path: Path
) -> None:
    target = tmp_path / "sheet.pdf"
    assert view._made is not None
    pdf = view._made.pdf
    assert view.write_pdf(target)
    assert target.read_bytes() == pdf
    (sheet,) = desk.book.read.find(Sheet)
    assert sheet.code in shown(view, qtbot)[0]
    assert sheet.field_map
    assert view.write_pdf(target)
    assert len(desk.book.read.find(Sheet)) == 1


def test_a_change_of_the_book_is_drawn_when_the_hand_pauses(
    view: PapersView, desk: Desk, qtbot: QtBot
) -> None:
    colony_id = desk.spot.colony_id
    assert colony_id is not None
    desk.do(RenameRecord(Colony, colony_id, "Crab Apple"))
    qtbot.waitUntil(lambda: "Crab Apple" in shown(view, qtbot)[0], timeout=WAIT_MS)


def test_a_hidden_view_draws_nothing_until_it_is_seen(view: PapersView, qtbot: QtBot) -> None:
    view.hide()
    before = view._turn
    view.black.box.click()
    qtbot.wait(250)
    assert view._turn == before
    view.show()
    qtbot.waitUntil(lambda: view._turn > before, timeout=WAIT_MS)


def test_nothing_is_read_any_more_once_the_book_is_put_away(view: PapersView, qtbot: QtBot) -> None:
    view.remake()
    view.finish()
    qtbot.wait(100)
    assert not view.print_button.isEnabled()


def test_an_apiary_without_a_colony_says_so(view: PapersView, desk: Desk, qtbot: QtBot) -> None:
    desk.go(colony_id=None, day=date(2020, 1, 1))
    view.choose_kind(SheetKind.FILLED)
    view.remake()
    qtbot.waitUntil(lambda: "nothing to print" in view.state.text(), timeout=WAIT_MS)
    assert not view.print_button.isEnabled()
    assert view._page_column.count() == 0


def test_the_page_keys_belong_to_the_sheet_while_it_has_the_keyboard(view: PapersView, qtbot: QtBot) -> None:
    bar = view.preview.verticalScrollBar()
    qtbot.waitUntil(lambda: bar.maximum() > view.preview.height(), timeout=WAIT_MS)
    view.preview.setFocus()
    QTest.keyClick(view.preview, Qt.Key.Key_End)
    assert bar.value() == bar.maximum() > 0
    QTest.keyClick(view.preview, Qt.Key.Key_Home)
    assert bar.value() == bar.minimum()
    for key, taken in ((Qt.Key.Key_PageDown, True), (Qt.Key.Key_F6, False)):
        event = QKeyEvent(QEvent.Type.ShortcutOverride, key, Qt.KeyboardModifier.NoModifier)
        event.ignore()
        view.preview.event(event)
        assert event.isAccepted() is taken


def test_a_colony_without_a_visit_that_day_is_not_left_out_of_the_apiary(
    view: PapersView, desk: Desk, qtbot: QtBot
) -> None:
    desk.go(day=DAY - timedelta(days=3))
    assert desk.spot.visit_id is None
    view.all_button.click()
    view.choose_kind(SheetKind.FILLED)
    pages = made_anew(view, qtbot)
    assert [name for name in NAMES if any(name in page for page in pages)] == list(NAMES)
