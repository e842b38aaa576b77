"""How much ink the pattern of each content lays on each pixel, worked out before any comb is drawn.

On the bench a pattern sits on the cells themselves and repeats every four cells and rows, so a small
tile is drawn once and looked up; slanting lines are plain arithmetic. In small pictures the marks lie
at a period of the screen. The geometry comes from comb/patterns.py, the strengths from comb/legend.py.
"""

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import Final

import numpy as np
import numpy.typing as npt
from PySide6.QtCore import QLineF, QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QImage, QPainter, QPen, QPolygonF

from beeworkbook.comb.contents import CONTENTS, Content
from beeworkbook.comb.lattice import Lattice
from beeworkbook.comb.legend import LEGEND
from beeworkbook.comb.patterns import Marks, MarkShape, Pattern, cell_marks, tile
from beeworkbook.qt.cell_map import CellMap, Coverage

SCREEN_PX_PER_MM: Final = 96 / 25.4
"""The window's own pixels in a millimetre of screen, as window systems count them: 96 an inch."""
_CYCLE: Final = 4
"""Cells and rows after which every pattern that sits on cells repeats."""
_FINEST: Final = 4
_LARGEST_TILE: Final = 640


class InkFields:
    """The ink of every content on every pixel of a map, made content by content when first needed.

    Shapes: fields (12 contents and beside the comb) × height × width, flat; 0 to 255.
    """

    def __init__(self, cell_map: CellMap) -> None:
        """Fields of one map, all still without ink."""
        self._map = cell_map
        rows = len(CONTENTS) + 1
        # Untouched pages cost no memory, so a content that is not on the comb costs none.
        self.fields: Coverage = np.zeros(rows * cell_map.cell.size, np.uint8)
        self._made: set[int] = {int(Content.NOT_RECORDED), len(CONTENTS)}

    def make(self, contents: Iterable[int]) -> None:
        """Be ready to draw these contents."""
        for code in contents:
            if code not in self._made:
                self._made.add(int(code))
                size = self._map.cell.size
                self.fields[code * size : (code + 1) * size] = _field(self._map, Content(int(code))).ravel()


@lru_cache(maxsize=2)
def ink_fields(cell_map: CellMap) -> InkFields:
    """The fields of a map, shared by all pictures that use it."""
    return InkFields(cell_map)


@lru_cache(maxsize=64)
def strip_ink(content: Content, width: int, height: int, px_per_px: float) -> Coverage:
    """The ink of a content on a small picture, its pattern at the period of the screen.

    px_per_px is how many pixels of the screen one of the window's own is.
    Shapes: (height, width), 0 to 255, read-only.
    """
    entry = LEGEND[content]
    if entry.pattern.shape is MarkShape.NONE:
        return _read_only(np.zeros((height, width), np.uint8))
    scale = SCREEN_PX_PER_MM * px_per_px
    repeated = tile(entry.pattern, entry.pattern.strip_mm)
    columns = max(1, round(repeated.width_mm * scale * _FINEST))
    rows = max(1, round(repeated.height_mm * columns / repeated.width_mm))
    drawn = _averaged(coverage(repeated.marks, columns, rows, columns / repeated.width_mm), _FINEST)
    column = ((np.arange(width) + 0.5) / scale / repeated.width_mm % 1.0 * columns).astype(np.intp)
    row = ((np.arange(height) + 0.5) / scale / repeated.height_mm % 1.0 * rows).astype(np.intp)
    laid: Coverage = drawn.take(row % rows, axis=0).take(column % columns, axis=1)
    return _read_only(_strengthened(laid, entry.screen_ink))


def coverage(marks: Marks, width: int, height: int, px_per_mm: float) -> Coverage:
    """How much of every pixel these marks cover, the origin at the picture's left top corner.

    Shapes: (height, width), 0 to 255.
    """
    image = QImage(width, height, QImage.Format.Format_Grayscale8)
    image.fill(0)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(px_per_mm, px_per_mm)
    draw_marks(painter, marks, QColor(Qt.GlobalColor.white))
    painter.end()
    lines = np.frombuffer(image.constBits(), np.uint8).reshape(height, image.bytesPerLine())
    return lines[:, :width].copy()


