"""The fields of the Page on a comb sheet: what is asked of the whole colony, feed, and the notes.

They take the place of the frames that are left on the last page. What does not fit is given back,
to flow on to another page.
"""

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from beeworkbook.colony.phrases import closed
from beeworkbook.colony.records import Question, Reply
from beeworkbook.colony.sheet_models import CombSheetModel, SheetVisit
from beeworkbook.comb.contents import Content, Face, MarkKind, Origin
from beeworkbook.papers import symbols
from beeworkbook.papers.answer_words import (
    answer_words,
    brackets_words,
    reply_words,
    says_more,
    ticked_words,
    unwritten_words,
)
from beeworkbook.papers.comb_forms import TICK_MM, Form
from beeworkbook.papers.field_map import Field, FieldKind
from beeworkbook.papers.fonts import LABEL, NOTE, SMALL, Style, shortened, width_mm, wrapped
from beeworkbook.papers.mark_words import marked
from beeworkbook.papers.page import FIRM_MM, HAIR_MM, Document
from beeworkbook.papers.rect import Rect
from beeworkbook.words import date_words, number, say

QUESTION_MM: Final = 10.0
WRITE_MM: Final = 9.4
RULED_MM: Final = 7.0
_ASKED: Final = (Question.QUEEN, Question.EGGS, Question.CELLS, Question.SIGNS)
_REPLIES: Final = (Reply.YES, Reply.NO, Reply.NOT_LOOKED)
_WIDE: Final = 75.0
_MARKED: Final = {MarkKind.QUEEN: Question.QUEEN, MarkKind.QUEEN_CELL: Question.CELLS}


