from beeworkbook.cli.table import table


def test_columns_stand_under_one_another() -> None:
    assert (
        table(["day", "kg"], [["Monday", "8"], ["", "12"]], right=[1]) == "day     kg\nMonday   8\n        12"
    )


def test_a_table_without_rows_is_its_headings() -> None:
    assert table(["day", "kg"], []) == "day  kg"
