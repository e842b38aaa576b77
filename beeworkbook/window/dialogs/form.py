"""A short form: labelled fields under one another, one sentence for what is wrong, Enter and Escape."""

from collections.abc import Callable, Sequence
from datetime import date
from typing import TypeVar

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QCheckBox,
    QComboBox,
    QDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPlainTextEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.qt.typed_day import DayError, parse_day
from beeworkbook.words import NumberError, date_words, parse_number, say


class FieldError(ValueError):
    """What is wrong with a field, in words."""


class FormField:
    """One labelled field of a form."""

    def __init__(self, label: str, widget: QWidget, hint: str = "") -> None:
        """A field with its label; the hint stands small below it."""
        self.label = label
        self.widget = widget
        self.hint = hint
        widget.setAccessibleName(label)
        if hint:
            widget.setToolTip(hint)

    def check(self) -> None:
        """Raise FieldError if what is entered cannot be used."""


class TextLine(FormField):
    """A line of text."""

    def __init__(self, label: str, text: str = "", hint: str = "", *, needed: bool = False) -> None:
        """A line that may be `needed`."""
        self.line = QLineEdit(text)
        self._needed = needed
        super().__init__(label, self.line, hint)

    @property
    def text(self) -> str:
        """What is entered."""
        return self.line.text().strip()

    def check(self) -> None:
        """A needed line is not blank."""
        if self._needed and not self.text:
            raise FieldError(say("{field} is wanted.", field=self.label))


class TextBlock(FormField):
    """Several lines of text."""

    def __init__(self, label: str, text: str = "", hint: str = "") -> None:
        """A block of four lines."""
        self.block = QPlainTextEdit(text)
        self.block.setObjectName("note")
        self.block.setTabChangesFocus(True)
        self.block.setFixedHeight(92)
        super().__init__(label, self.block, hint)

    @property
    def text(self) -> str:
        """What is entered."""
        return self.block.toPlainText().strip()


class NumberLine(TextLine):
    """A number, with decimal comma or point; blank is None."""

    def __init__(self, label: str, value: float | None = None, hint: str = "") -> None:
        """A number or nothing."""
        super().__init__(label, "" if value is None else f"{value:g}", hint)

    @property
    def number(self) -> float | None:
        """The number entered."""
        return parse_number(self.text) if self.text else None

    def check(self) -> None:
        """What is entered is a number."""
        try:
            _ = self.number
        except NumberError as error:
            raise FieldError(f"{self.label}: {error}") from error


class DayLine(TextLine):
    """A day as it is typed; what it was understood as stands beside it."""

    def __init__(self, label: str, day: date, today: date, *, ahead: bool = False) -> None:
        """A day, near `today` unless the year is said."""
        self._today = today
        self._ahead = ahead
        self.read = QLabel()
        self.read.setObjectName("small")
        super().__init__(label, day.isoformat() if day != today else say("today"))
        self.line.textChanged.connect(self._show)
        self._show()

    @property
    def day(self) -> date:
        """The day entered."""
        return parse_day(self.text, self._today, ahead=self._ahead)

    def check(self) -> None:
        """What is entered is a day."""
        try:
            _ = self.day
        except DayError as error:
            raise FieldError(f"{self.label}: {error}") from error

    def _show(self) -> None:
        try:
            self.read.setText(date_words(self.day, "long_year"))
        except DayError:
            self.read.setText(say("not a day"))


class Choice(FormField):
    """One of several, each with a value."""

    def __init__(
        self, label: str, options: Sequence[tuple[str, object]], chosen: object = None, hint: str = ""
    ) -> None:
        """The options in their order."""
        self.combo = QComboBox()
        self._values = [value for _text, value in options]
        for text, _value in options:
            self.combo.addItem(text)
        if chosen in self._values:
            self.combo.setCurrentIndex(self._values.index(chosen))
        super().__init__(label, self.combo, hint)

    @property
    def value(self) -> object:
        """The value chosen, None if there are no options."""
        at = self.combo.currentIndex()
        return self._values[at] if at >= 0 else None

    def on_change(self, act: Callable[[], None]) -> None:
        """Call `act` when another is chosen."""
        self.combo.currentIndexChanged.connect(lambda _at: act())


class Tick(FormField):
    """Yes or no."""

    def __init__(self, label: str, *, on: bool = False, hint: str = "") -> None:
        """A box to tick."""
        self.box = QCheckBox(label)
        self.box.setChecked(on)
        super().__init__("", self.box, hint)
        self.box.setAccessibleName(label)

    @property
    def on(self) -> bool:
        """Whether it is ticked."""
        return self.box.isChecked()


F = TypeVar("F", bound=FormField)


class Form(QDialog):
    """Fields under one another; Enter does it, Escape leaves all as it was."""

    def __init__(self, parent: QWidget | None, title: str, do_words: str, lead: str = "") -> None:
        """A form that does `do_words` when it is agreed to."""
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setMinimumWidth(430)
        self._fields: list[FormField] = []
        self._checks: list[Callable[[], None]] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(22, 18, 22, 18)
        column.setSpacing(12)
        head = QLabel(title)
        head.setObjectName("head")
        column.addWidget(head)
        if lead:
            words = QLabel(lead)
            words.setWordWrap(True)
            column.addWidget(words)
        self.grid = QGridLayout()
        self.grid.setHorizontalSpacing(14)
        self.grid.setVerticalSpacing(7)
        self.grid.setColumnStretch(1, 1)
        column.addLayout(self.grid)
        self.wrong = QLabel()
        self.wrong.setObjectName("overdue")
        self.wrong.setWordWrap(True)
        column.addWidget(self.wrong)
        row = QHBoxLayout()
        row.addStretch(1)
        self.leave_button = QPushButton(say("Leave as it was"))
        self.leave_button.setToolTip(say("Change nothing (Escape)"))
        self.leave_button.clicked.connect(self.reject)
        self.do_button = QPushButton(do_words)
        self.do_button.setToolTip(say("{words} (Enter)", words=do_words))
        self.do_button.setDefault(True)
        self.do_button.clicked.connect(self.agree)
        row.addWidget(self.leave_button)
        row.addWidget(self.do_button)
        column.addLayout(row)

    def add(self, field: F) -> F:
        """Put a field at the end; gives it back."""
        row = self.grid.rowCount()
        label = QLabel(field.label)
        label.setObjectName("small")
        label.setBuddy(field.widget)
        self.grid.addWidget(label, row, 0, Qt.AlignmentFlag.AlignVCenter)
        self.grid.addWidget(field.widget, row, 1)
        if isinstance(field, DayLine):
            self.grid.addWidget(field.read, row, 2)
        if field.hint:
            hint = QLabel(field.hint)
            hint.setObjectName("small")
            hint.setWordWrap(True)
            self.grid.addWidget(hint, row + 1, 1)
        self._fields.append(field)
        return field

    def add_check(self, check: Callable[[], None]) -> None:
        """A check of the whole form; it raises FieldError."""
        self._checks.append(check)

    def agree(self) -> None:
        """Close the form if everything entered can be used, else say what is wrong."""
        try:
            for field in self._fields:
                field.check()
            for check in self._checks:
                check()
        except FieldError as error:
            self.wrong.setText(str(error))
            return
        self.accept()

    def ask(self) -> bool:
        """Show the form and wait; whether it was agreed to."""
        return self.exec() == QDialog.DialogCode.Accepted

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter agrees from any field."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.agree()
            return
        super().keyPressEvent(event)
