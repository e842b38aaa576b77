"""Rows of label and value, each leading to where it came from: pointed at, its combs are told; chosen, it is.

It keeps its labels, so that a stroke on the bench costs no new widgets. The whole table is one stop of
the Tab key; Up and Down go from row to row, Enter chooses.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QEvent, QObject, QRect, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QSizePolicy, QWidget

from beeworkbook.colony.records import FrameId
from beeworkbook.colony.sentences import PageRow
from beeworkbook.qt import theme
from beeworkbook.words import say

LABEL_WIDTH: Final = 72
_STEPS: Final = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
_CHOOSE: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space}


@dataclass
class _Line:
    name: QLabel
    value: QLabel
    under: QFrame
    row: PageRow | None = None


class RowTable(QWidget):
    """Rows of a label and a value, with a rule under each; what was not recorded in italics."""

    chosen = Signal(object)
    """The PageRow that was clicked, or chosen with Enter."""
    pointed = Signal(object)
    """The frames the row under the pointer or the keyboard came from; empty when none is pointed at."""

    def __init__(self) -> None:
        """An empty table."""
        super().__init__()
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(2)
        self._grid.setColumnMinimumWidth(0, LABEL_WIDTH)
        self._grid.setColumnStretch(1, 1)
        self._lines: list[_Line] = []
        self._current = 0
        self._frames: frozenset[FrameId] = frozenset()
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAccessibleName(say("what was noted"))

    # --- what is shown ----------------------------------------------------------------------------

    def show_rows(self, rows: Sequence[PageRow]) -> None:
        """Show these rows, with as many labels as are there already."""
        while len(self._lines) < len(rows):
            self._add_line()
        for at, line in enumerate(self._lines):
            line.row = rows[at] if at < len(rows) else None
            for widget in (line.name, line.value, line.under):
                widget.setVisible(line.row is not None)
            if line.row is not None:
                self._show_row(line, line.row)
        self.setVisible(bool(rows))

    def texts(self) -> list[tuple[str, str]]:
        """What stands in it."""
        return [(line.name.text(), line.value.text()) for line in self._lines if line.row is not None]

    def _add_line(self) -> None:
        at = 2 * len(self._lines)
        name, value, under = QLabel(), QLabel(), QFrame()
        name.setObjectName("small")
        value.setObjectName("value")
        under.setObjectName("rule")
        for held in (name, value):
            held.setWordWrap(True)
            held.setTextFormat(Qt.TextFormat.PlainText)
            held.installEventFilter(self)
        value.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        for held in (name, value):
            held.setCursor(Qt.CursorShape.PointingHandCursor)
        name.setContentsMargins(0, 2, 0, 0)  # both on one line of writing
        self._grid.addWidget(name, at, 0, Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(value, at, 1, Qt.AlignmentFlag.AlignTop)
        self._grid.addWidget(under, at + 1, 0, 1, 2)
        self._lines.append(_Line(name, value, under))

    @staticmethod
    def _show_row(line: _Line, row: PageRow) -> None:
        line.name.setText(row.label)
        line.value.setText(row.value)
        line.value.setFont(theme.sans(italic=not row.recorded))
        line.value.setToolTip(row.basis)
        line.value.setAccessibleName(say("{label}: {value}", label=row.label, value=row.value))

    # --- mouse ------------------------------------------------------------------------------------

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A row under the pointer tells its combs; a click that selected nothing chooses it."""
        line = next((line for line in self._lines if watched in {line.name, line.value}), None)
        if line is not None and line.row is not None:
            if event.type() is QEvent.Type.Enter:
                self._point_at(line.row.frames)
            elif event.type() is QEvent.Type.Leave:
                self._point_at(self._keyboard_frames())
            elif event.type() is QEvent.Type.MouseButtonRelease and not line.value.hasSelectedText():
                self.chosen.emit(line.row)
        return super().eventFilter(watched, event)

    def _point_at(self, frames: frozenset[FrameId]) -> None:
        if frames != self._frames:
            self._frames = frames
            self.pointed.emit(frames)

    # --- keyboard ---------------------------------------------------------------------------------

    @property
    def current(self) -> PageRow | None:
        """The row the keyboard is at."""
        rows = [line.row for line in self._lines if line.row is not None]
        return rows[min(self._current, len(rows) - 1)] if rows else None

    def _keyboard_frames(self) -> frozenset[FrameId]:
        row = self.current
        return row.frames if row is not None and self.hasFocus() else frozenset()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Up and Down go from row to row, Enter chooses."""
        row = self.current
        if row is not None and event.key() in _STEPS:
            last = sum(line.row is not None for line in self._lines) - 1
            self._current = max(0, min(last, min(self._current, last) + _STEPS[Qt.Key(event.key())]))
            self._show_current()
        elif row is not None and event.key() in _CHOOSE:
            self.chosen.emit(row)
        else:
            super().keyPressEvent(event)

    def _show_current(self) -> None:
        row = self.current
        if row is not None:
            self.setAccessibleDescription(say("{label}: {value}", label=row.label, value=row.value))
            self._bring_into_sight()
        self._point_at(self._keyboard_frames())
        self.update()

    def _bring_into_sight(self) -> None:
        """Bring the row of the keyboard into sight."""
        line = self._line()
        above = self.parentWidget()
        while line is not None and above is not None:
            ensure = getattr(above, "ensureWidgetVisible", None)
            if ensure is not None:
                ensure(line.value, 0, 12)
                return
            above = above.parentWidget()

    def _line(self) -> _Line | None:
        row = self.current
        return next((line for line in self._lines if row is not None and line.row is row), None)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keyboard is at a row."""
        super().focusInEvent(event)
        self._show_current()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """No row is pointed at any more."""
        super().focusOutEvent(event)
        self._point_at(frozenset())
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        """A frame round the row the keyboard is at."""
        super().paintEvent(event)
        line = self._line() if self.hasFocus() else None
        if line is None:
            return
        both: QRect = line.name.geometry().united(line.value.geometry()).adjusted(-2, -1, 1, 1)
        painter = QPainter(self)
        painter.setPen(QPen(QColor(self.palette().link().color()), 2.0))
        painter.drawRect(both.intersected(self.rect().adjusted(1, 1, -1, -1)))
        painter.end()
