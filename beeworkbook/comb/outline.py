"""Outlines of what a side holds: rings along the cell walls, and the same with fewer corners.

A corner where three contents meet, the ground beside the cells being one more, is a junction. A
border runs from junction to junction; it is simplified once, and both its contents keep the same
corners of it, since a corner between junctions lies on one border only.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.lattice import CellIndices, Cells, Lattice, read_only
from beeworkbook.comb.simplify import simplified
from beeworkbook.comb.walls import OUTSIDE, Walls, chained_walls

Ring: TypeAlias = npt.NDArray[np.float64]
"""A closed ring, (k, 2) in millimetres; the last corner is joined to the first."""


def region_outlines(lattice: Lattice, cells: Cells) -> dict[Content, list[Ring]]:
    """The outlines of every content on the side, exactly along the cell walls.

    A content's rings are its outer ones, clockwise, then its holes, the other way; to be filled
    by the even-odd rule. What is not recorded has outlines like any content.
    Units: millimetres on the comb. Errors: ValueError on a wrong length.
    Source: plain geometry.
    """
    walls = chained_walls(lattice, cells)
    ends = np.append(walls.starts[1:], len(walls.wall))
    return _by_content(walls, walls.sides.points.take(walls.wall, axis=0), walls.starts, ends)


@dataclass(frozen=True, eq=False)
class Outlines:
    """The simplified outlines of a side: all corners in one array, for whoever draws many sides at once.

    Rings stand by content, outer ones first; ring r has the corners begins[r] to begins[r + 1]. is_border
    tells of a corner whether the line from it on lies between two contents and is here for the first time.
    Shapes: points (n, 2), is_border (n,), begins (rings + 1,), contents (rings,). Units: mm on the comb.
    """

    points: Ring
    is_border: npt.NDArray[np.bool_]
    begins: CellIndices
    contents: tuple[Content, ...]

    @property
    def rings(self) -> dict[Content, list[Ring]]:
        """The rings of every content."""
        outlines: dict[Content, list[Ring]] = {}
        for content, begin, end in zip(self.contents, self.begins[:-1], self.begins[1:], strict=True):
            outlines.setdefault(content, []).append(self.points[begin:end])
        return outlines

    @property
    def borders(self) -> list[list[int]]:
        """The lines along which two contents meet, each once, as places in points; not the comb's edge."""
        onward = np.arange(1, len(self.points) + 1)
        onward[self.begins[1:] - 1] = self.begins[:-1]
        start = np.flatnonzero(self.is_border)
        stop = onward[start]
        parted = (self.points[stop[:-1]] != self.points[start[1:]]).any(axis=1)
        begins = np.flatnonzero(np.append(len(start) > 0, parted)).tolist()
        firsts, others = start.tolist(), stop.tolist()
        return [
            [firsts[begin], *others[begin:end]]
            for begin, end in zip(begins, [*begins[1:], len(others)], strict=False)
        ]


def simplified_outlines(lattice: Lattice, cells: Cells, tolerance_mm: float) -> dict[Content, list[Ring]]:
    """The outlines with as few corners as keep each border within the tolerance.

    Neighbouring contents share the corners of their border exactly, so that no gap opens; every
    ring keeps at least three corners, so that no cell is lost.
    Units: millimetres on the comb.
    Errors: ValueError on a wrong length or a negative tolerance.
    """
    return outlines_of_sides(((lattice, cells),), tolerance_mm)[0].rings


def outlines_of_sides(sides: Iterable[tuple[Lattice, Cells]], tolerance_mm: float) -> tuple[Outlines, ...]:
    """The simplified outlines of many sides: the same as one by one, in half the time.

    Units: millimetres on the comb.
    Errors: ValueError on a wrong length or a negative tolerance.
    """
    if not tolerance_mm >= 0:
        raise ValueError("tolerance_mm must not be negative")
    lines = [_border_lines(chained_walls(lattice, cells)) for lattice, cells in sides]
    if not lines:
        return ()
    stays = simplified(
        np.concatenate([each.points for each in lines]),
        np.concatenate([each.lengths for each in lines]),
        np.concatenate([each.forced for each in lines]),
        tolerance_mm,
    )
    ends = np.cumsum([len(each.points) for each in lines])
    return tuple(_kept(each, stay) for each, stay in zip(lines, np.split(stays, ends[:-1]), strict=True))


