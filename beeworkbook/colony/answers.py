"""An answer to a question of a round: its shape, and the words it is written in.

Reading what is typed is in questions.py, writing it back in written.py.

What the two numbers of an answer are: eggs and young, first and last comb · brood, combs and worth ·
seams, seams · stores, kilograms · cells, queen cells without play cups and play cups · queen, comb and
side (1 is A, 2 is B) · room, supers on the hive · drawn, combs being drawn. Nought is a plain no, without
a number.
"""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Protocol

from beeworkbook.colony.records import Question, Reply
from beeworkbook.words import say


@dataclass(frozen=True)
class ParsedAnswer:
    """An answer as typed and as understood; all empty for a blank field."""

    typed: str = ""
    reply: Reply | None = None
    number: float | None = None
    second: float | None = None


class AnAnswer(Protocol):
    """What ParsedAnswer and the record Answer have in common."""

    @property
    def typed(self) -> str:
        """As typed."""

    @property
    def reply(self) -> Reply | None:
        """Yes, no, not looked, or blank."""

    @property
    def number(self) -> float | None:
        """The first number."""

    @property
    def second(self) -> float | None:
        """The second number."""


BLANK: Final = ParsedAnswer()

TEMPERS: Final = MappingProxyType(
    {"q": "quiet", "s": "steady", "l": "lively", "r": "running", "f": "following", "d": "defensive"}
)
"""Words for how bees behave, by the key that is enough. Source: common practice, no source."""

ROOM_WORDS: Final = MappingProxyType({"s": "super on", "t": "super off"})
"""What was done about room, by the key that is enough."""

WRITTEN: Final = MappingProxyType(
    {
        (Question.QUEEN, Reply.YES): "seen",
        (Question.QUEEN, Reply.NO): "not seen",
        (Question.EGGS, Reply.YES): "seen",
        (Question.YOUNG, Reply.YES): "seen",
        (Question.EGGS, Reply.NO): "none",
        (Question.YOUNG, Reply.NO): "none",
        (Question.BROOD, Reply.NO): "none",
        (Question.POLLEN, Reply.YES): "in",
        (Question.POLLEN, Reply.NO): "none",
        (Question.SEAMS, Reply.NO): "none",
        (Question.STORES, Reply.YES): "some",
        (Question.STORES, Reply.NO): "none",
        (Question.CELLS, Reply.YES): "some",
        (Question.CELLS, Reply.NO): "none",
        (Question.ROOM, Reply.YES): "enough",
        (Question.ROOM, Reply.NO): "too little",
        (Question.DRAWN, Reply.NO): "none",
        (Question.SIGNS, Reply.YES): "something",
        (Question.SIGNS, Reply.NO): "none",
    }
)
"""How a plain yes or no is written, where a better word than yes or no is at hand."""


def plain_reply(question: Question, word: str) -> Reply | None:
    """Yes or no, if the word says just that to this question."""
    if question is Question.TEMPER:
        return None
    if question is not Question.SEAMS and word in {
        "y",
        "yes",
        say("yes").casefold(),
        *_extra(question, Reply.YES),
    }:
        return Reply.YES
    if word in {"n", "no", "none", say("no").casefold(), say("none").casefold(), *_extra(question, Reply.NO)}:
        return Reply.NO
    return None


def _extra(question: Question, reply: Reply) -> set[str]:
    """The words of this question that say yes or no in its own way."""
    written = WRITTEN.get((question, reply), "")
    return {written, say(written).casefold()} if written else set()
