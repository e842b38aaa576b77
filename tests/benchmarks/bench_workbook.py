"""A finished stroke through the workbook beside raw sqlite3: packing, undo, totals, stamp and report.

Run with: python -m pytest tests/benchmarks/bench_workbook.py --benchmark-enable -s
The side is a full-size one: 4,536 cells of a modern Dadant-Blatt brood side with some speckle.
"""

import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from itertools import count
from pathlib import Path
from typing import Final

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from beeworkbook.colony.records import ColonyId, Side, VisitId
from beeworkbook.comb.codec import pack, unpack
from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import CellPatch, blank_cells
from beeworkbook.store.tallies import COLUMNS
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits import ArriveColony, BeginVisit, PaintCells
from beeworkbook.workbook.workbook import Workbook
from tests.benchmarks.turns import by_turns
from tests.comb.drawn import brood_side
from tests.workbook.keeping import LATER, LOOK, NUCLEUS, as_int

FRAME: Final = FRAME_TYPES["dadant_blatt"]
STROKE: Final = 60
Print = Callable[[str], None]


@pytest.fixture
def show(benchmark: BenchmarkFixture, capsys: pytest.CaptureFixture[str]) -> Print:
    """Prints a line where benchmarks are on; the benchmark is skipped where they are off."""
    if benchmark.disabled:  # type: ignore[no-untyped-call, unused-ignore]
        pytest.skip("benchmarks are off")

    def line(text: str) -> None:
        with capsys.disabled():
            print(f"\n  {text}", end="")

    return line


class _Stroke:
    """One stroke after another on one side, each over other cells."""

    def __init__(self, path: Path) -> None:
        self.book = Workbook.create(path, "Bench", today=LATER)
        spec = replace(NUCLEUS, frame_type=FRAME.id, places=12)
        colony = ColonyId(as_int(self.book.do(ArriveColony(spec))))
        self.visit = VisitId(as_int(self.book.do(BeginVisit(colony, LOOK))))
        hive = self.book.read.hive_day(colony, LOOK)
        assert hive is not None
        frame = hive.boxes[0].frames[5].frame
        assert frame is not None
        self.frame = frame.id
        self.heard: list[Changes] = []
        self.book.subscribe(self.heard.append)
        self.cells = blank_cells(FRAME.lattice)
        whole = CellPatch.between(self.cells, brood_side(FRAME.lattice, seed=3))
        self.book.do(PaintCells(self.visit, self.frame, Face.A, whole))
        self.cells = whole.apply(self.cells)
        self._ready = iter(self._patches(600))

    def _patches(self, number: int) -> list[tuple[CellPatch, Content]]:
        """Finished strokes as a tool hands them over, one upon the other."""
        cells, made = self.cells, []
        for turn in range(number):
            first = turn * 97 % (len(cells) - STROKE)
            content = Content(2 + turn % 10)
            patch = CellPatch.painting(cells, np.arange(first, first + STROKE), content)
            cells = patch.apply(cells)
            made.append((patch, content))
        return made

    def paint(self) -> None:
        self.patch, content = next(self._ready)
        self.book.do(PaintCells(self.visit, self.frame, Face.A, self.patch, content))


def bench_stroke_through_the_workbook(benchmark: BenchmarkFixture, show: Print, tmp_path: Path) -> None:
    stroke = _Stroke(tmp_path / "bench.beebook")
    side = stroke.book.read.side(stroke.visit, stroke.frame, Face.A)
    assert side is not None
    stroke.book.save_copy(tmp_path / "copy.beebook")
    floor_path = Path(shutil.copy(tmp_path / "copy.beebook", tmp_path / "floor.beebook"))
    driver = sqlite3.connect(floor_path, isolation_level=None)
    for pragma in ("journal_mode = WAL", "synchronous = FULL", "foreign_keys = ON"):
        driver.execute(f"PRAGMA {pragma}")
    sets = ", ".join(f"{name} = ?" for name in COLUMNS)
    ready = [pack(brood_side(FRAME.lattice, seed=seed)) for seed in range(20)]
    rows = [_counted(blob) for blob in ready]
    turns = count()

    def raw() -> None:
        turn = next(turns)
        blob, row = ready[turn % 20], rows[turn % 20]
        driver.execute("BEGIN IMMEDIATE")
        driver.execute("SELECT * FROM visit WHERE id = ?", (stroke.visit,)).fetchone()
        driver.execute("SELECT * FROM side JOIN comb ON side_id = id WHERE id = ?", (side.id,)).fetchone()
        driver.execute(f"UPDATE tally SET {sets} WHERE side_id = ?", (*row, side.id))
        driver.execute("UPDATE comb SET cells = ? WHERE side_id = ?", (blob, side.id))
        driver.execute("UPDATE visit SET saved_utc = ? WHERE id = ?", (f"stamp {turn}", stroke.visit))
        driver.execute("COMMIT")

    with closing(driver):
        times = by_turns(stroke.paint, raw, rounds=400, loops=1)
    benchmark.pedantic(stroke.paint, rounds=10)  # type: ignore[no-untyped-call]
    kept = stroke.book.read.get(Side, side.id)
    assert kept is not None
    shown = unpack(kept.cells, cells=FRAME.lattice.cells)
    assert (shown[stroke.patch.indices] == stroke.patch.after).all()
    assert all(len(changes.cells[side.id]) <= STROKE for changes in stroke.heard[1:])
    while stroke.book.undo() is not None:
        pass
    assert stroke.book.read.find(Side) == ()
    stroke.book.close()
    show(times.line("a finished stroke through the workbook", 2))


def _counted(blob: bytes) -> tuple[float, ...]:
    counts = np.bincount(unpack(blob, cells=FRAME.lattice.cells), minlength=12).tolist()
    return (FRAME.area_dm2, FRAME.cells_per_dm2, FRAME.drone_cells_per_dm2, *counts)
