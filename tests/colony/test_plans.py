from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.feeding import parse_feed
from beeworkbook.colony.plans import (
    PlannedDue,
    arrival_plan,
    is_settling,
    kinds_left,
    next_look,
    offers,
)
from beeworkbook.colony.questions import parse_answer
from beeworkbook.colony.records import Arrival, DueKind, Mark, MarkId, Question, VisitId
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.comb.contents import CellFate, CellKind, MarkKind

NORTH, SOUTH = Hemisphere.NORTH, Hemisphere.SOUTH
MAY = date(2026, 5, 16)


def days_to(day: date, **known: object) -> int:
    due = next_look(day, hemisphere=NORTH, **known)  # type: ignore[arg-type]
    return (due.day - day).days


@pytest.mark.parametrize(
    ("day", "clipped", "days"),
    [
        (MAY, None, 7),
        (MAY, False, 7),
        (MAY, True, 10),
        (date(2026, 3, 20), None, 14),
        (date(2026, 8, 20), None, 18),
        (date(2026, 10, 1), True, 18),
        (date(2026, 12, 24), None, 28),
    ],
)
def test_the_season_and_the_clipped_queen_decide(day: date, clipped: bool | None, days: int) -> None:
    assert days_to(day, clipped=clipped) == days


def test_the_other_half_of_the_world_has_its_swarms_in_november() -> None:
    assert (next_look(date(2026, 11, 16), hemisphere=SOUTH).day - date(2026, 11, 16)).days == 7
    assert "winter" in next_look(MAY.replace(month=6), hemisphere=SOUTH).reason


def test_the_reason_says_whether_the_queen_is_clipped_only_if_that_is_known() -> None:
    assert "clipped" not in next_look(MAY, hemisphere=NORTH).reason
    assert "not clipped" in next_look(MAY, hemisphere=NORTH, clipped=False).reason
    assert "the queen is clipped" in next_look(MAY, hemisphere=NORTH, clipped=True).reason


@pytest.mark.parametrize(
    ("cells", "since", "days", "says"),
    [
        ([CellKind.CHARGED], None, 3, "21 May"),
        ([CellKind.WITH_EGG], None, 4, "21 May"),
        ([CellKind.SEALED], None, 7, "24 May"),
        ([CellKind.SEALED], 5, 2, "19 May"),
        ([CellKind.SEALED], 9, 1, "from 16 May on"),
        ([CellKind.CHARGED, CellKind.WITH_EGG], None, 3, "charged"),
        ([CellKind.PLAY_CUP, CellKind.TORN_DOWN, CellKind.EMERGED], None, 7, "seven days"),
    ],
)
def test_queen_cells_bring_the_next_look_forward(
    cells: list[CellKind], since: int | None, days: int, says: str
) -> None:
    due = next_look(MAY, hemisphere=NORTH, cells=cells, days_since_look=since)
    assert (due.day - MAY).days == days
    assert says in due.reason


def test_a_virgin_is_left_in_peace() -> None:
    due = next_look(MAY, hemisphere=NORTH, virgin_since=date(2026, 5, 12), cells=[CellKind.CHARGED])
    assert (due.day, due.until) == (date(2026, 5, 26), date(2026, 6, 2))
    assert "leave it shut" in due.reason
    assert days_to(MAY, virgin_since=date(2026, 4, 30)) == 7


@given(
    day=st.dates(date(2020, 1, 1), date(2030, 12, 31)),
    hemisphere=st.sampled_from(Hemisphere),
    clipped=st.sampled_from([True, False, None]),
    cells=st.sets(st.sampled_from(CellKind)),
    since=st.one_of(st.none(), st.integers(0, 60)),
)
def test_more_queen_cells_never_put_the_look_off(
    day: date, hemisphere: Hemisphere, clipped: bool | None, cells: set[CellKind], since: int | None
) -> None:
    plain = next_look(day, hemisphere=hemisphere, clipped=clipped)
    due = next_look(day, hemisphere=hemisphere, clipped=clipped, cells=cells, days_since_look=since)
    assert day < due.day <= plain.day
    assert due.reason


def test_feed_given_is_offered_its_look_before_the_next_one() -> None:
    found = offers(MAY, hemisphere=NORTH, feed=parse_feed("2L 1:1"))
    assert [due.kind for due in found] == [DueKind.FEED_LOOK, DueKind.LOOK]
    assert [due.kind for due in offers(MAY, hemisphere=NORTH)] == [DueKind.LOOK]


