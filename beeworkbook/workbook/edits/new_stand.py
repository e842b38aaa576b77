"""A colony moves to a stand that is not in the book yet."""

from dataclasses import dataclass
from datetime import date

from beeworkbook.colony.records import ApiaryId, ColonyId, StandId
from beeworkbook.store.transaction import Transaction
from beeworkbook.workbook.edits.hive import MoveColony
from beeworkbook.workbook.edits.place import AddStand
from beeworkbook.workbook.place import Done, SingleEdit


@dataclass(frozen=True)
class MoveToNewStand(SingleEdit):
    """A new stand at the end of the walk, and the colony on it from a day on: one step."""

    colony_id: ColonyId
    apiary_id: ApiaryId
    stand_name: str
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Gives the StandId. Errors: as AddStand and MoveColony."""
        stand_id = StandId(int(str(AddStand(self.apiary_id, self.stand_name).apply(tx).value)))
        moved = MoveColony(self.colony_id, stand_id, self.day).apply(tx)
        return Done(stand_id, moved.label, moved.place)
