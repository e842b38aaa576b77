from dataclasses import replace
from datetime import UTC, datetime

import pytest

from beeworkbook.colony.records import (
    RECORD_TYPES,
    Answer,
    AnswerId,
    Apiary,
    ApiaryId,
    Colony,
    Due,
    Event,
    Feed,
    Frame,
    Hive,
    OwnFrame,
    Part,
    Question,
    Record,
    Setting,
    Side,
    Stand,
    StandId,
    Visit,
)
from beeworkbook.comb.codec import DamagedCombError, pack
from beeworkbook.comb.contents import Content, Face, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import blank_cells
from beeworkbook.store.database import Database, open_database
from beeworkbook.store.errors import BrokenRuleError, FrameInUseError, NoSuchRecordError
from beeworkbook.store.transaction import Step
from tests.store.small_apiary import BOX_FRAME, SmallApiary, drawing, everything


def _undo(database: Database, journal: list[Step]) -> None:
    with database.write() as tx:
        for step in reversed(journal):
            if step.before is None:
                tx.remove(step.cls, step.id)
            else:
                tx.put(step.before)


@pytest.mark.usefixtures("small")
def test_every_kind_of_record_comes_back_as_it_went_in(database: Database) -> None:
    held = {cls: list(database.reader.find(cls)) for cls in RECORD_TYPES}
    assert all(held.values())
    path = database.path
    database.close()
    with open_database(path) as again:
        assert {cls: list(again.reader.find(cls)) for cls in RECORD_TYPES} == held


def test_a_new_record_gets_an_id_and_is_journalled(database: Database) -> None:
    with database.write() as tx:
        apiary = tx.add(Apiary(ApiaryId(0), "Orchard"))
        assert apiary.id
        assert tx.get(Apiary, apiary.id) == apiary
        assert tx.find(Apiary, name="Orchard") == tx.find(Apiary, id=apiary.id) == (apiary,)
        assert tx.find(Apiary, id=99) == ()
    assert tx.journal == [Step(Apiary, apiary.id, None, apiary)]


def test_an_id_is_never_given_twice(database: Database) -> None:
    with database.write() as tx:
        first = tx.add(Apiary(ApiaryId(0), "Orchard"))
    with database.write() as tx:
        tx.remove(Apiary, first.id)
    with database.write() as tx:
        second = tx.add(Apiary(ApiaryId(0), "Heath"))
    assert second.id > first.id
    with database.write() as tx:
        tx.put(first)
    assert set(database.reader.apiaries()) == {first, second}


