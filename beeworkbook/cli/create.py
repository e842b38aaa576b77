"""`beeworkbook new`: an empty workbook."""

import argparse
from pathlib import Path

from beeworkbook.cli.asking import path
from beeworkbook.cli.command import DONE, Command, Parser, Today
from beeworkbook.words import say


def _words(parser: Parser) -> None:
    parser.add_argument("workbook", type=path, metavar="WORKBOOK", help=say("where to make it"))
    parser.add_argument("--title", default="", help=say("what to call it; the file's name if not said"))


def _run(asked: argparse.Namespace, today: Today) -> int:
    from beeworkbook.workbook.workbook import FILE_ENDING, Workbook

    path: Path = asked.workbook
    if not path.suffix:
        path = path.with_suffix(FILE_ENDING)
    Workbook.create(path, asked.title.strip() or path.stem, today=today).close()
    print(say("Made {path}.", path=path))
    return DONE


COMMAND = Command(
    "new",
    "Make an empty workbook.",
    'beeworkbook new bees.beebook --title "Home apiary"',
    _words,
    _run,
)
