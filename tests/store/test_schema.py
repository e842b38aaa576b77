import sqlite3
from pathlib import Path
from typing import Any

from sqlalchemy import create_engine

from beeworkbook.colony.records import RECORD_TYPES
from beeworkbook.comb.contents import CONTENTS
from beeworkbook.store import schema
from beeworkbook.store.form import SCHEMA_VERSION
from beeworkbook.store.schema import TABLES
from beeworkbook.store.tallies import TALLY_COLUMNS
from beeworkbook.store.upgrade import SCRIPTS, blank_workbook


def _shape(driver: sqlite3.Connection) -> dict[str, Any]:
    asked = "SELECT name, sql FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
    shape: dict[str, Any] = {}
    for name, text in driver.execute(asked).fetchall():
        if name != "alembic_version":
            columns = driver.execute(f"PRAGMA table_xinfo({name})").fetchall()
            keys = sorted(key[2:] for key in driver.execute(f"PRAGMA foreign_key_list({name})"))
            shape[name] = (columns, keys, "AUTOINCREMENT" in text, text.count("CONSTRAINT"))
    asked = "SELECT name, sql FROM sqlite_master WHERE type = 'index' AND sql IS NOT NULL"
    return shape | {"indexes": sorted(driver.execute(asked).fetchall())}


def test_the_revisions_make_what_the_schema_says(tmp_path: Path) -> None:
    walked, said = tmp_path / "walked", tmp_path / "said"
    walked.write_bytes(blank_workbook())
    engine = create_engine(f"sqlite:///{said}")
    schema.metadata.create_all(engine)
    engine.dispose()
    shapes = []
    for path in (walked, said):
        driver = sqlite3.connect(path)
        shapes.append(_shape(driver))
        driver.close()
    assert shapes[0] == shapes[1]


def test_the_last_revision_is_the_form_this_program_writes() -> None:
    numbers = sorted(int(path.name[:4]) for path in (SCRIPTS / "versions").glob("[0-9]*.py"))
    assert numbers == list(range(1, SCHEMA_VERSION + 1))


def test_a_revision_never_leans_on_what_may_change() -> None:
    for path in (SCRIPTS / "versions").glob("*.py"):
        assert "beeworkbook" not in path.read_text(encoding="utf-8")


def test_every_table_is_a_record_or_belongs_to_a_side() -> None:
    assert set(schema.metadata.tables) == {table.name for table in TABLES.values()} | {"comb", "tally"}
    assert len(schema.metadata.tables) == len(RECORD_TYPES) + 2


def test_every_reference_is_restricted_and_says_what_hangs() -> None:
    for table in TABLES.values():
        for column in table.columns:
            for key in column.foreign_keys:
                assert key.ondelete == "RESTRICT"
                assert column.nullable or column.info["hangs"]


def test_a_count_for_every_content() -> None:
    assert len(TALLY_COLUMNS) == len(CONTENTS)
    assert TALLY_COLUMNS[4] == "eggs_cells"
