"""The one motion of the book: leafing to another visit, the combs of the one before slide away in 120 ms.

The new combs are there at once, beneath; the old ones are only a picture over them that takes no mouse and
no keyboard. Whatever is pressed meanwhile goes where it belongs, and the picture is gone.
"""

from typing import Final

from PySide6.QtCore import QEasingCurve, QEvent, QObject, QPoint, QRect, Qt, QVariantAnimation
from PySide6.QtGui import QPainter, QPaintEvent, QPixmap
from PySide6.QtWidgets import QApplication, QWidget

from beeworkbook.qt.motion import Motion

SLIDE_MS: Final = 120
_PRESSED: Final = frozenset(
    {
        QEvent.Type.KeyPress,
        QEvent.Type.MouseButtonPress,
        QEvent.Type.TabletPress,
        QEvent.Type.Wheel,
    }
)


class LeafSlide(QWidget):
    """The picture of the visit that was left, on its way out of the walk."""

    def __init__(self, walk: QWidget, first: QWidget, last: QWidget, motion: Motion | None = None) -> None:
        """Over `walk`, as tall as from its part `first` to its part `last`."""
        super().__init__(walk)
        self.hide()
        self._walk, self._first, self._last = walk, first, last
        self._motion = motion or Motion()
        self._picture = QPixmap()
        self._step = 1
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._run = QVariantAnimation(self)
        self._run.setDuration(SLIDE_MS)
        self._run.setStartValue(0.0)
        self._run.setEndValue(1.0)
        self._run.setEasingCurve(QEasingCurve.Type.InOutQuad)
        self._run.valueChanged.connect(self._move)
        self._run.finished.connect(self.end)

    @property
    def is_running(self) -> bool:
        """Whether it is on its way."""
        return self._run.state() is QVariantAnimation.State.Running

    def leave(self, step: int) -> None:
        """The visit shown now is about to be left for a later one (1) or an earlier one (-1)."""
        self.end()
        if not self._first.isVisible() or not self._motion.allowed():
            return
        top = self._first.mapTo(self._walk, QPoint(0, 0)).y()
        bottom = self._last.mapTo(self._walk, QPoint(0, self._last.height())).y()
        room = QRect(0, top, self._walk.width(), bottom - top)
        self._picture = self._walk.grab(room)
        self._step = step
        self.setGeometry(room)
        self.show()
        self.raise_()
        app = QApplication.instance()
        if app is not None:
            app.installEventFilter(self)
        self._run.start()

    def end(self) -> None:
        """Be gone at once."""
        if self.isVisible():
            app = QApplication.instance()
            if app is not None:
                app.removeEventFilter(self)
            self._run.stop()
            self.hide()
            self._picture = QPixmap()

    def _move(self, share: float) -> None:
        self.move(round(-self._step * share * self.width()), self.y())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """What is pressed goes where it belongs, and is seen there at once."""
        if event.type() in _PRESSED or (watched is self._walk and event.type() is QEvent.Type.Resize):
            self.end()
        return False

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The picture, as it was taken."""
        painter = QPainter(self)
        painter.drawPixmap(0, 0, self._picture)
        painter.end()
