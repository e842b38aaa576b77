"""Where the comb lies on its canvas, and how near it is looked at. Plain numbers, no widget.

The comb has a rectangle of the canvas in the window's own pixels; its picture fills that rectangle
at the pixels of the screen, whole or a part of it when looked at from near.
"""

import math
from dataclasses import dataclass, replace
from typing import Final

from beeworkbook.comb.lattice import Lattice, Point, Points
from beeworkbook.qt.cell_map import Sight

SIDE_PX: Final = 5
TOP_PX: Final = 6
BOTTOM_PX: Final = 5
"""The wood of the frame round the comb, in the window's own pixels."""
NEAREST: Final = 12.0
_LEAST_PX: Final = 8


@dataclass(frozen=True)
class Viewport:
    """Left, top, width and height of the comb in the window's pixels; zoom 1 shows all of it.

    ratio: pixels of the screen to one of the window's. centre is in the middle of the picture when
    zoomed. Units: pixels; centre in millimetres on the comb.
    """

    lattice: Lattice
    left: int
    top: int
    width: int
    height: int
    ratio: float = 1.0
    zoom: float = 1.0
    centre: Point = (0.0, 0.0)

    @classmethod
    def fitted(cls, lattice: Lattice, width: int, height: int, ratio: float) -> "Viewport":
        """The comb as large as a canvas of width × height pixels lets it be, in true proportion."""
        room_x, room_y = width - 2 * SIDE_PX, height - TOP_PX - BOTTOM_PX
        scale = max(0.01, min(room_x / lattice.width_mm, room_y / lattice.height_mm))
        wide = max(_LEAST_PX, round(lattice.width_mm * scale))
        high = max(_LEAST_PX, round(lattice.height_mm * scale))
        middle = (lattice.width_mm / 2, lattice.height_mm / 2)
        return cls(lattice, max(SIDE_PX, (width - wide) // 2), TOP_PX, wide, high, ratio, 1.0, middle)

    @property
    def picture_size(self) -> tuple[int, int]:
        """Width and height of the picture in pixels of the screen."""
        return math.ceil(self.width * self.ratio), math.ceil(self.height * self.ratio)

    @property
    def scale(self) -> float:
        """The window's pixels to a millimetre."""
        return self.width / self.lattice.width_mm * self.zoom

    @property
    def sight(self) -> Sight:
        """How millimetres become pixels of the picture."""
        left, top = self._origin
        scale = self.scale * self.ratio
        return Sight(scale, -left * scale, -top * scale)

    def to_mm(self, x: float, y: float) -> Point:
        """The point on the comb under a point of the canvas."""
        left, top = self._origin
        return left + (x - self.left) / self.scale, top + (y - self.top) / self.scale

    def to_px(self, at: Point) -> Point:
        """The point of the canvas over a point on the comb."""
        left, top = self._origin
        return self.left + (at[0] - left) * self.scale, self.top + (at[1] - top) * self.scale

    def over(self, left: int, top: int, right: int, bottom: int) -> tuple[int, int, int, int]:
        """The rectangle of the canvas (left, top, width, height) that covers these pixels of the picture.

        right and bottom are one past the end; where the two grids do not meet, it is a pixel wider.
        """
        x0, y0 = math.floor(left / self.ratio), math.floor(top / self.ratio)
        x1, y1 = math.ceil(right / self.ratio), math.ceil(bottom / self.ratio)
        return self.left + x0, self.top + y0, x1 - x0, y1 - y0

    def around(self, points: Points) -> tuple[int, int, int, int]:
        """The rectangle of the canvas (left, top, width, height) round a line over the comb, pen and all."""
        (left, top), (right, bottom) = (
            self.to_px((float(x), float(y))) for x, y in (points.min(axis=0), points.max(axis=0))
        )
        x, y = math.floor(left) - 3, math.floor(top) - 3
        return x, y, math.ceil(right) + 3 - x, math.ceil(bottom) + 3 - y

    def zoomed(self, factor: float, at: Point) -> "Viewport":
        """Nearer or farther by a factor, the point of the canvas `at` staying over its cell."""
        zoom = max(1.0, min(NEAREST, self.zoom * factor))
        if zoom <= 1:
            return self.whole()
        held = self.to_mm(*at)
        nearer = replace(self, zoom=zoom).settled()
        moved = nearer.to_mm(*at)
        x, y = nearer.centre
        return replace(nearer, centre=(x + held[0] - moved[0], y + held[1] - moved[1])).settled()

    def panned(self, x: float, y: float) -> "Viewport":
        """The comb dragged by so many of the window's pixels."""
        centre = self._centre
        return replace(self, centre=(centre[0] - x / self.scale, centre[1] - y / self.scale)).settled()

    def showing(self, at: Point) -> "Viewport":
        """Moved just so far that this point of the comb is well inside the picture."""
        if self.zoom <= 1:
            return self
        half_x, half_y = self._half
        reach_x, reach_y = half_x * 0.85, half_y * 0.85
        x = min(max(self._centre[0], at[0] - reach_x), at[0] + reach_x)
        y = min(max(self._centre[1], at[1] - reach_y), at[1] + reach_y)
        return replace(self, centre=(x, y)).settled()

    def whole(self) -> "Viewport":
        """The whole comb again."""
        return replace(self, zoom=1.0, centre=(self.lattice.width_mm / 2, self.lattice.height_mm / 2))

    def settled(self) -> "Viewport":
        """The same with a centre that keeps the picture full of comb."""
        return replace(self, centre=self._centre)

    @property
    def _half(self) -> Point:
        return self.width / self.scale / 2, self.height / self.scale / 2

    @property
    def _centre(self) -> Point:
        half_x, half_y = self._half
        return (
            _between(self.centre[0], half_x, self.lattice.width_mm - half_x),
            _between(self.centre[1], half_y, self.lattice.height_mm - half_y),
        )

    @property
    def _origin(self) -> Point:
        """The point on the comb at the picture's left top corner."""
        (x, y), (half_x, half_y) = self._centre, self._half
        return x - half_x, y - half_y


def highest(lattice: Lattice, width: int) -> int:
    """The height a canvas of this width can use: its comb in true proportion and the wood round it."""
    return math.ceil((width - 2 * SIDE_PX) * lattice.height_mm / lattice.width_mm) + TOP_PX + BOTTOM_PX


def _between(value: float, least: float, most: float) -> float:
    return (least + most) / 2 if least > most else max(least, min(most, value))
