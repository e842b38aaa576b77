"""How far a look went: shared by the edits of a visit. What that does to what was due is in settling.py."""

from dataclasses import replace
from typing import Final

from beeworkbook.colony.records import Level, Visit
from beeworkbook.store.transaction import Transaction

_ORDER: Final = (
    Level.PASSED_OVER,
    Level.NOT_OPENED,
    Level.ONE_LINE,
    Level.BY_COMB,
    Level.BY_SIDE,
    Level.PAINTED,
)


def looked_at_least(level: Level, least: Level) -> bool:
    """Whether a look went at least so far."""
    return _ORDER.index(level) >= _ORDER.index(least)


def raise_level(tx: Transaction, visit: Visit, least: Level) -> Visit:
    """The visit, looked at least so far; a level set higher stays."""
    if looked_at_least(visit.level, least):
        return visit
    return set_level(tx, visit, least)


def set_level(tx: Transaction, visit: Visit, level: Level) -> Visit:
    """The visit at this level."""
    if visit.level is not level:
        visit = replace(visit, level=level)
        tx.put(visit)
    return visit
