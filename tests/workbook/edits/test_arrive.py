from dataclasses import replace

import pytest

from beeworkbook.colony.records import (
    Arrival,
    Colony,
    ColonyId,
    DueKind,
    EventKind,
    Frame,
    FrameMake,
    Level,
    PartKind,
    Queen,
    Stand,
    Way,
)
from beeworkbook.comb.contents import Content, Origin
from beeworkbook.workbook.edits import ArrivalSpec, ArriveColony, ArrivingComb, nucleus_combs
from beeworkbook.workbook.errors import NotReadableError, RefusedError
from beeworkbook.workbook.story import visit_story
from tests.workbook.keeping import CAME, NUCLEUS, Keeping, as_int, days_on


def _house(keeping: Keeping, spec: ArrivalSpec) -> ColonyId:
    return ColonyId(as_int(keeping.book.do(ArriveColony(spec))))


def _spec(keeping: Keeping, **changes: object) -> ArrivalSpec:
    apiary = keeping.book.read.apiaries()[0]
    spec = replace(NUCLEUS, name="Gate", apiary_id=apiary.id, stand_name="")
    return replace(spec, **changes)  # type: ignore[arg-type] # the tests name the fields


def test_a_nucleus_is_housed_in_one_step_with_all_its_parts(keeping: Keeping) -> None:
    hive = keeping.book.read.hive_day(keeping.colony, CAME)
    assert hive is not None
    assert [part.part.kind for part in hive.stack] == [
        PartKind.STAND,
        PartKind.FLOOR,
        PartKind.BROOD_BOX,
        PartKind.CROWN_BOARD,
        PartKind.FEEDER,
        PartKind.ROOF,
    ]
    assert [placed.place for placed in hive.boxes[0].frames if placed.frame] == list(range(1, 12))
    kinds = [event.kind for event in keeping.book.read.events(keeping.colony)]
    assert kinds == [EventKind.ARRIVED, EventKind.QUEEN_CAME]
    assert [queen.mark_colour for queen in keeping.book.read.find(Queen)] == ["blue"]
    assert [feed.typed for feed in keeping.book.read.feeds(keeping.colony)] == ["2L 1:1"]
    dues = keeping.book.read.dues(None, colony_id=keeping.colony)
    assert {due.kind for due in dues} == {DueKind.FEED_LOOK, DueKind.FIRST_LOOK}


def test_undo_takes_the_whole_arrival_back(keeping: Keeping) -> None:
    before = keeping.everything()
    _house(keeping, _spec(keeping, apiary_id=None, apiary_name="Far Meadow"))
    assert keeping.book.undo_label == "house Gate"
    keeping.book.undo()
    assert keeping.everything() == before


def test_its_combs_hang_in_the_order_they_came_and_are_drawn_if_they_were_typed(keeping: Keeping) -> None:
    combs = (ArrivingComb(4, "H4P2", name="n1"), ArrivingComb(5, "E1O2S4", turned=True), ArrivingComb(6))
    colony = _house(keeping, _spec(keeping, combs=combs, dummies=(11,), flank=Content.EMPTY))
    hive = keeping.book.read.hive_day(colony, CAME)
    assert hive is not None
    frames = {placed.place: placed for placed in hive.boxes[0].frames}
    assert frames[4].frame is not None
    assert frames[4].frame.name == "n1"
    assert frames[5].stay is not None
    assert frames[5].stay.turned
    assert frames[11].frame is not None
    assert frames[11].frame.make is FrameMake.DUMMY
    visit = keeping.book.read.visits(colony)[0]
    typed = {side.place: side.typed for side in keeping.book.read.sides(visit.id)}
    assert typed == {1: "C", 2: "C", 3: "C", 4: "H4P2", 5: "E1O2S4", 7: "C", 8: "C", 9: "C", 10: "C"}
    assert all(side.origin is Origin.EIGHTHS for side in keeping.book.read.sides(visit.id))


