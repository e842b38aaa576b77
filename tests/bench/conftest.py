"""A comb to work on without a window, and a desk on a book with one colony; all names invented."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from pytestqt.qtbot import QtBot

from beeworkbook.bench.tools.base import Work
from beeworkbook.colony.records import VisitId
from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import Lattice, fit_lattice
from beeworkbook.comb.regions import ellipse
from beeworkbook.qt.desk import Desk, View
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginVisit
from tests.workbook.keeping import LATER, Keeping, as_int

LAST_WEEK = ("H5N2.", "S1P1H4.", "O1S2P1H3.", "E1O1S3P1H1.", "E1O2S3P1H1")


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


@pytest.fixture
def keeping(tmp_path: Path) -> Iterator[Keeping]:
    """A book with a nucleus in eleven frames and a visit at which five combs were typed."""
    kept = Keeping(tmp_path / "bench.beebook")
    for place, text in enumerate(LAST_WEEK, start=1):
        kept.book.do(LayOutComb(kept.visit, kept.frame(place), text))
    yield kept
    kept.book.close()


@pytest.fixture
def desk(keeping: Keeping, qtbot: QtBot) -> Iterator[Desk]:
    """A desk at a fresh visit a week later, at comb 1."""
    del qtbot  # the desk needs a program to live in
    visit = VisitId(as_int(keeping.book.do(BeginVisit(keeping.colony, LATER))))
    made = Desk(keeping.book)
    made.go(colony_id=keeping.colony, visit_id=visit, view=View.BOX, frame_id=keeping.frame(1))
    yield made
    made.close()
