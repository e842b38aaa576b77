"""The figures behind the chart are a line a visit of what is shown, blank where nothing was noted."""

import csv
from datetime import date
from pathlib import Path

from beeworkbook.year.choice import Arrangement, Choice
from beeworkbook.year.table import shown_days, write_table
from tests.year.season_book import SeasonBook


def lines(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def test_a_season_is_written_visit_by_visit(season_book: SeasonBook, tmp_path: Path) -> None:
    path = tmp_path / "season.csv"
    assert write_table(season_book.book, Choice((season_book.pear,), 2026), path) == 6
    found = lines(path)
    assert [line["day"] for line in found] == [
        "2026-04-18",
        "2026-04-25",
        "2026-05-02",
        "2026-05-09",
        "2026-05-16",
        "2026-05-18",
    ]
    shut = found[-1]
    assert (shut["brood_worth"], shut["stores_kg"], shut["eggs_dm2"]) == ("", "", "")
    assert found[1]["eggs_dm2"] == ""
    assert float(found[2]["eggs_dm2"]) > 0


def test_several_colonies_and_years_are_all_written(season_book: SeasonBook, tmp_path: Path) -> None:
    both = (season_book.pear, season_book.gate)
    path = tmp_path / "all.csv"
    write_table(season_book.book, Choice(both, 2026, arrangement=Arrangement.YEARS), path)
    assert {(line["colony"], line["day"][:4]) for line in lines(path)} == {
        ("Pear", "2025"),
        ("Pear", "2026"),
        ("Gate", "2025"),
        ("Gate", "2026"),
    }


def test_a_season_begins_and_ends_with_its_year(season_book: SeasonBook) -> None:
    assert shown_days(season_book.book, Choice((), 2026)) == (date(2026, 1, 1), date(2027, 1, 1))
