"""Points of a season made by hand: amounts in dm², cells at 400 a dm²."""

from datetime import date

from beeworkbook.colony.figures import Amount, Doubt, VisitFigures
from beeworkbook.colony.records import Level, VisitId
from beeworkbook.colony.timeline import SeasonPoint


def amount(dm2: float) -> Amount:
    """So much brood."""
    return Amount(dm2 * 400, dm2)


def by_comb(
    day: str, eggs: float, open_: float, sealed: float, brood: float = 0.0, drone: float = 0.0
) -> SeasonPoint:
    """A visit that noted all combs."""
    dm2 = eggs + open_ + sealed + brood
    return SeasonPoint(
        date.fromisoformat(day),
        visit_id(day),
        Level.BY_COMB,
        eggs=amount(eggs),
        open=amount(open_),
        sealed=amount(sealed),
        brood=amount(brood),
        drone=amount(drone),
        worker=amount(dm2),
        doubt=Doubt(dm2 * 0.9, dm2 * 1.1),
    )


def by_line(day: str, dm2: float) -> SeasonPoint:
    """A visit of one line."""
    return SeasonPoint(
        date.fromisoformat(day),
        visit_id(day),
        Level.ONE_LINE,
        brood=amount(dm2),
        worker=amount(dm2),
        doubt=Doubt(dm2 * 0.8, dm2 * 1.2, coarse=True),
        stores_kg=7.0,
        stores_doubt=Doubt(5.0, 9.0, coarse=True),
        bees=9000.0,
        bees_doubt=Doubt(7000.0, 12000.0, coarse=True),
    )


def at_least(day: str, dm2: float) -> SeasonPoint:
    """A visit with combs missing."""
    return SeasonPoint(
        date.fromisoformat(day),
        visit_id(day),
        Level.BY_COMB,
        eggs=amount(0),
        open=amount(0),
        sealed=amount(dm2),
        brood=amount(0),
        drone=amount(0),
        worker=amount(dm2),
        doubt=Doubt(dm2 * 0.9, dm2 * 1.1, at_least=True),
    )


def not_opened(day: str) -> SeasonPoint:
    """A visit without a look inside."""
    return SeasonPoint(date.fromisoformat(day), visit_id(day), Level.NOT_OPENED)


def visit_id(day: str) -> VisitId:
    """An id by the day."""
    return VisitId(date.fromisoformat(day).toordinal())


def figures(point: SeasonPoint, seen: int = 11, hive: int = 11) -> VisitFigures:
    """The figures behind a point, as far as a chart asks for them."""
    return VisitFigures(
        point.visit_id, point.day, point.level, None, None, None, None, None, None, seen, hive
    )
