"""What is the keeper's own lies in one folder, and one variable moves it."""

from pathlib import Path

import pytest

from beeworkbook.places import HOME_VARIABLE, log_path, settings_path, user_data_folder


def test_the_variable_names_the_folder(home: Path) -> None:
    assert user_data_folder() == home


def test_settings_and_log_lie_in_the_folder(home: Path) -> None:
    assert settings_path().parent == home
    assert log_path().parent == home
    assert settings_path() != log_path()


def test_a_tilde_is_the_persons_home(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(HOME_VARIABLE, "~/bees")
    assert user_data_folder() == Path.home() / "bees"


@pytest.mark.parametrize("unset", [None, ""])
def test_without_it_the_systems_own_folder_is_used(
    unset: str | None, monkeypatch: pytest.MonkeyPatch
) -> None:
    if unset is None:
        monkeypatch.delenv(HOME_VARIABLE)
    else:
        monkeypatch.setenv(HOME_VARIABLE, unset)
    assert user_data_folder().name == "beeworkbook"
    assert user_data_folder().is_absolute()
