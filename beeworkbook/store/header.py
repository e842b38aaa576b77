"""What a file says it is, read from its first hundred bytes before any driver touches it.

So a foreign, newer or broken-off file is told apart without a byte of it being changed.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

from beeworkbook.store.errors import (
    CannotOpenError,
    DamagedWorkbookError,
    ForeignFileError,
    MissingFileError,
    NewerWorkbookError,
    NotAWorkbookError,
)
from beeworkbook.store.form import APPLICATION_ID, SCHEMA_VERSION

_MAGIC: Final = b"SQLite format 3\x00"
_LENGTH: Final = 100
_LARGEST_PAGE: Final = 65536


@dataclass(frozen=True)
class Header:
    """The numbers of a workbook file. Source: the published description of the SQLite file format."""

    page_bytes: int
    pages: int
    pages_known: bool
    log_ahead: bool
    form: int
    application_id: int


def read_header(path: Path) -> Header:
    """The header of a workbook file.

    Errors: MissingFileError, CannotOpenError, or NotAWorkbookError if it is no database at all.
    """
    if not path.exists():
        raise MissingFileError(path)
    if not path.is_file():
        raise NotAWorkbookError(path)
    try:
        with path.open("rb") as file:
            start = file.read(_LENGTH)
    except OSError as error:
        raise CannotOpenError(path) from error
    if len(start) < _LENGTH or not start.startswith(_MAGIC):
        raise NotAWorkbookError(path)
    page = _number(start, 16, 2)
    return Header(
        page_bytes=_LARGEST_PAGE if page == 1 else page,
        pages=_number(start, 28),
        # The count of pages holds only if the same writer noted it that changed the file last.
        pages_known=_number(start, 24) == _number(start, 92),
        log_ahead=start[18] == 2,
        form=_number(start, 60),
        application_id=_number(start, 68),
    )


def _number(start: bytes, at: int, length: int = 4) -> int:
    return int.from_bytes(start[at : at + length], "big")


def check_header(path: Path) -> Header:
    """The header of a file that is a workbook this program can read, whole as far as its length tells.

    Errors: as read_header; ForeignFileError, NewerWorkbookError, DamagedWorkbookError.
    """
    header = read_header(path)
    if header.application_id != APPLICATION_ID:
        raise ForeignFileError(path)
    if header.form > SCHEMA_VERSION:
        raise NewerWorkbookError(path, header.form, SCHEMA_VERSION)
    if header.form == 0 or (header.pages_known and path.stat().st_size < header.pages * header.page_bytes):
        raise DamagedWorkbookError(path, "the file is shorter than it says")
    return header
