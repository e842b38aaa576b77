"""Papers made beside the window: PDFs out of ready models, their pages as pictures, and on to a printer.

Nothing here reads the workbook: a thread beside the window gets all it needs as values.
"""

import io
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from PySide6.QtCore import QMarginsF, QObject, QRectF, QRunnable, Signal
from PySide6.QtGui import QImage, QPageLayout, QPageSize, QPainter

from beeworkbook.colony.records import Sheet
from beeworkbook.colony.sheet_models import CombSheetModel, RoundSheetModel
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.workbook.sheets import kept_sheets

_PRINT_DPI: Final = 300
_ONE_AT_A_TIME: Final = threading.RLock()
"""The library that draws PDFs bears one thread at a time, and an old job may still draw beside a new one."""


@dataclass(frozen=True)
class Made:
    """A PDF, and the sheets to keep once it is on paper."""

    pdf: bytes
    sheets: tuple[Sheet, ...]


class News(QObject):
    """What a job has to tell: the paper and how many pages it has, then each page; or what went wrong.

    The first number of each is the job's turn.
    """

    made = Signal(int, object, int)
    page = Signal(int, object)
    failed = Signal(int, object)


class Job(QRunnable):
    """Make a PDF and its pictures beside the window. `turn` tells which asking it answers.

    `wanted` is asked before each page, since a sheet of a whole apiary takes seconds to be seen.
    """

    def __init__(self, turn: int, work: Callable[[], Made], dpi: float, wanted: Callable[[], bool]) -> None:
        """A job to be started in a pool of threads; connect to its news first."""
        super().__init__()
        self.news = News()
        self._turn, self._work, self._dpi, self._wanted = turn, work, dpi, wanted

    def run(self) -> None:
        """Do it; whatever goes wrong is told."""
        try:
            made = self._work()
            if not self._wanted():
                return
            self.news.made.emit(self._turn, made, page_count(made.pdf))
            for image in pdf_images(made.pdf, self._dpi):
                if not self._wanted():
                    return
                self.news.page.emit(self._turn, image)
        except Exception as error:  # noqa: BLE001  # shown and logged by the view
            if self._wanted():
                self.news.failed.emit(self._turn, error)


def make_round(model: RoundSheetModel, options: PaperOptions) -> Made:
    """The round sheet of an apiary. It has no fields to be read back, so none is kept."""
    from beeworkbook.papers.round_sheet import round_sheet

    stream = io.BytesIO()
    round_sheet(model, options, stream)
    return Made(stream.getvalue(), ())


def make_combs(models: tuple[CombSheetModel, ...], options: PaperOptions, day: date) -> Made:
    """Comb sheets one after another, with the places of their fields, printed on a day."""
    from beeworkbook.papers.comb_sheet import comb_sheets

    stream = io.BytesIO()
    maps = comb_sheets(models, options, stream)
    return Made(stream.getvalue(), kept_sheets(models, maps, options.paper.value, day))


def page_count(pdf: bytes) -> int:
    """How many pages a PDF has."""
    import pypdfium2

    with _ONE_AT_A_TIME:
        document = pypdfium2.PdfDocument(pdf)
        try:
            return len(document)
        finally:
            document.close()


def pdf_images(pdf: bytes, dpi: float) -> Iterator[QImage]:
    """The pages of a PDF as pictures, one after the other: a page to be printed takes 26 MB."""
    import pypdfium2

    for number in range(page_count(pdf)):
        # Opened anew for each page, which takes under a millisecond: nothing of it is left between two.
        with _ONE_AT_A_TIME:
            document = pypdfium2.PdfDocument(pdf)
            try:
                image = _page_image(document, number, dpi)
            finally:
                document.close()
        yield image


def _page_image(document: Any, number: int, dpi: float) -> QImage:
    page = document[number]
    bitmap = page.render(scale=dpi / 72, rev_byteorder=True)
    pixels: Any = bitmap.to_numpy()
    height, width, depth = pixels.shape
    form = QImage.Format.Format_RGBA8888 if depth == 4 else QImage.Format.Format_RGB888
    image = QImage(pixels.tobytes(), width, height, width * depth, form).copy()
    bitmap.close()
    page.close()
    return image


def set_paper(printer: Any, pdf: bytes, paper: Paper) -> None:
    """Tell a printer the size of the paper and which way it is held, with no margin of its own."""
    first = next(pdf_images(pdf, 20))
    ways, sizes = QPageLayout.Orientation, QPageSize.PageSizeId
    way = ways.Landscape if first.width() > first.height() else ways.Portrait
    size = {Paper.A4: sizes.A4, Paper.A5: sizes.A5, Paper.LETTER: sizes.Letter}
    printer.setFullPage(True)
    printer.setPageLayout(QPageLayout(QPageSize(size[paper]), way, QMarginsF(0, 0, 0, 0)))


def paint_pdf(printer: Any, pdf: bytes) -> bool:
    """Paint every page of a PDF on a printer at 100 %; whether the printer took it."""
    painter = QPainter()
    if not painter.begin(printer):
        return False
    try:
        for number, image in enumerate(pdf_images(pdf, _PRINT_DPI)):
            if number:
                printer.newPage()
            dots = printer.resolution() / _PRINT_DPI
            painter.drawImage(QRectF(0, 0, image.width() * dots, image.height() * dots), image)
    finally:
        painter.end()
    return True
