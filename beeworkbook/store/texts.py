"""The texts of all statements, by name, as statements.py writes them; and what hangs on what.

They lie in texts.json, so that starting the program does not wait for SQLAlchemy.
"""

import json
from functools import cache
from pathlib import Path
from typing import Any, Final

TEXTS_FILE: Final = Path(__file__).with_name("texts.json")


@cache
def _held() -> dict[str, Any]:
    held: dict[str, Any] = json.loads(TEXTS_FILE.read_text(encoding="utf-8"))
    return held


@cache
def text(name: str) -> str:
    """The text of a statement. Errors: KeyError if there is none of this name."""
    found: str = _held()["texts"][name]
    return found


def ties(table: str) -> list[tuple[str, str, bool]]:
    """Every reference to a table: the other table, its field, and whether the other hangs on it."""
    return [(other, field, hangs) for other, field, hangs in _held()["ties"][table]]


@cache
def find_text(table: str, names: tuple[str, ...], blank: frozenset[str]) -> str:
    """The records with these values in these fields, by id; `blank` are the fields asked to be blank.

    The names are those of a record's fields and never come from outside.
    """
    tests = [f'"{table}"."{name}" {"IS NULL" if name in blank else "= ?"}' for name in names]
    where = f" WHERE {' AND '.join(tests)}" if tests else ""
    return f'{text(f"all {table}")}{where} ORDER BY "{table}"."id"'
