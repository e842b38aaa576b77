"""A text of a round that was refused and never mended: it is in no book, only in its field."""

from dataclasses import dataclass
from datetime import date

from beeworkbook.colony.records import ApiaryId
from beeworkbook.rounds.walk import Spot


@dataclass(frozen=True)
class Untaken:
    """What was typed into which field of which round, and why it was not taken."""

    apiary_id: ApiaryId
    day: date
    spot: Spot
    text: str
    why: str
