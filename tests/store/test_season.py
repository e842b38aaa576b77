from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import (
    ColonyId,
    Frame,
    FrameId,
    FrameStay,
    FrameStayId,
    HousingId,
    Level,
    PartKind,
    PartStay,
    Question,
    Side,
    SideId,
    Visit,
    VisitId,
)
from beeworkbook.comb.codec import pack, unpack
from beeworkbook.comb.contents import CONTENTS, Content, Face, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import blank_cells, tally, tally_counts
from beeworkbook.store.database import Database
from beeworkbook.store.errors import DamagedWorkbookError, NoSuchRecordError
from beeworkbook.store.tallies import tallied
from tests.store.small_apiary import LATER, SPRING, SUMMER, SmallApiary

DAY = timedelta(days=1)


def test_a_season_comes_from_stored_totals(database: Database, small: SmallApiary) -> None:
    first, second = database.reader.season([small.colony.id], SPRING, SUMMER)
    assert (first.visit, second.visit) == (small.first, small.second)
    assert set(first.answers) == {Question.EGGS, Question.SEAMS}
    assert [side.side_id for side in first.sides] == [side.id for side in small.sides[:3]]
    assert (first.combs_in_hive, second.combs_in_hive) == (2, 2)
    for stored, side in zip(first.sides, small.sides[:3], strict=True):
        frame = FRAME_TYPES[side.frame_type]
        counted = tally(frame, unpack(side.cells, cells=frame.lattice.cells), drone_cells=side.drone_cells)
        assert (stored.cells, stored.area_dm2) == (counted.cells, counted.area_dm2)
        assert stored.side_dm2 == frame.area_dm2
        assert (stored.face, stored.origin, stored.covered) == (side.face, side.origin, side.covered)
        assert stored.part_kind is PartKind.BROOD_BOX
    assert database.reader.visit_totals(small.first.id) == first


def test_an_assumed_side_is_there_and_counts_nothing(database: Database, small: SmallApiary) -> None:
    totals = database.reader.visit_totals(small.second.id)
    seen, assumed = totals.sides
    assert seen.counted
    assert not assumed.counted
    assert set(assumed.cells) == set(assumed.area_dm2) == {0.0}
    assert totals.counted_sides == (seen,)


def test_a_season_ends_before_its_last_day_and_joins_colonies_by_day(
    database: Database, small: SmallApiary
) -> None:
    read = database.reader
    with database.write() as tx:
        visit = tx.add(Visit(VisitId(0), small.daughter.id, SPRING + DAY, Level.ONE_LINE))
    both = [small.daughter.id, small.colony.id, small.colony.id]
    found = [totals.visit for totals in read.season(both, SPRING, LATER + DAY)]
    assert found == [small.first, visit, small.second]
    assert [totals.visit for totals in read.season(both, SPRING, LATER)] == [small.first, visit]
    assert read.season([], SPRING, LATER) == ()
    assert read.season([ColonyId(99)], SPRING, LATER) == ()
    with pytest.raises(NoSuchRecordError):
        read.visit_totals(VisitId(99))


def test_a_season_decodes_no_drawing(database: Database, small: SmallApiary) -> None:
    database.link.run("UPDATE comb SET cells = x'00'")
    assert len(database.reader.season([small.colony.id], SPRING, SUMMER)) == 2


@pytest.mark.parametrize(
    "damage",
    ["UPDATE side SET face = 'C'", "UPDATE visit SET day = 'soon'", "UPDATE answer SET reply = 'perhaps'"],
)
def test_a_value_nobody_knows_is_told_as_damage(database: Database, small: SmallApiary, damage: str) -> None:
    database.link.run(damage)
    with pytest.raises(DamagedWorkbookError):
        database.reader.visit_totals(small.first.id)


