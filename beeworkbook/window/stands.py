"""Stands: the colonies of an apiary as they stand, a field each, its state in a word and a sign."""

from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from typing import Final

from PySide6.QtCore import QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QFontMetrics,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QHBoxLayout, QLabel, QScrollArea, QSizePolicy, QToolButton, QWidget

from beeworkbook.colony.dues import PlannedDue
from beeworkbook.colony.records import (
    Answer,
    Apiary,
    Colony,
    ColonyId,
    Due,
    DueKind,
    Event,
    Feed,
    Hive,
    Housing,
    Level,
    Mark,
    Part,
    PartKind,
    PartStay,
    Stand,
    Visit,
)
from beeworkbook.qt import theme
from beeworkbook.qt.desk import Desk, Spot, View
from beeworkbook.qt.icons import State, paint_hive, paint_state
from beeworkbook.window.shell import STANDS_HEIGHT
from beeworkbook.words import date_words, say, say_count
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.noted import is_noted
from beeworkbook.workbook.story import offered_next
from beeworkbook.workbook.workbook import Workbook

_WIDEST = 240
_LEAST = 132
_EDGE = 24
SHOWN = (Apiary, Stand, Colony, Hive, Housing, Part, PartStay, Due, Visit, Event, Answer, Feed, Mark)
_TODAY: Final = {
    Level.PASSED_OVER: (State.PASSED, "passed over today"),
    Level.NOT_OPENED: (State.OUTSIDE, "not opened today"),
}


@dataclass(frozen=True)
class StandCard:
    """What one field of the strip says."""

    colony_id: ColonyId
    name: str
    stand: str
    kinds: tuple[PartKind, ...]
    state: State
    words: str


def state_of(
    dues: tuple[Due, ...], looked: Level | None, today: date, offer: PlannedDue | None = None
) -> tuple[State, str]:
    """The sign and the words of a colony today: how it was looked at, overdue, shut, due soon, nothing due.

    looked: how far the look of today went, None if nothing was noted today. What is overdue is said too,
    counted from the last day it was due. offer: what the last visit offers, told where nothing is due.
    """
    open_dues = sorted((d for d in dues if d.kind is not DueKind.LEAVE_SHUT), key=lambda d: d.day)
    over = max(((today - (due.until or due.day)).days for due in open_dues), default=0)
    if looked is not None:
        state, words = _TODAY.get(looked, (State.DONE, "looked at today"))
        if over <= 0:
            return state, say(words)
        over_words = say_count(over, "{n} day over", "{n} days over")
        return State.OVERDUE, say("{looked}, {over}", looked=say(words), over=over_words)
    shut = next((d for d in dues if d.kind is DueKind.LEAVE_SHUT and d.day <= today), None)
    if shut is not None and shut.until is not None and shut.until > today:
        return State.SHUT, say("leave shut till {day}", day=date_words(shut.until, "weekday"))
    if not open_dues:
        return _offer_words(offer, today) if offer is not None else (State.PLAIN, say("nothing due"))
    if over > 0:
        return State.OVERDUE, say_count(over, "{n} day over", "{n} days over")
    return _due_words(open_dues[0], today)


def _due_words(due: Due, today: date) -> tuple[State, str]:
    feed, ahead = due.kind is DueKind.FEED_LOOK, (due.day - today).days
    if ahead <= 0:
        return State.SOON, say("feed look today") if feed else say("look today")
    if feed:
        return State.PLAIN, say_count(ahead, "feed look in {n} day", "feed look in {n} days")
    return State.PLAIN, say_count(ahead, "in {n} day", "in {n} days")


def _offer_words(offer: PlannedDue, today: date) -> tuple[State, str]:
    """An offer nobody took: never overdue, since nobody noted it."""
    state, day = (
        State.SOON if offer.day <= today else State.PLAIN,
        date_words(offer.day, "day" if offer.day.year == today.year else "day_year"),
    )
    if offer.kind is DueKind.FEED_LOOK:
        return state, say("feed look offered {day}", day=day)
    return state, say("look offered {day}", day=day)


def looked_today(book: Workbook, colony_id: ColonyId) -> Level | None:
    """How far the look of today went; None if there was none, or only its page was opened."""
    visit = next((visit for visit in book.read.visits(colony_id) if visit.day == book.today), None)
    if visit is None:
        return None
    return visit.level if visit.level is Level.PASSED_OVER or is_noted(book.read, visit) else None


