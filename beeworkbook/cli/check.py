"""`beeworkbook check`: whether a workbook is in order; each drawing is read, each total counted again."""

import argparse
import sys

from beeworkbook.cli.asking import opened, takes_workbook
from beeworkbook.cli.command import DONE, NOT_POSSIBLE, Command, Parser, Today
from beeworkbook.words import say, say_count


def _words(parser: Parser) -> None:
    takes_workbook(parser)


def _run(asked: argparse.Namespace, today: Today) -> int:
    with opened(asked.workbook, today) as book:
        found = book.check()
    for sentence in found:
        print(sentence)
    if not found:
        print(say("{path} is in order.", path=asked.workbook))
        return DONE
    many = say_count(
        len(found),
        "{path} is not in order: one thing was found.",
        "{path} is not in order: {n} things were found.",
        path=asked.workbook,
    )
    print(many, file=sys.stderr)
    return NOT_POSSIBLE


COMMAND = Command(
    "check",
    "Look a workbook through from end to end and say what is wrong; nothing is changed.",
    "beeworkbook check bees.beebook",
    _words,
    _run,
)
