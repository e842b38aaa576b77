"""Copies of a workbook: one at the first change of a day, one before a change of form; kept and restored.

Made with the database's own backup call, so that a copy is whole whatever is being written. A copy
appears under its name only when it is finished.
"""

import errno
import os
import re
import shutil
import sqlite3
from contextlib import closing
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from functools import cached_property
from pathlib import Path
from typing import Final
from zlib import crc32

from beeworkbook.store.errors import (
    CannotOpenError,
    DiskFullError,
    FileExistsAlreadyError,
    StoreError,
    told,
)
from beeworkbook.store.form import FILE_ENDING
from beeworkbook.store.header import check_header
from beeworkbook.store.link import Link
from beeworkbook.store.lock import FileLock

DAYS: Final = 7
WEEKS: Final = 8
_UNFINISHED: Final = ".part"
_BESIDE: Final = ("-wal", "-shm", "-journal")
_NAME: Final = re.compile(r"(day|form|before)-(\d+(?:-\d\d-\d\d)?)(?:-(\d+))?" + re.escape(FILE_ENDING))


class CopyKind(StrEnum):
    """Why a copy was made."""

    DAY = "day"
    """At the first change of a day."""
    FORM = "form"
    """Before the file was brought to a newer form."""
    BEFORE = "before"
    """Before another copy was restored over it."""


@dataclass(frozen=True)
class Copy:
    """One copy on the shelf. `day` is known for copies of a day, `form` for those before a change of form."""

    path: Path
    kind: CopyKind
    day: date | None
    form: int | None
    size_bytes: int


class CopyShelf:
    """The copies of one workbook, in a folder of its own within `folder`."""

    def __init__(self, folder: Path, path: Path) -> None:
        self.path = path.resolve()
        self._within = folder

    @cached_property
    def folder(self) -> Path:
        """Where they lie. Two workbooks may have one name; the place tells them apart."""
        key = crc32(str(self.path).encode("utf-8", "surrogateescape"))
        return self._within / f"{self.path.stem}-{key:08x}"

    def copies(self) -> tuple[Copy, ...]:
        """All copies, the newest day first, then those before a change of form and before restoring."""
        if not self.folder.is_dir():
            return ()
        found = [copy for entry in self.folder.iterdir() if (copy := _known(entry)) is not None]
        order = list(CopyKind)
        return tuple(
            sorted(found, key=lambda copy: (order.index(copy.kind), _newest_first(copy), copy.path.name))
        )

    def keep_day(self, link: Link, day: date) -> Path | None:
        """Copy the workbook as it is before its first change of this day; None if that was done already.

        Then let go of the older ones but seven of a day and eight of a week. A damaged workbook is not
        copied, so that no good copy has to make room for it.
        Errors: DamagedWorkbookError; StoreError as the disk says.
        """
        target = self.folder / f"{CopyKind.DAY}-{day.isoformat()}{FILE_ENDING}"
        if target.exists():
            return None
        link.quick_check()
        self._place(link, target)
        for copy in outlived(self.copies()):
            copy.path.unlink(missing_ok=True)
        return target

    def keep_form(self, link: Link, form: int) -> Path:
        """Copy the workbook before it is brought to a newer form. Such copies are all kept.

        Errors: StoreError as the disk says.
        """
        target = self._unused(f"{CopyKind.FORM}-{form}")
        self._place(link, target)
        return target

    def restore(self, copy: Copy) -> None:
        """Put a copy in place of the workbook, which must be closed and is itself copied first.

        Errors: AlreadyOpenError if it is open; StoreError if the copy is damaged or there is no room;
        the workbook is then as it was.
        """
        check_header(copy.path)
        _check_whole(copy.path)
        lock = FileLock(self.path)
        try:
            self._keep_before()
            self._replace_by(copy.path)
        finally:
            lock.release()

    def _keep_before(self) -> None:
        """What is there now goes on the shelf, damaged or not: nothing is ever thrown away unseen."""
        if not self.path.exists():
            return
        self.folder.mkdir(parents=True, exist_ok=True)
        target = self._unused(f"{CopyKind.BEFORE}-1")
        try:
            link = Link(self.path)
        except StoreError:
            link = None
        if link is not None:
            try:
                copy_file(link, target)
            except StoreError:
                target.unlink(missing_ok=True)
            else:
                return
            finally:
                link.close()
        copied_as_it_is(self.path, target)

    def _replace_by(self, source: Path) -> None:
        unfinished = self.path.with_name(self.path.name + _UNFINISHED)
        try:
            copied_as_it_is(source, unfinished)
            # A log of the file that was must not be played into the one that comes.
            for ending in _BESIDE:
                self.path.with_name(self.path.name + ending).unlink(missing_ok=True)
            unfinished.replace(self.path)
        except OSError as error:
            raise trouble(error, self.path) from error
        finally:
            unfinished.unlink(missing_ok=True)

    def _place(self, link: Link, target: Path) -> None:
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise trouble(error, self.folder) from error
        copy_file(link, target)

    def _unused(self, stem: str) -> Path:
        number = 1
        while (path := self.folder / f"{stem}-{number}{FILE_ENDING}").exists():
            number += 1
        return path


