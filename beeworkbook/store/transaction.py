"""One change to the workbook: all of it is on the disk when it ends, or none of it ever was.

Its journal of records before and after is all that undo needs. A side is written together with its
drawing and its totals. Only records go in and out.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime
from types import TracebackType
from typing import Any, Final, Self

from beeworkbook.colony.records import (
    Frame,
    OwnFrame,
    Part,
    Record,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.comb.contents import Origin
from beeworkbook.comb.frames import FrameType
from beeworkbook.store.errors import FrameInUseError, NoSuchRecordError
from beeworkbook.store.link import Link
from beeworkbook.store.lookup import any_with, find, find_one, frame_type
from beeworkbook.store.rows import TABLE_NAMES, R, RowForm, form_of
from beeworkbook.store.tallies import tally_row
from beeworkbook.store.texts import text
from beeworkbook.store.ties import ties_to

_COUNTED_BY: Final = ("cells", "drone_cells", "frame_type")


@dataclass(frozen=True, slots=True)
class Step:
    """One record that changed. before is None where it came, after is None where it went."""

    cls: type[Record]
    id: Any
    before: Record | None
    after: Record | None


class Transaction:
    """A change in the making. Used with `with`: it is kept at the end, or nothing is if anything fails.

    `stamp` is the moment to note as saved in every visit that is touched; None leaves them as they are,
    as undo must.
    """

    def __init__(
        self, link: Link, *, stamp: datetime | None = None, before_first: Callable[[], None] | None = None
    ) -> None:
        self.journal: list[Step] = []
        self._link = link
        self._stamp = stamp
        self._before_first = before_first
        self._known: dict[tuple[type[Any], Any], Any] = {}
        self._frame_types: dict[str, FrameType] = {}

    def __enter__(self) -> Self:
        if self._before_first:
            self._before_first()
        self._link.begin()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        try:
            if kind is None:
                self._stamp_visits()
                self._link.commit()
        finally:
            self._link.roll_back()

    def get(self, cls: type[R], its_id: Any) -> R:
        """The record with this id. Errors: NoSuchRecordError if there is none."""
        found = self.find_one(cls, its_id)
        if found is None:
            raise NoSuchRecordError(cls, its_id)
        return found

    def find_one(self, cls: type[R], its_id: Any) -> R | None:
        """The record with this id, or None."""
        key = (cls, its_id)
        if key not in self._known:
            self._known[key] = find_one(self._link, cls, its_id)
        found: R | None = self._known[key]
        return found

    def find(self, cls: type[R], **equals: object) -> tuple[R, ...]:
        """The records whose fields have these values, by id; None asks for a blank.

        Errors: KeyError if there is no such field.
        """
        if len(equals) == 1 and "id" in equals:
            found = self.find_one(cls, equals["id"])
            return () if found is None else (found,)
        records = find(self._link, cls, equals)
        for record in records:
            self._known[cls, record.id] = record
        return records

    def frame_type(self, its_id: str) -> FrameType:
        """A shipped frame type or one of the keeper's own. Errors: NoSuchRecordError if it is neither."""
        if its_id not in self._frame_types:
            self._frame_types[its_id] = frame_type(self._link, its_id)
        return self._frame_types[its_id]

    def add(self, record: R) -> R:
        """Keep a new record and give it back; an id of 0 asks for a new one, which was never given before.

        Errors: BrokenRuleError if the id is taken, a reference leads nowhere or a question has its answer.
        """
        numbered = _numbered(record, self._insert(record))
        self._write_rest(None, numbered)
        self._note(type(record), numbered.id, None, numbered)
        return numbered

    def put(self, record: Record) -> None:
        """Keep this in place of the record with its id, or anew where that was removed.

        A record that is already as wanted leaves no step.
        Errors: BrokenRuleError if a reference leads nowhere or a question is answered twice.
        """
        cls = type(record)
        before = self.find_one(cls, record.id)
        if before is None:
            self.add(record)
            return
        if before == record:
            return
        self._guard(before, record)
        form = form_of(cls)
        if form.values_of(record) != form.values_of(before):  # else only a drawing changed
            self._link.run(text(f"update {form.table}"), (*form.row(record)[1:], record.id))
        self._write_rest(before, record)
        self._note(cls, record.id, before, record)

    def remove(self, cls: type[Record], its_id: Any) -> None:
        """Take a record away, and before it all that hangs on it; other references to it are left blank.

        Each is a step of the journal, so that putting them back in reverse restores every table.
        Errors: NoSuchRecordError if there is none; FrameInUseError for a frame type that is used.
        """
        record = self.get(cls, its_id)
        self._guard(record, None)
        for tie in ties_to(cls):
            for child in self.find(tie.cls, **{tie.field: its_id}):
                if not tie.hangs:
                    self.put(_without(child, tie.field))
                elif self.find_one(tie.cls, child.id) is not None:
                    self.remove(tie.cls, child.id)
        self._write_rest(record, None)
        self._link.run(text(f"remove {TABLE_NAMES[cls]}"), (its_id,))
        self._note(cls, its_id, record, None)

    def _insert(self, record: Record) -> int:
        form: RowForm[Any] = form_of(type(record))
        if isinstance(record.id, str) and not record.id:
            raise ValueError("a record with a name for an id needs one")
        row = form.row(record)
        if record.id:
            return self._link.run(text(f"insert {form.table}"), row)
        return self._link.run(text(f"insert new {form.table}"), row[1:])

    def _note(self, cls: type[Any], its_id: Any, before: Record | None, after: Record | None) -> None:
        self._known[cls, its_id] = after
        if cls is OwnFrame:
            self._frame_types.clear()
        self.journal.append(Step(cls, its_id, before, after))

    def _write_rest(self, before: Record | None, after: Record | None) -> None:
        """What a side keeps in tables of their own: its drawing and its totals."""
        was = before if isinstance(before, Side) else None
        side = after if isinstance(after, Side) else None
        if was is None and side is None:
            return
        self._write_tally(was, side)
        if side is None:
            self._link.run(text("remove comb"), (was.id if was else 0,))
        elif was is None:
            self._link.run(text("insert comb"), (side.id, side.cells))
        elif was.cells != side.cells:
            self._link.run(text("update comb"), (side.cells, side.id))

    def _write_tally(self, before: Side | None, after: Side | None) -> None:
        was = before if before and before.origin is not Origin.ASSUMED else None
        side = after if after and after.origin is not Origin.ASSUMED else None
        if side is None:
            if was is not None:
                self._link.run(text("remove tally"), (was.id,))
            return
        if was is not None and all(getattr(was, name) == getattr(side, name) for name in _COUNTED_BY):
            return
        row = tally_row(self.frame_type(side.frame_type), side)
        if was is None:
            self._link.run(text("insert tally"), (side.id, *row))
        else:
            self._link.run(text("update tally"), (*row, side.id))

    def _guard(self, before: Record, after: Record | None) -> None:
        """A frame type that is drawn on keeps its sizes, and one that is used stays."""
        if not isinstance(before, OwnFrame):
            return
        renamed = isinstance(after, OwnFrame) and replace(after, name=before.name) == before
        users: tuple[type[Record], ...] = (Side, Frame, Part) if after is None else () if renamed else (Side,)
        if any(any_with(self._link, cls, "frame_type", before.id) for cls in users):
            raise FrameInUseError(before.name)

    def _stamp_visits(self) -> None:
        if self._stamp is None:
            return
        touched: dict[VisitId, None] = {}
        for step in self.journal:
            for record in (step.before, step.after):
                its_id = record.id if isinstance(record, Visit) else getattr(record, "visit_id", None)
                if its_id is not None:
                    touched[its_id] = None
        for visit_id in touched:
            visit = self.find_one(Visit, visit_id)
            if visit is not None:
                self.put(replace(visit, saved_utc=self._stamp))


def _numbered(record: R, its_id: int) -> R:
    if record.id:
        return record
    changed: Any = record
    return replace(changed, id=its_id)  # type: ignore[no-any-return]


def _without(record: Record, field: str) -> Record:
    changed: Any = record
    return replace(changed, **{field: None})  # type: ignore[no-any-return]
