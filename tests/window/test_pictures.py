from datetime import date
from pathlib import Path

import pytest
from PySide6.QtGui import QColor, QImage

from beeworkbook.cli.asking import colonies_named, opened
from beeworkbook.cli.visits import drawn_visit
from beeworkbook.comb.contents import Content
from beeworkbook.comb.legend import fill_of
from beeworkbook.window.pictures import begin_pictures, write_combs
from beeworkbook.workbook.sample_copy import sample_copy

DAY = date(2025, 6, 28)


@pytest.fixture(scope="module")
def written(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, ...]:
    """The combs of a painted visit with two supers."""
    folder = tmp_path_factory.mktemp("combs")
    begin_pictures()
    with opened(sample_copy(folder / "book"), lambda: DAY) as book:
        (colony,) = colonies_named(book, ["Bramble"])
        visit = drawn_visit(book, colony.id, DAY)
        assert visit is not None
        return write_combs(book, visit, folder)


def test_every_comb_noted_has_a_picture_of_its_own(written: tuple[Path, ...]) -> None:
    assert len(set(written)) == 11 + 2 * 10
    assert written[5].name == "Bramble-2025-06-28-1-06.png"
    assert all(QImage(str(path)).width() > 1200 for path in written)


def test_a_brood_comb_shows_its_brood_and_a_super_its_stores(written: tuple[Path, ...]) -> None:
    def share(path: Path, content: Content) -> float:
        image = QImage(str(path))
        wanted = QColor(fill_of(content))
        points = [(x, y) for x in range(30, 660, 7) for y in range(70, 250, 5)]

        def is_near(x: int, y: int) -> bool:
            seen = image.pixelColor(x, y)
            pairs = (
                (seen.red(), wanted.red()),
                (seen.green(), wanted.green()),
                (seen.blue(), wanted.blue()),
            )
            return all(abs(one - other) < 26 for one, other in pairs)

        return sum(is_near(x, y) for x, y in points) / len(points)

    assert share(written[5], Content.SEALED) > 0.2
    assert share(written[5], Content.STORES) < 0.05
    assert share(written[-1], Content.STORES) > 0.3


def test_a_folder_that_is_not_there_is_said(tmp_path: Path) -> None:
    begin_pictures()
    with opened(sample_copy(tmp_path), lambda: DAY) as book:
        (colony,) = colonies_named(book, ["Bramble"])
        visit = drawn_visit(book, colony.id, DAY)
        assert visit is not None
        with pytest.raises(OSError, match="could not be written"):
            write_combs(book, visit, tmp_path / "no such folder")
