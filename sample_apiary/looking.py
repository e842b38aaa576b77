"""A look at one colony in a round: the line, the combs, what was painted, and when to look again."""

from typing import TYPE_CHECKING, Any, Final

from beeworkbook.colony.hive import PlacedFrame
from beeworkbook.colony.plans import kinds_left, next_look
from beeworkbook.colony.records import (
    Answer,
    FrameId,
    Level,
    Mark,
    Question,
    Reply,
    RoundId,
    VisitId,
)
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import CellFate, CellKind, Content, Face, MarkKind
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.workbook.edits.combs import PaintCells
from beeworkbook.workbook.edits.feed import SetHeft
from beeworkbook.workbook.edits.marks import AddMark
from beeworkbook.workbook.edits.together import Together
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit, PassOver, SetAnswer, SetNext, SetNote
from beeworkbook.workbook.place import Edit
from sample_apiary.colony_in_hand import InHand
from sample_apiary.line import answers
from sample_apiary.nest import Nest, rounded, typed_comb, typed_side
from sample_apiary.painting import paint_over
from sample_apiary.season import FULL_KG_PER_SIDE_DM2

if TYPE_CHECKING:
    from sample_apiary.keeper import Keeper

_WOOD_KG: Final = 17.0
_BEE_KG: Final = 0.0001
"""Source: common practice, no source: 0.1 g a bee."""
_LEVELS: Final = {
    "N": Level.NOT_OPENED,
    "L": Level.ONE_LINE,
    "C": Level.BY_COMB,
    "S": Level.BY_SIDE,
    "P": Level.PAINTED,
}
_SEEN_FROM_COMBS: Final = frozenset({Question.EGGS, Question.YOUNG, Question.BROOD, Question.STORES})
_PAINTED_COMBS: Final = 3


def look(keeper: "Keeper", colony: InHand, round_id: RoundId, told: dict[str, Any]) -> None:
    """One colony of a round, looked at as far as the parameters say."""
    key, day = colony.key, keeper.clock.day
    how = told["looks"].get(key) or _usual(keeper, colony)
    note = told.get("notes", {}).get(key, "")
    if how == "O":
        keeper.do(PassOver(colony.colony_id, day, round_id, note))
        return
    visit_id: VisitId = keeper.do(BeginVisit(colony.colony_id, day, round_id, _LEVELS[how]))
    if how == "N":
        _from_outside(keeper, colony, visit_id, told)
    else:
        _inside(keeper, colony, visit_id, told, how)
    if note:
        keeper.do(SetNote(visit_id, note))
    _mark(keeper, colony, visit_id, told.get("marks", {}).get(key, ()))
    _plan(keeper, colony, visit_id, opened=how != "N")
    keeper.settle(colony)
    if how != "N":
        colony.looked_on = day
    if how in "CSP":
        colony.combs_on = day


def _usual(keeper: "Keeper", colony: InHand) -> str:
    """A line, and comb by comb where that was some while ago."""
    every = int(keeper.told["by_comb_every_days"])
    before = colony.combs_on
    return "C" if before is not None and (keeper.clock.day - before).days >= every else "L"


def _from_outside(keeper: "Keeper", colony: InHand, visit_id: VisitId, told: dict[str, Any]) -> None:
    """Not opened: flying, pollen going in, and in the cold half of the year the heft."""
    keeper.do(SetAnswer(visit_id, Question.OPENED, "n"))
    if float(told["t"]) >= 9:
        pollen = "y" if keeper.year.pollen.on(keeper.clock.day) > 0.1 else "n"
        keeper.do(SetAnswer(visit_id, Question.POLLEN, pollen))
    if keeper.clock.day.month in {1, 2, 3, 10, 11, 12}:
        chance = keeper.chance("heft", colony.key)
        half = (_WOOD_KG + colony.bees.stores_kg + colony.bees.bees * _BEE_KG) / 2
        tilt = chance.choice((-0.5, 0.0, 0.5))
        left, right = round((half + tilt) * 2) / 2, round((half - tilt) * 2) / 2
        keeper.do(SetHeft(colony.colony_id, keeper.clock.day, left, right, visit_id))


def _inside(keeper: "Keeper", colony: InHand, visit_id: VisitId, told: dict[str, Any], how: str) -> None:
    combs = keeper.combs(colony)
    nest = colony.nest([placed.place for placed in combs], keeper.nectar())
    only = told.get("only", {}).get(colony.key)
    said = answers(keeper, colony, nest, told) if only is None else {Question(q): a for q, a in only.items()}
    if how != "L":
        said = {question: typed for question, typed in said.items() if question not in _SEEN_FROM_COMBS}
    edits: list[Edit] = [SetAnswer(visit_id, question, typed) for question, typed in said.items()]
    keeper.do(Together(tuple(edits), "line"))
    if how == "L":
        return
    _type_combs(keeper, colony, visit_id, nest, combs, how)
    if how == "P":
        heart = sorted(combs, key=lambda placed: -sum(_brood(nest, placed.place)))[:_PAINTED_COMBS]
        for placed in sorted(heart, key=lambda placed: placed.place):
            _paint(keeper, colony, visit_id, placed)
        _type_supers(keeper, colony, visit_id)


