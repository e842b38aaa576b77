"""What the window remembers between two starts: size, theme, and where the keeper was in each workbook.

A small JSON file of the keeper's own folder. It is never part of a workbook, and losing it loses no record.
"""

import json
import logging
from pathlib import Path
from typing import Any

_log = logging.getLogger(__name__)


class Memory:
    """Named values in one file, written at once and read once."""

    def __init__(self, path: Path) -> None:
        """The memory kept at `path`; a missing or unreadable file is an empty one."""
        self._path = path
        self._values: dict[str, Any] = _read(path)

    def get(self, name: str, default: Any = None) -> Any:
        """The value kept under `name`."""
        return self._values.get(name, default)

    def put(self, name: str, value: Any) -> None:
        """Keep a value that JSON can hold; a folder that cannot be written is no reason to stop."""
        if self._values.get(name) == value:
            return
        self._values[name] = value
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            fresh = self._path.with_suffix(".new")
            fresh.write_text(json.dumps(self._values, ensure_ascii=False, indent=1), encoding="utf-8")
            fresh.replace(self._path)
        except OSError:
            _log.warning("the window's memory could not be written to %s", self._path, exc_info=True)


def _read(path: Path) -> dict[str, Any]:
    try:
        held = json.loads(path.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return held if isinstance(held, dict) else {}
