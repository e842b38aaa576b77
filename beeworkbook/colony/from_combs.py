"""What the combs of a visit say in the short words of each field, where the line does not say it already.

Only what was seen: the combs never say no, since what was not drawn may only not have been looked at.
Where a line and its combs are at odds both are named here, and neither is changed.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from beeworkbook.colony import phrases
from beeworkbook.colony.amounts import Measure
from beeworkbook.colony.asked import heading
from beeworkbook.colony.at_odds import at_odds, combs_alone
from beeworkbook.colony.records import Question
from beeworkbook.colony.said import write_cells, write_combs, write_queen
from beeworkbook.colony.story import VisitStory
from beeworkbook.colony.worth import LEAST_WORTH
from beeworkbook.colony.written import write_answer
from beeworkbook.comb.contents import Content, MarkKind
from beeworkbook.words import say, two_figures


@dataclass(frozen=True)
class CombsSay:
    """One field as the combs have it: how it is shown, and what may be typed to say the same again.

    typed is empty where only some combs were looked at, so that nobody is made to say less than there is.
    """

    shown: str
    typed: str


@dataclass(frozen=True)
class Difference:
    """One field in which the line says one thing and the combs another, in short words."""

    question: Question
    line: str
    combs: str

    @property
    def text(self) -> str:
        """Both in words: "queen 5A, the combs 7"."""
        what = heading(self.question)
        return say("{field} {line}, the combs {combs}", field=what, line=self.line, combs=self.combs)


def from_combs(story: VisitStory) -> Mapping[Question, CombsSay]:
    """The fields that the combs and the marks of a visit fill.

    Those the keeper typed in are left out, but for those in which the combs say something else.
    """
    odd, alone = at_odds(story), combs_alone(story)
    said = {
        question: found
        for question, reader in _READERS.items()
        if (question in odd or not _is_typed(story, question)) and (found := reader(alone)) is not None
    }
    return MappingProxyType(said)


def differences(story: VisitStory) -> tuple[Difference, ...]:
    """Where the line and the combs of a visit are at odds, in the order the questions are asked."""
    odd = at_odds(story)
    if not odd:
        return ()
    alone = combs_alone(story)
    found = []
    for question in Question:
        answer = story.answer(question)
        if question in odd and answer is not None:
            combs = _READERS[question](alone)
            line = write_answer(question, answer)
            found.append(Difference(question, line, combs.shown if combs is not None else say("none")))
    return tuple(found)


def _is_typed(story: VisitStory, question: Question) -> bool:
    answer = story.answer(question)
    return answer is not None and answer.reply is not None


def _alike(text: str) -> CombsSay | None:
    return CombsSay(text, text) if text else None


def _opened(story: VisitStory) -> CombsSay | None:
    return _alike(say("yes")) if story.totals.counted_sides else None


def _queen(story: VisitStory) -> CombsSay | None:
    marked = any(mark.kind is MarkKind.QUEEN for mark in story.marks)
    place = story.queen_place
    return _alike(write_queen(place)) if marked and place is not None else None


def _cells(story: VisitStory) -> CombsSay | None:
    return _alike(write_cells(phrases.cells_seen(None, story.marks, story.all_places)))


def _brood(story: VisitStory) -> CombsSay | None:
    brood = story.figures.brood
    if brood is None or not brood.combs or brood.worth is None:
        return None
    # What is worth too little is not put into figures.
    worth = "" if brood.worth < LEAST_WORTH else f"/{two_figures(brood.worth)}"
    text = f"{brood.combs}{worth}"
    return CombsSay(f"{text}+", "") if story.figures.at_least else CombsSay(text, text)


def _stores(story: VisitStory) -> CombsSay | None:
    stores = story.figures.stores
    if stores is None or not stores.kg:
        return None
    kg = two_figures(stores.kg)
    text = f"{kg} {Measure.KG}"
    return CombsSay(f"{kg}+ {Measure.KG}", "") if stores.doubt.at_least else CombsSay(text, text)


_READERS: Final[Mapping[Question, Callable[[VisitStory], CombsSay | None]]] = MappingProxyType(
    {
        Question.OPENED: _opened,
        Question.EGGS: lambda story: _alike(write_combs(story.combs_with(Content.EGGS))),
        Question.YOUNG: lambda story: _alike(write_combs(story.combs_with(Content.OPEN))),
        Question.BROOD: _brood,
        Question.STORES: _stores,
        Question.CELLS: _cells,
        Question.QUEEN: _queen,
    }
)
