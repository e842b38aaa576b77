"""A small apiary with invented names, made through the store alone."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from beeworkbook.store.database import Database, create
from tests.store.small_apiary import SmallApiary, fill


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "orchard.beebook"


@pytest.fixture
def database(path: Path) -> Iterator[Database]:
    with create(path) as opened:
        yield opened


@pytest.fixture
def small(database: Database) -> SmallApiary:
    return fill(database)
