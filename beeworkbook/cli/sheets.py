"""`beeworkbook sheets`: inspection sheets as PDF, blank to take along, filled to keep, or a round's."""

import argparse
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

from beeworkbook.cli.asking import (
    apiary_named,
    colonies_named,
    day,
    opened,
    path,
    takes_colonies,
    takes_replace,
    takes_workbook,
)
from beeworkbook.cli.command import DONE, Command, CommandError, Parser, Today
from beeworkbook.cli.visits import drawn_visit
from beeworkbook.cli.writing import new_file
from beeworkbook.colony.sheet_models import LOOSE_CODE
from beeworkbook.papers.options import Paper, PaperOptions
from beeworkbook.words import say, say_count

if TYPE_CHECKING:
    from beeworkbook.colony.records import ApiaryId, Colony
    from beeworkbook.colony.sheet_models import CombSheetModel
    from beeworkbook.papers.field_map import FieldMap
    from beeworkbook.workbook.workbook import Workbook

_PAPERS = {paper.value.casefold(): paper for paper in Paper}


def _words(parser: Parser) -> None:
    parser.add_argument(
        "kind",
        choices=("blank", "filled", "round"),
        help=say("blank or filled comb sheets, or the round sheet of an apiary"),
    )
    takes_workbook(parser)
    parser.add_argument("pdf", type=path, metavar="PDF", help=say("where to write it"))
    takes_colonies(parser)
    parser.add_argument("--apiary", metavar="NAME", help=say("the apiary, where there are several"))
    parser.add_argument(
        "--day",
        type=day,
        metavar="DAY",
        help=say(
            "the day of the sheet; a filled one shows that day’s visit, or the last before it with combs"
        ),
    )
    parser.add_argument(
        "--paper",
        type=_paper,
        default=Paper.A4,
        metavar="PAPER",
        help=say("A4, A5 or Letter; A4 if not said"),
    )
    parser.add_argument("--supers", action="store_true", help=say("blank sheets of the supers too"))
    parser.add_argument("--black", action="store_true", help=say("in black only"))
    parser.add_argument("--no-places", action="store_true", help=say("leave place names off"))
    parser.add_argument(
        "--field-maps",
        type=path,
        metavar="FOLDER",
        help=say("write where the fields of each comb sheet lie, as JSON, into this folder"),
    )
    parser.add_argument(
        "--loose",
        action="store_true",
        help=say(
            "do not keep the comb sheets in the workbook, e.g. while a window has it open; "
            "a loose sheet cannot be read back"
        ),
    )
    takes_replace(parser)


def _paper(text: str) -> Paper:
    found = _PAPERS.get(text.casefold())
    if found is None:
        words = say("“{text}” is no paper: {papers}", text=text, papers=", ".join(_PAPERS))
        raise argparse.ArgumentTypeError(words)
    return found


def _run(asked: argparse.Namespace, today: Today) -> int:
    options = PaperOptions(asked.paper, colour=not asked.black, place_names=not asked.no_places)
    if asked.kind == "round":
        with opened(asked.workbook, today) as book, new_file(asked.pdf, replace=asked.replace) as stream:
            print_round(book, apiary_named(book, asked.apiary).id, asked.day or today(), options, stream)
        print(say("Wrote {path}.", path=asked.pdf))
        return DONE
    with _opened_to_keep(asked, today) as book:
        models = _models(book, asked, today)
        if asked.loose:  # a code of the workbook's own would be given to another sheet later
            models = tuple(replace(model, code=LOOSE_CODE) for model in models)
        with new_file(asked.pdf, replace=asked.replace) as stream:
            maps = print_combs(models, options, stream)
        if not asked.loose:
            keep_sheets(book, models, maps, options.paper)
    _write_maps(asked.field_maps, maps, replace=asked.replace)
    one, several = "Wrote the sheet of one colony to {path}.", "Wrote the sheets of {n} colonies to {path}."
    many = say_count(len(models), one, several, path=asked.pdf)
    print(many)
    return DONE


