import sqlite3
from contextlib import closing
from pathlib import Path

from tests.cli.conftest import Typed


def test_the_sample_is_in_order(typed: Typed, sample: Path) -> None:
    before = sample.read_bytes()
    told = typed("check", sample)
    assert (told.code, told.err) == (0, "")
    assert "is in order" in told.out
    assert sample.read_bytes() == before


def test_totals_that_were_tampered_with_are_found(typed: Typed, sample: Path) -> None:
    with closing(sqlite3.connect(sample)) as base:
        tables = [name for (name,) in base.execute("select name from sqlite_master where type = 'table'")]
        (totals,) = [name for name in tables if "total" in name or "tall" in name]
        columns = [row[1] for row in base.execute(f"pragma table_info({totals})")]
        column = next(name for name in columns if "egg" in name or name == "cells")
        base.execute(
            f"update {totals} set {column} = {column} + 7 where rowid in (select rowid from {totals} limit 1)"
        )
        base.commit()
    told = typed("check", sample)
    assert told.code == 1
    assert told.out.strip()
    assert "is not in order: one thing was found" in told.err


def test_a_file_that_is_no_workbook_is_said(typed: Typed, tmp_path: Path) -> None:
    (tmp_path / "x.txt").write_text("bees")
    told = typed("check", tmp_path / "x.txt")
    assert told.code == 1
    assert "is not a workbook" in told.err
