"""Small antialiased pictures of sides, as the box shows them.

Each pixel is looked at in its middle and at its four corners, which it shares with its neighbours.
A pixel that is all one content shows that content and its pattern; any other is a blend of five
colours and a dark outline, looked up in one table of all blends. So a picture, or the small part of
it that a stroke has changed, is a handful of look-ups.
"""

import math
from functools import lru_cache
from typing import Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QRect
from PySide6.QtGui import QImage

from beeworkbook.comb.contents import CONTENTS
from beeworkbook.comb.lattice import CellIndices, Cells, Lattice
from beeworkbook.qt.cell_map import Ints, nearest_cells
from beeworkbook.qt.comb_colours import Paint, colour_table
from beeworkbook.qt.comb_inks import strip_ink

_KINDS: Final = len(CONTENTS)
_TO_CORNERS: Final = np.array(_KINDS, np.int32)
_TO_PAIRS: Final = np.array(_KINDS**2, np.int32)
_TO_MIDDLE: Final = np.array(_KINDS**4, np.int32)
_ONE_CONTENT: Final = np.uint32(0)
"""Stands in the table of blends where all five are alike: the pixel shows the content's own pattern."""
_OUTLINE_INK: Final = (0.0, 0.34, 0.58, 0.46, 0.34)
"""Ink of an outline by how many corners differ from the middle: two is a border right through."""
_WHOLE: Final = np.uint64(1024)
"""A share of one, in whole numbers."""
_APART: Final = 21
"""Bits a colour takes: 255 × eighths × 1024 and the half for rounding need no more."""
_BYTE: Final = np.uint64(0xFF)
_EIGHTHS_AND_WHOLE: Final = 13
_HALVES: Final = np.uint64((1 << 12) * (1 + (1 << _APART) + (1 << 2 * _APART)))
"""A half in each colour, added so that cutting off rounds."""


class Sights:
    """Which cell lies in the middle and at the corners of each pixel, for one lattice and size.

    Shapes: middle and place (height, width + 1), the last column being no pixel; corner (height + 1,
    width + 1). place counts the pixels.
    """

    def __init__(self, lattice: Lattice, width: int, height: int) -> None:
        """The sights of a picture of a whole side, stretched to width × height pixels."""
        self.lattice, self.width, self.height = lattice, width, height
        across, down = lattice.width_mm / width, lattice.height_mm / height
        self.middle: Ints = nearest_cells(
            lattice, (np.arange(width + 1) + 0.5) * across, (np.arange(height) + 0.5) * down
        )
        self.corner: Ints = nearest_cells(
            lattice, np.arange(width + 1) * across, np.arange(height + 1) * down
        )
        self.place = (np.arange(height)[:, None] * width + np.arange(width + 1)).astype(np.int32)
        self.place[:, -1] = 0
        x, y = lattice.centres[:, 0] / across, lattice.centres[:, 1] / down
        reach_x, reach_y = lattice.pitch_x_mm / 2 / across + 1, lattice.pitch_y_mm * 2 / 3 / down + 1
        self._left = np.clip(x - reach_x, 0, width).astype(np.intp)
        self._top = np.clip(y - reach_y, 0, height).astype(np.intp)
        self._wide, self._high = math.ceil(2 * reach_x) + 1, math.ceil(2 * reach_y) + 1

    def box(self, cells: CellIndices) -> tuple[int, int, int, int]:
        """The pixels (left, top, right, bottom) that may show these cells; right and bottom one past the end.

        Shapes: cells (k,), ascending.
        """
        # For the few cells of a stroke plain numbers are quicker than arrays.
        lefts = self._left.take(cells).tolist()
        top, low = int(self._top[cells[0]]), int(self._top[cells[-1]])
        return min(lefts), top, min(self.width, max(lefts) + self._wide), min(self.height, low + self._high)


