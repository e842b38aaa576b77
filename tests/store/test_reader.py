from datetime import timedelta

import pytest

from beeworkbook.colony.records import (
    Apiary,
    OwnFrame,
)
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.store.database import Database
from beeworkbook.store.errors import NoSuchRecordError
from tests.store.small_apiary import SmallApiary

DAY = timedelta(days=1)


def test_a_record_that_is_gone_is_none_to_a_face(database: Database, small: SmallApiary) -> None:
    assert database.reader.get(Apiary, small.apiary.id) == small.apiary
    assert database.reader.get(Apiary, 99) is None


@pytest.mark.usefixtures("small")
def test_settings_and_frame_types_and_kinds_of_hive(database: Database) -> None:
    read = database.reader
    assert read.setting("title") == "Orchard and heath"
    assert read.setting("hemisphere", "north") == "north"
    assert read.frame_type("zander") is FRAME_TYPES["zander"]
    own = read.find(OwnFrame)[0]
    assert read.frame_type(own.id).inside_width_mm == own.inside_width_mm
    assert list(read.frame_types()) == [*FRAME_TYPES, own.id]
    with pytest.raises(NoSuchRecordError):
        read.frame_type("own_2")
    assert read.hive_kinds() == ("national",)
