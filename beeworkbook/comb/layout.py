"""A plausible comb from eighths: where bees would have put what the keeper counted.

Brood low and in the middle, a little towards the entrance, eggs inside, then open, then sealed;
pollen as a band round it, stores above and in the corners, nectar under them, empty comb below,
drone brood along the lower edge, gaps at the bottom. The places are a guess and are shown as one;
the number of cells is what was said. Every content is given the cells that rank first for it.
Source: the pattern is Johnson 2009, Proc. R. Soc. B (brood, pollen band, stores above) and Camazine
1991, Behav. Ecol. Sociobiol. 28:61-76 (from memory); all proportions below are our own.
"""

import math
import random
from collections.abc import Mapping
from functools import lru_cache
from typing import Final

import numpy as np
import numpy.typing as npt

from beeworkbook.comb.contents import Content, Face
from beeworkbook.comb.eighths import counts_for
from beeworkbook.comb.frames import FrameType
from beeworkbook.comb.lattice import Cells, Lattice, read_only

_Scores = npt.NDArray[np.float64]

_BROOD_INWARD: Final = (Content.BROOD, Content.SEALED, Content.OPEN, Content.EGGS)
_WAVES: Final = 14
_LONGEST_MM: Final = 210.0
_SHORTEST_MM: Final = 30.0
_STEPS: Final = 1_000_000


def lay_out(
    frame: FrameType,
    eighths: Mapping[Content, float],
    face: Face,
    *,
    entrance_end: str | None = None,
    seed: int = 0,
) -> Cells:
    """A side on which every content has exactly its share of the cells, laid as bees lay it.

    entrance_end is "left" or "right" of the picture, anything else is neither. The same seed gives
    the same side; the two faces of a comb differ a little. What was not said stays not recorded.
    Shapes: result (frame.lattice.cells,), read-only. Units: eighths of the side.
    Errors: EighthsError for more than eight eighths or a negative number.
    Source: as the module.
    """
    lattice = frame.lattice
    counts = counts_for(eighths, lattice.cells)
    side = _Side(lattice, random.Random(f"{seed} {face}"), _lean(entrance_end))  # noqa: S311 (a guess, no secret)
    side.hang_gaps_and_foundation(counts)
    side.place_drones(counts)
    side.place_brood(counts)
    side.place_pollen(counts)
    side.place_the_rest(counts)
    return read_only(side.cells)


def _lean(entrance_end: str | None) -> float:
    return {"left": -1.0, "right": 1.0}.get(entrance_end or "", 0.0)


