"""The window put together: the faces in their places, the menus, the keys. It decides nothing else.

Faces that are not looked at are not made until they are; the walk (ruler, box, bench, key line) is.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QMenu,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.bench.bench_view import BenchView
from beeworkbook.bench.box_view import BoxView
from beeworkbook.bench.key_line import KeyLine
from beeworkbook.bench.legend_keys import LegendKeys
from beeworkbook.colony.records import Colony
from beeworkbook.qt import theme
from beeworkbook.qt.desk import DEPTHS, Desk, Spot, View
from beeworkbook.qt.memory import Memory
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.window.actions import ACTIONS, MENUS, ActionSpec
from beeworkbook.window.commands import Commands
from beeworkbook.window.dialogs.told import show_sentence
from beeworkbook.window.field_keys import FieldKeys
from beeworkbook.window.page import PageView
from beeworkbook.window.shell import Shell
from beeworkbook.window.stands import StandsStrip
from beeworkbook.window.told_line import ToldLine
from beeworkbook.words import say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.errors import RefusedError, StoreError
from beeworkbook.workbook.workbook import Workbook
from beeworkbook.year.ruler import RulerView

if TYPE_CHECKING:
    from beeworkbook.window.opening import Opener

WIDE_SCREEN: Final = 1700
TALL_SCREEN: Final = 1100
PAGE_WIDTH: Final = 276
WIDE_PAGE_WIDTH: Final = 400
RULER_HEIGHT: Final = 56
REMEMBERED: Final = frozenset(View) - {View.FIRST}
"""The rooms in which a workbook may be opened again."""
TALL_RULER_HEIGHT: Final = 200


class MainWindow(QWidget):
    """All faces of one open workbook, inside the shell."""

    def __init__(self, shell: Shell, book: Workbook, memory: Memory, opener: "Opener") -> None:
        """Furnish the shell with the faces of a workbook."""
        super().__init__(shell)
        self.setObjectName("ground")
        self.shell = shell
        self.memory = memory
        self.opener = opener
        self.desk = Desk(book, DARK if memory.get("dark") else LIGHT, self)
        self.commands = Commands(self)
        self.actions_by_name: dict[str, QAction] = {}
        self._faces: dict[View, QWidget] = {}
        self._copy_trouble: str | None = None
        self._shown: View | None = None
        self._build()
        self._build_menus()
        self._listen()
        self._restore_spot()
        self._show_view(self.desk.spot)
        self._retitle()

    # --- putting together -------------------------------------------------------------------------

    def _build(self) -> None:
        self.stands = StandsStrip(self.desk)
        self.ruler = RulerView(self.desk)
        self.box = BoxView(self.desk)
        self.bench = BenchView(self.desk)
        self.key_line = KeyLine(self.desk)
        self.box.typing_started.connect(self.key_line.begin)
        self.bench.typing_started.connect(self.key_line.begin)
        self.key_line.left.connect(self._key_line_left)
        self.walk = _column(self.ruler, _rule(), self.box, _rule(), self.bench, self.key_line)
        self.page = PageView(self.desk)
        self.legend = LegendKeys(self.desk)
        self.legend.content_chosen.connect(self.bench.choose_content)
        self.bench.content_changed.connect(self.legend.show_content)
        self.views = QStackedWidget()
        self.views.addWidget(self.walk)
        self.side = _column(self.page, self.legend)
        self.side.setObjectName("board")
        left = _column(self.stands, _rule("edge"), self.views)
        rule = QFrame()
        rule.setObjectName("upright")
        rule.setFixedWidth(1)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(left, 1)
        whole.addWidget(rule)
        whole.addWidget(self.side)
        self.shell.setCentralWidget(self)
        self._fit_to_width()

    def _build_menus(self) -> None:
        bar = self.shell.menuBar()
        for name in MENUS:
            menu = QMenu(say(name), self)
            bar.addMenu(menu)
            menu.setToolTipsVisible(True)
            group = 0
            for spec in (spec for spec in ACTIONS if spec.menu == name):
                if spec.group != group:
                    menu.addSeparator()
                    group = spec.group
                self._add_action(menu, spec)
        self.told_line = ToldLine(bar)

    def _add_action(self, menu: QMenu, spec: ActionSpec) -> None:
        action = QAction(say(spec.text), self)
        action.setShortcut(QKeySequence(spec.keys))
        action.setToolTip(say("{tip} ({keys})", tip=say(spec.tip), keys=spec.keys))
        action.setStatusTip(say(spec.tip))
        action.setCheckable(spec.checkable)
        action.setObjectName(spec.name)
        action.triggered.connect(self.commands.handler(spec.name))
        if spec.writes and self.desk.book.read_only:
            action.setEnabled(False)
        menu.addAction(action)
        self.actions_by_name[spec.name] = action

    def _listen(self) -> None:
        self.desk.spot_changed.connect(self._spot_changed)
        self.desk.book_changed.connect(self._book_changed)
        self.desk.told.connect(self.tell)
        self.desk.palette_changed.connect(self._palette_changed)
        self._field_keys = FieldKeys(self)
        self._check_dark()
        self._refresh_history()

    # --- what is shown ----------------------------------------------------------------------------

    def _show_view(self, spot: Spot) -> None:
        walking = spot.view in {View.BOX, View.BENCH}
        self.views.setCurrentWidget(self.walk if walking else self.face(spot.view))
        self.legend.setVisible(walking)
        self.side.setVisible(spot.view not in {View.FIRST, View.PAPERS})
        self.stands.setVisible(spot.view is not View.FIRST)

    def face(self, view: View) -> QWidget:
        """The face of a view, made the first time it is asked for."""
        if view in {View.BOX, View.BENCH}:
            return self.walk
        if view not in self._faces:
            made = FACES[view](self)
            self._faces[view] = made
            self.views.addWidget(made)
        return self._faces[view]

    def go_to(self, view: View) -> None:
        """Show a view and put the keyboard on it."""
        self.desk.go(view=view)
        self.focus_view()

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
            show_sentence(self.shell, say("That was not done"), str(error))
            return False
        return True

    def put_away(self) -> None:
        """Keep what is still being typed, remember where the keeper was, and close the workbook."""
        self.key_line.finish()
        for face in (self.page, *self._faces.values()):
            finish = getattr(face, "finish", None)
            if finish is not None:
                finish()
        self._remember_spot()
        self.desk.close()
        # Nothing may be painted or shown anew once the book is closed.
        self.hide()
        self.desk.book.close()

    # --- answers to signals -----------------------------------------------------------------------

    def _key_line_left(self) -> None:
        (self.bench if self.desk.spot.view is View.BENCH else self.box).take_focus()

    def _spot_changed(self, spot: Spot) -> None:
        elsewhere, self._shown = spot.view is not self._shown, spot.view
        self._show_view(spot)
        if elsewhere:  # whoever led here, the keyboard comes along
            self.focus_view()

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
        self._fit_to_width()
        super().resizeEvent(event)  # type: ignore[arg-type]

    def _fit_to_width(self) -> None:
        self.side.setFixedWidth(WIDE_PAGE_WIDTH if self.width() >= WIDE_SCREEN else PAGE_WIDTH)
        self.ruler.setFixedHeight(TALL_RULER_HEIGHT if self.height() >= TALL_SCREEN else RULER_HEIGHT)


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


def _column(*widgets: QWidget) -> QWidget:
    held = QWidget()
    held.setObjectName("ground")
    column = QVBoxLayout(held)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    for widget in widgets:
        stretch = 1 if isinstance(widget, (BenchView, PageView, QStackedWidget)) else 0
        column.addWidget(widget, stretch)
    return held


def _rule(name: str = "rule") -> QFrame:
    made = QFrame()
    made.setObjectName(name)
    return made
