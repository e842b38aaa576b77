"""The window put together: the faces in their places, the menus, the keys. It decides nothing else.

The box comes first, so that it is seen before the rest is loaded; furniture makes the rest. Faces that
are not looked at are not made until they are.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication, QMenu, QWidget

from beeworkbook.bench.box_view import BoxView
from beeworkbook.colony.records import Colony
from beeworkbook.qt import theme
from beeworkbook.qt.desk import DEPTHS, Desk, Spot, View
from beeworkbook.qt.first_paint import when_painted
from beeworkbook.qt.memory import Memory
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.qt.spare import give_back
from beeworkbook.window.actions import MENUS
from beeworkbook.window.rooms import Rooms
from beeworkbook.window.shell import Shell
from beeworkbook.window.tab_order import order_tabs
from beeworkbook.window.while_idle import WhileIdle
from beeworkbook.words import say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.errors import RefusedError, StoreError
from beeworkbook.workbook.workbook import Workbook

if TYPE_CHECKING:
    from beeworkbook.bench.bench_view import BenchView
    from beeworkbook.bench.hand_strip import HandStrip
    from beeworkbook.bench.key_line import KeyLine
    from beeworkbook.bench.legend_keys import LegendKeys
    from beeworkbook.colony.sentences import Target
    from beeworkbook.window.commands import Commands
    from beeworkbook.window.field_keys import FieldKeys
    from beeworkbook.window.opening import Opener
    from beeworkbook.window.page import PageView
    from beeworkbook.window.stands import StandsStrip
    from beeworkbook.window.told_line import ToldLine
    from beeworkbook.year.ruler import RulerView

REMEMBERED: Final = frozenset(View) - {View.FIRST}
"""The rooms in which a workbook may be opened again."""
LEFT_MS: Final = 400
"""A room that was left gives its memory back when the next one is painted."""
WALK: Final = frozenset({View.BOX, View.BENCH})
"""The rooms in which the box is seen."""


class MainWindow(QWidget):
    """All faces of one open workbook, inside the shell."""

    commands: "Commands"
    stands: "StandsStrip"
    ruler: "RulerView"
    bench: "BenchView"
    key_line: "KeyLine"
    page: "PageView"
    legend: "LegendKeys"
    hand_strip: "HandStrip"
    told_line: "ToldLine"
    field_keys: "FieldKeys"
    while_idle: WhileIdle
    furnished = Signal()
    """Everything is there now."""

    def __init__(
        self, shell: Shell, book: Workbook, memory: Memory, opener: "Opener", *, box_first: bool = False
    ) -> None:
        """Furnish the shell with the faces of a workbook.

        With `box_first` a window that opens at the box is furnished with all else once the box is painted.
        """
        super().__init__(shell)
        self.setObjectName("ground")
        self.shell = shell
        self.memory = memory
        self.opener = opener
        self.desk = Desk(book, DARK if memory.get("dark") else LIGHT, self)
        self.actions_by_name: dict[str, QAction] = {}
        self.is_furnished = False
        self._faces: dict[View, QWidget] = {}
        self._copy_trouble: str | None = None
        self._left = QTimer(self, singleShot=True, interval=LEFT_MS)
        self._left.timeout.connect(give_back)
        self._restore_spot()
        self._shown: View | None = self.desk.spot.view
        self.box = BoxView(self.desk)
        self.rooms = Rooms(self, self.box)
        self.rooms.fit(shell.width(), shell.height())
        self.shell.setCentralWidget(self)
        self.menus = {name: QMenu(say(name), self) for name in MENUS}
        for menu in self.menus.values():
            self.shell.menuBar().addMenu(menu)
        self._retitle()
        if box_first and self._shown in WALK:
            if self._shown is View.BOX:
                self.box.take_focus()
            when_painted(self.box.row, self.furnish)
        else:
            self.furnish()

    # --- putting together -------------------------------------------------------------------------

    def furnish(self) -> None:
        """Make all parts that were not made yet, and put the keyboard where the keeper works."""
        if self.is_furnished:
            return
        from beeworkbook.window.furniture import furnish

        self.is_furnished = True
        furnish(self)
        self._listen()
        self._show_view(self.desk.spot)
        self.focus_view()
        if self.desk.book.warning:
            self.tell(self.desk.book.warning)
        self.furnished.emit()

    def _listen(self) -> None:
        self.desk.spot_changed.connect(self._spot_changed)
        self.desk.book_changed.connect(self._book_changed)
        self.desk.told.connect(self.tell)
        self.desk.palette_changed.connect(self._palette_changed)
        self.while_idle = WhileIdle(self.desk, self._remember_spot, self._is_drawing, self)
        self._check_dark()
        self._refresh_history()

    # --- what is shown ----------------------------------------------------------------------------

    def _show_view(self, spot: Spot) -> None:
        self.rooms.views.setCurrentWidget(self.face(spot.view))
        self.legend.setVisible(spot.view in WALK)
        self.hand_strip.setVisible(spot.view in WALK)
        self.rooms.side.setVisible(spot.view not in {View.FIRST, View.PAPERS})
        self.rooms.stands.setVisible(spot.view is not View.FIRST)

    def face(self, view: View) -> QWidget:
        """The face of a view, made the first time it is asked for."""
        if view in WALK:
            return self.rooms.walk
        if view not in self._faces:
            made = FACES[view](self)
            self._faces[view] = made
            self.rooms.views.addWidget(made)
            self.order_tabs()
        return self._faces[view]

    def order_tabs(self) -> None:
        """Let Tab go from the stands through the room that is shown to the page and the letters."""
        walk = (self.ruler, self.box, self.bench, self.key_line)
        order_tabs((self.stands, *walk, *self._faces.values(), self.page, self.hand_strip, self.legend))

    def face_if_made(self, view: View) -> QWidget | None:
        """The face of a view if somebody looked at it already."""
        return self._faces.get(view)

    def go_to(self, view: View) -> None:
        """Show a view and put the keyboard on it."""
        self.desk.go(view=view)
        self.focus_view()

    def go_to_field(self, target: "Target") -> None:
        """Put the keyboard on a field of this colony's line in the round."""
        from beeworkbook.rounds.round_view import RoundView
        from beeworkbook.rounds.walk import Spot as FieldSpot

        colony_id = self.desk.spot.colony_id
        self.go_to(View.ROUND)
        view = self.face(View.ROUND)
        if isinstance(view, RoundView) and colony_id is not None:
            view.lead_to(FieldSpot(colony_id, target))

    def focus_view(self) -> None:
        """Put the keyboard where this view is worked."""
        view = self.desk.spot.view
        target = {View.BOX: self.box, View.BENCH: self.bench}.get(view) or self.face(view)
        focus = getattr(target, "take_focus", None)
        if focus is not None:
            focus()
        else:
            target.setFocus(Qt.FocusReason.ShortcutFocusReason)

    def go_depth(self, step: int) -> None:
        """A depth down (1) or up (-1): round, box, bench."""
        view = self.desk.spot.view
        at = DEPTHS.index(view) if view in DEPTHS else 0 if step > 0 else 1
        self.go_to(DEPTHS[max(0, min(len(DEPTHS) - 1, at + step))])

    def tell(self, sentence: str) -> None:
        """Show a sentence for a while, beside the time of the last save."""
        self.told_line.tell(sentence)

    def attempt(self, act: Callable[[], object]) -> bool:
        """Do something the world may prevent; whether it was done. Else a sentence says why not."""
        try:
            act()
        except (StoreError, RefusedError, OSError) as error:
            from beeworkbook.window.dialogs.told import show_sentence

            show_sentence(self.shell, say("That was not done"), str(error))
            return False
        return True

    def keep_what_is_typed(self) -> None:
        """Finish every field in hand, as before the workbook is put away."""
        parts = (self.key_line, self.page, *self._faces.values()) if self.is_furnished else ()
        for part in parts:
            finish = getattr(part, "finish", None)
            if finish is not None:
                finish()

    def put_away(self) -> None:
        """Keep what is still being typed, remember where the keeper was, and close the workbook."""
        self.keep_what_is_typed()
        if self.is_furnished:
            self.page.day.note.let_go()
            self.told_line.let_go()
            self.while_idle.stop()
        self._remember_spot()
        self.desk.close()
        # Nothing may be painted, shown anew or counted again once the book is closed.
        for timer in self.findChildren(QTimer):
            timer.stop()
        self.hide()
        self.desk.book.close()

    # --- answers to signals -----------------------------------------------------------------------

    def key_line_left(self) -> None:
        """Give the keyboard back to the combs."""
        (self.bench if self.desk.spot.view is View.BENCH else self.box).take_focus()

    def _spot_changed(self, spot: Spot) -> None:
        elsewhere, self._shown = spot.view is not self._shown, spot.view
        self._show_view(spot)
        if elsewhere:  # whoever led here, the keyboard comes along
            self.focus_view()
            self._left.start()

    def _book_changed(self, changes: Changes) -> None:
        self._refresh_history()
        self._retitle()
        trouble = self.desk.book.copy_trouble
        if trouble and trouble != self._copy_trouble:
            self._copy_trouble = trouble
            self.tell(trouble)
        if changes.everything or changes.touches(Colony):
            self._first_or_not()

    def _first_or_not(self) -> None:
        """A book without a colony shows the two ways to begin, whatever else is in it."""
        is_empty = self.has_no_colony
        if is_empty and self.desk.spot.view is not View.FIRST:
            self.desk.go(view=View.FIRST)
        elif not is_empty and self.desk.spot.view is View.FIRST:
            self.desk.go(view=View.ROUND)

    @property
    def has_no_colony(self) -> bool:
        """Whether no colony was ever entered in this workbook."""
        return not self.desk.book.read.find(Colony)

    def _refresh_history(self) -> None:
        book = self.desk.book
        for name, word, label in (
            ("undo", say("Undo"), book.undo_label),
            ("redo", say("Redo"), book.redo_label),
        ):
            action = self.actions_by_name[name]
            action.setEnabled(bool(label))
            action.setText(say("{word}: {step}", word=word, step=label) if label else word)
        saved = book.last_saved
        if book.read_only:
            self.told_line.say_kept(say("open for looking only"))
        elif saved is not None:
            self.told_line.say_kept(say("kept {time}", time=f"{saved.astimezone():%H:%M:%S}"))

    def _is_drawing(self) -> bool:
        return any(side.canvas.is_busy for side in self.bench.sides.values())

    def _retitle(self) -> None:
        self.shell.setWindowTitle(self.desk.book.title)

    def _palette_changed(self, _palette: object) -> None:
        app = QApplication.instance()
        if isinstance(app, QApplication):
            theme.apply_theme(app, self.desk.palette)
        self._check_dark()
        self.memory.put("dark", self.desk.palette == DARK)

    def _check_dark(self) -> None:
        self.actions_by_name["dark"].setChecked(self.desk.palette == DARK)

    # --- where the keeper was ---------------------------------------------------------------------

    def _restore_spot(self) -> None:
        if self.has_no_colony:
            self.desk.go(view=View.FIRST)
            return
        held = self._remembered().get(str(self.desk.book.path))
        held = held if isinstance(held, dict) else {}
        known: dict[str, object] = {
            name: held[name]
            for name in ("apiary_id", "colony_id", "visit_id", "part_id", "frame_id")
            if isinstance(held.get(name), int)
        }
        view = held.get("view")
        if view in REMEMBERED:
            known["view"] = View(view)
        self.desk.go(**known)

    def _remembered(self) -> dict[str, object]:
        spots = self.memory.get("spots")
        return dict(spots) if isinstance(spots, dict) else {}

    def _remember_spot(self) -> None:
        spot = self.desk.spot
        spots = self._remembered()
        spots[str(self.desk.book.path)] = {
            "view": spot.view.value,
            "apiary_id": spot.apiary_id,
            "colony_id": spot.colony_id,
            "visit_id": spot.visit_id,
            "part_id": spot.part_id,
            "frame_id": spot.frame_id,
        }
        self.memory.put("spots", spots)
        self.memory.put("last_workbook", str(self.desk.book.path))

    # --- sizes ------------------------------------------------------------------------------------

    def resizeEvent(self, event: object) -> None:
        """Large screens get a wider page and a taller ruler."""
        self.rooms.fit(self.width(), self.height())
        if self.is_furnished:
            self.told_line.fit()
        super().resizeEvent(event)  # type: ignore[arg-type]


def _first(window: MainWindow) -> QWidget:
    from beeworkbook.window.first_start import FirstStart

    return FirstStart(window.desk, window.commands)


def _round(window: MainWindow) -> QWidget:
    from beeworkbook.rounds.round_view import RoundView

    return RoundView(window.desk)


def _stack(window: MainWindow) -> QWidget:
    from beeworkbook.window.stack_view import StackView

    return StackView(window.desk)


def _year(window: MainWindow) -> QWidget:
    from beeworkbook.year.year_view import YearView

    return YearView(window.desk)


def _days(window: MainWindow) -> QWidget:
    from beeworkbook.window.days_view import DaysView

    return DaysView(window.desk)


def _papers(window: MainWindow) -> QWidget:
    from beeworkbook.window.papers_view import PapersView

    return PapersView(window.desk)


FACES: Final[dict[View, Callable[[MainWindow], QWidget]]] = {
    View.FIRST: _first,
    View.ROUND: _round,
    View.STACK: _stack,
    View.YEAR: _year,
    View.DAYS: _days,
    View.PAPERS: _papers,
}
