"""Set-ups of one checkout come one after the other, and a killed one does not block the next."""

import subprocess
import sys
import threading
from pathlib import Path
from typing import Final

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
