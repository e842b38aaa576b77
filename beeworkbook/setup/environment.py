"""The checkout's own Python environment: where it lies, and whether it holds what the lock asks for.

This is read at every start, so it imports next to nothing and runs no other program.
"""

import hashlib
import os
from pathlib import Path
from typing import Final

FOLDER: Final = ".venv"


class SetupError(Exception):
    """The checkout could not be set up."""


class Environment:
    """The virtual environment of one checkout."""

    def __init__(self, checkout: Path) -> None:
        self.checkout = checkout.resolve()
        self.folder = self.checkout / FOLDER
        self.log = self.folder / "setup.log"
        self._libraries = self.folder / "system-libraries-found"
        self.turn = self.folder / "setup.turn"

    @property
    def python(self) -> Path:
        """The environment's interpreter, whether or not it is there yet."""
        return self.folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")

    def lock(self, name: str) -> Path:
        """The list of exact versions, "run" or "test"."""
        return self.checkout / "resources" / "locks" / f"{name}.txt"

    @property
    def has_libraries(self) -> bool:
        """Whether the system's own libraries were once all there."""
        return self._libraries.exists()

    def mark_libraries(self) -> None:
        """Note that the system's own libraries are all there."""
        self._libraries.touch()

    def is_ready(self, name: str) -> bool:
        """Whether the last set-up for this lock was finished and still fits."""
        try:
            return self._marker(name).read_text(encoding="utf-8") == self._fingerprint(name)
        except OSError:
            return False

    def mark_ready(self, name: str) -> None:
        """Note, last of all, that everything of this lock is installed."""
        self._marker(name).write_text(self._fingerprint(name), encoding="utf-8")

    def _marker(self, name: str) -> Path:
        return self.folder / f"set-up-{name}"

    def _fingerprint(self, name: str) -> str:
        """The lock, where the checkout lies, and which Python is behind the environment's.

        The last changes when a system is upgraded, and the packages of the old one are then no use.
        """
        lock = hashlib.sha256(self.lock(name).read_bytes()).hexdigest()
        return f"{lock}\n{self.checkout}\n{self.python.resolve(strict=True)}\n"
