"""Several edits as one undo step."""

from dataclasses import dataclass

from beeworkbook.store.transaction import Transaction
from beeworkbook.workbook.place import Done, Edit, Place, SingleEdit


@dataclass(frozen=True)
class Together(SingleEdit):
    """These edits one after the other, done or refused as one."""

    edits: tuple[Edit, ...]
    label: str

    def apply(self, tx: Transaction) -> Done:
        """Gives what the last edit gives, at its place."""
        done = Done(None, self.label)
        for edit in self.edits:
            done = edit.apply(tx)
        return Done(done.value, self.label, done.place if self.edits else Place())
