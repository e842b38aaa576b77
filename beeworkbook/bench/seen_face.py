"""A face that follows the desk while it is seen, and catches up when it is seen again."""

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QWidget


class SeenFace(QWidget):
    """A face whose `refresh` may wait: hidden behind another room it only notes that it is behind."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """A face that was not seen yet; until it is, it follows at once."""
        super().__init__(parent)
        self._was_seen = False
        self._is_behind = False

    @property
    def is_behind(self) -> bool:
        """Whether it has to catch up."""
        return self._is_behind

    def refresh(self) -> None:
        """Show what the desk says now."""
        raise NotImplementedError

    def refresh_if_seen(self) -> None:
        """Refresh now, or when the face is next seen."""
        if self.waits():
            return
        self.refresh()

    def waits(self) -> bool:
        """Whether nobody sees it now; then it is behind."""
        self._is_behind = self._was_seen and not self.isVisible()
        return self._is_behind

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up."""
        self._was_seen = True
        if self._is_behind:
            self._is_behind = False
            self.refresh()
        super().showEvent(event)
