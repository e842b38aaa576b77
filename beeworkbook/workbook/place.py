"""Where an edit was made, and what every edit is.

An edit only reads and writes records through the transaction. The transaction's journal is the undo
step, so no edit writes an inverse of its own.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Protocol

from beeworkbook.colony.records import ColonyId, FrameId, PartId, Question, SideId, VisitId
from beeworkbook.comb.contents import Face
from beeworkbook.comb.lattice import CellIndices
from beeworkbook.store.transaction import Transaction


@dataclass(frozen=True, slots=True)
class Place:
    """Where in the book something was done, as far as that is known; undo takes the person there.

    `day` is for a visit that undo or redo takes away: the page of its day is still there.
    """

    colony_id: ColonyId | None = None
    visit_id: VisitId | None = None
    part_id: PartId | None = None
    frame_id: FrameId | None = None
    face: Face | None = None
    question: Question | None = None
    day: date | None = None


@dataclass(frozen=True, slots=True)
class Done:
    """What an edit did: the id of what it made (or None), in words for the menu, and where.

    `cells` are the changed cells of sides, where the edit knows them already and need not be asked.
    """

    value: object
    label: str
    place: Place = Place()
    cells: Mapping[SideId, CellIndices] = field(default_factory=dict)


class Edit(Protocol):
    """One thing a person can do to the workbook; holds ids and values, never objects or widgets."""

    @property
    def merge_key(self) -> str | None:
        """Edits of one key within one pause are one undo step; None never merges."""

    def apply(self, tx: Transaction) -> Done:
        """Do it within this transaction.

        Errors: RefusedError, and then the transaction is rolled back.
        """


class SingleEdit:
    """An edit that is an undo step of its own."""

    __slots__ = ()

    @property
    def merge_key(self) -> str | None:
        """Never merges."""
        return None
