"""Files that a command writes: whole or not at all, and never over another one unless that is asked."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from io import TextIOWrapper
from pathlib import Path
from typing import BinaryIO, TextIO

from beeworkbook.cli.command import CommandError
from beeworkbook.words import say

_UNFINISHED = ".part"


@contextmanager
def new_file(path: Path, *, replace: bool = False) -> Iterator[BinaryIO]:
    """A stream to write a file with; it gets its name when all of it is there.

    Errors: CommandError if a file is there already, or nothing can be written there.
    """
    if path.exists() and not (replace and path.is_file()):
        raise CommandError(say("There is already a file at {path}; it was left as it is.", path=path))
    unfinished = path.with_name(path.name + _UNFINISHED)
    try:
        with unfinished.open("wb") as stream:
            yield stream
        unfinished.replace(path)
    except OSError as error:
        reason = error.strerror or str(error)
        raise CommandError(say("{path} could not be written: {reason}.", path=path, reason=reason)) from error
    finally:
        with suppress(OSError):
            unfinished.unlink(missing_ok=True)


@contextmanager
def new_text(target: str, *, replace: bool = False) -> Iterator[TextIO]:
    """The same for text in UTF-8; a target of "-" is what is shown. Line ends are written as they come."""
    if target == "-":
        yield sys.stdout
        return
    with new_file(Path(target), replace=replace) as stream:
        text = TextIOWrapper(stream, encoding="utf-8", newline="")
        yield text
        text.flush()
        text.detach()
