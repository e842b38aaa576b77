"""`beeworkbook chart`: the brood of colonies over a season as a picture, PNG or SVG."""

import argparse
import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from beeworkbook.cli.asking import (
    colonies_named,
    opened,
    path,
    takes_colonies,
    takes_replace,
    takes_workbook,
)
from beeworkbook.cli.command import DONE, Command, CommandError, Parser, Today
from beeworkbook.cli.writing import new_file
from beeworkbook.colony.records import ColonyId
from beeworkbook.words import say

if TYPE_CHECKING:
    from beeworkbook.workbook.workbook import Workbook

_ENDINGS = (".png", ".svg")
_YEARS = range(1900, 2200)


def _words(parser: Parser) -> None:
    takes_workbook(parser)
    parser.add_argument(
        "picture", type=_picture, metavar="PICTURE", help=say("where to write it: .png or .svg")
    )
    takes_colonies(parser)
    parser.add_argument("--year", type=_year, help=say("the year; this one if not said"))
    parser.add_argument("--years", action="store_true", help=say("all years laid over one another"))
    parser.add_argument("--cells", action="store_true", help=say("brood in cells, not in dm²"))
    parser.add_argument("--stores", action="store_true", help=say("the stores too"))
    parser.add_argument("--bees", action="store_true", help=say("the bees too"))
    parser.add_argument("--black", action="store_true", help=say("in black only"))
    takes_replace(parser)


def _picture(text: str) -> Path:
    found = path(text)
    if found.suffix.lower() not in _ENDINGS:
        raise argparse.ArgumentTypeError(say("“{text}” ends neither in .png nor in .svg", text=text))
    return found


def _year(text: str) -> int:
    if not text.isdecimal() or int(text[:9]) not in _YEARS:
        raise argparse.ArgumentTypeError(say("“{text}” is not a year", text=text))
    return int(text)


@dataclass(frozen=True)
class Shown:
    """What is shown beside the brood, and how."""

    years: bool = False
    cells: bool = False
    stores: bool = False
    bees: bool = False
    colour: bool = True


def _run(asked: argparse.Namespace, today: Today) -> int:
    shown = Shown(asked.years, asked.cells, asked.stores, asked.bees, colour=not asked.black)
    year = asked.year or today().year
    with opened(asked.workbook, today) as book:
        colony_ids = tuple(colony.id for colony in colonies_named(book, asked.colony))
        if not colony_ids:
            raise CommandError(say("There is no colony in this workbook yet."))
        with new_file(asked.picture, replace=asked.replace) as stream:
            stream.write(draw_chart(book, colony_ids, year, asked.picture.suffix, shown))
    print(say("Wrote {path}.", path=asked.picture))
    return DONE


def draw_chart(
    book: "Workbook", colony_ids: tuple[ColonyId, ...], year: int, ending: str, shown: Shown
) -> bytes:
    """The chart of these colonies as a picture with this ending. Starts Qt, without a screen."""
    from beeworkbook.year.choice import Arrangement, Choice, Measure
    from beeworkbook.year.export import chart_picture

    choice = Choice(
        colony_ids,
        year,
        measure=Measure.CELLS if shown.cells else Measure.AREA,
        arrangement=Arrangement.YEARS if shown.years else Arrangement.SEASON,
        stores=shown.stores,
        bees=shown.bees,
    )
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / f"chart{ending}"
        chart_picture(book, choice, target, colour=shown.colour)
        return target.read_bytes()


COMMAND = Command(
    "chart",
    "Draw the brood of a season as a picture, PNG or SVG.",
    "beeworkbook chart bees.beebook larch.svg --colony Larch --year 2026 --stores",
    _words,
    _run,
)
