"""The program is killed at any moment: the file opens, is in order, and holds every stroke that was safe."""

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import numpy as np
import pytest

from beeworkbook.colony.records import Mark, Side
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import Content
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.store.check import check
from beeworkbook.store.database import create, open_database
from tests.store.small_apiary import fill

KILLS = 25
SEED = 20260501
PAINTER = Path(__file__).with_name("painter.py")


def _painted_until_killed(path: Path, first: int, strokes: int, patience: float) -> int:
    """Start a painter and kill it some time after so many strokes; gives the last it said was safe.

    Strokes are waited for and not only time, so that a busy machine gets as far as a fast one.
    """
    command = [sys.executable, str(PAINTER), str(path), str(first)]
    environment = {**os.environ, "PYTHONPATH": str(Path(__file__).parents[2])}
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=environment) as painter:
        assert painter.stdout is not None
        assert painter.stdout.readline() == "ready\n"
        lines = [painter.stdout.readline() for _ in range(strokes)]
        time.sleep(patience)
        painter.send_signal(signal.SIGKILL)
        lines += [line for line in painter.stdout if line.endswith("\n")]
        assert painter.wait() == -signal.SIGKILL
    return int(lines[-1]) if lines else first - 1


@pytest.mark.skipif(sys.platform == "win32", reason="kills a program as only this system does")
def test_a_killed_program_loses_at_most_the_stroke_in_hand(path: Path) -> None:
    with create(path) as database:
        fill(database)
    chance = random.Random(SEED)
    strokes, painted = 1, []
    for _ in range(KILLS):
        safe = _painted_until_killed(path, strokes, chance.randint(0, 6), chance.uniform(0.0, 0.01))
        with open_database(path) as database:
            assert check(database) == ()
            kept = max(
                (int(mark.text[7:]) for mark in database.reader.find(Mark) if mark.text[:6] == "stroke"),
                default=0,
            )
            side = database.reader.find(Side)[0]
            cells = unpack(side.cells, cells=FRAME_TYPES[side.frame_type].lattice.cells)
        # The stroke in hand may have become safe before it could be said.
        assert safe <= kept <= safe + 1
        assert np.count_nonzero(cells == Content.NECTAR) == min(kept, len(cells))
        painted.append(kept - strokes + 1)
        strokes = kept + 1
    assert sum(count > 0 for count in painted) >= KILLS // 2  # else it was killed before it did anything
    assert [entry.name for entry in path.parent.iterdir()] == [path.name]
