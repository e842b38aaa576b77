"""Set-ups of one checkout come one after the other, and a killed one does not block the next."""

import subprocess
import sys
import threading
from pathlib import Path
from typing import Final

import pytest

from beeworkbook.setup.turn import turn

HOLD: Final = """
import pathlib, sys
from beeworkbook.setup.turn import turn
with turn(pathlib.Path(sys.argv[1]), lambda: None):
    print("held", flush=True)
    sys.stdin.read()
"""


def test_the_second_waits_until_the_first_is_done(tmp_path: Path) -> None:
    path, order, waiting = tmp_path / "folder" / "turn", [], threading.Event()

    def second() -> None:
        with turn(path, waiting.set):
            order.append("second")

    thread = threading.Thread(target=second)
    with turn(path, lambda: order.append("the first waited")):
        thread.start()
        assert waiting.wait(timeout=30)
        order.append("first")
    thread.join(timeout=30)
    assert order == ["first", "second"]


@pytest.mark.skipif(sys.platform == "win32", reason="open files are not inherited there")
def test_what_a_killed_set_up_had_started_keeps_the_turn_until_it_ends(tmp_path: Path) -> None:
    path, waited = tmp_path / "turn", threading.Event()
    with turn(path, waited.set) as held:
        asked = [sys.executable, "-c", "import sys; sys.stdin.read()"]
        child = subprocess.Popen(asked, stdin=subprocess.PIPE, pass_fds=(held,))

    def second() -> None:
        with turn(path, waited.set):
            pass

    thread = threading.Thread(target=second)
    thread.start()
    assert waited.wait(timeout=30)
    child.communicate()
    thread.join(timeout=30)
    assert not thread.is_alive()


def test_a_killed_set_up_leaves_no_lock(tmp_path: Path) -> None:
    path, waited = tmp_path / "turn", []
    with subprocess.Popen(
        [sys.executable, "-c", HOLD, path], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        holder.kill()
    with turn(path, lambda: waited.append(True)):
        pass
    assert waited == []
