"""The exchange format: a whole workbook as one JSON document, out and in, without loss.

Written and read as a stream, a record a line, so that its size is no limit. What is written, taken
in and written again is the same to the byte. A document is taken in whole or not at all: it becomes
a workbook beside the target, which gets its name only when all of it was right.
"""

import json
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from typing import Any, BinaryIO, Final

from beeworkbook.colony.records import RECORD_TYPES, Answer, Mark, Record, Side, Visit
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.notation import NotationError, from_text, to_text
from beeworkbook.store import database
from beeworkbook.store.drawings import packed
from beeworkbook.store.errors import BrokenRuleError, FileExistsAlreadyError, StoreError
from beeworkbook.store.reader import Reader
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.errors import NotKeptError, RefusedError
from beeworkbook.workbook.exchange_form import FORMAT, TABLE_NAMES, VERSION, FieldError, plain
from beeworkbook.workbook.exchange_read import ExchangeError, Read, read_document
from beeworkbook.workbook.exchange_rules import (
    LATER,
    check_record,
    frame_type_in,
    references,
)

Progress = Callable[[int, int], None]
"""Told how much is done, of how much: records when writing, bytes when reading."""
Cancelled = Callable[[], bool]

_OF_A_VISIT: Final = (Answer, Side, Mark)
_BATCH: Final = 100
"""Records of one transaction; between two the person can stop it."""
_CLASSES: Final = {cls.__name__: cls for cls in RECORD_TYPES}
_UNFINISHED: Final = ".part"
_BESIDE: Final = ("-wal", "-shm", "-journal")
"""What a database keeps beside its file; left from another file it must not be played into this one."""


class StoppedError(RefusedError):
    """The person stopped it; nothing was written."""

    def __init__(self) -> None:
        super().__init__(say("Stopped. Nothing was written."))


def _never() -> bool:
    return False


def _unheard(_done: int, _whole: int) -> None:
    """Nobody asked how far it is."""


# --- out ------------------------------------------------------------------------------------------


def write_document(
    read: Reader, stream: BinaryIO, *, progress: Progress = _unheard, cancelled: Cancelled = _never
) -> None:
    """Write the whole workbook as one document, UTF-8, as it stands at the beginning.

    Errors: StoppedError; StoreError if the workbook cannot be read; OSError as the stream says.
    """
    with read.at_one_moment():
        _write_tables(read, stream, progress, cancelled)


def _write_tables(read: Reader, stream: BinaryIO, progress: Progress, cancelled: Cancelled) -> None:
    stream.write(f'{{"format": {json.dumps(FORMAT)}, "version": {VERSION}, "records": {{'.encode())
    visits = sorted(read.find(Visit), key=lambda visit: visit.id)
    whole, done = len(RECORD_TYPES) + 3 * len(visits), 0
    for number, (cls, name) in enumerate(TABLE_NAMES.items()):
        stream.write(f'{"," if number else ""}\n"{name}": ['.encode())
        between = b"\n"
        for records in _portions(read, cls, visits):
            if cancelled():
                raise StoppedError
            for record in records:
                stream.write(between + _line(read, record))
                between = b",\n"
            done += 1
            progress(min(done, whole), whole)
        stream.write(b"]" if between == b"\n" else b"\n]")
    stream.write(b"\n}}\n")
    progress(whole, whole)


def _portions(read: Reader, cls: type[Record], visits: list[Visit]) -> Iterator[Iterable[Record]]:
    """The records of a table in the order of the document, a portion at a time."""
    if cls in _OF_A_VISIT:
        for visit in visits:
            yield sorted(read.find(cls, visit_id=visit.id), key=_by_id)
    else:
        yield sorted(read.find(cls), key=_by_id)


def _by_id(record: Record) -> Any:
    return record.id


def _line(read: Reader, record: Record) -> bytes:
    values = plain(record)
    if isinstance(record, Side):
        lattice = read.frame_type(record.frame_type).lattice
        values["cells"] = to_text(lattice, unpack(record.cells, cells=lattice.cells))
    return json.dumps(values, ensure_ascii=False, allow_nan=False).encode()


def export_book(
    read: Reader, target: Path, *, progress: Progress = _unheard, cancelled: Cancelled = _never
) -> None:
    """Write the whole workbook to a file where nothing is yet.

    Errors: StoppedError; NotKeptError with a sentence, and then nothing is left there.
    """
    unfinished = target.with_name(target.name + _UNFINISHED)
    try:
        if target.exists():
            raise FileExistsAlreadyError(target)
        with unfinished.open("wb") as stream:
            write_document(read, stream, progress=progress, cancelled=cancelled)
        unfinished.rename(target)
    except StoreError as error:
        raise NotKeptError(str(error)) from error
    except OSError as error:
        raise NotKeptError(_trouble(error, target)) from error
    finally:
        with suppress(OSError):
            unfinished.unlink(missing_ok=True)


def _trouble(error: OSError, path: Path) -> str:
    return say("{path} could not be written: {reason}.", path=path, reason=error.strerror or error)


