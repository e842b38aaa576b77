from datetime import date, timedelta
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import HiveId, PartId, PartStay, PartStayId, Record
from beeworkbook.workbook.edits.stack import restack, stack_on

DAY = date(2026, 5, 1)
HIVE = HiveId(1)


class _Stays:
    """A transaction that only knows stays of parts."""

    def __init__(self) -> None:
        self.kept: dict[int, PartStay] = {}

    def find(self, _cls: type[Record], **_equals: object) -> tuple[PartStay, ...]:
        return tuple(self.kept.values())

    def add(self, stay: PartStay) -> PartStay:
        from dataclasses import replace

        numbered = replace(stay, id=PartStayId(max(self.kept, default=0) + 1))
        self.kept[numbered.id] = numbered
        return numbered

    def put(self, stay: PartStay) -> None:
        self.kept[stay.id] = stay

    def remove(self, _cls: type[Record], its_id: int) -> None:
        del self.kept[its_id]


CHANGES = st.lists(st.tuples(st.integers(0, 20), st.integers(1, 6), st.booleans()), max_size=10)


@given(CHANGES)
def test_the_stack_of_every_day_is_what_the_changes_till_then_made_of_it(
    changes: list[tuple[int, int, bool]],
) -> None:
    stays: Any = _Stays()
    expected: dict[int, list[int]] = {offset: [] for offset in range(30)}

    def change(part: int, order: list[PartId], *, on: bool) -> list[PartId]:
        others = [each for each in order if each != part]
        return [*others, PartId(part)] if on else others

    for since, part, on in changes:
        restack(
            stays,
            HIVE,
            DAY + timedelta(days=since),
            lambda order, p=part, o=on: change(p, order, on=o),  # type: ignore[misc]
        )
        for offset in range(since, 30):
            others = [each for each in expected[offset] if each != part]
            expected[offset] = [*others, part] if on else others
    found = tuple(stays.kept.values())
    for offset, order in expected.items():
        assert stack_on(found, DAY + timedelta(days=offset)) == order
    assert all(stay.until is None or stay.since < stay.until for stay in found)
    for offset, order in expected.items():
        day = DAY + timedelta(days=offset)
        here = [stay for stay in found if stay.since <= day and (stay.until is None or day < stay.until)]
        assert sorted(stay.level for stay in here) == list(range(len(order)))


def test_a_change_that_is_none_leaves_the_stays_alone() -> None:
    stays: Any = _Stays()
    restack(stays, HIVE, DAY, lambda order: [*order, PartId(1)])
    before = dict(stays.kept)
    restack(stays, HIVE, DAY + timedelta(days=3), list)
    assert stays.kept == before
