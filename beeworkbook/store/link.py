"""The one connection to a workbook file: statements, transactions, and what the driver says, worded.

The driver never opens a transaction by itself: a write begins with BEGIN IMMEDIATE, a read of several
statements with BEGIN, so that it sees one state of the book. The file is switched to a write-ahead
log when it is first written and back when it is closed, so that opening it to look leaves it as it is.
"""

import sqlite3
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from threading import get_ident
from typing import Any, Final
from urllib.parse import quote

from beeworkbook.store.errors import DamagedWorkbookError, ReadOnlyError, StoreError, told

_WAIT_SECONDS: Final = 5.0
_PRAGMAS: Final = (
    "foreign_keys = ON",
    "synchronous = FULL",
    "cache_size = -8000",
    "trusted_schema = OFF",
)
"""Asked of every connection; the size of the cache is in KiB."""
Params = Sequence[Any] | Mapping[str, Any]
Row = tuple[Any, ...]


class Link:
    """A connection to one file. Made by database.py only; never leaves this room."""

    def __init__(self, path: Path, *, read_only: bool = False, immutable: bool = False) -> None:
        self.path = path
        self.read_only = read_only
        self.driver = self._connected("ro" if read_only else "rw", immutable=immutable)
        self._immutable = immutable
        self._logging_ahead = False
        self._home = get_ident()
        self._writing: int | None = None
        self._others: dict[int, sqlite3.Connection] = {}

    def rows(self, text: str, params: Params = ()) -> list[Row]:
        """All rows of a question."""
        try:
            return self._here().execute(text, params).fetchall()
        except sqlite3.Error as error:
            raise told(error, self.path) from error

    def row(self, text: str, params: Params = ()) -> Row | None:
        """The first row of a question, or None."""
        try:
            found: Row | None = self._here().execute(text, params).fetchone()
        except sqlite3.Error as error:
            raise told(error, self.path) from error
        return found

    def run(self, text: str, params: Params = ()) -> int:
        """Send a statement; gives the id of a row it made."""
        try:
            return self.driver.execute(text, params).lastrowid or 0
        except sqlite3.Error as error:
            raise told(error, self.path) from error

    def quick_check(self) -> None:
        """Look through the whole file, about a millisecond a megabyte.

        Errors: DamagedWorkbookError if a page is not what it should be.
        """
        found = self.row("PRAGMA quick_check(1)")
        if found is None or found[0] != "ok":
            raise DamagedWorkbookError(self.path, str(found))

    def begin(self) -> None:
        """Start the one write.

        Errors: ReadOnlyError if the book is open for looking; BusyError if another program writes.
        """
        if self.read_only:
            raise ReadOnlyError(self.path)
        if not self._logging_ahead:
            self.run("PRAGMA journal_mode = WAL")
            self._logging_ahead = True
        self.run("BEGIN IMMEDIATE")
        self._writing = get_ident()

    def commit(self) -> None:
        """End the write: it is on the disk when this returns."""
        self.run("COMMIT")
        self._writing = None

    def roll_back(self) -> None:
        """Undo all since begin; a connection that has already done so is left in peace."""
        self._writing = None
        if self.driver.in_transaction:
            self.run("ROLLBACK")

    def settle(self) -> None:
        """Fold the log into the file as far as no reader is in the way, waiting for nobody; the log stays.

        The one file then holds all that was kept, so that a copy of it alone is whole.
        """
        if not self.read_only and not self.driver.in_transaction:
            self.row("PRAGMA wal_checkpoint(PASSIVE)")

    @contextmanager
    def reading(self) -> Iterator[None]:
        """All reads within see one state of the book, also when another program writes meanwhile."""
        driver = self._here()
        if driver.in_transaction:
            yield
            return
        try:
            driver.execute("BEGIN")
            yield
        except sqlite3.Error as error:
            raise told(error, self.path) from error
        finally:
            if driver.in_transaction:
                driver.execute("ROLLBACK")

    def close(self) -> None:
        """Fold the log into the file, so that one file is the whole book, and let go.

        What cannot be folded now, because another program is reading, is folded at the next opening.
        """
        try:
            for driver in self._others.values():
                driver.close()  # the log can be folded in only by the last one
            if not self.read_only:
                self.roll_back()
                self.run("PRAGMA wal_checkpoint(TRUNCATE)")
                self.run("PRAGMA journal_mode = DELETE")
                self._clear_journal()
        except StoreError:
            pass
        finally:
            self._others.clear()
            self.driver.close()

    def _clear_journal(self) -> None:
        """Let a journal go that a program left which was killed just when it began to write.

        What was in it was played back at the first read; one with nothing in it SQLite takes away only
        with a write of its own.
        """
        if self.path.with_name(self.path.name + "-journal").exists():
            form = self.row("PRAGMA user_version")
            self.run("BEGIN IMMEDIATE")
            self.run(f"PRAGMA user_version = {form[0] if form else 0}")
            self.run("COMMIT")

    def _here(self) -> sqlite3.Connection:
        """The connection of this thread: the one that writes, at home and for whoever writes just now.

        Any other thread (an export, a check) reads through one of its own, undisturbed.
        """
        thread = get_ident()
        if thread in {self._home, self._writing}:
            return self.driver
        if thread not in self._others:
            self._others[thread] = self._connected("ro", immutable=self._immutable)
        return self._others[thread]

    def _connected(self, mode: str, *, immutable: bool) -> sqlite3.Connection:
        address = f"file:{quote(str(self.path))}?mode={mode}{'&immutable=1' if immutable else ''}"
        try:
            # Every connection stays with its thread but to be closed, and while one writes for another.
            driver = sqlite3.connect(
                address, uri=True, isolation_level=None, timeout=_WAIT_SECONDS, check_same_thread=False
            )
        except sqlite3.Error as error:
            raise told(error, self.path) from error
        try:
            for pragma in _PRAGMAS:
                driver.execute(f"PRAGMA {pragma}")
        except sqlite3.Error as error:
            driver.close()
            raise told(error, self.path) from error
        return driver
