from datetime import date
from pathlib import Path

import pytest
from pypdf import PdfReader
from PySide6.QtGui import QImage

import beeworkbook.app as the_app
from beeworkbook.cli.command import CommandError
from beeworkbook.cli.unattended import do_unattended
from beeworkbook.places import user_data_folder
from tests.cli.conftest import Typed


def test_without_a_screen_the_main_job_is_done_on_the_sample(
    typed: Typed, home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(the_app, "has_screen", lambda: False)
    told = typed()
    assert told.code == 0
    folder = home / "pictures" / "Sample apiary"
    assert str(folder) in told.out.splitlines()[-1]
    written = {path.name: path for path in folder.iterdir()}
    assert f"Wrote {len(written)} files" in told.out
    window = QImage(str(written["window.png"]))
    assert (window.width(), window.height()) == (1366, 740)
    assert len({window.pixel(x, y) for x in range(0, 1366, 11) for y in range(0, 740, 11)}) > 50
    combs = [name for name in written if name.startswith("Rook-")]
    assert len(combs) >= 10
    for name in ("blank sheets.pdf", "filled sheets.pdf", "round sheet 1.pdf", "round sheet 2.pdf"):
        assert "Heron" in _text(written[name]) or "Rook" in _text(written[name])
    assert {path.suffix for name, path in written.items() if name.startswith("chart")} == {".png", ".svg"}


def _text(path: Path) -> str:
    return "".join(page.extract_text() for page in PdfReader(path).pages)


def test_a_workbook_without_a_colony_still_shows_its_window(
    typed: Typed, home: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(the_app, "has_screen", lambda: False)
    typed("new", tmp_path / "bare.beebook")
    before = (tmp_path / "bare.beebook").read_bytes()
    assert typed(tmp_path / "bare.beebook").code == 0
    assert [path.name for path in (home / "pictures" / "bare").iterdir()] == ["window.png"]
    assert (tmp_path / "bare.beebook").read_bytes() == before


def test_a_folder_that_cannot_be_used_is_said(home: Path) -> None:
    home.rmdir()
    home.write_text("in the way")
    assert user_data_folder() == home
    with pytest.raises(CommandError, match="cannot be used"):
        do_unattended(None, lambda: date(2026, 11, 25))
    home.unlink()
