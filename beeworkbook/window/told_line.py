"""What the window has to tell, at the right of the menu bar: a sentence for a while, and when it was kept."""

from typing import Final

from PySide6.QtCore import Qt, QTimer
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

    def let_go(self) -> None:
        """Leave the bar, which outlives the workbook this line speaks of."""
        self._timer.stop()
        self.hide()
        self.deleteLater()

    def fit(self) -> None:
        """Take the room at the right of the menus; to be called whenever the window gets another size."""
        bar = self.parentWidget()
        if not isinstance(bar, QMenuBar):
            return
        actions = bar.actions()
        left = bar.actionGeometry(actions[-1]).right() + _GAP if actions else _GAP
        height = max(bar.height(), bar.sizeHint().height())
        self.setGeometry(left, 0, max(0, bar.window().width() - left), height)