class _Side:
    """A side being filled: what is still free, and how far along and down every cell is."""

    def __init__(self, lattice: Lattice, chance: random.Random, lean: float) -> None:
        self.cells: Cells = np.full(lattice.cells, Content.NOT_RECORDED, np.uint8)
        self._free = np.arange(lattice.cells)
        self._lattice = lattice
        self._chance = chance
        self._lean = lean
        x, y = lattice.centres.T
        self._across = 2 * x / lattice.width_mm - 1
        self._down = y / lattice.height_mm
        self._from_brood: _Scores = np.zeros(lattice.cells)
        self._has_brood = False

    def _ripple(self, strength: float) -> _Scores:
        """Smooth unevenness, another one each time, of this root mean square."""
        waves = _waves(self._lattice)
        weights = np.array([self._chance.gauss(0, 1) for _ in range(len(waves))])
        return weights @ waves * strength

    def _take(self, content: Content, count: int, order: _Scores) -> npt.NDArray[np.intp]:
        """Give the content the free cells with the lowest scores."""
        count = min(count, len(self._free))
        if count <= 0:
            return self._free[:0]
        # Whole numbers with the cell in their last places: no two alike, so every machine agrees.
        keys = np.rint(order[self._free] * _STEPS).astype(np.int64) * (1 << 17) + self._free
        chosen = np.argpartition(keys, count - 1)
        taken = self._free[chosen[:count]]
        self.cells[taken] = content
        self._free = np.sort(self._free[chosen[count:]])
        return taken

    def hang_gaps_and_foundation(self, counts: Mapping[Content, int]) -> None:
        """Comb is built from the top and from the middle outwards, so what is missing is low and outside."""
        low = self._down + 0.35 * self._across**2 - 0.25 * self._lean * self._across
        self._take(Content.GAP, counts.get(Content.GAP, 0), -low + self._ripple(0.05))
        outside = np.abs(self._across - 0.2 * self._lean) + 0.45 * self._down
        self._take(Content.FOUNDATION, counts.get(Content.FOUNDATION, 0), -outside + self._ripple(0.05))

    def place_drones(self, counts: Mapping[Content, int]) -> None:
        """Along the lower edge, more in one of the corners, in patches."""
        corner = 0.22 * self._across * (1 if self._chance.random() < 0.5 else -1)
        low = self._down + 0.12 * self._across**2 + corner
        self._take(Content.DRONE, counts.get(Content.DRONE, 0), -low + self._ripple(0.07))

    def place_brood(self, counts: Mapping[Content, int]) -> None:
        """One patch of nested ovals: each age takes its cells from the outside of what is left of it."""
        whole = sum(counts.get(content, 0) for content in _BROOD_INWARD)
        share = whole / len(self.cells)
        self._has_brood = whole > 0
        self._from_brood = self._oval(share) * (1 + self._ripple(0.055))
        if not whole:
            return
        patch = self._take(Content.EGGS, whole, self._from_brood)
        inner = self._oval(share, 0.05) * (1 + self._ripple(0.05))
        for content in (Content.BROOD, Content.SEALED, Content.OPEN):
            count = counts.get(content, 0)
            order = np.argsort(-inner[patch], kind="stable")
            self.cells[patch[order[:count]]] = content
            patch = patch[order[count:]]
            inner = inner * (1 + self._ripple(0.035))

    def _oval(self, share: float, wander: float = 0.0) -> _Scores:
        """How far every cell is from the heart of the brood nest; 1 is about half a frame's height."""
        width, height = self._lattice.width_mm, self._lattice.height_mm
        stretch = (1 - share) * min(1.5, width / height) + share * 0.97 * width / height
        middle_x = (0.10 - 0.06 * share) * self._lean + wander * (2 * self._chance.random() - 1)
        middle_y = 0.60 - 0.07 * share + 0.5 * wander * (2 * self._chance.random() - 1)
        x = np.abs(self._across - middle_x) * width / height / stretch
        y = np.abs(self._down - middle_y) * 2
        # A little squarer than an ellipse once it nears the bars.
        power = 2.0 + 0.5 * share
        oval: _Scores = (x**power + y**power) ** (1 / power)
        return oval

    def place_pollen(self, counts: Mapping[Content, int]) -> None:
        """A band against the brood, thin below it."""
        if self._has_brood:
            near = self._from_brood + 0.9 * np.maximum(0.0, self._down - 0.62)
            self._take(Content.POLLEN, counts.get(Content.POLLEN, 0), near + self._ripple(0.06))

    def place_the_rest(self, counts: Mapping[Content, int]) -> None:
        """Stores from the top and the far corners, nectar under them, empty comb from below.

        Without brood the pollen lies under the nectar, an arch over where brood would be.
        """
        arch = self._down - 0.30 * self._across**2 + 0.10 * self._lean * self._across
        if self._has_brood:
            arch = arch - 0.12 * np.minimum(self._from_brood, 1.6)
        ripple = self._ripple(0.04)
        self._take(Content.STORES, counts.get(Content.STORES, 0), arch + ripple)
        self._take(Content.NECTAR, counts.get(Content.NECTAR, 0), arch + self._ripple(0.05))
        if not self._has_brood:
            self._take(Content.POLLEN, counts.get(Content.POLLEN, 0), arch + self._ripple(0.05))
        self._take(Content.EMPTY, counts.get(Content.EMPTY, 0), -arch + self._ripple(0.03))


@lru_cache(maxsize=8)
def _waves(lattice: Lattice) -> _Scores:
    """Waves over the comb in all directions, the long ones the strongest, together of mean square one.

    Shapes: (2 * waves, cells): a cosine and a sine of each.
    """
    x, y = lattice.centres.T
    rows = []
    for number in range(_WAVES):
        angle = number * math.pi * (3 - math.sqrt(5))
        length = _LONGEST_MM * (_SHORTEST_MM / _LONGEST_MM) ** (number / (_WAVES - 1))
        phase = 2 * math.pi / length * (math.cos(angle) * x + math.sin(angle) * y)
        strength = (length / _LONGEST_MM) ** 0.8
        rows += [strength * np.cos(phase), strength * np.sin(phase)]
    waves = np.array(rows)
    return read_only(waves / math.sqrt(float((waves**2).mean(axis=1).sum())))
