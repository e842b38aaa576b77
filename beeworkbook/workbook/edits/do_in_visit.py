"""What was due is done in a visit, begun for it if there is none that day."""

from dataclasses import dataclass
from datetime import date

from beeworkbook.colony.records import Due, DueId, VisitId
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.edits.dues import DoDue
from beeworkbook.workbook.edits.visit import BeginVisit
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import the
from beeworkbook.workbook.place import Done, SingleEdit


@dataclass(frozen=True)
class DoInVisit(SingleEdit):
    """The due is done, and the colony's visit of the day is there to be filled: one step."""

    due_id: DueId
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Gives the VisitId. Errors: GoneError; RefusedError if it is due for no colony."""
        due = the(tx, Due, self.due_id)
        if due.colony_id is None:
            raise RefusedError(say("This is due for no colony, so it has no visit."))
        visit_id = VisitId(int(str(BeginVisit(due.colony_id, self.day).apply(tx).value)))
        done = DoDue(self.due_id, visit_id).apply(tx)
        return Done(visit_id, done.label, done.place)
