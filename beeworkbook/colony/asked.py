"""The questions of a round in words: the column's heading, the whole question, what may be typed.

A round asks them in the order of the records' Question; those a round leaves out are not asked.
"""

from collections.abc import Collection
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from beeworkbook.colony.records import Question
from beeworkbook.words import say


@dataclass(frozen=True)
class _Asked:
    heading: str
    question: str
    typed: str


_ASKED: Final = MappingProxyType(
    {
        Question.OPENED: _Asked("opened", "Was the hive opened?", "y or n"),
        Question.EGGS: _Asked(
            "eggs", "Were eggs seen, and on which combs?", "y, n, or the combs: 4-6; - not looked"
        ),
        Question.YOUNG: _Asked(
            "young", "Was open brood seen, and on which combs?", "y, n, or the combs: 4-6; - not looked"
        ),
        Question.BROOD: _Asked(
            "brood",
            "On how many combs is brood, and how many full combs is it worth?",
            "combs and worth: 7/4.2; or y, n; - not looked",
        ),
        Question.POLLEN: _Asked("pollen", "Is pollen going in?", "y, n; - not looked"),
        Question.SEAMS: _Asked("seams", "How many seams do the bees fill?", "a number: 8; - not looked"),
        Question.STORES: _Asked(
            "stores", "How much is in store?", "kilograms: 8 or 8.5 kg or 18 lb; y, n; - not looked"
        ),
        Question.CELLS: _Asked(
            "cells",
            "Were there queen cells, and of which kind?",
            "n, or number, kind, place: 2U 1C 5B; U cup, E egg, C charged, S sealed, M emerged, T torn down",
        ),
        Question.QUEEN: _Asked(
            "queen",
            "Was the queen seen, where, and with which mark?",
            "y, n (looked for, not seen), or where: 5A blue; - not looked for",
        ),
        Question.TEMPER: _Asked(
            "temper",
            "How did the bees behave?",
            "q quiet, s steady on the comb, l lively, r running, f following, d defensive, or a word",
        ),
        Question.ROOM: _Asked(
            "room",
            "Have they room?",
            "y enough, n too little, s super put on, t super taken off, or supers on the hive: 2",
        ),
        Question.DRAWN: _Asked(
            "drawn", "Is foundation being drawn?", "y, n, or how many combs: 3; - not looked"
        ),
        Question.SIGNS: _Asked(
            "signs",
            "Was any sign of disease seen?",
            "n none, y something, or what was seen; - not looked for",
        ),
    }
)


def heading(question: Question) -> str:
    """The short heading of the question's column."""
    return say(_ASKED[question].heading)


def full_question(question: Question) -> str:
    """The question in full, for a tooltip and for a reader of the screen aloud."""
    return say(_ASKED[question].question)


def may_be_typed(question: Question) -> str:
    """What may be typed as an answer, in one line."""
    return say(_ASKED[question].typed)


def asked_questions(left_out: str) -> tuple[Question, ...]:
    """The questions a round asks, in order, from what Round.left_out keeps; unknown words do not count."""
    out = {word.strip() for word in left_out.split(",")}
    return tuple(question for question in Question if question.value not in out)


def write_left_out(questions: Collection[Question]) -> str:
    """What Round.left_out keeps for the questions a round does not ask."""
    return ",".join(question.value for question in Question if question in questions)
