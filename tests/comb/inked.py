"""Marks drawn as pixels and looked at again, so that a pattern is measured and not believed."""

import math
from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt
from scipy import ndimage

from beeworkbook.comb.lattice import Lattice, Points
from beeworkbook.comb.patterns import Marks, MarkShape

Mask = npt.NDArray[np.bool_]


def draw(marks: Marks, width_mm: float, height_mm: float, pixels_per_mm: float) -> Mask:
    """The pixels whose centre is inked, clipped to a rectangle from the origin."""
    ink: Mask = np.zeros((math.ceil(height_mm * pixels_per_mm), math.ceil(width_mm * pixels_per_mm)), bool)
    for start_x, start_y, stop_x, stop_y in marks.lines:
        start, stop = np.array((start_x, start_y)), np.array((stop_x, stop_y))
        along = (stop - start) / np.hypot(*(stop - start))
        half = np.array((-along[1], along[0])) * marks.line_mm / 2
        fill(ink, np.array([start + half, stop + half, stop - half, start - half]) * pixels_per_mm)
    for corners in marks.flecks:
        fill(ink, corners * pixels_per_mm)
    for x, y, radius in marks.discs * pixels_per_mm:
        _circle(ink, x, y, 0, radius)
    for x, y, radius in marks.rings * pixels_per_mm:
        half_mm = marks.line_mm / 2 * pixels_per_mm
        _circle(ink, x, y, radius - half_mm, radius + half_mm)
    return ink


def fill(image: Mask, corners: Points) -> None:
    """Ink a convex polygon, corners in pixels and in order."""
    x, y, window = _window(image, corners.min(axis=0), corners.max(axis=0))
    walls = np.roll(corners, -1, axis=0) - corners
    sides = [
        wall[0] * (y - corner[1]) - wall[1] * (x - corner[0])
        for corner, wall in zip(corners, walls, strict=True)
    ]
    image[window] |= np.all(np.greater_equal(sides, 0), axis=0) | np.all(np.less_equal(sides, 0), axis=0)


def _circle(image: Mask, x_centre: float, y_centre: float, inner: float, outer: float) -> None:
    centre = np.array((x_centre, y_centre))
    x, y, window = _window(image, centre - outer, centre + outer)
    far = (x - x_centre) ** 2 + (y - y_centre) ** 2
    image[window] |= (far <= outer**2) & (far >= inner**2)


def _window(image: Mask, low: Points, high: Points) -> tuple[Points, Points, tuple[slice, slice]]:
    """The centres of the pixels between two corners, and where they are in the image."""
    left, top = (max(0, math.floor(value)) for value in low)
    right, bottom = (min(size, math.ceil(value)) for value, size in zip(high, image.shape[::-1], strict=True))
    columns, rows = np.arange(left, max(left, right)), np.arange(top, max(top, bottom))
    window = slice(top, max(top, bottom)), slice(left, max(left, right))
    return columns[None, :] + 0.5, rows[:, None] + 0.5, window


def patch_mask(lattice: Lattice, cells: list[int], scale: float, pixels_per_mm: float) -> tuple[Mask, Points]:
    """The pixels of these cells on a comb drawn at this scale, and the place of the first pixel in mm."""
    corners = (lattice.centres[cells][:, None, :] + lattice.hexagon_mm[None]) * scale
    first = corners.reshape(-1, 2).min(axis=0) - 0.1
    width, height = corners.reshape(-1, 2).max(axis=0) - first + 0.1
    mask: Mask = np.zeros((math.ceil(height * pixels_per_mm), math.ceil(width * pixels_per_mm)), bool)
    for corner in corners:
        fill(mask, (corner - first) * pixels_per_mm)
    return mask, first


@dataclass(frozen=True)
class Seen:
    """What the pixels of a patch show: what marks, in what direction if in one, and how much ink."""

    shape: MarkShape
    angle_deg: float | None
    ink_share: float

    def differs(self, other: "Seen") -> bool:
        """In kind, or by 45 degrees, or by 20 points of ink, less a degree for the pixels."""
        if self.shape is not other.shape or abs(self.ink_share - other.ink_share) >= 0.20:
            return True
        if self.angle_deg is None or other.angle_deg is None:
            return False
        apart = abs(self.angle_deg - other.angle_deg) % 180
        return min(apart, 180 - apart) >= 44