def ring_area_mm2(ring: Ring) -> float:
    """Area within a ring: positive clockwise (an outer ring), negative the other way (a hole)."""
    x, y = ring[:, 0], ring[:, 1]
    return float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y) / 2)


def _by_content(
    walls: Walls, points: Ring, begins: npt.NDArray[np.intp], ends: npt.NDArray[np.intp]
) -> dict[Content, list[Ring]]:
    """The rings cut from one array of points, by content, outer ones first."""
    read_only(points)
    content = walls.inside[walls.starts]
    sequence = np.lexsort((walls.is_hole, content))
    rings = [
        points[begin:end]
        for begin, end in zip(begins[sequence].tolist(), ends[sequence].tolist(), strict=True)
    ]
    counts = np.bincount(content, minlength=len(CONTENTS)).tolist()
    outlines, done = {}, 0
    for code, count in enumerate(counts):
        if count:
            outlines[CONTENTS[code]] = rings[done : done + count]
            done += count
    return outlines


@dataclass(frozen=True, eq=False)
class _BorderLines:
    """The borders of a side, each once, from junction to junction, to be simplified.

    Shapes: wall (n,) and points (n, 2), line after line; lengths and forced (lines,).
    """

    walls: Walls
    wall: CellIndices
    points: Ring
    lengths: CellIndices
    forced: CellIndices


def _border_lines(walls: Walls) -> _BorderLines:
    starts = walls.starts
    ring_lengths = np.diff(np.append(starts, len(walls.wall)))
    has_junction = np.logical_or.reduceat(walls.is_junction, starts)
    # A ring without a junction is one closed border, taken from wherever it begins.
    breaks = walls.is_junction.copy()
    breaks[starts[~has_junction]] = True
    begins = np.flatnonzero(breaks)
    ring = np.searchsorted(starts, begins, side="right") - 1
    # The border's last corner is where the next one of the ring begins, round the end of the ring.
    onward = np.append(begins[1:], 0)
    is_last = np.append(ring[1:] != ring[:-1], True)
    first_of_ring = begins[np.searchsorted(ring, ring)]
    onward[is_last] = first_of_ring[is_last] + ring_lengths[ring[is_last]]
    # Each border is there twice, once from either content: it is simplified from the lower code.
    once = walls.inside[begins] < walls.beyond[begins]
    begins, ring, lengths = begins[once], ring[once], onward[once] - begins[once] + 1
    place = np.arange(lengths.sum()) - np.repeat(np.cumsum(lengths) - lengths - begins, lengths)
    ring_end = np.repeat((starts + ring_lengths)[ring], lengths)
    place -= np.where(place >= ring_end, np.repeat(ring_lengths[ring], lengths), 0)
    wall = walls.wall[place]
    # So that no ring falls flat: three walls and more keep a corner, a closed border three.
    forced = np.where(has_junction[ring], lengths > 3, 2)
    return _BorderLines(walls, wall, walls.sides.points.take(wall, axis=0), lengths, forced)


def _kept(lines: _BorderLines, stays: npt.NDArray[np.bool_]) -> Outlines:
    """The rings with the corners that stay, the same for both contents of a border."""
    walls, corner = lines.walls, lines.walls.sides.corner
    corner_stays = np.zeros(int(corner[-6:].max()) + 1, np.bool_)
    corner_stays[corner[lines.wall[stays]]] = True
    kept = np.flatnonzero(corner_stays[corner[walls.wall]])
    content = walls.inside[walls.starts]
    sequence = np.lexsort((walls.is_hole, content))
    before = np.searchsorted(kept, np.append(walls.starts, len(walls.wall)))
    begins = np.append(0, np.cumsum(np.diff(before)[sequence]))
    # Rings are found in the order in which they were chained, and stand by content.
    moved = np.repeat(before[sequence] - begins[:-1], np.diff(begins))
    kept = kept[np.arange(len(kept)) + moved]
    beyond = walls.beyond[kept]
    return Outlines(
        read_only(walls.sides.points.take(walls.wall[kept], axis=0)),
        (walls.inside[kept] < beyond) & (beyond != OUTSIDE),
        begins,
        tuple(CONTENTS[code] for code in content[sequence].tolist()),
    )
