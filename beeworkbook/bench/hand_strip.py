"""The hand by mouse: a strip of tools, the size of the brush, and what may be painted over.

Each button does what its key does, and says so. The contents are in the legend below it.
"""

from collections.abc import Callable
from functools import partial
from typing import Final

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction, QIcon, QPainter, QPixmap
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QMenu, QSizePolicy, QToolButton, QWidget

from beeworkbook.bench.bench_keys import ONLY_KEY, TOOL_KEYS
from beeworkbook.bench.hand import Hand, tool_name
from beeworkbook.bench.tool_icons import TOOL_DRAWINGS, draw_larger, draw_only, draw_smaller
from beeworkbook.bench.tools.base import ToolName
from beeworkbook.comb.contents import KEY_LETTERS, Content
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.names import content_name
from beeworkbook.qt.comb_painter import swatch
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.icons import drawn_icon
from beeworkbook.qt.palette import Palette
from beeworkbook.words import number, say

BUTTON_PX: Final = 24
_ICON_PX: Final = 18
_SWATCH: Final = QSize(22, 16)


class HandStrip(QWidget):
    """What the hand holds, to be taken with the mouse; a click leaves the keyboard where it is."""

    def __init__(self, desk: Desk, hand: Hand) -> None:
        """The strip of a hand."""
        super().__init__()
        self.desk = desk
        self.hand = hand
        self.tools: dict[ToolName, QToolButton] = {}
        self._group = QButtonGroup(self)
        self._group.setExclusive(True)
        self.smaller = self._button(say("A smaller brush"), "[", lambda: hand.resize(-1.0))
        self.larger = self._button(say("A larger brush"), "]", lambda: hand.resize(1.0))
        self.only = self._button(say("Paint only over one content"), ONLY_KEY, self._ask_only)
        self.only.setCheckable(True)
        self.only_menu = QMenu(self)
        self._only_actions: dict[Content | None, QAction] = {}
        self._lay_out()
        self._fill_only_menu()
        self.setAccessibleName(say("tools"))
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        hand.changed.connect(self._show_hand)
        desk.palette_changed.connect(self._dress)
        self._dress(desk.palette)
        self._show_hand()

    def _lay_out(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(10, 4, 10, 0)
        row.setSpacing(0)
        for key, tool in TOOL_KEYS.items():
            button = self._button(_titled(tool_name(tool)), key, partial(self.hand.take_tool, tool))
            button.setCheckable(True)
            self._group.addButton(button)
            self.tools[tool] = button
            row.addWidget(button)
        row.addSpacing(5)
        for button in (self.smaller, self.larger, self.only):
            row.addWidget(button)
        row.addStretch(1)

    def _button(self, what: str, key: str, act: Callable[[], object]) -> QToolButton:
        button = QToolButton()
        button.setObjectName("tool")
        button.setFixedSize(BUTTON_PX, BUTTON_PX)
        button.setIconSize(QSize(_ICON_PX, _ICON_PX))
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.setToolTip(say("{what} ({key})", what=what, key=key))
        button.setAccessibleName(say("{what}, key {key}", what=what, key=key))
        button.clicked.connect(lambda _on=False: self._use(act))
        return button

    def _use(self, act: Callable[[], object]) -> None:
        act()
        self._show_hand()

    # --- painting only over one content -----------------------------------------------------------

    def _fill_only_menu(self) -> None:
        letters = installed_letters().contents
        self._add_only(None, say("Over everything"))
        self.only_menu.addSeparator()
        nothing = say("Only over what is not recorded")
        self._add_only(Content.NOT_RECORDED, f"{nothing}\t{ONLY_KEY} X")
        for content in KEY_LETTERS:
            name = say("Only over {content}", content=content_name(content))
            self._add_only(content, f"{name}\t{ONLY_KEY} {letters[content]}")

    def _add_only(self, content: Content | None, text: str) -> None:
        action = self.only_menu.addAction(text, lambda: self._use(lambda: self.hand.paint_only_over(content)))
        action.setCheckable(True)
        self._only_actions[content] = action

    def _ask_only(self) -> None:
        self.only_menu.popup(self.only.mapToGlobal(self.only.rect().bottomLeft()))

    # --- what is shown ----------------------------------------------------------------------------

    def _show_hand(self) -> None:
        hand = self.hand
        self._group.setExclusive(False)
        for tool, button in self.tools.items():
            button.setChecked(tool is hand.tool and not hand.is_empty)
        self._group.setExclusive(True)
        self.only.setChecked(hand.only is not None)
        for content, action in self._only_actions.items():
            action.setChecked(content is hand.only)
        size = say("brush {size} mm", size=number(round(2 * hand.radius_mm)))
        for button, what, key in (
            (self.smaller, say("A smaller brush"), "["),
            (self.larger, say("A larger brush"), "]"),
        ):
            button.setToolTip(say("{what} ({key}); now {size}", what=what, key=key, size=size))

    def _dress(self, palette: Palette) -> None:
        for tool, button in self.tools.items():
            button.setIcon(_on_and_off(TOOL_DRAWINGS[tool], palette))
        for button, draw in (
            (self.smaller, draw_smaller),
            (self.larger, draw_larger),
            (self.only, draw_only),
        ):
            button.setIcon(_on_and_off(draw, palette))
        for content, action in self._only_actions.items():
            if content is not None:
                image = swatch(content, _SWATCH.width(), _SWATCH.height(), palette)
                action.setIcon(QIcon(QPixmap.fromImage(image)))


def _on_and_off(draw: Callable[[QPainter], None], palette: Palette) -> QIcon:
    """Line alone, and filled while it is held."""
    made = QIcon()
    off, on = drawn_icon(draw, palette.ink), drawn_icon(draw, palette.focus, palette.focus)
    for icon, state in ((off, QIcon.State.Off), (on, QIcon.State.On)):
        for ratio in (1, 2):
            made.addPixmap(icon.pixmap(QSize(20, 20), float(ratio)), QIcon.Mode.Normal, state)
    return made


def _titled(text: str) -> str:
    return text[:1].upper() + text[1:]