def outlived(copies: tuple[Copy, ...]) -> tuple[Copy, ...]:
    """The copies of a day to let go of.

    The newest seven are kept, and of the older ones the first of each of the last eight weeks.
    """
    days = sorted(
        (copy for copy in copies if copy.day is not None), key=lambda copy: copy.day or date.min, reverse=True
    )
    first_of_week: dict[tuple[int, int], Copy] = {}
    for copy in days[DAYS:]:
        if copy.day is not None:
            year, week, _ = copy.day.isocalendar()
            first_of_week[year, week] = copy
    kept = {copy.path for copy in days[:DAYS]}
    kept |= {copy.path for copy in list(first_of_week.values())[:WEEKS]}
    return tuple(copy for copy in days if copy.path not in kept)


def copy_file(link: Link, target: Path) -> None:
    """A whole copy of an open workbook at a place where nothing is yet.

    Errors: FileExistsAlreadyError; StoreError as the disk says; nothing is left behind then.
    """
    if target.exists():
        raise FileExistsAlreadyError(target)
    unfinished = target.with_name(target.name + _UNFINISHED)
    try:
        unfinished.unlink(missing_ok=True)
        with closing(sqlite3.connect(unfinished, isolation_level=None)) as copy:
            link.driver.backup(copy)
            copy.execute("PRAGMA journal_mode = DELETE")
        unfinished.rename(target)
    except sqlite3.Error as error:
        raise told(error, target) from error
    except OSError as error:
        raise trouble(error, target) from error
    finally:
        unfinished.unlink(missing_ok=True)


def copied_as_it_is(source: Path, target: Path) -> None:
    """Copy a file that nobody writes, byte for byte, and see it onto the disk.

    Errors: StoreError as the disk says; nothing is left behind then.
    """
    try:
        shutil.copyfile(source, target)
        with target.open("rb+") as copy:
            os.fsync(copy.fileno())
    except OSError as error:
        target.unlink(missing_ok=True)
        raise trouble(error, target) from error


def _check_whole(path: Path) -> None:
    link = Link(path, read_only=True)
    try:
        link.quick_check()
    finally:
        link.close()


def _known(path: Path) -> Copy | None:
    match = _NAME.fullmatch(path.name)
    if match is None:
        return None
    kind = CopyKind(match[1])
    try:
        day = date.fromisoformat(match[2]) if kind is CopyKind.DAY else None
        form = int(match[2]) if kind is CopyKind.FORM else None
        return Copy(path, kind, day, form, path.stat().st_size)
    except (ValueError, OSError):
        return None


def _newest_first(copy: Copy) -> int:
    return -(copy.day.toordinal() if copy.day else copy.form or 0)


def trouble(error: OSError, path: Path) -> StoreError:
    """What the system says of a file, as one of the errors of this room."""
    return DiskFullError(path) if error.errno in {errno.ENOSPC, errno.EDQUOT} else CannotOpenError(path)
