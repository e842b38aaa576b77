"""The locks hold what pyproject.toml asks for, each version once for a system, each pinned by hash."""

import re
import tomllib
from typing import Final

import pytest

from tests.architecture.house import CHECKOUT

ENTRY: Final = re.compile(
    r"^(?P<name>[a-z0-9-]+)==(?P<version>[^\s;]+)(?P<rest>.*?)(?=^[a-z0-9-]+==|\Z)", re.MULTILINE | re.DOTALL
)
PROJECT: Final = tomllib.loads((CHECKOUT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
ASKED: Final = {
    "run": PROJECT["dependencies"],
    "test": [*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["test"]],
}


def _lock(name: str) -> list[re.Match[str]]:
    text = (CHECKOUT / "resources" / "locks" / f"{name}.txt").read_text(encoding="utf-8")
    return list(ENTRY.finditer(text))


def _plain(requirement: str) -> str:
    return re.split(r"[\s<>=!~;\[]", requirement)[0].lower().replace("_", "-")


@pytest.mark.parametrize("name", ASKED)
def test_every_version_is_pinned_by_hash(name: str) -> None:
    entries = _lock(name)
    assert len(entries) > 15
    assert [entry["name"] for entry in entries if "--hash=sha256:" not in entry["rest"]] == []


@pytest.mark.parametrize("name", ASKED)
def test_all_that_is_asked_for_is_there(name: str) -> None:
    assert {_plain(asked) for asked in ASKED[name]} <= {entry["name"] for entry in _lock(name)}


def test_the_tests_run_on_the_versions_that_the_program_runs_on() -> None:
    """Setting up for the tests therefore sets up for the program too."""
    run, test = ({(e["name"], e["version"]) for e in _lock(name)} for name in ("run", "test"))
    assert run <= test


def test_qt_is_a_version_that_does_not_abort_on_python_3_11() -> None:
    """6.12.0 does, after a few thousand paint calls (measured, see pyproject.toml)."""
    (version,) = {entry["version"] for entry in _lock("run") if entry["name"] == "pyside6-essentials"}
    assert (6, 9) <= tuple(map(int, version.split(".")[:2])) < (6, 12)
