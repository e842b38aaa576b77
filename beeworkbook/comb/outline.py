"""Outlines of what a side holds: rings along the cell walls, and the same with fewer corners.

A corner where three contents meet, the ground beside the cells being one more, is a junction. A
border runs from junction to junction; it is simplified once, and both its contents keep the same
corners of it, since a corner between junctions lies on one border only.
"""

from typing import TypeAlias

import numpy as np
import numpy.typing as npt

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.lattice import Cells, Lattice, read_only
from beeworkbook.comb.simplify import simplified
from beeworkbook.comb.walls import Walls, chained_walls

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


def simplified_outlines(lattice: Lattice, cells: Cells, tolerance_mm: float) -> dict[Content, list[Ring]]:
    """The outlines with as few corners as keep each border within the tolerance.

    Neighbouring contents share the corners of their border exactly, so that no gap opens; every
    ring keeps at least three corners, so that no cell is lost.
    Units: millimetres on the comb.
    Errors: ValueError on a wrong length or a negative tolerance.
    """
    if not tolerance_mm >= 0:
        raise ValueError("tolerance_mm must not be negative")
    walls = chained_walls(lattice, cells)
    kept = _kept(walls, tolerance_mm)
    before = np.concatenate(([0], np.cumsum(kept)))
    ends = np.append(walls.starts[1:], len(kept))
    return _by_content(
        walls, walls.sides.points.take(walls.wall[kept], axis=0), before[walls.starts], before[ends]
    )


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


def _kept(walls: Walls, tolerance_mm: float) -> npt.NDArray[np.bool_]:
    """For every wall whether its first corner stays, the same for both contents of a border."""
    sides, starts = walls.sides, walls.starts
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
    stays = simplified(sides.points.take(wall, axis=0), lengths, forced, tolerance_mm)
    corner_stays = np.zeros(int(sides.corner[-6:].max()) + 1, np.bool_)
    corner_stays[sides.corner[wall[stays]]] = True
    kept: npt.NDArray[np.bool_] = corner_stays[sides.corner[walls.wall]]
    return kept
