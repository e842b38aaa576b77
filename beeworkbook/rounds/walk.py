"""Where the hand goes next in a round: along the line, down to the next colony, and back. No window."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from beeworkbook.colony.records import ColonyId
from beeworkbook.colony.sentences import Target
from beeworkbook.rounds.field import TARGETS, asked
from beeworkbook.rounds.row import Row


class Step(StrEnum):
    """A way out of a field."""

    ON = "on"
    BACK = "back"
    NEXT_COLONY = "next_colony"
    UP = "up"
    DOWN = "down"


@dataclass(frozen=True)
class Spot:
    """One field of one line."""

    colony_id: ColonyId
    target: Target


def first_spot(row: Row, columns: Sequence[Target]) -> Spot | None:
    """The first field of a line that is asked."""
    fields = asked(row, columns)
    return Spot(row.colony.id, fields[0]) if fields else None


def nearest_spot(row: Row, columns: Sequence[Target], target: Target) -> Spot | None:
    """This field of a line, or the one before it that is asked, or the first."""
    fields = asked(row, columns)
    if not fields:
        return None
    at = TARGETS.index(target)
    before = [field for field in fields if TARGETS.index(field) <= at]
    return Spot(row.colony.id, before[-1] if before else fields[0])


def step_from(rows: Sequence[Row], columns: Sequence[Target], spot: Spot, step: Step) -> Spot | None:
    """The field this step leads to; None past the first or the last of the round."""
    at = next((i for i, row in enumerate(rows) if row.colony.id == spot.colony_id), None)
    if at is None:
        return None
    if step in {Step.ON, Step.BACK}:
        return _along(rows, columns, at, spot, step)
    target_row = at - 1 if step is Step.UP else at + 1
    if not 0 <= target_row < len(rows):
        return None
    row = rows[target_row]
    return first_spot(row, columns) if step is Step.NEXT_COLONY else nearest_spot(row, columns, spot.target)


def _along(rows: Sequence[Row], columns: Sequence[Target], at: int, spot: Spot, step: Step) -> Spot | None:
    order = TARGETS.index(spot.target)
    fields = asked(rows[at], columns)
    if step is Step.ON:
        later = [field for field in fields if TARGETS.index(field) > order]
        if later:
            return Spot(spot.colony_id, later[0])
        return first_spot(rows[at + 1], columns) if at + 1 < len(rows) else None
    earlier = [field for field in fields if TARGETS.index(field) < order]
    if earlier:
        return Spot(spot.colony_id, earlier[-1])
    if at == 0:
        return None
    before = asked(rows[at - 1], columns)
    return Spot(rows[at - 1].colony.id, before[-1]) if before else None
