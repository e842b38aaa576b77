"""The last visit shining through: the borders of its brood, or else of its stores, as dashed lines."""

from typing import Final

import numpy as np
from PySide6.QtCore import QPointF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath, QPen

from beeworkbook.bench.viewport import Viewport
from beeworkbook.comb.contents import ALL_BROOD, Content
from beeworkbook.comb.lattice import Cells, Lattice, Points
from beeworkbook.comb.legend import INK
from beeworkbook.comb.outline import ring_area_mm2, simplified_outlines

_NESTED: Final = (
    (Content.EGGS,),
    (Content.EGGS, Content.OPEN),
    ALL_BROOD,
)
"""What is drawn round: the eggs, the young brood, all brood. More would drown the comb that is painted."""
_FOOD: Final = ((Content.STORES,), (Content.STORES, Content.NECTAR), (Content.POLLEN,))
"""What is drawn round where there was no brood."""
_TOLERANCE_MM: Final = 4.0
_LEAST_CELLS: Final = 14
"""A few stray cells say nothing about last week."""
_CASING: Final = QColor(251, 253, 250, 170)


def shine_rings(lattice: Lattice, cells: Cells) -> list[Points]:
    """The rings to be drawn. Shapes: each (k, 2), closed. Units: millimetres on the comb."""
    least = _LEAST_CELLS * lattice.cell_area_mm2
    rings: list[Points] = []
    for contents in _NESTED if np.isin(cells, ALL_BROOD).any() else _FOOD:
        inside = np.isin(cells, contents)
        if inside.any() and not inside.all():
            found = simplified_outlines(lattice, inside.astype(np.uint8), _TOLERANCE_MM)
            rings += [ring for ring in found.get(Content(1), ()) if abs(ring_area_mm2(ring)) >= least]
    return rings


def shine_image(rings: list[Points], viewport: Viewport) -> QImage:
    """The rings on a clear picture of the comb's size: dashes on a pale casing, or they would drown."""
    image = QImage(QSize(*viewport.picture_size), QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(Qt.GlobalColor.transparent)
    image.setDevicePixelRatio(viewport.ratio)
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(-viewport.left, -viewport.top)
    paths = [_smoothed(ring, viewport) for ring in rings]
    painter.setPen(QPen(_CASING, 3.0))
    for path in paths:
        painter.drawPath(path)
    pen = QPen(QColor(INK), 1.5)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setDashPattern([4.0, 3.0])
    painter.setPen(pen)
    for path in paths:
        painter.drawPath(path)
    painter.end()
    return image


def _smoothed(ring: Points, viewport: Viewport) -> QPainterPath:
    """A curve through the middles of the ring's edges, its corners as handles."""
    corners = [QPointF(*viewport.to_px((float(x), float(y)))) for x, y in ring]
    middles = [(a + b) / 2 for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    path = QPainterPath(middles[-1])
    for corner, middle in zip(corners, middles, strict=True):
        path.quadTo(corner, middle)
    return path
