from datetime import date, timedelta

import pytest

from beeworkbook.colony.arrivals import arrival_plan
from beeworkbook.colony.dues import PlannedDue
from beeworkbook.colony.records import Arrival, DueKind

CAME = date(2026, 5, 10)


def days(plan: tuple[PlannedDue, ...], kind: DueKind) -> list[tuple[int, int | None]]:
    return [
        ((due.day - CAME).days, None if due.until is None else (due.until - CAME).days)
        for due in plan
        if due.kind is kind
    ]


def test_a_nucleus_has_its_feed_looked_at_and_then_its_first_look() -> None:
    plan = arrival_plan(Arrival.NUCLEUS, CAME, fed=True)
    assert [due.kind for due in plan] == [DueKind.FEED_LOOK, DueKind.FIRST_LOOK]
    assert days(plan, DueKind.FEED_LOOK) == [(2, 3)]
    assert days(plan, DueKind.FIRST_LOOK) == [(7, None)]
    for question in ("is she laying", "is pollen coming in", "is comb being drawn"):
        assert question in plan[1].reason


def test_a_nucleus_without_feed_is_asked_whether_it_has_food() -> None:
    assert "no feed was given" in arrival_plan(Arrival.NUCLEUS, CAME)[0].reason


def test_a_package_differs_from_a_nucleus() -> None:
    plan = arrival_plan(Arrival.PACKAGE, CAME, fed=True)
    assert days(plan, DueKind.QUEEN_CAGE) == [(2, 3)]
    assert days(plan, DueKind.FEED_LOOK) == [(3, None), (6, None)]
    assert days(plan, DueKind.FIRST_LOOK) == [(7, 10)]
    assert days(plan, DueKind.LOOK) == [(28, None)]
    assert "feed them" in arrival_plan(Arrival.PACKAGE, CAME)[1].reason


def test_a_prime_swarm_is_looked_at_for_food_and_eggs() -> None:
    plan = arrival_plan(Arrival.SWARM, CAME, cast=False, fed=True)
    assert days(plan, DueKind.FIRST_LOOK) == [(7, 10)]
    assert "cast" not in plan[-1].reason
    assert "cast" in arrival_plan(Arrival.SWARM, CAME)[-1].reason


def test_a_cast_is_left_shut_until_there_can_be_eggs() -> None:
    plan = arrival_plan(Arrival.SWARM, CAME, cast=True)
    assert days(plan, DueKind.LEAVE_SHUT) == [(4, 13)]
    assert days(plan, DueKind.FIRST_LOOK) == [(14, 21)]


@pytest.mark.parametrize("arrival", [Arrival.NUCLEUS, Arrival.SPLIT])
def test_a_colony_without_a_laying_queen_is_left_shut_and_looked_at_after_four_weeks(
    arrival: Arrival,
) -> None:
    plan = arrival_plan(arrival, CAME, queenless=True)
    assert days(plan, DueKind.LEAVE_SHUT) == [(12, 27)]
    assert days(plan, DueKind.FIRST_LOOK) == [(28, 35)]


@pytest.mark.parametrize("arrival", [Arrival.BOUGHT, Arrival.SPLIT, Arrival.UNKNOWN])
def test_others_settle_for_a_week(arrival: Arrival) -> None:
    assert [due.kind for due in arrival_plan(arrival, CAME)] == [DueKind.FIRST_LOOK]
    assert [due.kind for due in arrival_plan(arrival, CAME, fed=True)] == [
        DueKind.FEED_LOOK,
        DueKind.FIRST_LOOK,
    ]


@pytest.mark.parametrize("arrival", Arrival)
@pytest.mark.parametrize("fed", [True, False])
@pytest.mark.parametrize("queenless", [True, False])
@pytest.mark.parametrize("cast", [True, False, None])
def test_every_plan_is_in_order_after_the_arrival_and_says_why(
    arrival: Arrival, fed: bool, queenless: bool, cast: bool | None
) -> None:
    plan = arrival_plan(arrival, CAME, fed=fed, queenless=queenless, cast=cast)
    assert list(plan) == sorted(plan, key=lambda due: due.day)
    assert DueKind.FIRST_LOOK in {due.kind for due in plan}
    for due in plan:
        assert due.day > CAME
        assert due.until is None or due.day < due.until < CAME + timedelta(days=40)
        assert due.reason
    shut = [due for due in plan if due.kind is DueKind.LEAVE_SHUT]
    for due in shut:
        assert due.until is not None
        inside = [
            look for look in plan if look.kind is not DueKind.LEAVE_SHUT and due.day <= look.day <= due.until
        ]
        assert not inside, "nothing is due while it is left shut"
