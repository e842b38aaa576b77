"""What is typed into a field of a round, read into an answer.

Blank stays blank and is never no or nothing; "-" is not looked. "=" (as last time) belongs to whoever
knows last time. What an answer's numbers mean is in answers.py, what is asked in asked.py.
"""

from collections.abc import Callable
from types import MappingProxyType
from typing import Final

from beeworkbook.colony.amounts import AmountError, Measure, parse_amount
from beeworkbook.colony.answers import BLANK, ROOM_WORDS, TEMPERS, AnAnswer, ParsedAnswer, plain_reply
from beeworkbook.colony.asked import full_question, heading, may_be_typed
from beeworkbook.colony.records import Question, Reply
from beeworkbook.colony.said import MOST_COMBS, SaidError, read_cells, read_combs, read_queen
from beeworkbook.colony.written import write_answer
from beeworkbook.comb.contents import CellKind, Face
from beeworkbook.words import NumberError, number, parse_number, say

__all__ = [
    "AnAnswer",
    "ParsedAnswer",
    "QuestionError",
    "full_question",
    "heading",
    "may_be_typed",
    "one_key",
    "parse_answer",
    "write_answer",
]

LONGEST: Final = 200
_MOST_KG: Final = 500.0


class QuestionError(ValueError):
    """What was typed is no answer to this question."""


_YES_NO: Final = frozenset("yn-")
_ONE_KEY: Final = MappingProxyType(
    {
        **dict.fromkeys(Question, _YES_NO),
        Question.SEAMS: frozenset("-"),
        Question.TEMPER: frozenset({*TEMPERS, "-"}),
        Question.ROOM: frozenset({*_YES_NO, *ROOM_WORDS}),
    }
)


def one_key(question: Question) -> frozenset[str]:
    """The keys, in lower case, that are a whole answer and move on by themselves."""
    return _ONE_KEY[question]


def parse_answer(question: Question, typed: str) -> ParsedAnswer:
    """The answer that was typed; blank gives a blank one.

    Errors: QuestionError, one sentence for the keeper.
    """
    text = " ".join(typed.split())
    if not text:
        return BLANK
    if len(text) > LONGEST:
        raise QuestionError(say("That is long for a field: write it in the note."))
    word = text.casefold()
    if word in {"-", "\u2013", "\u2014", "not looked", say("not looked").casefold()}:
        return ParsedAnswer(text, Reply.NOT_LOOKED)
    reply = plain_reply(question, word)
    if reply is not None:
        return ParsedAnswer(text, reply)
    try:
        return _READERS[question](text)
    except (SaidError, AmountError, NumberError) as error:
        raise QuestionError(str(error)) from error


def _only_yes_no(_text: str) -> ParsedAnswer:
    raise QuestionError(say("Type y or n, or - if you did not look."))


def _combs(text: str) -> ParsedAnswer:
    if text == "0":
        return ParsedAnswer(text, Reply.NO)
    combs = read_combs(text)
    if not combs:
        raise SaidError(say("\u201c{text}\u201d names no combs: write 4-6.", text=text))
    return ParsedAnswer(text, Reply.YES, float(combs[0]), float(combs[-1]) if len(combs) > 1 else None)


def _brood(text: str) -> ParsedAnswer:
    parts = text.replace("/", " ").replace(", ", " ").split()
    if not parts or len(parts) > 2:
        raise QuestionError(say("Write combs and what they are worth, as 7/4.2."))
    combs = parse_number(parts[0])
    if not combs.is_integer():
        raise QuestionError(say("Combs are counted whole: write 7/4.2 for seven combs worth 4.2."))
    _within(combs, MOST_COMBS)
    worth = parse_number(parts[1]) if len(parts) == 2 else None
    if worth is not None and not 0 <= worth <= combs:
        raise QuestionError(
            say("Brood on {combs} combs is worth {combs} at most.", combs=number(combs))
            if worth > 0
            else say("What combs are worth is not below nought.")
        )
    return _counted(text, combs, worth)


