"""What the tests of the workbook stand on."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.workbook.keeping import Keeping


@pytest.fixture
def keeping(tmp_path: Path) -> Iterator[Keeping]:
    """An open book with one colony and one visit."""
    kept = Keeping(tmp_path / "trial.beebook")
    yield kept
    kept.book.close()
