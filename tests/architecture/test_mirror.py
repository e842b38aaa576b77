"""tests/ has the rooms and the file names of the package: a module without its tests is noticed."""

import ast
from pathlib import Path
from typing import Final

import pytest

from tests.architecture.house import CHECKOUT, PACKAGE, modules

TESTED_ELSEWHERE: Final[dict[str, str]] = {}
"""Modules by name, each with where its tests are and why."""

ELSEWHERE_BY_KIND: Final = "beeworkbook.store.migrations"
"""Revisions and Alembic's own entry are run by tests/store, from files of every released schema."""


def _mirror(path: Path) -> Path:
    inside = path.relative_to(PACKAGE)
    return CHECKOUT / "tests" / inside.parent / f"test_{inside.stem.strip('_')}.py"


TO_MIRROR: Final = [
    name
    for name, path in modules().items()
    if path.name != "__init__.py" and not name.startswith(ELSEWHERE_BY_KIND) and name not in TESTED_ELSEWHERE
]


@pytest.mark.parametrize("module", TO_MIRROR)
def test_every_module_has_its_tests(module: str) -> None:
    mirror = _mirror(modules()[module])
    assert mirror.is_file(), f"{mirror.relative_to(CHECKOUT)} is missing"


@pytest.mark.parametrize("module", [name for name, path in modules().items() if path.name == "__init__.py"])
def test_a_room_keeps_its_code_in_files_with_names(module: str) -> None:
    """`__init__.py` says what the room is and holds no code that would need tests of its own."""
    tree = ast.parse(modules()[module].read_text(encoding="utf-8"))
    kinds = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef
    assert [node.name for node in ast.walk(tree) if isinstance(node, kinds)] == []


def test_every_exception_is_still_a_module() -> None:
    assert set(TESTED_ELSEWHERE) <= set(modules())
