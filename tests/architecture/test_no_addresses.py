"""No committed file names where packages come from, nor a folder outside the checkout."""

import re
import subprocess
from pathlib import Path
from typing import Final

import pytest

from tests.architecture.house import CHECKOUT

# Put together from pieces, since this file is read too.
FORBIDDEN: Final = {
    "a package registry": re.compile(
        "|".join(
            (
                "py" + r"pi\.org",
                "python" + r"hosted\.org",
                "npm" + r"js\.(?:org|com)",
                r"deb\.deb" + r"ian\.org",
            )
        ),
        re.IGNORECASE,
    ),
    "a folder beside the checkout": re.compile(r"\.\./" + "shared"),
    "a folder of one machine": re.compile(r"(?<![\w.])/(?:" + "wor" + "k|far" + "m)/"),
}
LOCKS: Final = CHECKOUT / "resources" / "locks"


def committed() -> list[Path]:
    """The files git knows, or all there are where the checkout came without git."""
    told = subprocess.run(
        ["git", "ls-files", "-z"], cwd=CHECKOUT, capture_output=True, text=True, check=False
    )
    if told.returncode == 0 and told.stdout:
        return [CHECKOUT / name for name in told.stdout.split("\0") if name and (CHECKOUT / name).is_file()]
    skipped = {".venv", ".git", "__pycache__"}
    return [path for path in CHECKOUT.rglob("*") if path.is_file() and not skipped & set(path.parts)]


@pytest.mark.parametrize("kind", FORBIDDEN)
def test_no_committed_file_holds_an_address(kind: str) -> None:
    found = []
    for path in committed():
        try:
            text = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue  # a font, a picture, the installer
        found += [f"{path.relative_to(CHECKOUT)}: {hit[0]}" for hit in FORBIDDEN[kind].finditer(text)]
    assert found == []


def test_enough_files_are_read_for_that_to_mean_something() -> None:
    assert len(committed()) > 30


@pytest.mark.parametrize("lock", sorted(LOCKS.glob("*.txt")), ids=lambda path: path.stem)
def test_a_lock_holds_no_address_of_any_kind(lock: Path) -> None:
    text = lock.read_text(encoding="utf-8")
    assert "://" not in text
    assert not re.search(r"^\s*(?:-|\S+ @ )", text.replace("    --hash", ""), re.MULTILINE)
