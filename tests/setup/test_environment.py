"""An environment is ready only while the lock, the place and the Python are those it was set up for."""

import sys
from pathlib import Path

import pytest

from beeworkbook.setup.environment import Environment


@pytest.fixture
def ready(environment: Environment) -> Environment:
    environment.python.parent.mkdir(parents=True)
    environment.python.symlink_to(sys.executable)
    environment.mark_ready("run")
    return environment


def test_a_bare_checkout_is_not_ready(checkout: Path) -> None:
    assert not Environment(checkout).is_ready("run")


def test_a_finished_set_up_is_ready_for_its_own_lock_only(ready: Environment) -> None:
    assert ready.is_ready("run")
    assert not ready.is_ready("test")


def test_another_lock_is_set_up_again(ready: Environment) -> None:
    ready.lock("run").write_text("alpha==1.1\n", encoding="utf-8")
    assert not ready.is_ready("run")


def test_a_moved_checkout_is_set_up_again(ready: Environment, tmp_path: Path) -> None:
    assert not Environment(ready.checkout.rename(tmp_path / "moved")).is_ready("run")


def test_another_python_behind_the_environment_is_noticed(ready: Environment, tmp_path: Path) -> None:
    upgraded = tmp_path / "python"
    upgraded.touch()
    ready.python.unlink()
    ready.python.symlink_to(upgraded)
    assert not ready.is_ready("run")


def test_a_python_that_is_gone_is_noticed(ready: Environment) -> None:
    ready.python.unlink()
    assert not ready.is_ready("run")


def test_that_the_libraries_were_found_is_remembered(environment: Environment) -> None:
    assert not environment.has_libraries
    environment.mark_libraries()
    assert environment.has_libraries