def mark(kind: CellKind, fate: CellFate | None = None) -> Mark:
    return Mark(MarkId(1), VisitId(1), MarkKind.QUEEN_CELL, cell_kind=kind, fate=fate)


def test_cells_knocked_down_are_not_left() -> None:
    answer = parse_answer(Question.CELLS, "1c 2u")
    assert kinds_left(answer) == {CellKind.CHARGED, CellKind.PLAY_CUP}
    assert kinds_left(answer, [mark(CellKind.CHARGED, CellFate.KNOCKED_DOWN)]) == {CellKind.PLAY_CUP}
    both = [mark(CellKind.CHARGED, CellFate.KNOCKED_DOWN), mark(CellKind.CHARGED, CellFate.LEFT)]
    assert kinds_left(answer, both) == {CellKind.CHARGED, CellKind.PLAY_CUP}
    assert kinds_left(None, [mark(CellKind.SEALED)]) == {CellKind.SEALED}
    assert kinds_left(parse_answer(Question.CELLS, "3")) == frozenset()


CAME = date(2026, 5, 16)


@pytest.mark.parametrize(
    ("arrival", "days", "seams", "combs", "settling"),
    [
        (Arrival.SWARM, 0, None, 11, True),
        (Arrival.PACKAGE, 27, 6.0, 11, True),
        (Arrival.NUCLEUS, 28, 6.0, 11, False),
        (Arrival.NUCLEUS, 14, 9.0, 11, False),
        (Arrival.NUCLEUS, 14, 9.0, 0, True),
        (Arrival.BOUGHT, 3, 6.0, 11, False),
        (Arrival.SWARM, -1, None, 11, False),
    ],
)
def test_a_colony_that_came_small_settles_until_it_fills_its_box(
    arrival: Arrival, days: int, seams: float | None, combs: int, settling: bool
) -> None:
    day = CAME + timedelta(days=days)
    assert is_settling(arrival, CAME, day, seams=seams, combs=combs) is settling


def test_nobody_is_told_of_swarms_while_a_swarm_draws_its_foundation() -> None:
    due = next_look(MAY, hemisphere=NORTH, settling=True)
    assert "swarm season" not in due.reason
    assert (due.day - MAY).days == 7
    assert "queen cell" in next_look(MAY, hemisphere=NORTH, settling=True, cells=[CellKind.WITH_EGG]).reason
    assert "heft" in next_look(date(2026, 12, 1), hemisphere=NORTH, settling=True).reason


@pytest.mark.parametrize("arrival", [Arrival.SWARM, Arrival.PACKAGE, Arrival.NUCLEUS])
@pytest.mark.parametrize("cast", [False, True])
def test_on_the_day_of_an_arrival_its_plan_sees_to_everything(arrival: Arrival, cast: bool) -> None:
    planned = arrival_plan(arrival, CAME, fed=True, cast=cast if arrival is Arrival.SWARM else None)
    feed = parse_feed("2L 1:1")
    assert len(offers(CAME, hemisphere=NORTH, settling=True, feed=feed)) == 2
    assert offers(CAME, hemisphere=NORTH, settling=True, feed=feed, due=planned) == ()


def test_an_offer_is_made_where_what_is_due_comes_too_late() -> None:
    week = PlannedDue(DueKind.LOOK, MAY + timedelta(days=7), None, "why")
    near = PlannedDue(DueKind.FIRST_LOOK, MAY + timedelta(days=10), None, "why")
    late = PlannedDue(DueKind.LOOK, MAY + timedelta(days=11), None, "why")
    over = PlannedDue(DueKind.LOOK, MAY, None, "why")
    bring = PlannedDue(DueKind.BRING, MAY + timedelta(days=2), None, "why")
    for due, offered in ((week, 0), (near, 0), (late, 1), (over, 1), (bring, 1)):
        assert len(offers(MAY, hemisphere=NORTH, due=(due,))) == offered
    assert len(offers(MAY, hemisphere=NORTH, cells=[CellKind.SEALED], due=(near,))) == 1
    shut = PlannedDue(DueKind.LEAVE_SHUT, MAY + timedelta(days=4), MAY + timedelta(days=13), "why")
    assert offers(MAY, hemisphere=NORTH, due=(shut,)) == ()
    assert len(offers(MAY, hemisphere=NORTH, cells=[CellKind.CHARGED], due=(shut,))) == 1
