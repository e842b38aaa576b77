from typing import Any

import pytest
from sqlalchemy import bindparam, select

from beeworkbook.colony.records import RECORD_TYPES, Side
from beeworkbook.store import schema
from beeworkbook.store.rows import TABLE_NAMES, RowForm, form_of
from beeworkbook.store.statements import SEASON_SIDE, all_texts, all_ties, in_order
from beeworkbook.store.tallies import COLUMNS


def test_a_statement_takes_its_values_in_the_order_asked() -> None:
    asked = select(schema.setting).where(
        schema.setting.c.id == bindparam("a"), schema.setting.c.value == bindparam("b")
    )
    assert in_order(asked, ("a", "b")).count("?") == 2
    with pytest.raises(ValueError, match="a"):
        in_order(asked, ("b", "a"))


@pytest.mark.parametrize("cls", RECORD_TYPES)
def test_every_table_can_be_read_and_written(cls: type) -> None:
    form: RowForm[Any] = form_of(cls)
    texts = all_texts()
    assert texts[f"get {form.table}"].count("?") == 1
    assert texts[f"insert {form.table}"].count("?") == len(form.columns)
    assert texts[f"update {form.table}"].count("?") == len(form.columns)
    assert texts[f"remove {form.table}"].count("?") == 1
    assert ("comb" in texts[f"all {form.table}"]) is (cls is Side)


def test_a_season_reads_the_columns_that_its_rows_are_cut_by() -> None:
    columns = all_texts()["season sides"].split("FROM")[0].count(",") + 1
    assert columns == len(SEASON_SIDE) + 1 + len(COLUMNS)


def test_ties_are_of_every_table_and_let_go_first() -> None:
    ties = all_ties()
    assert set(ties) == set(TABLE_NAMES.values())
    assert ties["visit"][-1][2] is True
    assert all(
        [hangs for _, _, hangs in found] == sorted(hangs for _, _, hangs in found) for found in ties.values()
    )
