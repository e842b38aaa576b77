"""The command line: which command the words ask for, what it gives back, and what is said when it cannot.

Exit codes: 0 done, 1 not possible, 2 not understood. An error is one sentence on standard error.
"""

import os
import sys
from datetime import date, datetime
from functools import partial
from io import TextIOWrapper
from pathlib import Path
from typing import Final

from beeworkbook.cli.command import (
    NOT_POSSIBLE,
    NOT_UNDERSTOOD,
    Command,
    CommandError,
    NotUnderstoodError,
    Today,
)
from beeworkbook.words import say

_TODAY: Final = "--today"
_ENDING: Final = ".beebook"
_OPTIONS: Final = frozenset({"-h", "--help", "--version"})


def main(argv: list[str]) -> int:
    """Do what these words ask for; gives the exit code."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(
                errors="backslashreplace"
            )  # a console without these letters is no reason to stop
    try:
        return _ask(argv)
    except NotUnderstoodError as error:
        return _tell(str(error), NOT_UNDERSTOOD)
    except CommandError as error:
        return _tell(str(error), NOT_POSSIBLE)
    except BrokenPipeError:
        # Whoever read along has read enough: nothing more is to be written, not even at the end.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return NOT_POSSIBLE
    except KeyboardInterrupt:
        return _tell(say("Stopped."), NOT_POSSIBLE)
    except Exception as error:
        if not _is_told(error):
            raise
        return _tell(str(error), NOT_POSSIBLE)


def _is_told(error: Exception) -> bool:
    """Whether this is something the world did, worded for the person, and not a slip of ours."""
    from beeworkbook.workbook.errors import RefusedError, StoreError

    return isinstance(error, RefusedError | StoreError)


def _tell(sentence: str, code: int) -> int:
    print(f"beeworkbook: {sentence}", file=sys.stderr)
    return code


def _ask(argv: list[str]) -> int:
    words, today = _without_today(argv)
    first = words[0] if words else ""
    if not words or _names_workbook(first):
        from beeworkbook.cli.opening import open_window

        if len(words) > 1:
            text = say("“{word}” is too much: a workbook to open stands alone.", word=words[1])
            raise NotUnderstoodError(text)
        return open_window(Path(first) if first else None, today)
    if first in _OPTIONS:
        return _about(first)
    return _do(first, words[1:], today)


def _names_workbook(word: str) -> bool:
    return word.endswith(_ENDING) or (not word.startswith("-") and _is_file(word))


def _is_file(word: str) -> bool:
    try:
        return Path(word).is_file()
    except (OSError, ValueError):
        return False


def _without_today(argv: list[str]) -> tuple[list[str], Today]:
    """The words without --today and its day, and what tells today: that day, or the clock."""
    words = list(argv)
    for place, word in enumerate(argv):
        if word == "--":
            break
        if word == _TODAY or word.startswith(f"{_TODAY}="):
            typed = word.partition("=")[2] if "=" in word else "".join(argv[place + 1 : place + 2])
            del words[place : place + (1 if "=" in word else 2)]
            return words, partial(_same, _day(typed))
    return words, lambda: datetime.now().astimezone().date()


def _same(day: date) -> date:
    return day


def _day(typed: str) -> date:
    try:
        return date.fromisoformat(typed)
    except ValueError as error:
        text = say("“{text}” is not a day: write --today 2026-05-16.", text=typed)
        raise NotUnderstoodError(text) from error


def _about(option: str) -> int:
    if option == "--version":
        from beeworkbook import __version__

        print(f"beeworkbook {__version__}")
        return 0
    from beeworkbook.cli.commands import COMMANDS

    print(_help(COMMANDS))
    return 0


def _help(commands: dict[str, Command]) -> str:
    width = max(map(len, commands)) + 2
    lines = [
        say("usage: beeworkbook [--today DAY] [WORKBOOK]"),
        say("       beeworkbook [--today DAY] COMMAND ..."),
        "",
        say("Without a command the window opens, on this workbook or where it was left."),
        say("Where there is no screen, pictures, sheets and charts are written into a folder instead."),
        "",
        *(f"  {name.ljust(width)}{say(command.summary)}" for name, command in commands.items()),
        "",
        say("“beeworkbook COMMAND --help” says more, with an example. --today DAY is taken for today."),
        say("Example:"),
        "  beeworkbook bees.beebook",
    ]
    return "\n".join(lines)


def _do(name: str, words: list[str], today: Today) -> int:
    from beeworkbook.cli.commands import COMMANDS

    command = COMMANDS.get(name)
    if command is None:
        text = say(
            "“{word}” is neither a command nor a workbook that is there; see “beeworkbook --help”.", word=name
        )
        raise NotUnderstoodError(text)
    try:
        asked = command.parser().parse_args(words)
    except SystemExit as end:  # --help was shown
        return int(end.code or 0)
    return command.run(asked, today)
