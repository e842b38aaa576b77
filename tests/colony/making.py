"""Visits made by hand for the tests of this room: combs of round sizes, to be summed in the head."""

from collections.abc import Mapping
from datetime import date

from beeworkbook.colony.questions import parse_answer
from beeworkbook.colony.records import (
    Answer,
    AnswerId,
    ColonyId,
    FrameId,
    Level,
    PartId,
    PartKind,
    Question,
    SideId,
    Visit,
    VisitId,
)
from beeworkbook.colony.totals import NOTHING, SideTotals, VisitTotals
from beeworkbook.comb.contents import CONTENTS, Content, Face, Origin

SIDE_DM2 = 8.0
"""A Zander side, so that an eighth is a dm²."""
PER_DM2 = 400.0
DRONES_PER_DM2 = 230.0
DAY = date(2026, 5, 16)


def side(
    comb: int,
    face: Face,
    eighths: Mapping[Content, float],
    *,
    kind: PartKind = PartKind.BROOD_BOX,
    origin: Origin = Origin.EIGHTHS,
    grain: Origin | None = None,
    covered: float | None = None,
) -> SideTotals:
    """One side with its contents in eighths."""
    if origin is Origin.ASSUMED:
        area = cells = NOTHING
    else:
        area = tuple(eighths.get(content, 0.0) * SIDE_DM2 / 8 for content in CONTENTS)
        cells = tuple(
            dm2 * (DRONES_PER_DM2 if content is Content.DRONE else PER_DM2)
            for content, dm2 in zip(CONTENTS, area, strict=True)
        )
    return SideTotals(
        side_id=SideId(comb * 2 + (face is Face.B)),
        visit_id=VisitId(1),
        frame_id=FrameId(comb + (100 if kind is PartKind.SUPER else 0)),
        part_id=PartId(2 if kind is PartKind.SUPER else 1),
        part_kind=kind,
        place=comb,
        face=face,
        frame_type="zander",
        origin=origin,
        grain=grain or (Origin.EIGHTHS if origin is Origin.ASSUMED else origin),
        covered=covered,
        cells=cells,
        area_dm2=area,
        side_dm2=0.0 if origin is Origin.ASSUMED else SIDE_DM2,
    )


def comb(number: int, eighths: Mapping[Content, float], **how: object) -> tuple[SideTotals, SideTotals]:
    """Both sides of a comb alike."""
    a, b = (side(number, face, eighths, **how) for face in Face)  # type: ignore[arg-type]
    return a, b


def visit(day: date = DAY, level: Level = Level.BY_COMB, visit_id: int = 1, **known: object) -> Visit:
    """A visit on a day."""
    return Visit(VisitId(visit_id), ColonyId(1), day, level, **known)  # type: ignore[arg-type]


def answers(**typed: str) -> dict[Question, Answer]:
    """Answers as typed, by the name of the question."""
    made: dict[Question, Answer] = {}
    for name, text in typed.items():
        question = Question(name)
        said = parse_answer(question, text)
        made[question] = Answer(
            AnswerId(len(made) + 1), VisitId(1), question, said.typed, said.reply, said.number, said.second
        )
    return made


def totals(
    *sides: SideTotals,
    combs: int = 11,
    supers: int = 0,
    of: Visit | None = None,
    said: Mapping[Question, Answer] | None = None,
) -> VisitTotals:
    """A visit with its sides and answers; so many combs in the brood box, and so many in supers."""
    return VisitTotals(of or visit(), said or {}, sides, combs + supers, combs)
