"""Where each part of the window hangs: rooms of the right size, kept free until the part is there.

So the box stands where it will stay while everything round it is still being made.
"""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from beeworkbook.window.shell import STANDS_HEIGHT

WIDE_SCREEN: Final = 1700
TALL_SCREEN: Final = 1100
PAGE_WIDTH: Final = 276
WIDE_PAGE_WIDTH: Final = 400
RULER_HEIGHT: Final = 56
TALL_RULER_HEIGHT: Final = 200


class Room(QWidget):
    """A column that parts are hung in, one below the other, without a gap."""

    def __init__(self, *parts: QWidget) -> None:
        """A room with these parts."""
        super().__init__()
        self.setObjectName("ground")
        self.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        for part in parts:
            self.hang(part)

    def hang(self, part: QWidget, stretch: int = 0) -> None:
        """Hang a part below the others; with a stretch it takes the room that is left."""
        self._column.addWidget(part, stretch)


class Rooms:
    """All rooms of a window, put together round the box."""

    def __init__(self, window: QWidget, box: QWidget) -> None:
        """The rooms of `window`; the box hangs in its own already."""
        self.stands, self.ruler, self.bench, self.keys, self.side = Room(), Room(), Room(), Room(), Room()
        self.stands.setFixedHeight(STANDS_HEIGHT)
        self.side.setObjectName("board")
        self.walk = Room(self.ruler, _rule(), box, _rule())
        self.walk.hang(self.bench, 1)
        self.walk.hang(self.keys)
        self.views = QStackedWidget()
        self.views.addWidget(self.walk)
        left = Room(self.stands, _rule("edge"))
        left.hang(self.views, 1)
        upright = _rule("upright")
        upright.setFixedWidth(1)
        whole = QHBoxLayout(window)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(left, 1)
        whole.addWidget(upright)
        whole.addWidget(self.side)

    def fit(self, width: int, height: int) -> None:
        """Large screens get a wider page and a taller ruler."""
        self.side.setFixedWidth(WIDE_PAGE_WIDTH if width >= WIDE_SCREEN else PAGE_WIDTH)
        self.ruler.setFixedHeight(TALL_RULER_HEIGHT if height >= TALL_SCREEN else RULER_HEIGHT)


def _rule(name: str = "rule") -> QFrame:
    made = QFrame()
    made.setObjectName(name)
    return made
