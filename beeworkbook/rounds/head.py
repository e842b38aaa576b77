"""The head of a round: where, which day, and what is asked once: weather, warmth, who, what is in flower."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QEvent, QPoint, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QFontMetricsF, QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QMenu, QToolButton, QVBoxLayout, QWidget

from beeworkbook.colony.asked import asked_questions, full_question, heading, write_left_out
from beeworkbook.colony.records import Question, Round
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.icons import icon
from beeworkbook.qt.palette import Palette
from beeworkbook.qt.typed_day import DayError, parse_day
from beeworkbook.rounds.field import FieldError
from beeworkbook.words import NumberError, date_words, number, parse_number, say
from beeworkbook.workbook.edits.visit import BeginRound, ChangeRound
from beeworkbook.workbook.errors import RefusedError

_LEAST: Final = 44
_COLDEST_C: Final = -40.0
_HOTTEST_C: Final = 60.0


class HeadField(QLineEdit):
    """One small field of the head; it is as wide as its words."""

    finished = Signal()
    """Left with another text than it came with."""
    went_on = Signal()
    """Enter: on to what is asked next."""

    def __init__(
        self, name: str, hint: str, placeholder: str, said: Callable[[str], str] | None = None
    ) -> None:
        """A field with a name for a reader aloud and a hint for the eye; `said` words it while it rests."""
        super().__init__()
        self._said = said or (lambda text: text)
        self.setAccessibleName(name)
        self.setToolTip(hint)
        self.setPlaceholderText(placeholder)
        self._held = ""
        self.leads_out = False
        """Whether Tab goes the way of Enter, where Qt's own order would lead elsewhere."""
        self.editingFinished.connect(self._finished)
        self.textChanged.connect(self.updateGeometry)

    def show_text(self, text: str) -> None:
        """What the book says."""
        self._held = text
        self.setText(text if self.hasFocus() or not text else self._said(text))
        self.setCursorPosition(0)

    @property
    def touched(self) -> bool:
        """Whether something else was typed."""
        return self.text() not in {self._held, self._said(self._held) if self._held else ""}

    def put_back(self) -> None:
        """As it was."""
        self.setText(self._held)
        self.selectAll()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The bare words, to be typed over."""
        if not self.touched:
            self.setText(self._held)
        super().focusInEvent(event)
        if event.reason() != Qt.FocusReason.MouseFocusReason:
            self.selectAll()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """At rest the words as they are said."""
        super().focusOutEvent(event)
        if not self.touched and event.reason() != Qt.FocusReason.PopupFocusReason:
            self.show_text(self._held)

    def sizeHint(self) -> QSize:
        """As wide as its words."""
        words = self.text() or self.placeholderText()
        width = QFontMetricsF(self.font()).horizontalAdvance(words) + 20
        return QSize(max(_LEAST, int(width)), super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """It may be squeezed before its neighbours are pushed out."""
        return QSize(_LEAST, super().minimumSizeHint().height())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Escape puts the field back, Enter goes on to the next."""
        if event.key() == Qt.Key.Key_Escape:
            self.put_back()
        elif event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            self.went_on.emit()
        else:
            super().keyPressEvent(event)

    def focusNextPrevChild(self, forward: bool) -> bool:  # noqa: FBT001 - Qt's signature
        """Tab out of the last field leads where Enter does."""
        if forward and self.leads_out:
            self.went_on.emit()
            return True
        return super().focusNextPrevChild(forward)

    def event(self, event: QEvent) -> bool:
        """Undo is the field's own only while something was typed into it."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and not self.touched:
            undo = Qt.KeyboardModifier.ControlModifier
            if event.key() == Qt.Key.Key_Z and event.modifiers() & undo:
                event.ignore()
                return False
        return super().event(event)

    def _finished(self) -> None:
        if self.touched:
            self.finished.emit()


class RoundHead(QWidget):
    """The heading of a round."""

    walked_on = Signal()
    """Tab or Enter past its last field."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The head of the desk's day."""
        super().__init__(parent)
        self._desk = desk
        self._round: Round | None = None
        self._refused: HeadField | None = None
        self.left_out = ""
        self.name = QLabel()
        self.name.setObjectName("name")
        self.earlier = self._button(say("The round before"), lambda: desk.leaf_rounds(-1))
        self.later = self._button(say("The next round"), lambda: desk.leaf_rounds(1))
        self.day = HeadField(
            say("Day of the round"), say("Another day: 9, 9 May, 2026-05-09 or -7"), say("day")
        )
        self.weather = HeadField(say("Weather"), say("Weather, as fine, light wind"), say("weather"))
        self.warmth = HeadField(
            say("Temperature in °C"),
            say("Degrees Celsius, as 18"),
            say("°C"),
            lambda text: say("{degrees} °C", degrees=text),
        )
        self.who = HeadField(
            say("With whom"),
            say("Who looked, or who helped, as a helper"),
            say("with whom"),
            lambda text: say("with {who}", who=text),
        )
        self.flowering = HeadField(
            say("In flower"),
            say("What is in flower, as hawthorn"),
            say("in flower"),
            lambda text: say("{plants} in flower", plants=text),
        )
        self.columns = QToolButton(self)  # in the head before all others, so Tab comes to it first
        self.columns.setText(say("columns…"))
        self.columns.setObjectName("quiet")
        self.columns.setToolTip(say("Which columns this round asks"))
        self.columns.setAccessibleName(say("Columns of this round"))
        self.columns.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.columns.clicked.connect(self._open_menu)
        self.trouble = QLabel()
        self.trouble.setObjectName("overdue")
        self.trouble.hide()
        self._lay_out()
        self.day.finished.connect(self._go_to_day)
        for field, keep in self._kept_fields():
            field.finished.connect(keep)
        self._lead_on()
        desk.palette_changed.connect(self._dress)
        self._dress(desk.palette)
        self.refill()

    # --- putting together -------------------------------------------------------------------------

    def _button(self, name: str, act: Callable[[], None]) -> QToolButton:
        made = QToolButton()
        made.setObjectName("quiet")
        made.setToolTip(name)
        made.setAccessibleName(name)
        made.setIconSize(QSize(14, 14))
        made.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        made.clicked.connect(act)
        return made

    def _lay_out(self) -> None:
        line = QHBoxLayout()
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(2)
        line.addWidget(self.name)
        line.addSpacing(6)
        order = QLabel(say("stand order"))
        order.setObjectName("small")
        fields = (self.earlier, self.day, self.later, self.weather, self.warmth, self.who, self.flowering)
        for widget in fields:
            line.addWidget(widget)
        line.addStretch(1)
        line.addWidget(order)
        line.addWidget(self.columns)
        column = QVBoxLayout(self)
        column.setContentsMargins(14, 4, 14, 2)
        column.setSpacing(0)
        column.addLayout(line)
        column.addWidget(self.trouble)

    def _lead_on(self) -> None:
        """Enter goes from field to field and out of the last."""
        fields = (self.day, *(field for field, _keep in self._kept_fields()))
        for field, following in pairwise(fields):
            field.went_on.connect(lambda on=following: on.setFocus(Qt.FocusReason.TabFocusReason))
        fields[-1].went_on.connect(self.walked_on)
        fields[-1].leads_out = True
        for field in fields:
            field.textChanged.connect(lambda _text, field=field: self._text_changed(field))

    def _dress(self, palette: Palette) -> None:
        quiet = (
            "QLineEdit { background: transparent; border: 1px solid transparent; padding: 2px 5px;"
            f" color: {palette.second_ink}; placeholder-text-color: {palette.second_ink}; }}"
            f"QLineEdit:hover {{ border-color: {palette.rule}; }}"
            f"QLineEdit:focus {{ background: {palette.board}; border: 2px solid {palette.focus};"
            f" padding: 1px 4px; color: {palette.ink}; }}"
        )
        for field in (self.day, *(field for field, _keep in self._kept_fields())):
            field.setStyleSheet(quiet)
        self.earlier.setIcon(icon("back", palette.second_ink))
        self.later.setIcon(icon("on", palette.second_ink))

    def _kept_fields(self) -> tuple[tuple[HeadField, Callable[[], None]], ...]:
        return (
            (self.weather, lambda: self._keep("weather", self.weather)),
            (self.warmth, lambda: self._keep("temperature_c", self.warmth)),
            (self.who, lambda: self._keep("who", self.who)),
            (self.flowering, lambda: self._keep("flowering", self.flowering)),
        )

    # --- what it shows ----------------------------------------------------------------------------

    def refill(self) -> None:
        """Show the round of the desk's day, or what a round of that day would begin with."""
        desk = self._desk
        apiary, day = desk.apiary, desk.spot.day
        rounds = desk.book.read.rounds(apiary.id) if apiary else ()
        self._round = next((held for held in rounds if held.day == day), None)
        before = [held for held in rounds if held.day < day]
        carried = before[-1].left_out if before else ""
        self.left_out = self._round.left_out if self._round else carried
        self.name.setText(apiary.name if apiary else "")
        style = "long" if day.year == desk.today.year else "long_year"
        _show(self.day, date_words(day, "long_year" if style == "long_year" else "long"))
        held = self._round
        _show(self.weather, held.weather if held else "")
        warmth = held.temperature_c if held else None
        _show(self.warmth, "" if warmth is None else number(warmth))
        _show(self.who, held.who if held else "")
        _show(self.flowering, held.flowering if held else "")
        days = desk.round_days()
        self.earlier.setEnabled(any(other < day for other in days))
        self.later.setEnabled(any(other > day for other in days))
        for field, _keep in self._kept_fields():
            field.setReadOnly(desk.book.read_only)

    @property
    def asked(self) -> tuple[Question, ...]:
        """The questions this round asks."""
        return asked_questions(self.left_out)

    @property
    def is_blank(self) -> bool:
        """Whether the round is in the book and nothing of what is asked once is written yet."""
        return self._round is not None and not any(field.text() for field, _keep in self._kept_fields())

    # --- going ------------------------------------------------------------------------------------

    def _go_to_day(self) -> None:
        typed = self.day.text()
        try:
            day = parse_day(_without_weekday(typed), self._desk.today)
        except DayError as error:
            self._show_trouble(str(error), self.day)
            return
        self._hide_trouble()
        if day == self._desk.spot.day:
            self.refill()
        else:
            self.day.show_text(typed)
            self._desk.go(day=day)

    # --- keeping ----------------------------------------------------------------------------------

    def _keep(self, name: str, field: HeadField) -> None:
        try:
            value = _degrees(field.text()) if name == "temperature_c" else field.text().strip()
            self._change(name, value)
        except (FieldError, RefusedError) as error:
            self._show_trouble(str(error), field)
            return
        self._hide_trouble()

    def _change(self, name: str, value: object) -> None:
        book, apiary = self._desk.book, self._desk.apiary
        if apiary is None:
            return
        if self._round is None:
            made = BeginRound(apiary.id, self._desk.spot.day, left_out=self.left_out)
            book.do(replace(made, **{name: value}), source=self)  # type: ignore[arg-type]
        else:
            book.do(ChangeRound(replace(self._round, **{name: value}), name), source=self)  # type: ignore[arg-type]
        book.end_merge()
        self.refill()

    def _text_changed(self, field: HeadField) -> None:
        """A refused field that is typed into, cleared or put back is judged anew when it is left."""
        if field is self._refused:
            self._hide_trouble()

    def _hide_trouble(self) -> None:
        self._refused = None
        self.trouble.hide()

    def _show_trouble(self, sentence: str, field: HeadField | None = None) -> None:
        self._refused = field
        self.trouble.setText(sentence)
        self.trouble.show()

    # --- columns ----------------------------------------------------------------------------------

    def menu(self) -> QMenu:
        """The columns of this round, each to be left out or asked."""
        made = QMenu(self)
        made.setToolTipsVisible(True)
        for question in Question:
            action = made.addAction(heading(question))
            action.setCheckable(True)
            action.setChecked(question in self.asked)
            action.setToolTip(full_question(question))
            action.triggered.connect(lambda _on=False, question=question: self.turn_column(question))
        return made

    def turn_column(self, question: Question) -> None:
        """Leave a column out of this round, or ask it again."""
        out = set(Question) - set(self.asked)
        try:
            self._change("left_out", write_left_out(out ^ {question}))
        except RefusedError as error:
            self._show_trouble(str(error))

    def open_menu_at(self, place: QPoint) -> None:
        """Show the columns' menu on the screen."""
        self.menu().popup(place)

    def _open_menu(self) -> None:
        self.open_menu_at(self.columns.mapToGlobal(QPoint(0, self.columns.height())))


def _show(field: HeadField, text: str) -> None:
    """What the book says, unless the keeper is typing something else there."""
    if not (field.hasFocus() and field.touched):
        field.show_text(text)


def _without_weekday(typed: str) -> str:
    """The head writes "Saturday 16 May"; a keeper may change the number in it alone."""
    words = typed.split(maxsplit=1)
    return words[1] if len(words) > 1 and words[0].isalpha() else typed


def _degrees(typed: str) -> float | None:
    text = typed.casefold().replace("°c", "").replace("°", "").removesuffix("c").strip()
    if not text:
        return None
    try:
        degrees = parse_number(text)
    except NumberError as error:
        raise FieldError(str(error)) from error
    if not _COLDEST_C <= degrees <= _HOTTEST_C:
        raise FieldError(say("Give the warmth of the day in degrees Celsius."))
    return degrees
