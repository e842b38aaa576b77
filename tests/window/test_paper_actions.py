"""Sheets chosen, printed and saved, and the chart's picture and figures, all by keys."""

from pathlib import Path

import pypdfium2
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QFileDialog
from pytestqt.qtbot import QtBot

from beeworkbook.colony.records import Sheet
from beeworkbook.qt.desk import View
from beeworkbook.window.main_window import MainWindow
from beeworkbook.window.papers_view import PapersView, SheetKind
from tests.window.conftest import CTRL, SHIFT, press

MM_PER_POINT = 25.4 / 72


def papers(window: MainWindow, qtbot: QtBot) -> PapersView:
    face = window.face(View.PAPERS)
    assert isinstance(face, PapersView)
    qtbot.waitUntil(face.print_button.isEnabled, timeout=20_000)
    return face


@pytest.mark.parametrize(
    ("key", "kind"),
    [
        (Qt.Key.Key_1, SheetKind.BLANK),
        (Qt.Key.Key_2, SheetKind.FILLED),
        (Qt.Key.Key_3, SheetKind.ROUND),
    ],
)
def test_each_sheet_has_its_key(window: MainWindow, qtbot: QtBot, key: Qt.Key, kind: SheetKind) -> None:
    window.desk.go(visit_id=window.desk.visits()[-1].id)
    press(key, CTRL | SHIFT)
    face = papers(window, qtbot)
    assert window.desk.spot.view is View.PAPERS
    assert face.kind.value is kind


def test_printing_shows_the_sheet_first_and_then_prints_it_at_its_true_size(
    window: MainWindow, qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "printed.pdf"

    def to_a_file(dialog: QPrintDialog) -> QDialog.DialogCode:
        printer = dialog.printer()
        printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        printer.setOutputFileName(str(target))
        return QDialog.DialogCode.Accepted

    monkeypatch.setattr(QPrintDialog, "exec", to_a_file)
    press(Qt.Key.Key_P, CTRL)
    assert window.desk.spot.view is View.PAPERS
    assert not target.exists()
    press(Qt.Key.Key_P, CTRL)
    assert "still being drawn" in window.told_line.sentence
    face = papers(window, qtbot)
    before = window.desk.book.read.find(Sheet)
    press(Qt.Key.Key_P, CTRL)
    qtbot.waitUntil(target.exists)
    printed = pypdfium2.PdfDocument(target)
    width, height = printed[0].get_size()
    assert (width * MM_PER_POINT, height * MM_PER_POINT) == pytest.approx((210, 297), abs=0.5)
    assert len(printed) == face._count
    image = printed[0].render(scale=1).to_numpy()
    printed.close()
    assert image.min() < 60, "there is ink on the page"
    assert len(window.desk.book.read.find(Sheet)) > len(before), "what was printed is kept with its map"


def test_the_chart_is_saved_as_picture_and_as_figures(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    files = [tmp_path / "chart.png", tmp_path / "chart.svg", tmp_path / "chart.csv"]
    left = list(files)
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: (str(left.pop(0)), ""))
    window.go_to(View.YEAR)
    press(Qt.Key.Key_P, CTRL | SHIFT)
    assert "The chart lies at" in window.told_line.sentence
    press(Qt.Key.Key_P, CTRL | SHIFT)
    press(Qt.Key.Key_T, CTRL | SHIFT)
    assert "The figures lie at" in window.told_line.sentence
    assert not QImage(str(files[0])).isNull()
    assert files[1].read_text(encoding="utf-8").lstrip().startswith("<")
    assert len(files[2].read_text(encoding="utf-8").splitlines()) > 1


def test_giving_up_the_file_saves_nothing(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args, **_named: ("", ""))
    for key in (Qt.Key.Key_P, Qt.Key.Key_T):
        press(key, CTRL | SHIFT)
    assert list(tmp_path.glob("chart*")) == []
    assert window.told_line.sentence == ""
