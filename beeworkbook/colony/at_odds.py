"""Where the line of a visit and its combs cannot both be right: which questions, and nothing decided.

A line may say more than the combs that were noted; it is at odds only with what somebody saw on them. No
text and nothing is changed: both stand as they were noted.
"""

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from beeworkbook.colony.figures import LINE_EYE, LINE_STORES_EYE, visit_figures
from beeworkbook.colony.phrases import cells_seen
from beeworkbook.colony.records import PartKind, Question, Reply
from beeworkbook.colony.said import CellsSaid
from beeworkbook.colony.stores import ALARM_KG
from beeworkbook.colony.story import VisitStory
from beeworkbook.colony.written import cells_said, combs_said, queen_said
from beeworkbook.comb.contents import CellKind, Content, MarkKind

_FACES: Final = 2


def combs_alone(story: VisitStory) -> VisitStory:
    """The same visit as if nothing had been typed in its line."""
    totals = replace(story.totals, answers={})
    return replace(story, totals=totals, figures=visit_figures(totals))


def at_odds(story: VisitStory) -> frozenset[Question]:
    """The questions to which the line and the combs of a visit answer differently.

    Source: how far a line may be off is LINE_EYE and LINE_STORES_EYE of figures.py, our own; ALARM_KG.
    """
    if not story.totals.counted_sides and not story.marks:
        return frozenset()
    alone = combs_alone(story)
    return frozenset(question for question, differ in _DIFFER.items() if differ(story, alone))


def _opened(story: VisitStory, alone: VisitStory) -> bool:
    return story.reply(Question.OPENED) is Reply.NO and bool(alone.totals.counted_sides)


def _queen(story: VisitStory, _alone: VisitStory) -> bool:
    marks = [mark for mark in story.marks if mark.kind is MarkKind.QUEEN]
    answer = story.answer(Question.QUEEN)
    if answer is None or not marks:
        return False
    if answer.reply is Reply.NO:
        return True
    said = queen_said(answer)
    if said.comb is None:
        return False
    places = [(story.all_places.get(mark.frame_id) if mark.frame_id else None, mark.face) for mark in marks]
    return not any(
        comb is None or (comb == said.comb and (face is None or said.face is None or face == said.face))
        for comb, face in places
    )


def _seen_on(question: Question, content: Content) -> Callable[[VisitStory, VisitStory], bool]:
    def differ(story: VisitStory, alone: VisitStory) -> bool:
        answer, drawn = story.answer(question), set(alone.combs_with(content))
        if answer is None:
            return False
        if answer.reply is Reply.NO:
            return bool(drawn)
        named = set(combs_said(answer))
        return bool(named) and bool(drawn - named or named & _noted_without(alone, content))

    return differ


def _noted_without(alone: VisitStory, content: Content) -> set[int]:
    """The combs noted whole on which it was not seen; brood whose age nobody noted may hide it."""
    told = [side for side in alone.totals.counted_sides if side.part_kind is not PartKind.SUPER]
    sides = Counter(side.place for side in told)
    open_ones = {
        side.place
        for side in told
        if side.unrecorded_dm2 > 0
        or not sum(side.area_dm2)
        or side.area_dm2[content] > 0
        or side.area_dm2[Content.BROOD] > 0
    }
    return {place for place, count in sides.items() if count >= _FACES} - open_ones


def _is_in_part(alone: VisitStory) -> bool:
    """Whether combs, or parts of those noted, may hold more."""
    return any(side.unrecorded_dm2 > 0 for side in alone.totals.counted_sides)


def _brood(story: VisitStory, alone: VisitStory) -> bool:
    answer, brood = story.answer(Question.BROOD), alone.figures.brood
    if answer is None or brood is None or brood.combs is None or brood.worth is None:
        return False
    if answer.reply is Reply.NO:
        return brood.combs > 0
    if answer.number is None:
        return False
    more = brood.combs - int(answer.number)
    heavier = 0.0 if answer.second is None else brood.worth - answer.second
    slack = LINE_EYE * answer.number
    if alone.figures.at_least or _is_in_part(alone):
        return more > 0 or heavier > slack
    return more != 0 or abs(heavier) > slack


def _stores(story: VisitStory, alone: VisitStory) -> bool:
    answer, stores = story.answer(Question.STORES), alone.figures.stores
    if answer is None or stores is None or (answer.number is None and answer.reply is not Reply.NO):
        return False
    said = answer.number or 0.0
    if stores.doubt.low > said * (1 + LINE_STORES_EYE):
        return True
    if stores.doubt.at_least or _is_in_part(alone):
        return False
    least = said * (1 - LINE_STORES_EYE)
    is_less = (
        stores.kg < ALARM_KG <= said and stores.kg < least
    )  # the page would say hungry, and the line not
    return is_less or stores.doubt.high < least


def _cells(story: VisitStory, alone: VisitStory) -> bool:
    answer = story.answer(Question.CELLS)
    marked = cells_seen(None, alone.marks, alone.all_places)
    if answer is None or not marked:
        return False
    if answer.reply is Reply.NO:
        return any(cell.kind is not CellKind.PLAY_CUP for cell in marked)
    said = cells_said(answer)
    kinds = {cell.kind for cell in said}
    if not said:
        return False
    if None in kinds:
        return _count(marked) > _count(said)
    seen = {cell.kind for cell in marked}
    return any(_count(marked, kind) > _count(said, kind) for kind in seen) or any(
        _elsewhere(cell, marked) for cell in said
    )


def _count(cells: tuple[CellsSaid, ...], kind: CellKind | None = None) -> int:
    """How many of this kind; without one, of all but play cups."""
    wanted = (cell for cell in cells if (cell.kind is kind if kind else cell.kind is not CellKind.PLAY_CUP))
    return sum(cell.count for cell in wanted)


def _elsewhere(said: CellsSaid, marked: tuple[CellsSaid, ...]) -> bool:
    """Whether as many of this kind are marked, and none of them where the line has it."""
    same = [cell for cell in marked if cell.kind is said.kind]
    if said.comb is None or sum(cell.count for cell in same) < said.count:
        return False
    return not any(
        cell.comb is None
        or (cell.comb == said.comb and (said.face is None or cell.face is None or said.face == cell.face))
        for cell in same
    )


_DIFFER: Final[Mapping[Question, Callable[[VisitStory, VisitStory], bool]]] = MappingProxyType(
    {
        Question.OPENED: _opened,
        Question.EGGS: _seen_on(Question.EGGS, Content.EGGS),
        Question.YOUNG: _seen_on(Question.YOUNG, Content.OPEN),
        Question.BROOD: _brood,
        Question.STORES: _stores,
        Question.CELLS: _cells,
        Question.QUEEN: _queen,
    }
)
