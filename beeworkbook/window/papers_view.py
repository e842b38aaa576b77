"""Papers: which sheet, of which colonies, on what paper; seen at its true size, saved as PDF or printed."""

import io
import logging
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import QEvent, QObject, QRunnable, QSize, Qt, QThreadPool, QTimer, Signal
from PySide6.QtGui import QFocusEvent, QImage, QKeyEvent, QPainter, QPaintEvent, QPixmap, QShowEvent
from PySide6.QtWidgets import (
    QFileDialog,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.colony.records import ColonyId, Sheet
from beeworkbook.colony.sheet_models import CombSheetModel, RoundSheetModel
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.qt.desk import Desk, Spot
from beeworkbook.window.dialogs.form import Choice, Tick
from beeworkbook.window.dialogs.told import show_sentence
from beeworkbook.words import say, say_count
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.sheets import blank_sheet, filled_sheet, kept_sheets, round_sheet_of

_WAIT_MS: Final = 150
_ROW_PX: Final = 28
_PRINT_DPI: Final = 300
_LEAST_DPI: Final = 40
"""A screen that claims fewer does not know its size."""
_log = logging.getLogger(__name__)


class SheetKind(StrEnum):
    """The sheets that can be printed."""

    BLANK = "blank"
    FILLED = "filled"
    ROUND = "round"


KIND_WORDS: Final = (
    ("comb sheet, blank: to take to the hive", SheetKind.BLANK),
    ("comb sheet, filled: what was found", SheetKind.FILLED),
    ("round sheet: a row a colony", SheetKind.ROUND),
)


@dataclass(frozen=True)
class Made:
    """A PDF, and the sheets to keep once it is on paper."""

    pdf: bytes
    sheets: tuple[Sheet, ...]


class PapersView(QWidget):
    """The choices at the left, the sheet at its true size at the right."""

    def __init__(self, desk: Desk) -> None:
        """The papers of the desk's book."""
        super().__init__()
        self.setObjectName("ground")
        self._desk = desk
        self._made: Made | None = None
        self._turn = 0
        self._stale = True
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_WAIT_MS)
        self._timer.timeout.connect(self.remake)
        self._build_choices()
        self._build_preview()
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 12, 0, 10)
        row.setSpacing(16)
        row.addLayout(self._choices)
        row.addWidget(self.preview, 1)
        desk.spot_changed.connect(self._spot_changed)
        desk.book_changed.connect(self._book_changed)
        self._fill_colonies()

    # --- choices ----------------------------------------------------------------------------------

    def _build_choices(self) -> None:
        self.kind = Choice(say("Sheet"), [(say(words), kind) for words, kind in KIND_WORDS])
        self.paper = Choice(say("Paper"), [(paper.value, paper) for paper in Paper])
        self.black = Tick(say("black only"))
        self.no_places = Tick(say("leave place names off"))
        self.colonies = QListWidget()
        self.colonies.setAccessibleName(say("Colonies to print"))
        self.colonies.setToolTip(say("Space ticks a colony; the sheets follow one another in one print"))
        self.all_button = QPushButton(say("The whole apiary"))
        self.all_button.setToolTip(say("Tick every colony of this apiary"))
        self.all_button.clicked.connect(self._tick_all)
        self.print_button = QPushButton(say("Print…"))
        self.print_button.setToolTip(say("Print at the true size, 100 % (Ctrl+P)"))
        self.print_button.setDefault(True)
        self.print_button.clicked.connect(self.print)
        self.save_button = QPushButton(say("Save as PDF…"))
        self.save_button.setToolTip(say("Write the sheets into a PDF file"))
        self.save_button.clicked.connect(self.save)
        self.state = QLabel()
        self.state.setObjectName("small")
        self.state.setWordWrap(True)
        self._choices = QVBoxLayout()
        self._choices.setSpacing(7)
        head = QLabel(say("Papers"))
        head.setObjectName("name")
        self._choices.addWidget(head)
        for field in (self.kind, self.paper):
            label = QLabel(field.label)
            label.setObjectName("small")
            label.setBuddy(field.widget)
            self._choices.addWidget(label)
            self._choices.addWidget(field.widget)
            field.on_change(self.soon)
        for tick in (self.black, self.no_places):
            tick.box.toggled.connect(lambda _on: self.soon())
            self._choices.addWidget(tick.widget)
        self._choices.addWidget(self.colonies, 1)
        self._choices.addWidget(self.all_button)
        self._choices.addWidget(self.print_button)
        self._choices.addWidget(self.save_button)
        self._choices.addWidget(self.state)
        self.colonies.itemChanged.connect(lambda _item: self.soon())
        self.colonies.setFixedWidth(270)
        self.kind.widget.setFixedWidth(270)

    def _build_preview(self) -> None:
        self.preview = Preview()
        self.preview.setWidgetResizable(True)
        self.preview.setAccessibleName(say("The sheet at its true size"))
        self.preview.setToolTip(say("The sheet at its true size; here the page keys turn its pages"))
        self.preview.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._pages = QWidget()
        self._pages.setObjectName("sunk")
        self._page_column = QVBoxLayout(self._pages)
        self._page_column.setSpacing(18)
        self._page_column.setContentsMargins(18, 18, 18, 18)
        self._page_column.setAlignment(Qt.AlignmentFlag.AlignHCenter | Qt.AlignmentFlag.AlignTop)
        self.preview.setWidget(self._pages)

    def choose_kind(self, kind: SheetKind) -> None:
        """Choose a sheet and show it."""
        self.kind.combo.setCurrentIndex([value for _words, value in KIND_WORDS].index(kind))
        self.soon()

    def take_focus(self) -> None:
        """Put the keyboard on the choice of sheet."""
        self.kind.widget.setFocus(Qt.FocusReason.OtherFocusReason)

    def options(self) -> PaperOptions:
        """What was chosen."""
        return PaperOptions(
            Paper(str(self.paper.value)), colour=not self.black.on, place_names=not self.no_places.on
        )

    def chosen_colonies(self) -> list[ColonyId]:
        """The ticked colonies in stand order; the desk's own if none is ticked."""
        ticked = [
            ColonyId(item.data(Qt.ItemDataRole.UserRole))
            for item in map(self.colonies.item, range(self.colonies.count()))
            if item.checkState() is Qt.CheckState.Checked
        ]
        own = self._desk.spot.colony_id
        return ticked or ([own] if own else [])

    # --- making -----------------------------------------------------------------------------------

    def soon(self) -> None:
        """Make the sheet anew when the choosing pauses; a hidden view waits until it is seen."""
        if self.isVisible():
            self._timer.start()
        else:
            self._stale = True

    def showEvent(self, event: QShowEvent) -> None:
        """Make what went stale while hidden."""
        super().showEvent(event)
        if self._stale:
            self._stale = False
            self._timer.start()

    def remake(self) -> None:
        """Make the sheet beside the window and show it when it is ready."""
        work = self._work()
        self._turn += 1
        self._made = None
        self._buttons()
        if work is None:
            self._show_pages([])
            self.state.setText(say("There is nothing to print: no colony stands here on this day."))
            return
        self.state.setText(say("Drawing the sheet"))
        job = _Job(self._turn, work, self._dots_per_inch() * self.devicePixelRatioF())
        job.news.made.connect(self._ready)
        job.news.failed.connect(self._failed)
        QThreadPool.globalInstance().start(job)

    def _work(self) -> Callable[[], Made] | None:
        """What to do beside the window: the models are read here, since the book belongs to the window."""
        desk, options = self._desk, self.options()
        kind = SheetKind(str(self.kind.value))
        spot = desk.spot
        if kind is SheetKind.ROUND:
            if spot.apiary_id is None:
                return None
            model = round_sheet_of(desk.book, spot.apiary_id, desk.today)
            return lambda: _make_round(model, options)
        models: list[CombSheetModel] = []
        for colony_id in self.chosen_colonies():
            if kind is SheetKind.BLANK:
                made = blank_sheet(desk.book, colony_id, max(spot.day, desk.today))
            else:
                visit_id = spot.visit_id if colony_id == spot.colony_id else _latest(desk, colony_id)
                made = filled_sheet(desk.book, visit_id) if visit_id else None
            if made is not None:
                models.append(made)
        if not models:
            return None
        return lambda: _make_combs(desk, tuple(models), options)

    def _ready(self, turn: int, made: Made, images: list[QImage]) -> None:
        if turn != self._turn:
            return
        self._made = made
        self._show_pages(images)
        size = max(1, round(len(made.pdf) / 1000))
        self.state.setText(say_count(len(images), "{n} page, {size} kB", "{n} pages, {size} kB", size=size))
        self._buttons()

    def _failed(self, turn: int, error: Exception) -> None:
        if turn == self._turn:
            _log.error("the sheet could not be drawn", exc_info=error)
            self.state.setText(say("The sheet could not be drawn; the log says why."))

    def _show_pages(self, images: list[QImage]) -> None:
        while self._page_column.count():
            item = self._page_column.takeAt(0)
            widget = item.widget() if item else None
            if widget is not None:
                widget.deleteLater()
        ratio = self.devicePixelRatioF()
        for number, image in enumerate(images, 1):
            picture = QPixmap.fromImage(image)
            picture.setDevicePixelRatio(ratio)
            page = QLabel()
            page.setObjectName("paper")
            page.setPixmap(picture)
            page.setAccessibleName(say("Page {n} of {count}", n=number, count=len(images)))
            self._page_column.addWidget(page)

    # --- on paper ---------------------------------------------------------------------------------

    def save(self) -> None:
        """Write the sheets into a PDF file."""
        if self._made is None:
            return
        name = f"{self.kind.value} {self._desk.spot.day.isoformat()}.pdf"
        folder = self._desk.book.path.parent
        chosen, _kind = QFileDialog.getSaveFileName(
            self, say("Save as PDF"), str(folder / name), say("PDF (*.pdf)")
        )
        if not chosen:
            return
        self.write_pdf(Path(chosen))

    def write_pdf(self, path: Path) -> bool:
        """Write the sheets shown into a file; whether it was done."""
        if self._made is None:
            return False
        try:
            path.write_bytes(self._made.pdf)
        except OSError as error:
            sentence = say("{path} cannot be written: {reason}.", path=path, reason=error.strerror)
            show_sentence(self, say("Not saved"), sentence)
            return False
        self._keep()
        self._desk.tell(say("The sheet lies at {place}.", place=path))
        return True

    def print(self) -> None:
        """Print through the system's dialog at the true size."""
        from PySide6.QtPrintSupport import QPrintDialog, QPrinter

        if self._made is None:
            return
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        _set_paper(printer, self._made.pdf, self.options().paper)
        dialog = QPrintDialog(printer, self)
        dialog.setWindowTitle(say("Print at 100 %"))
        if dialog.exec() != QPrintDialog.DialogCode.Accepted or self._made is None:
            return
        if paint_pdf(printer, self._made.pdf):
            self._keep()
            self._desk.tell(say("The sheet went to the printer at 100 %."))
        else:
            show_sentence(self, say("Not printed"), say("The printer did not take the sheet."))

    def _keep(self) -> None:
        """Keep each sheet with its field map, so that a photograph of it can be read one day."""
        from beeworkbook.workbook.edits.papers import KeepSheet

        if self._made is None or self._desk.book.read_only:
            return
        for sheet in self._made.sheets:
            self._desk.do(KeepSheet(sheet), source=self)
        self._made = Made(self._made.pdf, ())

    # --- within -----------------------------------------------------------------------------------

    def _fill_colonies(self) -> None:
        apiary_id = self._desk.spot.apiary_id
        ticked = set(self.chosen_colonies()) if self.colonies.count() else set()
        self.colonies.blockSignals(True)
        self.colonies.clear()
        for place in self._desk.book.read.standing(apiary_id, self._desk.today) if apiary_id else ():
            if place.colony is None:
                continue
            item = QListWidgetItem(place.colony.name)
            item.setSizeHint(QSize(0, _ROW_PX))
            item.setData(Qt.ItemDataRole.UserRole, int(place.colony.id))
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            chosen = len(ticked) > 1 and place.colony.id in ticked
            item.setCheckState(Qt.CheckState.Checked if chosen else Qt.CheckState.Unchecked)
            self.colonies.addItem(item)
        self.colonies.blockSignals(False)

    def _tick_all(self) -> None:
        items = [self.colonies.item(at) for at in range(self.colonies.count())]
        full = all(item.checkState() is Qt.CheckState.Checked for item in items)
        for item in items:
            item.setCheckState(Qt.CheckState.Unchecked if full else Qt.CheckState.Checked)

    def _buttons(self) -> None:
        for button in (self.print_button, self.save_button):
            button.setEnabled(self._made is not None)

    def _dots_per_inch(self) -> float:
        dots = self.screen().physicalDotsPerInch()
        return dots if dots > _LEAST_DPI else 96.0

    def _spot_changed(self, _spot: Spot) -> None:
        self._fill_colonies()
        self.soon()

    def _book_changed(self, changes: Changes) -> None:
        if not changes.touches(Sheet) or len(changes.steps) > 1:
            self.soon()


