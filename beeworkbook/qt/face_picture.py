"""The one kept picture of a side on the bench: pixels looked up, cell by cell, colour by colour.

The whole side is filled once; after that only the rectangle round the changed cells is filled again.
What lies over the comb (marks, cursor, last visit) is not in this picture.
"""

from functools import lru_cache
from typing import Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QRect
from PySide6.QtGui import QImage

from beeworkbook.comb.lattice import CellIndices, Cells
from beeworkbook.qt.cell_map import CellMap
from beeworkbook.qt.comb_colours import OUTSIDE, ColourTable
from beeworkbook.qt.comb_inks import ink_fields

_LEVELS: Final = np.array(256, np.int32)


class FacePicture:
    """Pixels of one side in one size, zoom and look. Shapes: the map's height × width."""

    def __init__(self, cell_map: CellMap, table: ColourTable, px_per_px: float = 1.0) -> None:
        """A picture still to be filled; px_per_px pixels of the screen are one of the window's own."""
        self.map = cell_map
        self._inks = ink_fields(cell_map)
        self._colours = table.colours.ravel()
        self._wall, self._outline = table.lines(cell_map, px_per_px)
        self._pixels = np.zeros(cell_map.cell.shape, np.uint32)
        self._places = _places(cell_map.height, cell_map.width)
        self._size = np.array(cell_map.cell.size, np.int32)
        self._colour_rows = np.zeros(cell_map.lattice.cells + 1, np.int32)
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
        self._colour_rows[:] = self._codes
        self._colour_rows *= _LEVELS
        self._inks.make(np.flatnonzero(np.bincount(cells, minlength=1)))
        self._fill(0, 0, self.map.width, self.map.height)

    def patch(self, cells: CellIndices, held: Cells) -> QRect:
        """Fill only what these cells look like now; the rectangle that changed, in the picture's pixels.

        Shapes: cells (k,) ascending, held the whole side.
        """
        if not len(cells):
            return QRect()
        now = held[cells]
        self._codes[cells] = now
        self._colour_rows[cells] = now * _LEVELS
        self._inks.make(set(now.tolist()))
        box = self.map.cells_box(cells)
        if box is None:
            return QRect()
        left, top, right, bottom = box
        self._fill(left, top, right, bottom)
        return QRect(left, top, right - left, bottom - top)

    def _fill(self, left: int, top: int, right: int, bottom: int) -> None:
        part = np.s_[top:bottom, left:right]
        cell = self.map.cell[part]
        here = self._codes.take(cell)
        there = self._codes.take(self.map.across[part])
        place = here * self._size
        place += self._places[part]
        ink = self._inks.fields.take(place)
        line = np.where(here != there, self._outline[part], self._wall[part])
        np.maximum(ink, line, out=ink)
        colour = self._colour_rows.take(cell)
        colour += ink
        self._pixels[part] = self._colours.take(colour)


@lru_cache(maxsize=2)
def _places(height: int, width: int) -> npt.NDArray[np.int32]:
    """The number of every pixel, row by row."""
    return np.arange(height * width, dtype=np.int32).reshape(height, width)
