from beeworkbook.colony.records import Frame, Setting, Side
from beeworkbook.store.database import Database
from beeworkbook.store.lookup import any_with, find, find_one
from tests.store.small_apiary import BOX_FRAME, SmallApiary


def test_whether_anything_has_a_value(database: Database, small: SmallApiary) -> None:
    assert any_with(database.link, Side, "frame_type", BOX_FRAME)
    assert not any_with(database.link, Frame, "frame_type", "zander")
    assert find_one(database.link, Setting, "title") == find(database.link, Setting, {"id": "title"})[0]
    assert find(database.link, Side, {"id": small.sides[0].id, "typed": ""}) == (small.sides[0],)