def _brood(nest: Nest, place: int) -> list[float]:
    return [
        nest.sides[place, face].get(content, 0.0)
        for face in Face
        for content in (Content.EGGS, Content.OPEN, Content.SEALED)
    ]


def _type_combs(
    keeper: "Keeper",
    colony: InHand,
    visit_id: VisitId,
    nest: Nest,
    combs: list[PlacedFrame],
    how: str,
) -> None:
    """Every comb as the keeper types it; what looks as last time is said so, and some are not lifted."""
    chance = keeper.chance("combs", colony.key)
    edits: list[Edit] = []
    for placed in combs:
        if placed.frame is None:
            continue
        frame_id = placed.frame.id
        typed = typed_comb(nest, placed.place, by_side=how in "SP", chance=chance)
        before = colony.seen.get(frame_id)
        brood = sum(_brood(nest, placed.place))
        if before is not None and typed == before:
            typed = "="
        elif before is not None and brood < 0.2 and chance.random() < 0.04:
            typed = "?"
        elif brood < 0.2 and placed.place == combs[-1].place and chance.random() < 0.07:
            continue
        else:
            colony.seen[frame_id] = typed
        edits.append(LayOutComb(visit_id, frame_id, typed))
    keeper.do(Together(tuple(edits), "box"))


def _type_supers(keeper: "Keeper", colony: InHand, visit_id: VisitId) -> None:
    """The supers as well, whole combs at a glance."""
    chance = keeper.chance("supers", colony.key)
    hive = keeper.hive(colony.colony_id)
    side_dm2 = FRAME_TYPES[colony.told["super_frame"]].area_dm2
    edits: list[Edit] = []
    for part_id, kg in zip(colony.supers, colony.bees.super_kg, strict=True):
        frames = [placed for placed in hive.frames_of(part_id) if placed.frame is not None]
        share = kg / (len(frames) * 2 * side_dm2 * FULL_KG_PER_SIDE_DM2)
        for placed in frames:
            away = abs(placed.place - (len(frames) + 1) / 2) / len(frames)
            full = min(1.0, max(0.0, share * (1.35 - away) * chance.uniform(0.9, 1.1)))
            held = {
                Content.STORES: 8 * full * 0.7,
                Content.NECTAR: 8 * full * 0.3,
                Content.EMPTY: 8 * (1 - full),
            }
            if placed.frame is not None:
                edits.append(LayOutComb(visit_id, placed.frame.id, typed_side(rounded(held, 1.0))))
    if edits:
        keeper.do(Together(tuple(edits), "supers"))


def _paint(keeper: "Keeper", colony: InHand, visit_id: VisitId, placed: PlacedFrame) -> None:
    """Both sides of a comb painted over as laid out."""
    if placed.frame is None:
        return
    frame_id: FrameId = placed.frame.id
    lattice = FRAME_TYPES[placed.frame.frame_type].lattice
    for face in Face:
        side = keeper.book.read.side(visit_id, frame_id, face)
        if side is None:
            continue
        chance = keeper.chance("paint", colony.key, placed.place, face)
        edits: list[Edit] = [
            PaintCells(visit_id, frame_id, face, patch, content)
            for content, patch in paint_over(lattice, unpack(side.cells, cells=lattice.cells), chance)
        ]
        keeper.do(Together(tuple(edits), "paint"))
    colony.seen.pop(frame_id, None)


def _mark(keeper: "Keeper", colony: InHand, visit_id: VisitId, marks: Any) -> None:
    combs = {placed.place: placed.frame for placed in keeper.combs(colony)}
    for told in marks:
        frame = combs[told["place"]]
        if frame is None:
            continue
        lattice = FRAME_TYPES[frame.frame_type].lattice
        at = told.get("at")
        cell = lattice.cell_at(at[0] * lattice.width_mm, at[1] * lattice.height_mm) if at else None
        keeper.do(
            AddMark(
                visit_id,
                MarkKind(told["kind"]),
                frame.id,
                Face(told["face"]) if "face" in told else None,
                cell,
                CellKind(told["cell_kind"]) if "cell_kind" in told else None,
                CellFate(told["fate"]) if "fate" in told else None,
                told.get("text", ""),
            )
        )


def _plan(keeper: "Keeper", colony: InHand, visit_id: VisitId, *, opened: bool) -> None:
    """When to look again, as the program itself would offer it."""
    read, day = keeper.book.read, keeper.clock.day
    said = read.answers(visit_id)
    marks: tuple[Mark, ...] = tuple(read.marks(visit_id))
    if not opened and day.month in {5, 6, 7}:
        return
    since = None if colony.looked_on is None else (day - colony.looked_on).days
    due = next_look(
        day,
        hemisphere=Hemisphere(keeper.told["hemisphere"]),
        clipped=colony.clipped,
        cells=kinds_left(said.get(Question.CELLS), marks),
        days_since_look=since,
        virgin_since=None if _laying(said.get(Question.EGGS), colony) else colony.virgin_since,
    )
    keeper.do(SetNext(visit_id, due.day, due.reason))


def _laying(eggs: Answer | None, colony: InHand) -> bool:
    """Whether eggs were seen, by the line or else on the combs."""
    return eggs.reply is Reply.YES if eggs is not None else colony.bees.eggs > 200
