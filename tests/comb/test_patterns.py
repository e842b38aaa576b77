"""The marks of patterns: on the cells, on plain paper, and carried on from tile to tile."""

import numpy as np
import pytest

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import fit_lattice
from beeworkbook.comb.legend import LEGEND
from beeworkbook.comb.patterns import Marks, MarkShape, Pattern, box_marks, cell_marks, tile
from tests.comb.inked import draw

PATTERNS = {content: entry.pattern for content, entry in LEGEND.items()}
DRAWN = [content for content, pattern in PATTERNS.items() if pattern.shape is not MarkShape.NONE]
SMALL = fit_lattice(70.0, 60.0)


def shifted(marks: Marks, x: float, y: float) -> Marks:
    place = np.array((x, y))
    return Marks(
        marks.line_mm,
        marks.lines + np.tile(place, 2),
        marks.rings + np.append(place, 0),
        marks.discs + np.append(place, 0),
        marks.flecks + place,
    )


@pytest.mark.parametrize("content", DRAWN)
def test_a_large_field_carries_the_ink_it_promises(content: Content) -> None:
    pattern = PATTERNS[content]
    ink = draw(box_marks(pattern, 1.3, (0.0, 0.0, 15.6, 15.6)), 15.6, 15.6, 53.7)
    # Lines that cross one another share their ink, and no more than a twentieth is lost to that.
    assert float(ink.mean()) == pytest.approx(pattern.ink_share, rel=0.08, abs=0.002)


@pytest.mark.parametrize("content", DRAWN)
def test_on_the_comb_the_same_ink_lies_on_the_cells(content: Content) -> None:
    pattern = PATTERNS[content]
    lattice = fit_lattice(130.0, 110.0)
    ink = draw(cell_marks(pattern, lattice), 130.0, 110.0, 9.3)[90:-90, 90:-90]
    assert float(ink.mean()) == pytest.approx(pattern.ink_share, rel=0.12, abs=0.003)


@pytest.mark.parametrize("content", DRAWN)
def test_marks_of_single_cells_add_up_to_those_of_all(content: Content) -> None:
    """Painted cell by cell the comb looks as when drawn at once, but for the lines' square ends."""
    pattern = PATTERNS[content]
    inside = np.flatnonzero((SMALL.neighbour_table >= 0).all(axis=1))
    whole = draw(cell_marks(pattern, SMALL), 70, 60, 12)
    pieces = [draw(cell_marks(pattern, SMALL, np.array([cell])), 70, 60, 12) for cell in inside]
    # Cut back by a row of cells: the lines of the cells at the rim are not among the pieces.
    apart = (np.logical_or.reduce(pieces) ^ whole)[130:-130, 150:-150]
    assert float(apart.mean()) < 0.02


@pytest.mark.parametrize("content", DRAWN)
def test_marks_stay_on_or_beside_their_cells(content: Content) -> None:
    """A mark reaches at most to the corners of its cell, plus half the ink of a dot set there."""
    cell = SMALL.cell(4, 5)
    marks = cell_marks(PATTERNS[content], SMALL, np.array([cell]))
    places = np.concatenate(
        (
            marks.lines.reshape(-1, 2),
            marks.rings[:, :2],
            marks.discs[:, :2],
            marks.flecks.reshape(-1, 2),
        )
    )
    reach = float(np.hypot(*SMALL.hexagon_mm[0])) * 1.08
    assert np.hypot(*(places - SMALL.centres[cell]).T).max(initial=0.0) <= reach


@pytest.mark.parametrize("content", DRAWN)
def test_two_boxes_side_by_side_carry_on(content: Content) -> None:
    pattern = PATTERNS[content]
    whole = draw(box_marks(pattern, 1.32, (0.0, 0.0, 8.0, 5.0)), 8, 5, 50)
    left = draw(box_marks(pattern, 1.32, (0.0, 0.0, 4.0, 5.0)), 4, 5, 50)
    right = draw(shifted(box_marks(pattern, 1.32, (4.0, 0.0, 8.0, 5.0)), -4.0, 0.0), 4, 5, 50)
    assert float((np.concatenate((left, right), axis=1) ^ whole).mean()) < 0.002


@pytest.mark.parametrize("content", DRAWN)
def test_tiles_repeat_into_the_same_pattern(content: Content) -> None:
    pattern = PATTERNS[content]
    single = tile(pattern, 1.0)
    across, down = single.width_mm * 2, single.height_mm * 2
    whole = draw(box_marks(pattern, 1.0, (0.0, 0.0, across, down)), across, down, 100)
    for x in (0, 1):
        for y in (0, 1):
            left, top = round(x * single.width_mm * 100), round(y * single.height_mm * 100)
            piece = draw(single.marks, single.width_mm, single.height_mm, 100)[:-1, :-1]
            there = whole[top : top + piece.shape[0], left : left + piece.shape[1]]
            assert float((there ^ piece).mean()) < 0.02


def test_bench_marks_sit_on_the_cells() -> None:
    cells = np.array([SMALL.cell(2, 3), SMALL.cell(3, 4)])
    rings = cell_marks(PATTERNS[Content.OPEN], SMALL, cells).rings
    assert np.allclose(rings[:, :2], SMALL.centres[cells])
    ticks = cell_marks(PATTERNS[Content.EGGS], SMALL, cells).lines
    assert np.allclose((ticks[:, :2] + ticks[:, 2:]) / 2, SMALL.centres[cells])
    assert np.allclose(ticks[:, 0], ticks[:, 2])


def test_one_cell_in_four_of_empty_comb_is_dotted() -> None:
    dots = cell_marks(PATTERNS[Content.EMPTY], fit_lattice(338.0, 200.0)).discs
    assert len(dots) == pytest.approx(fit_lattice(338.0, 200.0).cells / 4, rel=0.05)


def test_a_blank_pattern_has_no_marks() -> None:
    for marks in (
        cell_marks(Pattern(), SMALL),
        box_marks(Pattern(), 1.0, (0, 0, 9, 9)),
        tile(Pattern(), 1.0).marks,
    ):
        assert not any(len(part) for part in (marks.lines, marks.rings, marks.discs, marks.flecks))


@pytest.mark.parametrize("cell_mm", [0.0, -1.0, float("nan")])
def test_a_cell_has_a_width(cell_mm: float) -> None:
    with pytest.raises(ValueError, match="positive"):
        box_marks(PATTERNS[Content.OPEN], cell_mm, (0, 0, 9, 9))
