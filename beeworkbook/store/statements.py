"""The statements every table shares, built from the schema and turned into text once.

What is asked is written with SQLAlchemy; what is sent is its text with named places. The reads that
a face needs are beside where they are used.
"""

from collections.abc import Callable
from functools import cache
from typing import Any, Final, ParamSpec, TypeVar

from sqlalchemy import Executable, Select, Table, bindparam, delete, insert, select, update
from sqlalchemy.dialects.sqlite import dialect as sqlite_dialect
from sqlalchemy.sql.elements import ColumnElement

from beeworkbook.colony.records import Side
from beeworkbook.store import schema
from beeworkbook.store.rows import TABLES, form_of

_DIALECT: Final = sqlite_dialect(paramstyle="qmark")
_NAMED: Final = sqlite_dialect(paramstyle="named")


_P = ParamSpec("_P")
_T = TypeVar("_T")


def once(make: Callable[_P, _T]) -> Callable[_P, _T]:
    """Work out what a statement says the first time it is asked for, and keep it."""
    kept: Any = cache(make)  # its own type would lose what the function takes
    return kept  # type: ignore[no-any-return]


def text_of(statement: Executable) -> str:
    """The text of a statement, its open places named as in the statement."""
    return str(statement.compile(dialect=_NAMED))  # type: ignore[attr-defined]


def ordered(statement: Executable, keys: tuple[str, ...]) -> str:
    """The text of a statement whose places are filled in the order of these keys.

    Errors: ValueError if it would take them in another order.
    """
    compiled = statement.compile(dialect=_DIALECT)  # type: ignore[attr-defined]
    if tuple(compiled.positiontup or ()) != keys:
        raise ValueError((compiled.positiontup, keys))
    return str(compiled)


@once
def chosen(cls: type[Any]) -> Select[tuple[object, ...]]:
    """Every field of a record class, in the order of its fields, from wherever they lie."""
    form = form_of(cls)
    if cls is not Side:
        return select(*(form.table.c[name] for name in form.names))
    columns = (schema.comb.c.cells if name == form.blob else form.table.c[name] for name in form.names)
    return select(*columns).join_from(schema.side, schema.comb, schema.comb.c.side_id == schema.side.c.id)


@once
def get_text(cls: type[Any]) -> str:
    """One record by its id."""
    return ordered(chosen(cls).where(TABLES[cls].c.id == bindparam("id")), ("id",))


@once
def find_text(cls: type[Any], names: tuple[str, ...], blank: frozenset[str]) -> str:
    """The records with these values in these fields, by id; `blank` are the fields asked to be blank."""
    table = TABLES[cls]
    tests: list[ColumnElement[bool]] = [
        table.c[name].is_(None) if name in blank else table.c[name] == bindparam(name) for name in names
    ]
    asked = tuple(name for name in names if name not in blank)
    return ordered(chosen(cls).where(*tests).order_by(table.c.id), asked)


@once
def any_text(cls: type[Any], name: str) -> str:
    """One id of a record with this value in this field: whether there is any."""
    table = TABLES[cls]
    return ordered(select(table.c.id).where(table.c[name] == bindparam(name)), (name,))


@once
def insert_text(table: Table, columns: tuple[str, ...]) -> str:
    """A new row with these columns."""
    return ordered(insert(table).values({name: bindparam(name) for name in columns}), columns)


@once
def update_text(table: Table, columns: tuple[str, ...], key: str = "id") -> str:
    """Another value in these columns, in the row with this key, which comes last."""
    values: dict[Any, Any] = {name: bindparam(name) for name in columns}
    return ordered(
        update(table).where(table.c[key] == bindparam("its_key")).values(values), (*columns, "its_key")
    )


@once
def delete_text(table: Table, key: str = "id") -> str:
    """The row with this key, gone."""
    return ordered(delete(table).where(table.c[key] == bindparam("its_key")), ("its_key",))
