"""The one connection to a workbook file: statements, transactions, and what the driver says, worded.

The driver never opens a transaction by itself: a write begins with BEGIN IMMEDIATE, a read of several
statements with BEGIN, so that it sees one state of the book. The file is switched to a write-ahead
log when it is first written and back when it is closed, so that opening it to look leaves it as it is.
"""

import sqlite3
from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final
from urllib.parse import quote

from beeworkbook.store.errors import ReadOnlyError, StoreError, told

_WAIT_SECONDS: Final = 5.0
_CACHE_KIB: Final = 8000
Params = Sequence[Any] | Mapping[str, Any]
Row = tuple[Any, ...]


class Link:
    """A connection to one file. Made by database.py only; never leaves this room."""

    def __init__(self, path: Path, *, read_only: bool = False, immutable: bool = False) -> None:
        self.path = path
        self.read_only = read_only
        self._depth = 0
        self._logging_ahead = False
        mode = "ro" if read_only else "rw"
        address = f"file:{quote(str(path))}?mode={mode}{'&immutable=1' if immutable else ''}"
        try:
            self.driver = sqlite3.connect(address, uri=True, isolation_level=None, timeout=_WAIT_SECONDS)
        except sqlite3.Error as error:
            raise told(error, path) from error
        try:
            self._prepare()
        except BaseException:
            self.driver.close()
            raise

    def _prepare(self) -> None:
        self.run("PRAGMA foreign_keys = ON")
        self.run("PRAGMA synchronous = FULL")
        self.run(f"PRAGMA cache_size = -{_CACHE_KIB}")
        self.run("PRAGMA trusted_schema = OFF")

    def rows(self, text: str, params: Params = ()) -> list[Row]:
        """All rows of a question."""
        try:
            return self.driver.execute(text, params).fetchall()
        except sqlite3.Error as error:
            raise told(error, self.path) from error

    def row(self, text: str, params: Params = ()) -> Row | None:
        """The first row of a question, or None."""
        try:
            found: Row | None = self.driver.execute(text, params).fetchone()
        except sqlite3.Error as error:
            raise told(error, self.path) from error
        return found

    def run(self, text: str, params: Params = ()) -> int:
        """Send a statement; gives the id of a row it made."""
        try:
            return self.driver.execute(text, params).lastrowid or 0
        except sqlite3.Error as error:
            raise told(error, self.path) from error

    def run_many(self, text: str, rows: Iterable[Params]) -> None:
        """Send a statement once for each of these rows."""
        try:
            self.driver.executemany(text, rows)
        except sqlite3.Error as error:
            raise told(error, self.path) from error

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

    def commit(self) -> None:
        """End the write: it is on the disk when this returns."""
        self.run("COMMIT")

    def roll_back(self) -> None:
        """Undo all since begin; a connection that has already done so is left in peace."""
        if self.driver.in_transaction:
            self.run("ROLLBACK")

    @contextmanager
    def reading(self) -> Iterator[None]:
        """All reads within see one state of the book, also when another program writes meanwhile."""
        if self._depth or self.driver.in_transaction:
            yield
            return
        self.run("BEGIN")
        self._depth += 1
        try:
            yield
        finally:
            self._depth -= 1
            self.roll_back()

    def close(self) -> None:
        """Fold the log into the file, so that one file is the whole book, and let go.

        What cannot be folded now, because another program is reading, is folded at the next opening.
        """
        try:
            if not self.read_only:
                self.roll_back()
                self.run("PRAGMA wal_checkpoint(TRUNCATE)")
                self.run("PRAGMA journal_mode = DELETE")
        except StoreError:
            pass
        finally:
            self.driver.close()
