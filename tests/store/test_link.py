import sqlite3
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from beeworkbook.colony.records import Apiary, ApiaryId, Setting
from beeworkbook.store.check import check
from beeworkbook.store.database import Database, create, open_database
from beeworkbook.store.errors import BrokenRuleError, CannotOpenError, ReadOnlyError
from beeworkbook.store.link import Link

JOURNAL_MAGIC = bytes.fromhex("d9d505f920a163d7")
"""How a rollback journal begins. Source: SQLite, database file format, section 3."""


def test_foreign_keys_full_syncing_and_a_log_once_it_is_written(database: Database) -> None:
    link = database.link
    assert link.row("PRAGMA foreign_keys") == (1,)
    assert link.row("PRAGMA synchronous") == (2,)
    assert link.row("PRAGMA journal_mode") == ("delete",)
    with database.write():
        assert link.driver.in_transaction
    assert link.row("PRAGMA journal_mode") == ("wal",)


def test_reads_within_one_call_see_one_state(database: Database) -> None:
    link = database.link
    with link.reading(), link.reading():
        assert link.driver.in_transaction
    assert not link.driver.in_transaction
    with database.write():
        with link.reading():
            pass
        assert link.driver.in_transaction


def test_rows_and_the_lack_of_them(database: Database) -> None:
    link = database.link
    assert link.row("SELECT id FROM setting") is None
    for row in (("a", "1"), ("b", "2")):
        link.run("INSERT INTO setting VALUES (?, ?)", row)
    assert link.rows("SELECT id, value FROM setting WHERE id = :id", {"id": "b"}) == [("b", "2")]


def test_every_way_to_ask_tells_what_went_wrong(database: Database) -> None:
    link = database.link
    for ask in (link.rows, link.row, link.run):
        with pytest.raises(BrokenRuleError):
            ask("SELECT nothing")
    with pytest.raises(BrokenRuleError), link.reading():
        link.driver.execute("SELECT nothing")
    assert not link.driver.in_transaction


def _in_a_thread(work: Callable[[], object]) -> object:
    with ThreadPoolExecutor(1) as pool:
        return pool.submit(work).result()


def test_another_thread_reads_what_is_kept_and_not_what_is_in_the_making(database: Database) -> None:
    def names() -> object:
        return [apiary.name for apiary in database.reader.apiaries()]

    with database.write() as tx:
        tx.add(Apiary(ApiaryId(0), "Orchard"))
    assert _in_a_thread(names) == ["Orchard"]
    with database.write() as tx:
        tx.add(Apiary(ApiaryId(0), "Heath"))
        assert names() == ["Orchard", "Heath"]
        assert _in_a_thread(names) == ["Orchard"]
    assert _in_a_thread(names) == ["Orchard", "Heath"]
    database.close()
    assert [entry.name for entry in database.path.parent.iterdir()] == [database.path.name]


def test_another_thread_may_write_and_sees_what_it_writes(database: Database) -> None:
    def write() -> object:
        with database.write() as tx:
            tx.add(Apiary(ApiaryId(0), "Orchard"))
            return [apiary.name for apiary in database.reader.apiaries()]

    assert _in_a_thread(write) == ["Orchard"]
    assert [apiary.name for apiary in database.reader.apiaries()] == ["Orchard"]


def test_another_thread_sees_one_state_within_one_call(database: Database) -> None:
    def read() -> object:
        with database.link.reading():
            before = database.reader.apiaries()
            with ThreadPoolExecutor(1) as pool:
                pool.submit(write).result()
            return before == database.reader.apiaries()

    def write() -> None:
        with database.write() as tx:
            tx.add(Apiary(ApiaryId(0), "Orchard"))

    write()
    assert _in_a_thread(read) is True
    assert len(database.reader.apiaries()) == 2


def test_a_link_that_cannot_be_made_is_told_and_leaves_nothing(tmp_path: Path) -> None:
    with pytest.raises(CannotOpenError):
        Link(tmp_path / "nowhere" / "x")
    with pytest.raises(CannotOpenError):
        Link(tmp_path / "x")
    assert list(tmp_path.iterdir()) == []


def test_a_place_with_unusual_letters_opens(tmp_path: Path) -> None:
    path = tmp_path / "bees? #1 50%26 & café.beebook"
    create(path).close()
    link = Link(path, read_only=True)
    assert link.row("SELECT count(*) FROM apiary") == (0,)
    with pytest.raises(ReadOnlyError):
        link.begin()
    link.close()


def test_the_driver_is_closed_when_it_cannot_be_prepared(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    create(path).close()
    closed = []

    class Driver(sqlite3.Connection):
        def close(self) -> None:
            closed.append(self)
            super().close()

        def execute(self, *_: object) -> sqlite3.Cursor:
            raise sqlite3.OperationalError("x")

    connect = sqlite3.connect
    monkeypatch.setattr(sqlite3, "connect", lambda *args, **more: connect(*args, factory=Driver, **more))
    with pytest.raises(BrokenRuleError):
        Link(path)
    assert closed


def test_settled_the_file_alone_holds_what_was_written(path: Path) -> None:
    path.touch()
    link = Link(path)
    for number in (1, 2):
        link.begin()
        link.run("CREATE TABLE IF NOT EXISTS kept (number INTEGER)")
        link.run("INSERT INTO kept VALUES (?)", (number,))
        link.commit()
        if number == 1:
            link.settle()
    alone = path.with_name("alone.beebook")
    alone.write_bytes(path.read_bytes())
    copied = Link(alone, read_only=True)
    assert copied.rows("SELECT number FROM kept") == [(1,)]
    copied.close()
    link.begin()
    link.settle()  # within a write there is nothing to be folded yet
    link.roll_back()
    link.close()


@pytest.mark.parametrize(
    "left",
    [b"", b"\0" * 512, b"\0" * 4096 + b"half a page", JOURNAL_MAGIC + b"\0" * 504],
)
def test_a_journal_with_nothing_in_it_that_a_killed_program_left_goes_at_the_close(
    path: Path, left: bytes
) -> None:
    with create(path) as database, database.write() as tx:
        tx.put(Setting("title", "Kept"))
    journal = path.with_name(path.name + "-journal")
    journal.write_bytes(left)
    with open_database(path) as database:
        assert database.reader.setting("title") == "Kept"
        assert check(database) == ()
    assert [entry.name for entry in path.parent.iterdir()] == [path.name]
    with open_database(path) as database:
        assert database.reader.setting("title") == "Kept"