@contextmanager
def _opened_to_keep(asked: argparse.Namespace, today: Today) -> "Iterator[Workbook]":
    """The workbook, to be written: a sheet is kept with its fields, so that it can be read back one day.

    A loose one is not kept. Errors: CommandError if a window has the workbook open; StoreError.
    """
    from beeworkbook.workbook.errors import AlreadyOpenError

    try:
        with opened(asked.workbook, today, for_looking=asked.loose) as book:
            yield book
    except AlreadyOpenError as error:
        hint = say("With --loose a sheet is printed all the same, and not kept.")
        raise CommandError(f"{error} {hint}") from error


def _models(book: "Workbook", asked: argparse.Namespace, today: Today) -> "tuple[CombSheetModel, ...]":
    """The sheets asked for. Errors: CommandError if there is none."""
    on = asked.day or today()
    colonies = colonies_named(book, asked.colony) if asked.colony else _standing(book, asked.apiary, on)
    blank = asked.kind == "blank"
    made = [
        (
            colony,
            blank_model(book, colony, on, supers=asked.supers) if blank else filled_model(book, colony, on),
        )
        for colony in colonies
    ]
    missing = [colony.name for colony, model in made if model is None]
    if asked.colony and missing:
        names = ", ".join(missing)
        raise CommandError(say("There is nothing to print of {names} on {day}.", names=names, day=on))
    models = tuple(model for _, model in made if model is not None)
    if not models:
        raise CommandError(say("There is no colony to print on {day}.", day=on))
    return models


def _standing(book: "Workbook", apiary: str | None, on: date) -> "tuple[Colony, ...]":
    """The colonies of an apiary in stand order, or of all apiaries."""
    apiaries = book.read.apiaries() if apiary is None else (apiary_named(book, apiary),)
    return tuple(
        place.colony
        for each in apiaries
        for place in book.read.standing(each.id, on)
        if place.colony is not None
    )


def blank_model(
    book: "Workbook", colony: "Colony", on: date, *, supers: bool = False
) -> "CombSheetModel | None":
    """A blank sheet of a colony, or None where it lives in no hive that day."""
    from beeworkbook.workbook.sheets import blank_sheet

    return blank_sheet(book, colony.id, on, supers=supers)


def filled_model(book: "Workbook", colony: "Colony", on: date) -> "CombSheetModel | None":
    """The filled sheet of that day's visit, or of the last before it with combs; None if there is none."""
    from beeworkbook.workbook.sheets import filled_sheet

    visit = drawn_visit(book, colony.id, on)
    return filled_sheet(book, visit.id) if visit else None


def print_combs(
    models: "tuple[CombSheetModel, ...]", options: PaperOptions, stream: BinaryIO
) -> "tuple[FieldMap, ...]":
    """Comb sheets one after another; gives where their fields lie."""
    from beeworkbook.papers.comb_sheet import comb_sheets

    return comb_sheets(models, options, stream)


def print_round(
    book: "Workbook", apiary_id: "ApiaryId", on: date, options: PaperOptions, stream: BinaryIO
) -> None:
    """The round sheet of an apiary."""
    from beeworkbook.papers.round_sheet import round_sheet
    from beeworkbook.workbook.sheets import round_sheet_of

    round_sheet(round_sheet_of(book, apiary_id, on), options, stream)


def keep_sheets(
    book: "Workbook", models: "tuple[CombSheetModel, ...]", maps: "tuple[FieldMap, ...]", paper: Paper
) -> None:
    """Keep what was printed with its field map."""
    from beeworkbook.workbook.edits.papers import KeepSheet
    from beeworkbook.workbook.sheets import kept_sheets

    for sheet in kept_sheets(models, maps, paper.value, book.today):
        book.do(KeepSheet(sheet))


def _write_maps(folder: Path | None, maps: "tuple[FieldMap, ...]", *, replace: bool) -> None:
    for number, each in enumerate(maps if folder else (), 1):
        path = (folder or Path()) / f"field-map-{number}.json"
        with new_file(path, replace=replace) as stream:
            stream.write(each.to_json().encode())


COMMAND = Command(
    "sheets",
    "Print inspection sheets to PDF: blank, filled, or a round's.",
    "beeworkbook sheets blank bees.beebook blank.pdf --colony Larch --paper A4 --black",
    _words,
    _run,
)
