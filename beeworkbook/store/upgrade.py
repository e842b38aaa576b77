"""New workbooks, and older ones brought up to date: both walk the revisions in migrations/.

Alembic and SQLAlchemy's engine are loaded only here, and this file only when a form differs or a
workbook is made. Nothing is walked in the workbook itself, but in a twin that takes its place when
all went well: a revision that fails leaves the workbook as it was, to the byte.
"""

import sqlite3
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from sqlalchemy import Connection, create_engine, event
from sqlalchemy.exc import DBAPIError
from sqlalchemy.pool import NullPool

from beeworkbook.store.copies import copied_as_it_is, trouble
from beeworkbook.store.errors import StoreError, UpgradeFailedError, told
from beeworkbook.store.form import APPLICATION_ID

SCRIPTS: Final = Path(__file__).resolve().parent / "migrations"
_PAGE_BYTES: Final = 4096
_WAIT_SECONDS: Final = 5.0
_UNFINISHED: Final = ".part"


@cache
def blank_workbook() -> bytes:
    """The bytes of an empty workbook of today's form, made once by walking all revisions."""
    with TemporaryDirectory(prefix="beeworkbook-") as folder:
        path = Path(folder) / "blank"
        driver = sqlite3.connect(path, isolation_level=None)
        driver.execute(f"PRAGMA page_size = {_PAGE_BYTES}")
        driver.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        driver.close()
        walk(path)
        return path.read_bytes()


def upgrade(path: Path, scripts: Path = SCRIPTS) -> None:
    """Bring a workbook that nobody has open to today's form.

    Errors: UpgradeFailedError if a revision fails, or loses rows or references; StoreError as the disk
    says. The workbook is then as it was.
    """
    twin = path.with_name(path.name + _UNFINISHED)
    try:
        copied_as_it_is(path, twin)
        walk(twin, scripts)
        twin.replace(path)
    except OSError as error:
        raise trouble(error, path) from error
    finally:
        twin.unlink(missing_ok=True)


def walk(path: Path, scripts: Path = SCRIPTS) -> None:
    """Walk the revisions this file has not seen, each in a transaction of its own, within the file.

    Errors: as upgrade; the file is then of no more use.
    """
    options = {"isolation_level": None, "timeout": _WAIT_SECONDS}
    engine = create_engine(f"sqlite:///{path}", poolclass=NullPool, connect_args=options)
    event.listen(engine, "begin", _begin)
    try:
        with engine.connect() as connection:
            # Foreign keys cannot be switched inside a transaction, and rebuilding a table that others
            # refer to would empty those; the check afterwards makes up for it.
            connection.exec_driver_sql("PRAGMA foreign_keys = OFF")
            connection.rollback()
            _walk(connection, path, scripts)
    except DBAPIError as error:
        cause = error.orig
        said = told(cause, path) if isinstance(cause, sqlite3.Error) else error
        raise (said if isinstance(said, StoreError) else UpgradeFailedError(path, str(cause))) from error
    finally:
        engine.dispose()


def _begin(connection: Connection) -> None:
    """The driver would let a CREATE TABLE outlive a failed revision; an explicit BEGIN does not."""
    connection.exec_driver_sql("BEGIN IMMEDIATE")


def _walk(connection: Connection, path: Path, scripts: Path) -> None:
    from alembic import command
    from alembic.config import Config

    before = _counts(connection)
    config = Config(attributes={"connection": connection})
    config.set_main_option("script_location", str(scripts).replace("%", "%%"))
    try:
        command.upgrade(config, "head")
    except DBAPIError:
        raise
    except Exception as error:
        raise UpgradeFailedError(path, str(error)) from error
    after = _counts(connection)
    lost = [table for table, count in before.items() if after.get(table, 0) < count]
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").fetchall()
    if lost or broken:
        raise UpgradeFailedError(path, f"rows lost in {lost}, references broken: {len(broken)}")


def _counts(connection: Connection) -> dict[str, int]:
    """How many rows each table has. A revision that retires a table empties it into another first."""
    names = connection.exec_driver_sql(
        "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
    ).fetchall()
    counts = {}
    for (name,) in names:
        counted = connection.exec_driver_sql(f'SELECT count(*) FROM "{name}"')  # noqa: S608 - names from the file's own schema
        counts[name] = int(counted.scalar_one())
    connection.rollback()
    return counts
