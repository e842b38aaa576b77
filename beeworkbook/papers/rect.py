"""A rectangle on paper, in millimetres from the sheet's top left corner, y down."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Rect:
    """Left, top, width, height. Units: millimetres on paper."""

    x: float
    y: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """The right edge."""
        return self.x + self.width

    @property
    def bottom(self) -> float:
        """The lower edge."""
        return self.y + self.height

    @property
    def centre(self) -> tuple[float, float]:
        """The middle."""
        return self.x + self.width / 2, self.y + self.height / 2

    @property
    def area_mm2(self) -> float:
        """Its area."""
        return self.width * self.height

    def inset(self, by: float) -> "Rect":
        """The same, smaller by so much on every side."""
        return Rect(self.x + by, self.y + by, self.width - 2 * by, self.height - 2 * by)

    def overlaps(self, other: "Rect") -> bool:
        """Whether the two share more than an edge."""
        return (
            self.x < other.right and other.x < self.right and self.y < other.bottom and other.y < self.bottom
        )

    def holds(self, other: "Rect") -> bool:
        """Whether the other lies inside, edges allowed."""
        return (
            self.x <= other.x
            and other.right <= self.right
            and self.y <= other.y
            and other.bottom <= self.bottom
        )


def fitted(width: float, height: float, box: Rect) -> Rect:
    """The largest rectangle of this proportion in the box, on its floor and in its middle.

    Errors: ValueError if the proportion is not positive.
    """
    if not (width > 0 and height > 0):
        raise ValueError("a proportion is of two positive lengths")
    scale = min(box.width / width, box.height / height)
    wide, high = width * scale, height * scale
    return Rect(box.x + (box.width - wide) / 2, box.bottom - high, wide, high)
