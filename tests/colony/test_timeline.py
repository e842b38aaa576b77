from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.figures import Amount, VisitFigures, visit_figures
from beeworkbook.colony.records import (
    Arrival,
    Colony,
    ColonyId,
    Event,
    EventId,
    EventKind,
    Feed,
    FeedId,
    FeedKind,
    HiveId,
    Level,
    Part,
    PartId,
    PartKind,
    PartStay,
    PartStayId,
    Queen,
    QueenId,
)
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.colony.timeline import (
    MarkSort,
    event_text,
    event_words,
    joined,
    overlaid,
    season,
    season_marks,
)
from beeworkbook.comb.contents import Content
from beeworkbook.comb.frames import FrameType
from tests.colony.making import DAY, answers, comb, totals, visit

ZANDER = FrameType("zander", "Zander", 400, 200)
S, E, D, C = Content.SEALED, Content.EGGS, Content.DRONE, Content.EMPTY


def by_comb(day: date, combs: int = 1, visit_id: int = 1) -> VisitFigures:
    return visit_figures(
        totals(*comb(1, {E: 1, S: 4, D: 1, C: 2}), combs=combs, of=visit(day, visit_id=visit_id))
    )


def by_line(day: date, visit_id: int = 1, **said: str) -> VisitFigures:
    return visit_figures(totals(of=visit(day, Level.ONE_LINE, visit_id), said=answers(**said)), ZANDER)


def test_a_point_keeps_stages_drones_and_their_band() -> None:
    (point,) = season([by_comb(DAY)])
    assert (point.eggs, point.sealed, point.open) == (Amount(800, 2), Amount(3200, 8), Amount(0, 0))
    assert point.worker == Amount(4000, 10)
    assert point.drone == Amount(460, 2)
    assert point.low_dm2 is not None
    assert point.high_dm2 is not None
    assert point.low_dm2 < 10 < point.high_dm2
    assert point.low_cells == pytest.approx(point.low_dm2 * 400)
    assert point.high_cells == pytest.approx(point.high_dm2 * 400)
    assert not point.coarse
    assert not point.at_least


def test_a_line_is_coarse_and_missing_is_missing() -> None:
    line, blank, none = season(
        [
            by_line(DAY, brood="7/4.2", stores="8"),
            by_line(DAY + timedelta(1)),
            by_line(DAY + timedelta(2), brood="n"),
        ]
    )
    assert line.coarse
    assert (line.combs, line.worth, line.stores_kg) == (7, 4.2, 8)
    assert line.drone is None
    assert (blank.worker, blank.stores_kg, blank.bees, blank.low_dm2, blank.low_cells) == (None,) * 5
    assert none.worker == Amount()
    assert none.low_cells == 0


def test_combs_missing_open_the_point_upwards() -> None:
    (point,) = season([by_comb(DAY, combs=11)])
    assert point.at_least
    assert point.high_dm2 is None
    assert point.high_cells is None
    assert point.low_dm2 is not None


def test_only_what_was_seen_whole_is_joined() -> None:
    points = season(
        [
            by_comb(DAY + timedelta(7)),
            by_comb(DAY),
            by_comb(DAY + timedelta(14), combs=11),
            by_line(DAY + timedelta(16)),
            by_line(DAY + timedelta(21), brood="7/4.2"),
            by_comb(DAY + timedelta(90)),
        ]
    )
    assert [(point.day - DAY).days for point in points] == [0, 7, 14, 16, 21, 90]
    assert [[(point.day - DAY).days for point in run] for run in joined(points)] == [[0, 7, 21], [90]]
    assert joined(points[2:4]) == ()


@given(st.lists(st.dates(date(2022, 1, 1), date(2027, 1, 1)), max_size=20), st.sampled_from(Hemisphere))
def test_years_laid_over_one_another_lose_no_visit(days: list[date], hemisphere: Hemisphere) -> None:
    points = season(by_line(day, number, brood="3/2") for number, day in enumerate(days, 1))
    years = overlaid(points, hemisphere)
    assert sum(len(year.points) for year in years) == len(days)
    assert [year.year for year in years] == sorted({year.year for year in years})
    for year in years:
        assert len(year.places) == len(year.points)
        assert list(year.places) == sorted(year.places)
        assert all(1 <= place <= 365 for place in year.places)


def event(kind: EventKind, **known: object) -> Event:
    return Event(EventId(1), ColonyId(1), DAY, kind, **known)  # type: ignore[arg-type]


def test_marks_tell_what_happened_by_day() -> None:
    colony = Colony(ColonyId(1), "Wall", Arrival.NUCLEUS, DAY - timedelta(30))
    feed = Feed(FeedId(7), ColonyId(1), DAY, FeedKind.SYRUP, given_litres=2, sugar_parts=1, water_parts=1)
    box = (
        Part(PartId(1), PartKind.SUPER),
        PartStay(PartStayId(1), PartId(1), HiveId(1), 3, DAY - timedelta(1), DAY + timedelta(40)),
    )
    brood = Part(PartId(2), PartKind.BROOD_BOX), PartStay(PartStayId(2), PartId(2), HiveId(1), 1, DAY)
    marks = season_marks(colony, [event(EventKind.QUEEN_CAME)], [feed], [box, brood])
    assert [(mark.sort, mark.text) for mark in marks] == [
        (MarkSort.ARRIVAL, "came"),
        (MarkSort.SUPER, "super on"),
        (MarkSort.QUEEN, "queen came"),
        (MarkSort.FEED, "2 L 1:1 given"),
        (MarkSort.SUPER, "super off"),
    ]
    assert [mark.feed_id for mark in marks if mark.sort is MarkSort.FEED] == [FeedId(7)]


def test_an_arrival_on_record_is_told_once() -> None:
    colony = Colony(ColonyId(1), "Wall", Arrival.NUCLEUS, DAY)
    marks = season_marks(colony, [event(EventKind.ARRIVED, text="on five combs")])
    assert [mark.text for mark in marks] == ["came, on five combs"]
    assert season_marks() == ()


def test_events_in_words() -> None:
    assert event_text(event(EventKind.HEFT, left_kg=14.0, right_kg=15.5)) == "heft 14 + 15.5 kg"
    assert event_text(event(EventKind.HEFT)) == "heft"
    assert event_text(event(EventKind.NOTE, text="lime in flower")) == "lime in flower"
    assert event_text(event(EventKind.DIED)) == "died"
    queen = Queen(QueenId(1), mark_colour="white", year=2026)
    assert event_text(event(EventKind.QUEEN_CAME, text="bought"), queen) == (
        "queen came, of 2026, marked white, bought"
    )
    assert event_text(event(EventKind.QUEEN_SEEN), queen) == "queen seen"
    assert len({event_words(kind) for kind in EventKind}) == len(EventKind)
