"""The figures of one visit: brood, stores and bees, with their doubt, at whatever level it was looked at.

Combs that were noted come first; where none or too few were, the line's typed answers stand in and are
coarse. A side that is only assumed is counted nowhere. Only sides noted whole can say that there was none
of a thing; on a side noted in part it is not recorded. Sums of one side are in comb/side.py.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from operator import itemgetter
from typing import Final

from beeworkbook.colony.records import BOXES, Level, PartKind, Question, Reply, VisitId
from beeworkbook.colony.stores import (
    FULL_KG_PER_DM2,
    SAFE_KG_PER_DM2,
    THIN_KG_PER_DM2,
    StoresKg,
    side_stores_kg,
)
from beeworkbook.colony.strength import (
    BEES_PER_DM2,
    FEWEST_BEES_PER_DM2,
    MOST_BEES_PER_DM2,
    SEAM_SPREAD,
    bees_in_seams,
    bees_on_side,
)
from beeworkbook.colony.totals import NOTHING, SideTotals, VisitTotals
from beeworkbook.comb.contents import ALL_BROOD, WORKER_BROOD, Content, Origin
from beeworkbook.comb.frames import FrameType

EYE: Final = 0.10
"""How far a side read by eye may be off, by share. Source: common practice, no source (±10 %)."""
PAINTED_EYE: Final = 0.05
"""The same for a painted side. Source: common practice, no source; our own, half of what is read by eye."""
LINE_EYE: Final = 0.15
"""The same for each side of the combs named in one line. Source: common practice, no source; our own."""
LINE_STORES_EYE: Final = 0.25
"""How far stores said in a line may be off. Source: common practice, no source; our own."""
_FACES: Final = 2
_EIGHTH: Final = 8
_ALL_BROOD: Final = itemgetter(*ALL_BROOD)
_WORKER_BROOD: Final = itemgetter(*WORKER_BROOD)


@dataclass(frozen=True)
class Amount:
    """Brood of some kind. Units: cells; dm² of comb side."""

    cells: float = 0.0
    dm2: float = 0.0

    def __add__(self, other: "Amount") -> "Amount":
        return Amount(self.cells + other.cells, self.dm2 + other.dm2)


@dataclass(frozen=True)
class Doubt:
    """How sure a figure is: within which band, whether coarse (from a line), whether it is "at least".

    at_least: combs are missing, or for stores parts of a side, so the figure is open upwards and `high` means
    nothing for them.
    """

    low: float
    high: float
    coarse: bool = False
    at_least: bool = False


@dataclass(frozen=True)
class BroodFigures:
    """Brood on `combs` combs, worth so many full combs; by stage where there is an area.

    A stage that nobody named, where part of a side was not recorded, is not among the stages.
    `worth` and `amount` are None where a line named the combs only, or no frame size is known.
    `amount` is worker brood, `drone` apart; `doubt` is of the worker brood in dm².
    """

    combs: int | None
    worth: float | None
    stages: Mapping[Content, Amount] = field(default_factory=dict)
    amount: Amount | None = None
    drone: Amount | None = None
    doubt: Doubt | None = None


@dataclass(frozen=True)
class StoresFigures:
    """Stores in kilograms; `parts` is None where they were said in a line and not reckoned from combs."""

    kg: float
    doubt: Doubt
    parts: StoresKg | None = None


@dataclass(frozen=True)
class BeesFigures:
    """Bees; from the sides they cover, or from seams."""

    bees: float
    doubt: Doubt
    seams: float | None = None


@dataclass(frozen=True)
class VisitFigures:
    """What a visit adds up to. None anywhere is not recorded, never nought.

    Combs are those of brood and nucleus boxes; combs_in_hive 0 is not known.
    """

    visit_id: VisitId
    day: date
    level: Level
    brood: BroodFigures | None
    stores: StoresFigures | None
    bees: BeesFigures | None
    pollen_dm2: float | None
    eggs_seen: bool | None
    young_seen: bool | None
    combs_seen: int
    combs_in_hive: int

    @property
    def coarse(self) -> bool:
        """Whether its brood comes from a line, not from combs."""
        return self.brood is not None and (self.brood.doubt is None or self.brood.doubt.coarse)

    @property
    def at_least(self) -> bool:
        """Whether its brood is only what was seen on some of the combs."""
        return self.brood is not None and self.brood.doubt is not None and self.brood.doubt.at_least


def visit_figures(totals: VisitTotals, frame: FrameType | None = None) -> VisitFigures:
    """The figures of a visit.

    frame: the frame of the colony's brood box, so that combs and seams named in a line become an area;
    without it the frame of the combs that were noted serves, where there is one.
    Units: cells, dm², kg. Source: densities as named in stores.py and strength.py.
    """
    sides = tuple(side for side in totals.sides if side.counted and sum(side.area_dm2) > 0)
    brood_sides = tuple(side for side in sides if side.part_kind is not PartKind.SUPER)
    combs_in_hive = totals.brood_combs_in_hive or totals.combs_in_hive
    return VisitFigures(
        visit_id=totals.visit.id,
        day=totals.visit.day,
        level=totals.visit.level,
        brood=_brood(totals, sides, frame),
        stores=_stores(totals, sides),
        bees=_bees(totals, frame),
        pollen_dm2=_pollen_dm2(sides),
        eggs_seen=_seen(totals, sides, Question.EGGS, Content.EGGS),
        young_seen=_seen(totals, sides, Question.YOUNG, Content.OPEN),
        combs_seen=len({side.frame_id for side in brood_sides}),
        combs_in_hive=combs_in_hive,
    )


def _seen(
    totals: VisitTotals, sides: tuple[SideTotals, ...], question: Question, content: Content
) -> bool | None:
    """What was drawn was seen, whatever the line says; a side without it is no proof that there was none."""
    if any(side.area_dm2[content] > 0 for side in sides):
        return True
    answer = totals.answers.get(question)
    return {Reply.YES: True, Reply.NO: False}.get(answer.reply) if answer and answer.reply else None


def _pollen_dm2(sides: tuple[SideTotals, ...]) -> float | None:
    dm2 = sum(side.area_dm2[Content.POLLEN] for side in sides)
    return dm2 if sides and (dm2 or not _noted_in_part(sides)) else None


def _noted_in_part(sides: Iterable[SideTotals]) -> bool:
    """Whether nobody said anything of a part of these sides, so that they cannot say none."""
    return any(side.unrecorded_dm2 > 0 for side in sides)


def _missing(sides: Iterable[SideTotals], combs: int) -> bool:
    """Whether fewer sides were noted than that many combs have; nothing is missing of an unknown number."""
    return len({(side.frame_id, side.face) for side in sides}) < _FACES * combs


def _columns(rows: Iterable[tuple[float, ...]]) -> tuple[float, ...]:
    """The sums by content over all sides; a season of many years runs through here."""
    return tuple(map(sum, zip(*rows, strict=True))) or NOTHING


def _band(sides: Iterable[SideTotals], areas: Iterable[float]) -> tuple[float, float]:
    """From what area to what area some contents may reach, whose areas on these sides are given, in dm².

    One eye errs the same way on every side, so the errors are added up. A side on which nothing of it was
    seen has none. Source: EYE, PAINTED_EYE; adding up: common practice, no source.
    """
    low = high = 0.0
    for side, area in zip(sides, areas, strict=True):
        if area > 0:
            eye = side.side_dm2 * (PAINTED_EYE if side.grain is Origin.PAINTED else EYE)
            low += max(0.0, area - eye)
            high += min(side.side_dm2, area + eye)
    return low, high


def _brood(
    totals: VisitTotals, sides: tuple[SideTotals, ...], frame: FrameType | None
) -> BroodFigures | None:
    line = _brood_line(totals, _brood_frame(sides, frame))
    in_brood_boxes = [side for side in sides if side.part_kind is not PartKind.SUPER]
    if not in_brood_boxes and not any(sum(_ALL_BROOD(side.area_dm2)) > 0 for side in sides):
        return line  # supers without brood say nothing of the brood below them
    combs = totals.brood_combs_in_hive or totals.combs_in_hive
    missing = _missing(in_brood_boxes, combs)
    seen = _brood_seen(sides, at_least=missing)
    if not seen.combs and _noted_in_part(in_brood_boxes):
        return line
    if missing and line is not None and line.worth is not None and line.worth >= (seen.worth or 0):
        return _line_with_stages(line, seen)
    return seen


def _brood_seen(sides: tuple[SideTotals, ...], *, at_least: bool) -> BroodFigures:
    cells, dm2 = _columns(side.cells for side in sides), _columns(side.area_dm2 for side in sides)
    in_part = _noted_in_part(side for side in sides if side.part_kind is not PartKind.SUPER)
    stages = {
        content: Amount(cells[content], dm2[content]) for content in ALL_BROOD if dm2[content] or not in_part
    }
    shares = [sum(_ALL_BROOD(side.area_dm2)) / side.side_dm2 for side in sides]
    low, high = _band(sides, (sum(_WORKER_BROOD(side.area_dm2)) for side in sides))
    return BroodFigures(
        combs=len({side.frame_id for side, share in zip(sides, shares, strict=True) if share > 0}),
        worth=sum(shares) / _FACES,
        stages=stages,
        amount=_worker_brood(stages),
        drone=stages.get(Content.DRONE),
        doubt=Doubt(low, high, at_least=at_least),
    )


@dataclass(frozen=True)
class _BroodFrame:
    """The side of a brood comb: its area and its cells."""

    side_dm2: float
    cells_per_dm2: float


def _brood_frame(sides: tuple[SideTotals, ...], frame: FrameType | None) -> _BroodFrame | None:
    if frame is not None:
        return _BroodFrame(frame.area_dm2, frame.cells_per_dm2)
    for side in sides:
        area = sum(side.area_dm2[content] for content in Content if content is not Content.DRONE)
        if side.part_kind is not PartKind.SUPER and area > 0:
            cells = sum(side.cells[content] for content in Content if content is not Content.DRONE)
            return _BroodFrame(side.side_dm2, cells / area)
    return None


def _brood_line(totals: VisitTotals, frame: _BroodFrame | None) -> BroodFigures | None:
    """Brood as one line says it: n combs, worth m; its area is m combs', with the doubt of n."""
    answer = totals.answers.get(Question.BROOD)
    if answer is None or answer.reply not in {Reply.YES, Reply.NO}:
        return None
    if answer.reply is Reply.NO:
        return BroodFigures(0, 0.0, {}, Amount(), None, Doubt(0.0, 0.0, coarse=True))
    combs = None if answer.number is None else int(answer.number)
    worth = answer.second
    if combs is None or worth is None or frame is None:
        return BroodFigures(combs, worth)
    comb_dm2 = _FACES * frame.side_dm2
    dm2 = worth * comb_dm2
    off = combs * comb_dm2 * LINE_EYE
    amount = Amount(dm2 * frame.cells_per_dm2, dm2)
    doubt = Doubt(max(0.0, dm2 - off), min(combs * comb_dm2, dm2 + off), coarse=True)
    return BroodFigures(combs, worth, {Content.BROOD: amount}, amount, None, doubt)


