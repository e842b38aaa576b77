"""A label that gives way: used wherever a sentence stands in a line that may grow narrow."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtWidgets import QLabel, QSizePolicy


class QuietLabel(QLabel):
    """A label that never asks for more room than there is; what does not fit stands in its tooltip."""

    def __init__(self, name: str = "small", *, fills: bool = True) -> None:
        """An empty label; `name` chooses its look. It fills the room that is left, or takes what it needs."""
        super().__init__()
        self.setObjectName(name)
        width = QSizePolicy.Policy.Ignored if fills else QSizePolicy.Policy.Maximum
        self.setSizePolicy(width, QSizePolicy.Policy.Preferred)
        self._text = ""

    def say(self, text: str) -> None:
        """Show a text."""
        if text != self._text:
            self._text = text
            self.setAccessibleName(text)
            self._fit()
            self.updateGeometry()

    def sizeHint(self) -> QSize:
        """As wide as the whole text."""
        return QSize(self.fontMetrics().horizontalAdvance(self._text) + 2, super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """It can shrink to nothing."""
        return QSize(0, super().minimumSizeHint().height())

    def resizeEvent(self, event: object) -> None:
        """Fit the text into the new width."""
        self._fit()
        super().resizeEvent(event)  # type: ignore[arg-type]

    def _fit(self) -> None:
        shown = self.fontMetrics().elidedText(self._text, Qt.TextElideMode.ElideRight, max(0, self.width()))
        self.setText(shown)
        self.setToolTip(self._text if shown != self._text else "")
