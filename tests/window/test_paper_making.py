"""Papers are made of values alone, beside the window, and printed at their true size."""

from concurrent.futures import ThreadPoolExecutor
from datetime import date
from pathlib import Path

import numpy as np
import pypdf
import pytest
from PySide6.QtGui import QImage
from PySide6.QtPrintSupport import QPrinter
from pytestqt.qtbot import QtBot

from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.window.paper_making import (
    Job,
    Made,
    make_combs,
    make_round,
    page_count,
    paint_pdf,
    pdf_images,
    set_paper,
)
from tests.papers import invented

DAY = date(2026, 5, 16)
A4_AT_60 = (496, 702)


def round_made() -> Made:
    return make_round(invented.round_model(), PaperOptions())


def long_made() -> Made:
    """Two pages."""
    return make_round(invented.round_model(rows=20), PaperOptions())


def edges_of_ink(pdf: bytes) -> list[int]:
    """Left, right, top and bottom of what is printed dark, in hundredths of an inch."""
    page = next(pdf_images(pdf, 100)).convertToFormat(QImage.Format.Format_Grayscale8)
    shades = np.frombuffer(page.constBits(), np.uint8).reshape(page.height(), page.bytesPerLine())
    down, across = np.nonzero(shades[:, : page.width()] < 120)
    return [int(across.min()), int(across.max()), int(down.min()), int(down.max())]


def test_a_round_sheet_is_shown_at_its_true_size_and_not_kept(qtbot: QtBot) -> None:
    del qtbot
    made = round_made()
    assert made.sheets == ()
    (page,) = pdf_images(made.pdf, 60)
    assert (page.height(), page.width()) == pytest.approx(A4_AT_60, abs=1)
    shades = {page.pixelColor(x, y).lightness() for x in range(0, 700, 3) for y in range(0, 490, 3)}
    assert min(shades) < 60
    assert max(shades) == 255


def test_only_sheets_made_of_a_workbook_are_kept() -> None:
    with pytest.raises(TypeError):
        make_combs((invented.model(invented.box(places=1)),), PaperOptions(), DAY)


def test_a_job_tells_its_turn_and_what_it_made(qtbot: QtBot) -> None:
    del qtbot
    job = Job(3, long_made, 40, lambda: True)
    told: list[tuple[object, ...]] = []
    job.news.made.connect(lambda *words: told.append(words))
    job.news.page.connect(lambda *words: told.append(words))
    job.run()
    (turn, made, count), *pages = told
    assert isinstance(made, Made)
    assert made.pdf.startswith(b"%PDF")
    assert (turn, count) == (3, page_count(made.pdf)) == (3, 2)
    assert [(page[0], type(page[1])) for page in pages] == [(3, QImage)] * 2


def test_a_job_nobody_waits_for_draws_no_more_pages(qtbot: QtBot) -> None:
    del qtbot
    wanted = [True, True, False]
    job = Job(3, long_made, 40, lambda: wanted.pop(0))
    pages: list[object] = []
    job.news.page.connect(lambda *words: pages.append(words))
    job.run()
    assert len(pages) == 1
    assert wanted == []


def test_several_threads_draw_pages_and_none_disturbs_another(qtbot: QtBot) -> None:
    del qtbot
    pdf = long_made().pdf
    alone = list(pdf_images(pdf, 12))
    with ThreadPoolExecutor(4) as threads:
        together = list(threads.map(lambda _turn: list(pdf_images(pdf, 12)), range(60)))
    assert all(pages == alone for pages in together)


def test_a_job_nobody_waits_for_any_more_tells_nothing(qtbot: QtBot) -> None:
    def fails() -> Made:
        raise ValueError("no ink")

    for work in (fails, round_made):
        job = Job(5, work, 40, lambda: False)
        with qtbot.assertNotEmitted(job.news.failed), qtbot.assertNotEmitted(job.news.made):
            job.run()


def test_a_job_that_fails_tells_why(qtbot: QtBot) -> None:
    def fails() -> Made:
        raise ValueError("no ink")

    job = Job(4, fails, 40, lambda: True)
    with qtbot.waitSignal(job.news.failed) as told:
        job.run()
    assert told.args is not None
    assert (told.args[0], str(told.args[1])) == (4, "no ink")


def test_every_page_is_printed_at_100_per_cent(qtbot: QtBot, tmp_path: Path) -> None:
    del qtbot
    made, target = round_made(), tmp_path / "printed.pdf"
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(target))
    set_paper(printer, made.pdf, Paper.A4)
    assert paint_pdf(printer, made.pdf)
    (page,) = pypdf.PdfReader(target).pages
    assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx((842, 595), abs=1.5)
    # The picture on the page lies where it lay on the sheet: at 100 %, with no margin of the printer's.
    as_made, as_printed = (edges_of_ink(pdf) for pdf in (made.pdf, target.read_bytes()))
    assert as_made == pytest.approx(as_printed, abs=2)


@pytest.mark.qt_log_ignore("Returned false")
def test_a_printer_that_takes_nothing_is_told(qtbot: QtBot, tmp_path: Path) -> None:
    del qtbot
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "no such folder" / "x.pdf"))
    assert not paint_pdf(printer, round_made().pdf)
