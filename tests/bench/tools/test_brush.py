import itertools

import numpy as np
import pytest

from beeworkbook.bench.tools.base import State, Work
from beeworkbook.bench.tools.brush import BrushTool
from beeworkbook.comb.strokes import sweep


def test_a_stroke_paints_all_it_swept_over_and_no_more(work: Work) -> None:
    tool = BrushTool()
    points = [(80.0, 60.0), (100.0, 60.0), (100.0, 90.0)]
    tool.press(work, points[0])
    assert tool.state is State.PAINTING
    for point in points[1:]:
        tool.move(point)
    swept = {
        int(cell)
        for start, end in itertools.pairwise(points)
        for cell in sweep(work.lattice, start, end, work.radius_mm)
    }
    patch = tool.release()
    assert patch is not None
    assert set(patch.indices.tolist()) == swept


def test_each_move_gives_only_newly_covered_cells(work: Work) -> None:
    tool = BrushTool()
    seen: list[int] = tool.press(work, (80.0, 60.0)).tolist()
    for x in np.arange(81.0, 110.0, 3.0):
        seen += tool.move((float(x), 62.0)).tolist()
    assert len(seen) == len(set(seen))


def test_a_click_paints_the_cells_under_the_brush(work: Work) -> None:
    tool = BrushTool()
    tool.press(work, (100.0, 70.0))
    patch = tool.release()
    assert patch is not None
    distance = np.hypot(*(work.lattice.centres[patch.indices] - (100.0, 70.0)).T)
    assert distance.max() <= work.radius_mm
    assert len(patch.indices) == pytest.approx(np.pi * 12.0**2 / work.lattice.cell_area_mm2, rel=0.2)


def test_a_second_stroke_begins_afresh(work: Work) -> None:
    tool = BrushTool()
    tool.press(work, (20.0, 20.0))
    tool.release()
    tool.press(work, (150.0, 100.0))
    patch = tool.release()
    assert patch is not None
    assert work.lattice.centres[patch.indices, 0].min() > 100.0
