"""The bench: one comb lifted out, both sides large, to be painted on and marked.

It shows what the desk's spot says and turns strokes, marks and letters into edits. Painting itself is
the canvas's, the meaning of keys bench_keys', the numbers' wording numbers'.
"""

from datetime import date
from typing import Final

import numpy as np
from PySide6.QtCore import QEvent, QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QMenu,
    QSizePolicy,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.bench.bench_keys import Deed, KeyReader, Meaning
from beeworkbook.bench.bench_side import BenchSide
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.mark_menu import fill_mark_menu
from beeworkbook.bench.numbers import comb_numbers
from beeworkbook.bench.on_show import CombOnShow, comb_on_show
from beeworkbook.bench.seen_face import SeenFace
from beeworkbook.colony.hive import PartDay, PlacedFrame
from beeworkbook.colony.records import Mark, Visit
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind, Origin
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.names import content_name
from beeworkbook.comb.regions import replace_content
from beeworkbook.comb.side import CellPatch, PatchMismatchError
from beeworkbook.qt.desk import Desk, Spot, View
from beeworkbook.qt.palette import Palette
from beeworkbook.words import date_words, say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.as_last import AsLastTime
from beeworkbook.workbook.edits.combs import PaintCells, SetCovered
from beeworkbook.workbook.edits.in_visit import NO_VISIT
from beeworkbook.workbook.edits.marks import AddMark, MoveMark, RemoveMark
from beeworkbook.workbook.place import Edit