class Thumbnail:
    """The small picture of one side, kept as an image and patched by cells."""

    def __init__(self, sights: Sights, paint: Paint, px_per_px: float = 1.0) -> None:
        """A picture still to be filled; px_per_px pixels of the screen are one of the window's own."""
        self._sights = sights
        self._blends = _blends(paint)
        self._plain = _plain(paint, sights.width, sights.height, px_per_px)
        self._size = np.array(sights.width * sights.height, np.int32)
        self._pixels = np.zeros((sights.height, sights.width), np.uint32)
        self.image = QImage(
            self._pixels.data, sights.width, sights.height, 4 * sights.width, QImage.Format.Format_RGB32
        )
        self.image.setDevicePixelRatio(px_per_px)

    @property
    def pixels(self) -> npt.NDArray[np.uint32]:
        """0xffRRGGBB of every pixel. Shapes: (height, width)."""
        return self._pixels

    def show(self, cells: Cells) -> None:
        """Fill the whole picture.

        Errors: ValueError if these are not the cells of this lattice.
        """
        if len(cells) != self._sights.lattice.cells:
            raise ValueError("the cells are not of this lattice")
        self._fill(cells, 0, 0, self._sights.width, self._sights.height)

    def patch(self, cells: CellIndices, held: Cells) -> QRect:
        """Fill only what these cells look like now; the rectangle that changed, in the picture's pixels.

        Shapes: cells (k,), ascending; held the whole side.
        """
        if not len(cells):
            return QRect()
        left, top, right, bottom = self._sights.box(cells)
        self._fill(held, left, top, right, bottom)
        return QRect(left, top, right - left, bottom - top)

    def _fill(self, cells: Cells, left: int, top: int, right: int, bottom: int) -> None:
        # Rows are one pixel too long, so that corners and middles line up in one flat run each.
        row = right + 1 - left
        corner = cells.take(self._sights.corner[top : bottom + 1, left : right + 1]).ravel()
        middle = cells.take(self._sights.middle[top:bottom, left : right + 1]).ravel()
        pair = corner * _TO_CORNERS
        pair[:-1] += corner[1:]
        blend = pair[:-row] * _TO_PAIRS
        blend += pair[row:]
        blend += middle * _TO_MIDDLE
        pixels = self._blends.take(blend)
        plain = middle * self._size
        plain += self._sights.place[top:bottom, left : right + 1].ravel()
        np.copyto(pixels, self._plain.take(plain), where=pixels == _ONE_CONTENT)
        self._pixels[top:bottom, left:right] = pixels.reshape(-1, row)[:, :-1]


@lru_cache(maxsize=8)
def sights(lattice: Lattice, width: int, height: int) -> Sights:
    """The sights of a lattice in a size, shared by all its sides.

    Errors: ValueError if the picture has no pixel.
    """
    if width < 1 or height < 1:
        raise ValueError("a picture has at least one pixel")
    return Sights(lattice, width, height)


@lru_cache(maxsize=4)
def _plain(paint: Paint, width: int, height: int, px_per_px: float) -> npt.NDArray[np.uint32]:
    """Pictures of sides that hold one content all over, by content. Shapes: (12, height × width), flat."""
    colours = colour_table(paint).colours
    inks = [strip_ink(content, width, height, px_per_px) for content in CONTENTS]
    return np.concatenate(
        [colours[content].take(ink.ravel()) for content, ink in zip(CONTENTS, inks, strict=True)]
    )


@lru_cache(maxsize=3)
def _blends(paint: Paint) -> npt.NDArray[np.uint32]:
    """The colour of every five contents, middle first, then the corners row by row. Shapes: (12⁵,).

    The middle counts for half of the pixel, each corner for an eighth.
    """
    table = colour_table(paint).colours
    fills, inks = _spread(table[:_KINDS, 0]), _spread(table[:_KINDS, -1])
    kinds = np.arange(_KINDS)
    # Two corners at a time: a table of pairs for each middle is small, and their sum is the blend.
    differ = (kinds[:, None] != kinds[None, :]).astype(np.intp)
    pair_differ = (differ[:, :, None] + differ[:, None, :]).reshape(_KINDS, -1)
    pair_fill = (fills[:, None] + fills[None, :]).ravel()
    corners = pair_fill[:, None] + pair_fill[None, :]
    ink = np.rint(np.array(_OUTLINE_INK) * _WHOLE).astype(np.uint64)
    made = np.empty((_KINDS, *corners.shape), np.uint32)
    # Every step writes into what is there already: fresh memory would cost more than the reckoning.
    outlined, rgb, part = np.empty(corners.shape, np.intp), np.empty_like(corners), np.empty_like(corners)
    for kind in kinds:
        np.add(pair_differ[kind][:, None], pair_differ[kind][None, :], out=outlined)
        np.add(corners, 4 * fills[kind], out=rgb)
        rgb *= np.take(_WHOLE - ink, outlined, out=part, mode="clip")
        rgb += np.take(8 * inks[kind] * ink + _HALVES, outlined, out=part, mode="clip")
        _gather(rgb, part, made[kind])
        made[kind, kind * (_KINDS + 1), kind * (_KINDS + 1)] = _ONE_CONTENT
    return made.ravel()


def _spread(colours: npt.NDArray[np.uint32]) -> npt.NDArray[np.uint64]:
    """Red, green and blue far apart in one number each, so that one sum or product does all three."""
    wide = colours.astype(np.uint64)
    red, green, blue = wide >> np.uint64(16) & _BYTE, wide >> np.uint64(8) & _BYTE, wide & _BYTE
    spread: npt.NDArray[np.uint64] = red << np.uint64(2 * _APART) | green << np.uint64(_APART) | blue
    return spread


def _gather(rgb: npt.NDArray[np.uint64], part: npt.NDArray[np.uint64], made: npt.NDArray[np.uint32]) -> None:
    """0xffRRGGBB of eighths of shares of spread colours, into `made`; `part` is room to reckon in."""
    made[...] = 0xFF000000
    for place in (2, 1, 0):
        np.right_shift(rgb, np.uint64(place * (_APART - 8) + _EIGHTHS_AND_WHOLE), out=part)
        part &= _BYTE << np.uint64(8 * place)
        np.bitwise_or(made, part, out=made, casting="unsafe")
