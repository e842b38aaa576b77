"""`beeworkbook season`: a colony's visits as a table for the eye, or as JSON in full figures."""

import argparse
import json
from typing import TYPE_CHECKING, Any

from beeworkbook.cli.asking import colonies_named, opened, takes_span, takes_workbook
from beeworkbook.cli.command import DONE, Command, Parser, Today
from beeworkbook.cli.table import table
from beeworkbook.cli.totals import day_after
from beeworkbook.colony.figures import Amount
from beeworkbook.colony.timeline import SeasonPoint
from beeworkbook.words import say, two_figures

if TYPE_CHECKING:
    from beeworkbook.colony.records import Colony
    from beeworkbook.workbook.workbook import Workbook


def _words(parser: Parser) -> None:
    takes_workbook(parser)
    parser.add_argument("colony", metavar="COLONY", help=say("the colony's name"))
    takes_span(parser)
    parser.add_argument("--json", action="store_true", help=say("as JSON, in full figures"))


def _run(asked: argparse.Namespace, today: Today) -> int:
    with opened(asked.workbook, today) as book:
        (colony,) = colonies_named(book, [asked.colony])
        points = _points(book, colony, asked)
    if asked.json:
        held = {"colony": colony.name, "visits": [_plain(point) for point in points]}
        print(json.dumps(held, ensure_ascii=False, indent=1))
        return DONE
    headings = (
        say("day"),
        say("looked"),
        say("eggs"),
        say("open"),
        say("sealed"),
        say("drone"),
        say("brood dm²"),
        say("combs"),
        say("worth"),
        say("stores kg"),
        say("bees"),
    )
    print(table(headings, map(_row, points), right=range(2, len(headings))))
    print(say("Cells and dm² to two figures; ≥ combs are missing, ~ said in a line; blank is not looked at."))
    return DONE


def _points(book: "Workbook", colony: "Colony", asked: argparse.Namespace) -> tuple[SeasonPoint, ...]:
    from beeworkbook.colony.timeline import season
    from beeworkbook.workbook.story import season_figures

    found = season_figures(book.read, colony.id, asked.since, day_after(asked.until))
    return season(figures for _, figures in found)


def _row(point: SeasonPoint) -> tuple[str, ...]:
    sign = "≥ " if point.at_least else "~ " if point.coarse else ""
    return (
        point.day.isoformat(),
        say(point.level.value.replace("_", " ")),
        *(_cells(amount) for amount in (point.eggs, point.open, point.sealed, point.drone)),
        "" if point.worker is None else sign + two_figures(point.worker.dm2),
        "" if point.combs is None else str(point.combs),
        _said(point.worth),
        _said(point.stores_kg),
        _said(point.bees),
    )


def _cells(amount: Amount | None) -> str:
    return "" if amount is None else two_figures(amount.cells)


def _said(value: float | None) -> str:
    return "" if value is None else two_figures(value)


def _plain(point: SeasonPoint) -> dict[str, Any]:
    amounts = {
        "eggs": point.eggs,
        "open": point.open,
        "sealed": point.sealed,
        "brood_no_age": point.brood,
        "drone": point.drone,
        "worker_brood": point.worker,
    }
    held: dict[str, Any] = {
        "day": point.day.isoformat(),
        "visit": int(point.visit_id),
        "level": point.level.value,
    }
    for name, amount in amounts.items():
        held[f"{name}_cells"] = None if amount is None else amount.cells
        held[f"{name}_dm2"] = None if amount is None else amount.dm2
    held |= {
        "low_dm2": point.low_dm2,
        "high_dm2": point.high_dm2,
        "coarse": point.coarse,
        "at_least": point.at_least,
        "combs": point.combs,
        "worth": point.worth,
        "stores_kg": point.stores_kg,
        "bees": point.bees,
    }
    return held


COMMAND = Command(
    "season",
    "Print a colony's season, a line a visit.",
    "beeworkbook season bees.beebook Larch --since 2026-03-01",
    _words,
    _run,
)