FOLD_WIDTH: Final = 900
"""On a narrower bench the second side folds: a window under 1200 pixels has a page of 276 beside it."""
_MARGIN: Final = 12
_BETWEEN: Final = 14
_ENTER: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class BenchView(SeenFace):
    """Both sides of the comb the keeper is at."""

    typing_started = Signal(str)
    """A digit was typed: the comb is to be typed in eighths, beginning with this text."""
    content_changed = Signal(object)
    """The Content in the hand is another one."""
    shine_changed = Signal(bool)
    """The visit before shines through now, or no longer."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The bench of a desk."""
        super().__init__(parent)
        self.setObjectName("ground")
        self.desk = desk
        self.hand = Hand(self)
        self._page = (desk.spot.colony_id, desk.spot.day)
        self.reader = KeyReader()
        self._shines = False
        self._shining: date | None = None
        self._comb: CombOnShow | None = None
        self._shown_of: tuple[object, ...] = ()
        self.sides = {
            face: BenchSide(face, self.hand, desk.palette, with_comb=face is Face.A) for face in Face
        }
        self._nothing = QLabel()
        self._nothing.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self._nothing.setObjectName("small")
        self._other = QToolButton()
        self._other.setToolTip(say("Show the other side (Tab)"))
        self._other.clicked.connect(self._turn_over)
        self._lay_out()
        self._listen()
        self.refresh()

    def _lay_out(self) -> None:
        self._row = QWidget()
        row = QHBoxLayout(self._row)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(_BETWEEN)
        for side in self.sides.values():
            row.addWidget(side, 1)
        row.addWidget(self._other)
        self._other.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Expanding)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(_MARGIN, 4, _MARGIN, 4)
        whole.addWidget(self._row, 1)
        whole.addWidget(self._nothing, 1)
        self.setMinimumHeight(190)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def _listen(self) -> None:
        self.desk.spot_changed.connect(self._spot_changed)
        self.desk.book_changed.connect(self._book_changed)
        self.desk.palette_changed.connect(self._palette_changed)
        self.hand.content_changed.connect(self.content_changed)
        self.hand.changed.connect(self._say_hints)
        for face, side in self.sides.items():
            canvas = side.canvas
            canvas.entered.connect(lambda face=face: self._enter(face))
            canvas.side.painted.connect(lambda patch, content, face=face: self._paint(face, patch, content))
            canvas.side.picked.connect(self.choose_content)
            canvas.empty_handed.connect(self._say_empty)
            side.numbers_changed.connect(self._say_hints)
            canvas.mark_moved.connect(lambda mark, cell, face=face: self._move_mark(mark, face, cell))
            canvas.mark_removed.connect(lambda mark: self._do(RemoveMark(mark.id)))
            canvas.menu_asked.connect(
                lambda cell, mark, place, face=face: self._ask_menu(face, cell, mark, place)
            )

    # --- what the window asks -------------------------------------------------------------------

    def choose_content(self, content: Content) -> None:
        """Take a content in the hand."""
        if content is not Content.NOT_RECORDED:
            self.hand.take_content(content)

    def set_shine_through(self, *, on: bool) -> None:
        """Let the visit before shine through, or not."""
        self._shines = on
        self._shine()
        self._say_hints()
        self.shine_changed.emit(on)

    def take_focus(self) -> None:
        """Put the keyboard on the side the keeper is at."""
        self.sides[self.desk.spot.face].canvas.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def take_letter(self, letter: str) -> None:
        """Do what this letter does on the keyboard."""
        self._do_deed(self.reader.read(letter))

    # --- what is shown --------------------------------------------------------------------------

    def refresh(self) -> None:
        """Show what the spot says, drawing again only what differs."""
        box, placed = self.desk.box(), self._placed()
        comb = comb_on_show(self.desk.book, placed, self.desk.spot.visit_id) if placed else None
        self._comb = comb
        is_comb = comb is not None and comb.is_comb
        self._row.setVisible(is_comb)
        self._nothing.setVisible(not is_comb)
        if comb is None or box is None or not is_comb:
            self._nothing.setText(_nothing_words(comb))
            return
        hive = self.desk.hive_day()
        shown_of = (self.desk.spot.visit_id, comb.frame, comb.place)
        for face, side in self.sides.items():
            if shown_of != self._shown_of:
                side.forget()
            if hive is not None:
                side.show_comb(comb, len(box.frames), hive.hive.way)
            side.canvas.set_current(current=face is self.desk.spot.face)
        if shown_of != self._shown_of:
            self._shown_of = shown_of
            self._shine()
        self._fold()
        self._say_hints()

    def _placed(self) -> PlacedFrame | None:
        box: PartDay | None = self.desk.box()
        wanted = self.desk.spot.frame_id
        for placed in box.frames if box else ():
            if placed.frame is not None and placed.frame.id == wanted:
                return placed
        return None

    def _shine(self) -> None:
        spot, comb = self.desk.spot, self._comb
        last = {}
        if self._shines and spot.visit_id and spot.frame_id:
            last = self.desk.book.read.last_sides(spot.frame_id, spot.visit_id)
        visits = [self.desk.book.read.get(Visit, side.visit_id) for side in last.values()]
        self._shining = max((visit.day for visit in visits if visit is not None), default=None)
        for face, side in self.sides.items():
            cells = None
            if face in last and comb is not None and comb.is_comb:
                frame_type = comb.sides[face].frame_type
                if last[face].frame_type == frame_type.id:
                    cells = unpack(last[face].cells, cells=frame_type.lattice.cells)
            side.canvas.show_last(cells)

    def _say_hints(self) -> None:
        current = self.desk.spot.face
        tallies = [side.tally for side in self.sides.values() if side.tally is not None]
        other = comb_numbers(tallies)
        if self._shines:
            other = "; ".join(filter(None, (other, self._shine_words())))
        for face, side in self.sides.items():
            if self.reader.asks and face is current:
                side.ask(self.reader.asks)
            else:
                side.say_hint(self.hand.words if face is current else other)
            side.canvas.waits = bool(self.reader.asks)

    def _shine_words(self) -> str:
        if self._shining is None:
            return say("not looked at before")
        return say("dashed: as on {day}", day=date_words(self._shining))

    def _fold(self) -> None:
        """Beside a narrow window only the side the keeper is at is shown."""
        narrow = self.width() < FOLD_WIDTH
        current = self.desk.spot.face
        for face, side in self.sides.items():
            side.setVisible(not narrow or face is current)
            side.show_comb_name(shown=face is Face.A or narrow)
        self._other.setVisible(narrow)
        self._other.setText(say("side {face}", face=current.other.value))
        self._other.setAccessibleName(say("show side {face}", face=current.other.value))

    def _turn_over(self) -> None:
        self.desk.go(face=self.desk.spot.face.other)
        self.take_focus()

    def _book_changed(self, changes: Changes) -> None:
        spot = self.desk.spot
        if changes.everything or spot.visit_id in changes.visits or spot.colony_id in changes.colonies:
            self.refresh_if_seen()

    def _spot_changed(self, spot: Spot) -> None:
        """Another page empties the hand, so that no click colours a day it was not meant for."""
        page = (spot.colony_id, spot.day)
        if page != self._page:
            self._page = page
            self.hand.put_down()
        self.refresh_if_seen()

    def _say_empty(self) -> None:
        self.desk.tell(say("The hand is empty: press a content's letter, or click it, and then paint."))

    def event(self, event: QEvent) -> bool:
        """A dialog over the window empties the hand: the click that closes it may fall on a comb."""
        if event.type() == QEvent.Type.WindowBlocked:
            self.hand.put_down()
        return super().event(event)

    def _palette_changed(self, palette: Palette) -> None:
        for side in self.sides.values():
            side.set_palette(palette)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Fold or unfold the second side; both are as wide to the pixel, so that they share their maps."""
        super().resizeEvent(event)
        odd = (self.width() - 2 * _MARGIN - _BETWEEN) % 2
        layout = self._row.layout()
        if layout is not None:
            layout.setContentsMargins(0, 0, odd, 0)
        if self._comb is not None and self._comb.is_comb:
            self._fold()

    # --- what is done ---------------------------------------------------------------------------

    def _enter(self, face: Face) -> None:
        if self.desk.spot.view is View.BOX:
            self.desk.go(view=View.BENCH, face=face)
        elif face is not self.desk.spot.face:
            self.desk.go(face=face)

    def _do(self, edit: Edit) -> object:
        return self.desk.do(edit, source=self)

    def _note(self, edit: Edit) -> object:
        """Note something in the visit that lies open; on a day without one it begins in the same step."""
        return self.desk.note(edit, source=self)

    def _paint(self, face: Face, patch: CellPatch, content: Content, label: str = "") -> None:
        patch = self._without_what_was_assumed(face, patch)
        frame_id, made = self.desk.spot.frame_id, None
        if frame_id is not None:
            try:
                made = self._note(PaintCells(NO_VISIT, frame_id, face, patch, content, label))
            except PatchMismatchError as error:
                self.desk.tell(str(error))
        if made is None:
            self.sides[face].forget()
            self.refresh()

    def _without_what_was_assumed(self, face: Face, patch: CellPatch) -> CellPatch:
        """Painting on an assumed side keeps only what was painted: nobody saw the rest."""
        shown = self._comb.sides.get(face) if self._comb is not None else None
        if shown is None or shown.side is None or shown.side.origin is not Origin.ASSUMED:
            return patch
        seen = np.full_like(shown.cells, Content.NOT_RECORDED)
        seen[patch.indices] = patch.after
        self.desk.tell(say("This side was only assumed, so what you paint is all that counts on it."))
        return CellPatch.between(shown.cells, seen)

    def _mark(self, kind: MarkKind, cell_kind: CellKind | None = None) -> None:
        """A mark on the cell in hand; without one it belongs to the side and is given no place."""
        face = self.desk.spot.face
        cell = self.sides[face].canvas.cell_in_hand
        self.add_mark(face, cell, kind, cell_kind)

    def add_mark(
        self, face: Face, cell: int | None, kind: MarkKind, cell_kind: CellKind | None = None, text: str = ""
    ) -> None:
        """Note that something was seen on a cell, or on the side without a place."""
        frame_id = self.desk.spot.frame_id
        if frame_id is not None:
            self._note(AddMark(NO_VISIT, kind, frame_id, face, cell, cell_kind=cell_kind, text=text))

    def _move_mark(self, mark: Mark, face: Face, cell: int) -> None:
        self._do(MoveMark(mark.id, mark.frame_id, face, cell))

    def _ask_menu(self, face: Face, cell: int, mark: Mark | None, place: QPoint) -> None:
        menu = QMenu(self)
        fill_mark_menu(menu, self, face, cell, mark)
        menu.popup(place)

    def _cover(self, eighths: float) -> None:
        frame_id = self.desk.spot.frame_id
        if frame_id is not None:
            self._note(SetCovered(NO_VISIT, frame_id, self.desk.spot.face, eighths))
            self.desk.tell(say("bees cover {eighths} eighths of this side", eighths=round(eighths)))

    def as_last_time(self, face: Face) -> None:
        """A side was looked at and is as it was: copied, and as coarse as what it copies."""
        frame_id = self.desk.spot.frame_id
        if frame_id is not None:
            self._note(AsLastTime(NO_VISIT, frame_id, face))

    def content_at(self, face: Face, cell: int) -> Content:
        """What a cell holds as it is shown."""
        return Content(int(self.sides[face].canvas.side.cells[cell]))

    def replace_all(self, face: Face, cell: int | None) -> None:
        """The content of a cell becomes the one in the hand, all over the side."""
        if self.hand.is_empty:
            self._say_empty()
            return
        if cell is None:
            self.desk.tell(say("Point at the content to be changed, or move the cell cursor to it."))
            return
        cells, old, new = self.sides[face].canvas.side.cells, self.content_at(face, cell), self.hand.content
        patch = CellPatch.between(cells, replace_content(cells, old, new))
        if not patch.is_empty:
            what = {"old": content_name(old), "new": content_name(new)}
            self._paint(
                face, patch, new, say("change {old} to {new} on {side}", side=self._name(face), **what)
            )

    def _name(self, face: Face) -> str:
        """A side as the keeper says it: "5A"."""
        return f"{self._comb.place}{face}" if self._comb is not None else face.value

    # --- keys -----------------------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Letters are contents, the free ones tools; Enter is the next comb."""
        plain = not event.modifiers() & (
            Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        )
        if event.key() in _ENTER and plain:
            self.desk.step_comb(1)
        elif event.key() == Qt.Key.Key_Escape and self.reader.forget():
            self._say_hints()
        elif event.key() == Qt.Key.Key_Escape and not self.hand.is_empty:
            self.hand.put_down()
        elif plain and event.text().strip() and event.text().isprintable():
            deed = self.reader.read(event.text())
            self._do_deed(deed)
            if deed.meaning is Meaning.NOTHING:
                super().keyPressEvent(event)
        else:
            super().keyPressEvent(event)

    def _do_deed(self, deed: Deed) -> None:
        canvas = self.sides[self.desk.spot.face].canvas
        if deed.meaning is Meaning.CONTENT and deed.content is not None:
            self.choose_content(deed.content)
        elif deed.meaning is Meaning.TOOL and deed.tool is not None:
            self.hand.take_tool(deed.tool)
        elif deed.meaning is Meaning.ONLY:
            self.hand.paint_only_over(deed.content)
        elif deed.meaning is Meaning.BRUSH:
            self.hand.resize(deed.number)
        elif deed.meaning is Meaning.ZOOM:
            canvas.zoom(deed.number)
        elif deed.meaning is Meaning.WHOLE:
            canvas.show_whole()
        elif deed.meaning is Meaning.TYPE:
            held = "" if self.hand.is_empty else installed_letters().contents.get(self.hand.content, "")
            self.typing_started.emit(held + deed.text)
        else:
            self._do_to_side(deed)
        self._say_hints()

    def _do_to_side(self, deed: Deed) -> None:
        if deed.meaning is Meaning.QUEEN:
            self._mark(MarkKind.QUEEN)
        elif deed.meaning is Meaning.QUEEN_CELL:
            self._mark(MarkKind.QUEEN_CELL, deed.cell_kind)
        elif deed.meaning is Meaning.BEES:
            self._cover(deed.number)
        elif deed.meaning is Meaning.AS_LAST_TIME:
            self.as_last_time(self.desk.spot.face)
        elif deed.meaning is Meaning.REPLACE:
            face = self.desk.spot.face
            self.replace_all(face, self.sides[face].canvas.cell_in_hand)
        elif deed.meaning is Meaning.SHINE:
            self.set_shine_through(on=not self._shines)


def _nothing_words(comb: CombOnShow | None) -> str:
    if comb is None:
        return say("No comb is chosen.")
    return say("Place {place}: {word}.", place=comb.place, word=comb.word)
