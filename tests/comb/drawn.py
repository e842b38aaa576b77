"""Sides for the tests of this room: ellipses of every content over one another, and some speckle."""

import numpy as np

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.lattice import Cells, Lattice
from beeworkbook.comb.regions import ellipse


def drawn_side(lattice: Lattice, seed: int, *, speckle: float = 0.03, patches: int = 8) -> Cells:
    """A side as painting leaves it: not recorded, patches over it, and single cells of anything."""
    dice = np.random.default_rng(seed)
    cells = np.full(lattice.cells, dice.integers(len(CONTENTS)), np.uint8)
    size = np.array((lattice.width_mm, lattice.height_mm))
    for _ in range(patches):
        x, y = dice.random(2) * size
        rx, ry = (0.05 + 0.4 * dice.random(2)) * size
        cells[ellipse(lattice, (x, y), rx, ry)] = dice.integers(len(CONTENTS))
    spots = dice.random(lattice.cells) < speckle
    cells[spots] = dice.integers(len(CONTENTS), size=int(spots.sum()))
    return cells


def brood_side(lattice: Lattice, *, speckle: float = 0.04, seed: int = 1) -> Cells:
    """A full side with ten contents and some speckle, as the measures ask for."""
    dice = np.random.default_rng(seed)
    width, height = lattice.width_mm, lattice.height_mm
    cells = np.full(lattice.cells, Content.STORES, np.uint8)
    middle = (width / 2, height * 0.62)
    for content, share in (
        (Content.NECTAR, 0.98),
        (Content.POLLEN, 0.84),
        (Content.SEALED, 0.74),
        (Content.OPEN, 0.5),
        (Content.EGGS, 0.34),
        (Content.EMPTY, 0.18),
    ):
        cells[ellipse(lattice, middle, width / 2 * share, height * 0.55 * share)] = content
    for content, x, y in (
        (Content.DRONE, 0.03, 0.97),
        (Content.GAP, 0.97, 0.98),
        (Content.FOUNDATION, 0.97, 0.03),
    ):
        cells[ellipse(lattice, (width * x, height * y), width * 0.12, height * 0.2)] = content
    spots = dice.random(lattice.cells) < speckle
    cells[spots] = dice.choice(
        (Content.EMPTY, Content.EGGS, Content.SEALED, Content.POLLEN), int(spots.sum())
    )
    return cells
