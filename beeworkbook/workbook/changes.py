"""What a commit changed, in a form a face can question: which records, which visits, which cells."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, fields
from types import MappingProxyType
from typing import Any, Final

import numpy as np

from beeworkbook.colony.records import RECORD_TYPES, Colony, ColonyId, Record, Side, SideId, Visit, VisitId
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.lattice import CellIndices, Cells, read_only
from beeworkbook.store.transaction import Step

_COLONY_FIELDS: Final = ("colony_id", "other_colony_id")
_VISIT_FIELDS: Final = ("visit_id", "left_visit_id", "done_visit_id")
_NOBODY: Final[Any] = None


def _pointing(cls: type[Any], own: type[Record], wanted: tuple[str, ...]) -> tuple[str, ...]:
    """Which of these fields a class has, and its id where it is the record that is pointed to."""
    names = {each.name for each in fields(cls)}
    bears = ("id",) if cls is own else ()
    return (*bears, *(name for name in wanted if name in names))


_POINTERS: Final[dict[type[Any], tuple[tuple[str, ...], tuple[str, ...]]]] = {
    cls: (_pointing(cls, Visit, _VISIT_FIELDS), _pointing(cls, Colony, _COLONY_FIELDS))
    for cls in RECORD_TYPES
}
"""By class, the fields that say which visits and which colonies a record is or names."""


@dataclass(frozen=True)
class Changes:
    """What one commit changed.

    `steps` are the records by type and id. `visits` and `colonies` are all that are touched, also
    through what hangs on them. `cells` are the changed cells of each side that was drawn on.
    `everything` says that the whole workbook may be another one.
    """

    steps: frozenset[tuple[type[Record], int | str]] = frozenset()
    visits: frozenset[VisitId] = frozenset()
    colonies: frozenset[ColonyId] = frozenset()
    cells: Mapping[SideId, CellIndices] = field(default_factory=lambda: MappingProxyType({}))
    source: object = None
    everything: bool = False

    def touches(self, cls: type[Record]) -> bool:
        """Whether a record of this type was added, changed or removed."""
        return self.everything or any(touched is cls for touched, _ in self.steps)


def changes_of(
    journal: Iterable[Step],
    visit_of: Callable[[VisitId], Visit | None],
    cells_of: Callable[[Side], int],
    source: object = None,
    known: Mapping[SideId, CellIndices] | None = None,
) -> Changes:
    """The report of a journal.

    `visit_of` looks a visit up that is not in the journal itself, `cells_of` says how many cells a
    side has, `known` are changed cells that need no looking for.
    """
    steps = tuple(journal)
    records = [record for step in steps for record in (step.before, step.after) if record is not None]
    visits: set[VisitId] = set()
    colonies: set[ColonyId] = set()
    for record in records:
        to_visits, to_colonies = _POINTERS[type(record)]
        for name in to_visits:
            visits.add(getattr(record, name))
        for name in to_colonies:
            colonies.add(getattr(record, name))
    visits.discard(_NOBODY)
    colonies.discard(_NOBODY)
    for visit_id in visits.difference(step.id for step in steps if step.cls is Visit):
        visit = visit_of(visit_id)
        if visit is not None:
            colonies.add(visit.colony_id)
    return Changes(
        steps=frozenset([(step.cls, step.id) for step in steps]),
        visits=frozenset(visits),
        colonies=frozenset(colonies),
        cells=MappingProxyType(_changed_cells(steps, cells_of, known or {})),
        source=source,
    )


def _changed_cells(
    steps: Iterable[Step], cells_of: Callable[[Side], int], known: Mapping[SideId, CellIndices]
) -> dict[SideId, CellIndices]:
    first: dict[SideId, Side | None] = {}
    last: dict[SideId, Side | None] = {}
    for step in steps:
        if step.cls is Side:
            side_id = SideId(int(step.id))
            first.setdefault(side_id, step.before if isinstance(step.before, Side) else None)
            last[side_id] = step.after if isinstance(step.after, Side) else None
    return {
        side_id: known[side_id] if side_id in known else _difference(first[side_id], last[side_id], cells_of)
        for side_id in last
    }


def _difference(before: Side | None, after: Side | None, cells_of: Callable[[Side], int]) -> CellIndices:
    """The cells that differ; a side that was not there held nothing recorded."""
    one = before or after
    if one is None or (before and after and before.cells == after.cells):
        return read_only(np.empty(0, np.intp))
    if before and after and before.frame_type != after.frame_type:
        return read_only(np.arange(max(cells_of(before), cells_of(after))))
    count = cells_of(one)
    was, now = (_unpacked(side, count) for side in (before, after))
    return read_only(np.flatnonzero(was != now))


def _unpacked(side: Side | None, count: int) -> Cells:
    return np.zeros(count, np.uint8) if side is None else unpack(side.cells, cells=count)