@dataclass(frozen=True)
class Columns:
    """Two columns of text from the fields' lower edge down; the middle stays free for markers."""

    left: Rect
    right: Rect

    @property
    def lines(self) -> int:
        """How many lines of notes both have room for."""
        return 2 * max(int(self.left.height // NOTE.leading_mm), 0)


def _asked_words(question: Question) -> str:
    return {
        Question.QUEEN: say("Queen seen"),
        Question.EGGS: say("Eggs seen"),
        Question.CELLS: say("Queen cells"),
        Question.SIGNS: say("Signs of disease"),
    }[question]


def fields_height(form: Form) -> float:
    """How much of the free strip the fields take, the notes not counted."""
    rows = 1 if _is_wide(text_columns(form, form.body)) else 2
    return rows * (QUESTION_MM + WRITE_MM)


def draw_fields(document: Document, form: Form, free: Rect, model: CombSheetModel) -> Iterator[Field]:
    """The questions and the lines to write on, at the top of the free strip, in the columns of the notes."""
    columns = text_columns(form, free)
    wide = _is_wide(columns)
    for question, place in zip(_ASKED, _cells(columns, free.y, QUESTION_MM, 2 if wide else 1), strict=False):
        yield from _draw_question(document, place, question, model)
    top = free.y + QUESTION_MM * (1 if wide else 2)
    places = _cells(columns, top, WRITE_MM, 3 if wide else 2)
    for (name, label, last, now), place in zip(_written(model), places, strict=False):
        yield _draw_line(document, place, (label, last, now), f"page.{name}")


def _is_wide(columns: Columns) -> bool:
    """Whether all questions stand in one row, and all lines to write on in one below."""
    return columns.left.width > _WIDE


def _cells(columns: Columns, top: float, height: float, across: int) -> Iterator[Rect]:
    """Places row by row, so many across in each of the two columns."""
    for row in itertools.count():
        for column in (columns.left, columns.right):
            step = column.width / across
            for at in range(across):
                yield Rect(column.x + at * step, top + row * height, step - 2.0, height)


def _draw_question(
    document: Document, place: Rect, question: Question, model: CombSheetModel
) -> Iterator[Field]:
    words = _asked_words(question)
    used = document.text(place.x, place.y + 3.4, words, LABEL)
    now = model.visit.answers.get(question) if model.visit else None
    small = _last_answer(model.last, question)
    if model.visit:
        more = answer_words(question, now) if now and says_more(question, now) else ""
        small = more or ("" if now else unwritten_words(model.visit, question))
    document.text(
        place.x + used + 1.5,
        place.y + 3.4,
        shortened(small, SMALL, place.width - used - 3.0),
        SMALL,
        ink=document.second,
    )
    x = place.x
    for reply in _REPLIES:
        box = Rect(x, place.y + 4.5, TICK_MM, TICK_MM)
        document.box(box, FIRM_MM)
        if model.visit and _reply(question, model) is reply:
            symbols.cross(document, box)
        x = box.right + 1.0
        x += _beside(document, x, box, reply_words(reply)) + 2.0
        yield Field(f"page.{question.value}.{reply.value}", FieldKind.TICK, box)


def _reply(question: Question, model: CombSheetModel) -> Reply | None:
    """The reply that was given; where none was, yes for what was seen on a comb, and never no."""
    given = model.visit.answers.get(question) if model.visit else None
    if given is not None and given.reply is not None:
        return given.reply
    return Reply.YES if question in _seen_on_combs(model) else None


def _seen_on_combs(model: CombSheetModel) -> set[Question]:
    kinds = {mark.kind for _, mark in marked(model)}
    seen = {question for kind, question in _MARKED.items() if kind in kinds}
    sides = (comb.side(face) for box in model.boxes for comb in box.combs for face in Face)
    if any(
        side.cells is not None
        and side.origin is not Origin.ASSUMED
        and bool((side.cells == Content.EGGS).any())
        for side in sides
    ):
        seen.add(Question.EGGS)
    return seen


def _beside(document: Document, x: float, box: Rect, words: str) -> float:
    """Words beside a box, in two lines where there are two; gives their width."""
    lines = words.split(" ", 1)
    middle = box.centre[1] + SMALL.height_mm / 2
    first = middle - (len(lines) - 1) * 1.45
    return max(document.text(x, first + at * 2.9, line, SMALL) for at, line in enumerate(lines))


def _last_answer(last: SheetVisit | None, question: Question) -> str:
    """Last time's answer with its day, small."""
    found = last.answers.get(question) if last else None
    if last is None:
        return ""
    if found is None or question in last.combs:
        words = unwritten_words(last, question)
    else:
        words = "–" if found.reply is Reply.NOT_LOOKED else ticked_words(question, found)
    return f"{date_words(last.day, 'short')} {words}" if words else ""


def _written(model: CombSheetModel) -> Iterator[tuple[str, str, str, str]]:
    """Name, label, last time and now of the lines to write on."""
    now, last = model.visit, model.last if not model.visit else None

    yield "temper", say("Temper"), _typed(last, Question.TEMPER), _typed(now, Question.TEMPER)
    yield "stores", say("Stores"), _last_typed(last, Question.STORES), _typed(now, Question.STORES)
    yield "feed_left", say("Feed left"), last.feed.left if last else "", now.feed.left if now else ""
    yield "feed_given", say("Feed given"), last.feed.given if last else "", now.feed.given if now else ""
    yield "weather", say("Weather"), "", weather_words(now) if now else ""
    yield "next", say("Next look"), "", date_words(now.next_day) if now and now.next_day else ""


def _typed(visit: SheetVisit | None, question: Question) -> str:
    found = visit.answers.get(question) if visit else None
    return answer_words(question, found) if found else unwritten_words(visit, question)


def _last_typed(visit: SheetVisit | None, question: Question) -> str:
    """Last time is told by the combs where the line was at odds with them."""
    if visit is not None and question in visit.combs:
        return unwritten_words(visit, question)
    return _typed(visit, question)


def weather_words(visit: SheetVisit) -> str:
    """Weather and temperature as they were noted."""
    degrees = f"{number(visit.temperature_c, 0)} °C" if visit.temperature_c is not None else ""
    return ", ".join(part for part in (visit.weather, degrees) if part)


def _draw_line(document: Document, place: Rect, words: tuple[str, str, str], name: str) -> Field:
    label, last, now = words
    used = document.text(place.x, place.y + 2.8, label, LABEL)
    document.text(
        place.x + used + 1.5,
        place.y + 2.8,
        shortened(last, SMALL, place.width - used - 2.0),
        SMALL,
        ink=document.second,
    )
    line = place.bottom - 0.8
    document.line((place.x, line), (place.right, line), HAIR_MM, document.rule)
    style = NOTE if width_mm(now, NOTE) <= place.width else Style(NOTE.font, SMALL.size, SMALL.leading)
    document.text(place.x, line - 1.1, shortened(now, style, place.width), style)
    return Field(name, FieldKind.WRITE, Rect(place.x, place.y + 3.2, place.width, WRITE_MM - 4.0))


def text_columns(form: Form, free: Rect) -> Columns:
    """The two columns between the markers in a free strip."""
    if form.markers:
        left, middle, right = form.markers[0], form.markers[1], form.markers[2]
        start, gap = left.right + 2.2, 1.6
        width = middle.x - gap - start
        return Columns(
            Rect(start, free.y, width, free.height), Rect(right.x - 2.2 - width, free.y, width, free.height)
        )
    width = free.width / 2 - 2.5
    return Columns(
        Rect(free.x, free.y, width, free.height), Rect(free.right - width, free.y, width, free.height)
    )


def draw_ruled(document: Document, columns: Columns, model: CombSheetModel) -> Iterator[Field]:
    """Lines to write notes on, and what the brackets beside the fields mean."""
    for name, column in (("left", columns.left), ("right", columns.right)):
        lines = int((column.height - 1.0) // RULED_MM)
        if lines < 1:
            continue
        if name == "left":
            used = document.text(column.x, column.y + 3.2, say("Notes"), LABEL)
            small = brackets_words((model.last,), (*_ASKED, Question.STORES))
            document.text(column.x + used + 1.5, column.y + 3.2, small, SMALL, ink=document.second)
        for index in range(1, lines + 1):
            y = column.y + index * RULED_MM
            document.line((column.x, y), (column.right, y), HAIR_MM, document.rule)
        yield Field(
            f"page.notes.{name}", FieldKind.WRITE, Rect(column.x, column.y, column.width, lines * RULED_MM)
        )


def note_texts(model: CombSheetModel, marks: Sequence[str], left_out: Sequence[str] = ()) -> list[str]:
    """All that a filled sheet says in words: sentences, the keeper's note, marks, what is next.

    left_out are the boxes of which no comb was noted.
    """
    visit = model.visit
    if visit is None:
        return []
    last = []
    if visit.flowering:
        last.append(say("In flower: {what}.", what=visit.flowering))
    if visit.next_day and visit.next_reason:
        day = date_words(visit.next_day)
        last.append(closed(say("Next look {day}: {reason}", day=day, reason=visit.next_reason)))
    if left_out:
        last.append(say("No comb noted: {boxes}.", boxes=", ".join(left_out)))
    if model.bring:
        last.append(say("Bring: {what}.", what=", ".join(model.bring)))
    last.append(brackets_words((visit,), (*_ASKED, Question.STORES)))
    texts = (" ".join(visit.sentences), visit.note, " · ".join(marks), " ".join(filter(None, last)))
    return [text for text in texts if text.strip()]


def draw_texts(document: Document, columns: Columns, lines: list[str]) -> list[str]:
    """Set lines down the left column, then the right; gives those there was no room for."""
    rest = lines
    for column in (columns.left, columns.right):
        room = max(int(column.height // NOTE.leading_mm), 0)
        for index, line in enumerate(rest[:room]):
            document.text(column.x, column.y + (index + 1) * NOTE.leading_mm - 1.0, line, NOTE)
        rest = rest[room:]
    return rest


def broken(texts: Sequence[str], width: float) -> list[str]:
    """The texts as lines of a column."""
    return [line for text in texts for line in wrapped(text, NOTE, width)]
