import os
import shutil
import sqlite3
import sys
from datetime import date
from pathlib import Path

import pytest

from beeworkbook.colony.records import Apiary, ApiaryId, Setting
from beeworkbook.store import database as opening
from beeworkbook.store.database import Database, create, open_database
from beeworkbook.store.errors import (
    AlreadyOpenError,
    BusyError,
    CannotOpenError,
    DamagedWorkbookError,
    DiskFullError,
    FileExistsAlreadyError,
    ForeignFileError,
    MissingFileError,
    NewerWorkbookError,
    NotAWorkbookError,
    ReadOnlyError,
)
from beeworkbook.store.form import SCHEMA_VERSION
from beeworkbook.store.lock import reach_of
from tests.store.small_apiary import SmallApiary, everything, fill

TODAY = date(2026, 5, 1)


@pytest.fixture
def closed(path: Path) -> Path:
    with create(path) as database:
        fill(database)
    return path


def _files(path: Path) -> list[str]:
    return sorted(entry.name for entry in path.parent.iterdir())


def test_a_new_workbook_is_empty_and_one_file_once_closed(path: Path) -> None:
    with create(path) as database:
        assert not any(held for held in everything(database).values())
    assert _files(path) == [path.name]


def test_work_is_one_file_again_once_closed(closed: Path) -> None:
    assert _files(closed) == [closed.name]
    with open_database(closed) as database:
        assert database.reader.setting("title") == "Orchard and heath"


def test_a_workbook_never_takes_the_place_of_a_file(path: Path) -> None:
    path.write_bytes(b"a letter")
    with pytest.raises(FileExistsAlreadyError, match="left as it is"):
        create(path)
    assert path.read_bytes() == b"a letter"


def test_a_workbook_needs_its_folder(tmp_path: Path) -> None:
    with pytest.raises(CannotOpenError):
        create(tmp_path / "nowhere" / "new.beebook")


def test_a_full_disk_leaves_no_half_made_workbook(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object) -> int:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(DiskFullError):
        create(path)
    assert _files(path) == []


def test_opening_to_look_changes_no_byte(closed: Path) -> None:
    before = closed.read_bytes()
    with open_database(closed) as database:
        everything(database)
    with open_database(closed, read_only=True) as database:
        everything(database)
    assert closed.read_bytes() == before
    assert _files(closed) == [closed.name]


def test_a_book_for_looking_cannot_be_written(closed: Path) -> None:
    with open_database(closed, read_only=True) as database:
        assert database.read_only
        with pytest.raises(ReadOnlyError), database.write() as tx:
            tx.add(Setting("x", "y"))


def test_a_file_that_may_not_be_written_opens_for_looking(
    closed: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "access", lambda _path, _mode: False)
    with open_database(closed) as database:
        assert database.read_only
        assert database.reader.apiaries()
        assert _files(closed) == [closed.name]


