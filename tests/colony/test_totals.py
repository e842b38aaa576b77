from datetime import date

from beeworkbook.colony.records import ColonyId, FrameId, Level, PartId, PartKind, SideId, Visit, VisitId
from beeworkbook.colony.totals import NOTHING, SideTotals, VisitTotals
from beeworkbook.comb.contents import CONTENTS, Face, Origin


def _side(side_id: int, origin: Origin) -> SideTotals:
    ids = (SideId(side_id), VisitId(1), FrameId(1), PartId(1))
    return SideTotals(
        *ids, PartKind.BROOD_BOX, 1, Face.A, "zander", origin, Origin.EIGHTHS, None, NOTHING, NOTHING, 0.0
    )


def test_an_assumed_side_is_never_counted() -> None:
    seen, assumed = _side(1, Origin.UNCHANGED), _side(2, Origin.ASSUMED)
    visit = Visit(VisitId(1), ColonyId(1), date(2026, 5, 1), Level.BY_SIDE)
    totals = VisitTotals(visit, {}, (seen, assumed), 11)
    assert totals.counted_sides == (seen,)
    assert [side.counted for side in totals.sides] == [True, False]


def test_nothing_has_a_place_for_every_content() -> None:
    assert len(NOTHING) == len(CONTENTS)
    assert not any(NOTHING)
