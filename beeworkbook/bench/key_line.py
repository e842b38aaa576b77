"""The key line: a comb typed in letters and eighths, read back while it is typed.

Enter keeps it and goes on to the next comb; the field keeps the keyboard until the last one. What cannot be
read stays in the field with the letter underlined and the reason beside it, and nothing else is lost.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Final

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QColor, QFocusEvent, QFont, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QLineEdit, QSizePolicy, QToolTip, QWidget

from beeworkbook.bench.bench_side import Arrow
from beeworkbook.bench.last_comb import beyond_last_comb
from beeworkbook.bench.on_show import comb_on_show, last_text
from beeworkbook.bench.quiet_label import QuietLabel
from beeworkbook.bench.seen_face import SeenFace
from beeworkbook.colony.hive import PlacedFrame
from beeworkbook.colony.records import ColonyId, FrameId
from beeworkbook.comb.key_letters import installed_letters
from beeworkbook.comb.reading import describe
from beeworkbook.comb.typed import parse_so_far
from beeworkbook.qt import theme
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.palette import Palette
from beeworkbook.words import say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits.in_visit import NO_VISIT, InVisit
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.errors import NotReadableError, RefusedError

_HIGH_PX: Final = 30
_FIELD_PX: Final = 240
_ENTER: Final = {Qt.Key.Key_Return, Qt.Key.Key_Enter}


class CombField(QLineEdit):
    """The field itself: it underlines the letter that cannot be read."""

    escaped = Signal()
    stepped = Signal(int)

    def __init__(self, palette: Palette) -> None:
        """An empty field."""
        super().__init__()
        self._wrong: int | None = None
        self.colour = QColor(palette.propolis)
        font = theme.sans(theme.BODY_PX + 1, bold=True)
        font.setCapitalization(QFont.Capitalization.AllUppercase)
        font.setLetterSpacing(font.SpacingType.AbsoluteSpacing, 1.0)
        self.setFont(font)
        self.setFixedWidth(_FIELD_PX)
        self.setMaxLength(200)

    def point_at(self, position: int | None) -> None:
        """Underline a letter, or with None nothing."""
        if position != self._wrong:
            self._wrong = position
            self.update()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc gives up, up and down go to the comb before and after; the rest is a field's own."""
        if event.key() == Qt.Key.Key_Escape:
            self.escaped.emit()
        elif event.key() in {Qt.Key.Key_Up, Qt.Key.Key_Down}:
            self.stepped.emit(-1 if event.key() == Qt.Key.Key_Up else 1)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The field, and the line under the wrong letter."""
        super().paintEvent(event)
        if self._wrong is None:
            return
        metrics = self.fontMetrics()
        text = self.text()
        left = self.cursorRect().left() - metrics.horizontalAdvance(text[: self.cursorPosition()])
        start = left + 4 + metrics.horizontalAdvance(text[: self._wrong])
        wide = max(7, metrics.horizontalAdvance(text[self._wrong : self._wrong + 1]))
        painter = QPainter(self)
        painter.fillRect(start, self.height() - 5, wide, 2, self.colour)
        painter.end()


@dataclass(frozen=True)
class CombHere:
    """The comb that is typed: whose, of what day, and which. The day may have no visit yet."""

    colony_id: ColonyId
    day: date
    frame_id: FrameId


class KeyLine(SeenFace):
    """The line below the bench in which the comb the keeper is at is typed."""

    left = Signal()
    """The keeper is done typing: the keyboard goes back to the box or the bench."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The key line of a desk."""
        super().__init__(parent)
        self.setObjectName("keyline")
        self.desk = desk
        self._typing_for: CombHere | None = None
        self._ended: CombHere | None = None
        self._kept = ""
        self._drafts: dict[CombHere, str] = {}
        self.field = CombField(desk.palette)
        self.field.setAccessibleName(say("this comb in letters and eighths"))
        self.field.setToolTip(
            say("Letters are contents, digits eighths: E1O2S4H1. A slash parts sides A and B, Enter goes on")
        )
        self._name, self._arrow = QLabel(), Arrow(left=False)
        self._reading, self._last, self._next = (
            QuietLabel("body"),
            QuietLabel(),
            QLabel(say("Enter: next comb")),
        )
        self._next.setObjectName("small")
        self._lay_out()
        self.field.textEdited.connect(lambda _text: self._typed())
        self.field.escaped.connect(self._give_up)
        self.field.stepped.connect(self._step)
        self.field.returnPressed.connect(self._enter)
        self.field.installEventFilter(self)
        desk.spot_changed.connect(lambda _spot: self.refresh_if_seen())
        desk.book_changed.connect(self._book_changed)
        desk.palette_changed.connect(self._palette_changed)
        self._palette_changed(desk.palette)
        self.refresh()

    def _lay_out(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 1, 12, 1)
        row.setSpacing(8)
        rule = QFrame()
        rule.setObjectName("upright")
        rule.setFixedSize(1, 16)
        for widget, stretch in (
            (self._name, 0),
            (self._arrow, 0),
            (self.field, 0),
            (self._reading, 3),
            (rule, 0),
            (self._last, 1),
            (self._next, 0),
        ):
            row.addWidget(widget, stretch)
        self.setFixedHeight(_HIGH_PX)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    # --- what is shown ----------------------------------------------------------------------------

    def refresh(self) -> None:
        """Show the comb the keeper is at; what was being typed for another one is kept first."""
        here = self._here()
        if self._typing_for is not None and self._typing_for != here:
            self.finish()
        if self._ended != here:
            self._ended = None
        placed = self._placed()
        comb = comb_on_show(self.desk.book, placed, self.desk.spot.visit_id) if placed else None
        self.setEnabled(comb is not None and comb.is_comb and not self.desk.book.read_only)
        self._name.setText(say("comb {place}", place=comb.place) if comb else "")
        if self._typing_for is None:
            self._kept = comb.typed if comb else ""
            self.field.setPlaceholderText(comb.painted_text if comb else "")
            self._show_text(here)
            self._read()
        self._last.say(self._last_words())

    def _show_text(self, here: CombHere | None) -> None:
        """What is kept of the comb, or what was typed and could not be kept."""
        draft = self._drafts.get(here) if here is not None else None
        if draft is not None:
            self._typing_for = here
            if self.field.text() != draft:
                self.field.setText(draft)
            return
        self.field.setText(self._kept)
        if self.field.hasFocus():
            self.field.selectAll()
        else:
            self.field.home(False)

    def _here(self) -> CombHere | None:
        spot = self.desk.spot
        if spot.frame_id is None or spot.colony_id is None:
            return None
        return CombHere(spot.colony_id, spot.day, spot.frame_id)

    def _placed(self) -> PlacedFrame | None:
        box = self.desk.box()
        frame_id = self.desk.spot.frame_id
        return (
            next(
                (place for place in box.frames if place.frame is not None and place.frame.id == frame_id),
                None,
            )
            if box
            else None
        )

    def _last_words(self) -> str:
        spot = self.desk.spot
        if spot.visit_id is None or spot.frame_id is None:
            return ""
        last = self.desk.book.read.last_sides(spot.frame_id, spot.visit_id)
        kinds = {side.frame_type for side in last.values()}
        if len(kinds) != 1:
            return say("not looked at before")
        text = last_text(last, self.desk.book.read.frame_type(kinds.pop()))
        return say("last time {comb}", comb=text) if text else say("not looked at before")

    def _read(self) -> None:
        """Say in words what is typed so far, or what cannot be read."""
        comb, error = parse_so_far(self.field.text(), installed_letters())
        self.field.point_at(None if error is None else error.position)
        self._say_wrong("" if error is None else error.message)
        if error is None:
            self._reading.say(describe(comb))

    def _typed(self) -> None:
        """Something was typed: from now on it is to be kept, wherever the keyboard is."""
        QToolTip.hideText()  # it would lie over the words that read back what is typed
        self._read()
        if self.field.text() != self._kept:
            self._typing_for = self._here()

    def _say_wrong(self, reason: str) -> None:
        self._reading.setProperty("wrong", bool(reason))
        self._reading.style().polish(self._reading)
        if reason:
            self._reading.say(reason)

    # --- typing -----------------------------------------------------------------------------------

    def begin(self, text: str) -> None:
        """Type this comb anew, beginning with a text; the keyboard comes here."""
        if not self.isEnabled() or self._is_ended():
            return
        self.field.setFocus(Qt.FocusReason.OtherFocusReason)
        self.field.setText(text)
        self._typed()

    def _is_ended(self) -> bool:
        """Whether the last comb was typed just now; then it is said once, and typed over only after that."""
        ended, self._ended = self._ended, None
        if ended is None or ended != self._here():
            return False
        self.desk.tell(say("The last comb is noted already. Type again to change it."))
        return True

    def finish(self) -> bool:
        """Keep what is being typed, if it can be read; whether nothing is left to be kept."""
        typing_for, self._typing_for = self._typing_for, None
        # Keeping it shows the field anew, so its text is taken first.
        text, kept = self.field.text(), self._kept
        if typing_for is None:
            return True
        self._drafts.pop(typing_for, None)
        if text.strip() == kept:
            return True
        _comb, error = parse_so_far(text, installed_letters())
        if error is not None:
            self._drafts[typing_for] = text
            self.desk.tell(error.message)
            return False
        typed = LayOutComb(NO_VISIT, typing_for.frame_id, text)
        try:
            self.desk.book.do(InVisit(typing_for.colony_id, typing_for.day, typed), source=self)
        except RefusedError as refusal:
            self._refuse(refusal, typing_for, text)
            return False
        return True

    def _refuse(self, refusal: RefusedError, typed_for: CombHere, text: str) -> None:
        """Say why beside the field if it still shows this comb, and wherever the keeper is now."""
        self.desk.tell(str(refusal))
        self._drafts[typed_for] = text
        if self._here() == typed_for:
            self._typing_for = typed_for
            self.field.setText(text)
            self.field.point_at(refusal.position if isinstance(refusal, NotReadableError) else None)
            self._say_wrong(str(refusal))

    def _enter(self) -> None:
        _comb, error = parse_so_far(self.field.text(), installed_letters())
        if error is not None:
            self._read()  # the letter is marked; the cursor stays where the hand is
            return
        if self.finish() and not self.desk.step_comb(1):
            self._end()

    def _end(self) -> None:
        """The last comb is kept: the keyboard goes back to the combs, and a letter does not begin it anew."""
        self.refresh()
        self._ended = self._here()
        self.left.emit()
        leads = beyond_last_comb(self.desk)
        self.desk.tell(leads.words if leads is not None else say("That was the last comb."))

    def _step(self, step: int) -> None:
        if self.finish():
            self.desk.step_comb(step)

    @property
    def untaken(self) -> Mapping[CombHere, str]:
        """What was typed and could not be kept, by comb; it stands there again when the keeper comes back."""
        return self._drafts

    def _give_up(self) -> None:
        if self._typing_for is not None:
            self._drafts.pop(self._typing_for, None)
        self._typing_for = None
        self.refresh()
        self.left.emit()

    def eventFilter(self, watched: object, event: QEvent) -> bool:
        """When the keyboard leaves the field, what is in it is kept."""
        passing = {Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason}
        is_leaving = watched is self.field and isinstance(event, QFocusEvent) and not event.gotFocus()
        if is_leaving and isinstance(event, QFocusEvent) and event.reason() not in passing:
            self.finish()
        return super().eventFilter(watched, event)  # type: ignore[arg-type]

    def _book_changed(self, changes: Changes) -> None:
        spot = self.desk.spot
        if changes.everything or spot.visit_id in changes.visits or spot.colony_id in changes.colonies:
            self.refresh_if_seen()

    def _palette_changed(self, palette: Palette) -> None:
        self.field.colour = QColor(palette.propolis)
        self._arrow.colour = QColor(palette.focus)
        self._arrow.update()
        self._reading.setStyleSheet(f'QLabel[wrong="true"] {{ color: {palette.propolis}; }}')
        self.setStyleSheet(f"QWidget#keyline {{ background: {palette.sunk}; }}")
        self._name.setStyleSheet(f"color: {palette.focus};")
