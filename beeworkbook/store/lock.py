"""One writer a workbook: a lock the operating system holds while it is open, and lets go of with us.

It lies on a small file beside the workbook, since closing a second handle of the workbook itself
would drop the database's own locks. The file also says how the window that holds it is reached. It
goes when the workbook is closed; one that a killed program left behind locks nothing.
"""

import os
import sys
from contextlib import suppress
from pathlib import Path
from typing import IO, Final

from beeworkbook.store.errors import AlreadyOpenError, CannotOpenError

LOCK_ENDING: Final = ".lock"
_TRIES: Final = 20
_FAR: Final = 1 << 20
"""Where Windows locks a byte: beyond the text, which a second start has to read."""


def lock_path(path: Path) -> Path:
    """The lock file beside a workbook, whatever links lead there."""
    real = path.resolve()
    return real.with_name(real.name + LOCK_ENDING)


class FileLock:
    """The lock on one workbook. Made held; `release` or the end of the program lets go."""

    def __init__(self, path: Path, reach: str = "") -> None:
        """Take the lock, or raise AlreadyOpenError with what the holder wrote for being reached."""
        self.path = lock_path(path)
        self._file: IO[str] | None = None
        for _ in range(_TRIES):
            file = self._opened(path)
            if not _taken(file):
                reach_of_holder = _read(file)
                file.close()
                raise AlreadyOpenError(path, reach_of_holder)
            if _is_at(file, self.path):
                self._file = file
                break
            file.close()  # its last holder took it away between our opening and our locking
        if self._file is None:
            raise AlreadyOpenError(path)
        self.say_reach(reach)

    def say_reach(self, reach: str) -> None:
        """Write down how the window that holds the workbook is reached: a name or an address."""
        if self._file is None:
            return
        self._file.seek(0)
        self._file.truncate()
        self._file.write(reach)
        self._file.flush()

    def release(self) -> None:
        """Let go, and take the lock file away."""
        file, self._file = self._file, None
        if file is None:
            return
        if sys.platform == "win32":
            file.close()
        # Taken away while it is still held, so that nobody can lock a file that is about to go.
        with suppress(OSError):  # Windows keeps it while a second start looks at it; unlocked it does no harm
            self.path.unlink(missing_ok=True)
        file.close()

    def _opened(self, path: Path) -> IO[str]:
        try:
            # Neither "w" (it would empty a holder's file) nor "r+" (it may not be there yet).
            handle = os.open(self.path, os.O_RDWR | os.O_CREAT, 0o666)
        except OSError as error:
            raise CannotOpenError(path) from error
        return os.fdopen(handle, "r+", encoding="utf-8")


def reach_of(path: Path) -> str:
    """What the window that holds this workbook wrote for being reached, "" if there is none."""
    try:
        return lock_path(path).read_text(encoding="utf-8")
    except OSError:
        return ""


def _read(file: IO[str]) -> str:
    file.seek(0)
    return file.read()


def _is_at(file: IO[str], path: Path) -> bool:
    try:
        return os.path.samestat(os.fstat(file.fileno()), path.stat())
    except FileNotFoundError:
        return False


if sys.platform == "win32":
    import msvcrt

    def _taken(file: IO[str]) -> bool:
        """Whether the lock is ours now."""
        os.lseek(file.fileno(), _FAR, os.SEEK_SET)
        try:
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        finally:
            os.lseek(file.fileno(), 0, os.SEEK_SET)
        return True

else:
    import errno
    import fcntl

    def _taken(file: IO[str]) -> bool:
        """Whether the lock is ours now. A drive that knows no locks gives it to everyone."""
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        except OSError as error:
            return error.errno in {errno.ENOLCK, errno.EOPNOTSUPP, errno.EINVAL, errno.ENOSYS}
        return True
