"""The lines of a round drawn: this time's answers, last time's small below them, the colony kept in sight.

It is told what to draw and where; it knows no book and no keys.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from beeworkbook.colony.phrases import closed, titled
from beeworkbook.colony.records import Question
from beeworkbook.colony.sentences import Field, Target
from beeworkbook.qt import theme
from beeworkbook.qt.icons import State, paint_state
from beeworkbook.qt.palette import Palette
from beeworkbook.rounds.columns import MARGIN, STAND, Column, Columns
from beeworkbook.rounds.field import (
    asked,
    combs_say,
    field_heading,
    heft_total,
    last_from_combs,
    last_shown,
    not_looked,
    shown,
)
from beeworkbook.rounds.offers import feed_look_offered, look_offered, short_day
from beeworkbook.rounds.row import Row
from beeworkbook.words import say

HEAD_HEIGHT: Final = 24
ROW_HEIGHT: Final = 52
NOTE_HEIGHT: Final = 20
_GAP: Final = 8
_NAME_LEADING: Final = 15.0
_LINE: Final = QRectF(0, 6, 0, 22)
_SMALL: Final = QRectF(0, 28, 0, 18)
_LEFT: Final = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter
_WRAPPED: Final = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap
_NOTES_LEFT: Final = MARGIN + STAND + 14
_NAME_PX: Final = (17, 15, 13)
"""A long name is written smaller, and then in two lines, before it is cut off."""
_TYPED_IS_SHORT: Final = frozenset({Question.CELLS, Question.QUEEN, Question.TEMPER})
_WAS_PASSED: Final = (Question.EGGS, Question.YOUNG, Question.BROOD)


@dataclass(frozen=True)
class RowLook:
    """How one line is to be drawn. `refused` are texts not taken, by field; `typing` is the field in hand."""

    chosen: bool = False
    typing: Target | None = None
    refused: Mapping[Target, str] | None = None


def row_height(row: Row, width: float, *, chosen: bool) -> int:
    """How tall a line so many pixels wide is: the one being worked has room for all there is to mention."""
    return ROW_HEIGHT + (_notes_height(row, width) if chosen and row.notes else 0)


def _notes_height(row: Row, width: float) -> int:
    metrics = QFontMetricsF(theme.sans(theme.LABEL_PX))
    room = QRectF(0, 0, width - _NOTES_LEFT - MARGIN, 1000)
    high = metrics.boundingRect(room, int(_WRAPPED), notes_words(row)).height()
    return NOTE_HEIGHT + max(0, math.ceil(high - metrics.height()))


def notes_words(row: Row) -> str:
    """What there is to mention about a line, each with its reason."""
    said = (say("{text} {reason}", text=note.text, reason=closed(titled(note.reason))) for note in row.notes)
    return "   ".join(said)


class RowPainter:
    """Draws the heading and the lines in a palette."""

    def __init__(self, palette: Palette, columns: Columns, targets: tuple[Target, ...]) -> None:
        """A painter for these columns."""
        self._p = palette
        self._columns = columns
        self._targets = targets

    def paint_heading(self, painter: QPainter, shift: float, width: float) -> None:
        """The names of the columns between two rules."""
        p = self._p
        painter.fillRect(QRectF(0, 0, width, HEAD_HEIGHT), QColor(p.ground))
        painter.setFont(theme.sans(theme.LABEL_PX))
        painter.setPen(QColor(p.second_ink))
        painter.save()
        painter.setClipRect(QRectF(self._columns.frozen, 0, width, HEAD_HEIGHT))
        for column in self._columns.columns:
            rect = QRectF(column.left - shift, 0, column.width - 3, HEAD_HEIGHT)
            _text(painter, rect, field_heading(column.target))
        painter.restore()
        _text(painter, QRectF(MARGIN + 6, 0, STAND - 6, HEAD_HEIGHT), say("stand"))
        _text(painter, QRectF(MARGIN + STAND, 0, self._columns.colony_width, HEAD_HEIGHT), say("colony"))
        painter.fillRect(QRectF(MARGIN, HEAD_HEIGHT - 1, width - 2 * MARGIN, 1), QColor(p.edge))

    def paint_row(self, painter: QPainter, row: Row, rect: QRectF, shift: float, look: RowLook) -> None:
        """One line inside `rect`; `shift` is how far the fields are scrolled to the left."""
        p = self._p
        painter.save()
        painter.translate(rect.topLeft())
        width = rect.width()
        if look.chosen:
            ground = QRectF(MARGIN - 4, 0, width - 2 * MARGIN + 8, rect.height() - 1)
            painter.fillRect(ground, QColor(p.selection))
            painter.fillRect(QRectF(MARGIN - 4, 0, 3, rect.height() - 1), QColor(p.focus))
        painter.fillRect(QRectF(MARGIN, rect.height() - 1, width - 2 * MARGIN, 1), QColor(p.rule))
        self._paint_colony(painter, row)
        painter.save()
        painter.setClipRect(QRectF(self._columns.frozen, 0, width - self._columns.frozen, rect.height() - 1))
        painter.translate(-shift, 0)
        self._paint_fields(painter, row, look)
        painter.restore()
        if look.chosen and row.notes:
            high = rect.height() - ROW_HEIGHT
            self._paint_notes(painter, row, QRectF(0, ROW_HEIGHT - 6, width, high))
        painter.restore()

    # --- within -----------------------------------------------------------------------------------

    def _paint_colony(self, painter: QPainter, row: Row) -> None:
        p = self._p
        stand = QRectF(MARGIN + 6, _LINE.top(), STAND - 10, _LINE.height())
        self._write(painter, stand, row.stand.name, theme.sans(), p.second_ink)
        room = self._columns.colony_width - _GAP
        self._paint_name(painter, row.colony.name, room)
        last = row.last.visit
        words = say("last, {day}", day=short_day(last.day)) if last else say("first line")
        small = QRectF(MARGIN + STAND, _SMALL.top(), room, _SMALL.height())
        self._write(painter, small, words, theme.sans(theme.LABEL_PX, italic=True), p.second_ink)

    def _paint_name(self, painter: QPainter, name: str, room: float) -> None:
        lines, font = name_lines(name, room)
        high = _LINE.height() if len(lines) == 1 else _NAME_LEADING
        top = _LINE.top() - 1 if len(lines) == 1 else 1.0
        for at, line in enumerate(lines):
            rect = QRectF(MARGIN + STAND, top + at * high, room, high)
            self._write(painter, rect, line, font, self._p.ink)

    def _paint_fields(self, painter: QPainter, row: Row, look: RowLook) -> None:
        fields = asked(row, self._targets)
        for column in self._columns.columns:
            self._paint_small(painter, row, column)
            if column.target == look.typing:
                continue
            refused = (look.refused or {}).get(column.target)
            if refused is not None:
                self._paint_refused(painter, column, refused)
            elif column.target in fields or shown(row, column.target) or combs_say(row.now, column.target):
                self._paint_field(painter, row, column, look, to_ask=column.target in fields)
        self._paint_state(painter, row)

    def _paint_field(
        self, painter: QPainter, row: Row, column: Column, look: RowLook, *, to_ask: bool
    ) -> None:
        p, text = self._p, shown(row, column.target)
        rect = QRectF(column.left, _LINE.top(), self._room(row, column), _LINE.height())
        if not text:
            if look.chosen and to_ask:
                y = _LINE.bottom() - 2.5
                painter.setPen(QPen(QColor(p.edge), 1))
                painter.drawLine(QPointF(column.left, y), QPointF(column.right - _GAP, y))
            font = theme.sans(theme.LABEL_PX, italic=True)
            self._write(painter, rect, combs_say(row.now, column.target), font, p.second_ink)
            return
        quiet = not_looked(row, column.target)
        text, font = text_within(row, column.target, rect.width())
        self._write(painter, rect, text, font, p.second_ink if quiet else p.ink)

    def _room(self, row: Row, column: Column) -> float:
        """A heft, or that a colony was passed over, has the empty column beside it to itself."""
        wide = (column.target is Question.STORES and row.shut) or (
            column.target is Question.OPENED and row.passed
        )
        return column.width * (2 if wide else 1) - _GAP

    def _paint_small(self, painter: QPainter, row: Row, column: Column) -> None:
        p = self._p
        rect = QRectF(column.left, _SMALL.top(), column.width - _GAP / 2, _SMALL.height())
        if column.target is Field.NEXT:
            self._write(
                painter, rect, _next_small(row), theme.sans(theme.LABEL_PX, italic=True), p.second_ink
            )
            return
        text = last_shown(row, column.target)
        font = theme.sans(theme.LABEL_PX, italic=last_from_combs(row, column.target))
        if column.target is Field.NOTE:
            font = theme.serif(13)
        elif not _fits(text, font, rect.width()):
            text = _shorter_last(row, column.target, text)
        self._write(painter, rect, text, font, p.second_ink)

    def _paint_refused(self, painter: QPainter, column: Column, text: str) -> None:
        colour = QColor(self._p.propolis)
        paint_state(painter, QRectF(column.left, _LINE.top() + 7, 9, 9), State.OVERDUE, colour)
        rect = QRectF(column.left + 12, _LINE.top(), column.width - 14, _LINE.height())
        self._write(painter, rect, text, _font(column.target), self._p.propolis)

    def _paint_state(self, painter: QPainter, row: Row) -> None:
        """In place of the fields nobody was asked: why not."""
        words = ""
        if row.shut:
            words = say("heft, left + right sides") if row.now.heft else say("seen from outside")
        elif row.by_comb and not any(
            shown(row, target) or combs_say(row.now, target) for target in _WAS_PASSED
        ):
            words = say("combs noted in the box")
        spans = [column for target in _WAS_PASSED if (column := self._columns.of(target)) is not None]
        if words and spans:
            rect = QRectF(
                spans[0].left, _LINE.top(), spans[-1].right - spans[0].left - _GAP / 2, _LINE.height()
            )
            self._write(painter, rect, words, theme.sans(theme.LABEL_PX), self._p.second_ink)

    def _paint_notes(self, painter: QPainter, row: Row, rect: QRectF) -> None:
        left = MARGIN + STAND
        paint_state(painter, QRectF(left, rect.top() + 6, 8, 8), State.SOON, QColor(self._p.soon))
        room = QRectF(_NOTES_LEFT, rect.top() + 2, rect.width() - _NOTES_LEFT - MARGIN, rect.height())
        painter.setFont(theme.sans(theme.LABEL_PX))
        painter.setPen(QColor(self._p.ink))
        painter.drawText(room, int(_WRAPPED), notes_words(row))

    @staticmethod
    def _write(painter: QPainter, rect: QRectF, text: str, font: QFont, colour: str) -> None:
        if text:
            painter.setFont(font)
            painter.setPen(QColor(colour))
            _text(painter, rect, text)


def _font(target: Target) -> QFont:
    if target is Field.NOTE:
        return theme.serif(theme.NOTE_PX)
    return theme.sans(bold=target is Field.NEXT)


def name_lines(name: str, room: float) -> tuple[tuple[str, ...], QFont]:
    """A colony's name in a room so wide: in one line, else in two of the smallest writing."""
    for pixels in _NAME_PX:
        font = theme.serif(pixels, bold=True)
        if _fits(name, font, room):
            return (name,), font
    words, first = name.split(), ""
    while words and _fits(f"{first} {words[0]}".strip(), font, room):
        first = f"{first} {words.pop(0)}".strip()
    return ((first, " ".join(words)) if first else (name,)), font


