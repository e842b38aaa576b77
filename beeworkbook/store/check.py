"""A workbook looked through end to end: totals counted again, drawings read, stays held to each other.

Only reads. What is found is said in plain sentences; nothing is mended here.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations
from typing import Any, Final, TypeVar

from beeworkbook.colony.hive import Stay, overlap
from beeworkbook.colony.records import (
    RECORD_TYPES,
    FrameStay,
    Housing,
    OwnFrame,
    PartStay,
    Side,
)
from beeworkbook.comb.codec import DamagedCombError
from beeworkbook.comb.contents import Origin
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.store.database import Database
from beeworkbook.store.errors import DamagedWorkbookError
from beeworkbook.store.link import Link
from beeworkbook.store.lookup import find, own_type, record_of
from beeworkbook.store.rows import TABLE_NAMES
from beeworkbook.store.tallies import tally_row
from beeworkbook.store.texts import text as text_of
from beeworkbook.words import say

_S = TypeVar("_S", bound=Stay)
_MOST: Final = 1000
"""More findings than anyone reads; the rest is not looked for."""


class Trouble(StrEnum):
    """What kind of thing is wrong."""

    FILE = "file"
    RECORD = "record"
    REFERENCE = "reference"
    DRAWING = "drawing"
    TOTALS = "totals"
    TWICE = "twice"
    STAYS = "stays"


@dataclass(frozen=True)
class Finding:
    """One thing that is not as it should be, in a sentence."""

    trouble: Trouble
    text: str


def check(database: Database) -> tuple[Finding, ...]:
    """All that is wrong with a workbook; nothing if it is in order. It reads every drawing."""
    link = database.link
    found: list[Finding] = []
    with link.reading():
        for look in (_file, _records, _references, _sides, _twice, _stays):
            try:
                found.extend(finding for finding, _ in zip(look(link), range(_MOST), strict=False))
            except DamagedWorkbookError as error:
                found.append(
                    Finding(Trouble.FILE, say("{trouble} ({detail})", trouble=error, detail=error.detail))
                )
    return tuple(dict.fromkeys(found))


def _file(link: Link) -> Iterator[Finding]:
    for (said,) in link.rows("PRAGMA integrity_check"):
        if said != "ok":
            yield Finding(Trouble.FILE, say("The file is damaged: {detail}.", detail=said))


def _records(link: Link) -> Iterator[Finding]:
    for cls in RECORD_TYPES:
        for row in link.rows(text_of(f"all {TABLE_NAMES[cls]}")):
            try:
                record_of(link, cls, row)
            except DamagedWorkbookError as error:
                text = say("A record holds something that is not known: {detail}.", detail=error.detail)
                yield Finding(Trouble.RECORD, text)


def _references(link: Link) -> Iterator[Finding]:
    for table, row, to, _ in link.rows("PRAGMA foreign_key_check"):
        text = say(
            "Record {row} of “{table}” refers to a “{to}” that is not there.", row=row, table=table, to=to
        )
        yield Finding(Trouble.REFERENCE, text)


def _sides(link: Link) -> Iterator[Finding]:
    frames: dict[str, FrameType] = {own.id: own_type(own) for own in find(link, OwnFrame, {})} | dict(
        FRAME_TYPES
    )
    tallies: dict[Any, tuple[Any, ...]] = {row[0]: row[1:] for row in link.rows(text_of("all tally"))}
    drawn = {side_id for (side_id,) in link.rows("SELECT side_id FROM comb")}
    for (side_id,) in link.rows("SELECT id FROM side"):
        if side_id not in drawn:
            yield Finding(Trouble.DRAWING, say("Side {id} has no drawing.", id=side_id))
    for row in link.rows(text_of("all side")):
        side = record_of(link, Side, row)
        frame = frames.get(side.frame_type)
        if frame is None:
            text = say(
                "Side {id} is of a frame type that is not known: {type}.", id=side.id, type=side.frame_type
            )
            yield Finding(Trouble.DRAWING, text)
            continue
        yield from _counted_again(side, frame, tallies.get(side.id))


def _counted_again(side: Side, frame: FrameType, stored: tuple[Any, ...] | None) -> Iterator[Finding]:
    try:
        row = tally_row(frame, side)
    except DamagedCombError as error:
        text = say("The drawing of side {id} cannot be read: {reason}.", id=side.id, reason=error.reason)
        yield Finding(Trouble.DRAWING, text)
        return
    assumed = side.origin is Origin.ASSUMED
    if assumed and stored is not None:
        yield Finding(Trouble.TOTALS, say("Side {id} is only assumed, and yet it is counted.", id=side.id))
    elif not assumed and stored is None:
        yield Finding(Trouble.TOTALS, say("Side {id} has no totals.", id=side.id))
    elif not assumed and stored != row:
        yield Finding(Trouble.TOTALS, say("The totals of side {id} are not what is drawn.", id=side.id))


def _twice(link: Link) -> Iterator[Finding]:
    rows = link.rows(
        "SELECT visit_id, frame_id, face FROM side GROUP BY visit_id, frame_id, face HAVING count(*) > 1"
    )
    for visit_id, frame_id, face in rows:
        text = "Side {face} of frame {frame} is noted more than once in visit {visit}."
        yield Finding(Trouble.TWICE, say(text, face=face, frame=frame_id, visit=visit_id))


def _stays(link: Link) -> Iterator[Finding]:
    housings, parts = find(link, Housing, {}), find(link, PartStay, {})
    frames = find(link, FrameStay, {})
    asked: tuple[tuple[Iterable[Any], Callable[[Any], Any], str], ...] = (
        (housings, lambda stay: stay.colony_id, "Colony {id} lives in two hives on {day}."),
        (housings, lambda stay: stay.hive_id, "Two colonies live in hive {id} on {day}."),
        (parts, lambda stay: stay.part_id, "Part {id} stands in two places on {day}."),
        (
            parts,
            lambda stay: (stay.hive_id, stay.level),
            "Two parts stand at one level of a hive on {day} ({id}).",
        ),
        (frames, lambda stay: stay.frame_id, "Frame {id} hangs in two places on {day}."),
        (
            frames,
            lambda stay: (stay.part_id, stay.place),
            "Two frames hang in one place of a box on {day} ({id}).",
        ),
    )
    for stays, key, text in asked:
        for its_key, one, other in _overlapping(stays, key):
            day = max(one.since, other.since).isoformat()
            shown = ", ".join(map(str, its_key)) if isinstance(its_key, tuple) else its_key
            yield Finding(Trouble.STAYS, say(text, id=shown, day=day))


def _overlapping(stays: Iterable[_S], key: Callable[[_S], Any]) -> Iterator[tuple[Any, _S, _S]]:
    groups: defaultdict[Any, list[_S]] = defaultdict(list)
    for stay in stays:
        groups[key(stay)].append(stay)
    for its_key, group in groups.items():
        for one, other in combinations(group, 2):
            if overlap(one, other):
                yield its_key, one, other
