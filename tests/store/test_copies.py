import sqlite3
from datetime import date, timedelta
from pathlib import Path

import pytest

from beeworkbook.colony.records import Setting
from beeworkbook.store.copies import DAYS, WEEKS, Copy, CopyKind, CopyShelf, outlived
from beeworkbook.store.database import Database, open_database
from beeworkbook.store.errors import (
    AlreadyOpenError,
    CannotOpenError,
    DamagedWorkbookError,
    DiskFullError,
    NotAWorkbookError,
    StoreError,
)
from beeworkbook.store.link import Link

TODAY = date(2026, 5, 1)


@pytest.fixture
def shelf(path: Path, tmp_path: Path) -> CopyShelf:
    return CopyShelf(tmp_path / "copies", path)


def _write(database: Database, name: str) -> None:
    with database.write() as tx:
        tx.put(Setting("title", name))


def _title(path: Path) -> str:
    with open_database(path, read_only=True) as database:
        return database.reader.setting("title")


def test_one_copy_a_day(database: Database, shelf: CopyShelf) -> None:
    _write(database, "first")
    made = shelf.keep_day(database.link, TODAY)
    assert made is not None
    _write(database, "second")
    assert shelf.keep_day(database.link, TODAY) is None
    (copy,) = shelf.copies()
    assert (copy.path, copy.kind, copy.day, copy.form) == (made, CopyKind.DAY, TODAY, None)
    assert copy.size_bytes == made.stat().st_size
    assert _title(made) == "first"
    assert [entry.name for entry in shelf.folder.iterdir()] == [made.name]


def test_a_damaged_workbook_takes_no_place_among_the_copies(
    database: Database, shelf: CopyShelf, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Link, "row", lambda _self, _text: ("row 3 missing from index",))
    with pytest.raises(DamagedWorkbookError) as told:
        shelf.keep_day(database.link, TODAY)
    assert "row 3" in told.value.detail
    monkeypatch.undo()
    assert shelf.copies() == ()


def test_seven_days_and_eight_weeks_are_kept(database: Database, shelf: CopyShelf) -> None:
    for after in range(150):
        shelf.keep_day(database.link, TODAY + timedelta(days=after))
    days = [copy.day for copy in shelf.copies() if copy.day]
    last = TODAY + timedelta(days=149)
    assert days[:DAYS] == [last - timedelta(days=before) for before in range(DAYS)]
    weeks = days[DAYS:]
    assert len(weeks) == WEEKS
    assert all(day.weekday() == 0 for day in weeks)
    assert weeks == [weeks[0] - timedelta(days=7 * before) for before in range(WEEKS)]


def test_copies_of_rare_days_are_kept_long() -> None:
    copies = tuple(
        Copy(Path(str(before)), CopyKind.DAY, TODAY - timedelta(days=40 * before), None, 1)
        for before in range(20)
    )
    assert outlived(copies) == copies[DAYS + WEEKS :]


def test_copies_before_a_change_of_form_are_all_kept(database: Database, shelf: CopyShelf) -> None:
    first, second = shelf.keep_form(database.link, 1), shelf.keep_form(database.link, 1)
    third = shelf.keep_form(database.link, 2)
    for after in range(100):
        shelf.keep_day(database.link, TODAY + timedelta(days=after))
    forms = [copy for copy in shelf.copies() if copy.kind is CopyKind.FORM]
    assert [(copy.path, copy.form) for copy in forms] == [(third, 2), (first, 1), (second, 1)]


def test_two_workbooks_of_one_name_share_no_shelf(tmp_path: Path) -> None:
    one, other = (CopyShelf(tmp_path, tmp_path / folder / "bees.beebook") for folder in "ab")
    assert one.folder != other.folder
    assert one.folder.name.startswith("bees-")
    assert one.copies() == ()