def test_what_is_put_as_it_is_leaves_no_step(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        tx.put(small.apiary)
        tx.put(small.sides[0])
    assert tx.journal == []


def test_nothing_is_kept_when_anything_fails(database: Database, small: SmallApiary) -> None:
    before = everything(database)

    def half_done() -> None:
        with database.write() as tx:
            tx.remove(Colony, small.colony.id)
            tx.add(Apiary(ApiaryId(0), "Heath"))
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        half_done()
    assert everything(database) == before
    with database.write() as tx:  # and the book can be written again
        tx.add(Apiary(ApiaryId(0), "Heath"))


def test_find_asks_for_blanks_and_for_kinds(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        assert tx.find(Colony, mother_id=None) == (small.colony,)
        assert tx.find(Side, face=Face.B, origin=Origin.ASSUMED) == (small.sides[4],)
        assert tx.find(Visit, day=small.first.day) == (small.first,)
        with pytest.raises(KeyError):
            tx.find(Visit, colour="blue")


def test_get_tells_what_is_missing(database: Database) -> None:
    with database.write() as tx, pytest.raises(NoSuchRecordError):
        tx.get(Stand, 7)


def test_a_reference_must_lead_somewhere(database: Database) -> None:
    with pytest.raises(BrokenRuleError), database.write() as tx:
        tx.add(Stand(StandId(0), ApiaryId(99), "nowhere"))


def test_a_question_has_one_answer(database: Database, small: SmallApiary) -> None:
    with pytest.raises(BrokenRuleError), database.write() as tx:
        tx.add(Answer(AnswerId(0), small.first.id, Question.EGGS, "n"))


def test_a_setting_needs_its_name(database: Database) -> None:
    with pytest.raises(ValueError, match="name"), database.write() as tx:
        tx.add(Setting("", "x"))


REMOVALS = [Colony, Visit, Apiary, Stand, Hive, Part, Frame, Side, Event, Feed, Due]


@pytest.mark.parametrize("cls", REMOVALS)
@pytest.mark.usefixtures("small")
def test_a_removal_takes_along_what_hangs_on_it_and_undo_restores_every_table(
    database: Database, cls: type[Record]
) -> None:
    before = everything(database)
    with database.write() as tx:
        tx.remove(cls, tx.find(cls)[0].id)
    assert everything(database) != before
    assert not database.link.rows("PRAGMA foreign_key_check")
    _undo(database, tx.journal)
    assert everything(database) == before


def test_a_colony_takes_its_visits_but_leaves_its_daughter(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        tx.remove(Colony, small.colony.id)
    read = database.reader
    assert not read.find(Visit)
    assert not read.find(Side)
    assert [due.colony_id for due in read.find(Due)] == [None]
    assert read.find(Colony) == (replace(small.daughter, mother_id=None),)
    assert read.find(Hive)
    assert read.find(Frame) == small.frames
    removed = [step.cls for step in tx.journal if step.after is None]
    assert removed[-1] is Colony
    assert removed.index(Side) < removed.index(Visit)


def test_a_removed_visit_leaves_its_feed_and_its_copies(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        tx.remove(Visit, small.first.id)
    read = database.reader
    (feed,) = read.find(Feed)
    assert feed.visit_id is None
    assert feed.left_visit_id == small.second.id
    assert [side.copied_from for side in read.find(Side)] == [None, None]


def test_a_removed_frame_takes_its_marks_along(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        tx.remove(Frame, small.frames[0].id)
    assert [mark.text for mark in database.reader.marks(small.first.id)] == ["a wasp"]


def _tally(database: Database, side: Side) -> dict[str, float] | None:
    rows = database.link.rows("SELECT content, counted FROM totals WHERE side_id = ?", (side.id,))
    return dict(rows) or None


def test_totals_follow_the_drawing(database: Database, small: SmallApiary) -> None:
    side = small.sides[0]
    lattice = FRAME_TYPES[BOX_FRAME].lattice
    full = replace(side, cells=pack(blank_cells(lattice, Content.SEALED)))
    with database.write() as tx:
        tx.put(full)
    assert _tally(database, side) == {"sealed": lattice.cells}
    with database.write() as tx:
        tx.put(replace(full, origin=Origin.ASSUMED))
    assert _tally(database, side) is None
    with database.write() as tx:
        tx.put(replace(full, origin=Origin.UNCHANGED, place=3))
    assert _tally(database, side) == {"sealed": lattice.cells}
    with database.write() as tx:
        tx.remove(Side, side.id)
    assert _tally(database, side) is None
    assert not database.link.rows("SELECT 1 FROM comb WHERE side_id = ?", (side.id,))


def test_drone_cells_change_the_totals(database: Database, small: SmallApiary) -> None:
    side = small.sides[2]
    asked = "SELECT cells FROM totals WHERE side_id = ? AND content = 'drone'"
    in_drone_cells = database.link.rows(asked, (side.id,))[0][0]
    with database.write() as tx:
        tx.put(replace(side, drone_cells=False))
    in_worker_cells = database.link.rows(asked, (side.id,))[0][0]
    frame = FRAME_TYPES[BOX_FRAME]
    assert in_worker_cells / in_drone_cells == pytest.approx(frame.cells_per_dm2 / frame.drone_cells_per_dm2)


def test_a_drawing_that_does_not_fit_is_refused_whole(database: Database, small: SmallApiary) -> None:
    before = everything(database)
    with pytest.raises(DamagedCombError), database.write() as tx:
        tx.put(replace(small.sides[0], cells=b"\x01nonsense"))
    with pytest.raises(DamagedCombError), database.write() as tx:
        tx.put(replace(small.sides[0], cells=pack(blank_cells(FRAME_TYPES["zander"].lattice))))
    assert everything(database) == before


def test_a_side_on_a_frame_of_ones_own_is_counted_and_holds_its_frame(
    database: Database, small: SmallApiary
) -> None:
    own = database.reader.find(OwnFrame)[0]
    kind = database.reader.frame_type(own.id)
    with database.write() as tx:
        tx.put(replace(small.sides[0], frame_type=own.id, cells=drawing(kind, {Content.EGGS: 1.0})))
    assert _tally(database, small.sides[0]) == {"eggs": kind.lattice.cells}
    with database.write() as tx:
        tx.put(replace(own, name="Grandmother’s"))
    with pytest.raises(FrameInUseError, match="Grandmother"), database.write() as tx:
        tx.put(replace(own, inside_width_mm=310.0))
    with pytest.raises(FrameInUseError, match="Grandmother"), database.write() as tx:
        tx.remove(OwnFrame, own.id)


@pytest.mark.usefixtures("small")
def test_a_frame_of_ones_own_that_nothing_uses_may_change_and_go(database: Database) -> None:
    own = database.reader.find(OwnFrame)[0]
    wider = replace(own, inside_width_mm=310.0)
    with database.write() as tx:
        assert tx.frame_type(own.id).inside_width_mm == 300.0
        tx.put(wider)
        assert tx.frame_type(own.id).inside_width_mm == 310.0
        tx.remove(OwnFrame, own.id)
        with pytest.raises(NoSuchRecordError):
            tx.frame_type(own.id)
    assert tx.journal[-1] == Step(OwnFrame, own.id, wider, None)


def test_a_stamp_goes_to_every_visit_touched_and_undo_takes_it_back(
    database: Database, small: SmallApiary
) -> None:
    before = everything(database)
    stamp = datetime(2026, 5, 1, 9, 0, tzinfo=UTC)
    with database.write(stamp=stamp) as tx:
        tx.put(replace(small.sides[0], covered=2.0))
        tx.add(Answer(AnswerId(0), small.second.id, Question.EGGS, "y"))
    visits = database.reader.visits(small.colony.id)
    assert [visit.saved_utc for visit in visits] == [stamp, stamp]
    assert [step.cls for step in tx.journal] == [Side, Answer, Visit, Visit]
    _undo(database, tx.journal)
    assert everything(database) == before
    with database.write(stamp=stamp) as tx:
        tx.remove(Visit, small.first.id)
    assert database.reader.get(Visit, small.first.id) is None


def test_a_moment_needs_its_time_zone(database: Database, small: SmallApiary) -> None:
    with pytest.raises(ValueError, match="zone"), database.write() as tx:
        tx.put(replace(small.first, saved_utc=datetime(2026, 5, 1)))  # noqa: DTZ001
