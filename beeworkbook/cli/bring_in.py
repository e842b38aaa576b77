"""`beeworkbook import`: a workbook out of a document in the exchange format."""

import argparse
import sys

from beeworkbook.cli.asking import path
from beeworkbook.cli.command import DONE, Command, Parser, Today
from beeworkbook.words import say


def _words(parser: Parser) -> None:
    parser.add_argument("document", type=path, metavar="DOCUMENT", help=say("the JSON document"))
    parser.add_argument("workbook", type=path, metavar="WORKBOOK", help=say("where to make the workbook"))


def _run(asked: argparse.Namespace, _today: Today) -> int:
    from beeworkbook.workbook.exchange import import_book

    import_book(asked.document, asked.workbook, progress=tell_progress)
    end_progress()
    print(say("Made {path}.", path=asked.workbook))
    return DONE


def tell_progress(done: int, whole: int) -> None:
    """How far it is, in the line under the cursor; only where a person looks."""
    if sys.stderr.isatty():  # pragma: no cover - tests have no terminal
        print(f"\r{100 * done // max(1, whole)} %", end="", file=sys.stderr, flush=True)


def end_progress() -> None:
    """Leave the line of progress."""
    if sys.stderr.isatty():  # pragma: no cover - tests have no terminal
        print("\r     \r", end="", file=sys.stderr, flush=True)


COMMAND = Command(
    "import",
    "Make a workbook of a document in the exchange format; all of it or nothing.",
    "beeworkbook import bees.json bees.beebook",
    _words,
    _run,
)