class Preview(QScrollArea):
    """The pages under one another. While it has the keyboard, the page keys turn its pages."""

    def event(self, event: QEvent) -> bool:
        """Keep the page keys for the sheet; they leaf through visits everywhere else."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            plain = event.modifiers() == Qt.KeyboardModifier.NoModifier
            if plain and event.key() in {Qt.Key.Key_PageUp, Qt.Key.Key_PageDown}:
                event.accept()
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Home and End go to the first and the last page."""
        bar = self.verticalScrollBar()
        if event.key() == Qt.Key.Key_Home:
            bar.setValue(bar.minimum())
        elif event.key() == Qt.Key.Key_End:
            bar.setValue(bar.maximum())
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """A line at the left while it has the keyboard."""
        super().paintEvent(event)
        if self.hasFocus():
            painter = QPainter(self.viewport())
            painter.fillRect(0, 0, 2, self.viewport().height(), self.palette().link())
            painter.end()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show where the keyboard is."""
        super().focusInEvent(event)
        self.viewport().update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Show that the keyboard is elsewhere."""
        super().focusOutEvent(event)
        self.viewport().update()


class _News(QObject):
    made = Signal(int, object, object)
    failed = Signal(int, object)


class _Job(QRunnable):
    """Make a PDF and its pictures beside the window."""

    def __init__(self, turn: int, work: Callable[[], Made], dpi: float) -> None:
        super().__init__()
        self.news = _News()
        self._turn, self._work, self._dpi = turn, work, dpi

    def run(self) -> None:
        try:
            made = self._work()
            images = pdf_images(made.pdf, self._dpi)
        except Exception as error:  # noqa: BLE001  # shown and logged by the view
            self.news.failed.emit(self._turn, error)
            return
        self.news.made.emit(self._turn, made, images)