# --- in -------------------------------------------------------------------------------------------


def import_book(
    source: Path,
    target: Path,
    *,
    progress: Progress = _unheard,
    cancelled: Cancelled = _never,
) -> None:
    """Make a workbook of a document, where nothing is yet.

    Errors: ExchangeError with the place in the document; StoppedError; NotKeptError with a sentence.
    Nothing is left at the target then.
    """
    unfinished = target.with_name(target.name + _UNFINISHED)
    try:
        _needs_room(target)
        _clear(unfinished)
        _fill(source, unfinished, progress, cancelled)
        _needs_room(target)
        unfinished.rename(target)
    except StoreError as error:
        raise NotKeptError(str(error)) from error
    except OSError as error:
        raise NotKeptError(_trouble(error, target)) from error
    finally:
        with suppress(OSError):
            _clear(unfinished)


def _needs_room(target: Path) -> None:
    """Nothing is at the target, nor left beside it of a workbook that was there."""
    for path in (target, *(target.with_name(target.name + ending) for ending in _BESIDE)):
        if path.exists():
            raise FileExistsAlreadyError(path)


def _clear(unfinished: Path) -> None:
    """Take away what an import that was killed may have left."""
    for ending in ("", *_BESIDE):
        unfinished.with_name(unfinished.name + ending).unlink(missing_ok=True)


def _fill(source: Path, target: Path, progress: Progress, cancelled: Cancelled) -> None:
    try:
        whole = source.stat().st_size
        stream = source.open("rb")
    except OSError as error:
        text = say("{path} cannot be read: {reason}.", path=source, reason=error.strerror or error)
        raise NotKeptError(text) from error

    def told(done: int) -> None:
        if cancelled():
            raise StoppedError
        progress(done, whole)

    with stream, database.create(target) as base:
        taking = _Taking(base)
        for read in read_document(stream, told):
            taking.take(*read)
        taking.finish()


class _Taking:
    """Records on their way in, kept a batch at a time."""

    def __init__(self, base: database.Database) -> None:
        self._base = base
        self._batch: list[Read] = []
        self._later: list[tuple[type[Record], str, int, int]] = []

    def take(self, cls: type[Record], place: str, values: dict[str, object]) -> None:
        """One record; it is checked when its batch is kept."""
        self._batch.append((cls, place, values))
        if len(self._batch) >= _BATCH:
            self._keep()

    def finish(self) -> None:
        """Keep what is left, and the references that led to records still to come."""
        self._keep()
        for start in range(0, len(self._later), _BATCH):
            with self._base.write() as tx:
                for cls, place, its_id, referred in self._later[start : start + _BATCH]:
                    field = LATER[cls]
                    if tx.find_one(cls, referred) is None:
                        raise _leads_nowhere(place, field, referred)
                    changes: dict[str, Any] = {field: referred}
                    tx.put(replace(tx.get(cls, its_id), **changes))

    def _keep(self) -> None:
        with self._base.write() as tx:
            for cls, place, values in self._batch:
                self._keep_one(tx, cls, place, values)
        self._batch.clear()

    def _keep_one(self, tx: Transaction, cls: type[Record], place: str, values: dict[str, object]) -> None:
        make: Any = cls
        later = self._still_to_come(tx, cls, values)
        try:
            if cls is Side:
                values["cells"] = _packed(tx, values)
            record: Record = make(**values)
            check_record(tx, record)
        except FieldError as error:
            field, _, reason = str(error).partition(": ")
            raise ExchangeError(f"{place}.{field}", reason) from error
        for field, target in references(cls).items():
            referred = getattr(record, field)
            if referred is not None and tx.find_one(_CLASSES[target], referred) is None:
                raise _leads_nowhere(place, field, referred)
        if tx.find_one(cls, record.id) is not None:
            raise ExchangeError(f"{place}.id", say("this id is there twice"))
        try:
            tx.add(record)
        except BrokenRuleError as error:
            raise ExchangeError(place, say("it says again what another record says")) from error
        if later is not None:
            self._later.append((cls, place, int(record.id), later))

    @staticmethod
    def _still_to_come(tx: Transaction, cls: type[Record], values: dict[str, object]) -> int | None:
        """The record of this table it refers to, taken out for the end if that has not come yet."""
        field = LATER.get(cls, "")
        referred = values.get(field)
        if not isinstance(referred, int) or tx.find_one(cls, referred) is not None:
            return None
        del values[field]
        return referred


def _packed(tx: Transaction, values: dict[str, object]) -> bytes:
    frame_type = frame_type_in(tx, "frame_type", str(values["frame_type"]))
    try:
        return packed(from_text(frame_type.lattice, str(values["cells"])))
    except NotationError as error:
        raise FieldError(f"cells: {error}") from error


def _leads_nowhere(place: str, field: str, referred: object) -> ExchangeError:
    return ExchangeError(f"{place}.{field}", say("there is no record {id} it could refer to", id=referred))
