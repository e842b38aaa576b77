"""Record to row and row to record, side by side, by the fields of the record's own class.

A date is kept as ISO text, a moment as ISO text in UTC ending in Z, an enumeration as its value, yes
and no as 1 and 0. The converters of a class are worked out once.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import fields
from datetime import UTC, date, datetime, time
from enum import Enum
from operator import attrgetter
from types import UnionType
from typing import Any, Final, Generic, TypeVar, Union, get_args, get_origin, get_type_hints

from beeworkbook.colony.records import (
    Answer,
    Apiary,
    Colony,
    Due,
    Event,
    Feed,
    Frame,
    FrameStay,
    Hive,
    Housing,
    Mark,
    OwnFrame,
    Part,
    PartStay,
    Queen,
    Record,
    Round,
    Setting,
    Sheet,
    Side,
    Stand,
    Visit,
)

R = TypeVar("R", bound=Record)
Value = str | int | float | bytes | None
Convert = Callable[[Any], Any]

TABLE_NAMES: Final[Mapping[type[Any], str]] = {
    Setting: "setting",
    OwnFrame: "own_frame",
    Apiary: "apiary",
    Stand: "stand",
    Colony: "colony",
    Hive: "hive",
    Part: "part",
    Frame: "frame",
    Queen: "queen",
    Housing: "housing",
    PartStay: "part_stay",
    FrameStay: "frame_stay",
    Round: "round",
    Visit: "visit",
    Answer: "answer",
    Side: "side",
    Mark: "mark",
    Event: "event",
    Feed: "feed",
    Due: "due",
    Sheet: "sheet",
}
"""The table of each record class."""


def _moment_text(moment: datetime) -> str:
    if moment.tzinfo is None:
        raise ValueError("a moment is kept with its time zone")
    return moment.astimezone(UTC).isoformat().replace("+00:00", "Z")


def _converters(kind: Any) -> tuple[Convert | None, Convert | None]:
    """To the row and from the row, for the type of one field; None where the value goes as it is."""
    kind = _bare(kind)
    if isinstance(kind, type) and issubclass(kind, Enum):
        return attrgetter("value"), {member.value: member for member in kind}.__getitem__
    if kind is datetime:
        return _moment_text, datetime.fromisoformat
    if kind is date:
        return date.isoformat, date.fromisoformat
    if kind is time:
        return time.isoformat, time.fromisoformat
    if kind is bool:
        return int, bool
    return (float, None) if kind is float else (None, None)


def _bare(kind: Any) -> Any:
    """The type behind an id's own type and behind "or None"."""
    if get_origin(kind) in {Union, UnionType}:
        kind = next(part for part in get_args(kind) if part is not type(None))
    return getattr(kind, "__supertype__", kind)


class RowForm(Generic[R]):
    """How the records of one class lie in a row: values in the order of the record's fields.

    `blob` names the one field that is kept in a table of its own, and so comes last in a row.
    """

    def __init__(self, cls: type[R]) -> None:
        hints = get_type_hints(cls)
        self.cls = cls
        self.table = TABLE_NAMES[cls]
        self.blob = "cells" if cls is Side else None
        self.names: tuple[str, ...] = tuple(field.name for field in fields(cls))
        self.columns: tuple[str, ...] = tuple(name for name in self.names if name != self.blob)
        self.values_of: Callable[[R], tuple[Any, ...]] = attrgetter(*self.columns)
        pairs = {name: _converters(hints[name]) for name in self.names}
        self._into = [(at, pairs[name][0]) for at, name in enumerate(self.columns) if pairs[name][0]]
        self._outof = [(at, pairs[name][1]) for at, name in enumerate(self.names) if pairs[name][1]]
        self._converters = {name: pair[0] for name, pair in pairs.items()}

    def row(self, record: R) -> tuple[Value, ...]:
        """The values of the table's columns, in their order; what is kept elsewhere is left out."""
        values = list(self.values_of(record))
        for at, convert in self._into:
            if values[at] is not None and convert is not None:
                values[at] = convert(values[at])
        return tuple(values)

    def record(self, row: Sequence[Any]) -> R:
        """The record of a row that has a value for every field, in the order of the fields.

        Errors: ValueError or KeyError if a value is not one that is known.
        """
        values = list(row)
        for at, convert in self._outof:
            if values[at] is not None and convert is not None:
                values[at] = convert(values[at])
        return self.cls(*values)

    def value(self, name: str, value: object) -> Value:
        """One value as it lies in a row, for asking by it.

        Errors: KeyError if there is no such field.
        """
        convert = self._converters[name]
        held: Any = value
        converted: Value = held if held is None or convert is None else convert(held)
        return converted


_FORMS: Final[dict[type[Any], RowForm[Any]]] = {}


def form_of(cls: type[R]) -> RowForm[R]:
    """The row form of a record class, worked out once."""
    form: RowForm[R] | None = _FORMS.get(cls)
    if form is None:
        form = _FORMS[cls] = RowForm(cls)
    return form
