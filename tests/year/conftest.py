"""What the tests of this room share: an application with the shipped fonts, and a book with a season."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from beeworkbook.qt import theme
from beeworkbook.qt.desk import Desk
from tests.year.season_book import SeasonBook


@pytest.fixture(scope="session")
def fonts(qapp: QApplication) -> QApplication:
    """An application with the shipped fonts, so that words are as wide as in the window."""
    theme.load_fonts()
    return qapp


@pytest.fixture(scope="session")
def first_season_book(tmp_path_factory: pytest.TempPathFactory) -> SeasonBook:
    """A book with two colonies and two seasons, made once and closed."""
    made = SeasonBook(tmp_path_factory.mktemp("season") / "season.beebook")
    made.book.close()
    return made


@pytest.fixture
def season_book(first_season_book: SeasonBook, tmp_path: Path) -> Iterator[SeasonBook]:
    """That book, open, for this test alone."""
    made = first_season_book.copied(tmp_path / "season.beebook")
    yield made
    made.book.close()


@pytest.fixture
def desk(season_book: SeasonBook, fonts: QApplication) -> Iterator[Desk]:
    """A desk with that book, at the first colony's visit by comb of 16 May."""
    assert fonts is QApplication.instance()
    made = Desk(season_book.book)
    made.go(visit_id=season_book.visit("2026-05-16"))
    yield made
    made.close()
