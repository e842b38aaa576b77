"""Any changes in any order: undone one by one, every table is as it was; done again, as it had become."""

import tempfile
from dataclasses import fields, replace
from datetime import date
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.colony.records import RECORD_TYPES, OwnFrame, Setting, Side
from beeworkbook.comb.contents import Content, Origin
from beeworkbook.comb.frames import FRAME_TYPES
from beeworkbook.store.check import Trouble, check
from beeworkbook.store.database import Database, create, open_database
from beeworkbook.store.transaction import Step, Transaction
from tests.store.small_apiary import BOX_FRAME, drawing, everything, fill

CLASSES = [cls for cls in RECORD_TYPES if cls not in {Setting, OwnFrame}]
change = st.tuples(
    st.sampled_from(["add", "put", "paint", "remove"]), st.sampled_from(CLASSES), st.integers(0, 50)
)


def _change(tx: Transaction, what: str, cls: Any, number: int) -> None:
    held = tx.find(Side if what == "paint" else cls)
    if not held:
        return
    record: Any = held[number % len(held)]
    if what == "add" and cls.__name__ != "Answer":  # a question has one answer
        tx.add(replace(record, id=0))
    elif what == "put":
        tx.put(_otherwise(record, number))
    elif what == "paint":
        origin = list(Origin)[number % 4]
        cells = drawing(FRAME_TYPES[BOX_FRAME], {Content.EGGS: 0.3}, number)
        tx.put(replace(record, cells=cells, origin=origin, drone_cells=number % 2 == 0))
    elif what == "remove":
        tx.remove(cls, record.id)


def _otherwise(record: Any, number: int) -> Any:
    names = {field.name for field in fields(record)}
    if "until" in names:
        return replace(record, until=date(2030, 1, 1 + number % 28))
    for name in ("note", "name", "text", "typed"):
        if name in names:
            return replace(record, **{name: f"changed {number}"})
    return record


def _turn(database: Database, journal: list[Step], *, back: bool) -> None:
    with database.write() as tx:
        for step in reversed(journal) if back else journal:
            wanted = step.before if back else step.after
            if wanted is None:
                tx.remove(step.cls, step.id)
            else:
                tx.put(wanted)


@settings(max_examples=25)
@given(st.lists(st.lists(change, min_size=1, max_size=3), min_size=1, max_size=6))
def test_any_changes_undone_leave_every_table_as_it_was(batches: list[list[tuple[str, Any, int]]]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "random.beebook"
        with create(path) as database:
            fill(database)
            states, journals = [everything(database)], []
            for batch in batches:
                with database.write() as tx:
                    for what in batch:
                        _change(tx, *what)
                journals.append(tx.journal)
                states.append(everything(database))
            assert {finding.trouble for finding in check(database)} <= {Trouble.STAYS, Trouble.TWICE}
            for number in reversed(range(len(journals))):
                _turn(database, journals[number], back=True)
                assert everything(database) == states[number]
            for number, journal in enumerate(journals):
                _turn(database, journal, back=False)
                assert everything(database) == states[number + 1]
        with open_database(path) as database:
            assert everything(database) == states[-1]
