"""Past the last comb of a box come the box above it and then the line, and nothing where there is neither."""

from beeworkbook.bench.last_comb import Beyond, beyond_last_comb, go_beyond
from beeworkbook.colony.records import PartKind
from beeworkbook.comb.contents import Content
from beeworkbook.qt.desk import Desk, View
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.visit import BeginRound
from tests.workbook.keeping import LATER, Keeping


def test_without_a_round_there_is_nothing_beyond_it(desk: Desk, keeping: Keeping) -> None:
    desk.go(frame_id=keeping.frame(11))
    assert beyond_last_comb(desk) is None
    assert not go_beyond(desk)
    assert (desk.spot.view, desk.spot.frame_id) == (View.BOX, keeping.frame(11))


def test_only_the_last_comb_has_something_beyond_it(desk: Desk, keeping: Keeping) -> None:
    assert desk.spot.apiary_id is not None
    desk.do(BeginRound(desk.spot.apiary_id, LATER))
    desk.go(frame_id=keeping.frame(10))
    assert beyond_last_comb(desk) is None
    desk.go(frame_id=keeping.frame(11))
    assert beyond_last_comb(desk) == Beyond(None)
    assert go_beyond(desk)
    assert desk.spot.view is View.ROUND


def test_a_brood_box_above_comes_before_the_line_and_a_super_does_not(desk: Desk, keeping: Keeping) -> None:
    hive = desk.hive_day()
    assert hive is not None
    assert desk.spot.apiary_id is not None
    desk.do(BeginRound(desk.spot.apiary_id, LATER))
    for kind in (PartKind.BROOD_BOX, PartKind.SUPER):
        desk.do(
            AddPart(hive.hive.id, kind, LATER, frame_type="bs_deep", places=3, new_frames=Content.FOUNDATION)
        )
    lower, upper = desk.hive_day().brood_boxes  # type: ignore[union-attr]
    desk.go(part_id=lower.part.id, frame_id=keeping.frame(11))
    leads = beyond_last_comb(desk)
    assert leads is not None
    assert "box above" in leads.words
    assert go_beyond(desk)
    assert desk.spot.part_id == upper.part.id
    assert upper.frames[0].frame is not None
    assert desk.spot.frame_id == upper.frames[0].frame.id
    assert upper.frames[-1].frame is not None
    desk.go(frame_id=upper.frames[-1].frame.id)
    leads = beyond_last_comb(desk)
    assert leads is not None
    assert "the line" in leads.words
