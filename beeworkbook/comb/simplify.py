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
    # A point as one complex number: half the arrays, and a turn and a stretch are one product.
    places = np.ascontiguousarray(points, np.float64).view(np.complex128)[:, 0]
    while len(first := first[(long := last - first >= 2)]):
        last, forced = last[long], forced[long]
        farthest, squared = _farthest(places, first, last)
        split = (squared > tolerance * tolerance) | (forced > 0)
        first, last, farthest, forced = first[split], last[split], farthest[split], forced[split] - 1
        stays[farthest] = True
        first, last = np.concatenate((first, farthest)), np.concatenate((farthest, last))
        forced = np.concatenate((forced, forced))
    return stays


def _farthest(
    places: npt.NDArray[np.complex128], first: CellIndices, last: CellIndices
) -> tuple[CellIndices, Points]:
    """Of the points between each first and last the one farthest from their segment, and how far squared."""
    count = last - first - 1
    begins = np.cumsum(count) - count
    between = np.arange(count.sum()) + np.repeat(first + 1 - begins, count)
    along = places[last] - places[first]
    closed = along == 0  # measured from where it closes
    along[closed] = 1.0
    # Turned and stretched so that the segment lies from 0 to 1: what is beyond its ends counts from there.
    turned = (places[between] - np.repeat(places[first], count)) * np.repeat(1 / along, count)
    beyond = turned.real - turned.real.clip(0.0, 1.0)
    if closed.any():
        beyond = np.where(np.repeat(closed, count), turned.real, beyond)
    squared = turned.imag**2 + beyond**2
    most = np.maximum.reduceat(squared, begins)
    # Many points of a zigzag are equally far: the middle one of them halves the work at every turn.
    is_far = squared >= np.repeat(most * _NEARLY, count)
    number = np.add.reduceat(is_far, begins, dtype=np.intp)
    hits = np.flatnonzero(is_far)
    return between[hits[np.cumsum(number) - number + number // 2]], most * (along.real**2 + along.imag**2)