def test_a_book_left_with_its_log_mark_opens_in_a_folder_nobody_may_write(
    closed: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with sqlite3.connect(closed) as driver:
        driver.execute("PRAGMA journal_mode = WAL")
    driver.close()
    assert _files(closed) == [closed.name]
    assert closed.read_bytes()[18] == 2
    monkeypatch.setattr(os, "access", lambda _path, _mode: False)
    with open_database(closed) as database:
        assert database.reader.apiaries()
        assert _files(closed) == [closed.name]


def test_a_book_may_be_looked_at_while_it_is_open_elsewhere(closed: Path) -> None:
    with open_database(closed) as first, open_database(closed, read_only=True) as second:
        with first.write() as tx:
            added = tx.add(Apiary(ApiaryId(0), "Heath"))
        assert added in second.reader.apiaries()


def test_a_second_start_is_told_how_to_reach_the_first(closed: Path) -> None:
    with open_database(closed, reach="window-17") as first:
        with pytest.raises(AlreadyOpenError) as told:
            open_database(closed)
        assert told.value.reach == "window-17"
        first.say_reach("window-18")
        assert reach_of(closed) == "window-18"
    with open_database(closed):
        assert reach_of(closed) == ""


def _bytes_left(path: Path, error: type[Exception]) -> Exception:
    """Opening raises this error, for writing and for looking, and leaves the file and its folder alone."""
    before, beside = path.read_bytes(), _files(path)
    for read_only in (True, False):
        with pytest.raises(error) as told:
            open_database(path, read_only=read_only)
    assert path.read_bytes() == before
    assert _files(path) == beside
    return told.value


def test_a_missing_file(path: Path) -> None:
    with pytest.raises(MissingFileError, match="no workbook"):
        open_database(path)
    assert _files(path) == []


@pytest.mark.parametrize("content", [b"", b"Dear Ada,\n", b"SQLite format 3\x00", bytes(range(256)) * 20])
def test_a_file_that_is_something_else(path: Path, content: bytes) -> None:
    path.write_bytes(content)
    _bytes_left(path, NotAWorkbookError)


def test_a_folder_is_no_workbook(tmp_path: Path) -> None:
    with pytest.raises(NotAWorkbookError):
        open_database(tmp_path)


def test_a_file_of_another_program(path: Path) -> None:
    driver = sqlite3.connect(path)
    driver.execute("CREATE TABLE apiary (id INTEGER)")
    driver.close()
    assert "another program" in str(_bytes_left(path, ForeignFileError))


def test_a_newer_workbook(closed: Path) -> None:
    with sqlite3.connect(closed) as driver:
        driver.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")
    driver.close()
    assert "bring this program up to date" in str(_bytes_left(closed, NewerWorkbookError))


def test_a_newer_form_in_the_log_of_a_killed_program(closed: Path, tmp_path: Path) -> None:
    driver = sqlite3.connect(closed)
    driver.execute("PRAGMA journal_mode = WAL")
    driver.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")
    killed = tmp_path / "killed"
    killed.mkdir()
    for ending in ("", "-wal"):
        shutil.copy(f"{closed}{ending}", killed / f"{closed.name}{ending}")
    driver.close()
    with pytest.raises(NewerWorkbookError):
        open_database(killed / closed.name)


@pytest.mark.parametrize("share", [0.01, 0.5, 0.95])
def test_a_file_that_breaks_off(closed: Path, share: float) -> None:
    content = closed.read_bytes()
    closed.write_bytes(content[: int(len(content) * share)])
    assert "can be restored" in str(_bytes_left(closed, DamagedWorkbookError))


def test_a_file_whose_tables_are_scribbled_over(closed: Path) -> None:
    content = bytearray(closed.read_bytes())
    content[4096:] = bytes(byte ^ 0x5A for byte in content[4096:])
    closed.write_bytes(content)
    _bytes_left(closed, DamagedWorkbookError)


def test_a_workbook_without_its_tables(closed: Path) -> None:
    with sqlite3.connect(closed) as driver:
        driver.execute("DROP TABLE tally")
    driver.close()
    _bytes_left(closed, DamagedWorkbookError)


def test_a_workbook_that_was_never_given_a_form(closed: Path) -> None:
    with sqlite3.connect(closed) as driver:
        driver.execute("PRAGMA user_version = 0")
    driver.close()
    _bytes_left(closed, DamagedWorkbookError)


@pytest.mark.parametrize("small_bytes", [0, 8_000_000])
def test_damage_beyond_the_tables_is_told_at_once_or_when_it_is_met(
    closed: Path, monkeypatch: pytest.MonkeyPatch, small_bytes: int
) -> None:
    monkeypatch.setattr(opening, "_SMALL_BYTES", small_bytes)
    driver = sqlite3.connect(closed)
    (page,) = driver.execute("SELECT rootpage FROM sqlite_master WHERE name = 'comb'").fetchone()
    driver.close()
    content = bytearray(closed.read_bytes())
    content[(page - 1) * 4096 + 100 : page * 4096] = b"\xff" * (4096 - 100)
    content[(page - 1) * 4096 + 8 : (page - 1) * 4096 + 60] = b"\xee" * 52
    closed.write_bytes(content)
    with pytest.raises(DamagedWorkbookError), open_database(closed) as database:
        everything(database)


@pytest.mark.usefixtures("small")
def test_a_change_that_finds_the_disk_full_is_not_kept_and_the_rest_is(
    database: Database,
) -> None:
    before = everything(database)
    pages = database.link.rows("PRAGMA page_count")[0][0]
    database.link.run(f"PRAGMA max_page_count = {pages}")
    with pytest.raises(DiskFullError, match="All before it is safe"), database.write() as tx:
        tx.add(Setting("note", "x" * 1_000_000))
    assert everything(database) == before
    database.link.run("PRAGMA max_page_count = 1000000")
    with database.write() as tx:
        tx.add(Setting("note", "x"))


def test_a_file_held_by_another_program(database: Database) -> None:
    database.link.run("PRAGMA busy_timeout = 1")
    other = sqlite3.connect(database.path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    with pytest.raises(BusyError, match="try again"), database.write() as tx:
        tx.add(Setting("x", "y"))
    other.execute("ROLLBACK")
    other.close()
    with database.write() as tx:
        tx.add(Setting("x", "y"))


def test_a_closed_book_answers_nothing_and_closes_twice(path: Path) -> None:
    database = create(path)
    database.close()
    database.close()
    with pytest.raises(ValueError, match="closed"):
        database.write()


def test_a_copy_is_whole_while_the_book_is_open(
    database: Database, small: SmallApiary, tmp_path: Path
) -> None:
    target = tmp_path / "copy.beebook"
    database.copy_to(target)
    with open_database(target) as copy:
        assert everything(copy) == everything(database)
        assert copy.reader.apiaries() == (small.apiary,)
    with pytest.raises(FileExistsAlreadyError):
        database.copy_to(target)


def test_the_first_change_of_a_day_is_preceded_by_a_copy(closed: Path, tmp_path: Path) -> None:
    days = [TODAY]
    shelf = tmp_path / "copies"
    with open_database(closed, copies=shelf, today=lambda: days[0]) as database:
        assert database.shelf is not None
        assert database.shelf.copies() == ()
        for name in ("one", "two"):
            with database.write() as tx:
                tx.add(Setting(name, ""))
        (copy,) = database.shelf.copies()
        assert copy.day == TODAY
        days[0] = date(2026, 5, 2)
        with database.write() as tx:
            tx.add(Setting("three", ""))
        assert [copy.day for copy in database.shelf.copies()] == [date(2026, 5, 2), TODAY]
    with open_database(copy.path, read_only=True) as before:
        assert [kept.id for kept in before.reader.find(Setting)] == ["title"]


def test_a_change_is_kept_even_if_the_copy_of_the_day_fails(closed: Path, tmp_path: Path) -> None:
    (tmp_path / "copies").write_text("in the way")
    with open_database(closed, copies=tmp_path / "copies", today=lambda: TODAY) as database:
        with database.write() as tx:
            tx.add(Setting("x", "y"))
        assert isinstance(database.copy_trouble, CannotOpenError)
        assert database.reader.setting("x") == "y"


def test_a_book_on_a_network_drive_says_so(closed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(opening, "network_warning", lambda _: "a risk")
    with open_database(closed) as database:
        assert database.warning == "a risk"


def test_a_book_read_by_another_program_still_closes(closed: Path) -> None:
    database = open_database(closed)
    with database.write() as tx:
        tx.add(Setting("x", "y"))
    other = sqlite3.connect(closed, isolation_level=None)
    other.execute("BEGIN")
    other.execute("SELECT * FROM setting").fetchall()
    database.link.run("PRAGMA busy_timeout = 1")
    database.close()
    other.close()
    with open_database(closed) as again:
        assert again.reader.setting("x") == "y"
    assert _files(closed) == [closed.name]


@pytest.mark.skipif(sys.platform == "win32", reason="a link needs special rights there")
def test_a_link_leads_to_the_one_workbook(closed: Path, tmp_path: Path) -> None:
    link = tmp_path / "link.beebook"
    link.symlink_to(closed)
    with open_database(closed, reach="first"):
        assert reach_of(link) == "first"
        with pytest.raises(AlreadyOpenError):
            open_database(link)
    with open_database(link) as database:
        assert database.path == closed.resolve()
        with database.write() as tx:
            tx.add(Setting("x", "y"))
    assert link.is_symlink()