def draw_marks(painter: QPainter, marks: Marks, ink: QColor) -> None:
    """Draw the marks of a pattern with a painter whose unit is the millimetre."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(
        QPen(ink, marks.line_mm, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap, Qt.PenJoinStyle.MiterJoin)
    )
    if len(marks.lines):
        painter.drawLines([QLineF(*line) for line in marks.lines.tolist()])
    for x, y, radius in marks.rings.tolist():
        painter.drawEllipse(QPointF(x, y), radius, radius)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QBrush(ink))
    for x, y, radius in marks.discs.tolist():
        painter.drawEllipse(QRectF(x - radius, y - radius, 2 * radius, 2 * radius))
    for corners in marks.flecks.tolist():
        painter.drawPolygon(QPolygonF([QPointF(*corner) for corner in corners]))


def _field(cell_map: CellMap, content: Content) -> Coverage:
    entry = LEGEND[content]
    pattern = entry.pattern
    if pattern.shape is MarkShape.NONE:
        return np.zeros(cell_map.cell.shape, np.uint8)
    if _is_slanting(pattern):
        return _strengthened(_slanting(cell_map, pattern), entry.screen_ink)
    return _strengthened(_repeated(cell_map, content), entry.screen_ink)


def _is_slanting(pattern: Pattern) -> bool:
    return pattern.shape is MarkShape.LINE and pattern.angle_deg in {45.0, 135.0}


def _slanting(cell_map: CellMap, pattern: Pattern) -> Coverage:
    """Lines at a slant over the whole comb. Source: distance from the nearest of a family of lines."""
    sight = cell_map.sight
    period = pattern.spacing * cell_map.lattice.pitch_x_mm
    angle = math.radians(pattern.angle_deg or 0.0)
    x = ((np.arange(cell_map.width) + 0.5 - sight.left_px) / sight.scale * math.sin(angle)).astype(np.float32)
    y = ((np.arange(cell_map.height) + 0.5 - sight.top_px) / sight.scale * math.cos(angle)).astype(np.float32)
    turn = (x[None, :] + y[:, None]) / np.float32(period)
    turn -= np.rint(turn)
    distance_px = np.abs(turn, out=turn) * np.float32(period * sight.scale)
    line_px = pattern.ink_share * period * sight.scale
    # A line thinner than a pixel covers no pixel whole, however near it lies.
    covered = np.clip(np.float32(line_px / 2 + 0.5) - distance_px, 0.0, min(1.0, line_px))
    inked: Coverage = (covered * np.float32(255.0)).astype(np.uint8)
    return inked


def _repeated(cell_map: CellMap, content: Content) -> Coverage:
    lattice, sight = cell_map.lattice, cell_map.sight
    wide, high = _CYCLE * lattice.pitch_x_mm, _CYCLE * lattice.pitch_y_mm
    fine = max(1, min(_FINEST, int(_LARGEST_TILE / (wide * sight.scale))))
    drawn = _tile(content, lattice.pitch_x_mm, lattice.pitch_y_mm, round(wide * sight.scale * fine), fine)
    rows, columns = drawn.shape
    x = (np.arange(cell_map.width) + 0.5 - sight.left_px) / sight.scale - lattice.left_mm
    y = (np.arange(cell_map.height) + 0.5 - sight.top_px) / sight.scale - lattice.top_mm
    column = np.floor(x / wide % 1.0 * columns).astype(np.intp) % columns
    row = np.floor(y / high % 1.0 * rows).astype(np.intp) % rows
    found: Coverage = drawn.take(row, axis=0).take(column, axis=1)
    return found


@lru_cache(maxsize=24)
def _tile(content: Content, pitch_x_mm: float, pitch_y_mm: float, columns: int, fine: int) -> Coverage:
    """The pattern from the centre of a cell on for four cells and rows, each place averaged over a pixel.

    Shapes: (rows, columns), `fine` places a pixel.
    """
    px_per_mm = columns / (_CYCLE * pitch_x_mm)
    rows = max(1, round(_CYCLE * pitch_y_mm * px_per_mm))
    plain = Lattice(
        width_mm=1.0, height_mm=1.0, pitch_x_mm=pitch_x_mm, pitch_y_mm=pitch_y_mm,
        first_row=3 * _CYCLE, second_row=3 * _CYCLE, rows=3 * _CYCLE,
        # The second of three cycles lies over the origin, the others reach into it from all sides.
        left_mm=-_CYCLE * pitch_x_mm, top_mm=-_CYCLE * pitch_y_mm,
    )  # fmt: skip
    drawn = coverage(cell_marks(LEGEND[content].pattern, plain), columns, rows, px_per_mm)
    return _averaged(drawn, fine)


def _averaged(drawn: Coverage, fine: int) -> Coverage:
    """A mean over fine × fine places round each, carried on over the edges."""
    total: npt.NDArray[np.float32] = drawn.astype(np.float32)
    for axis in (0, 1):
        length = total.shape[axis]
        wide = total.take(np.arange(fine // 2 - fine + 1, length + fine // 2) % length, axis)
        moved = [wide.take(np.arange(step, step + length), axis) for step in range(fine)]
        total = np.add.reduce(moved)
    averaged: Coverage = np.rint(total / fine**2).astype(np.uint8)
    return averaged


def _strengthened(drawn: Coverage, strength: float) -> Coverage:
    scaled = np.rint(np.arange(256) * strength).astype(np.uint8)
    inked: Coverage = scaled.take(drawn)
    return inked


def _read_only(array: npt.NDArray[np.uint8]) -> Coverage:
    array.flags.writeable = False
    return array
