"""`beeworkbook totals`: what visits add up to, as CSV for a spreadsheet."""

import argparse
from datetime import date, timedelta

from beeworkbook.cli.asking import (
    colonies_named,
    opened,
    takes_colonies,
    takes_replace,
    takes_span,
    takes_workbook,
)
from beeworkbook.cli.command import DONE, Command, Parser, Today
from beeworkbook.cli.writing import new_text
from beeworkbook.words import say


def _words(parser: Parser) -> None:
    takes_workbook(parser)
    parser.add_argument("target", metavar="CSV", help=say("where to write it, - to show it"))
    parser.add_argument(
        "--by",
        choices=("visit", "side"),
        default="visit",
        help=say("a line a visit, or a line a side of a comb"),
    )
    takes_colonies(parser)
    takes_span(parser)
    takes_replace(parser)


def _run(asked: argparse.Namespace, today: Today) -> int:
    from beeworkbook.workbook.totals_csv import write_sides, write_visits

    write = write_visits if asked.by == "visit" else write_sides
    with opened(asked.workbook, today) as book:
        colony_ids = [colony.id for colony in colonies_named(book, asked.colony)]
        with new_text(asked.target, replace=asked.replace) as stream:
            lines = write(book.read, colony_ids, asked.since, day_after(asked.until), stream)
    if asked.target != "-":
        print(say("Wrote {lines} lines to {path}.", lines=lines, path=asked.target))
    return DONE


def day_after(last: date | None) -> date:
    """The first day that no longer counts; none is told by the end of time."""
    return date.max if last is None or last == date.max else last + timedelta(days=1)


COMMAND = Command(
    "totals",
    "Write the totals as CSV, blank where nothing was looked at.",
    "beeworkbook totals bees.beebook totals.csv --by side --colony Larch",
    _words,
    _run,
)
