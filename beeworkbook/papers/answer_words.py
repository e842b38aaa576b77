"""Answers as the papers print them: written out in the short words the screen uses too."""

from collections.abc import Collection, Iterable

from beeworkbook.colony.answers import plain_reply
from beeworkbook.colony.questions import QuestionError, parse_answer
from beeworkbook.colony.records import Question, Reply
from beeworkbook.colony.sheet_models import SheetAnswer, SheetVisit
from beeworkbook.colony.written import write_answer
from beeworkbook.words import say


def reply_words(reply: Reply) -> str:
    """Yes, no, not looked."""
    return {Reply.YES: say("yes"), Reply.NO: say("no"), Reply.NOT_LOOKED: say("not looked")}[reply]


def answer_words(question: Question, answer: SheetAnswer) -> str:
    """The answer in short words: "quiet" for q, "2 cups" for 2U; what cannot be read, as it was typed."""
    try:
        words = write_answer(question, parse_answer(question, answer.typed))
    except QuestionError:
        return answer.typed
    if words or answer.reply is None:
        return words
    return reply_words(answer.reply)


def says_more(question: Question, answer: SheetAnswer) -> bool:
    """Whether it says more than a ticked box does: "4-6" does, "y" does not."""
    typed = answer.typed.strip().casefold()
    return typed not in {"", "-"} and plain_reply(question, typed) is None


def ticked_words(question: Question, answer: SheetAnswer) -> str:
    """The answer beside or under a box to tick: yes, no, not looked, or what says more than that."""
    if answer.reply is not None and not says_more(question, answer):
        return reply_words(answer.reply)
    return answer_words(question, answer)


def unwritten_words(visit: SheetVisit | None, question: Question) -> str:
    """What stands where the line says nothing or is at odds with the combs.

    A heft for the stores if none were typed, else what the combs say, in brackets.
    """
    if visit is None:
        return ""
    if question is Question.STORES and visit.heft and question not in visit.answers:
        return visit.heft
    said = visit.combs.get(question, "")
    return say("({text})", text=said) if said else ""


def brackets_words(visits: Iterable[SheetVisit | None], questions: Collection[Question]) -> str:
    """What the brackets mean, where any of these visits has some in the fields of these questions."""
    are = any(not visit.combs.keys().isdisjoint(questions) for visit in visits if visit is not None)
    return say("In brackets: read off the combs.") if are else ""
