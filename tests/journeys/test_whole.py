"""From the sample to the printed sheet: a round entered by keys, a comb painted, undone, closed, reopened."""

from datetime import date
from pathlib import Path

import pypdfium2
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QApplication, QDialog
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Question
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import Content, Face
from beeworkbook.qt.desk import View
from beeworkbook.qt.memory import Memory
from beeworkbook.rounds.round_view import RoundView
from beeworkbook.rounds.walk import Spot
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.opening import Opener
from beeworkbook.window.papers_view import PapersView, SheetKind
from beeworkbook.window.shell import Shell
from beeworkbook.workbook.sample_copy import make_sample
from tests.journeys.conftest import Fingers
from tests.window.conftest import Answerer, hand

pytestmark = pytest.mark.journey

TODAY = date(2027, 4, 3)
CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


def opened(opener: Opener, path: Path) -> MainWindow:
    assert opener.begin(path)
    assert opener.window is not None
    QApplication.processEvents()
    opener.window.shell.activateWindow()
    hand()
    return opener.window


def cells_of(window: MainWindow, face: Face) -> bytes | None:
    spot = window.desk.spot
    assert spot.visit_id is not None
    assert spot.frame_id is not None
    side = window.desk.book.read.side(spot.visit_id, spot.frame_id, face)
    return None if side is None else side.cells


def test_from_the_sample_to_the_printed_sheet(  # noqa: PLR0915  # one journey is told in one go
    shell: Shell,
    memory: Memory,
    fingers: Fingers,
    answer: Answerer,
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    path = tmp_path / "sample.beebook"
    make_sample(path)
    opener = Opener(shell, memory, lambda: TODAY)
    window = opened(opener, path)
    desk = window.desk

    # An afternoon's round, a line for the first colony.
    answer(lambda _form: fingers.press(Qt.Key.Key_Return))
    fingers.press(Qt.Key.Key_R, CTRL)
    window.focus_view()
    first = window.stands.cards()[0]
    desk.go(colony_id=first.colony_id)
    round_view = window.face(View.ROUND)
    assert isinstance(round_view, RoundView)
    round_view.sheet.go(Spot(first.colony_id, Question.OPENED))
    fingers.type("yyy")
    fingers.type("4/2.5\n")
    visit = next(visit for visit in desk.book.read.visits(first.colony_id) if visit.day == TODAY)
    answers = desk.book.read.answers(visit.id)
    assert set(answers) >= {Question.OPENED, Question.EGGS, Question.YOUNG, Question.BROOD}

    # A depth down: its box, a comb typed, and a depth further a comb painted.
    desk.go(colony_id=first.colony_id, visit_id=visit.id)
    fingers.press(Qt.Key.Key_F6)
    depths = [desk.spot.view]
    typed_frame = desk.spot.frame_id
    fingers.type("e1o2s4h1\n")
    assert desk.spot.frame_id != typed_frame
    fingers.press(Qt.Key.Key_Escape)
    fingers.press(Qt.Key.Key_F6)
    depths.append(desk.spot.view)
    assert depths == [View.BOX, View.BENCH]
    canvas = window.bench.sides[Face.A].canvas
    before = cells_of(window, Face.A)
    fingers.type("s")
    middle = canvas.rect().center()
    fingers.draw(canvas, [middle + QPoint(step, step // 3) for step in range(-60, 61, 12)])
    qtbot.waitUntil(lambda: cells_of(window, Face.A) != before)
    once = cells_of(window, Face.A)
    assert once is not None
    frame = desk.book.read.frame_type(desk.book.read.sides(visit.id)[-1].frame_type)
    painted = unpack(once, cells=frame.lattice.cells)
    assert (painted == Content.SEALED).sum() > 50

    # A second stroke is taken back, and the place of what is undone is shown.
    fingers.type("h")
    fingers.draw(canvas, [middle + QPoint(step, -50) for step in range(-60, 61, 12)])
    qtbot.waitUntil(lambda: cells_of(window, Face.A) != once)
    painted_frame = desk.spot.frame_id
    fingers.press(Qt.Key.Key_F6, SHIFT)
    fingers.press(Qt.Key.Key_Z, CTRL)
    assert desk.spot.frame_id == painted_frame
    assert cells_of(window, Face.A) == once
    fingers.press(Qt.Key.Key_Z, CTRL | SHIFT)
    assert cells_of(window, Face.A) != once
    fingers.press(Qt.Key.Key_Z, CTRL)
    assert cells_of(window, Face.A) == once

    # Closed, and one file lies there; opened again where it was left.
    spot = desk.spot
    fingers.press(Qt.Key.Key_Q, CTRL)
    assert opener.window is None
    assert not [held for held in tmp_path.iterdir() if held.name.startswith("sample.beebook-")]
    shell.show()
    window = opened(opener, path)
    assert (window.desk.spot.view, window.desk.spot.frame_id) == (View.BOX, spot.frame_id)
    assert cells_of(window, Face.A) == once
    assert window.desk.book.check() == ()

    # And on paper.
    target = tmp_path / "filled.pdf"
    monkeypatch.setattr(QPrintDialog, "exec", lambda dialog: _to_a_file(dialog, target))
    fingers.press(Qt.Key.Key_2, CTRL | SHIFT)
    papers = window.face(View.PAPERS)
    assert isinstance(papers, PapersView)
    assert papers.kind.value is SheetKind.FILLED
    qtbot.waitUntil(papers.print_button.isEnabled, timeout=20_000)
    fingers.press(Qt.Key.Key_P, CTRL)
    qtbot.waitUntil(target.exists)
    printed = pypdfium2.PdfDocument(target)
    assert len(printed) >= 1
    assert printed[0].render(scale=1).to_numpy().min() < 60
    printed.close()
    opener.put_away()


def _to_a_file(dialog: QPrintDialog, target: Path) -> QDialog.DialogCode:
    printer = dialog.printer()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(target))
    return QDialog.DialogCode.Accepted
