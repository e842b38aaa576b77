"""The small pictures of a box's sides, kept from one look to the next and patched by cells."""

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QRect
from PySide6.QtGui import QImage

from beeworkbook.bench.on_show import CombOnShow, SideOnShow
from beeworkbook.colony.records import FrameId
from beeworkbook.comb.contents import Face
from beeworkbook.comb.lattice import Cells
from beeworkbook.qt.comb_colours import Paint
from beeworkbook.qt.comb_painter import paint_of, thumbnail
from beeworkbook.qt.palette import Palette
from beeworkbook.qt.thumbnail import Thumbnail


class _Kept:
    """One picture and what it shows."""

    def __init__(self, picture: Thumbnail, paint: Paint, cells: Cells, frame_type: str) -> None:
        self.picture, self.paint, self.cells, self.frame_type = picture, paint, cells, frame_type
        self.blob = b""
        self.changed: QRect | None = None


class CombPictures:
    """Pictures by frame and face. A side on which nothing is recorded has none."""

    def __init__(self) -> None:
        """No picture yet."""
        self._kept: dict[tuple[FrameId, Face], _Kept] = {}
        self._size: tuple[int, int, float] = (0, 0, 0.0)

    def show(
        self, combs: Sequence[CombOnShow], width: int, height: int, ratio: float, palette: Palette
    ) -> None:
        """Bring every picture up to what these sides hold; width and height in the window's pixels."""
        size = (max(1, round(width * ratio)), max(1, round(height * ratio)), ratio)
        if size != self._size:
            self._kept.clear()
            self._size = size
        wanted = set()
        for comb in combs:
            for face, side in comb.sides.items():
                if comb.frame is not None and side.side is not None:
                    key = (comb.frame.id, face)
                    if self._show_side(key, side, palette):
                        wanted.add(key)
        for key in self._kept.keys() - wanted:
            del self._kept[key]

    def show_comb(self, comb: CombOnShow, palette: Palette) -> dict[Face, QRect]:
        """Bring the pictures of one comb up to what it holds.

        What changed of each side, in the picture's pixels; an empty rectangle is all of it.
        """
        changed = {}
        for face, side in comb.sides.items():
            key = (comb.frame.id, face) if comb.frame is not None else None
            if key is None:
                continue
            if side.side is None or not self._show_side(key, side, palette):
                if self._kept.pop(key, None) is not None:
                    changed[face] = QRect()
            elif self._kept[key].changed is not None:
                changed[face] = self._kept[key].changed or QRect()
        return changed

    def image(self, comb: CombOnShow, face: Face) -> QImage | None:
        """The picture of a side, None where it is bare."""
        kept = None if comb.frame is None else self._kept.get((comb.frame.id, face))
        return None if kept is None else kept.picture.image

    def _show_side(self, key: tuple[FrameId, Face], side: SideOnShow, palette: Palette) -> bool:
        """Show a side; whether it has a picture."""
        paint = paint_of(palette, side.look)
        kept = self._kept.get(key)
        fits = kept is not None and kept.paint == paint and kept.frame_type == side.frame_type.id
        blob = side.side.cells if side.side is not None else b""
        if kept is not None and fits and kept.blob == blob:
            kept.changed = None
            return True
        cells = side.cells
        if not cells.any():
            return False
        if kept is not None and fits:
            kept.changed = kept.picture.patch(np.flatnonzero(cells != kept.cells), cells)
        else:
            kept = self._made(side, paint)
            kept.changed = QRect()
            self._kept[key] = kept
        kept.cells, kept.blob = cells, blob
        return True

    def _made(self, side: SideOnShow, paint: Paint) -> _Kept:
        width, height, ratio = self._size
        picture = thumbnail(side.frame_type.lattice, width, height, paint, ratio)
        picture.show(side.cells)
        return _Kept(picture, paint, side.cells, side.frame_type.id)
