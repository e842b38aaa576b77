from pathlib import Path

import pytest

from beeworkbook.store.database import create
from beeworkbook.store.errors import CannotOpenError, NotAWorkbookError
from beeworkbook.store.form import APPLICATION_ID, SCHEMA_VERSION
from beeworkbook.store.header import check_header, read_header


def test_a_workbook_says_what_it_is(path: Path) -> None:
    create(path).close()
    header = check_header(path)
    assert header == read_header(path)
    assert (header.application_id, header.form) == (APPLICATION_ID, SCHEMA_VERSION)
    assert header.pages * header.page_bytes == path.stat().st_size
    assert header.pages_known
    assert not header.log_ahead


def test_the_largest_page_is_written_as_one(path: Path) -> None:
    create(path).close()
    content = bytearray(path.read_bytes())
    content[16:18] = b"\x00\x01"
    path.write_bytes(content)
    assert read_header(path).page_bytes == 65536


def test_a_file_that_may_not_be_read(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    create(path).close()

    def refused(*_: object, **__: object) -> None:
        raise PermissionError(13, "no")

    monkeypatch.setattr(Path, "open", refused)
    with pytest.raises(CannotOpenError, match="cannot be opened"):
        read_header(path)


def test_nothing_is_no_workbook(path: Path) -> None:
    path.touch()
    with pytest.raises(NotAWorkbookError):
        read_header(path)
