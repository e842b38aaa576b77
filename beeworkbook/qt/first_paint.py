"""Going on once something is seen: a start shows what it has before it loads what comes next."""

from collections.abc import Callable
from typing import Final

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtWidgets import QWidget

MOST_MS: Final = 400
"""A window that is never painted, being minimised or behind a locked screen, must not wait for ever."""


class _FirstPaint(QObject):
    """Waits beside a widget until it is painted, does what is to follow once, and goes."""

    def __init__(self, widget: QWidget, then: Callable[[], object]) -> None:
        super().__init__(widget)
        self._then: Callable[[], object] | None = then
        widget.installEventFilter(self)
        QTimer.singleShot(MOST_MS, self, self._go_on)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Go on as soon as the loop comes round again: then the picture is on the screen."""
        if event.type() == QEvent.Type.Paint:
            watched.removeEventFilter(self)
            QTimer.singleShot(0, self, self._go_on)
        return False

    def _go_on(self) -> None:
        then, self._then = self._then, None
        if then is not None:
            self.deleteLater()
            then()


def when_painted(widget: QWidget, then: Callable[[], object]) -> None:
    """Call `then` once, after the next painting of a widget, or soon if it is not painted at all."""
    _FirstPaint(widget, then)
