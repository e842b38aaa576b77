"""How wide the columns of a round are: narrow ones stay narrow, the note takes what is left.

Below the least widths the line scrolls, with the stand and the colony kept in sight. Plain numbers, no Qt.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from beeworkbook.colony.records import Question
from beeworkbook.colony.sentences import Field, Target

MARGIN: Final = 14
STAND: Final = 38
COLONY_LEAST: Final = 84
COLONY_FAIR: Final = 94
COLONY_MOST: Final = 190

_WIDTHS: Final = MappingProxyType(
    {
        Question.OPENED: (44, 48, 76),
        Question.EGGS: (40, 44, 78),
        Question.YOUNG: (44, 46, 78),
        Question.BROOD: (44, 50, 84),
        Question.POLLEN: (44, 46, 76),
        Question.SEAMS: (42, 44, 64),
        Question.STORES: (48, 54, 86),
        Question.CELLS: (58, 68, 130),
        Question.QUEEN: (58, 64, 116),
        Question.TEMPER: (48, 50, 84),
        Question.ROOM: (54, 60, 88),
        Question.DRAWN: (40, 44, 74),
        Question.SIGNS: (40, 44, 96),
        Field.FEED: (52, 58, 104),
        Field.LEFT: (36, 42, 70),
        Field.NOTE: (92, 140, 560),
        Field.NEXT: (54, 58, 86),
    }
)
"""Least, fair and most pixels of a column, the gap to the next one included."""


@dataclass(frozen=True)
class Column:
    """A column and where it lies, from the left edge of the whole line."""

    target: Target
    left: float
    width: float

    @property
    def right(self) -> float:
        """Where the next one begins."""
        return self.left + self.width


@dataclass(frozen=True)
class Columns:
    """All columns of a round. `frozen` is how far the stand and the colony reach; they never scroll."""

    columns: tuple[Column, ...]
    colony_width: float
    width: float

    @property
    def frozen(self) -> float:
        """The right end of the colony's name."""
        return MARGIN + STAND + self.colony_width

    def of(self, target: Target) -> Column | None:
        """The column of a field, None if it is left out."""
        return next((column for column in self.columns if column.target == target), None)

    def at(self, x: float) -> Target | None:
        """The field at a place across the line; None over the stand and the colony."""
        return next((column.target for column in self.columns if column.left <= x < column.right), None)


def lay_columns(targets: Sequence[Target], room: float) -> Columns:
    """The columns in a room so many pixels wide; wider than the room if they cannot be narrower."""
    spans = [(COLONY_LEAST, COLONY_FAIR, COLONY_MOST), *(_WIDTHS[target] for target in targets)]
    widths = _shared(spans, room - 2 * MARGIN - STAND)
    left = MARGIN + STAND + widths[0]
    made = []
    for target, width in zip(targets, widths[1:], strict=True):
        made.append(Column(target, left, width))
        left += width
    return Columns(tuple(made), widths[0], max(room, left + MARGIN))


def _shared(spans: Sequence[tuple[int, int, int]], room: float) -> list[float]:
    """Each span's part of the room: between least and fair while it is short, on towards most after that."""
    for low, high in ((0, 1), (1, 2)):
        short, long = sum(span[low] for span in spans), sum(span[high] for span in spans)
        if room <= long:
            share = max(0.0, (room - short) / (long - short)) if long > short else 0.0
            return [span[low] + (span[high] - span[low]) * share for span in spans]
    return [float(span[2]) for span in spans]
