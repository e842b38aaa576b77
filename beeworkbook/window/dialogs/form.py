"""A short form: labelled fields under one another, one sentence for what is wrong, Enter and Escape."""

from collections.abc import Callable, Sequence
from datetime import date
from itertools import pairwise
from typing import Final, TypeVar

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QKeyEvent, QShowEvent
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
    QScrollArea,
    QStyledItemDelegate,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.colony.soft_notes import SoftNote
from beeworkbook.qt.typed_day import DayError, parse_day
from beeworkbook.words import NARROW_SPACE, NumberError, date_words, number, parse_number, say
from beeworkbook.workbook.errors import RefusedError, StoreError

_LEAST_LINE: Final = 210
_ROUND_THE_FIELDS: Final = 190
"""Of a screen's height, what title, head, buttons and the system's bars take."""


FIRST: Final = object()
"""Chosen when nothing else is said: the first option. None is a value an option may have."""


class FieldError(ValueError):
    """What is wrong with a field, in words; `field` is the one to go to, if one can be named."""

    def __init__(self, sentence: str, field: "FormField | None" = None) -> None:
        """A sentence for the person."""
        super().__init__(sentence)
        self.field = field


class FormField:
    """One labelled field of a form."""

    def __init__(self, label: str, widget: QWidget, hint: str = "") -> None:
        """A field with its label; the hint stands small below it."""
        self.label = label
        self.widget = widget
        self.hint = hint
        widget.setAccessibleName(label)
        widget.setToolTip(hint or label or widget.toolTip())

    def check(self) -> None:
        """Raise FieldError if what is entered cannot be used."""


class TextLine(FormField):
    """A line of text."""

    def __init__(
        self, label: str, text: str = "", hint: str = "", *, needed: bool = False, blank: str = ""
    ) -> None:
        """A line that may be `needed`; `blank` says what it means when nothing is entered."""
        self.line = QLineEdit(text)
        self.line.setPlaceholderText(blank)
        self.line.setMinimumWidth(_LEAST_LINE)
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

    def __init__(self, label: str, value: float | None = None, hint: str = "", *, blank: str = "") -> None:
        """A number or nothing."""
        super().__init__(label, hint=hint, blank=blank)
        self.show(value)

    @property
    def number(self) -> float | None:
        """The number entered."""
        return parse_number(self.text) if self.text else None

    def show(self, value: float | None) -> None:
        """Enter this number."""
        self.line.setText("" if value is None else number(value).replace(NARROW_SPACE, ""))

    @property
    def whole(self) -> int | None:
        """The number entered, without its fraction; None too while it cannot be read."""
        try:
            return None if self.number is None else int(self.number)
        except NumberError:
            return None

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
        self.line.setMinimumWidth(_LEAST_LINE // 2)
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
        self, label: str, options: Sequence[tuple[str, object]], chosen: object = FIRST, hint: str = ""
    ) -> None:
        """The options in their order."""
        self.combo = QComboBox()
        # Without a delegate of this kind Qt measures the list by other rows than it draws.
        self.combo.setItemDelegate(QStyledItemDelegate(self.combo))
        self.combo.setMinimumContentsLength(12)
        self.combo.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self._values: list[object] = []
        self.offer(options, chosen)
        super().__init__(label, self.combo, hint)

    def offer(self, options: Sequence[tuple[str, object]], chosen: object = FIRST) -> None:
        """Offer these instead; `chosen` is chosen if it is one of them, else the first."""
        self._values = [value for _text, value in options]
        self.combo.clear()
        self.combo.addItems([text for text, _value in options])
        self.choose(chosen)

    def choose(self, value: object) -> None:
        """Choose the option with this value, if there is one."""
        if value in self._values:
            self.combo.setCurrentIndex(self._values.index(value))

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
        self.box.setToolTip(hint or label)

    @property
    def on(self) -> bool:
        """Whether it is ticked."""
        return self.box.isChecked()


F = TypeVar("F", bound=FormField)


