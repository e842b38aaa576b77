"""The columns of a round sheet: in the order they are asked, each with what it was last time.

A column is a box to tick or room to write; the note takes what width is left over. Where they are drawn
is in round_sheet.py.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from beeworkbook.colony.asked import heading
from beeworkbook.colony.records import Question, Reply
from beeworkbook.colony.sheet_models import RoundSheetModel, RoundSheetRow, SheetVisit
from beeworkbook.papers.answer_words import answer_words, ticked_words, unwritten_words
from beeworkbook.papers.options import Paper
from beeworkbook.words import date_words, say

_TICKED: Final = frozenset(
    {
        Question.OPENED,
        Question.EGGS,
        Question.YOUNG,
        Question.POLLEN,
        Question.QUEEN,
        Question.DRAWN,
        Question.SIGNS,
    }
)
TICK_MM: Final = 7.0
_TICK_WIDTH: Final = 9.6
_NOTE_LEAST: Final = 20.0
_WIDTHS: Final = {
    Question.BROOD: 14.0,
    Question.SEAMS: 11.5,
    Question.STORES: 17.4,
    Question.CELLS: 14.0,
    Question.TEMPER: 14.0,
    Question.ROOM: 12.0,
}


@dataclass(frozen=True)
class Column:
    """One column: its key, heading and width; ticked is a box, else a line; printed is for reading only."""

    key: str
    heading: str
    width: float
    question: Question | None = None
    ticked: bool = False
    printed: bool = False


def strips(model: RoundSheetModel, paper: Paper, width: float) -> tuple[tuple[Column, ...], ...]:
    """The columns after the colony's, in one strip a row, or in two on A5.

    Errors: none; what is left of the width goes to the note.
    """
    asked = tuple(
        Column(
            question.value,
            heading(question),
            _WIDTHS.get(question, _TICK_WIDTH),
            question,
            question in _TICKED,
        )
        for question in Question
        if question not in model.left_out
    )
    feed = Column("feed", say("feed"), 17.0)
    left = Column("left", say("left"), 11.0)
    after = Column("next", say("next"), 13.0)
    bring = Column("bring", say("bring"), 25.0, printed=True)
    note = Column("note", say("note"), _NOTE_LEAST)
    tail = (feed, left, note, after, bring)
    if paper is Paper.A5:
        return _widened(asked, width), _widened(tail, width)
    return (_widened((*asked, *tail), width),)


def _widened(columns: Sequence[Column], width: float) -> tuple[Column, ...]:
    """The same columns filling the width: the note takes the rest, or all share it or give up some."""
    spare = width - sum(column.width for column in columns)
    if spare > 0 and any(column.key == "note" for column in columns):
        return tuple(
            replace(column, width=column.width + spare) if column.key == "note" else column
            for column in columns
        )
    movable = [column for column in columns if not column.ticked]
    share = spare / len(movable) if movable else 0.0
    return tuple(
        column if column.ticked else replace(column, width=column.width + share) for column in columns
    )


def last_words(column: Column, row: RoundSheetRow) -> str:
    """What this column said last time, or, for what to bring, what the dues say."""
    if column.key == "bring":
        return ", ".join(row.bring)
    last = row.last
    if column.key == "note" and row.passed:
        return "; ".join(filter(None, (row.passed, last.note if last is not None else "")))
    if last is None:
        return ""
    if column.question is not None:
        return _answer(last, column.question)
    return {
        "feed": last.feed.given,
        "left": last.feed.left,
        "note": last.note,
        "next": date_words(last.next_day, "short") if last.next_day else "",
    }[column.key]


def _answer(last: SheetVisit, question: Question) -> str:
    found = last.answers.get(question)
    if found is None or question in last.combs:
        return unwritten_words(last, question)
    if question not in _TICKED:
        return answer_words(question, found)
    return "–" if found.reply is Reply.NOT_LOOKED else ticked_words(question, found)
