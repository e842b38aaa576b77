"""The window put together: the faces in their places, the menus, the keys. It decides nothing else.

Faces that are not looked at are not made until they are; the walk (ruler, box, bench, key line) is.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QLabel,
    QMenu,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.bench.bench_view import BenchView
from beeworkbook.bench.box_view import BoxView
from beeworkbook.bench.key_line import KeyLine
from beeworkbook.bench.legend_keys import LegendKeys
from beeworkbook.qt import theme
from beeworkbook.qt.desk import DEPTHS, Desk, Spot, View
from beeworkbook.qt.memory import Memory
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.window.actions import ACTIONS, MENUS, ActionSpec
from beeworkbook.window.commands import Commands
from beeworkbook.window.dialogs.told import show_sentence
from beeworkbook.window.page import PageView
from beeworkbook.window.shell import Shell
from beeworkbook.window.stands import StandsStrip
from beeworkbook.words import say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.errors import RefusedError, StoreError
from beeworkbook.workbook.workbook import Workbook
from beeworkbook.year.ruler import RulerView

if TYPE_CHECKING:
    from beeworkbook.window.opening import Opener

TOLD_MS: Final = 9000
"""How long a sentence stays: long enough to read it twice."""
WIDE_SCREEN: Final = 1700
TALL_SCREEN: Final = 1100
PAGE_WIDTH: Final = 276
WIDE_PAGE_WIDTH: Final = 400
RULER_HEIGHT: Final = 56
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
        bar.clear()
        for name in MENUS:
            menu = bar.addMenu(say(name))
            menu.setToolTipsVisible(True)
            group = 0
            for spec in (spec for spec in ACTIONS if spec.menu == name):
                if spec.group != group:
                    menu.addSeparator()
                    group = spec.group
                self._add_action(menu, spec)
        self.told_label = QLabel()
        self.told_label.setObjectName("told")
        self.kept_label = QLabel()
        self.kept_label.setObjectName("small")
        corner = QWidget()
        row = QHBoxLayout(corner)
        row.setContentsMargins(0, 0, 14, 0)
        row.setSpacing(16)
        row.addWidget(self.told_label)
        row.addWidget(self.kept_label)
        bar.setCornerWidget(corner, Qt.Corner.TopRightCorner)
        corner.show()

    def _add_action(self, menu: QMenu, spec: ActionSpec) -> None:
        action = QAction(say(spec.text), self.shell)
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
        self._told_timer = QTimer(self)
        self._told_timer.setSingleShot(True)
        self._told_timer.timeout.connect(lambda: self.told_label.setText(""))
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
        self.told_label.setText(sentence)
        self.told_label.setToolTip(sentence)
        self.told_label.setAccessibleDescription(sentence)
        self._told_timer.start(TOLD_MS)

    def attempt(self, act: Callable[[], object]) -> bool:
        """Do something the world may prevent; whether it was done. Else a sentence says why not."""
        try:
            act()
        except (StoreError, RefusedError, OSError) as error:
            show_sentence(self.shell, say("That was not done"), str(error))
            return False
        return True

    def put_away(self) -> None:
        """Remember where the keeper was and close the workbook."""
        self._remember_spot()
        self.key_line.finish()
        self.desk.close()
        self.desk.book.close()

    # --- answers to signals -----------------------------------------------------------------------

    def _key_line_left(self) -> None:
        (self.bench if self.desk.spot.view is View.BENCH else self.box).take_focus()

    def _spot_changed(self, spot: Spot) -> None:
        if spot.view is View.FIRST and self.desk.book.read.apiaries():
            self.desk.go(view=View.ROUND)
            return
        self._show_view(spot)

    def _book_changed(self, _changes: Changes) -> None:
        self._refresh_history()
        self._retitle()
        if self.desk.spot.view is View.FIRST and self.desk.spot.colony_id is not None:
            self.desk.go(view=View.BOX)

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
            self.kept_label.setText(say("open for looking only"))
        elif saved is not None:
            self.kept_label.setText(say("kept {time}", time=f"{saved.astimezone():%H:%M:%S}"))

    def _retitle(self) -> None:
        self.shell.setWindowTitle(self.desk.book.title)

    def _palette_changed(self, _palette: object) -> None:
        app = QApplication.instance()
        if isinstance(app, QApplication):
            theme.apply_theme(app, self.desk.palette)
        self.memory.put("dark", self.desk.palette == DARK)

    # --- where the keeper was ---------------------------------------------------------------------

    def _restore_spot(self) -> None:
        if not self.desk.book.read.apiaries():
            self.desk.go(view=View.FIRST)
            return
        held = self.memory.get("spots", {}).get(str(self.desk.book.path), {})
        known = {
            name: held[name]
            for name in ("apiary_id", "colony_id", "visit_id", "part_id", "frame_id")
            if held.get(name)
        }
        view = held.get("view", View.ROUND)
        if view in {View.ROUND, View.BOX, View.BENCH, View.STACK, View.YEAR, View.DAYS, View.PAPERS}:
            known["view"] = View(view)
        self.desk.go(**known)

    def _remember_spot(self) -> None:
        spot = self.desk.spot
        spots = dict(self.memory.get("spots", {}))
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
