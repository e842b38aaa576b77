"""The strokes and outlines of one full side beside their floors.

Run with: python -m pytest tests/benchmarks/bench_comb.py --benchmark-enable -s
"""

from collections.abc import Callable

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.comb.lattice import Cells, Points
from beeworkbook.comb.outline import region_outlines, ring_area_mm2, simplified_outlines
from beeworkbook.comb.regions import ellipse, flood, mirror, outline_cells
from beeworkbook.comb.strokes import Stroke
from tests.benchmarks.turns import by_turns
from tests.comb.drawn import brood_side

FRAME = FRAME_TYPES["dadant_blatt"]
LATTICE = FRAME.lattice
MIDDLE = (LATTICE.width_mm / 2, LATTICE.height_mm * 0.62)
BRUSH_MM = 8.0

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


def side() -> Cells:
    cells = brood_side(LATTICE)
    assert len(np.unique(cells)) == 10
    return cells


def counting(cells: Cells) -> Callable[[], object]:
    """The floor of all strokes: one count of the side."""
    return lambda: np.bincount(cells, minlength=len(CONTENTS))


def freehand(points: int = 300) -> Points:
    """A line round the brood as a hand draws it: a wavy ellipse with a tremble."""
    turn = np.linspace(0, 2 * np.pi, points, endpoint=False)
    wave = 1 + 0.1 * np.sin(7 * turn) + 0.02 * np.random.default_rng(3).standard_normal(points)
    return np.column_stack((MIDDLE[0] + 90 * wave * np.cos(turn), MIDDLE[1] + 60 * wave * np.sin(turn)))


def bench_brush(benchmark: BenchmarkFixture, show: Print) -> None:
    """One pointer event: the brush of 16 mm is drawn on by 3.6 mm over fresh comb."""
    cells = side()
    begun, onward = MIDDLE, (MIDDLE[0] + 3, MIDDLE[1] + 2)
    stroke = Stroke(LATTICE, Content.SEALED, BRUSH_MM)

    def move() -> object:
        stroke.begin(begun)
        return stroke.move(onward)

    def begin_only() -> object:
        return stroke.begin(begun)

    assert np.array_equal(np.union1d(begin_only(), move()), stroke.covered)  # type: ignore[call-overload]
    away = LATTICE.centres - np.array(begun)
    along = np.array(onward) - np.array(begun)
    share = np.clip(away @ along / (along @ along), 0, 1)
    plainly = np.hypot(*(away - share[:, None] * along).T) <= BRUSH_MM
    assert np.array_equal(stroke.covered, np.flatnonzero(plainly))
    both, one = by_turns(move, counting(cells)), by_turns(begin_only, counting(cells))
    show(one.line(f"brush put down ({len(stroke.covered)} cells in reach)", 2))
    show(both.line("brush put down and drawn on (two events)", 4))
    benchmark(move)


def bench_ellipse(benchmark: BenchmarkFixture, show: Print) -> None:
    cells = side()
    found = ellipse(LATTICE, MIDDLE, 90, 60)
    plainly = (((LATTICE.centres - MIDDLE) / (90, 60)) ** 2).sum(axis=1) <= 1
    assert np.array_equal(found, np.flatnonzero(plainly))
    turns = by_turns(lambda: ellipse(LATTICE, MIDDLE, 90, 60), counting(cells))
    show(turns.line(f"ellipse ({len(found)} cells)", 2))
    benchmark(ellipse, LATTICE, MIDDLE, 90, 60)


def bench_outline(benchmark: BenchmarkFixture, show: Print) -> None:
    cells, points = side(), freehand()
    found = outline_cells(LATTICE, points)
    x, y = LATTICE.centres.T[:, :, None]
    (x0, y0), (x1, y1) = points.T[:, None, :], np.roll(points, -1, axis=0).T[:, None, :]
    crossed = ((y0 <= y) != (y1 <= y)) & (x0 + (y - y0) * (x1 - x0) / (y1 - y0) > x)
    assert np.array_equal(found, np.flatnonzero(crossed.sum(axis=1) % 2))
    turns = by_turns(lambda: outline_cells(LATTICE, points), counting(cells))
    show(turns.line(f"outline of 300 points ({len(found)} cells)", 12))
    benchmark(outline_cells, LATTICE, points)


def bench_flood(benchmark: BenchmarkFixture, show: Print) -> None:
    cells = side()
    start = LATTICE.cell_at(
        MIDDLE[0], MIDDLE[1] - LATTICE.height_mm * 0.55 * 0.62
    )  # in the ring of sealed brood
    assert start is not None
    assert cells[start] == Content.SEALED
    found = flood(LATTICE, cells, start)
    reached, frontier = {start}, [start]
    while frontier:
        near = {cell for cell in LATTICE.neighbours(frontier.pop()) if cells[cell] == cells[start]} - reached
        reached |= near
        frontier += near
    assert found.tolist() == sorted(reached)
    turns = by_turns(lambda: flood(LATTICE, cells, start), counting(cells))
    show(turns.line(f"flood fill ({len(found)} cells)", 6))
    benchmark(flood, LATTICE, cells, start)


def bench_mirror(benchmark: BenchmarkFixture, show: Print) -> None:
    cells = side()
    assert np.array_equal(mirror(LATTICE, mirror(LATTICE, cells)), cells)
    turns = by_turns(lambda: mirror(LATTICE, cells), counting(cells))
    show(turns.line("mirror", 1))
    benchmark(mirror, LATTICE, cells)


def bench_outlines_of_all_regions(benchmark: BenchmarkFixture, show: Print) -> None:
    cells = side()

    def boundary_edges() -> object:
        return np.flatnonzero(np.append(cells, np.uint8(255))[LATTICE.neighbour_table] != cells[:, None])

    outlines = region_outlines(LATTICE, cells)
    walls = sum(len(ring) for rings in outlines.values() for ring in rings)
    assert walls == len(boundary_edges())  # type: ignore[arg-type]
    for content, rings in outlines.items():
        area = sum(map(ring_area_mm2, rings))
        assert area == pytest.approx(np.count_nonzero(cells == content) * LATTICE.cell_area_mm2)
    count = sum(map(len, outlines.values()))
    turns = by_turns(lambda: region_outlines(LATTICE, cells), boundary_edges, loops=5)
    show(turns.line(f"outlines of all regions ({count} rings, {walls} walls)", 12))
    simple = by_turns(lambda: simplified_outlines(LATTICE, cells, 2.5), boundary_edges, rounds=60, loops=5)
    show(simple.line("the same simplified to 2.5 mm (no limit is set)", float("inf")))
    benchmark(region_outlines, LATTICE, cells)
