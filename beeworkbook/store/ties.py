"""What hangs on what, for removals: worked out from the foreign keys of the schema.

A reference that hangs takes its record along when the other goes; any other is left blank.
"""

from dataclasses import dataclass
from functools import cache
from typing import Any, Final

from beeworkbook.colony.records import Record
from beeworkbook.store.rows import TABLE_NAMES
from beeworkbook.store.texts import ties

_CLASSES: Final[dict[str, type[Record]]] = {name: cls for cls, name in TABLE_NAMES.items()}


@dataclass(frozen=True)
class Tie:
    """One field by which the records of `cls` refer to records of another class."""

    cls: type[Record]
    field: str
    hangs: bool


def ties_to(cls: type[Any]) -> tuple[Tie, ...]:
    """Every reference to records of this class, those left blank first."""
    return _ties_to(TABLE_NAMES[cls])


@cache
def _ties_to(table: str) -> tuple[Tie, ...]:
    return tuple(Tie(_CLASSES[other], field, hangs) for other, field, hangs in ties(table))