class StandsStrip(QScrollArea):
    """The strip of all colonies of the apiary; it scrolls when there are many."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The strip of the desk's apiary."""
        super().__init__(parent)
        self._desk = desk
        self.setFixedHeight(STANDS_HEIGHT)
        self.setWidgetResizable(True)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setAccessibleName(say("Stands"))
        self._row = QWidget()
        self._row.setObjectName("ground")
        self._layout = QHBoxLayout(self._row)
        self._layout.setContentsMargins(8, 0, 8, 0)
        self._layout.setSpacing(4)
        self._nobody = QLabel(
            say("No colony stands here. Bees have come: Ctrl+N. Another apiary: Ctrl+Shift+G.")
        )
        self._nobody.setObjectName("small")
        self._layout.addWidget(self._nobody)
        self._layout.addStretch(1)
        self.setWidget(self._row)
        self._fields: list[StandField] = []
        self.before = self._edge_button("‹", say("Earlier stands"), -1)
        self.after = self._edge_button("›", say("Later stands"), 1)
        bar = self.horizontalScrollBar()
        bar.valueChanged.connect(lambda _value: self._show_edges())
        bar.rangeChanged.connect(lambda _least, _most: self._show_edges())
        desk.spot_changed.connect(self._spot_changed)
        desk.book_changed.connect(self._book_changed)
        desk.palette_changed.connect(lambda _palette: self._dress())
        self.refill()

    def cards(self) -> list[StandCard]:
        """What the strip shows, in stand order."""
        read, today = self._desk.book.read, self._desk.today
        apiary_id = self._desk.spot.apiary_id
        if apiary_id is None:
            return []
        made = []
        day = self._standing_day()
        for place in read.standing(apiary_id, day):
            if place.colony is None:
                continue
            hive = read.hive_day(place.colony.id, day)
            kinds = tuple(part.part.kind for part in hive.stack) if hive else ()
            dues = read.dues(colony_id=place.colony.id)
            looked = looked_today(self._desk.book, place.colony.id)
            is_free = looked is None and all(due.kind is DueKind.LEAVE_SHUT for due in dues)
            offer = offered_next(self._desk.book, place.colony.id) if is_free else None
            state, words = state_of(dues, looked, today, offer)
            made.append(StandCard(place.colony.id, place.colony.name, place.stand.name, kinds, state, words))
        return made

    def _standing_day(self) -> date:
        """Today, unless the colony looked at stands here no longer: then the day it is looked at."""
        spot, read = self._desk.spot, self._desk.book.read
        if spot.apiary_id is None or spot.colony_id is None:
            return self._desk.today
        here = read.standing(spot.apiary_id, self._desk.today)
        stands = any(place.colony is not None and place.colony.id == spot.colony_id for place in here)
        return self._desk.today if stands else spot.day

    def refill(self) -> None:
        """Show the apiary anew."""
        self._shown = (self._desk.spot.apiary_id, self._standing_day())
        held = next((field.card.colony_id for field in self._fields if field.hasFocus()), None)
        cards = self.cards()
        while len(self._fields) > len(cards):
            field = self._fields.pop()
            self._layout.removeWidget(field)
            field.hide()
            field.deleteLater()
        for at, card in enumerate(cards):
            if at < len(self._fields):
                self._fields[at].show_card(card)
            else:
                field = StandField(self._desk, card)
                self._fields.append(field)
                field.stepped.connect(self._step_focus)
                self._layout.insertWidget(at, field)
        for one, following in pairwise(self._fields):
            self.setTabOrder(one, following)
        self._nobody.setVisible(not cards)
        self._mark()
        if held is not None:
            self.focus_colony(held)

    def focus_colony(self, colony_id: ColonyId | None) -> None:
        """Put the keyboard on a colony's field."""
        for field in self._fields:
            if field.card.colony_id == colony_id:
                field.setFocus(Qt.FocusReason.OtherFocusReason)
                return
        if self._fields:
            self._fields[0].setFocus(Qt.FocusReason.OtherFocusReason)

    def step(self, by: int) -> None:
        """Go to the colony `by` stands on."""
        ids = [field.card.colony_id for field in self._fields]
        current = self._desk.spot.colony_id
        at = ids.index(current) if current in ids else -1
        target = at + by
        if 0 <= target < len(ids):
            self._desk.go(colony_id=ids[target])

    def _step_focus(self, by: int) -> None:
        held = next((at for at, field in enumerate(self._fields) if field.hasFocus()), None)
        if held is not None and 0 <= held + by < len(self._fields):
            self._fields[held + by].setFocus(Qt.FocusReason.TabFocusReason)
            self.ensureWidgetVisible(self._fields[held + by], 30, 0)

    # --- scrolling --------------------------------------------------------------------------------

    def _edge_button(self, sign: str, words: str, way: int) -> QToolButton:
        made = QToolButton(self)
        made.setText(sign)
        made.setAccessibleName(words)
        made.setToolTip(words)
        made.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        made.setFixedSize(_EDGE, STANDS_HEIGHT - 12)
        made.clicked.connect(lambda: self._scroll(way * (self.viewport().width() - _WIDEST)))
        made.hide()
        return made

    def _scroll(self, by: int) -> None:
        bar = self.horizontalScrollBar()
        bar.setValue(bar.value() + by)

    def _show_edges(self) -> None:
        bar = self.horizontalScrollBar()
        self.before.setVisible(bar.value() > bar.minimum())
        self.after.setVisible(bar.value() < bar.maximum())
        self.before.move(2, 6)
        self.after.move(self.width() - _EDGE - 2, 6)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """A wheel goes along the stands, whichever way it turns."""
        turned = event.angleDelta()
        self._scroll(-(turned.x() or turned.y()))
        event.accept()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The buttons stay at the ends."""
        super().resizeEvent(event)
        self._show_edges()

    # --- answers to signals -----------------------------------------------------------------------

    def _spot_changed(self, spot: Spot) -> None:
        if (spot.apiary_id, self._standing_day()) != self._shown:
            self.refill()
        else:
            self._mark()

    def _book_changed(self, changes: Changes) -> None:
        if changes.everything or any(changes.touches(kind) for kind in SHOWN):
            self.refill()

    def _dress(self) -> None:
        for field in self._fields:
            field.update()

    def _mark(self) -> None:
        for field in self._fields:
            chosen = field.card.colony_id == self._desk.spot.colony_id
            field.set_chosen(chosen=chosen)
        self._bring_chosen()
        # Fields that were made just now have no place yet: they get it with the next turn of the loop.
        QTimer.singleShot(0, self, self._bring_chosen)

    def _bring_chosen(self) -> None:
        """Scroll to the colony the keeper is at."""
        for field in self._fields:
            if field.card.colony_id == self._desk.spot.colony_id:
                self.ensureWidgetVisible(field, 30, 0)


class StandField(QWidget):
    """One colony: its hive drawn small, its name, its state."""

    stepped = Signal(int)
    """The keyboard wants to go so many stands on."""

    def __init__(self, desk: Desk, card: StandCard) -> None:
        """The field of one card."""
        super().__init__()
        self._desk = desk
        self._chosen = False
        self.card = card
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Expanding)
        self.show_card(card)

    def show_card(self, card: StandCard) -> None:
        """Show another state, or another colony."""
        self.card = card
        self.setAccessibleName(f"{card.name}, {card.words}")
        self.setToolTip(
            say("{name}, stand {stand}: {words}", name=card.name, stand=card.stand, words=card.words)
        )
        self.updateGeometry()
        self.update()

    def set_chosen(self, *, chosen: bool) -> None:
        """Mark the colony the keeper is at."""
        if chosen != self._chosen:
            self._chosen = chosen
            self.update()

    def sizeHint(self) -> QSize:
        """As wide as its words ask, within reason."""
        name = QFontMetrics(theme.serif(19, bold=True)).horizontalAdvance(self.card.name)
        words = QFontMetrics(theme.sans(13)).horizontalAdvance(self.card.words) + 20
        return QSize(max(_LEAST, min(_WIDEST, 60 + max(name, words) + 12)), STANDS_HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """No field is squeezed: the strip scrolls instead."""
        return self.sizeHint()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go to this colony."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._desk.go(colony_id=self.card.colony_id)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows go along the stands, Enter goes in."""
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space}:
            self._desk.go(colony_id=self.card.colony_id)
        elif event.key() in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            self.stepped.emit(1 if event.key() == Qt.Key.Key_Right else -1)
        elif event.key() == Qt.Key.Key_Down:
            self._desk.go(colony_id=self.card.colony_id, view=View.BOX)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The hive, the name in the book's letter, the sign and its word."""
        p = self._desk.palette
        painter = QPainter(self)
        whole = QRectF(self.rect())
        if self._chosen:
            painter.fillRect(whole.adjusted(0, 7, 0, 0), QColor(p.selection))
            painter.fillRect(QRectF(0, whole.bottom() - 2, whole.width(), 3), QColor(p.focus))
        ink = QColor(p.focus if self._chosen else p.edge)
        paint_hive(painter, QRectF(9, 12, 38, 54), self.card.kinds, ink, QColor(p.board), on=self._chosen)
        text = QRectF(56, 14, whole.width() - 62, 26)
        painter.setFont(theme.serif(19, bold=True))
        painter.setPen(QColor(p.ink))
        name = painter.fontMetrics().elidedText(
            self.card.name, Qt.TextElideMode.ElideRight, int(text.width())
        )
        painter.drawText(text, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, name)
        colour = QColor(
            {State.DONE: p.well, State.OVERDUE: p.propolis, State.SOON: p.soon}.get(
                self.card.state, p.second_ink
            )
        )
        left = 56.0
        if self.card.state is not State.PLAIN:
            paint_state(painter, QRectF(56, 45, 10, 10), self.card.state, colour)
            left = 71.0
        painter.setFont(theme.sans(13))
        painter.setPen(colour)
        room = QRectF(left, 40, whole.width() - left - 4, 20)
        words = painter.fontMetrics().elidedText(
            self.card.words, Qt.TextElideMode.ElideRight, int(room.width())
        )
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, words)
        if self.hasFocus():
            painter.setPen(QPen(QColor(p.focus), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(whole.adjusted(1, 8, -1, -2))
