"""Words that several commands take and how each is read: a workbook, colonies, an apiary, a frame, a day."""

import argparse
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from beeworkbook.cli.command import CommandError, Parser, Today
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.words import say

if TYPE_CHECKING:
    from beeworkbook.colony.records import Apiary, Colony
    from beeworkbook.workbook.workbook import Workbook

_Named = TypeVar("_Named", "Colony", "Apiary")


def day(text: str) -> date:
    """A day as it is typed. Errors: ArgumentTypeError, a sentence."""
    try:
        return date.fromisoformat(text)
    except ValueError as error:
        words = say("“{text}” is not a day: write it as 2026-05-16", text=text)
        raise argparse.ArgumentTypeError(words) from error


def path(text: str) -> Path:
    """A path as it is typed. Errors: ArgumentTypeError, a sentence."""
    if not text or "\0" in text:
        raise argparse.ArgumentTypeError(say("“{text}” is no path", text=text))
    return Path(text)


def frame(text: str) -> FrameType:
    """A shipped frame type by its id. Errors: ArgumentTypeError, a sentence."""
    found = FRAME_TYPES.get(text.casefold())
    if found is None:
        words = say("“{text}” is no frame type: “beeworkbook frames” lists them", text=text)
        raise argparse.ArgumentTypeError(words)
    return found


def takes_workbook(parser: Parser) -> None:
    """The first word is a workbook."""
    parser.add_argument("workbook", type=path, metavar="WORKBOOK", help=say("the workbook's file"))


def takes_colonies(parser: Parser) -> None:
    """Colonies may be named, as often as there are."""
    parser.add_argument(
        "--colony",
        action="append",
        default=[],
        metavar="NAME",
        help=say("a colony by its name; may be said again for another"),
    )


def takes_span(parser: Parser) -> None:
    """A first and a last day may be named."""
    parser.add_argument("--since", type=day, default=date.min, metavar="DAY", help=say("the first day"))
    parser.add_argument("--until", type=day, default=None, metavar="DAY", help=say("the last day"))


def takes_replace(parser: Parser) -> None:
    """A file that is there may be written over."""
    parser.add_argument("--replace", action="store_true", help=say("write over a file that is there"))


@contextmanager
def opened(path: Path, today: Today, *, for_looking: bool = True) -> "Iterator[Workbook]":
    """The workbook, open for looking unless said otherwise, and closed at the end.

    Errors: StoreError with a sentence.
    """
    from beeworkbook.workbook.workbook import Workbook

    book = Workbook.open(path, today=today, read_only=for_looking)
    try:
        yield book
    finally:
        book.close()


def colonies_named(book: "Workbook", names: Iterable[str]) -> "tuple[Colony, ...]":
    """The colonies of these names, in the order they were said; all of them if none was.

    Errors: CommandError if there is none of a name, or two.
    """
    from beeworkbook.colony.records import Colony

    held = book.read.find(Colony)
    wanted = tuple(names)
    if not wanted:
        return held
    return tuple(_one(name, held, say("colony")) for name in wanted)


def apiary_named(book: "Workbook", name: str | None) -> "Apiary":
    """The apiary of this name; the only one if none was said. Errors: CommandError."""
    held = book.read.apiaries()
    if name is not None:
        return _one(name, held, say("apiary"))
    if len(held) == 1:
        return held[0]
    if not held:
        raise CommandError(say("There is no apiary in this workbook yet."))
    names = ", ".join(apiary.name for apiary in held)
    raise CommandError(say("Say which apiary with --apiary: {names}.", names=names))


def _one(name: str, held: Iterable[_Named], what: str) -> _Named:
    """The only one of this name. Errors: CommandError if there is none, or two."""
    held = tuple(held)
    found = [each for each in held if each.name.casefold() == name.strip().casefold()]
    if len(found) == 1:
        return found[0]
    if found:
        raise CommandError(say("There are two of the name {name}; rename one first.", name=name))
    names = ", ".join(each.name for each in held) or say("none")
    raise CommandError(
        say("There is no {what} of the name {name}; there are: {names}.", what=what, name=name, names=names)
    )
