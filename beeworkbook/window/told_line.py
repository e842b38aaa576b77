"""What the window has to tell, at the right of the menu bar: a sentence for a while, and when it was kept."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt, QTimer
from PySide6.QtWidgets import QHBoxLayout, QLabel, QMenuBar, QWidget

from beeworkbook.bench.quiet_label import QuietLabel

TOLD_MS: Final = 9000
"""How long a sentence stays: long enough to read it twice."""
_GAP: Final = 24


class ToldLine(QWidget):
    """A line that lies in the menu bar beside the menus; it takes the room they leave and no more.

    A corner widget of the bar would push the menus away when a sentence is long.
    """

    def __init__(self, bar: QMenuBar) -> None:
        """An empty line in a menu bar."""
        super().__init__(bar)
        self._bar = bar
        self.sentence = ""
        """What is told now, in full."""
        self.told = QuietLabel("told")
        self.told.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.kept = QLabel()
        self.kept.setObjectName("small")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 14, 0)
        row.setSpacing(16)
        row.addWidget(self.told, 1)
        row.addWidget(self.kept)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._forget)
        bar.installEventFilter(self)
        self.fit()
        self.show()

    def tell(self, sentence: str) -> None:
        """Show a sentence for a while; what does not fit stands in the tooltip."""
        self.sentence = sentence
        self.fit()
        self.told.say(sentence)
        self._timer.start(TOLD_MS)

    def _forget(self) -> None:
        self.sentence = ""
        self.told.say("")

    def say_kept(self, words: str) -> None:
        """Say when the last change was kept, or that nothing can be."""
        self.kept.setText(words)
        self.kept.setAccessibleName(words)
        self.fit()

    def fit(self) -> None:
        """Take the room at the right of the menus."""
        actions = self._bar.actions()
        left = self._bar.actionGeometry(actions[-1]).right() + _GAP if actions else _GAP
        self.setGeometry(left, 0, max(0, self._bar.width() - left), self._bar.height())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The bar got another size."""
        if event.type() in {QEvent.Type.Resize, QEvent.Type.Show, QEvent.Type.LayoutRequest}:
            self.fit()
        return super().eventFilter(watched, event)