def _line_with_stages(line: BroodFigures, seen: BroodFigures) -> BroodFigures:
    """A line's total with the stages that some combs show; the rest is brood whose age nobody noted."""
    if line.amount is None or seen.amount is None:
        return line
    rest = Amount(
        max(0.0, line.amount.cells - seen.amount.cells), max(0.0, line.amount.dm2 - seen.amount.dm2)
    )
    stages = {**seen.stages, Content.BROOD: seen.stages.get(Content.BROOD, Amount()) + rest}
    return BroodFigures(line.combs, line.worth, stages, _worker_brood(stages), seen.drone, line.doubt)


def _worker_brood(stages: Mapping[Content, Amount]) -> Amount:
    return sum((stages[content] for content in WORKER_BROOD if content in stages), Amount())


def _stores(totals: VisitTotals, sides: tuple[SideTotals, ...]) -> StoresFigures | None:
    answer = totals.answers.get(Question.STORES)
    said = None
    if answer is not None and (answer.number is not None or answer.reply is Reply.NO):
        kg = answer.number or 0.0
        said = StoresFigures(kg, Doubt(kg * (1 - LINE_STORES_EYE), kg * (1 + LINE_STORES_EYE), coarse=True))
    if not sides:
        return said
    missing = _missing(sides, totals.combs_in_hive) or _noted_in_part(sides)
    dm2 = {kind: _columns(side.area_dm2 for side in sides if side.part_kind is kind) for kind in BOXES}
    parts = sum((side_stores_kg(columns, kind) for kind, columns in dm2.items()), StoresKg())
    if missing and said is not None and said.kg >= parts.total:
        return said
    if not parts.total and _noted_in_part(sides):
        return said
    low, high = _band(sides, (side.area_dm2[Content.STORES] for side in sides))
    thin_low, thin_high = _band(sides, (side.area_dm2[Content.NECTAR] for side in sides))
    doubt = Doubt(
        (low * SAFE_KG_PER_DM2 + thin_low * THIN_KG_PER_DM2) / _FACES,
        (high * FULL_KG_PER_DM2 + thin_high * THIN_KG_PER_DM2) / _FACES,
        at_least=missing,
    )
    return StoresFigures(parts.total, doubt, parts)


