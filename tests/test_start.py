"""One command sets up what is missing and then becomes the program or its tests."""

import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from beeworkbook import start
from beeworkbook.setup import steps
from beeworkbook.setup.environment import Environment, SetupError
from tests.architecture.house import CHECKOUT


class Became(Exception):  # noqa: N818 - it ends the process in the place of exec, and is no error
    """What the process turned into."""

    def __init__(self, command: list[str], variables: dict[str, str]) -> None:
        super().__init__(command)
        self.words = command[1:]
        self.variables = variables


@pytest.fixture
def set_up(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """A checkout that is ready; the list gets the locks that were asked for."""
    asked: list[str] = []

    def become(_path: str, command: list[str], variables: dict[str, str]) -> None:
        raise Became(command, variables)

    def is_ready(_self: Environment, name: str) -> bool:
        asked.append(name)
        return True

    monkeypatch.setattr(os, "execve", become)
    monkeypatch.setattr(Environment, "is_ready", is_ready)
    monkeypatch.setattr(Environment, "has_libraries", True)
    monkeypatch.setattr(start, "_cores", lambda: 3)
    return asked


def become(*words: str) -> Became:
    with pytest.raises(Became) as became:
        start.main(list(words))
    return became.value


def test_without_words_the_program_is_opened(set_up: list[str]) -> None:
    assert become().words == ["-m", "beeworkbook"]
    assert set_up == ["run"]


def test_a_workbook_is_handed_on_to_the_program(set_up: list[str]) -> None:
    assert become("apiary.bees").words == ["-m", "beeworkbook", "apiary.bees"]
    assert set_up == ["run"]


def test_the_tests_run_on_all_cores_off_screen(set_up: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("QT_QPA_PLATFORM", raising=False)
    became = become("test", "-q", "tests/comb")
    assert became.words == ["-m", "pytest", "-n", "3", "--dist", "worksteal", "-q", "tests/comb"]
    assert became.variables["QT_QPA_PLATFORM"] == "offscreen"
    assert set_up == ["test"]


@pytest.mark.parametrize("chosen", ["-n0", "--numprocesses=1", "--pdb"])
def test_how_the_tests_are_spread_can_be_chosen(set_up: list[str], chosen: str) -> None:
    assert become("test", chosen).words == ["-m", "pytest", chosen]
    assert set_up == ["test"]


def test_measuring_runs_the_benchmarks_alone(set_up: list[str]) -> None:
    words = become("measure").words
    assert words[-1] == "tests/benchmarks"
    assert {"--benchmark-enable", "no:xdist"} <= set(words)
    assert become("measure", "tests/benchmarks/bench_brush.py").words[-1] == "tests/benchmarks/bench_brush.py"
    assert set_up == ["test", "test"]


def test_setup_does_no_more_than_that(set_up: list[str]) -> None:
    assert start.main(["setup"]) == 0
    assert set_up == ["test"]


def test_the_package_of_the_checkout_is_found_from_any_folder(
    set_up: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTHONPATH", "mine")
    assert become().variables["PYTHONPATH"] == f"{CHECKOUT}{os.pathsep}mine"
    monkeypatch.delenv("PYTHONPATH")
    assert become().variables["PYTHONPATH"] == str(CHECKOUT)
    assert len(set_up) == 2


def test_windows_waits_for_the_program(set_up: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    called: list[Any] = []

    def call(command: list[str], env: dict[str, str]) -> int:
        called.append((command, env))
        return 7

    monkeypatch.setattr(start, "_HAS_EXEC", False)
    monkeypatch.setattr(subprocess, "call", call)
    assert start.main([]) == 7
    assert called[0][0][1:] == ["-m", "beeworkbook"]
    assert set_up == ["run"]


def test_what_is_missing_is_set_up_first(set_up: list[str], monkeypatch: pytest.MonkeyPatch) -> None:
    done: list[str] = []
    monkeypatch.setattr(Environment, "is_ready", lambda _self, _name: False)
    monkeypatch.setattr(Environment, "has_libraries", False)
    monkeypatch.setattr(steps, "set_up", lambda _environment, name: done.append(name))
    monkeypatch.setattr(steps, "see_to_libraries", lambda _environment: done.append("libraries"))
    become("test")
    assert done[:1] == ["test"]
    assert done[1:] == (["libraries"] if sys.platform == "linux" else [])
    assert set_up == []


def test_a_set_up_that_fails_is_one_sentence_and_code_1(
    set_up: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fail(*_asked: object) -> None:
        raise SetupError("There is no room on the disk.")

    monkeypatch.setattr(Environment, "is_ready", lambda _self, _name: False)
    monkeypatch.setattr(steps, "set_up", fail)
    assert start.main([]) == 1
    assert capsys.readouterr().err == "There is no room on the disk.\n"
    assert set_up == []


def test_stopping_it_says_that_nothing_is_lost(
    set_up: list[str], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def stop(*_asked: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(Environment, "is_ready", lambda _self, _name: False)
    monkeypatch.setattr(steps, "set_up", stop)
    assert start.main([]) == 130
    assert "goes on from here" in capsys.readouterr().err
    assert set_up == []


def test_the_cores_of_this_machine_are_counted() -> None:
    assert start._cores() >= 1


def test_an_older_python_is_told_in_a_sentence() -> None:
    asked = (
        "import sys, runpy; sys.version_info = (3, 9, 2, 'final', 0); runpy.run_module('beeworkbook.start')"
    )
    told = subprocess.run(
        [sys.executable, "-c", asked], cwd=CHECKOUT, capture_output=True, text=True, check=False
    )
    assert told.returncode == 1
    assert told.stderr == "beeworkbook needs Python 3.11 or later, and this is Python 3.9.\n"


def test_a_bare_python_is_enough(tmp_path: Path) -> None:
    """Without any installed package, setting up gets as far as its own first sentence."""
    asked = (
        "import sys; from pathlib import Path; sys.path.insert(0, sys.argv[1]);"
        "from beeworkbook import start; import beeworkbook.setup.steps;"
        "start.CHECKOUT = Path(sys.argv[2]); sys.exit(start.main([]))"
    )
    command = [sys.executable, "-I", "-S", "-c", asked, str(CHECKOUT), str(tmp_path)]
    told = subprocess.run(command, capture_output=True, text=True, check=False)
    assert told.returncode == 1
    assert told.stderr.startswith("Only a checkout can be set up")