def test_what_is_no_copy_is_passed_over(database: Database, shelf: CopyShelf) -> None:
    shelf.keep_day(database.link, TODAY)
    for name in ("day-2026-13-45.beebook", "notes.txt", "day-2026-05-02.beebook.part"):
        (shelf.folder / name).write_text("x")
    assert [copy.day for copy in shelf.copies()] == [TODAY]


def test_restoring_puts_a_copy_back_and_keeps_what_was(
    database: Database, shelf: CopyShelf, path: Path
) -> None:
    _write(database, "first")
    shelf.keep_day(database.link, TODAY)
    _write(database, "second")
    (copy,) = shelf.copies()
    with pytest.raises(AlreadyOpenError):
        shelf.restore(copy)
    assert database.reader.setting("title") == "second"
    database.close()
    shelf.restore(copy)
    assert _title(path) == "first"
    (before,) = (copy for copy in shelf.copies() if copy.kind is CopyKind.BEFORE)
    assert _title(before.path) == "second"
    shelf.restore(before)
    assert _title(path) == "second"
    assert sorted(entry.name for entry in path.parent.iterdir()) == ["copies", path.name]


def test_restoring_where_the_workbook_is_gone_or_damaged(
    database: Database, shelf: CopyShelf, path: Path
) -> None:
    _write(database, "first")
    shelf.keep_day(database.link, TODAY)
    (copy,) = shelf.copies()
    database.close()
    path.unlink()
    shelf.restore(copy)
    assert _title(path) == "first"
    path.write_bytes(b"scribble")
    shelf.restore(copy)
    assert _title(path) == "first"
    (before,) = (copy for copy in shelf.copies() if copy.kind is CopyKind.BEFORE)
    assert before.path.read_bytes() == b"scribble"


def test_the_log_of_the_workbook_that_was_is_not_played_into_the_copy(
    database: Database, shelf: CopyShelf, path: Path
) -> None:
    _write(database, "first")
    shelf.keep_day(database.link, TODAY)
    (copy,) = shelf.copies()
    database.close()
    path.with_name(path.name + "-wal").write_bytes(b"left over")
    shelf.restore(copy)
    assert not path.with_name(path.name + "-wal").exists()
    assert _title(path) == "first"


def test_a_damaged_copy_is_not_restored(database: Database, shelf: CopyShelf, path: Path) -> None:
    _write(database, "first")
    made = shelf.keep_day(database.link, TODAY)
    assert made is not None
    database.close()
    (copy,) = shelf.copies()
    driver = sqlite3.connect(made)
    (page,) = driver.execute("SELECT rootpage FROM sqlite_master WHERE name = 'colony'").fetchone()
    driver.close()
    content = bytearray(made.read_bytes())
    content[(page - 1) * 4096 : page * 4096] = bytes(range(256)) * 16
    made.write_bytes(content)
    before = path.read_bytes()
    with pytest.raises(DamagedWorkbookError):
        shelf.restore(copy)
    made.write_text("gone")
    with pytest.raises(NotAWorkbookError):
        shelf.restore(copy)
    assert path.read_bytes() == before


def test_a_full_disk_while_restoring_leaves_the_workbook(
    database: Database, shelf: CopyShelf, path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _write(database, "first")
    shelf.keep_day(database.link, TODAY)
    (copy,) = shelf.copies()
    _write(database, "second")
    database.close()

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("shutil.copyfile", full)
    with pytest.raises(DiskFullError):
        shelf.restore(copy)
    monkeypatch.undo()
    assert _title(path) == "second"


def test_a_copy_that_fails_leaves_nothing(
    database: Database, shelf: CopyShelf, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf.folder.mkdir(parents=True)

    def refused(*_: object) -> None:
        raise PermissionError(13, "no")

    monkeypatch.setattr(Path, "rename", refused)
    with pytest.raises(CannotOpenError):
        shelf.keep_day(database.link, TODAY)
    monkeypatch.undo()
    assert list(shelf.folder.iterdir()) == []
    shelf.folder.rmdir()
    shelf.folder.write_text("in the way")
    with pytest.raises(StoreError):
        shelf.keep_day(database.link, TODAY)
