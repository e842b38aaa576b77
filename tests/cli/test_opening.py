from datetime import date
from pathlib import Path

import pytest

import beeworkbook.app as the_app
from beeworkbook.cli.command import CommandError
from beeworkbook.cli.opening import open_window


def test_a_workbook_that_is_not_there_is_said_before_anything_is_opened(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(the_app, "has_screen", pytest.fail)
    with pytest.raises(CommandError, match="no workbook at"):
        open_window(tmp_path / "gone.beebook", lambda: date(2026, 11, 25))


def test_the_code_of_the_window_comes_back(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(the_app, "has_screen", lambda: True)
    monkeypatch.setattr(the_app, "run", lambda _path, _today: 7)
    assert open_window(None, lambda: date(2026, 11, 25)) == 7
