"""Printed sheets, kept so that a later photograph can be read."""

from dataclasses import dataclass

from beeworkbook.colony.records import Colony, Sheet
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.found import held, the
from beeworkbook.workbook.place import Done, Place, SingleEdit


@dataclass(frozen=True)
class KeepSheet(SingleEdit):
    """A printed sheet with its field map; an id of 0 asks for a new one."""

    sheet: Sheet

    def apply(self, tx: Transaction) -> Done:
        """Gives the SheetId. Errors: GoneError."""
        colony = the(tx, Colony, self.sheet.colony_id)
        if self.sheet.id and held(tx, Sheet, self.sheet.id) is not None:
            tx.put(self.sheet)
            kept = self.sheet
        else:
            kept = tx.add(self.sheet)
        label = say("keep the printed sheet of {colony}", colony=colony.name)
        return Done(kept.id, label, Place(colony_id=kept.colony_id, visit_id=kept.visit_id))