def _bees(totals: VisitTotals, frame: FrameType | None) -> BeesFigures | None:
    covered = [(side, side.covered) for side in totals.sides if side.counted and side.covered is not None]
    seams = totals.answers.get(Question.SEAMS)
    counted = _bees_in_seams(totals, seams.number, frame) if seams and seams.number is not None else None
    if not covered:
        return counted
    missing = _missing((side for side, _ in covered), totals.brood_combs_in_hive or totals.combs_in_hive)
    bees = sum(bees_on_side(side.side_dm2, eighths) for side, eighths in covered)
    if missing and counted is not None and counted.bees >= bees:
        return counted
    low = sum(max(0.0, eighths / _EIGHTH - EYE) * side.side_dm2 for side, eighths in covered)
    high = sum(min(1.0, eighths / _EIGHTH + EYE) * side.side_dm2 for side, eighths in covered if eighths)
    return BeesFigures(bees, Doubt(low * FEWEST_BEES_PER_DM2, high * MOST_BEES_PER_DM2, at_least=missing))


def _bees_in_seams(totals: VisitTotals, seams: float, frame: FrameType | None) -> BeesFigures | None:
    size = _brood_frame(totals.counted_sides, frame)
    if size is None:
        return None
    bees = bees_in_seams(seams, size.side_dm2)
    full = bees_on_side(size.side_dm2, _EIGHTH, BEES_PER_DM2) * _FACES * seams
    return BeesFigures(bees, Doubt(bees * (1 - SEAM_SPREAD), full, coarse=True), seams)


@dataclass(frozen=True)
class EggsSeen:
    """When eggs were last seen before or on a day, and how many days ago that was."""

    day: date
    days: int


def eggs_last_seen(visits: Iterable[VisitFigures], today: date) -> EggsSeen | None:
    """The state of a colony: how many days ago eggs were last seen; None if they never were.

    Source: proof of laying counts before sight of the queen, common practice, no source.
    """
    days = [visit.day for visit in visits if visit.eggs_seen and visit.day <= today]
    if not days:
        return None
    return EggsSeen(max(days), (today - max(days)).days)
