"""What the world can do to a workbook, one class and one sentence each, and what only a slip of ours can.

The sentence is for the keeper; it is worded here once and shown only by the window and the command
line. Everything a driver says is turned into one of these at the edge of this room.
"""

import sqlite3
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Final

from beeworkbook.words import say


class StoreError(Exception):
    """Something outside the program kept the workbook from being read or written."""

    def __init__(self, sentence: str, path: Path | None = None) -> None:
        super().__init__(sentence)
        self.path = path


class MissingFileError(StoreError):
    """There is no workbook at this place."""

    def __init__(self, path: Path) -> None:
        super().__init__(say("There is no workbook at {path}.", path=path), path)


class FileExistsAlreadyError(StoreError):
    """Something is at this place already, and is never written over."""

    def __init__(self, path: Path) -> None:
        super().__init__(say("There is already a file at {path}; it was left as it is.", path=path), path)


class NotAWorkbookError(StoreError):
    """This file is something else altogether."""

    def __init__(self, path: Path) -> None:
        super().__init__(say("{path} is not a workbook; it was left as it is.", path=path), path)


class ForeignFileError(StoreError):
    """This file is a database, but of another program."""

    def __init__(self, path: Path) -> None:
        text = "{path} belongs to another program; it was left as it is."
        super().__init__(say(text, path=path), path)


class NewerWorkbookError(StoreError):
    """A later version of the program wrote this workbook."""

    def __init__(self, path: Path, found: int, known: int) -> None:
        text = (
            "{path} was written by a newer beeworkbook (form {found}, this one knows up to {known}). "
            "It was left as it is; please bring this program up to date."
        )
        super().__init__(say(text, path=path, found=found, known=known), path)
        self.found = found


class OlderWorkbookError(StoreError):
    """An older workbook has to be brought up to date, but may not be written."""

    def __init__(self, path: Path) -> None:
        text = (
            "{path} is of an older form and has to be brought up to date, but it cannot be written here. "
            "Copy it to a folder of your own and open the copy."
        )
        super().__init__(say(text, path=path), path)


class DamagedWorkbookError(StoreError):
    """Part of the file is not what was written."""

    def __init__(self, path: Path | None, detail: str = "") -> None:
        text = "This workbook is damaged and was left as it is. A copy from an earlier day can be restored."
        super().__init__(say(text), path)
        self.detail = detail


class AlreadyOpenError(StoreError):
    """The workbook is open in another window; `reach` is how to reach that window."""

    def __init__(self, path: Path, reach: str = "") -> None:
        super().__init__(say("{path} is already open in another window.", path=path), path)
        self.reach = reach


class BusyError(StoreError):
    """Another program holds the file."""

    def __init__(self, path: Path | None, detail: str = "") -> None:
        text = "Another program is holding the workbook, so nothing was written. Please try again."
        super().__init__(say(text), path)
        self.detail = detail


class DiskFullError(StoreError):
    """There is no room left on the disk."""

    def __init__(self, path: Path | None, detail: str = "") -> None:
        text = "The disk is full, so the last change was not saved. All before it is safe."
        super().__init__(say(text), path)
        self.detail = detail


class ReadOnlyError(StoreError):
    """The workbook is open for looking only."""

    def __init__(self, path: Path | None, detail: str = "") -> None:
        super().__init__(say("This workbook is open for looking only; nothing was changed."), path)
        self.detail = detail


class DiskTroubleError(StoreError):
    """The disk or the network drive failed while reading or writing."""

    def __init__(self, path: Path | None, detail: str = "") -> None:
        text = (
            "The disk could not be read or written. The last change may not be saved; all before it is safe."
        )
        super().__init__(say(text), path)
        self.detail = detail


class CannotOpenError(StoreError):
    """The file is there but may not be opened, or its folder is not there."""

    def __init__(self, path: Path | None, detail: str = "") -> None:
        text = "{path} cannot be opened: the folder is missing, or it may not be read."
        super().__init__(say(text, path=path), path)
        self.detail = detail


class NoRoomForCopyError(StoreError):
    """The copy that has to come before a change of form could not be made."""

    def __init__(self, path: Path, detail: str) -> None:
        text = "No copy of the workbook could be made, so it was left as it is ({reason})."
        super().__init__(say(text, reason=detail), path)


class UpgradeFailedError(StoreError):
    """Bringing an older workbook up to date did not succeed."""

    def __init__(self, path: Path, detail: str) -> None:
        text = "This older workbook could not be brought up to date and was left as it was ({reason})."
        super().__init__(say(text, reason=detail), path)


class FrameInUseError(StoreError):
    """A frame of one's own with drawings cannot change its size or go."""

    def __init__(self, name: str) -> None:
        text = "There are combs drawn on frames of the type “{name}”, so its sizes stay as they are."
        super().__init__(say(text, name=name))


class NoSuchRecordError(LookupError):
    """A slip of ours: asked for something that is not kept."""

    def __init__(self, cls: type, its_id: object) -> None:
        super().__init__(f"no {cls.__name__} {its_id!r}")


class BrokenRuleError(ValueError):
    """A slip of ours: a record that the rules of the tables refuse."""


_BY_CODE: Final[Mapping[int, Callable[[Path | None, str], StoreError]]] = {
    sqlite3.SQLITE_FULL: DiskFullError,
    sqlite3.SQLITE_BUSY: BusyError,
    sqlite3.SQLITE_LOCKED: BusyError,
    sqlite3.SQLITE_PROTOCOL: BusyError,
    sqlite3.SQLITE_READONLY: ReadOnlyError,
    sqlite3.SQLITE_PERM: ReadOnlyError,
    sqlite3.SQLITE_CANTOPEN: CannotOpenError,
    sqlite3.SQLITE_IOERR: DiskTroubleError,
    sqlite3.SQLITE_CORRUPT: DamagedWorkbookError,
    sqlite3.SQLITE_NOTADB: DamagedWorkbookError,
}


def told(error: sqlite3.Error, path: Path | None) -> Exception:
    """What the driver said, as one of the classes here; our own slips come back as BrokenRuleError.

    The low byte of the driver's code is its kind; the rest only refines it.
    """
    code = getattr(error, "sqlite_errorcode", None)
    if isinstance(error, sqlite3.IntegrityError):
        return BrokenRuleError(str(error))
    if code is None:
        undecodable = "decode" in str(error)
        return DamagedWorkbookError(path, str(error)) if undecodable else BrokenRuleError(str(error))
    kind = _BY_CODE.get(code & 0xFF)
    return BrokenRuleError(str(error)) if kind is None else kind(path, str(error))
