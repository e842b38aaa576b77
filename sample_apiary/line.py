"""One line of the round: what the keeper answers, from what the colony holds today."""

from typing import TYPE_CHECKING, Any

from beeworkbook.colony.records import Question
from beeworkbook.comb.contents import Content
from sample_apiary.colony_in_hand import InHand
from sample_apiary.nest import Nest

if TYPE_CHECKING:
    from sample_apiary.keeper import Keeper

_BEES_A_SEAM_DM2 = 2 * 125.0 * 0.75
"""Source: 125 bees per dm² covered, Imdorf, Rickli & Fluri 1996; three quarters of a seam, our own."""


def answers(keeper: "Keeper", colony: InHand, nest: Nest, told: dict[str, Any]) -> dict[Question, str]:
    """The answers of a line in the round's order; what the parameters say goes before."""
    chance = keeper.chance("line", colony.key)
    seams = min(len(nest.sides) / 2 - 1, colony.bees.in_the_box / (_BEES_A_SEAM_DM2 * colony.frame.area_dm2))
    line = {
        Question.OPENED: "y",
        Question.EGGS: _run(nest.combs_with(Content.EGGS)),
        Question.YOUNG: _run(nest.combs_with(Content.OPEN)) if chance.random() < 0.4 else "y",
        Question.BROOD: _brood(nest, worth=chance.random() < 0.8),
        Question.POLLEN: "y" if keeper.year.pollen.on(keeper.clock.day) > 0.15 else "n",
        Question.SEAMS: f"{max(1, round(seams))}",
        Question.STORES: f"{max(1, round(colony.bees.stores_kg))} kg",
        Question.CELLS: "n" if keeper.clock.day.month in {4, 5, 6, 7} else "",
        Question.QUEEN: _queen(nest, chance.random(), chance.random()),
        Question.TEMPER: colony.told["temper"] if chance.random() < 0.85 else "s",
        Question.ROOM: _room(keeper, colony),
        Question.DRAWN: _drawn(colony),
        Question.SIGNS: "n" if chance.random() < 0.9 else "",
    }
    if not nest.combs_with(Content.OPEN):
        line[Question.YOUNG] = "n"
    said = told.get("said", {}).get(colony.key, {})
    line.update({Question(name): typed for name, typed in said.items()})
    return {question: line[question] for question in Question if line[question]}


def _run(combs: list[int]) -> str:
    if not combs:
        return "n"
    return f"{combs[0]}-{combs[-1]}" if len(combs) > 1 else str(combs[0])


def _brood(nest: Nest, *, worth: bool) -> str:
    combs = nest.brood_combs()
    if not combs:
        return "n"
    return f"{combs}/{min(float(combs), nest.worth()):.1f}" if worth else str(combs)


def _queen(nest: Nest, seen: float, where: float) -> str:
    eggs = nest.combs_with(Content.EGGS)
    if seen < 0.55 or not eggs:
        return "-"
    return f"{eggs[int(where * len(eggs))]}{'A' if seen < 0.75 else 'B'}" if seen < 0.9 else "y"


def _room(keeper: "Keeper", colony: InHand) -> str:
    today = keeper.clock.day.isoformat()
    done = {
        told["what"]
        for told in keeper.told["happenings"]
        if told["day"] == today and told["colony"] == colony.key
    }
    if "super" in done:
        return "s"
    if "take_supers" in done:
        return "t"
    return str(len(colony.supers)) if colony.supers else ""


def _drawn(colony: InHand) -> str:
    left = colony.bees.places - colony.bees.drawn
    return str(min(3, max(1, round(left)))) if left > 0.2 and colony.bees.drawn > 1 else ""
