"""The stack of a hive through the years: which part stood on which, rewritten from a day on.

The stays of all parts are one line of days, on each of which the order changed. A change alters the
orders from its day on and the stays are written anew from them, so that none is ever empty and
levels stay dense.
"""

from collections import defaultdict
from collections.abc import Callable
from dataclasses import replace
from datetime import date

from beeworkbook.colony.records import HiveId, PartId, PartStay, PartStayId
from beeworkbook.store.transaction import Transaction

Order = list[PartId]
_Run = tuple[int, date, date | None]


def stack_on(stays: tuple[PartStay, ...], day: date) -> Order:
    """The parts from the ground up on a day."""
    here = [stay for stay in stays if stay.since <= day and (stay.until is None or day < stay.until)]
    return [stay.part_id for stay in sorted(here, key=lambda stay: (stay.level, stay.id))]


def restack(tx: Transaction, hive_id: HiveId, day: date, change: Callable[[Order], Order]) -> None:
    """Write the stack anew from a day on; `change` gives the new order for the old one of each day."""
    stays = tx.find(PartStay, hive_id=hive_id)
    days = {day} | {stay.since for stay in stays} | {stay.until for stay in stays if stay.until}
    orders = [
        (each, change(stack_on(stays, each)) if each >= day else stack_on(stays, each))
        for each in sorted(days)
    ]
    _write(tx, hive_id, stays, _runs(orders))


def _runs(orders: list[tuple[date, Order]]) -> dict[PartId, list[_Run]]:
    """How long each part stood on each level, stays that join made one."""
    runs: dict[PartId, list[_Run]] = defaultdict(list)
    for number, (since, order) in enumerate(orders):
        until = orders[number + 1][0] if number + 1 < len(orders) else None
        for level, part_id in enumerate(order):
            mine = runs[part_id]
            if mine and mine[-1][0] == level and mine[-1][2] == since:
                mine[-1] = (level, mine[-1][1], until)
            else:
                mine.append((level, since, until))
    return runs


def _write(
    tx: Transaction, hive_id: HiveId, stays: tuple[PartStay, ...], runs: dict[PartId, list[_Run]]
) -> None:
    """Stays that are there already are changed rather than made anew, so that ids last."""
    present: dict[PartId, list[PartStay]] = defaultdict(list)
    for stay in sorted(stays, key=lambda stay: (stay.since, stay.id)):
        present[stay.part_id].append(stay)
    for part_id in {**present, **runs}:
        mine, wanted = present[part_id], runs.get(part_id, [])
        for stay, (level, since, until) in zip(mine, wanted, strict=False):
            after = replace(stay, level=level, since=since, until=until)
            if after != stay:
                tx.put(after)
        for stay in mine[len(wanted) :]:
            tx.remove(PartStay, stay.id)
        for level, since, until in wanted[len(mine) :]:
            tx.add(PartStay(PartStayId(0), part_id, hive_id, level, since, until))
