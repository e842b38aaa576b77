from datetime import date
from pathlib import Path

from beeworkbook.workbook.workbook import Workbook
from tests.cli.conftest import Typed


def title_of(path: Path) -> str:
    with Workbook.open(path, today=date(2026, 11, 25)) as book:
        return book.title


def test_the_example_makes_an_empty_workbook(typed: Typed, tmp_path: Path) -> None:
    path = tmp_path / "bees.beebook"
    told = typed("new", path, "--title", "Home apiary")
    assert (told.code, told.err) == (0, "")
    assert str(path) in told.out
    assert title_of(path) == "Home apiary"


def test_without_an_ending_it_gets_one_and_without_a_title_its_name(typed: Typed, tmp_path: Path) -> None:
    assert typed("new", tmp_path / "shed").code == 0
    assert title_of(tmp_path / "shed.beebook") == "shed"


def test_a_file_that_is_there_is_left(typed: Typed, sample: Path) -> None:
    before = sample.read_bytes()
    told = typed("new", sample)
    assert told.code == 1
    assert "left as it is" in told.err
    assert sample.read_bytes() == before


def test_a_folder_that_is_not_there_is_said(typed: Typed, tmp_path: Path) -> None:
    told = typed("new", tmp_path / "no" / "bees.beebook")
    assert told.code == 1
    assert told.err.count("\n") == 1
