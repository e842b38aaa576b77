"""Fewer points on many lines at once. Plain geometry: what the lines part is not known here."""

from typing import Final

import numpy as np
import numpy.typing as npt

from beeworkbook.comb.lattice import CellIndices, Points

_NEARLY: Final = 1 - 1e-6


def simplified(
    points: Points, lengths: CellIndices, forced: CellIndices, tolerance: float
) -> npt.NDArray[np.bool_]:
    """Which points of many lines stay, so that each line stays within the tolerance of itself.

    The ends stay; between them the point farthest from the straight line is taken first, and its
    two halves likewise. A line that is forced keeps its farthest point whatever the tolerance,
    one forced twice those of its halves too.
    Shapes: points (n, 2), line after line; lengths (lines,) in points, at least two each; forced
    (lines,); result (n,). Units: tolerance as points.
    Source: Ramer 1972, Douglas and Peucker 1973, from memory.
    """
    stays = np.zeros(len(points), np.bool_)
    ends = np.cumsum(lengths)
    first, last = ends - lengths, ends - 1
    stays[first] = stays[last] = True
    x, y = np.ascontiguousarray(points.T)
    while len(first := first[(long := last - first >= 2)]):
        last, forced = last[long], forced[long]
        farthest, squared = _farthest(x, y, first, last)
        split = (squared > tolerance * tolerance) | (forced > 0)
        first, last, farthest, forced = first[split], last[split], farthest[split], forced[split] - 1
        stays[farthest] = True
        first, last = np.concatenate((first, farthest)), np.concatenate((farthest, last))
        forced = np.concatenate((forced, forced))
    return stays


def _farthest(x: Points, y: Points, first: CellIndices, last: CellIndices) -> tuple[CellIndices, Points]:
    """Of the points between each first and last the one farthest from their segment, and how far squared."""
    count = last - first - 1
    begins = np.cumsum(count) - count
    piece = np.repeat(np.arange(len(first)), count)
    between = np.arange(len(piece)) + np.repeat(first + 1 - begins, count)
    x_first, y_first = x[first], y[first]
    x_along, y_along = x[last] - x_first, y[last] - y_first
    squared_length = x_along * x_along + y_along * y_along
    squared_length[squared_length == 0] = 1.0  # a closed line: measured from where it closes
    x_away, y_away = x[between] - x_first[piece], y[between] - y_first[piece]
    share = x_away * (x_along / squared_length)[piece] + y_away * (y_along / squared_length)[piece]
    share = share.clip(0.0, 1.0)
    squared = (x_away - share * x_along[piece]) ** 2 + (y_away - share * y_along[piece]) ** 2
    most = np.maximum.reduceat(squared, begins)
    # Many points of a zigzag are equally far: the middle one of them halves the work at every turn.
    hits = np.flatnonzero(squared >= (most * _NEARLY)[piece])
    number = np.bincount(piece[hits], minlength=len(first))
    return between[hits[np.cumsum(number) - number + number // 2]], most
