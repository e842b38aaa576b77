"""The steps in order: each once, none that is done is done again."""

from pathlib import Path

import pytest

from beeworkbook.setup import steps
from beeworkbook.setup.environment import Environment, SetupError
from beeworkbook.setup.steps import see_to_libraries, set_up
from beeworkbook.setup.turn import turn
from tests.setup.conftest import site_packages


def times_installed(environment: Environment) -> int:
    return len((site_packages(environment) / "asked.txt").read_text(encoding="utf-8").splitlines())


def test_a_bare_checkout_is_set_up_once(checkout: Path) -> None:
    environment = Environment(checkout)
    set_up(environment, "run")
    assert environment.is_ready("run")
    set_up(environment, "run")
    assert times_installed(environment) == 1


def test_what_is_set_up_for_tests_can_be_opened_too(checkout: Path) -> None:
    environment = Environment(checkout)
    set_up(environment, "test")
    assert environment.is_ready("test")
    assert environment.is_ready("run")


def test_what_is_set_up_to_be_opened_is_not_yet_set_up_for_tests(checkout: Path) -> None:
    environment = Environment(checkout)
    set_up(environment, "run")
    assert not environment.is_ready("test")


def test_an_interrupted_set_up_goes_on_at_the_next(checkout: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    environment = Environment(checkout)
    monkeypatch.setenv("INSTALLER_FAILS", "the connection broke")
    with pytest.raises(SetupError):
        set_up(environment, "run")
    assert not environment.is_ready("run")
    monkeypatch.delenv("INSTALLER_FAILS")
    set_up(environment, "run")
    assert environment.is_ready("run")
    assert times_installed(environment) == 2


def test_a_changed_lock_is_installed_again(checkout: Path) -> None:
    environment = Environment(checkout)
    set_up(environment, "run")
    environment.lock("run").write_text("alpha==1.1\n", encoding="utf-8")
    set_up(environment, "run")
    assert times_installed(environment) == 2


def test_who_waits_says_so(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, checkout: Path
) -> None:
    def busy(path: Path, waiting: object) -> object:
        assert callable(waiting)
        waiting()
        return turn(path, lambda: None)

    monkeypatch.setattr(steps, "turn", busy)
    set_up(Environment(checkout), "run")
    assert "waiting for it" in capsys.readouterr().out


def test_only_a_checkout_can_be_set_up(tmp_path: Path) -> None:
    with pytest.raises(SetupError, match="Only a checkout"):
        set_up(Environment(tmp_path), "run")
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_cannot_be_written_is_told_in_a_sentence(checkout: Path) -> None:
    (checkout / ".venv").write_text("in the way", encoding="utf-8")
    with pytest.raises(SetupError, match="could not be set up"):
        set_up(Environment(checkout), "run")


@pytest.mark.parametrize(
    ("missing", "provided", "noted"),
    [
        ([[]], None, True),
        ([["libEGL.so.1"], []], True, True),
        ([["libEGL.so.1"], ["libEGL.so.1"]], True, False),
        ([["libEGL.so.1"]], False, False),
    ],
)
def test_libraries_are_looked_for_until_all_were_there(
    environment: Environment,
    monkeypatch: pytest.MonkeyPatch,
    missing: list[list[str]],
    provided: bool | None,
    noted: bool,
) -> None:
    looks = iter(missing)
    monkeypatch.setattr(steps, "missing_libraries", lambda: next(looks))
    monkeypatch.setattr(steps, "provide", lambda *_asked: provided)
    see_to_libraries(environment)
    assert environment.has_libraries is noted