def text_within(row: Row, target: Target, room: float) -> tuple[str, QFont]:
    """What stands in a field so wide: as it is written, else shorter, else in small writing too."""
    text, font = shown(row, target), _font(target)
    if _fits(text, font, room):
        return text, font
    text = "–" if not_looked(row, target) else _shorter(row, target, text)
    if target is not Field.NOTE and not _fits(text, font, room):
        font = theme.sans(theme.LABEL_PX, bold=target is Field.NEXT)
    return text, font


def _fits(text: str, font: QFont, room: float) -> bool:
    return QFontMetricsF(font).horizontalAdvance(text) <= room


def _shorter_last(row: Row, target: Target, text: str) -> str:
    if text == say("not looked"):
        return "–"
    if target is Question.STORES:
        return heft_total(row.last) or text
    return text


def _shorter(row: Row, target: Target, text: str) -> str:
    """What was typed, where that is shorter: "1C 5B" for "1 charged 5B"; of a heft its sum."""
    if target is Question.STORES:
        return heft_total(row.now) or text
    answer = row.now.answers.get(Question(target)) if target in _TYPED_IS_SHORT else None
    return answer.typed if answer is not None and 0 < len(answer.typed) < len(text) else text


def _next_small(row: Row) -> str:
    """What is offered stands small under the next day, and what was put down for the feed."""
    visit = row.now.visit
    if visit is None:
        return ""
    if visit.next_day is None:
        due = feed_look_offered(row) or look_offered(row)
        return say("{day}?", day=short_day(due.day)) if due is not None else ""
    if row.feed_look is not None:
        return say("feed {day}", day=short_day(row.feed_look.day))
    return ""


def _text(painter: QPainter, rect: QRectF, text: str) -> None:
    line = " ".join(text.split())
    elided = QFontMetricsF(painter.font()).elidedText(line, Qt.TextElideMode.ElideRight, rect.width())
    painter.drawText(rect, _LEFT | Qt.TextFlag.TextSingleLine, elided)
