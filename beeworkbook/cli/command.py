"""What every command is made of: its name, a line about it, an example, its words and what it does."""

import argparse
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import NoReturn

from beeworkbook.words import say

DONE = 0
NOT_POSSIBLE = 1
NOT_UNDERSTOOD = 2

Today = Callable[[], date]


class CommandError(Exception):
    """What was asked is not possible; the text is the sentence the person reads."""


class NotUnderstoodError(Exception):
    """What was typed is not understood; the text is the sentence the person reads."""


class Parser(argparse.ArgumentParser):
    """A parser that says in one sentence what it does not understand, and does not end the program."""

    def error(self, message: str) -> NoReturn:
        """Errors: NotUnderstoodError, always."""
        sentence = message[:1].upper() + message[1:].rstrip(".")
        raise NotUnderstoodError(
            say("{sentence}; see “{command} --help”.", sentence=sentence, command=self.prog)
        )


@dataclass(frozen=True)
class Command:
    """One command: `words` tells a parser what it takes, `run` does it and gives the exit code."""

    name: str
    summary: str
    example: str
    words: Callable[[Parser], None]
    run: Callable[[argparse.Namespace, Today], int]

    def parser(self) -> Parser:
        """The parser of its words, with its example under the help."""
        parser = Parser(
            prog=f"beeworkbook {self.name}",
            description=say(self.summary),
            epilog=say("Example:") + f"\n  {self.example}",
            formatter_class=argparse.RawDescriptionHelpFormatter,
            allow_abbrev=False,
        )
        self.words(parser)
        return parser