class Form(QDialog):
    """Fields under one another, in one column or two; Enter does it, Escape leaves all as it was."""

    def __init__(self, parent: QWidget | None, title: str, do_words: str, lead: str = "") -> None:
        """A form that does `do_words` when it is agreed to."""
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setMinimumWidth(430)
        self.fields: list[FormField] = []
        self._checks: list[Callable[[], None]] = []
        self._rows: dict[FormField, list[QWidget]] = {}
        self._below: list[QWidget] = []
        self._deed: Callable[[], object] | None = None
        self.made: object = None
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
        self._build_body(column)
        self.wrong = QLabel()
        self.wrong.setObjectName("overdue")
        self.wrong.setWordWrap(True)
        self.wrong.hide()
        column.addWidget(self.wrong)
        self._build_buttons(column, do_words)

    def _build_body(self, column: QVBoxLayout) -> None:
        self._body = QWidget()
        self._body.setObjectName("ground")
        rows = QVBoxLayout(self._body)
        rows.setContentsMargins(0, 0, 6, 0)
        rows.setSpacing(12)
        self._columns = QHBoxLayout()
        self._columns.setSpacing(28)
        rows.addLayout(self._columns)
        self.foot = QVBoxLayout()
        rows.addLayout(self.foot)
        rows.addStretch(1)
        self.next_column()
        self.area = QScrollArea()
        self.area.setWidgetResizable(True)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setWidget(self._body)
        column.addWidget(self.area, 1)

    def _build_buttons(self, column: QVBoxLayout, do_words: str) -> None:
        row = QHBoxLayout()
        row.addStretch(1)
        self.leave_button = QPushButton(say("Leave as it was"))
        self.leave_button.setToolTip(say("Change nothing (Escape)"))
        self.leave_button.setAutoDefault(False)
        self.leave_button.clicked.connect(self.reject)
        self.do_button = QPushButton(do_words)
        self.do_button.setToolTip(say("{words} (Enter)", words=do_words))
        self.do_button.setDefault(True)
        self.do_button.clicked.connect(self.agree)
        row.addWidget(self.leave_button)
        row.addWidget(self.do_button)
        column.addLayout(row)

    def next_column(self) -> None:
        """What is added from now on stands in a column of its own, to the right."""
        self.grid = QGridLayout()
        self.grid.setHorizontalSpacing(14)
        self.grid.setVerticalSpacing(7)
        self.grid.setColumnStretch(1, 1)
        held = QVBoxLayout()
        held.addLayout(self.grid)
        held.addStretch(1)
        self._columns.addLayout(held, 1)

    def add(self, field: F) -> F:
        """Put a field at the end; gives it back."""
        row = self.grid.rowCount()
        label = QLabel(field.label)
        label.setObjectName("small")
        label.setBuddy(field.widget)
        self.grid.addWidget(label, row, 0, Qt.AlignmentFlag.AlignVCenter)
        parts: list[QWidget] = [label, field.widget]
        if isinstance(field, DayLine):
            self.grid.addWidget(field.widget, row, 1)
            self.grid.addWidget(field.read, row, 2)
            parts.append(field.read)
        else:
            self.grid.addWidget(field.widget, row, 1, 1, 2)
        if field.hint:
            hint = QLabel(field.hint)
            hint.setObjectName("small")
            hint.setWordWrap(True)
            self.grid.addWidget(hint, row + 1, 1, 1, 2)
            parts.append(hint)
        self.fields.append(field)
        self._rows[field] = parts
        return field

    def show_field(self, field: FormField, *, shown: bool) -> None:
        """Show a field, or put it away while it has no meaning; it is not checked then."""
        for part in self._rows[field]:
            part.setVisible(shown)
        self._grow()

    def add_notes(self) -> "NoteLines":
        """A place below the fields for soft notes; empty at first."""
        notes = NoteLines(self._grow)
        self.foot.addWidget(notes)
        return notes

    def add_check(self, check: Callable[[], None]) -> None:
        """A check of the whole form; it raises FieldError."""
        self._checks.append(check)

    def agree(self) -> None:
        """Do it and close the form if everything entered can be used, else say what is wrong and go there."""
        try:
            for field in self.fields:
                if not field.widget.isHidden():
                    _check(field)
            for check in self._checks:
                check()
            if self._deed is not None:
                self.made = self._deed()
        except FieldError as error:
            self.refuse(str(error), error.field)
        except (RefusedError, StoreError) as error:
            self.refuse(str(error))
        else:
            self.accept()

    def refuse(self, sentence: str, field: FormField | None = None) -> None:
        """Say what is wrong and put the keyboard on the field it is about."""
        self.wrong.setText(sentence)
        self.wrong.setAccessibleName(sentence)
        self.wrong.show()
        if field is not None:
            field.widget.setFocus(Qt.FocusReason.OtherFocusReason)
            self.area.ensureWidgetVisible(field.widget)

    def ask(self, deed: Callable[[], object] | None = None) -> bool:
        """Show the form and wait; whether it was agreed to.

        `deed` is done then; if it is refused, the form stays with the reason and nothing entered is lost.
        What it gives stands in `made`.
        """
        self._deed = deed
        self._order_tabs()
        if self.focusWidget() is None:
            self._focus_first()
        return self.exec() == QDialog.DialogCode.Accepted

    def add_below(self, widget: QWidget) -> None:
        """Put a widget below all fields; the keyboard comes to it after the last of them."""
        self.foot.addWidget(widget)
        self._below.append(widget)

    def _order_tabs(self) -> None:
        """Tab goes through the fields as they stand, then to the buttons; Qt goes by when they were made."""
        chain = [*(field.widget for field in self.fields), *self._below, self.do_button, self.leave_button]
        for one, following in pairwise(chain):
            QWidget.setTabOrder(one, following)

    def _focus_first(self) -> None:
        """The keyboard begins in the first field, on what stands in it already."""
        first = next(
            (f.widget for f in self.fields if not f.widget.isHidden() and f.widget.isEnabled()), None
        )
        if first is not None:
            first.setFocus(Qt.FocusReason.TabFocusReason)

    def showEvent(self, event: QShowEvent) -> None:
        """As high as the fields ask, and never higher than the screen: then they scroll."""
        self._fit()
        super().showEvent(event)

    def _grow(self) -> None:
        """Make room for what came to stand in the form while it is seen."""
        if self.isVisible():
            self._fit()

    def _fit(self) -> None:
        free = self.screen().availableGeometry().size() - QSize(60, _ROUND_THE_FIELDS)
        self._body.ensurePolished()
        wanted = self._body.sizeHint()
        width = max(min(wanted.width() + 16, free.width()), self.area.minimumWidth())
        high = max(wanted.height(), self._body.heightForWidth(width - 16))
        self.area.setMinimumWidth(width)
        self.area.setMinimumHeight(min(high + 2, free.height()))
        self.adjustSize()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter agrees from any field; on a button it presses the button."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            held = self.focusWidget()
            if isinstance(held, QPushButton):
                held.click()
            else:
                self.agree()
            return
        super().keyPressEvent(event)


class NoteLines(QLabel):
    """Soft notes with their reasons: to be read or passed by, never in the way."""

    def __init__(self, grown: Callable[[], None]) -> None:
        """No notes yet; `grown` is called when there are more or fewer."""
        super().__init__()
        self._grown = grown
        self.setObjectName("note")
        self.setWordWrap(True)
        self.hide()

    def show_notes(self, notes: Sequence[SoftNote]) -> None:
        """Show these instead."""
        lines = [
            say("{note} Why: {reason}.", note=note.text, reason=note.reason.rstrip(".")) for note in notes
        ]
        if "\n".join(lines) == self.text():
            return
        self.setText("\n".join(lines))
        self.setAccessibleName(self.text())
        self.setVisible(bool(lines))
        self._grown()


def _check(field: FormField) -> None:
    try:
        field.check()
    except FieldError as error:
        raise FieldError(str(error), field) from error
