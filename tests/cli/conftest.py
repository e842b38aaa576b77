"""The command line as a person types it, and a copy of the sample to type at."""

import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from beeworkbook.cli.main import main
from beeworkbook.resources import sample_folder
from beeworkbook.workbook.exchange import import_book
from beeworkbook.workbook.sample_copy import SAMPLE_FILE


@dataclass(frozen=True)
class Told:
    """What a command gave back."""

    code: int
    out: str
    err: str


Typed = Callable[..., Told]


@pytest.fixture
def typed(capsys: pytest.CaptureFixture[str]) -> Typed:
    """Type a command on 25 November 2026."""

    def type_it(*words: object) -> Told:
        capsys.readouterr()
        code = main(["--today", "2026-11-25", *map(str, words)])
        told = capsys.readouterr()
        return Told(code, told.out, told.err)

    return type_it


@pytest.fixture(scope="session")
def kept_sample(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("sample") / "kept.beebook"
    import_book(sample_folder() / SAMPLE_FILE, path)
    return path


@pytest.fixture
def sample(kept_sample: Path, tmp_path: Path) -> Path:
    """A workbook of the sample, for this test alone."""
    return Path(shutil.copy(kept_sample, tmp_path / "bees.beebook"))
