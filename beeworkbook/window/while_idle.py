"""What is seen to while the keeper rests: where he is is remembered, and the file itself brought up to date.

Neither waits for the window to be closed, since a program may also be killed and a file copied as it lies.
"""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QObject, QTimer

from beeworkbook.qt.desk import Desk

REMEMBER_MS: Final = 700
"""Leafing through a season is one place to remember, not twenty."""
SETTLE_MS: Final = 3000
"""So long after the last change the log is folded into the file."""


class WhileIdle(QObject):
    """Waits for pauses on a desk."""

    def __init__(
        self, desk: Desk, remember: Callable[[], None], is_busy: Callable[[], bool], parent: QObject
    ) -> None:
        """`remember` keeps where the keeper is; nothing is written while `is_busy` says that he draws."""
        super().__init__(parent)
        self._desk = desk
        self._is_busy = is_busy
        self.remembering = _after(REMEMBER_MS, remember, self)
        self.settling = _after(SETTLE_MS, self.settle, self)
        desk.spot_changed.connect(lambda _spot: self.remembering.start())
        desk.book_changed.connect(lambda _changes: self.settling.start())
        self.remembering.start()
        self.settling.start()  # a program that was killed may have left a log behind

    def settle(self) -> None:
        """Fold the log into the file; while a stroke is made it waits for the next pause."""
        if self._is_busy():
            self.settling.start()
        else:
            self._desk.book.settle()

    def stop(self) -> None:
        """Wait for nothing more, as before the workbook is closed."""
        self.remembering.stop()
        self.settling.stop()


def _after(milliseconds: int, act: Callable[[], None], parent: QObject) -> QTimer:
    made = QTimer(parent)
    made.setSingleShot(True)
    made.setInterval(milliseconds)
    made.timeout.connect(act)
    return made
