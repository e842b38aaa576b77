from typing import Any

import pytest
from sqlalchemy import bindparam, select

from beeworkbook.colony.records import RECORD_TYPES, Side
from beeworkbook.store import schema
from beeworkbook.store.rows import TABLES, RowForm, form_of
from beeworkbook.store.statements import (
    delete_text,
    find_text,
    get_text,
    insert_text,
    once,
    ordered,
    update_text,
)


def test_a_statement_takes_its_values_in_the_order_asked() -> None:
    asked = select(schema.setting).where(
        schema.setting.c.id == bindparam("a"), schema.setting.c.value == bindparam("b")
    )
    assert ordered(asked, ("a", "b")).count("?") == 2
    with pytest.raises(ValueError, match="a"):
        ordered(asked, ("b", "a"))


@pytest.mark.parametrize("cls", RECORD_TYPES)
def test_every_table_can_be_read_and_written(cls: type) -> None:
    table = TABLES[cls]
    form: RowForm[Any] = form_of(cls)
    assert get_text(cls).count("?") == 1
    assert insert_text(table, form.columns).count("?") == len(form.columns)
    assert update_text(table, form.columns[1:]).count("?") == len(form.columns)
    assert delete_text(table).count("?") == 1
    assert ("comb" in get_text(cls)) is (cls is Side)


def test_a_blank_is_asked_for_without_a_value() -> None:
    text = find_text(Side, ("covered", "place"), frozenset({"covered"}))
    assert "covered IS NULL" in text
    assert text.count("?") == 1


def test_a_text_is_worked_out_once() -> None:
    made: list[int] = []

    @once
    def text(number: int) -> str:
        made.append(number)
        return str(number)

    assert [text(1), text(1), text(2)] == ["1", "1", "2"]
    assert made == [1, 2]
