from datetime import date
from pathlib import Path

import pytest

from beeworkbook.resources import MissingResourceError
from beeworkbook.workbook import sample_copy as module
from beeworkbook.workbook.sample_copy import sample_copy
from beeworkbook.workbook.workbook import Workbook


def test_the_copy_is_a_sample_and_made_once(tmp_path: Path) -> None:
    path = sample_copy(tmp_path / "new folder")
    with Workbook.open(path, today=date(2026, 11, 25)) as book:
        assert book.is_sample
    path.write_bytes(b"the keeper's own")
    assert sample_copy(path.parent) == path
    assert path.read_bytes() == b"the keeper's own"


def test_a_sample_that_was_not_shipped_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def gone() -> Path:
        raise MissingResourceError("gone")

    monkeypatch.setattr(module, "sample_folder", gone)
    with pytest.raises(MissingResourceError):
        sample_copy(tmp_path)
