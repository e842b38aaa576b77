"""`beeworkbook export`: a whole workbook as one document in the exchange format."""

import argparse
import sys
from pathlib import Path

from beeworkbook.cli.asking import opened, takes_replace, takes_workbook
from beeworkbook.cli.bring_in import end_progress, tell_progress
from beeworkbook.cli.command import DONE, Command, Parser, Today
from beeworkbook.cli.writing import new_file
from beeworkbook.words import say


def _words(parser: Parser) -> None:
    takes_workbook(parser)
    parser.add_argument("document", metavar="DOCUMENT", help=say("where to write it, - to show it"))
    takes_replace(parser)


def _run(asked: argparse.Namespace, today: Today) -> int:
    from beeworkbook.workbook.exchange import write_document

    with opened(asked.workbook, today) as book:
        if asked.document == "-":
            write_document(book.read, sys.stdout.buffer)
            return DONE
        with new_file(Path(asked.document), replace=asked.replace) as stream:
            write_document(book.read, stream, progress=tell_progress)
    end_progress()
    print(say("Wrote {path}.", path=asked.document))
    return DONE


COMMAND = Command(
    "export",
    "Write a whole workbook as one JSON document, without loss.",
    "beeworkbook export bees.beebook bees.json",
    _words,
    _run,
)
