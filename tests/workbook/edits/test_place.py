from dataclasses import replace

import pytest

from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Colony,
    ColonyId,
    Frame,
    OwnFrame,
    Setting,
    Stand,
    StandId,
    Visit,
)
from beeworkbook.workbook.edits import (
    AddApiary,
    AddOwnFrame,
    AddPart,
    AddStand,
    ChangeRecord,
    RemoveRecord,
    RenameRecord,
    ReorderApiaries,
    ReorderStands,
    SetSetting,
)
from beeworkbook.workbook.edits.place import needed_name, place_of, record_word
from beeworkbook.workbook.errors import GoneError, NotKeptError, RefusedError
from tests.workbook.keeping import LOOK, Keeping, as_int


def test_apiaries_and_stands_come_last_and_are_set_in_order(keeping: Keeping) -> None:
    first = keeping.book.read.apiaries()[0]
    second = ApiaryId(as_int(keeping.book.do(AddApiary("Far Meadow", map_reference="grid 12"))))
    assert [apiary.id for apiary in keeping.book.read.apiaries()] == [first.id, second]
    keeping.book.do(ReorderApiaries((second, first.id)))
    assert [apiary.id for apiary in keeping.book.read.apiaries()] == [second, first.id]
    stands = [StandId(as_int(keeping.book.do(AddStand(second, name)))) for name in ("1", "2", "3")]
    keeping.book.do(ReorderStands(second, (stands[2], stands[0], stands[1])))
    assert [stand.name for stand in keeping.book.read.stands(second)] == ["3", "1", "2"]
    for order in ((stands[0],), (stands[0], stands[0], stands[1])):
        with pytest.raises(RefusedError, match="every stand once"):
            keeping.book.do(ReorderStands(second, order))
    with pytest.raises(GoneError):
        keeping.book.do(AddStand(ApiaryId(99), "x"))


def test_names_are_needed_where_a_thing_is_looked_for_by_name(keeping: Keeping) -> None:
    assert needed_name("  Wall ") == "Wall"
    for edit in (AddApiary(" "), RenameRecord(Colony, keeping.colony, "")):
        with pytest.raises(RefusedError, match="Without a name"):
            keeping.book.do(edit)
    keeping.book.do(RenameRecord(Colony, keeping.colony, " Elder "))
    colony = keeping.book.read.get(Colony, keeping.colony)
    assert colony is not None
    assert colony.name == "Elder"
    assert keeping.book.undo_label == "rename the colony"
    keeping.book.do(RenameRecord(Frame, keeping.frame(5), "old 7"))
    keeping.book.do(RenameRecord(Frame, keeping.frame(5), ""))
    with pytest.raises(RefusedError, match="no name"):
        keeping.book.do(RenameRecord(Visit, keeping.visit, "x"))


def _colony(keeping: Keeping) -> Colony:
    colony = keeping.book.read.get(Colony, keeping.colony)
    assert colony is not None
    return colony


def test_a_record_is_changed_as_a_whole_and_typing_a_field_is_one_step(keeping: Keeping) -> None:
    steps = len(keeping.book._history)
    for note in ("d", "da", "dark"):
        keeping.book.do(ChangeRecord(replace(_colony(keeping), note=note), field="note"))
    assert len(keeping.book._history) == steps + 1
    assert keeping.book.undo_label == "change the colony"
    keeping.book.do(ChangeRecord(replace(_colony(keeping), note="x"), "write about the colony"))
    assert keeping.book.undo_label == "write about the colony"
    with pytest.raises(GoneError):
        keeping.book.do(ChangeRecord(replace(_colony(keeping), id=ColonyId(99))))


def test_a_removed_colony_comes_back_with_all_that_hung_on_it(keeping: Keeping) -> None:
    keeping.paint(5)
    before = keeping.everything()
    keeping.book.do(RemoveRecord(Colony, keeping.colony))
    assert keeping.book.undo_label == "remove the colony Wall"
    assert keeping.book.read.find(Visit) == ()
    keeping.book.undo()
    assert keeping.everything() == before
    keeping.book.do(RemoveRecord(Stand, keeping.book.read.find(Stand)[0].id, "take the stand away"))
    assert keeping.book.undo_label == "take the stand away"


def test_settings_are_set_and_set_again(keeping: Keeping) -> None:
    keeping.book.do(SetSetting("hemisphere", "south"))
    keeping.book.do(SetSetting("hemisphere", "north"))
    assert keeping.book.setting("hemisphere") == "north"
    assert keeping.book.read.find(Setting, id="hemisphere")


def test_a_frame_of_ones_own_is_checked_and_kept_while_it_is_used(keeping: Keeping) -> None:
    made = keeping.book.do(AddOwnFrame("Our deep", 340, 210))
    assert made == "own_1"
    assert keeping.book.do(AddOwnFrame("Our other", 340, 140)) == "own_2"
    assert keeping.book.read.frame_type("own_1").area_dm2 == pytest.approx(7.14)
    with pytest.raises(RefusedError, match="inside width"):
        keeping.book.do(AddOwnFrame("Too wide", 3400, 210))
    hive = keeping.book.read.hive_day(keeping.colony, LOOK)
    assert hive is not None
    from beeworkbook.colony.records import PartKind

    keeping.book.do(AddPart(hive.hive.id, PartKind.SUPER, LOOK, frame_type="own_1", places=9))
    with pytest.raises(NotKeptError):
        keeping.book.do(RemoveRecord(OwnFrame, "own_1"))
    keeping.book.do(RemoveRecord(OwnFrame, "own_2"))


def test_every_record_says_where_it_belongs(keeping: Keeping) -> None:
    keeping.paint(5)
    colony, visit, side = (
        keeping.book.read.get(Colony, keeping.colony),
        keeping.noted(),
        keeping.side(5),
    )
    assert colony is not None
    assert side is not None
    assert place_of(colony).colony_id == colony.id
    assert (place_of(visit).visit_id, place_of(visit).colony_id) == (visit.id, colony.id)
    assert (place_of(side).visit_id, place_of(side).frame_id) == (visit.id, side.frame_id)
    assert place_of(keeping.book.read.apiaries()[0]).colony_id is None
    assert record_word(Apiary) == "apiary"
