"""Paint over a comb that was laid out, as a keeper with it in hand would: patches, a ragged rim, specks."""

import math
import random
from collections.abc import Iterator
from typing import Final

import numpy as np

from beeworkbook.comb.contents import Content
from beeworkbook.comb.lattice import CellIndices, Cells, Lattice
from beeworkbook.comb.side import CellPatch
from beeworkbook.comb.strokes import Stroke

_SPECKS: Final = (
    (Content.SEALED, Content.EMPTY, 0.045),
    (Content.SEALED, Content.OPEN, 0.015),
    (Content.POLLEN, Content.EMPTY, 0.08),
    (Content.STORES, Content.NECTAR, 0.03),
    (Content.OPEN, Content.EGGS, 0.02),
)
"""What is speckled with what and how much: cells left out of a brood patch are normal under a fifth.
Source: under 20 % is good brood, Lee, Goblirsch and others 2019, Insects 10:12; the shares are our own."""


def paint_over(lattice: Lattice, cells: Cells, chance: random.Random) -> Iterator[tuple[Content, CellPatch]]:
    """Stroke by stroke, what is painted on a side and with which content."""
    for content, patch in _strokes(lattice, cells, chance):
        if not patch.is_empty:
            yield content, patch


def _strokes(lattice: Lattice, cells: Cells, chance: random.Random) -> Iterator[tuple[Content, CellPatch]]:
    plan = (
        (Content.SEALED, Content.EMPTY, 9.0, 2),
        (Content.EMPTY, Content.EGGS, 7.0, 1),
        (Content.STORES, Content.NECTAR, 8.0, 2),
        (Content.STORES, Content.POLLEN, 5.0, 2),
        (Content.POLLEN, Content.NECTAR, 5.0, 1),
        (Content.SEALED, Content.OPEN, 6.0, 1),
    )
    for under, over, radius, times in plan:
        for _ in range(times):
            found = np.flatnonzero(cells == under)
            if len(found) < 60:
                continue
            patch = _wander(lattice, cells, int(chance.choice(found)), under, over, radius, chance)
            cells = patch.apply(cells)
            yield over, patch
    for under, over, share in _SPECKS:
        patch = CellPatch.painting(cells, _scattered(cells, under, share, chance), over)
        cells = patch.apply(cells)
        yield over, patch


def _wander(  # noqa: PLR0917 - one stroke, with all that makes it
    lattice: Lattice,
    cells: Cells,
    start: int,
    under: Content,
    over: Content,
    radius: float,
    chance: random.Random,
) -> CellPatch:
    """A stroke that wanders over one content only."""
    x, y = (float(value) for value in lattice.centres[start])
    stroke = Stroke(lattice, over, radius * chance.uniform(0.8, 1.3), only=frozenset({under}))
    stroke.begin((x, y))
    way = chance.uniform(0, 2 * math.pi)
    for _ in range(chance.randint(3, 8)):
        way += chance.gauss(0, 0.7)
        x = min(max(x + 9 * math.cos(way), 0.0), lattice.width_mm)
        y = min(max(y + 5 * math.sin(way), 0.0), lattice.height_mm)
        stroke.move((x, y))
    return stroke.patch(cells)


def _scattered(cells: Cells, under: Content, share: float, chance: random.Random) -> CellIndices:
    found = np.flatnonzero(cells == under)
    return np.array([cell for cell in found.tolist() if chance.random() < share], np.intp)
