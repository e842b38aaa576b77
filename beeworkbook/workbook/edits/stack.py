"""The stack of a hive through the years: which part stood on which, rewritten from a day on.

The stays of all parts are one line of days, on each of which the order may change. A change alters the
orders from its day on and the stays are written anew from them, so that none is ever empty.

A level says no more than that a part stood above those of a lower level. A stay keeps its level as long as
its part is not moved: a super put on under the roof does not give the roof a new stay.
"""

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from itertools import pairwise

from beeworkbook.colony.records import HiveId, PartId, PartStay, PartStayId
from beeworkbook.store.transaction import Transaction

Order = list[PartId]


@dataclass(eq=False)
class _Run:
    """A part that stood in the stack without being moved."""

    part_id: PartId
    since: date
    until: date | None = None
    level: int = 0


def stack_on(stays: tuple[PartStay, ...], day: date) -> Order:
    """The parts from the ground up on a day."""
    here = [stay for stay in stays if stay.since <= day and (stay.until is None or day < stay.until)]
    return [stay.part_id for stay in sorted(here, key=lambda stay: (stay.level, stay.id))]


def restack(
    tx: Transaction,
    hive_id: HiveId,
    day: date,
    change: Callable[[Order], Order],
    moved: PartId | None = None,
) -> None:
    """Write the stack anew from a day on; `change` gives the new order for the old one of each day.

    Where two parts change places, `moved` is the one that has a new stay from that day on.
    """
    stays = tx.find(PartStay, hive_id=hive_id)
    days = {day} | {stay.since for stay in stays} | {stay.until for stay in stays if stay.until}
    orders = [
        (each, change(stack_on(stays, each)) if each >= day else stack_on(stays, each))
        for each in sorted(days)
    ]
    hints: dict[date, set[PartId]] = defaultdict(set)
    for stay in stays:
        hints[stay.since].add(stay.part_id)
    if moved is not None:
        hints[day] = {moved}
    _write(tx, hive_id, stays, _runs(orders, hints))


def _runs(orders: list[tuple[date, Order]], hints: dict[date, set[PartId]]) -> list[_Run]:
    """How long each part stood without being moved, and above which others.

    hints: which parts were moved on a day, for where the orders alone leave a choice.
    """
    runs: list[_Run] = []
    above: dict[_Run, set[_Run]] = defaultdict(set)
    standing: dict[PartId, _Run] = {}
    for since, order in orders:
        stayed = _stayed([part_id for part_id in standing if part_id in order], order, hints[since])
        for part_id in [held for held in standing if held not in stayed]:
            standing.pop(part_id).until = since
        for part_id in order:
            if part_id not in stayed:
                standing[part_id] = _Run(part_id, since)
                runs.append(standing[part_id])
        standing = {part_id: standing[part_id] for part_id in order}
        for below, part_id in pairwise(order):
            above[standing[below]].add(standing[part_id])
    _number(runs, above)
    return runs


def _stayed(before: Order, after: Order, hints: set[PartId]) -> set[PartId]:
    """The parts that were not moved: all if they stand in the same order as before, else as many as can be.

    before holds none that is not in after. hints are those that were moved, if that explains it.
    """
    places = {part_id: place for place, part_id in enumerate(before)}
    both = [part_id for part_id in after if part_id in places]
    for held in (both, [part_id for part_id in both if part_id not in hints]):
        if held == sorted(held, key=places.__getitem__):
            return set(held)
    return _longest_rising(both, places)


def _longest_rising(moved: Order, places: dict[PartId, int]) -> set[PartId]:
    """The most parts whose old places rise."""
    ends: list[int] = []
    lengths = []
    for part_id in moved:
        at = bisect_left(ends, places[part_id])
        ends[at : at + 1] = [places[part_id]]
        lengths.append(at + 1)
    stayed: set[PartId] = set()
    wanted = len(ends)
    for part_id, length in zip(reversed(moved), reversed(lengths), strict=True):
        if length == wanted:
            stayed.add(part_id)
            wanted -= 1
    return stayed


def _number(runs: list[_Run], above: dict[_Run, set[_Run]]) -> None:
    """Give each the least level above all it ever stood upon.

    No two can stand above one another in turn: runs that follow each other round a ring would have a day
    in common, and on a day they stand in one order.
    """
    waits = dict.fromkeys(runs, 0)
    for others in above.values():
        for run in others:
            waits[run] += 1
    ready = [run for run in runs if not waits[run]]
    while ready:
        run = ready.pop()
        for other in above[run]:
            other.level = max(other.level, run.level + 1)
            waits[other] -= 1
            if not waits[other]:
                ready.append(other)


def _write(tx: Transaction, hive_id: HiveId, stays: tuple[PartStay, ...], runs: list[_Run]) -> None:
    """Stays that are there already are changed rather than made anew, so that ids last."""
    present: dict[PartId, list[PartStay]] = defaultdict(list)
    for stay in sorted(stays, key=lambda stay: (stay.since, stay.id)):
        present[stay.part_id].append(stay)
    wanted: dict[PartId, list[_Run]] = defaultdict(list)
    for run in runs:
        wanted[run.part_id].append(run)
    for part_id in {**present, **wanted}:
        mine, kept = present[part_id], wanted[part_id]
        for stay, run in zip(mine, kept, strict=False):
            after = replace(stay, level=run.level, since=run.since, until=run.until)
            if after != stay:
                tx.put(after)
        for stay in mine[len(kept) :]:
            tx.remove(PartStay, stay.id)
        for run in kept[len(mine) :]:
            tx.add(PartStay(PartStayId(0), part_id, hive_id, run.level, run.since, run.until))
