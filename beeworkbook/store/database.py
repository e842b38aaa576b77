"""A workbook file, open: made, checked, locked, brought up to date, written and closed to one file.

Everything that can be wrong with a file is told before it is touched.
"""

import errno
import os
from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path
from types import TracebackType
from typing import Final, Self

from beeworkbook.store.copies import CopyShelf, copy_file
from beeworkbook.store.drives import network_warning
from beeworkbook.store.errors import (
    CannotOpenError,
    DamagedWorkbookError,
    DiskFullError,
    FileExistsAlreadyError,
    NewerWorkbookError,
    NoRoomForCopyError,
    OlderWorkbookError,
    StoreError,
)
from beeworkbook.store.form import SCHEMA_VERSION
from beeworkbook.store.header import Header, check_header
from beeworkbook.store.link import Link
from beeworkbook.store.lock import FileLock
from beeworkbook.store.reader import Reader
from beeworkbook.store.transaction import Transaction

Today = Callable[[], date]

_OLDEST_TABLES: Final = frozenset({"setting", "apiary", "colony", "visit", "side", "comb", "tally"})
"""Tables that every form has had."""
_SMALL_BYTES: Final = 8_000_000


class Database:
    """One open workbook. Reads go through `reader`, changes through `write()`."""

    def __init__(
        self, path: Path, link: Link, lock: FileLock | None, shelf: CopyShelf | None, today: Today | None
    ) -> None:
        self.path = path
        self.reader = Reader(link)
        self.read_only = link.read_only
        self.shelf = shelf
        self.warning = network_warning(path)
        """A sentence about the risk of where the file lies, or None."""
        self.copy_trouble: StoreError | None = None
        """Why the copy of the day could not be made, or None. A change is kept all the same."""
        self._link: Link | None = link
        self._lock = lock
        self._today = today
        self._copied_on: date | None = None

    def write(self, *, stamp: datetime | None = None) -> Transaction:
        """A change to make, used with `with`. `stamp` is noted as saved in every visit it touches."""
        return Transaction(self._open_link(), stamp=stamp, before_first=self._copy_of_the_day)

    def copy_to(self, path: Path) -> None:
        """A whole copy of the workbook as it is now, at a place where nothing is yet.

        Errors: FileExistsAlreadyError; StoreError as the disk says.
        """
        copy_file(self._open_link(), path)

    def settle(self) -> None:
        """Bring the file itself up to date while it is open. Errors: StoreError as the disk says."""
        self._open_link().settle()

    def say_reach(self, reach: str) -> None:
        """Let a second start on this file know how this window is reached."""
        if self._lock:
            self._lock.say_reach(reach)

    def close(self) -> None:
        """Fold everything into the one file and let go of it. A second call does nothing."""
        link, self._link = self._link, None
        if link is None:
            return
        try:
            link.close()
        finally:
            if self._lock:
                self._lock.release()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    @property
    def link(self) -> Link:
        """The connection, for this room only."""
        return self._open_link()

    def _open_link(self) -> Link:
        if self._link is None:
            raise ValueError("this workbook is closed")
        return self._link

    def _copy_of_the_day(self) -> None:
        if self._today is None or self.shelf is None or self.read_only:
            return
        today = self._today()
        if self._copied_on == today:
            return
        self._copied_on = today
        try:
            self.shelf.keep_day(self._open_link(), today)
        except StoreError as error:
            self.copy_trouble = error


def create(
    path: Path, *, reach: str = "", copies: Path | None = None, today: Today | None = None
) -> Database:
    """Make an empty workbook where nothing is yet, and open it.

    `reach` says how this window is reached; `copies` is the folder for copies, `today` tells the day
    for them.
    Errors: FileExistsAlreadyError; CannotOpenError if the folder is not there; StoreError.
    """
    from beeworkbook.store.upgrade import blank_workbook

    try:
        with path.open("xb") as file:
            _filled(file.fileno(), blank_workbook())
    except FileExistsError as error:
        raise FileExistsAlreadyError(path) from error
    except OSError as error:
        path.unlink(missing_ok=True)
        raise (DiskFullError(path) if error.errno == errno.ENOSPC else CannotOpenError(path)) from error
    return open_database(path, reach=reach, copies=copies, today=today)


def _filled(handle: int, content: bytes) -> None:
    left = memoryview(content)
    while left:
        left = left[os.write(handle, left) :]
    os.fsync(handle)


def open_database(
    path: Path,
    *,
    read_only: bool = False,
    reach: str = "",
    copies: Path | None = None,
    today: Today | None = None,
) -> Database:
    """Open a workbook: to write, or for looking if asked or if it may not be written.

    A file of an older form is copied and then brought up to date.
    Errors: StoreError, a class and a sentence for each thing that can be wrong; the file is not touched.
    """
    path = path.resolve()  # two ways to one file are one lock, one log and one shelf of copies
    header = check_header(path)
    shelf = CopyShelf(copies, path) if copies else None
    if read_only or not _may_write(path):
        return Database(path, _looking(path, header), None, shelf, today)
    lock = FileLock(path, reach)
    try:
        link = _whole(Link(path), path)
        link = _up_to_date(link, path, shelf)
    except BaseException:
        lock.release()
        raise
    return Database(path, link, lock, shelf, today)


def _may_write(path: Path) -> bool:
    return os.access(path, os.W_OK) and os.access(path.parent, os.W_OK)


def _looking(path: Path, header: Header) -> Link:
    log_left = path.with_name(path.name + "-wal").exists()
    # A file that says it has a log, but has none, cannot be opened in a folder that may not be written.
    immutable = header.log_ahead and not log_left and not os.access(path.parent, os.W_OK)
    link = _whole(Link(path, read_only=True, immutable=immutable), path)
    if _form(link) < SCHEMA_VERSION:
        link.close()
        raise OlderWorkbookError(path)
    return link


def _form(link: Link) -> int:
    row = link.row("PRAGMA user_version")
    return int(row[0]) if row else 0


def _whole(link: Link, path: Path) -> Link:
    """The link, once its form is known to be ours and every table answers.

    A small file is looked through whole, which takes some milliseconds. What is hidden deep in a large
    one is found by the copy of the day, or by the read that meets it, and told as the same error.
    """
    try:
        _ask_every_table(link, path)
    except BaseException:
        link.driver.close()
        raise
    return link


def _ask_every_table(link: Link, path: Path) -> None:
    form = _form(link)
    if form > SCHEMA_VERSION:  # the log of a killed program may say more than the header
        raise NewerWorkbookError(path, form, SCHEMA_VERSION)
    tables = {name for (name,) in link.rows("SELECT name FROM sqlite_master WHERE type = 'table'")}
    if not tables >= _OLDEST_TABLES:
        raise DamagedWorkbookError(path, "there are tables missing")
    if path.stat().st_size <= _SMALL_BYTES:
        link.quick_check()
    for table in tables:
        link.row(f'SELECT 1 FROM "{table}" LIMIT 1')  # noqa: S608 - names from the file's own schema


def _up_to_date(link: Link, path: Path, shelf: CopyShelf | None) -> Link:
    form = _form(link)
    if form == SCHEMA_VERSION:
        return link
    try:
        shelf = shelf or CopyShelf(path.parent, path)
        shelf.keep_form(link, form)
    except StoreError as error:
        link.driver.close()
        raise NoRoomForCopyError(path, str(error)) from error
    link.close()
    from beeworkbook.store import upgrade  # late: it brings Alembic

    upgrade.upgrade(path)
    return Link(path)
