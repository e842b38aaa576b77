"""One set-up of a checkout at a time: the second waits for the first.

The operating system holds the lock, so that a killed set-up leaves none.
"""

import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO, Final

_PAUSE_SECONDS: Final = 0.2

if sys.platform == "win32":
    import msvcrt

    def _take(file: IO[bytes]) -> bool:
        try:
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

else:
    import fcntl

    def _take(file: IO[bytes]) -> bool:
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True


@contextmanager
def turn(path: Path, waiting: Callable[[], None]) -> Iterator[int]:
    """Hold the file's lock while the body runs; `waiting` is called once if another holds it.

    Gives the open file's number: a program that inherits it holds the lock too, until it ends.

    Errors: OSError if the file cannot be made.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("ab") as file:
        if not _take(file):
            waiting()
            while not _take(file):
                time.sleep(_PAUSE_SECONDS)
        yield file.fileno()  # closing the file gives the lock back
