"""Papers: which sheet, of which colonies, on what paper; seen at its true size, saved as PDF or printed."""

import logging
from collections.abc import Callable
from dataclasses import dataclass, field
from enum import StrEnum
from functools import partial
from pathlib import Path
from typing import Any, Final

from PySide6.QtCore import QEvent, QSize, Qt, QThreadPool, QTimer
from PySide6.QtGui import (
    QFocusEvent,
    QHideEvent,
    QImage,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPixmap,
    QShowEvent,
)
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
from beeworkbook.window.paper_making import Job, Made, make_combs, make_round, paint_pdf, set_paper
from beeworkbook.words import say, say_count
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.sheets import blank_sheet, filled_sheet, round_sheet_of

_WAIT_MS: Final = 150
_ROW_PX: Final = 28
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


Read = Callable[[], CombSheetModel | RoundSheetModel | None]
"""Reads one sheet out of the workbook; None where there is nothing to print."""


@dataclass
class _Order:
    """What is being made: sheets still to be read, those read, and the paper they go on."""

    kind: SheetKind
    options: PaperOptions
    reads: list[Read]
    models: list[Any] = field(default_factory=list)


class PapersView(QWidget):
    """The choices at the left, the sheet at its true size at the right."""

    def __init__(self, desk: Desk) -> None:
        """The papers of the desk's book."""
        super().__init__()
        self.setObjectName("ground")
        self._desk = desk
        self._made: Made | None = None
        self._turn = 0
        self._count = 0
        self._stale = True
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_WAIT_MS)
        self._timer.timeout.connect(self._remake_if_seen)
        self._order = _Order(SheetKind.BLANK, PaperOptions(), [])
        self._reading = QTimer(self)
        self._reading.setSingleShot(True)
        self._reading.timeout.connect(self._read_one)
        self._build_choices()
        self._build_preview()
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 12, 0, 10)
        row.setSpacing(16)
        row.addLayout(self._choices)
        row.addWidget(self.preview, 1)
        self._buttons()
        desk.spot_changed.connect(self._spot_changed)
        desk.book_changed.connect(self._book_changed)
        self._fill_colonies()

    # --- choices ----------------------------------------------------------------------------------

    def _build_choices(self) -> None:
        self.kind = Choice(say("Sheet"), [(say(words), kind) for words, kind in KIND_WORDS])
        self.paper = Choice(say("Paper"), [(say(paper.value), paper) for paper in Paper])
        self.supers = Tick(
            say("with the supers"),
            hint=say("A blank sheet is of the brood boxes; hardly anybody draws what is in a super"),
        )
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
        for choice in (self.kind, self.paper):
            label = QLabel(choice.label)
            label.setObjectName("small")
            label.setBuddy(choice.widget)
            self._choices.addWidget(label)
            self._choices.addWidget(choice.widget)
            choice.on_change(self.soon)
        self.kind.on_change(self._ask_for_supers)
        for tick in (self.supers, self.black, self.no_places):
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

    def _ask_for_supers(self) -> None:
        """Only a blank sheet leaves the supers out; a filled one has every box that was looked into."""
        self.supers.box.setEnabled(self.kind.value == SheetKind.BLANK)

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

    def hideEvent(self, event: QHideEvent) -> None:
        """Let the pictures of the pages go, some megabytes each; seen again, the sheet is made anew."""
        super().hideEvent(event)
        self._turn += 1
        self._clear_pages()
        self._stale = True

    def _remake_if_seen(self) -> None:
        if self.isVisible():
            self.remake()
        else:
            self._stale = True

    def finish(self) -> None:
        """Read no more: the workbook is about to be closed."""
        self._timer.stop()
        self._reading.stop()
        self._turn += 1

    def remake(self) -> None:
        """Make the sheet beside the window and show it when it is ready."""
        self._timer.stop()
        self._turn += 1
        self._made = None
        self._buttons()
        kind = SheetKind(str(self.kind.value))
        self._order = _Order(kind, self.options(), self._reads(kind))
        self.state.setText(say("Drawing the sheet"))
        self._reading.start()

    def _reads(self, kind: SheetKind) -> list[Read]:
        """What is to be read, a sheet each."""
        desk, spot, supers = self._desk, self._desk.spot, self.supers.on
        book, today, apiary_id = desk.book, desk.today, spot.apiary_id
        if kind is SheetKind.ROUND:
            return [lambda: round_sheet_of(book, apiary_id, today)] if apiary_id is not None else []
        colonies = self.chosen_colonies()
        if kind is SheetKind.BLANK:
            day = max(spot.day, today)
            return [partial(blank_sheet, book, colony_id, day, supers=supers) for colony_id in colonies]
        here = spot.visit_id is not None or len(colonies) == 1
        visits = [
            # Among others a colony without a visit on this day has its latest, as they have.
            spot.visit_id if here and each == spot.colony_id else _latest(desk, each)
            for each in colonies
        ]
        return [partial(filled_sheet, book, visit_id) for visit_id in visits if visit_id is not None]

    def _read_one(self) -> None:
        """Read one sheet, then let the window breathe: the book belongs to its thread."""
        order = self._order
        if order.reads:
            model = order.reads.pop(0)()
            if model is not None:
                order.models.append(model)
            self._reading.start()
        elif order.models:
            turn, dpi = self._turn, self._dots_per_inch() * self.devicePixelRatioF()
            job = Job(turn, self._work(order), dpi, lambda: turn == self._turn)
            job.news.made.connect(self._ready)
            job.news.page.connect(self._show_page)
            job.news.failed.connect(self._failed)
            QThreadPool.globalInstance().start(job)
        else:
            self._clear_pages()
            self.state.setText(say("There is nothing to print: no colony stands here on this day."))

    def _work(self, order: _Order) -> Callable[[], Made]:
        """What to do beside the window, where the workbook is not read."""
        if order.kind is SheetKind.ROUND:
            return partial(make_round, order.models[0], order.options)
        return partial(make_combs, tuple(order.models), order.options, self._desk.book.today)

    def _ready(self, turn: int, made: Made, count: int) -> None:
        if turn != self._turn:
            return
        self._made, self._count = made, count
        self._clear_pages()
        size = max(1, round(len(made.pdf) / 1000))
        self.state.setText(say_count(count, "{n} page, {size} kB", "{n} pages, {size} kB", size=size))
        self._buttons()

    def _failed(self, turn: int, error: Exception) -> None:
        if turn == self._turn:
            _log.error("the sheet could not be drawn", exc_info=error)
            self.state.setText(say("The sheet could not be drawn; the log says why."))

    def _clear_pages(self) -> None:
        while self._page_column.count():
            item = self._page_column.takeAt(0)
            widget = item.widget() if item else None
            if widget is not None:
                widget.deleteLater()

    def _show_page(self, turn: int, image: QImage) -> None:
        if turn != self._turn:
            return
        picture = QPixmap.fromImage(image)
        picture.setDevicePixelRatio(self.devicePixelRatioF())
        page = QLabel()
        page.setObjectName("paper")
        page.setPixmap(picture)
        number = self._page_column.count() + 1
        page.setAccessibleName(say("Page {n} of {count}", n=number, count=self._count))
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
            self._desk.tell(say("The sheet is still being drawn: print it when it is seen."))
            return
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        set_paper(printer, self._made.pdf, self.options().paper)
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


def _latest(desk: Desk, colony_id: ColonyId) -> Any:
    visits = [visit for visit in desk.book.read.visits(colony_id) if visit.day <= desk.spot.day]
    return visits[-1].id if visits else None
