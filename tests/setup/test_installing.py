"""The environment is made without Python's own installer, filled from the lock, and mended if left half."""

import subprocess
import sys
from pathlib import Path

import pytest

from beeworkbook.setup.environment import Environment, SetupError
from beeworkbook.setup.installing import drop_half_installed, install, installer, make_environment
from tests.setup.conftest import site_packages


def test_the_environment_is_made_without_an_installer_of_pythons(
    environment: Environment, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "ensurepip", None)  # Debian's Python comes without it
    make_environment(environment)
    told = subprocess.run(
        [environment.python, "-c", "import sys; print(sys.prefix)"],
        capture_output=True,
        text=True,
        check=True,
    )
    assert Path(told.stdout.strip()) == environment.folder


def test_a_sound_environment_is_left_as_it_is(environment: Environment) -> None:
    make_environment(environment)
    kept = site_packages(environment) / "kept.py"
    kept.touch()
    make_environment(environment)
    assert kept.exists()


@pytest.mark.parametrize("harm", ["python gone", "another version", "no configuration"])
def test_a_broken_environment_is_made_anew(environment: Environment, harm: str) -> None:
    make_environment(environment)
    (site_packages(environment) / "old.py").touch()
    environment.turn.touch()
    told = environment.folder / "pyvenv.cfg"
    if harm == "python gone":
        environment.python.unlink()
        environment.python.symlink_to("/nowhere/python3")
    elif harm == "another version":
        told.write_text("home = /usr/bin\nversion = 3.5.1\n", encoding="utf-8")
    else:
        told.unlink()
    make_environment(environment)
    assert not (site_packages(environment) / "old.py").exists()
    assert environment.turn.exists()  # another process may be waiting for it
    subprocess.run([environment.python, "-c", ""], check=True)


def test_a_python_without_venv_is_told_what_to_install(
    environment: Environment, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "venv", None)
    with pytest.raises(SetupError, match="python3-venv"):
        make_environment(environment)


def test_the_lock_is_installed_by_hash_and_progress_is_shown(
    environment: Environment, capsys: pytest.CaptureFixture[str]
) -> None:
    make_environment(environment)
    install(environment, environment.lock("run"))
    asked = (site_packages(environment) / "asked.txt").read_text(encoding="utf-8")
    assert "--require-hashes" in asked
    assert str(environment.lock("run")) in asked
    assert (site_packages(environment) / "alpha.py").exists()
    shown = capsys.readouterr().out
    assert "package 0 of 2" in shown
    assert "Set up: 1 packages" in shown
    log = environment.log.read_text(encoding="utf-8")
    assert "Collecting alpha" in log
    assert "Progress " not in log


def test_settings_that_send_packages_elsewhere_are_not_passed_on(
    environment: Environment, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PIP_TARGET", "/elsewhere")
    monkeypatch.setenv("PIP_DEFAULT_TIMEOUT", "20")
    make_environment(environment)
    install(environment, environment.lock("run"))
    words = environment.log.read_text(encoding="utf-8").split()
    assert "PIP_DEFAULT_TIMEOUT" in words  # where from and how: the person's own
    assert "PIP_TARGET" not in words


def test_a_failure_shows_the_last_words_and_where_the_rest_is(
    environment: Environment, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("INSTALLER_FAILS", "No space left on device")
    make_environment(environment)
    with pytest.raises(SetupError, match="No space left on device") as raised:
        install(environment, environment.lock("run"))
    assert str(environment.log) in str(raised.value)


def test_a_checkout_without_its_installer_is_told(checkout: Path) -> None:
    (checkout / "resources" / "bootstrap").rename(checkout / "gone")
    with pytest.raises(SetupError, match="no installer"):
        installer(checkout)


@pytest.mark.parametrize(
    ("record", "kept"),
    [
        ("alpha.py,sha256=x,1\nalpha-1.dist-info/RECORD,,\n__pycache__/alpha.pyc,,\n", True),
        ("alpha.py,sha256=x,1\nalpha_more.py,sha256=x,1\n", False),
        (None, False),
    ],
)
def test_a_package_that_is_not_whole_is_forgotten(
    environment: Environment, record: str | None, kept: bool
) -> None:
    site = environment.folder / "lib" / "python3.11" / "site-packages"
    described = site / "alpha-1.dist-info"
    described.mkdir(parents=True)
    (site / "alpha.py").touch()
    if record is not None:
        (described / "RECORD").write_text(record, encoding="utf-8")
    drop_half_installed(environment.folder)
    assert described.exists() is kept


def test_stopping_it_stops_the_installer_too(
    environment: Environment, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(_self: object, _line: str) -> str:
        raise KeyboardInterrupt

    monkeypatch.setattr("beeworkbook.setup.told.Told.hear", interrupted)
    make_environment(environment)
    with pytest.raises(KeyboardInterrupt):
        install(environment, environment.lock("run"))
