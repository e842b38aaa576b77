"""The one kept picture of a side on the bench: pixels looked up, cell by cell, colour by colour.

The whole side is filled once; after that only the rectangle round the changed cells is filled again.
What lies over the comb (marks, cursor, last visit) is not in this picture.
"""

from collections.abc import Iterable, Sequence
from typing import Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QRect
from PySide6.QtGui import QImage

from beeworkbook.comb.lattice import CellIndices, Cells
from beeworkbook.qt.cell_map import CellMap
from beeworkbook.qt.comb_colours import OUTSIDE, ColourTable
from beeworkbook.qt.comb_inks import ink_fields

_FULL: Final = 256


class FacePicture:
    """Pixels of one side in one size, zoom and look. Shapes: the map's height × width."""

    def __init__(self, cell_map: CellMap, table: ColourTable, px_per_px: float = 1.0) -> None:
        """A picture still to be filled; px_per_px pixels of the screen are one of the window's own."""
        self.map = cell_map
        self._inks = ink_fields(cell_map)
        self._colours = table.colours.ravel()
        self._wall, self._outline = table.lines(cell_map, px_per_px)
        self._pixels = np.zeros(cell_map.cell.shape, np.uint32)
        self._places = np.arange(cell_map.cell.size, dtype=np.intp).reshape(cell_map.cell.shape)
        self._codes = np.full(cell_map.lattice.cells + 1, OUTSIDE, np.uint8)
        height, width = cell_map.cell.shape
        self.image = QImage(self._pixels.data, width, height, 4 * width, QImage.Format.Format_RGB32)

    @property
    def pixels(self) -> npt.NDArray[np.uint32]:
        """0xffRRGGBB of every pixel. Shapes: (height, width)."""
        return self._pixels

    def show(self, cells: Cells) -> None:
        """Fill the whole picture.

        Errors: ValueError if these are not the cells of this lattice.
        """
        self._codes[:-1] = cells
        self._inks.make(np.flatnonzero(np.bincount(cells, minlength=1)))
        self._fill(0, 0, self.map.width, self.map.height)

    def patch(self, cells: CellIndices | Sequence[int], held: Cells) -> QRect:
        """Fill only what these cells look like now; the rectangle that changed, in the picture's pixels.

        Shapes: cells (k,), held the whole side.
        """
        if not len(cells):
            return QRect()
        now = held[cells]
        self._codes[cells] = now
        self._inks.make(_kinds(now))
        box = self.map.cells_box(cells)
        if box is None:
            return QRect()
        left, top, right, bottom = box
        self._fill(left, top, right, bottom)
        return QRect(left, top, right - left, bottom - top)

    def _fill(self, left: int, top: int, right: int, bottom: int) -> None:
        part = np.s_[top:bottom, left:right]
        here = self._codes.take(self.map.cell[part])
        there = self._codes.take(self.map.across[part])
        place = here.astype(np.intp)
        place *= self._places.size
        place += self._places[part]
        ink = self._inks.fields.take(place)
        np.maximum(ink, np.where(here != there, self._outline[part], self._wall[part]), out=ink)
        colour = here.astype(np.intp)
        colour *= _FULL
        colour += ink
        self._pixels[part] = self._colours.take(colour)


def _kinds(codes: Cells) -> Iterable[int]:
    first = int(codes[0])
    # A stroke paints one content, so the common case is looked at once.
    return (first,) if bool((codes == first).all()) else np.unique(codes).tolist()
