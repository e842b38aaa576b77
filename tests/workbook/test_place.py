from beeworkbook.colony.records import ColonyId
from beeworkbook.workbook.edits import RemoveMark, SetNote, Together
from beeworkbook.workbook.place import Done, Place
from tests.workbook.keeping import Keeping


def test_a_place_may_be_known_in_part() -> None:
    assert Place() == Place(None, None, None, None, None, None)
    assert Place(ColonyId(3)) != Place()
    assert Done(None, "nothing").place == Place()


def test_only_typing_merges(keeping: Keeping) -> None:
    assert SetNote(keeping.visit, "x").merge_key == SetNote(keeping.visit, "xy").merge_key
    assert RemoveMark(1).merge_key is None  # type: ignore[arg-type]
    assert Together((), "all").merge_key is None
