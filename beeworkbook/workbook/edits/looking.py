"""How far a look went, and what that means for what was due: shared by the edits of a visit."""

from dataclasses import replace
from typing import Final

from beeworkbook.colony.records import Due, DueKind, DueState, Level, Visit
from beeworkbook.store.transaction import Transaction
from beeworkbook.workbook.found import held

_ORDER: Final = (
    Level.PASSED_OVER,
    Level.NOT_OPENED,
    Level.ONE_LINE,
    Level.BY_COMB,
    Level.BY_SIDE,
    Level.PAINTED,
)
_LOOKS: Final = frozenset({DueKind.LOOK, DueKind.FIRST_LOOK})


def looked_at_least(level: Level, least: Level) -> bool:
    """Whether a look went at least so far."""
    return _ORDER.index(level) >= _ORDER.index(least)


def raise_level(tx: Transaction, visit: Visit, least: Level) -> Visit:
    """The visit, looked at least so far; a level set higher stays."""
    if looked_at_least(visit.level, least):
        return visit
    return set_level(tx, visit, least)


def set_level(tx: Transaction, visit: Visit, level: Level) -> Visit:
    """The visit at this level, and the looks that were due settled by it or open again."""
    if visit.level is not level:
        visit = replace(visit, level=level)
        tx.put(visit)
    settle_looks(tx, visit)
    return visit


def settle_looks(tx: Transaction, visit: Visit) -> None:
    """A hive that was opened has had the looks due till that day; one that was not has them still due."""
    opened = looked_at_least(visit.level, Level.ONE_LINE)
    for due in tx.find(Due, colony_id=visit.colony_id):
        if due.kind not in _LOOKS or due.visit_id == visit.id:
            continue
        if opened and due.state is DueState.OPEN and due.day <= visit.day:
            tx.put(replace(due, state=DueState.DONE, done_visit_id=visit.id))
        elif not opened and due.done_visit_id == visit.id:
            tx.put(replace(due, state=DueState.OPEN, done_visit_id=None))


def supersede_looks(tx: Transaction, visit: Visit) -> None:
    """A new next day takes the place of the looks that this and earlier visits left open."""
    for due in tx.find(Due, colony_id=visit.colony_id):
        if due.kind not in _LOOKS or due.state is not DueState.OPEN or due.visit_id == visit.id:
            continue
        asked_by = None if due.visit_id is None else held(tx, Visit, due.visit_id)
        if asked_by is None or asked_by.day <= visit.day:
            tx.put(replace(due, state=DueState.DONE, done_visit_id=visit.id))


def bring_back_looks(tx: Transaction, visit: Visit) -> None:
    """Without a next day the looks that were to come later than this visit are due again."""
    for due in tx.find(Due, colony_id=visit.colony_id):
        if due.kind in _LOOKS and due.done_visit_id == visit.id and due.day > visit.day:
            tx.put(replace(due, state=DueState.OPEN, done_visit_id=None))