@pytest.mark.parametrize("arrival", list(Arrival))
@pytest.mark.parametrize("flank", [None, Content.FOUNDATION])
def test_every_arrival_has_its_page_and_its_event(
    keeping: Keeping, arrival: Arrival, flank: Content | None
) -> None:
    colony = _house(keeping, _spec(keeping, arrival=arrival, flank=flank, fed="1L 1:1"))
    visit = keeping.book.read.visits(colony)[0]
    assert visit.day == keeping.book.read.events(colony)[0].day
    assert visit.level is (Level.NOT_OPENED if flank is None else Level.BY_COMB)
    assert keeping.book.read.feeds(colony)[0].visit_id == visit.id
    story = visit_story(keeping.book.read, visit.id)
    assert EventKind.ARRIVED in {event.kind for event in story.events}


def test_a_package_and_a_swarm_have_plans_of_their_own(keeping: Keeping) -> None:
    plans = {}
    for arrival in (Arrival.NUCLEUS, Arrival.PACKAGE, Arrival.SWARM):
        combs = nucleus_combs(11, 6) if arrival is Arrival.NUCLEUS else ()
        colony = _house(keeping, _spec(keeping, name=str(arrival), arrival=arrival, combs=combs))
        dues = keeping.book.read.dues(None, colony_id=colony)
        plans[arrival] = [(due.kind, due.day, due.until) for due in dues]
        assert all(due.reason for due in dues)
    assert plans[Arrival.NUCLEUS] != plans[Arrival.SWARM] != plans[Arrival.PACKAGE]
    assert any(kind is DueKind.QUEEN_CAGE for kind, _, _ in plans[Arrival.PACKAGE])
    first = next(day for kind, day, _ in plans[Arrival.NUCLEUS] if kind is DueKind.FIRST_LOOK)
    assert first == days_on(CAME, 7)


def test_a_super_and_an_excluder_are_never_refused(keeping: Keeping) -> None:
    spec = _spec(
        keeping, supers=1, super_frame_type="bs_shallow", super_places=10, excluder=True, way=Way.WARM
    )
    hive = keeping.book.read.hive_day(_house(keeping, spec), CAME)
    assert hive is not None
    kinds = [part.part.kind for part in hive.stack]
    assert kinds[2:5] == [PartKind.BROOD_BOX, PartKind.EXCLUDER, PartKind.SUPER]
    assert hive.hive.way is Way.WARM
    assert len([placed for placed in hive.boxes[1].frames if placed.frame]) == 10


def test_a_stand_is_taken_or_made(keeping: Keeping) -> None:
    stand = keeping.book.read.find(Stand)[0]
    _house(keeping, _spec(keeping, stand_id=stand.id))
    assert len(keeping.book.read.find(Stand)) == 1
    _house(keeping, _spec(keeping, name="Third"))
    assert [each.name for each in keeping.book.read.find(Stand)] == ["1", "2"]


@pytest.mark.parametrize(
    "changes",
    [
        {"name": ""},
        {"places": 0},
        {"combs": (ArrivingComb(12),)},
        {"combs": (ArrivingComb(3), ArrivingComb(3))},
        {"apiary_id": None, "apiary_name": " "},
        {"frame_type": "no such frame"},
    ],
)
def test_what_does_not_fit_is_refused_and_nothing_is_half_done(
    keeping: Keeping, changes: dict[str, object]
) -> None:
    before = keeping.everything()
    with pytest.raises(RefusedError):
        _house(keeping, _spec(keeping, **changes))
    assert keeping.everything() == before


def test_a_slip_in_the_feed_or_a_comb_points_at_itself(keeping: Keeping) -> None:
    for changes in ({"fed": "a jug"}, {"combs": (ArrivingComb(3, "S4X"),)}):
        with pytest.raises(NotReadableError):
            _house(keeping, _spec(keeping, **changes))


def test_a_nucleus_hangs_in_the_middle_or_where_it_is_said() -> None:
    assert [comb.place for comb in nucleus_combs(11, 5)] == [4, 5, 6, 7, 8]
    assert [comb.place for comb in nucleus_combs(11, 6, first=1)] == [1, 2, 3, 4, 5, 6]
    with pytest.raises(RefusedError, match="do not fit"):
        nucleus_combs(5, 6)
    with pytest.raises(RefusedError):
        nucleus_combs(11, 6, first=7)


def test_frames_have_identities_of_their_own(keeping: Keeping) -> None:
    frames = keeping.book.read.find(Frame)
    assert len(frames) == 11
    assert {frame.since for frame in frames} == {None, CAME}
    assert keeping.book.read.find(Colony)[0].arrival is Arrival.NUCLEUS
