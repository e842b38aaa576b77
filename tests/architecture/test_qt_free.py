"""All but the Qt rooms can be imported where there is no Qt, and the core without SciPy."""

import subprocess
import sys
from typing import Final

from tests.architecture.house import CHECKOUT, modules, room

QT_ROOMS: Final = {"qt", "bench", "rounds", "year", "window", "app"}
NEEDS_A_RUN: Final = "beeworkbook.store.migrations."
"""Alembic runs these itself, inside a migration: imported alone they fail."""

WITHOUT_QT: Final = """
import importlib, sys

class NoQt:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in {"PySide6", "shiboken6", "pyqtgraph"}:
            raise ImportError(f"{name} is not to be had in this test")

sys.meta_path.insert(0, NoQt())
try:
    import PySide6
except ImportError:
    pass
else:
    sys.exit("the test itself is broken: Qt could be imported")
for name in sys.argv[1:]:
    importlib.import_module(name)
print(len(sys.argv) - 1)
"""


def test_every_other_room_is_imported_without_qt() -> None:
    names = [name for name in modules() if room(name) not in QT_ROOMS and not name.startswith(NEEDS_A_RUN)]
    told = subprocess.run(
        [sys.executable, "-W", "error", "-c", WITHOUT_QT, *names],
        cwd=CHECKOUT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert told.stderr == ""
    assert int(told.stdout) == len(names) > 10


def test_the_core_starts_without_scipy() -> None:
    """SciPy takes long to import, so comb and colony only do so when a function needs it."""
    names = [name for name in modules() if room(name) in {"comb", "colony"}]
    asked = (
        "import importlib, sys; [*map(importlib.import_module, sys.argv[1:])]; print('scipy' in sys.modules)"
    )
    told = subprocess.run(
        [sys.executable, "-c", asked, *names], cwd=CHECKOUT, capture_output=True, text=True, check=True
    )
    assert told.stdout.strip() == "False"
