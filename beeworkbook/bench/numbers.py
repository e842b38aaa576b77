"""The live numbers in words: of a side, a comb, a box. Two significant figures, never a claim nobody saw.

The arithmetic is comb's and colony's; only the wording is here.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from beeworkbook.colony.figures import visit_figures
from beeworkbook.colony.records import PartId
from beeworkbook.colony.totals import VisitTotals
from beeworkbook.colony.worth import LEAST_WORTH, worth_words
from beeworkbook.comb.contents import WORKER_BROOD, Content
from beeworkbook.comb.frames import FrameType
from beeworkbook.comb.names import content_short
from beeworkbook.comb.side import SideTally, tally_counts
from beeworkbook.words import say, say_count, two_figures

_STORED: Final = (Content.STORES, Content.NECTAR, Content.POLLEN)
_LEAST_CELLS: Final = 0.5
_LEAST_DM2: Final = 0.05
_LEAST_KG: Final = 0.05


def tally_of(frame: FrameType, counts: Sequence[int], *, drone_cells: bool) -> SideTally:
    """The numbers of a side from how many cells hold each content."""
    return tally_counts(frame, list(counts), drone_cells=drone_cells)


def side_numbers(tally: SideTally) -> str:
    """A side in a line: "about 1 500 brood cells: 290 eggs, 430 open, 820 sealed"; empty if it is bare."""
    if not tally.comb_dm2:
        return ""
    return brood_numbers((tally,)) or say("no brood; {stores}", stores=_stored(tally))


def brood_numbers(tallies: Iterable[SideTally]) -> str:
    """The brood of some sides by stage; empty if there is none."""
    held = tuple(tallies)
    cells = {content: sum(tally.cells[content] for tally in held) for content in WORKER_BROOD}
    drone = sum(tally.drone_brood_cells for tally in held)
    brood = sum(cells.values())
    if brood < _LEAST_CELLS and drone < _LEAST_CELLS:
        return ""
    parts = [
        f"{two_figures(found)} {content_short(content)}"
        for content, found in cells.items()
        if found >= _LEAST_CELLS
    ]
    if drone >= _LEAST_CELLS:
        parts.append(f"{two_figures(drone)} {content_short(Content.DRONE)}")
    if len(parts) == 1 and brood < _LEAST_CELLS:
        return say("about {cells} drone brood cells", cells=two_figures(drone))
    return say("about {cells} brood cells: {stages}", cells=two_figures(brood), stages=", ".join(parts))


def comb_numbers(tallies: Sequence[SideTally]) -> str:
    """A comb in a few words: "comb: 2 900 brood cells, worth 0.9"; empty if nothing is there."""
    if not any(tally.comb_dm2 for tally in tallies):
        return ""
    brood = sum(tally.worker_brood_cells for tally in tallies)
    worth = sum(tally.brood_share for tally in tallies) / 2
    if worth <= 0:
        return say("comb: no brood")
    if worth < LEAST_WORTH:
        return say("comb: about {cells} brood cells", cells=two_figures(brood))
    return say(
        "comb: about {cells} brood cells, worth {worth}", cells=two_figures(brood), worth=two_figures(worth)
    )


def box_numbers(totals: VisitTotals, part_id: PartId, combs: int) -> str:
    """A box in a few words: "brood on 7 combs, worth 4.2; about 7 kg of stores"; empty if no comb was noted.

    combs is how many frames hang in the box, so that it is said when some were not looked at.
    """
    sides = tuple(side for side in totals.sides if side.part_id == part_id)
    figures = visit_figures(
        replace(totals, sides=sides, answers={}, combs_in_hive=combs, brood_combs_in_hive=combs)
    )
    said = []
    if figures.brood is not None and figures.brood.combs is not None and figures.brood.worth is not None:
        said.append(_brood_in_box(figures.brood.combs, figures.brood.worth))
    if figures.stores is not None:
        kg = figures.stores.kg
        said.append(
            say("about {kg} kg of stores", kg=two_figures(kg)) if kg >= _LEAST_KG else say("no stores")
        )
    if not said:
        return ""
    seen = len({side.frame_id for side in sides if side.counted and any(side.area_dm2)})
    text = ", ".join(said)
    if seen >= combs:
        return text
    return say("{text}; {seen} of {combs} combs looked at", text=text, seen=seen, combs=combs)


def _brood_in_box(combs: int, worth: float) -> str:
    if not combs:
        return say("no brood")
    return say_count(
        combs,
        "brood on {n} comb, worth {worth}",
        "brood on {n} combs, worth {worth}",
        worth=worth_words(worth),
    )


def _stored(tally: SideTally) -> str:
    parts = [
        say("{content} {dm2} dm²", content=content_short(content), dm2=two_figures(tally.area_dm2[content]))
        for content in _STORED
        if tally.area_dm2[content] >= _LEAST_DM2
    ]
    return ", ".join(parts) or say("no stores")
