"""Shipped files are found in a checkout and in an installed package, and the fonts print every name."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from reportlab.pdfbase.ttfonts import TTFont

from beeworkbook import resources
from beeworkbook.colony.strength import BEES_PER_DM2, OCCUPIED_BEES_PER_DM2, SEAM_SPREAD, bees_in_seams
from beeworkbook.resources import MissingResourceError, resource, sample_folder

FONTS = sorted(path.name for path in resource("fonts").glob("*.ttf"))
WRITTEN = {
    "Polish": "ĄĆĘŁŃÓŚŹŻąćęłńóśźż",
    "Greek": "ΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩαβγδεζηθικλμνξοπρσςτυφχψωάέήίόύώΐΰϊϋ",
    "Cyrillic": "".join(map(chr, range(0x410, 0x450))) + "ЁёЄєІіЇїҐґЂђЈјЉљЊњЋћЏџЎў",
    "figures": "0123456789½¼¾×·°²±–—’‘“”„…≥≤→←↑↓•€£−\N{NO-BREAK SPACE}",
}


def test_the_faces_the_papers_and_the_window_ask_for_are_shipped() -> None:
    assert FONTS == [
        "GentiumBookPlus-Bold.ttf",
        "GentiumBookPlus-Regular.ttf",
        "Lato-Bold.ttf",
        "Lato-Italic.ttf",
        "Lato-Regular.ttf",
    ]


@pytest.mark.parametrize("script", WRITTEN)
@pytest.mark.parametrize("font", FONTS)
def test_each_font_has_every_letter_of_the_scripts_promised(font: str, script: str) -> None:
    glyphs = TTFont(font, str(resource("fonts", font))).face.charToGlyph
    assert [letter for letter in WRITTEN[script] if ord(letter) not in glyphs] == []


@pytest.mark.parametrize("family", ["Gentium", "Lato"])
def test_each_font_family_has_its_licence_beside_it(family: str) -> None:
    text = resource("fonts", f"LICENCE-{family}.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in text
    assert f'"{family}"' in text.splitlines()[0]


def test_a_missing_file_is_told_by_name() -> None:
    with pytest.raises(MissingResourceError, match="no-such-font"):
        resource("fonts", "no-such-font.ttf")


def test_the_sample_folder_is_found() -> None:
    assert sample_folder().is_dir()


def test_a_missing_sample_folder_is_told(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(resources, "_folder", lambda *_names: tmp_path / "gone")
    with pytest.raises(MissingResourceError, match="gone"):
        sample_folder()


def test_an_installed_package_finds_the_files_inside_itself(tmp_path: Path) -> None:
    package = tmp_path / "beeworkbook"
    (package / "_resources" / "fonts").mkdir(parents=True)
    (package / "_sample").mkdir()
    (package / "__init__.py").touch()
    shutil.copy(resources.__file__, package / "resources.py")
    asked = "from beeworkbook import resources as r; print(r.resource('fonts'), r.sample_folder(), sep='\\n')"
    told = subprocess.run(
        [sys.executable, "-c", asked], cwd=tmp_path, check=True, capture_output=True, text=True
    )
    assert [Path(line) for line in told.stdout.splitlines()] == [
        (package / "_resources" / "fonts").resolve(),
        (package / "_sample").resolve(),
    ]


def test_the_help_explains_both_ways_to_reckon_bees_with_the_figures_that_are_used() -> None:
    told = resource("help", "help.md").read_text(encoding="utf-8")
    side_dm2 = 6.42  # British Standard deep, as named in strength.py
    assert f"{BEES_PER_DM2:g} bees to each square decimetre" in told
    assert f"{bees_in_seams(1, side_dm2):,.0f} bees on both sides" in told
    assert f"6 seams are about {bees_in_seams(6, side_dm2):,.0f}" in told
    assert f"{OCCUPIED_BEES_PER_DM2:.0f} to a square decimetre" in told
    assert f"may be off by {SEAM_SPREAD * 100:.0f} %" in told
    for source in ("Simpson", "1969", "Liebefeld"):
        assert source in told


def test_the_help_says_that_no_tab_follows_an_answer_of_one_key() -> None:
    told = resource("help", "help.md").read_text(encoding="utf-8")
    assert "so press no Tab after it" in told
