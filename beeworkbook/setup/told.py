"""The installer's many lines, condensed to the one a person wants to see."""

import re
from typing import Final

from beeworkbook.words import number, say

_NAME: Final = r"([A-Za-z0-9_.]+(?:-[A-Za-z]\w*)*)"
_PACKAGE: Final = re.compile(
    rf"(?:Collecting |Requirement already satisfied: |Processing (?:\S*[/\\])?){_NAME}"
)
_FETCHED: Final = re.compile(rf"\s*Downloading (?:\S*/)?{_NAME}-\S+\.whl ")
_BYTES: Final = re.compile(r"Progress (\d+) of (\d+)")
_UNPACKING: Final = "Installing collected packages: "
_MEGABYTE: Final = 1_000_000


class Told:
    """What the installer has told so far."""

    def __init__(self, total: int) -> None:
        self.total = total
        self.seen = 0
        self._name = ""
        self._size = ""
        self._unpacking = 0

    def hear(self, line: str) -> str:
        """Take one line of the installer's in, and give the line to show."""
        if line.startswith("Ignoring "):
            self.total -= 1  # not for this system
        elif found := _PACKAGE.match(line):
            self.seen += 1
            self._now(found[1])
        elif found := _FETCHED.match(line):
            self._now(found[1])
        elif found := _BYTES.match(line):
            self._size = say("{n} of {total} MB", n=_megabytes(found[1]), total=_megabytes(found[2]))
        elif line.startswith(_UNPACKING):
            self._unpacking = len(line.removeprefix(_UNPACKING).split())
        return self.text

    def _now(self, name: str) -> None:
        self._name, self._size = name.replace("_", "-"), ""

    @property
    def text(self) -> str:
        """The line to show."""
        if self._unpacking:
            return say("Setting up: unpacking {n} packages", n=self._unpacking)
        counted = say("Setting up: package {n} of {total}", n=self.seen, total=max(self.total, self.seen))
        return " · ".join(filter(None, (counted, f"{self._name} {self._size}".strip())))


def _megabytes(count: str) -> str:
    return number(int(count) / _MEGABYTE, 1)
