import subprocess
import sys
from pathlib import Path

import pytest

from beeworkbook.store.database import create
from beeworkbook.store.texts import find_text, text, ties


def test_a_text_is_found_by_its_name() -> None:
    assert text("get setting").startswith("SELECT setting.id")
    with pytest.raises(KeyError):
        text("get weather")


def test_a_blank_is_asked_for_without_a_value() -> None:
    asked = find_text("side", ("covered", "place"), frozenset({"covered"}))
    assert '"side"."covered" IS NULL AND "side"."place" = ?' in asked
    assert "WHERE" not in find_text("setting", (), frozenset())


def test_what_hangs_on_what_is_known() -> None:
    assert ("answer", "visit_id", True) in ties("visit")
    assert ("event", "visit_id", False) in ties("visit")
    assert ties("setting") == []


def test_opening_and_reading_a_workbook_loads_no_sqlalchemy(path: Path) -> None:
    create(path).close()
    program = """
import sys
from datetime import date
from pathlib import Path
from beeworkbook.colony.records import Apiary, ApiaryId
from beeworkbook.store.database import open_database
with open_database(Path(sys.argv[1])) as database:
    with database.write() as tx:
        orchard = tx.add(Apiary(ApiaryId(0), "Orchard"))
    with database.write() as tx:
        tx.remove(Apiary, orchard.id)
    database.reader.standing(orchard.id, date(2026, 5, 1))
    database.reader.season([1], date(2026, 1, 1), date(2027, 1, 1))
print([name for name in sys.modules if name in {"sqlalchemy", "alembic"}])
"""
    done = subprocess.run(
        [sys.executable, "-c", program, str(path)], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
