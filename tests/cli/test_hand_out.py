from pathlib import Path

import pytest

from beeworkbook.cli.main import main
from beeworkbook.resources import sample_folder
from tests.cli.conftest import Typed

SAMPLE = sample_folder() / "sample.json"


def test_what_was_brought_in_is_handed_out_the_same_to_the_byte(
    typed: Typed, sample: Path, tmp_path: Path
) -> None:
    target = tmp_path / "bees.json"
    told = typed("export", sample, target)
    assert (told.code, told.err) == (0, "")
    assert target.read_bytes() == SAMPLE.read_bytes()


def test_it_is_shown_with_a_dash(sample: Path, capfdbinary: pytest.CaptureFixture[bytes]) -> None:
    assert main(["export", str(sample), "-"]) == 0
    assert capfdbinary.readouterr().out == SAMPLE.read_bytes()


def test_a_document_is_written_over_only_when_asked(typed: Typed, sample: Path, tmp_path: Path) -> None:
    target = tmp_path / "bees.json"
    target.write_bytes(b"{}")
    told = typed("export", sample, target)
    assert told.code == 1
    assert target.read_bytes() == b"{}"
    assert typed("export", sample, target, "--replace").code == 0
    assert target.read_bytes() == SAMPLE.read_bytes()


def test_what_is_no_workbook_is_not_touched(typed: Typed, tmp_path: Path) -> None:
    path = tmp_path / "letter.txt"
    path.write_text("Dear bees")
    told = typed("export", path, tmp_path / "bees.json")
    assert told.code == 1
    assert "left as it is" in told.err
    assert path.read_text() == "Dear bees"
    assert not (tmp_path / "bees.json").exists()
