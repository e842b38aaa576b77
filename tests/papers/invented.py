"""Invented colonies for the papers' tests: every name and number here is made up."""

from datetime import date
from fractions import Fraction

import numpy as np

from beeworkbook.colony.records import Mark, MarkId, PartKind, Question, Reply, VisitId, Way
from beeworkbook.colony.sheet_models import (
    CombSheetModel,
    RoundSheetModel,
    RoundSheetRow,
    SheetAnswer,
    SheetBox,
    SheetComb,
    SheetFeed,
    SheetSide,
    SheetVisit,
)
from beeworkbook.comb.contents import CellFate, CellKind, Content, Face, MarkKind, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.lattice import Cells, read_only
from beeworkbook.comb.layout import lay_out

DAY = date(2026, 5, 16)
BEFORE = date(2026, 5, 9)

_NEST = (
    {Content.STORES: 5, Content.NECTAR: 2, Content.EMPTY: 1},
    {Content.SEALED: 1, Content.POLLEN: 1, Content.STORES: 4, Content.EMPTY: 2},
    {Content.OPEN: 1, Content.SEALED: 2, Content.POLLEN: 1, Content.STORES: 3, Content.EMPTY: 1},
    {
        Content.EGGS: 1,
        Content.OPEN: 1,
        Content.SEALED: 3,
        Content.POLLEN: 1,
        Content.STORES: 1,
        Content.EMPTY: 1,
    },
    {
        Content.EGGS: 1,
        Content.OPEN: 1,
        Content.SEALED: 3,
        Content.DRONE: 1,
        Content.POLLEN: 1,
        Content.STORES: 1,
    },
    {
        Content.EGGS: 1,
        Content.OPEN: 2,
        Content.SEALED: 2,
        Content.POLLEN: 1,
        Content.STORES: 1,
        Content.EMPTY: 1,
    },
)


def eighths_of(place: int, places: int) -> dict[Content, float]:
    """What a comb of an invented nest holds: brood in the middle, stores outside, the last foundation."""
    if place == places:
        return {Content.FOUNDATION: 8}
    depth = min(place - 1, places - 1 - place, len(_NEST) - 1)
    return {content: float(Fraction(eighths)) for content, eighths in _NEST[max(depth, 0)].items()}


def letters(eighths: dict[Content, float]) -> str:
    from beeworkbook.comb.contents import KEY_LETTERS

    return " ".join(f"{KEY_LETTERS[content]}{value:g}" for content, value in eighths.items())


