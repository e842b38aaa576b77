"""A finished stroke through the workbook beside raw sqlite3: packing, undo, totals, stamp and report.

Run with: python -m pytest tests/benchmarks/bench_workbook.py --benchmark-enable -s
The side is a full-size one: 4,536 cells of a modern Dadant-Blatt brood side with some speckle.
"""

import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import count
from pathlib import Path
from typing import Any, Final

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from beeworkbook.colony.records import ColonyId, Side, Visit, VisitId
from beeworkbook.comb.codec import pack, unpack
from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.side import CellPatch, blank_cells
from beeworkbook.store.rows import form_of
from beeworkbook.store.tallies import tally_row
from beeworkbook.store.texts import find_text, text
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits import ArriveColony, BeginVisit, PaintCells
from beeworkbook.workbook.workbook import Workbook
from tests.benchmarks.turns import by_turns
from tests.comb.drawn import brood_side
from tests.workbook.keeping import LATER, LOOK, NUCLEUS, as_int

FRAME: Final = FRAME_TYPES["dadant_blatt"]
STROKE: Final = 60
MORNING: Final = datetime(2031, 5, 2, 8, tzinfo=UTC)
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
    """One stroke after another on one side, each over other cells and a second after the last."""

    def __init__(self, path: Path) -> None:
        seconds = count()
        self.book = Workbook.create(
            path, "Bench", today=LATER, now=lambda: MORNING + timedelta(seconds=next(seconds))
        )
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
        self.states: list[bytes] = []
        """The side packed, after each stroke."""
        self._ready = iter(self._patches(500))

    def _patches(self, number: int) -> list[tuple[CellPatch, Content]]:
        """Finished strokes as a tool hands them over, one upon the other."""
        cells, made = self.cells, []
        for turn in range(number):
            first = turn * 97 % (len(cells) - STROKE)
            content = Content(2 + turn % 10)
            patch = CellPatch.painting(cells, np.arange(first, first + STROKE), content)
            cells = patch.apply(cells)
            made.append((patch, content))
            self.states.append(pack(cells))
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
    texts = [text("get visit"), find_text("side", ("visit_id", "frame_id", "face"), frozenset())]
    texts += [text(f"update {name}") for name in ("tally", "comb", "visit")]
    ready = iter(_bound(stroke, side))

    def raw() -> None:
        asked_visit, asked_side, counts, drawing, stamped = next(ready)
        driver.execute("BEGIN IMMEDIATE")
        driver.execute(texts[0], asked_visit).fetchone()
        driver.execute(texts[1], asked_side).fetchall()
        driver.execute(texts[2], counts)
        driver.execute(texts[3], drawing)
        driver.execute(texts[4], stamped)
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


def _bound(stroke: _Stroke, side: Side) -> list[tuple[tuple[Any, ...], ...]]:
    """What the same strokes bind to the same statements, stroke by stroke, ready."""
    visit = stroke.book.read.get(Visit, stroke.visit)
    assert visit is not None
    asked = (stroke.visit,), (stroke.visit, stroke.frame, Face.A.value)
    made: list[tuple[tuple[Any, ...], ...]] = []
    for turn, blob in enumerate(stroke.states):
        stamped = replace(visit, saved_utc=MORNING + timedelta(days=1, seconds=turn))
        counts = tally_row(FRAME, replace(side, cells=blob))
        row = form_of(Visit).row(stamped)[1:]
        made.append((*asked, (*counts, side.id), (blob, side.id), (*row, stroke.visit)))
    return made
