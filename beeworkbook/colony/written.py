"""An answer written back in the short words of a field, and its parts for whoever builds sentences.

Typed into the field again, what is written means the same.
"""

from collections.abc import Callable
from types import MappingProxyType
from typing import Final

from beeworkbook.colony.amounts import AmountError, Measure, parse_amount, write_amount
from beeworkbook.colony.answers import ROOM_WORDS, TEMPERS, WRITTEN, AnAnswer, plain_reply
from beeworkbook.colony.records import Event, Question, Reply
from beeworkbook.colony.said import (
    CellsSaid,
    QueenSaid,
    SaidError,
    read_cells,
    read_combs,
    read_queen,
    write_cells,
    write_combs,
    write_queen,
)
from beeworkbook.colony.signs import read_sign
from beeworkbook.comb.contents import CellKind, Face
from beeworkbook.words import number, say


def combs_said(answer: AnAnswer) -> tuple[int, ...]:
    """The combs on which eggs or open brood were seen; none if only yes or no was said."""
    if answer.number is None:
        return ()
    try:
        return read_combs(answer.typed)
    except SaidError:
        last = answer.number if answer.second is None else answer.second
        return (int(answer.number),) if last == answer.number else (int(answer.number), int(last))


def cells_said(answer: AnAnswer) -> tuple[CellsSaid, ...]:
    """The queen cells by kind; where the words are lost, from the two numbers."""
    if answer.number is None:
        return ()
    try:
        return read_cells(answer.typed)
    except SaidError:
        counts = ((None, answer.number), (CellKind.PLAY_CUP, answer.second or 0))
        return tuple(CellsSaid(kind, int(count)) for kind, count in counts if count)


def queen_said(answer: AnAnswer) -> QueenSaid:
    """Where the queen was seen and with which mark."""
    if answer.reply is not Reply.YES:
        return QueenSaid()
    try:
        return read_queen(answer.typed)
    except SaidError:
        face = {1: Face.A, 2: Face.B}.get(int(answer.second or 0))
        return QueenSaid(None if answer.number is None else int(answer.number), face)


def write_answer(question: Question, answer: AnAnswer) -> str:
    """The answer in the short words of a field and of small print; typed back it means the same."""
    if answer.reply is Reply.NOT_LOOKED:
        return say("not looked")
    written = _with_numbers(question, answer) or _in_words(question, answer)
    if written:
        return written
    if answer.reply is None:
        return ""
    plain = WRITTEN.get((question, answer.reply))
    return say(plain) if plain else say("yes") if answer.reply is Reply.YES else say("no")


def write_heft(heft: Event, sign: str = "+") -> str:
    """The two pulls of a heft as they are typed: "14+15"."""
    pulls = (heft.left_kg, heft.right_kg)
    return sign.join("?" if kg is None else number(kg) for kg in pulls)


def _with_numbers(question: Question, answer: AnAnswer) -> str:
    if answer.number is None or answer.reply is Reply.NO:
        return ""
    writer = _WRITERS.get(question)
    return writer(answer) if writer else ""


def _write_brood(answer: AnAnswer) -> str:
    combs = number(answer.number or 0)
    return combs if answer.second is None else f"{combs}/{number(answer.second)}"


def _write_stores(answer: AnAnswer) -> str:
    try:
        amount = parse_amount(answer.typed)
    except AmountError:
        amount = None
    if amount is not None and amount.value == answer.number and amount.unit.startswith(("lb", "pound")):
        return answer.typed
    return write_amount(answer.number or 0, Measure.KG)


def _write_room(answer: AnAnswer) -> str:
    return f"{number(answer.number or 0)} {say('super') if answer.number == 1 else say('supers')}"


_WRITERS: Final[MappingProxyType[Question, Callable[[AnAnswer], str]]] = MappingProxyType(
    {
        Question.EGGS: lambda answer: write_combs(combs_said(answer)),
        Question.YOUNG: lambda answer: write_combs(combs_said(answer)),
        Question.BROOD: _write_brood,
        Question.SEAMS: lambda answer: number(answer.number or 0),
        Question.STORES: _write_stores,
        Question.CELLS: lambda answer: write_cells(cells_said(answer)),
        Question.ROOM: _write_room,
        Question.DRAWN: lambda answer: number(answer.number or 0),
    }
)


def _in_words(question: Question, answer: AnAnswer) -> str:
    if answer.reply is not Reply.YES or not answer.typed:
        return ""
    if question is Question.QUEEN:
        return write_queen(queen_said(answer))
    if question is Question.TEMPER:
        return ", ".join(temper_words(answer))
    word = answer.typed.casefold()
    if question is Question.ROOM and plain_reply(question, word) is None:
        return say(ROOM_WORDS[word]) if word in ROOM_WORDS else answer.typed
    if question is Question.SIGNS and plain_reply(question, word) is None:
        return ", ".join(sign_words(answer))
    return ""


def temper_words(answer: AnAnswer) -> tuple[str, ...]:
    """How the bees behaved, in words: letters written out, the keeper's own words as they are."""
    word = answer.typed.casefold().replace(" ", "").replace(",", "")
    if len(word) <= 3 and set(word) <= set(TEMPERS):
        return tuple(say(TEMPERS[letter]) for letter in dict.fromkeys(word))
    return tuple(part.strip() for part in answer.typed.split(",") if part.strip())


def sign_words(answer: AnAnswer) -> tuple[str, ...]:
    """The signs that were noted, each in its short word, the keeper's own words as they are."""
    if answer.reply is not Reply.YES or plain_reply(Question.SIGNS, answer.typed.casefold()) is not None:
        return ()
    parts = (part.strip() for part in answer.typed.split(","))
    return tuple(say(sign.word) if (sign := read_sign(part)) else part for part in parts if part)
