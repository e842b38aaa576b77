"""A comb to work on, without a window and without a book."""

import numpy as np
import pytest

from beeworkbook.bench.tools.base import Work
from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import Lattice, fit_lattice
from beeworkbook.comb.regions import ellipse


@pytest.fixture
def lattice() -> Lattice:
    return fit_lattice(200.0, 140.0)


@pytest.fixture
def work(lattice: Lattice) -> Work:
    """Stores all over with a patch of sealed brood in the middle; eggs in the hand."""
    cells = np.full(lattice.cells, Content.STORES, np.uint8)
    cells[ellipse(lattice, (100.0, 70.0), 60.0, 40.0)] = Content.SEALED
    cells.flags.writeable = False
    return Work(lattice, cells, Content.EGGS, 12.0)
