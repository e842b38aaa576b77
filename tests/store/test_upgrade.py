import hashlib
import shutil
import sqlite3
from pathlib import Path

import pytest

from beeworkbook.colony.records import RECORD_TYPES, Visit
from beeworkbook.store import database as opening
from beeworkbook.store import header, upgrade
from beeworkbook.store.check import check
from beeworkbook.store.copies import CopyKind
from beeworkbook.store.database import create, open_database
from beeworkbook.store.errors import (
    BusyError,
    DiskFullError,
    NoRoomForCopyError,
    OlderWorkbookError,
    UpgradeFailedError,
)
from beeworkbook.store.form import SCHEMA_VERSION
from tests.store.small_apiary import everything, fill

RELEASED = Path(__file__).parents[1] / "data" / "workbooks"

NEXT = '''
"""A revision that only this test knows."""
import sqlalchemy as sa
from alembic import op

revision = "{number:04d}"
down_revision = "{before:04d}"


def upgrade() -> None:
    {body}
'''
ADD_A_COLUMN = 'op.add_column("stand", sa.Column("facing", sa.Text()))'
REBUILD = """with op.batch_alter_table("colony", recreate="always") as colony:
        colony.add_column(sa.Column("facing", sa.Text()))"""
FAILS_HALFWAY = 'op.create_table("half", sa.Column("id", sa.Integer())); op.execute("SELECT nothing")'
RAISES = 'raise RuntimeError("a slip")'
LOSES_ROWS = 'op.execute("DELETE FROM answer")'
BREAKS_REFERENCES = 'op.execute("UPDATE visit SET colony_id = 99")'


@pytest.fixture
def older(path: Path) -> Path:
    """A full workbook of today's form, which a made-up next revision makes the older one."""
    with create(path) as database:
        fill(database)
    return path


def _next(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, body: str, *, name: str = "scripts") -> Path:
    """The shipped revisions and one more, in force for the rest of the test."""
    scripts = tmp_path / name
    shutil.copytree(upgrade.SCRIPTS, scripts)
    number = SCHEMA_VERSION + 1
    text = NEXT.format(number=number, before=SCHEMA_VERSION, body=body)
    (scripts / "versions" / f"{number:04d}_next.py").write_text(text)
    monkeypatch.setattr(upgrade.upgrade, "__defaults__", (scripts,))
    for module in (opening, header):
        monkeypatch.setattr(module, "SCHEMA_VERSION", number)
    return scripts


def _number(path: Path) -> int:
    driver = sqlite3.connect(path)
    (number,) = driver.execute("PRAGMA user_version").fetchone()
    driver.close()
    return int(number)


def _columns(path: Path, table: str) -> list[str]:
    driver = sqlite3.connect(path)
    names = [row[1] for row in driver.execute(f"PRAGMA table_info({table})")]
    driver.close()
    return names


@pytest.mark.parametrize("number", range(1, SCHEMA_VERSION + 1))
def test_a_full_workbook_of_every_released_form_opens(number: int, path: Path, tmp_path: Path) -> None:
    shutil.copy(RELEASED / f"form_{number}.beebook", path)
    with open_database(path, copies=tmp_path / "copies") as database:
        assert check(database) == ()
        assert all(database.reader.find(cls) for cls in RECORD_TYPES)
        assert all(
            database.reader.visit_totals(visit.id).visit == visit for visit in database.reader.find(Visit)
        )


def test_the_kept_workbook_of_form_1_is_walked_on(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copy(RELEASED / "form_1.beebook", path)
    with open_database(path) as database:
        before = everything(database)
    _next(tmp_path, monkeypatch, REBUILD)
    with open_database(path) as database:
        assert everything(database) == before
        assert check(database) == ()
    assert _number(path) == SCHEMA_VERSION + 1


@pytest.mark.parametrize("body", [ADD_A_COLUMN, REBUILD])
def test_an_older_workbook_is_copied_then_brought_up_to_date(
    older: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, body: str
) -> None:
    with open_database(older) as database:
        before = everything(database)
    _next(tmp_path, monkeypatch, body)
    with open_database(older, copies=tmp_path / "copies") as database:
        assert everything(database) == before
        assert database.link.row("PRAGMA foreign_keys") == (1,)
        assert database.shelf is not None
        (copy,) = database.shelf.copies()
    assert (copy.kind, copy.form) == (CopyKind.FORM, SCHEMA_VERSION)
    assert _number(copy.path) == SCHEMA_VERSION
    assert _number(older) == SCHEMA_VERSION + 1
    assert "facing" in _columns(older, "colony" if body is REBUILD else "stand")
    with open_database(older, copies=tmp_path / "copies") as database:
        assert database.shelf is not None
        assert len(database.shelf.copies()) == 1


@pytest.mark.parametrize("body", [FAILS_HALFWAY, RAISES])
def test_a_revision_that_fails_leaves_the_workbook_as_it_was(
    older: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, body: str
) -> None:
    before = hashlib.sha256(older.read_bytes()).digest()
    _next(tmp_path, monkeypatch, body)
    with pytest.raises(UpgradeFailedError, match="left as it was"):
        open_database(older, copies=tmp_path / "copies")
    assert hashlib.sha256(older.read_bytes()).digest() == before
    assert _number(older) == SCHEMA_VERSION


@pytest.mark.parametrize("body", [LOSES_ROWS, BREAKS_REFERENCES])
def test_a_revision_that_loses_rows_or_references_is_noticed_and_put_back(
    older: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, body: str
) -> None:
    with open_database(older) as database:
        before = everything(database)
    _next(tmp_path, monkeypatch, body)
    with pytest.raises(UpgradeFailedError):
        open_database(older, copies=tmp_path / "copies")
    monkeypatch.undo()
    assert _number(older) == SCHEMA_VERSION
    with open_database(older) as database:
        assert everything(database) == before


def test_an_older_workbook_that_may_not_be_written(
    older: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _next(tmp_path, monkeypatch, ADD_A_COLUMN)
    before = older.read_bytes()
    with pytest.raises(OlderWorkbookError, match="open the copy"):
        open_database(older, read_only=True)
    assert older.read_bytes() == before


def test_without_a_copy_there_is_no_change_of_form(
    older: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _next(tmp_path, monkeypatch, ADD_A_COLUMN)
    before = older.read_bytes()
    (tmp_path / "copies").write_text("in the way")
    with pytest.raises(NoRoomForCopyError):
        open_database(older, copies=tmp_path / "copies")
    assert older.read_bytes() == before


def test_a_full_disk_leaves_the_older_workbook(
    older: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _next(tmp_path, monkeypatch, ADD_A_COLUMN)
    before = older.read_bytes()

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full)
    with pytest.raises(DiskFullError):
        upgrade.upgrade(older)
    assert older.read_bytes() == before
    assert not older.with_name(older.name + ".part").exists()


def test_a_path_with_a_percent_sign(older: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    _next(tmp_path, monkeypatch, ADD_A_COLUMN, name="50% off")
    with open_database(older, copies=tmp_path / "copies"):
        pass
    assert _number(older) == SCHEMA_VERSION + 1


def test_a_file_held_by_another_program_is_not_walked(
    older: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _next(tmp_path, monkeypatch, ADD_A_COLUMN)
    monkeypatch.setattr(upgrade, "_WAIT_SECONDS", 0.01)
    other = sqlite3.connect(older, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(BusyError):
        upgrade.walk(older)
    other.close()
    assert _number(older) == SCHEMA_VERSION
