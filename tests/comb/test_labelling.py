import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from beeworkbook.comb import labelling
from beeworkbook.comb.labelling import labels_of

SIX = np.array([[0, 1, 1], [1, 1, 1], [1, 1, 0]], np.bool_)


def pieces(grid: labelling.Grid) -> labelling.Labels:
    """The same by hand: from every place not reached yet, all that can be reached."""
    found = np.zeros(grid.shape, np.int32)
    steps = [(row - 1, column - 1) for row, column in np.argwhere(SIX).tolist()]
    number = 0
    for start in map(tuple, np.argwhere(grid).tolist()):
        if found[start]:
            continue
        number += 1
        waiting = [start]
        while waiting:
            row, column = waiting.pop()
            inside = 0 <= row < grid.shape[0] and 0 <= column < grid.shape[1]
            if inside and grid[row, column] and not found[row, column]:
                found[row, column] = number
                waiting += [(row + down, column + across) for down, across in steps]
    return found


@pytest.mark.parametrize("seed", range(6))
def test_every_piece_has_its_number(seed: int) -> None:
    grid = np.random.default_rng(seed).random((23, 31)) < 0.3 + 0.08 * seed
    assert np.array_equal(labels_of(grid, SIX), pieces(grid))
    assert np.array_equal(labelling._whole()(grid, SIX), pieces(grid))


def test_nothing_true_has_no_number() -> None:
    assert not labels_of(np.zeros((3, 4), np.bool_), SIX).any()


def test_the_routine_is_loaded_alone() -> None:
    """A new process, since any test may have loaded the whole before."""
    fill = (
        "import sys, numpy as np; from beeworkbook.comb.labelling import labels_of;"
        "labels_of(np.ones((3, 3), bool), np.ones((3, 3), bool));"
        "print('scipy.special' in sys.modules)"
    )
    checkout = Path(labelling.__file__).parents[2]
    ran = subprocess.run(
        [sys.executable, "-c", fill], cwd=checkout, capture_output=True, text=True, check=True
    )
    assert ran.stdout.split() == ["False"]


def test_where_the_routine_is_not_found_the_whole_does_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(labelling, "_PIECE", "scipy.ndimage._no_such_piece")
    assert labelling._loaded_alone() is None
    labelling._routine.cache_clear()
    try:
        grid = np.random.default_rng(9).random((9, 9)) < 0.5
        assert np.array_equal(labels_of(grid, SIX), pieces(grid))
    finally:
        labelling._routine.cache_clear()
