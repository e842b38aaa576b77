"""The desk moves among what exists, and nothing it points to can be pulled from under it."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication

from beeworkbook.colony.records import Arrival, Colony, ColonyId, Event, PartKind, VisitId
from beeworkbook.comb.contents import Content
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import DARK
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony, nucleus_combs
from beeworkbook.workbook.edits.hive import AddPart
from beeworkbook.workbook.edits.in_visit import NO_VISIT
from beeworkbook.workbook.edits.line import ClearOnLine
from beeworkbook.workbook.edits.mend import RemoveVisit
from beeworkbook.workbook.edits.place import RemoveRecord
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from beeworkbook.workbook.edits.visit import BeginRound, BeginVisit, SetNote
from beeworkbook.workbook.workbook import Workbook

CAME = date(2026, 4, 20)
TODAY = date(2026, 5, 16)


@pytest.fixture
def desk(tmp_path: Path, qapp: QApplication) -> Iterator[Desk]:
    book = Workbook.create(tmp_path / "desk.beebook", "Desk", today=TODAY)
    made = Desk(book, parent=qapp)
    yield made
    made.close()
    book.close()


def arrive(desk: Desk, name: str) -> ColonyId:
    spec = ArrivalSpec(
        name,
        Arrival.NUCLEUS,
        CAME,
        apiary_id=desk.spot.apiary_id,
        apiary_name="Home",
        combs=nucleus_combs(11, 5),
    )
    made = desk.do(ArriveColony(spec))
    assert made is not None
    return ColonyId(int(str(made)))


def test_an_empty_book_has_no_place_to_be(desk: Desk) -> None:
    assert desk.spot.apiary_id is None
    assert desk.spot.colony_id is None
    assert desk.hive_day() is None
    assert desk.visit_to_write() is None


def test_the_first_colony_is_gone_to_by_itself(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    assert desk.spot.colony_id == colony
    box = desk.box()
    assert box is not None
    assert box.part.kind is PartKind.BROOD_BOX
    assert desk.spot.frame_id == box.frames[0].frame.id if box.frames[0].frame else False


def test_a_colony_brings_its_latest_visit_outside_the_round(desk: Desk) -> None:
    first, second = arrive(desk, "Alder"), arrive(desk, "Birch")
    visit = desk.do(BeginVisit(second, date(2026, 5, 9)))
    desk.go(colony_id=first, view=View.BOX)
    desk.go(colony_id=second)
    assert desk.spot.visit_id == visit
    assert desk.spot.day == date(2026, 5, 9)


def test_leafing_stops_at_both_ends(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    days = [date(2026, 5, 2), date(2026, 5, 9)]
    for day in days:
        desk.do(BeginVisit(colony, day))
    desk.go(colony_id=colony, visit_id=desk.visits()[-1].id, view=View.BOX)
    seen = []
    for _ in range(5):
        desk.leaf(-1)
        seen.append(desk.spot.day)
    assert seen[-1] == CAME
    for _ in range(5):
        desk.leaf(1)
    assert desk.spot.day == days[-1]


def test_leafing_from_a_day_without_a_visit_finds_the_neighbours(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    desk.do(BeginVisit(colony, date(2026, 5, 9)))
    desk.go(colony_id=colony, day=date(2026, 5, 1), view=View.BOX)
    assert desk.spot.visit_id is None
    desk.leaf(1)
    assert desk.spot.day == date(2026, 5, 9)
    desk.go(day=date(2026, 5, 1))
    desk.leaf(-1)
    assert desk.spot.day == CAME


def test_a_visit_is_begun_only_when_something_is_written(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    desk.go(colony_id=colony, day=TODAY)
    before = len(desk.visits())
    visit = desk.visit_to_write()
    assert visit is not None
    assert len(desk.visits()) == before + 1
    assert desk.visit_to_write() == visit


def test_undo_goes_to_the_place_of_the_step(desk: Desk) -> None:
    first, second = arrive(desk, "Alder"), arrive(desk, "Birch")
    desk.go(colony_id=first, day=TODAY)
    visit = desk.visit_to_write()
    assert visit is not None
    desk.do(SetNote(visit, "steady"))
    desk.go(colony_id=second)
    desk.undo()
    assert desk.spot.colony_id == first
    assert desk.visit is not None
    assert desk.visit.note == ""
    desk.redo()
    assert desk.visit is not None
    assert desk.visit.note == "steady"


@pytest.mark.parametrize("view", [View.YEAR, View.ROUND, View.BENCH])
def test_undo_of_a_drawing_goes_where_drawings_are_seen(desk: Desk, view: View) -> None:
    colony = arrive(desk, "Alder")
    desk.go(colony_id=colony, day=TODAY, view=View.BOX)
    visit, frame = desk.visit_to_write(), desk.spot.frame_id
    assert visit is not None
    assert frame is not None
    desk.do(LayOutComb(visit, frame, "S4H4"))
    desk.step_comb(1)
    desk.go(view=view)
    desk.undo()
    assert desk.spot.frame_id == frame
    assert desk.spot.view is (View.BENCH if view is View.BENCH else View.BOX)


def test_leafing_is_told_before_the_other_visit_is_shown(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    desk.go(colony_id=colony, day=TODAY, view=View.BOX)
    desk.visit_to_write()
    told: list[tuple[int, date]] = []
    desk.leafing.connect(lambda step: told.append((step, desk.spot.day)))
    desk.leaf(-1)
    assert desk.spot.day == CAME
    desk.leaf(-1)
    desk.leaf(1)
    assert told == [(-1, TODAY), (1, CAME)]


def test_what_is_removed_is_no_longer_pointed_to(desk: Desk) -> None:
    first, second = arrive(desk, "Alder"), arrive(desk, "Birch")
    desk.go(colony_id=second)
    desk.do(RemoveRecord(Colony, second))
    assert desk.spot.colony_id == first


def test_a_refusal_is_told_and_not_raised(desk: Desk) -> None:
    told: list[str] = []
    desk.told.connect(told.append)
    assert desk.do(SetNote(VisitId(99), "nobody")) is None
    assert len(told) == 1
    assert told[0].endswith(".")


def test_the_hive_of_the_day_follows_the_book(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    desk.go(colony_id=colony, day=TODAY)
    hive = desk.hive_day()
    assert hive is not None
    desk.do(
        AddPart(
            hive.hive.id,
            PartKind.SUPER,
            TODAY,
            frame_type="bs_shallow",
            places=10,
            new_frames=Content.FOUNDATION,
        )
    )
    after = desk.hive_day()
    assert after is not None
    assert len(after.boxes) == len(hive.boxes) + 1
    desk.go(day=date(2026, 5, 1))
    earlier = desk.hive_day()
    assert earlier is not None
    assert len(earlier.boxes) == len(hive.boxes)


def test_the_palette_is_told_once(desk: Desk) -> None:
    told: list[object] = []
    desk.palette_changed.connect(told.append)
    desk.set_palette(DARK)
    desk.set_palette(DARK)
    assert told == [DARK]
    assert not desk.book.read.find(Event, colony_id=99)


def test_a_removed_visit_lies_open_again_when_it_is_brought_back(desk: Desk) -> None:
    first, second = arrive(desk, "Alder"), arrive(desk, "Birch")
    visit = desk.do(BeginVisit(first, date(2026, 5, 9)))
    desk.go(colony_id=first, visit_id=visit)
    desk.do(RemoveVisit(VisitId(int(str(visit)))))
    assert (desk.spot.day, desk.spot.visit_id) == (date(2026, 5, 9), None)
    desk.undo()
    assert (desk.spot.day, desk.spot.visit_id) == (date(2026, 5, 9), visit)
    desk.redo()
    assert (desk.spot.day, desk.spot.visit_id) == (date(2026, 5, 9), None)
    desk.go(colony_id=second, day=TODAY)
    desk.undo()
    assert (desk.spot.colony_id, desk.spot.visit_id) == (first, visit)
    desk.go(colony_id=second, day=TODAY)
    desk.redo()
    assert (desk.spot.colony_id, desk.spot.day, desk.spot.visit_id) == (first, date(2026, 5, 9), None)


def test_a_visit_that_went_with_its_last_word_is_gone_back_to(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    desk.go(colony_id=colony, day=TODAY)
    desk.note(SetNote(NO_VISIT, "steady"))
    visit = desk.spot.visit_id
    assert visit is not None
    desk.book.end_merge()
    desk.do(ClearOnLine(visit, SetNote(visit, "")))
    assert desk.spot.visit_id is None
    desk.undo()
    assert desk.spot.visit_id == visit


def test_a_visit_begun_elsewhere_is_the_one_that_lies_open(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    desk.go(colony_id=colony, day=TODAY)
    assert desk.spot.visit_id is None
    visit = desk.book.do(BeginVisit(colony, TODAY))
    assert desk.spot.visit_id == visit


def test_noting_on_an_empty_day_is_one_step_with_its_visit(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    desk.go(colony_id=colony, day=TODAY)
    before = desk.visits()
    desk.note(SetNote(NO_VISIT, "steady"))
    assert desk.visit is not None
    assert desk.visit.note == "steady"
    desk.undo()
    assert desk.visits() == before
    assert (desk.spot.day, desk.spot.visit_id) == (TODAY, None)


def test_without_a_colony_nothing_can_be_noted_and_it_is_said(desk: Desk) -> None:
    told: list[str] = []
    desk.told.connect(told.append)
    assert desk.note(SetNote(NO_VISIT, "nobody")) is None
    assert told == ["No colony is chosen, so nothing can be noted."]


def test_rounds_are_leafed_whatever_the_colony_had(desk: Desk) -> None:
    colony = arrive(desk, "Alder")
    apiary = desk.spot.apiary_id
    assert apiary is not None
    days = [date(2026, 5, 2), date(2026, 5, 9)]
    for day in days:
        desk.do(BeginRound(apiary, day))
    desk.go(colony_id=colony, day=TODAY, view=View.ROUND)
    seen = []
    for _ in range(3):
        desk.leaf_rounds(-1)
        seen.append(desk.spot.day)
    assert seen == [days[1], days[0], days[0]]
    desk.leaf_rounds(2)
    assert desk.spot.day == TODAY
    desk.leaf_rounds(1)
    assert (desk.spot.day, desk.spot.colony_id) == (TODAY, colony)
