"""The reader of imports sees each form an import can take: the other tests here stand on it."""

from pathlib import Path

import pytest

from tests.architecture import house

SOURCE = """
import os.path
from beeworkbook.comb import lattice as fitted
from . import sibling
from ..words import say
def late():
    import sqlite3
    return importlib.import_module("PySide6.QtGui")
class Held:
    from typing import TYPE_CHECKING
    if TYPE_CHECKING:
        import numpy
"""


def test_every_form_of_import_is_seen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "probe.py"
    path.write_text(SOURCE, encoding="utf-8")
    monkeypatch.setattr(house, "modules", lambda: {"beeworkbook.bench.probe": path})
    assert [(found.module, found.late) for found in house.imports("beeworkbook.bench.probe")] == [
        ("os.path", False),
        ("beeworkbook.comb.lattice", False),
        ("beeworkbook.bench.sibling", False),
        ("beeworkbook.words.say", False),
        ("sqlite3", True),
        ("PySide6.QtGui", True),
        ("typing.TYPE_CHECKING", False),
        ("numpy", False),
    ]


def test_a_file_is_known_by_its_dotted_name_and_its_room() -> None:
    assert house.dotted(house.PACKAGE / "comb" / "contents.py") == "beeworkbook.comb.contents"
    assert house.dotted(house.PACKAGE / "comb" / "__init__.py") == "beeworkbook.comb"
    assert house.room("beeworkbook.comb.contents") == house.room("beeworkbook.comb") == "comb"
    assert house.room("beeworkbook") == "doorstep"
