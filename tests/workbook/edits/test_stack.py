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
        assert len({stay.level for stay in here}) == len(order)


def test_a_change_that_is_none_leaves_the_stays_alone() -> None:
    stays: Any = _Stays()
    restack(stays, HIVE, DAY, lambda order: [*order, PartId(1)])
    before = dict(stays.kept)
    restack(stays, HIVE, DAY + timedelta(days=3), list)
    assert stays.kept == before


def put_on(stays: Any, since: int, part: int, at: int) -> None:
    def insert(order: list[PartId]) -> list[PartId]:
        others = [each for each in order if each != part]
        return [*others[:at], PartId(part), *others[at:]]

    restack(stays, HIVE, DAY + timedelta(days=since), insert, moved=PartId(part))


def test_a_part_that_is_not_moved_keeps_its_stay_when_others_come_and_go_under_it() -> None:
    """Floor 1, box 2, roof 3; a super 4 comes between box and roof and goes again."""
    stays: Any = _Stays()
    for part in (1, 2, 3):
        put_on(stays, 0, part, part - 1)
    put_on(stays, 10, 4, 2)
    assert stack_on(tuple(stays.kept.values()), DAY + timedelta(days=12)) == [1, 2, 4, 3]
    restack(stays, HIVE, DAY + timedelta(days=20), lambda order: [each for each in order if each != 4])
    by_part = {stay.part_id: stay for stay in stays.kept.values()}
    assert len(stays.kept) == len(by_part) == 4
    assert {by_part[PartId(part)].since for part in (1, 2, 3)} == {DAY}
    assert (by_part[PartId(4)].since, by_part[PartId(4)].until) == (
        DAY + timedelta(days=10),
        DAY + timedelta(days=20),
    )


def test_a_part_that_is_moved_has_a_new_stay_and_the_others_have_not() -> None:
    stays: Any = _Stays()
    for part in (1, 2, 3, 4):
        put_on(stays, 0, part, part - 1)
    put_on(stays, 10, 2, 2)
    found = sorted(stays.kept.values(), key=lambda stay: (stay.part_id, stay.since))
    assert [(stay.part_id, (stay.since - DAY).days) for stay in found] == [
        (1, 0), (2, 0), (2, 10), (3, 0), (4, 0),
    ]  # fmt: skip
    assert stack_on(tuple(found), DAY + timedelta(days=10)) == [1, 3, 2, 4]


def test_stays_that_were_cut_for_nothing_are_one_again() -> None:
    """As an earlier program wrote them: the roof had a new stay when a super came under it."""
    stays: Any = _Stays()
    cut = DAY + timedelta(days=10)
    for part, level, since, until in (
        (1, 0, DAY, None),
        (3, 1, DAY, cut),
        (3, 2, cut, None),
        (2, 1, cut, None),
    ):
        stays.add(PartStay(PartStayId(0), PartId(part), HIVE, level, since, until))
    put_on(stays, 20, 4, 2)
    assert [(stay.since, stay.until) for stay in stays.kept.values() if stay.part_id == 3] == [(DAY, None)]
    assert stack_on(tuple(stays.kept.values()), cut) == [1, 2, 3]
    assert stack_on(tuple(stays.kept.values()), DAY + timedelta(days=20)) == [1, 2, 4, 3]
