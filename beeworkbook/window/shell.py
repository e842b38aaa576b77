"""The bare window, painted before anything heavy is loaded, so that a start is felt at once."""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QByteArray, QSize, Qt
from PySide6.QtGui import QCloseEvent, QGuiApplication
from PySide6.QtWidgets import QLabel, QMainWindow

from beeworkbook.qt.memory import Memory
from beeworkbook.words import say

LEAST = QSize(1024, 600)
USUAL = QSize(1366, 740)
STANDS_HEIGHT: Final = 72
"""The room of the stands above all else. It is kept free until they are there."""


class Shell(QMainWindow):
    """A window that knows its place on the screen and what to do when it is closed."""

    def __init__(self, memory: Memory) -> None:
        """A window where it was left the last time."""
        super().__init__()
        self._memory = memory
        self.on_close: Callable[[], bool] | None = None
        self.setObjectName("ground")
        self.setWindowTitle(say("beeworkbook"))
        self.setMinimumSize(LEAST)
        self.bare(say("Opening the workbook"))
        self._restore()

    def bare(self, words: str) -> None:
        """Take the furniture out, if there is any, and show these words instead."""
        held = self.takeCentralWidget()
        if held is not None:
            held.hide()
            held.deleteLater()
        waiting = QLabel(words, self)
        waiting.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setCentralWidget(waiting)
        self.menuBar().clear()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Remember the place of the window, and let the furniture put its things away."""
        self._memory.put("geometry", bytes(self.saveGeometry().toBase64().data()).decode("ascii"))
        if self.on_close is not None and not self.on_close():
            event.ignore()
            return
        event.accept()

    def _restore(self) -> None:
        held = self._memory.get("geometry")
        if isinstance(held, str) and self.restoreGeometry(QByteArray.fromBase64(held.encode("ascii"))):
            return
        screen = QGuiApplication.primaryScreen()
        free = screen.availableGeometry()
        self.resize(USUAL.boundedTo(free.size()))
        if free.width() <= USUAL.width():
            self.setWindowState(Qt.WindowState.WindowMaximized)
