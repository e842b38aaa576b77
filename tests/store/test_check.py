from dataclasses import replace
from datetime import date

import pytest

from beeworkbook.colony.records import (
    FrameStay,
    FrameStayId,
    Housing,
    HousingId,
    PartStay,
    PartStayId,
    SideId,
)
from beeworkbook.store.check import Finding, Trouble, check
from beeworkbook.store.database import Database, open_database
from tests.store.small_apiary import SUMMER, SmallApiary


def _only(database: Database) -> Finding:
    (finding,) = check(database)
    return finding


@pytest.mark.usefixtures("small")
def test_a_workbook_in_order_has_no_findings(database: Database) -> None:
    assert check(database) == ()


DAMAGE = [
    ("UPDATE tally SET eggs_cells = eggs_cells + 1 WHERE side_id = 1", Trouble.TOTALS, "not what is drawn"),
    ("UPDATE side SET drone_cells = 1 WHERE id = 1", Trouble.TOTALS, "not what is drawn"),
    ("DELETE FROM tally WHERE side_id = 1", Trouble.TOTALS, "no totals"),
    ("UPDATE side SET origin = 'assumed' WHERE id = 1", Trouble.TOTALS, "assumed"),
    ("UPDATE comb SET cells = x'0102' WHERE side_id = 1", Trouble.DRAWING, "cannot be read"),
    ("DELETE FROM comb WHERE side_id = 1", Trouble.DRAWING, "no drawing"),
    ("UPDATE side SET frame_type = 'own_9' WHERE id = 1", Trouble.DRAWING, "own_9"),
    ("UPDATE visit SET level = 'glanced' WHERE id = 1", Trouble.RECORD, "glanced"),
    ("UPDATE event SET queen_id = 77 WHERE id = 1", Trouble.REFERENCE, "queen"),
    ("UPDATE frame_stay SET since = 'soon' WHERE id = 1", Trouble.RECORD, "soon"),
]


@pytest.mark.parametrize(("damage", "trouble", "words"), DAMAGE)
@pytest.mark.usefixtures("small")
def test_each_kind_of_damage_is_found_and_said(
    database: Database, damage: str, trouble: Trouble, words: str
) -> None:
    database.link.run("PRAGMA foreign_keys = OFF")
    database.link.run(damage)
    found = check(database)
    assert trouble in {finding.trouble for finding in found}
    assert any(words in finding.text for finding in found)
    assert all(finding.trouble in {trouble, Trouble.FILE} for finding in found)


def test_a_side_noted_twice(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        tx.add(replace(small.sides[0], id=SideId(0)))
    assert _only(database).trouble is Trouble.TWICE


def test_a_colony_in_two_hives_and_two_colonies_in_one(database: Database, small: SmallApiary) -> None:
    (spare,) = database.reader.find(Housing, colony_id=small.daughter.id)
    with database.write() as tx:
        tx.add(Housing(HousingId(0), small.colony.id, spare.hive_id, spare.stand_id, date(2026, 7, 1)))
    colony, hive = check(database)
    assert colony.text == f"Colony {small.colony.id} lives in two hives on 2026-07-01."
    assert hive.text == f"Two colonies live in hive {spare.hive_id} on 2026-07-01."


def test_a_frame_in_two_places_and_two_in_one(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        tx.add(FrameStay(FrameStayId(0), small.frames[0].id, small.box.id, 2, SUMMER))
    assert [finding.text for finding in check(database)] == [
        f"Frame {small.frames[0].id} hangs in two places on 2026-06-20.",
        f"Two frames hang in one place of a box on 2026-06-20 ({small.box.id}, 2).",
    ]


def test_a_part_in_two_places_and_two_at_one_level(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        tx.add(PartStay(PartStayId(0), small.box.id, small.hive.id, 0, SUMMER))
    assert {finding.trouble for finding in check(database)} == {Trouble.STAYS}
    assert len(check(database)) == 2


def test_stays_that_follow_each_other_do_not_overlap(database: Database, small: SmallApiary) -> None:
    with database.write() as tx:
        (stay,) = tx.find(PartStay, part_id=small.super_.id)
        tx.put(replace(stay, until=SUMMER))
        tx.add(replace(stay, id=PartStayId(0), since=SUMMER))
    assert check(database) == ()


@pytest.mark.usefixtures("small")
def test_a_damaged_file_is_found(database: Database, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("beeworkbook.store.database._SMALL_BYTES", 0)
    rows = database.link.rows("SELECT rootpage FROM sqlite_master WHERE name = 'ix_side_frame_id'")
    path, page = database.path, rows[0][0]
    database.close()
    content = bytearray(path.read_bytes())
    start = (page - 1) * 4096
    content[start + 8 : start + 4096] = b"\xff" * (4096 - 8)
    path.write_bytes(content)
    with open_database(path) as again:
        assert Trouble.FILE in {finding.trouble for finding in check(again)}
