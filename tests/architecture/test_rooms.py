"""Who may import whom, as DEVELOPERS.md says it. Every import is read, those inside functions too."""

import ast
import re
import sys
from typing import Final

import pytest

from tests.architecture.house import HOUSE, imports, modules, room

PURE: Final = ("words", "comb", "colony")
KEPT: Final = (*PURE, "resources", "places", "workbook")
FACE: Final = (*KEPT, "qt")

MAY_IMPORT: Final[dict[str, tuple[str, ...]]] = {
    "doorstep": (),
    "words": (),
    "resources": (),
    "places": (),
    "setup": ("words",),
    "start": ("setup", "words"),
    "comb": ("words",),
    "colony": ("words", "comb"),
    "store": (*PURE,),
    "workbook": (*PURE, "resources", "store"),
    "papers": (*PURE, "resources"),
    "qt": KEPT,
    "bench": FACE,
    "rounds": FACE,
    "year": FACE,
    "window": (*FACE, "bench", "rounds", "year", "papers", "doorstep"),
    "cli": (*KEPT, "papers", "doorstep"),
    "app": (*FACE, "bench", "rounds", "year", "papers", "window", "cli", "doorstep"),
    "__main__": ("cli", "app"),
}
"""A room may always import itself."""

LIBRARIES: Final[dict[str, tuple[str, ...]]] = {
    "places": ("platformdirs",),
    "comb": ("numpy", "scipy"),
    "colony": ("numpy", "scipy"),
    "store": ("sqlalchemy", "alembic", "numpy"),
    "workbook": ("numpy",),
    "papers": ("reportlab", "segno", "numpy"),
    "qt": ("PySide6", "numpy"),
    "bench": ("PySide6", "numpy"),
    "rounds": ("PySide6", "numpy"),
    "year": ("PySide6", "numpy", "pyqtgraph"),
    "window": ("PySide6", "shiboken6", "numpy", "pypdfium2"),
    "app": ("PySide6",),
}

EXCEPTIONS: Final[dict[str, tuple[str, ...]]] = {
    "beeworkbook.cli.chart": ("year",),  # a chart picture is drawn by what draws it in the window
    "beeworkbook.cli.opening": ("app",),  # without a command the window opens
    "beeworkbook.cli.unattended": ("window",),  # pictures of the window where it cannot be shown
}
"""Modules, each with the rooms it may import against the table, late only, and the reason beside it."""

NOT_IN_THE_CORE: Final = frozenset(
    {"os", "pathlib", "io", "shutil", "tempfile", "time", "locale", "secrets", "uuid"}
)
"""The clock, chance, the locale and files are passed in to comb and colony."""
ASKS_THE_MACHINE: Final = re.compile(
    r"(?:\w+\.)*(?:date|datetime)\.(?:today|now|utcnow)|open|(?:\w+\.)*random\.\w+|default_rng|Random"
)
SEEDED: Final = re.compile(r"(?:.*\.)?(?:Random|default_rng)")
"""Chance that was given a seed is the same everywhere."""


@pytest.mark.parametrize("module", modules())
def test_only_rooms_to_the_left_are_imported(module: str) -> None:
    allowed = {room(module), *MAY_IMPORT[room(module)]}
    crossed = [
        f"line {found.line}: {found.module}"
        for found in imports(module)
        if found.module.split(".")[0] == HOUSE
        and room(_house_module(found.module)) not in allowed
        and not (found.late and room(_house_module(found.module)) in EXCEPTIONS.get(module, ()))
    ]
    assert crossed == []


@pytest.mark.parametrize("module", modules())
def test_a_room_knows_only_its_own_libraries(module: str) -> None:
    allowed = {HOUSE, *sys.stdlib_module_names, *LIBRARIES.get(room(module), ())}
    assert [f.module for f in imports(module) if f.module.split(".")[0] not in allowed] == []


@pytest.mark.parametrize("module", [name for name in modules() if room(name) != "store"])
def test_nothing_outside_the_store_knows_sqlite(module: str) -> None:
    assert [found for found in imports(module) if found.module.split(".")[0] == "sqlite3"] == []


@pytest.mark.parametrize("module", [name for name in modules() if room(name) in {"comb", "colony"}])
def test_the_core_has_no_clock_chance_locale_or_files(module: str) -> None:
    assert [found for found in imports(module) if found.module.split(".")[0] in NOT_IN_THE_CORE] == []
    tree = ast.parse(modules()[module].read_text(encoding="utf-8"))
    assert [
        ast.unparse(call)
        for call in ast.walk(tree)
        if isinstance(call, ast.Call)
        and ASKS_THE_MACHINE.fullmatch(ast.unparse(call.func))
        and not (call.args and SEEDED.fullmatch(ast.unparse(call.func)))
    ] == []


@pytest.mark.parametrize("module", modules())
def test_what_is_private_to_a_file_stays_there(module: str) -> None:
    private = [
        found.module
        for found in imports(module)
        if found.module.split(".")[0] == HOUSE
        and (last := found.module.rpartition(".")[2]).startswith("_")
        and not last.startswith("__")
    ]
    assert private == []


@pytest.mark.parametrize("module", modules())
def test_no_file_is_longer_than_a_person_reads(module: str) -> None:
    assert len(modules()[module].read_text(encoding="utf-8").splitlines()) <= 500


def test_every_room_is_in_the_table() -> None:
    assert {room(name) for name in modules()} <= set(MAY_IMPORT)


def test_every_exception_is_a_module_that_needs_it() -> None:
    for module, rooms in EXCEPTIONS.items():
        reached = {room(_house_module(found.module)) for found in imports(module) if found.late}
        assert set(rooms) <= reached, module


def _house_module(name: str) -> str:
    """The module in `beeworkbook.room.module.name`: what was imported may be a name inside it.

    A name of the package itself, such as its version, belongs to the doorstep.
    """
    while name not in modules():
        name = name.rpartition(".")[0]
        if not name:
            return HOUSE
    return name