def look_at(ink: Mask, mask: Mask, pixels_per_mm: float) -> Seen:
    """What can be seen of a pattern inside a patch; marks cut by its edge count for little.

    Lines run from edge to edge; of whole marks a ring has a hole, a cross leaves its hull empty, a
    tick or fleck is long, a dot is none of these. Ticks agree in direction, flecks do not.
    """
    seen = ink & mask
    share = float(seen.sum() / mask.sum())
    if share < 0.001:
        return Seen(MarkShape.NONE, None, share)
    labels, count = ndimage.label(seen, structure=np.ones((3, 3)))
    inside = ndimage.binary_erosion(mask, iterations=2)
    cut = set(np.unique(labels[mask & ~inside])) - {0}
    marks = {number: labels == number for number in range(1, count + 1)}
    if any(_extent(marks[number]) > 0.4 * _extent(mask) for number in cut):
        angle, agreement = _direction(ink, ndimage.binary_erosion(mask, iterations=4), pixels_per_mm)
        return Seen(MarkShape.LINE if agreement > 0.6 else MarkShape.MESH, angle, share)
    whole = [mark for number, mark in marks.items() if number not in cut]
    if not whole:
        return Seen(MarkShape.NONE, None, share)
    return _whole_marks(whole, [mark for mark in marks.values() if mark.sum() > 9], share)


def _whole_marks(whole: list[Mask], marks: list[Mask], share: float) -> Seen:
    if any(ndimage.binary_fill_holes(mark).sum() > 1.3 * mark.sum() for mark in whole):
        return Seen(MarkShape.RING, None, share)
    if np.mean([mark.sum() / _hull_area(mark) for mark in whole]) < 0.75:
        return Seen(MarkShape.CROSS, None, share)
    if np.mean([_axis(mark)[0] for mark in whole]) < 1.6:
        return Seen(MarkShape.DOT, None, share)
    # A mark cut by the edge is asked only if there is but one whole one, and counts by what is left of it.
    marks = whole if len(whole) > 1 else marks
    weights = np.array([mark.sum() for mark in marks], float) ** 2
    axes = np.exp(2j * np.radians([_axis(mark)[1] for mark in marks]))
    mean = np.sum(weights * axes) / weights.sum()
    if abs(mean) < 0.94:
        return Seen(MarkShape.FLECK, None, share)
    return Seen(MarkShape.LINE, math.degrees(float(np.angle(mean))) / 2 % 180, share)


def _extent(mask: Mask) -> float:
    rows, columns = np.nonzero(mask)
    return float(np.hypot(np.ptp(rows), np.ptp(columns)))


def _hull_area(mark: Mask) -> float:
    points = np.column_stack(np.nonzero(mark)).astype(np.int32)
    return float(cv2.contourArea(cv2.convexHull(points))) + 1.0


def _axis(mark: Mask) -> tuple[float, float]:
    """How much longer than wide a mark is, and the direction of its length, anticlockwise from level."""
    rows, columns = np.nonzero(mark)
    spread, axes = np.linalg.eigh(np.cov(np.stack((columns, -rows)).astype(float)))
    angle = math.degrees(math.atan2(axes[1, 1], axes[0, 1])) % 180
    return float(np.sqrt(spread[1] / max(spread[0], 1e-9))), angle


def _direction(ink: Mask, mask: Mask, pixels_per_mm: float) -> tuple[float, float]:
    """The direction of the edges, anticlockwise from level, and how far they agree, 0 to 1."""
    smooth = ndimage.gaussian_filter(ink.astype(float), 0.04 * pixels_per_mm)
    down, right = np.gradient(smooth)
    along, across = ((right**2 - down**2)[mask].sum(), (2 * right * down)[mask].sum())
    strength = (right**2 + down**2)[mask].sum()
    # The edge runs across its gradient; y points down, so the angle changes sign.
    angle = 90 - math.degrees(math.atan2(across, along)) / 2
    return angle % 180, float(np.hypot(along, across) / max(strength, 1e-12))
