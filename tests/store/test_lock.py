import errno
import fcntl
import subprocess
import sys
from pathlib import Path

import pytest

from beeworkbook.store import lock as locking
from beeworkbook.store.errors import AlreadyOpenError, CannotOpenError
from beeworkbook.store.lock import FileLock, lock_path, reach_of

HOLDER = """
import sys
from pathlib import Path
from beeworkbook.store.lock import FileLock
held = FileLock(Path(sys.argv[1]), "socket of the first")
print("held", flush=True)
sys.stdin.read()
"""


def test_a_lock_is_held_until_it_is_let_go_and_leaves_nothing(path: Path) -> None:
    held = FileLock(path, "first")
    assert reach_of(path) == "first"
    with pytest.raises(AlreadyOpenError, match="another window") as told:
        FileLock(path, "second")
    assert told.value.reach == "first"
    assert reach_of(path) == "first"
    held.release()
    held.release()
    held.say_reach("nobody")
    assert not lock_path(path).exists()
    assert reach_of(path) == ""
    FileLock(path).release()


def test_how_a_window_is_reached_may_change(path: Path) -> None:
    held = FileLock(path, "a rather long name")
    held.say_reach("short")
    assert reach_of(path) == "short"
    held.release()


def test_a_killed_program_leaves_no_lock(path: Path) -> None:
    command = [sys.executable, "-c", HOLDER, str(path)]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        with pytest.raises(AlreadyOpenError) as told:
            FileLock(path)
        assert told.value.reach == "socket of the first"
        holder.kill()
        holder.wait()
    assert lock_path(path).exists()
    FileLock(path).release()
    assert not lock_path(path).exists()


def test_a_lock_file_taken_away_meanwhile_is_no_lock(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    taken, tries = locking._taken, []

    def taken_away_first(file: object) -> bool:
        tries.append(file)
        if len(tries) == 1:
            lock_path(path).unlink()
        return taken(file)  # type: ignore[arg-type]

    monkeypatch.setattr(locking, "_taken", taken_away_first)
    held = FileLock(path)
    assert len(tries) == 2
    assert lock_path(path).exists()
    held.release()


def test_a_lock_file_that_always_goes_is_given_up(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(locking, "_is_at", lambda _file, _path: False)
    with pytest.raises(AlreadyOpenError):
        FileLock(path)


def test_a_drive_that_knows_no_locks_still_opens(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def unknown(_file: object, _operation: int) -> None:
        raise OSError(errno.ENOLCK, "no locks here")

    monkeypatch.setattr(fcntl, "flock", unknown)
    FileLock(path).release()


def test_a_folder_that_is_not_there_cannot_hold_a_lock(tmp_path: Path) -> None:
    with pytest.raises(CannotOpenError):
        FileLock(tmp_path / "nowhere" / "x.beebook")
