"""What the combs of a visit say in the short words of each field, where the keeper typed nothing there.

Only what was seen: the combs never say no, since what was not drawn may only not have been looked at.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from beeworkbook.colony import phrases
from beeworkbook.colony.amounts import Measure
from beeworkbook.colony.records import Question
from beeworkbook.colony.said import write_cells, write_combs, write_queen
from beeworkbook.colony.story import VisitStory
from beeworkbook.comb.contents import Content, MarkKind
from beeworkbook.words import say, two_figures


@dataclass(frozen=True)
class CombsSay:
    """One field as the combs have it: how it is shown, and what may be typed to say the same again.

    typed is empty where only some combs were looked at, so that nobody is made to say less than there is.
    """

    shown: str
    typed: str


def from_combs(story: VisitStory) -> Mapping[Question, CombsSay]:
    """The fields that the combs and the marks of a visit fill; those the keeper typed in are left out."""
    said = {
        question: found
        for question, reader in _READERS.items()
        if not _is_typed(story, question) and (found := reader(story)) is not None
    }
    return MappingProxyType(said)


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
    text = f"{brood.combs}/{two_figures(brood.worth)}"
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
