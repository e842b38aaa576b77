"""What hangs on what: worked out from the foreign keys of the schema, for removals.

A reference that hangs takes its record along when the other goes; any other is left blank.
"""

from dataclasses import dataclass

from beeworkbook.colony.records import Record
from beeworkbook.store.rows import TABLES
from beeworkbook.store.statements import once


@dataclass(frozen=True)
class Tie:
    """One field by which the records of `cls` refer to records of another class."""

    cls: type[Record]
    field: str
    hangs: bool


@once
def ties_to(cls: type[Record]) -> tuple[Tie, ...]:
    """Every reference to records of this class, those left blank first.

    So that a copy is let go of before what it was copied from is removed.
    """
    found = [
        Tie(other, column.name, bool(column.info.get("hangs")))
        for other, table in TABLES.items()
        for column in table.columns
        if any(key.column.table is TABLES[cls] for key in column.foreign_keys)
    ]
    return tuple(sorted(found, key=lambda tie: tie.hangs))
