from dataclasses import replace
from datetime import timedelta

import pytest

from beeworkbook.colony.records import (
    RECORD_TYPES,
    Colony,
    Due,
    DueId,
    DueKind,
    Frame,
    FrameId,
    FrameStay,
    Mark,
    MarkId,
    OwnFrame,
    Part,
    PartId,
    PartKind,
    PartStay,
    Record,
    Setting,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.comb.contents import Face, MarkKind
from beeworkbook.store.schema import TABLES
from beeworkbook.workbook.exchange_form import FieldError
from beeworkbook.workbook.exchange_rules import LATER as TO_COME
from beeworkbook.workbook.exchange_rules import check_record, frame_type_in, references
from tests.workbook.keeping import LATER, Keeping


def test_every_reference_of_the_tables_is_checked() -> None:
    for cls, table in TABLES.items():
        in_tables = {column.name for column in table.columns if column.foreign_keys}
        assert set(references(cls)) == in_tables
        for name, target in references(cls).items():
            (key,) = table.columns[name].foreign_keys
            assert TABLES[next(each for each in RECORD_TYPES if each.__name__ == target)] is key.column.table
    assert {cls for cls in RECORD_TYPES if cls.__name__ in references(cls).values()} == set(TO_COME)


def _records(keeping: Keeping) -> dict[str, Record]:
    keeping.paint(5)
    side, visit = keeping.side(5), keeping.noted()
    assert side is not None
    stay = keeping.book.read.find(FrameStay)[0]
    part_stay = keeping.book.read.find(PartStay)[0]
    own = OwnFrame("own_1", "Ours", 340.0, 210.0)
    mark = Mark(MarkId(1), visit.id, MarkKind.QUEEN, side.frame_id, Face.A, 5)
    day = timedelta(days=1)
    return {
        "side.covered": replace(side, covered=9.0),
        "side.place": replace(side, place=0),
        "visit.id": replace(visit, id=VisitId(0)),
        "visit.next_day": replace(visit, next_day=visit.day - day),
        "setting.id": Setting("", "x"),
        "frame_stay.until": replace(stay, until=stay.since - day),
        "frame_stay.place": replace(stay, place=101),
        "part_stay.level": replace(part_stay, level=-1),
        "due.until": Due(DueId(1), DueKind.LOOK, LATER, "x", until=LATER - day),
        "own_frame.inside_width_mm": replace(own, inside_width_mm=1e9),
        "own_frame.id": replace(own, id="bs_deep"),
        "part.places": Part(PartId(1), PartKind.SUPER, "", "bs_deep", 10**6),
        "part.frame_type": Part(PartId(1), PartKind.SUPER, "", "nobody's", 3),
        "frame.frame_type": Frame(FrameId(1), "nobody's"),
        "mark.cell": replace(mark, cell=10**6),
        "mark_without_comb.cell": replace(mark, frame_id=None),
    }


def test_what_breaks_a_rule_is_refused_by_its_field(keeping: Keeping) -> None:
    records = _records(keeping)
    with keeping.book._base.write() as tx:
        for name, record in records.items():
            with pytest.raises(FieldError) as refusal:
                check_record(tx, record)
            assert str(refusal.value).split(":")[0] == name.split(".")[1]


def test_what_is_kept_breaks_no_rule(keeping: Keeping) -> None:
    keeping.paint(5)
    with keeping.book._base.write() as tx:
        for cls in RECORD_TYPES:
            for record in tx.find(cls):
                check_record(tx, record)
        assert frame_type_in(tx, "frame_type", "zander").id == "zander"
    assert references(Colony) == {"mother_id": "Colony"}
    assert "visit_id" in references(Side)
    assert references(Visit) == {"colony_id": "Colony", "round_id": "Round"}