@given(
    st.lists(st.integers(0, 3000), min_size=12, max_size=12).filter(any),
    st.sampled_from(sorted(FRAME_TYPES)),
    st.booleans(),
)
def test_stored_totals_agree_with_the_comb_to_the_last_bit(
    counts: list[int], kind: str, drone_cells: bool
) -> None:
    frame = FRAME_TYPES[kind]
    drone = frame.drone_cells_per_dm2 if drone_cells else frame.cells_per_dm2
    row = (frame.area_dm2, frame.cells_per_dm2, drone, *counts)
    expected = tally_counts(frame, counts, drone_cells=drone_cells)
    stored = tallied([row, row])
    assert [held[:3] for held in stored] == [(expected.cells, expected.area_dm2, frame.area_dm2)] * 2
    unrecorded = expected.share[Content.NOT_RECORDED] * frame.area_dm2
    assert [held[3] for held in stored] == pytest.approx([unrecorded] * 2)


def test_a_side_tells_how_much_of_it_nobody_recorded(database: Database, small: SmallApiary) -> None:
    blank = blank_cells(FRAME_TYPES[small.sides[0].frame_type].lattice)
    half = blank.copy()
    half[: len(half) // 2] = Content.SEALED
    left = 1 - len(half) // 2 / len(half)
    for cells, share in ((blank, 1.0), (half, left), (np.full_like(half, Content.GAP), 0.0)):
        with database.write() as tx:
            tx.put(replace(small.sides[0], cells=pack(cells)))
        stored = database.reader.visit_totals(small.first.id).sides[0]
        assert stored.side_id == small.sides[0].id
        assert stored.unrecorded_dm2 == pytest.approx(share * stored.side_dm2)


def test_the_view_for_other_tools_says_the_same(database: Database, small: SmallApiary) -> None:
    for stored in database.reader.visit_totals(small.first.id).sides:
        rows = database.link.rows(
            "SELECT code, content, cells, area_dm2 FROM totals WHERE side_id = ? ORDER BY code",
            (stored.side_id,),
        )
        assert [content for _, content, _, _ in rows] == [
            Content(code).name.lower().replace("_", " ") for code, _, _, _ in rows
        ]
        cells, area = [0.0] * len(CONTENTS), [0.0] * len(CONTENTS)
        for code, _, shown, dm2 in rows:
            cells[code], area[code] = shown, dm2
        assert cells == pytest.approx(stored.cells)
        assert area == pytest.approx(stored.area_dm2)


def test_a_hive_shared_by_two_stays_counts_each_comb_once(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        home = database.reader.home(small.colony.id, SPRING)
        assert home is not None
        tx.add(replace(home, id=HousingId(0)))
    assert database.reader.visit_totals(small.first.id).combs_in_hive == 2
    assert len(database.reader.visits_on(small.apiary.id, SPRING)) == 1


def test_frames_in_a_super_hang_in_the_hive_but_are_no_brood_combs(
    database: Database, small: SmallApiary
) -> None:
    day = small.second.day
    before = database.reader.visit_totals(small.second.id)
    with database.write() as tx:
        for stay in tx.find(PartStay, part_id=small.super_.id):
            tx.put(replace(stay, since=day))
        frame = tx.add(Frame(FrameId(0), small.super_.frame_type))
        tx.add(FrameStay(FrameStayId(0), frame.id, small.super_.id, 1, day))
    totals = database.reader.visit_totals(small.second.id)
    assert before.brood_combs_in_hive == totals.brood_combs_in_hive == before.combs_in_hive == 2
    assert totals.combs_in_hive == 3


def test_reads_within_one_call_see_one_state(database: Database) -> None:
    with database.link.reading(), database.link.reading():
        assert database.link.driver.in_transaction
    assert not database.link.driver.in_transaction
    assert tallied([]) == []


def test_a_side_twice_noted_gives_one(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        tx.add(replace(small.sides[0], id=SideId(0)))
    found = database.reader.side(small.first.id, FrameId(small.frames[0].id), Face.A)
    assert isinstance(found, Side)
    assert found.origin is Origin.PAINTED
