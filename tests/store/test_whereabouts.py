from datetime import date, timedelta

from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    PartKind,
)
from beeworkbook.store.database import Database
from tests.store.small_apiary import LATER, SPRING, SUMMER, SmallApiary

DAY = timedelta(days=1)


def test_stands_come_in_the_order_of_the_walk(database: Database, small: SmallApiary) -> None:
    names = [stand.name for stand in database.reader.stands(small.apiary.id)]
    assert names == ["first", "second", "third"]
    with database.write() as tx:
        before = tx.add(Apiary(ApiaryId(0), "Heath", position=0))
    assert database.reader.apiaries() == (before, small.apiary)


def test_any_past_day_says_who_stood_where(database: Database, small: SmallApiary) -> None:
    read = database.reader

    def names(day: date) -> list[tuple[str, str | None, str | None]]:
        return [
            (
                place.stand.name,
                place.colony.name if place.colony else None,
                place.hive.name if place.hive else None,
            )
            for place in read.standing(small.apiary.id, day)
        ]

    free = ("third", None, None)
    assert names(SPRING - DAY) == [("first", "Hazel", "Blue"), ("second", None, None), free]
    assert names(SPRING) == [("first", "Hazel", "Green"), ("second", None, None), free]
    assert names(SUMMER) == [("first", "Hazel", "Green"), ("second", "Filbert", "Blue"), free]
    assert names(date(2025, 4, 30)) == [("first", None, None), ("second", None, None), free]
    (place, _, _) = read.standing(small.apiary.id, SPRING)
    assert place.housing == read.home(small.colony.id, SPRING)
    assert read.home(small.colony.id, date(2020, 1, 1)) is None


def test_the_hive_of_any_day_is_rebuilt(database: Database, small: SmallApiary) -> None:
    read = database.reader
    early = read.hive_day(small.colony.id, SPRING)
    late = read.hive_day(small.colony.id, LATER)
    assert early is not None
    assert late is not None
    assert [part.part.kind for part in early.stack] == [PartKind.FLOOR, PartKind.BROOD_BOX, PartKind.ROOF]
    assert [part.part.kind for part in late.stack] == [
        PartKind.FLOOR,
        PartKind.BROOD_BOX,
        PartKind.EXCLUDER,
        PartKind.SUPER,
        PartKind.ROOF,
    ]
    assert [placed.frame for placed in late.frames_of(small.box.id)] == [*small.frames, None]
    assert read.hive_day(small.colony.id, date(2020, 1, 1)) is None
    before = read.hive_day(small.colony.id, SPRING - DAY)
    assert before is not None
    assert before.stack == ()