def pdf_images(pdf: bytes, dpi: float) -> list[QImage]:
    """The pages of a PDF as pictures."""
    import pypdfium2

    document = pypdfium2.PdfDocument(pdf)
    made = []
    try:
        for page in document:
            bitmap = page.render(scale=dpi / 72, rev_byteorder=True)
            pixels: Any = bitmap.to_numpy()
            height, width, depth = pixels.shape
            form = QImage.Format.Format_RGBA8888 if depth == 4 else QImage.Format.Format_RGB888
            made.append(QImage(pixels.tobytes(), width, height, width * depth, form).copy())
    finally:
        document.close()
    return made


def paint_pdf(printer: Any, pdf: bytes) -> bool:
    """Paint every page of a PDF on a printer at 100 %; whether the printer took it."""
    from PySide6.QtCore import QRectF
    from PySide6.QtGui import QPainter

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


def _set_paper(printer: Any, pdf: bytes, paper: Paper) -> None:
    from PySide6.QtCore import QMarginsF
    from PySide6.QtGui import QPageLayout, QPageSize

    first = pdf_images(pdf, 20)[0]
    ways, sizes = QPageLayout.Orientation, QPageSize.PageSizeId
    way = ways.Landscape if first.width() > first.height() else ways.Portrait
    size = {Paper.A4: sizes.A4, Paper.A5: sizes.A5, Paper.LETTER: sizes.Letter}
    printer.setFullPage(True)
    printer.setPageLayout(QPageLayout(QPageSize(size[paper]), way, QMarginsF(0, 0, 0, 0)))


def _make_round(model: RoundSheetModel, options: PaperOptions) -> Made:
    from beeworkbook.papers.round_sheet import round_sheet

    stream = io.BytesIO()
    round_sheet(model, options, stream)
    return Made(stream.getvalue(), ())


def _make_combs(desk: Desk, models: tuple[CombSheetModel, ...], options: PaperOptions) -> Made:
    from beeworkbook.papers.comb_sheet import comb_sheets

    stream = io.BytesIO()
    maps = comb_sheets(models, options, stream)
    return Made(stream.getvalue(), kept_sheets(models, maps, options.paper.value, desk.book.today))


def _latest(desk: Desk, colony_id: ColonyId) -> Any:
    visits = [visit for visit in desk.book.read.visits(colony_id) if visit.day <= desk.spot.day]
    return visits[-1].id if visits else None