def speckled(cells: Cells, seed: int) -> Cells:
    """The side with a few single cells changed, as a painted comb has."""
    chance = np.random.default_rng(seed)
    changed = cells.copy()
    where = chance.choice(len(cells), len(cells) // 60, replace=False)
    changed[where] = chance.choice(
        [Content.EMPTY, Content.POLLEN, Content.NECTAR, Content.SEALED], len(where)
    )
    return read_only(changed)


def side(
    frame: str, place: int, places: int, face: Face, origin: Origin = Origin.EIGHTHS, *, seed: int = 0
) -> SheetSide:
    eighths = eighths_of(place, places)
    cells = lay_out(FRAME_TYPES[frame], eighths, face, entrance_end="left", seed=seed + place)
    if origin is Origin.PAINTED:
        cells = speckled(cells, seed + place)
    return SheetSide(
        face,
        last=letters(eighths),
        last_day=BEFORE,
        cells=cells,
        origin=origin,
        grain=Origin.PAINTED if origin is Origin.PAINTED else Origin.EIGHTHS,
        bees_eighths=float(min(8, 2 + place)),
        figures="" if origin is Origin.ASSUMED else letters(eighths),
    )


def box(
    frame: str = "bs_deep",
    places: int = 11,
    *,
    name: str = "Brood box",
    origins: dict[int, Origin] | None = None,
    seed: int = 0,
) -> SheetBox:
    origins = origins or {}
    combs = tuple(
        SheetComb(
            place,
            FRAME_TYPES[frame].name,
            FRAME_TYPES[frame].lattice,
            side(frame, place, places, Face.A, origins.get(place, Origin.EIGHTHS), seed=seed),
            side(frame, place, places, Face.B, origins.get(place, Origin.EIGHTHS), seed=seed),
        )
        for place in range(1, places + 1)
    )
    return SheetBox(PartKind.BROOD_BOX, name, combs, places)


def visit(**changes: object) -> SheetVisit:
    answers = {
        Question.OPENED: SheetAnswer("yes", Reply.YES),
        Question.EGGS: SheetAnswer("yes", Reply.YES),
        Question.QUEEN: SheetAnswer("-", Reply.NOT_LOOKED),
        Question.CELLS: SheetAnswer("2 cup", Reply.YES),
        Question.SIGNS: SheetAnswer("no", Reply.NO),
        Question.TEMPER: SheetAnswer("quiet"),
        Question.STORES: SheetAnswer("8 kg"),
        Question.BROOD: SheetAnswer("7/4.2"),
    }
    held: dict[str, object] = {
        "day": DAY,
        "weather": "fine",
        "temperature_c": 18.0,
        "answers": answers,
        "feed": SheetFeed("2L 1:1", "0.5 L"),
        "sentences": ("Brood on 7 combs, worth 4.2.", "About 20\u202f000 brood cells.", "Stores about 8 kg."),
        "note": "Two play cups on the lower edge of 6B, both dry.",
        "flowering": "hawthorn",
        "next_day": date(2026, 5, 23),
        "next_reason": "unclipped queen in the swarm season, so a week.",
    }
    return SheetVisit(**{**held, **changes})  # type: ignore[arg-type]


def last_visit() -> SheetVisit:
    return visit(day=BEFORE, note="", sentences=())


def model(*boxes: SheetBox, filled: bool = False, **changes: object) -> CombSheetModel:
    held: dict[str, object] = {
        "code": "K3QF7",
        "revision": 4,
        "colony_name": "Pear Tree",
        "stand_name": "1",
        "day": DAY,
        "way": Way.COLD,
        "boxes": boxes or (box(),),
        "apiary_name": "Long Orchard",
        "place": "Mill Lane, Nether Combe",
        "map_reference": "XY 123 456",
        "queen": "blue 2025, clipped",
        "last": last_visit(),
        "visit": visit() if filled else None,
    }
    return CombSheetModel(**{**held, **changes})  # type: ignore[arg-type]


def mark(number: int, kind: MarkKind, cell: int | None = None, **changes: object) -> Mark:
    return Mark(MarkId(number), VisitId(1), kind, cell=cell, **changes)  # type: ignore[arg-type]


def marked_box() -> SheetBox:
    """A box whose comb 5 has the queen, 6B a charged cell, 4A a note, 3A a cell nobody saw a place for."""
    from dataclasses import replace

    plain = box(origins={5: Origin.PAINTED, 9: Origin.ASSUMED, 2: Origin.UNCHANGED})
    combs = list(plain.combs)
    combs[4] = replace(combs[4], side_a=replace(combs[4].side_a, marks=(mark(1, MarkKind.QUEEN, 900),)))
    cell = mark(2, MarkKind.QUEEN_CELL, 2500, cell_kind=CellKind.CHARGED, fate=CellFate.CHOSEN)
    combs[5] = replace(combs[5], side_b=replace(combs[5].side_b, marks=(cell,)))
    note = mark(3, MarkKind.NOTE, 60, text="a hole gnawed by a mouse last winter")
    combs[3] = replace(combs[3], side_a=replace(combs[3].side_a, marks=(note,)))
    placeless = mark(4, MarkKind.QUEEN_CELL, cell_kind=CellKind.PLAY_CUP)
    combs[2] = replace(combs[2], side_a=replace(combs[2].side_a, marks=(placeless,)))
    combs[7] = replace(combs[7], side_b=SheetSide(Face.B))
    return replace(plain, combs=tuple(combs), remark="")


def round_model(rows: int = 6, **changes: object) -> RoundSheetModel:
    names = ("Pear Tree", "Gate", "Wall", "Zażółć gęślą jaźń", "Μέλισσα", "Пчёлка", "Elder", "Nuc 2")
    made = tuple(
        RoundSheetRow(
            str(index + 1),
            names[index % len(names)],
            "1 brood box, 1 super" if index % 2 else "2 brood boxes",
            last_visit() if index % 3 != 2 else None,
            "feed look, 18 May" if index % 4 == 1 else "",
            ("2 L syrup 1:1", "super") if index % 4 == 0 else (),
        )
        for index in range(rows)
    )
    held: dict[str, object] = {
        "apiary_name": "Long Orchard",
        "day": DAY,
        "rows": made,
        "place": "Mill Lane, Nether Combe",
        "map_reference": "XY 123 456",
        "bring": ("smoker fuel",),
    }
    return RoundSheetModel(**{**held, **changes})  # type: ignore[arg-type]
