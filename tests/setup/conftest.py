"""A checkout of its own for each test, whose installer tells what a real one tells and fetches nothing."""

from pathlib import Path
from typing import Final

import pytest

from beeworkbook.setup.environment import Environment

LOCK: Final = """\
alpha==1.0 \\
    --hash=sha256:00
beta==2.0 ; python_full_version >= '3.12' \\
    --hash=sha256:00
"""
INSTALLER: Final = """\
import os, pathlib, sys, sysconfig
site = pathlib.Path(sysconfig.get_path("purelib"))
(site / "asked.txt").open("a").write(" ".join(sys.argv[1:]) + "\\n")
if lost := os.environ.get("INSTALLER_FAILS"):
    sys.exit(f"ERROR: {lost}")
print("Collecting alpha==1.0 (from -r lock.txt)")
print("  Downloading alpha-1.0-py3-none-any.whl (2.0 MB)")
print("Progress 2000000 of 2000000")
print("Installing collected packages: alpha, beta")
print(*(name for name in os.environ if name.startswith("PIP_")))
(site / "alpha.py").touch()
"""


@pytest.fixture
def checkout(tmp_path: Path) -> Path:
    folder = tmp_path / "checkout"
    installer = folder / "resources" / "bootstrap" / "pip-1.0-py3-none-any.whl" / "pip"
    installer.mkdir(parents=True)
    (installer / "__main__.py").write_text(INSTALLER, encoding="utf-8")
    locks = folder / "resources" / "locks"
    locks.mkdir()
    for name in ("run", "test"):
        (locks / f"{name}.txt").write_text(LOCK, encoding="utf-8")
    return folder


@pytest.fixture
def environment(checkout: Path) -> Environment:
    made = Environment(checkout)
    made.folder.mkdir()
    return made


def site_packages(environment: Environment) -> Path:
    (found,) = environment.folder.glob("**/site-packages")
    return found
