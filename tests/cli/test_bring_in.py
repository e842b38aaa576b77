from pathlib import Path

import pytest

from beeworkbook.cli import bring_in
from beeworkbook.resources import sample_folder
from tests.cli.conftest import Typed

SAMPLE = sample_folder() / "sample.json"


def test_the_sample_is_brought_in(typed: Typed, tmp_path: Path) -> None:
    told = typed("import", SAMPLE, tmp_path / "bees.beebook")
    assert (told.code, told.err) == (0, "")
    assert typed("check", tmp_path / "bees.beebook").code == 0


@pytest.mark.parametrize(
    ("held", "part"),
    [
        (b"", ""),
        (b"[]", ""),
        (b'{"format": "bees"}', "format"),
        (b"\xff\xfe", ""),
        (b"[" * 20_000, ""),
        (SAMPLE.read_bytes()[:100_000], ""),
        (SAMPLE.read_bytes().replace(b'"places": 11', b'"places": 1e999', 1), "places"),
    ],
)
def test_what_is_wrong_is_refused_whole(typed: Typed, tmp_path: Path, held: bytes, part: str) -> None:
    source, target = tmp_path / "bad.json", tmp_path / "bees.beebook"
    source.write_bytes(held)
    told = typed("import", source, target)
    assert told.code == 1
    assert told.err.count("\n") == 1
    assert part in told.err
    assert [path.name for path in tmp_path.iterdir()] == ["bad.json"]


def test_a_document_that_is_not_there_is_said(typed: Typed, tmp_path: Path) -> None:
    told = typed("import", tmp_path / "no.json", tmp_path / "bees.beebook")
    assert (told.code, told.out) == (1, "")
    assert "no.json" in told.err


def test_a_workbook_that_is_there_is_left(typed: Typed, sample: Path) -> None:
    before = sample.read_bytes()
    assert typed("import", SAMPLE, sample).code == 1
    assert sample.read_bytes() == before


def test_progress_is_shown_to_nobody_but_a_person(capsys: pytest.CaptureFixture[str]) -> None:
    bring_in.tell_progress(1, 2)
    bring_in.end_progress()
    assert capsys.readouterr().err == ""
