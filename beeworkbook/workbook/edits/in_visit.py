"""What is noted of a colony on a day without a visit: the visit is begun and the edit done as one step.

Undo then takes the visit back with what was noted, so that no empty one stays in the book.
"""

from dataclasses import dataclass, replace
from datetime import date

from beeworkbook.colony.records import Colony, ColonyId, VisitId
from beeworkbook.store.transaction import Transaction
from beeworkbook.workbook.edits.together import Together
from beeworkbook.workbook.edits.visit import begin_visit
from beeworkbook.workbook.found import the
from beeworkbook.workbook.place import Done, Edit, SingleEdit

NO_VISIT = VisitId(0)
"""Stands in an edit for the visit that is yet to be begun."""


def with_visit(edit: Edit, visit_id: VisitId) -> Edit:
    """The same edit, of this visit, or each of several; one that names no visit is left as it is."""
    if isinstance(edit, Together):
        return replace(edit, edits=tuple(with_visit(each, visit_id) for each in edit.edits))
    named = getattr(edit, "__dataclass_fields__", {})
    return replace(edit, visit_id=visit_id) if "visit_id" in named else edit  # type: ignore[type-var]


@dataclass(frozen=True)
class InVisit(SingleEdit):
    """An edit of that day's visit, begun with it if there is none; the edit's `visit_id` is filled in."""

    colony_id: ColonyId
    day: date
    edit: Edit

    def apply(self, tx: Transaction) -> Done:
        """Gives what the edit gives. Errors: GoneError; as the edit, and then no visit is begun."""
        colony = the(tx, Colony, self.colony_id)
        visit = begin_visit(tx, colony.id, self.day)
        done = with_visit(self.edit, visit.id).apply(tx)
        place = replace(done.place, colony_id=colony.id, visit_id=visit.id, day=visit.day)
        return replace(done, place=place)
