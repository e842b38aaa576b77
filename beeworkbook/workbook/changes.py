"""What a commit changed, in a form a face can question: which records, which visits, which cells."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Final

import numpy as np

from beeworkbook.colony.records import Colony, ColonyId, Record, Side, SideId, Visit, VisitId
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.lattice import CellIndices, Cells, read_only
from beeworkbook.store.transaction import Step

_COLONY_FIELDS: Final = ("colony_id", "other_colony_id")
_VISIT_FIELDS: Final = ("visit_id", "left_visit_id", "done_visit_id")


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
    visits = frozenset(_named(records, _VISIT_FIELDS, Visit))
    told = {record.id: record for record in records if isinstance(record, Visit)}
    looked_up = (told.get(VisitId(each)) or visit_of(VisitId(each)) for each in visits)
    colonies = {visit.colony_id for visit in looked_up if visit is not None}
    return Changes(
        steps=frozenset((step.cls, step.id) for step in steps),
        visits=frozenset(VisitId(visit_id) for visit_id in visits),
        colonies=frozenset(colonies | {ColonyId(found) for found in _named(records, _COLONY_FIELDS, Colony)}),
        cells=MappingProxyType(_changed_cells(steps, cells_of, known or {})),
        source=source,
    )


def _named(records: Iterable[Record], fields: tuple[str, ...], own: type[Record]) -> set[int]:
    """The ids these records bear or point to."""
    found: set[int] = set()
    for record in records:
        if isinstance(record, own):
            found.add(int(record.id))
        found.update(value for name in fields if (value := getattr(record, name, None)) is not None)
    return found


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
