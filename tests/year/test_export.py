"""Pictures leave the window whole: the right kind, size and words, in colour or in black only."""

import os
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from PySide6.QtGui import QImage

from beeworkbook.colony.records import ColonyId
from beeworkbook.qt.palette import DARK, LIGHT
from beeworkbook.year.choice import Arrangement, Choice
from beeworkbook.year.export import HEIGHT, WIDTH, PictureError, chart_picture, write_picture
from tests.year.drawing import model
from tests.year.season_book import SeasonBook

pytestmark = pytest.mark.usefixtures("fonts")
NAMESPACE = "{http://www.w3.org/2000/svg}"


def test_a_png_is_twice_as_sharp_as_it_is_large(tmp_path: Path) -> None:
    write_picture(model(), tmp_path / "chart.png")
    image = QImage(str(tmp_path / "chart.png"))
    assert (image.width(), image.height()) == (2 * WIDTH, 2 * HEIGHT)
    assert round(image.width() / image.dotsPerMeterX() * 1000) == round(WIDTH / 96 * 25.4)


def test_the_figures_of_a_png_are_as_large_as_in_the_window(tmp_path: Path) -> None:
    """A picture's density must not blow up what was recorded for the screen."""
    write_picture(model(), tmp_path / "chart.png")
    image = QImage(str(tmp_path / "chart.png"))
    axis = image.copy(0, 150, 2 * (16 + 54) - 12, 2 * HEIGHT - 300)
    rows = [
        any(axis.pixelColor(x, y).value() < 160 for x in range(axis.width())) for y in range(axis.height())
    ]
    tallest, run = 0, 0
    for inked in rows:
        run = run + 1 if inked else 0
        tallest = max(tallest, run)
    assert 12 <= tallest <= 26


@pytest.mark.parametrize("colour", [True, False])
def test_an_svg_has_its_words_as_words_and_patterns_for_what_it_shows(
    tmp_path: Path, *, colour: bool
) -> None:
    write_picture(model(), tmp_path / "chart.svg", LIGHT, colour=colour)
    root = ET.fromstring((tmp_path / "chart.svg").read_text(encoding="utf-8"))
    words = " ".join("".join(text.itertext()) for text in root.iter(f"{NAMESPACE}text"))
    for expected in ("Pear", "sealed brood", "worker brood, dm²", "Apr", "80"):
        assert expected in words
    held = {pattern.get("id") for pattern in root.iter(f"{NAMESPACE}pattern")}
    used = {
        fill.removeprefix("url(#").removesuffix(")")
        for element in root.iter()
        if (fill := element.get("fill", "")).startswith("url(#")
    }
    assert used == held
    assert len(held) >= 5
    colours = {
        value.lower()
        for element in root.iter()
        for name in ("fill", "stroke")
        if (value := element.get(name))
    }
    assert not any(value.startswith("#fd") for value in colours)
    if not colour:
        greys = {value for value in colours if value.startswith("#")}
        assert all(value[1:3] == value[3:5] == value[5:7] for value in greys), greys


def test_a_dark_chart_is_saved_dark(tmp_path: Path) -> None:
    write_picture(model(), tmp_path / "chart.png", DARK)
    assert QImage(str(tmp_path / "chart.png")).pixelColor(3, 3).name() == DARK.board.lower()


def test_another_ending_is_refused_in_words(tmp_path: Path) -> None:
    with pytest.raises(PictureError, match="png"):
        write_picture(model(), tmp_path / "chart.gif")
    assert not (tmp_path / "chart.gif").exists()


def test_a_colony_that_is_not_there_makes_no_file(season_book: SeasonBook, tmp_path: Path) -> None:
    path = tmp_path / "chart.svg"
    assert not chart_picture(season_book.book, Choice((ColonyId(99),), 2026), path)
    assert not path.exists()
    choice = Choice((season_book.pear,), 2026, arrangement=Arrangement.YEARS, stores=True)
    assert chart_picture(season_book.book, choice, path)
    assert "stores" in path.read_text(encoding="utf-8")


def test_it_is_drawn_where_there_is_no_window(season_book: SeasonBook, tmp_path: Path) -> None:
    """A process of its own, which never started Qt, as the command line is."""
    path = season_book.book.path
    season_book.book.close()
    code = (
        "import sys; from datetime import date; from pathlib import Path\n"
        "from beeworkbook.workbook.workbook import Workbook\n"
        "from beeworkbook.year.choice import Choice\n"
        "from beeworkbook.year.export import chart_picture\n"
        "book = Workbook.open(Path(sys.argv[1]), today=date(2026, 5, 20))\n"
        "sys.exit(not chart_picture(book, Choice((int(sys.argv[3]),), 2026), Path(sys.argv[2])))"
    )
    without = {name: value for name, value in os.environ.items() if name != "QT_QPA_PLATFORM"}
    target = tmp_path / "chart.png"
    done = subprocess.run(
        [sys.executable, "-c", code, str(path), str(target), str(season_book.pear)],
        env=without,
        check=False,
        capture_output=True,
    )
    assert done.returncode == 0, done.stderr
    assert QImage(str(target)).width() == 2 * WIDTH
    season_book.book = season_book.copied(tmp_path / "again.beebook").book
