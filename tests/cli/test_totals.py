import csv
from datetime import date
from pathlib import Path

import pytest

from beeworkbook.cli.totals import day_after
from tests.cli.conftest import Typed


def lines(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def test_a_line_a_visit_blank_where_nothing_was_looked_at(typed: Typed, sample: Path, tmp_path: Path) -> None:
    target = tmp_path / "totals.csv"
    told = typed("totals", sample, target)
    assert told.code == 0
    held = lines(target)
    assert f"Wrote {len(held)} lines" in told.out
    shut = [line for line in held if line["level"] == "not_opened"]
    assert shut
    assert {line["brood_dm2"] for line in shut} == {""}
    assert {line["eggs_cells"] for line in shut} == {""}


def test_a_line_a_side_of_one_colony_in_a_span(typed: Typed, sample: Path, tmp_path: Path) -> None:
    target = tmp_path / "sides.csv"
    words = ("--by", "side", "--colony", "Larch", "--since", "2025-05-24", "--until", "2025-06-14")
    assert typed("totals", sample, target, *words).code == 0
    held = lines(target)
    assert {line["colony"] for line in held} == {"Larch"}
    assert {line["day"] for line in held} == {"2025-05-24", "2025-06-14"}
    assert {line["side"] for line in held} == {"A", "B"}


def test_it_is_shown_with_a_dash(typed: Typed, sample: Path) -> None:
    told = typed("totals", sample, "-", "--colony", "Rook", "--until", "2025-07-01")
    assert told.code == 0
    assert told.out.startswith("day,colony,visit")
    assert told.out.count("Rook") == 3


@pytest.mark.parametrize("words", [["--by", "hive"], ["--since", "May"], ["--colony"]])
def test_words_that_are_not_understood(typed: Typed, sample: Path, tmp_path: Path, words: list[str]) -> None:
    assert typed("totals", sample, tmp_path / "t.csv", *words).code == 2
    assert not (tmp_path / "t.csv").exists()


def test_a_last_day_counts() -> None:
    assert day_after(date(2026, 5, 16)) == date(2026, 5, 17)
    assert day_after(date.max) == day_after(None) == date.max
