"""The exchange form of every record: which fields, of which kind, and how each is written and checked.

Worked out from the record classes, as is the JSON Schema that ships in resources/schema. A field
that holds what it holds by default is left out, so that blank is absent and never nought. How a
whole document is written and read is in exchange.py and exchange_read.py.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import MISSING, dataclass, fields
from datetime import UTC, date, datetime, time
from enum import StrEnum
from types import NoneType, UnionType
from typing import Any, Final, Union, get_args, get_origin, get_type_hints

from beeworkbook.colony.records import RECORD_TYPES, Record
from beeworkbook.words import say

FORMAT: Final = "beeworkbook-exchange"
VERSION: Final = 1
MOST_CHARACTERS: Final = 1_000_000
"""No text of a workbook is longer; the drawing of the largest side takes a fifth of it."""
MOST_WHOLE: Final = 2**53
MOST_NUMBER: Final = 1e12
FIRST_YEAR: Final = 1000
LAST_YEAR: Final = 8999
"""Days far beyond any keeper, yet with room before and after for whoever reckons with them."""

TABLE_NAMES: Final[dict[type[Record], str]] = {
    cls: "".join(f"_{letter.lower()}" if letter.isupper() else letter for letter in cls.__name__).lstrip("_")
    for cls in RECORD_TYPES
}
"""The name of each table of the document, in the order in which they stand there."""


class FieldError(ValueError):
    """A value that a field cannot hold, and why."""


@dataclass(frozen=True)
class FieldForm:
    """One field of a record in the document."""

    name: str
    kind: type
    may_be_blank: bool
    default: object
    needed: bool

    def read(self, value: object) -> object:
        """The value of the record's field.

        Errors: FieldError if it is of another kind or beyond what such a field can hold.
        """
        if value is None:
            if self.may_be_blank:
                return None
            raise FieldError(say("it cannot be blank"))
        return _READERS[_reader_of(self.kind)](value, self.kind)

    def write(self, value: object) -> object:
        """The value as JSON holds it."""
        if isinstance(value, StrEnum):
            return value.value
        if isinstance(value, datetime):
            return value.astimezone(UTC).isoformat().replace("+00:00", "Z")
        if isinstance(value, date | time):
            return value.isoformat()
        return float(value) if self.kind is float and isinstance(value, int | float) else value


def form_of(cls: type) -> Mapping[str, FieldForm]:
    """The fields of a record class by name, in their order."""
    return _FORMS[cls]


def _field_form(name: str, hint: Any, default: object) -> FieldForm:
    parts = get_args(hint) if get_origin(hint) in {Union, UnionType} else (hint,)
    kind = next(part for part in parts if part is not NoneType)
    # The packed cells of a side are written as text: its rows in the notation of comb/notation.py.
    bare = getattr(kind, "__supertype__", kind)
    return FieldForm(
        name,
        str if bare is bytes else bare,
        NoneType in parts,
        None if default is MISSING else default,
        default is MISSING,
    )


def _forms_of(cls: type[Record]) -> dict[str, FieldForm]:
    hints = get_type_hints(cls)
    return {field.name: _field_form(field.name, hints[field.name], field.default) for field in fields(cls)}


_FORMS: Final[dict[type, dict[str, FieldForm]]] = {cls: _forms_of(cls) for cls in RECORD_TYPES}


def plain(record: Record) -> dict[str, object]:
    """A record as JSON holds it, in the order of its fields, without what is as by default.

    The cells of a side are left to whoever knows its frame.
    """
    values = ((form, getattr(record, name)) for name, form in form_of(type(record)).items())
    return {form.name: form.write(value) for form, value in values if form.needed or value != form.default}


def _reader_of(kind: type) -> type:
    return StrEnum if issubclass(kind, StrEnum) else kind


def _read_text(value: object, _kind: type) -> str:
    if not isinstance(value, str):
        raise FieldError(say("it has to be a text"))
    if len(value) > MOST_CHARACTERS:
        raise FieldError(say("it is longer than {most} characters", most=MOST_CHARACTERS))
    try:
        value.encode()
    except UnicodeEncodeError as error:
        raise FieldError(say("it holds half of a character")) from error
    return value


def _read_whole(value: object, _kind: type) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise FieldError(say("it has to be a whole number"))
    if abs(value) > MOST_WHOLE:
        raise FieldError(say("this number is too large"))
    return value


def _read_number(value: object, _kind: type) -> float:
    if isinstance(value, bool) or not hasattr(value, "__float__"):
        raise FieldError(say("it has to be a number"))
    try:
        number = float(value)
    except (OverflowError, ValueError) as error:
        raise FieldError(say("this number is too large")) from error
    if not math.isfinite(number) or abs(number) > MOST_NUMBER:
        raise FieldError(say("this number is too large"))
    return number


def _read_truth(value: object, _kind: type) -> bool:
    if not isinstance(value, bool):
        raise FieldError(say("it has to be true or false"))
    return value


def _read_choice(value: object, kind: type[StrEnum]) -> object:
    if not isinstance(value, str) or value not in {choice.value for choice in kind}:
        choices = ", ".join(choice.value for choice in kind)
        raise FieldError(say("it has to be one of {choices}", choices=choices))
    return kind(value)


def _dated(parse: Callable[[str], date | time], example: str) -> Callable[[object, type], object]:
    def read(value: object, _kind: type) -> object:
        try:
            found = parse(value) if isinstance(value, str) else None
        except ValueError:
            found = None
        # One way of writing each, so that what is written again is the same.
        if found is None or _written(found) != value:
            raise FieldError(say("it has to be written like {example}", example=example))
        return found

    return read


_any_day: Final = _dated(date.fromisoformat, "2026-05-16")


def _read_day(value: object, kind: type) -> object:
    day = _any_day(value, kind)
    if isinstance(day, date) and not FIRST_YEAR <= day.year <= LAST_YEAR:
        words = say("its year has to be between {first} and {last}", first=FIRST_YEAR, last=LAST_YEAR)
        raise FieldError(words)
    return day


def _written(moment: date | time) -> str:
    if isinstance(moment, datetime):
        return "" if moment.tzinfo is None else moment.astimezone(UTC).isoformat().replace("+00:00", "Z")
    return "" if isinstance(moment, time) and moment.tzinfo else moment.isoformat()


_READERS: Final[dict[type, Callable[[Any, Any], object]]] = {
    str: _read_text,
    int: _read_whole,
    float: _read_number,
    bool: _read_truth,
    StrEnum: _read_choice,
    date: _read_day,
    time: _dated(time.fromisoformat, "14:30:00"),
    datetime: _dated(datetime.fromisoformat, "2026-05-16T14:30:00Z"),
}

_JSON_KINDS: Final[dict[type, dict[str, object]]] = {
    str: {"type": "string", "maxLength": MOST_CHARACTERS},
    int: {"type": "integer", "minimum": -MOST_WHOLE, "maximum": MOST_WHOLE},
    float: {"type": "number", "minimum": -MOST_NUMBER, "maximum": MOST_NUMBER},
    bool: {"type": "boolean"},
    date: {"type": "string", "pattern": r"^[1-8]\d{3}-\d{2}-\d{2}$"},
    time: {"type": "string", "pattern": r"^\d{2}:\d{2}:\d{2}(\.\d{6})?$"},
    datetime: {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{6})?Z$"},
}


def json_schema() -> dict[str, object]:
    """The JSON Schema of an exchange document, as it ships in resources/schema."""
    tables = {name: {"type": "array", "items": _record_schema(cls)} for cls, name in TABLE_NAMES.items()}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A whole beeworkbook in one document",
        "description": (
            "Tables stand in this order and records by id, those of a visit by visit. A field that is "
            "absent holds its default, so a blank is absent. The cells of a side are one line a row, run "
            "lengths and letters: _ not recorded, G gap, F foundation, C empty, E eggs, O open, S sealed, "
            "B brood, D drone, P pollen, N nectar, H stores."
        ),
        "type": "object",
        "required": ["format", "version", "records"],
        "additionalProperties": False,
        "properties": {
            "format": {"const": FORMAT},
            "version": {"const": VERSION},
            "records": {
                "type": "object",
                "required": list(tables),
                "additionalProperties": False,
                "properties": tables,
            },
        },
    }


def _record_schema(cls: type[Record]) -> dict[str, object]:
    forms = form_of(cls)
    return {
        "type": "object",
        "additionalProperties": False,
        "required": [name for name, form in forms.items() if form.needed],
        "properties": {name: _field_schema(form) for name, form in forms.items()},
    }


def _field_schema(form: FieldForm) -> dict[str, object]:
    if issubclass(form.kind, StrEnum):
        schema: dict[str, object] = {"type": "string", "enum": [choice.value for choice in form.kind]}
    else:
        schema = dict(_JSON_KINDS[form.kind])
    if not form.needed and not form.may_be_blank:
        schema["default"] = form.write(form.default)
    return schema
