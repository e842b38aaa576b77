"""An exchange document read as a stream, value by value, and refused with the place named.

Limits are on the length of one value, on depth and on what one record may hold, never on the size
of the whole. What the values mean for a workbook is decided in exchange.py.
"""

from collections.abc import Callable, Iterator
from typing import BinaryIO

from beeworkbook.colony.records import Record
from beeworkbook.words import say
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.exchange_form import (
    FORMAT,
    TABLE_NAMES,
    VERSION,
    FieldError,
    form_of,
)
from beeworkbook.workbook.exchange_tokens import Event, TokenError, Tokens

Progress = Callable[[int], None]
Read = tuple[type[Record], str, dict[str, object]]
"""A record class, the record's place in the document, and the values of its fields."""


class ExchangeError(RefusedError):
    """A document that cannot be taken in, the place in it, and why. Nothing of it was kept."""

    def __init__(self, place: str, reason: str) -> None:
        super().__init__(say("{place}: {reason}. Nothing was taken in.", place=place, reason=reason))
        self.place = place
        self.reason = reason


class _Document:
    """The document being read: its events, and where in it the last one was."""

    def __init__(self, stream: BinaryIO, progress: Progress) -> None:
        self._events = Tokens(stream, progress).events()
        self.place = say("the start")

    def next(self) -> Event:
        """The next event. Errors: ExchangeError if this is not JSON or breaks off."""
        try:
            return next(self._events)
        except StopIteration:
            raise self.error(say("it breaks off")) from None
        except TokenError as error:
            raise self.error(str(error)) from error

    def error(self, reason: str) -> ExchangeError:
        """What is wrong at the present place."""
        return ExchangeError(self.place, reason)

    def expect(self, event: str, reason: str) -> None:
        """Take one event that has to be there."""
        if self.next()[0] != event:
            raise self.error(reason)

    def key(self) -> str | None:
        """The next key of an object, None at its end."""
        event, value = self.next()
        return None if event == "end_map" else str(value)

    def value(self) -> object:
        """The next value. Errors: ExchangeError if it is a list or an object."""
        event, value = self.next()
        if event != "value":
            raise self.error(say("it has to be one value, not a list or an object"))
        return value

    def end(self) -> None:
        """Nothing follows. Errors: ExchangeError."""
        self.place = say("the end")
        try:
            next(self._events)
        except StopIteration:
            return
        except TokenError as error:
            raise self.error(str(error)) from error


def read_document(stream: BinaryIO, progress: Progress) -> Iterator[Read]:
    """The records of a document, one by one, each value checked by itself.

    `progress` is told the bytes read so far, and may raise to stop.
    Errors: ExchangeError with the place.
    """
    document = _Document(stream, progress)
    document.expect("start_map", say("the document has to be one object"))
    for name, wanted in (("format", FORMAT), ("version", VERSION)):
        document.place = name
        if document.key() != name:
            raise document.error(say("it has to come first: format, version, records"))
        _check_head(document, wanted)
    document.place = "records"
    if document.key() != "records":
        raise document.error(say("it has to come after format and version"))
    document.expect("start_map", say("it has to be an object of tables"))
    for cls, name in TABLE_NAMES.items():
        yield from _read_table(document, cls, name)
    document.place = "records"
    if document.key() is not None:
        raise document.error(say("there is one table too many"))
    document.place = say("the end")
    if document.key() is not None:
        raise document.error(say("something follows the records"))
    document.end()


def _check_head(document: _Document, wanted: object) -> None:
    found = document.value()
    if isinstance(found, bool) or found != wanted:
        raise document.error(say("it has to be {wanted}", wanted=wanted))


def _read_table(document: _Document, cls: type[Record], name: str) -> Iterator[Read]:
    document.place = f"records.{name}"
    if document.key() != name:
        raise document.error(say("this table is missing here; the tables have a fixed order"))
    document.expect("start_array", say("a table has to be a list"))
    number = 0
    while True:
        document.place = place = f"records.{name}[{number}]"
        event, _ = document.next()
        if event == "end_array":
            return
        if event != "start_map":
            raise document.error(say("a record has to be an object"))
        yield cls, place, _read_record(document, cls, place)
        number += 1


def _read_record(document: _Document, cls: type[Record], place: str) -> dict[str, object]:
    forms = form_of(cls)
    found: dict[str, object] = {}
    while (name := document.key()) is not None:
        if name not in forms:
            raise document.error(say("there is no field {name}", name=repr(name[:40])))
        document.place = f"{place}.{name}"
        if name in found:
            raise document.error(say("this field is there twice"))
        try:
            found[name] = forms[name].read(document.value())
        except FieldError as error:
            raise document.error(str(error)) from error
        document.place = place
    for name, form in forms.items():
        if form.needed and name not in found:
            raise document.error(say("the field {name} is missing", name=name))
    return found