def _seams(text: str) -> ParsedAnswer:
    seams = _within(parse_number(text.removesuffix(say("seams")).removesuffix("seams")), MOST_COMBS)
    return _counted(text, seams)


def _stores(text: str) -> ParsedAnswer:
    amount = parse_amount(text)
    if amount.measure is Measure.LITRES:
        raise QuestionError(say("Stores are said in kilograms: write 8 kg."))
    return _counted(text, _within(amount.value, _MOST_KG))


def _cells(text: str) -> ParsedAnswer:
    cells = read_cells(text)
    cups = sum(cell.count for cell in cells if cell.kind is CellKind.PLAY_CUP)
    others = sum(cell.count for cell in cells) - cups
    if not cells:
        return ParsedAnswer(text, Reply.NO)
    return ParsedAnswer(text, Reply.YES, float(others), float(cups))


def _queen(text: str) -> ParsedAnswer:
    said = read_queen(text)
    comb = None if said.comb is None else float(said.comb)
    face = {Face.A: 1.0, Face.B: 2.0, None: None}[said.face]
    return ParsedAnswer(text, Reply.YES, comb, face)


def _temper(text: str) -> ParsedAnswer:
    word = text.casefold()
    letters = word.replace(" ", "").replace(",", "")
    known = {written.casefold(): key for key, text in TEMPERS.items() for written in (text, say(text))}
    if word in known:
        return ParsedAnswer(text, Reply.YES)
    if len(letters) <= 3 and letters and set(letters) <= set(TEMPERS):
        return ParsedAnswer(text, Reply.YES)
    if len(letters) == 1 or not any(sign.isalpha() for sign in text):
        raise QuestionError(
            say(
                "Type a word or one of {letters}.",
                letters=", ".join(f"{key} {say(name)}" for key, name in TEMPERS.items()),
            )
        )
    return ParsedAnswer(text, Reply.YES)


def _room(text: str) -> ParsedAnswer:
    word = text.casefold()
    for key, name in ROOM_WORDS.items():
        if word in {key, name, say(name).casefold()}:
            return ParsedAnswer(text, Reply.YES)
    if any(sign.isalpha() for sign in text) and not word[0].isdigit():
        return ParsedAnswer(text, Reply.YES) if len(text) > 1 else _only_yes_no(text)
    supers = word.replace(say("supers").casefold(), "").replace(say("super").casefold(), "")
    return ParsedAnswer(text, Reply.YES, _whole(supers))


def _drawn(text: str) -> ParsedAnswer:
    combs = _whole(text.casefold().removesuffix("combs").removesuffix(say("combs").casefold()))
    return _counted(text, combs)


def _signs(text: str) -> ParsedAnswer:
    if len(text) == 1:
        raise QuestionError(say("Write what was seen, n for none, or - for not looked for."))
    return ParsedAnswer(text, Reply.YES)


def _counted(text: str, count: float, second: float | None = None) -> ParsedAnswer:
    """Nought counted is a plain no, so that no and 0 are never two different answers."""
    return ParsedAnswer(text, Reply.YES, count, second) if count else ParsedAnswer(text, Reply.NO)


def _within(value: float, most: float) -> float:
    if not 0 <= value <= most:
        raise QuestionError(say("{value} is more or less than there can be.", value=number(value)))
    return value


def _whole(text: str) -> float:
    value = _within(parse_number(text), MOST_COMBS)
    if not value.is_integer():
        raise QuestionError(say("Write a whole number."))
    return value


_READERS: Final[MappingProxyType[Question, Callable[[str], ParsedAnswer]]] = MappingProxyType(
    {
        Question.OPENED: _only_yes_no,
        Question.EGGS: _combs,
        Question.YOUNG: _combs,
        Question.BROOD: _brood,
        Question.POLLEN: _only_yes_no,
        Question.SEAMS: _seams,
        Question.STORES: _stores,
        Question.CELLS: _cells,
        Question.QUEEN: _queen,
        Question.TEMPER: _temper,
        Question.ROOM: _room,
        Question.DRAWN: _drawn,
        Question.SIGNS: _signs,
    }
)
