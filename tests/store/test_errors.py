import sqlite3
from pathlib import Path
from typing import Any

import pytest

from beeworkbook.store import errors
from beeworkbook.store.errors import (
    BrokenRuleError,
    BusyError,
    CannotOpenError,
    DamagedWorkbookError,
    DiskFullError,
    DiskTroubleError,
    ReadOnlyError,
    StoreError,
    told,
)

PATH = Path("/bees/orchard.beebook")


def _said(
    code: int | None, text: str = "x", kind: type[sqlite3.Error] = sqlite3.OperationalError
) -> Exception:
    error = kind(text)
    if code is not None:
        error.sqlite_errorcode = code
    return told(error, PATH)


@pytest.mark.parametrize(
    ("code", "expected"),
    [
        (sqlite3.SQLITE_FULL, DiskFullError),
        (sqlite3.SQLITE_BUSY, BusyError),
        (sqlite3.SQLITE_BUSY_SNAPSHOT, BusyError),
        (sqlite3.SQLITE_LOCKED, BusyError),
        (sqlite3.SQLITE_READONLY, ReadOnlyError),
        (sqlite3.SQLITE_READONLY_DIRECTORY, ReadOnlyError),
        (sqlite3.SQLITE_CANTOPEN, CannotOpenError),
        (sqlite3.SQLITE_IOERR_FSYNC, DiskTroubleError),
        (sqlite3.SQLITE_CORRUPT, DamagedWorkbookError),
        (sqlite3.SQLITE_NOTADB, DamagedWorkbookError),
        (sqlite3.SQLITE_ERROR, BrokenRuleError),
        (None, BrokenRuleError),
    ],
)
def test_what_the_driver_says_is_told_by_kind(code: int | None, expected: type[Exception]) -> None:
    assert type(_said(code)) is expected


def test_text_that_is_no_text_is_damage_and_a_broken_rule_is_ours() -> None:
    assert isinstance(_said(None, "Could not decode to UTF-8 column"), DamagedWorkbookError)
    assert isinstance(_said(None, "UNIQUE", sqlite3.IntegrityError), BrokenRuleError)


def test_every_trouble_of_the_world_is_a_sentence() -> None:
    classes = [
        held
        for held in vars(errors).values()
        if isinstance(held, type) and issubclass(held, StoreError) and held is not StoreError
    ]
    assert len(classes) > 12
    for cls in classes:
        names = cls.__init__.__code__.co_varnames[1 : cls.__init__.__code__.co_argcount]
        values: dict[str, Any] = {
            "path": PATH,
            "found": 3,
            "known": 1,
            "name": "own",
            "detail": "why",
            "reach": "there",
        }
        error = cls(**{name: values[name] for name in names})
        sentence = str(error)
        assert sentence.endswith((".", ")"))
        assert sentence[0].isupper() or sentence.startswith(str(PATH))
        assert cls.__doc__
