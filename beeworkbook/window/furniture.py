"""The parts of the window that a start can do without until the box is seen: made and hung in one go.

They are heavy to load: the bench has its tools, the page its sentences, the ruler its curves.
"""

from typing import TYPE_CHECKING

from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QSizePolicy

from beeworkbook.bench.bench_view import BenchView
from beeworkbook.bench.hand_strip import HandStrip
from beeworkbook.bench.key_line import KeyLine
from beeworkbook.bench.legend_keys import LegendKeys
from beeworkbook.window.actions import ACTIONS, ActionSpec
from beeworkbook.window.commands import Commands
from beeworkbook.window.field_keys import FieldKeys
from beeworkbook.window.leaf_slide import LeafSlide
from beeworkbook.window.page import PageView
from beeworkbook.window.stands import StandsStrip
from beeworkbook.window.told_line import ToldLine
from beeworkbook.words import say
from beeworkbook.year.ruler import RulerView

if TYPE_CHECKING:
    from beeworkbook.window.main_window import MainWindow


def furnish(window: "MainWindow") -> None:
    """Hang every part of the window in the room that was kept for it."""
    window.commands = Commands(window)
    _hang_walk(window)
    _hang_page(window)
    for name, menu in window.menus.items():
        _fill_menu(window, name, menu)
    window.bench.shine_changed.connect(window.actions_by_name["shine_through"].setChecked)
    window.told_line = ToldLine(window.shell.menuBar())
    window.field_keys = FieldKeys(window)
    window.order_tabs()


def _hang_walk(window: "MainWindow") -> None:
    desk, rooms = window.desk, window.rooms
    window.stands = StandsStrip(desk)
    window.ruler = RulerView(desk)
    window.bench = BenchView(desk)
    window.key_line = KeyLine(desk)
    window.box.typing_started.connect(window.key_line.begin)
    window.bench.typing_started.connect(window.key_line.begin)
    window.key_line.left.connect(window.key_line_left)
    window.ruler.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
    rooms.stands.hang(window.stands)
    rooms.ruler.hang(window.ruler)
    rooms.bench.hang(window.bench)
    rooms.keys.hang(window.key_line)
    slide = LeafSlide(rooms.walk, window.box, rooms.bench)
    desk.leafing.connect(slide.leave)


def _hang_page(window: "MainWindow") -> None:
    window.page = PageView(window.desk)
    window.legend = LegendKeys(window.desk)
    window.legend.content_chosen.connect(window.bench.choose_content)
    window.legend.letter_chosen.connect(window.bench.take_letter)
    window.bench.content_changed.connect(window.legend.show_content)
    window.hand_strip = HandStrip(window.desk, window.bench.hand)
    window.page.pointed.connect(window.box.row.light_combs)
    window.page.field_asked.connect(window.go_to_field)
    window.rooms.side.hang(window.page, 1)
    window.rooms.side.hang(window.hand_strip)
    window.rooms.side.hang(window.legend)


def _fill_menu(window: "MainWindow", name: str, menu: QMenu) -> None:
    menu.setToolTipsVisible(True)
    group = 0
    for spec in (spec for spec in ACTIONS if spec.menu == name):
        if spec.group != group:
            menu.addSeparator()
            group = spec.group
        _add_action(window, menu, spec)


def _add_action(window: "MainWindow", menu: QMenu, spec: ActionSpec) -> None:
    action = QAction(say(spec.text), window)
    action.setShortcut(QKeySequence(spec.keys))
    action.setToolTip(say("{tip} ({keys})", tip=say(spec.tip), keys=spec.keys))
    action.setStatusTip(say(spec.tip))
    action.setCheckable(spec.checkable)
    action.setObjectName(spec.name)
    action.triggered.connect(window.commands.handler(spec.name))
    if spec.writes and window.desk.book.read_only:
        action.setEnabled(False)
    menu.addAction(action)
    window.actions_by_name[spec.name] = action
