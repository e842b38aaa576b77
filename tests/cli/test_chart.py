from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from PySide6.QtGui import QImage

from tests.cli.conftest import Typed


def test_the_example_is_drawn(typed: Typed, sample: Path, tmp_path: Path) -> None:
    target = tmp_path / "larch.svg"
    told = typed("chart", sample, target, "--colony", "Larch", "--year", "2026", "--stores")
    assert (told.code, told.err) == (0, "")
    text = target.read_text(encoding="utf-8")
    assert ET.fromstring(text).tag.endswith("svg")
    assert "Larch" in text
    assert "stores" in text


def test_a_png_in_black_and_in_colour_differ(typed: Typed, sample: Path, tmp_path: Path) -> None:
    words = ("--colony", "Bramble", "--year", "2025")
    assert typed("chart", sample, tmp_path / "colour.png", *words).code == 0
    assert typed("chart", sample, tmp_path / "black.PNG", *words, "--black").code == 0
    colour, black = QImage(str(tmp_path / "colour.png")), QImage(str(tmp_path / "black.PNG"))
    assert colour.size() == black.size()
    assert _is_grey(black)
    assert not _is_grey(colour)


def _is_grey(image: QImage) -> bool:
    """Whether no pixel of a few thousand has a colour to speak of."""
    points = ((x, y) for x in range(0, image.width(), 17) for y in range(0, image.height(), 17))
    return all(
        image.pixelColor(x, y).hsvSaturation() < 40 or image.pixelColor(x, y).value() < 60 for x, y in points
    )


def test_several_colonies_and_years_are_lines(typed: Typed, sample: Path, tmp_path: Path) -> None:
    target = tmp_path / "all.svg"
    words = ("--colony", "Larch", "--colony", "Rook", "--years", "--cells", "--bees")
    assert typed("chart", sample, target, *words).code == 0
    text = target.read_text(encoding="utf-8")
    assert "Larch 2025" in text
    assert "Rook 2026" in text


@pytest.mark.parametrize(
    ("words", "code", "part"),
    [
        (["x.jpg"], 2, "neither in .png nor in .svg"),
        (["x.svg", "--year", "soon"], 2, "is not a year"),
        (["x.svg", "--year", "9" * 40], 2, "is not a year"),
        (["x.svg", "--colony", "Nobody"], 1, "no colony of the name"),
    ],
)
def test_what_cannot_be_drawn(
    typed: Typed,
    sample: Path,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    words: list[str],
    code: int,
    part: str,
) -> None:
    monkeypatch.chdir(tmp_path)
    told = typed("chart", sample, *words)
    assert told.code == code
    assert part in told.err
    assert not Path(words[0]).exists()


def test_an_empty_workbook_has_no_chart(typed: Typed, tmp_path: Path) -> None:
    typed("new", tmp_path / "bare.beebook")
    told = typed("chart", tmp_path / "bare.beebook", tmp_path / "x.svg")
    assert told.code == 1
    assert "no colony in this workbook yet" in told.err
