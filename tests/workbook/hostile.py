"""A small document cut out of the sample, and seeded ways to spoil it; used by test_hostile_documents.py."""

import copy
import json
from collections.abc import Callable, Iterable, Iterator
from random import Random
from typing import Any, Final

from beeworkbook.resources import sample_folder
from beeworkbook.workbook.exchange_form import TABLE_NAMES
from beeworkbook.workbook.exchange_rules import references

Json = Any
Tables = dict[str, list[dict[str, Json]]]

_MOST_OF_A_TABLE: Final = 1
_TABLE_OF: Final = {cls.__name__: name for cls, name in TABLE_NAMES.items()}
_REFERENCES: Final = {name: references(cls) for cls, name in TABLE_NAMES.items()}

NASTY: Final[tuple[Json, ...]] = (
    None,
    True,
    0,
    -1,
    1,
    2,
    10**9,
    2**53 + 1,
    10**39,
    1.5,
    -0.0,
    1e308,
    5e-324,
    "",
    " ",
    "x",
    "\0",
    "\ud800",
    "ąęλж🌻\u2028\u202e",
    "x" * 5000,
    "0001-01-01",
    "9999-12-31",
    "8999-12-31",
    "2026-02-30",
    "2026-05-16T14:30:00Z",
    "99:99:99",
    "1000000000S",
    "999999S" * 2000,
    "\n" * 3000,
    "S" * 10_000,
    "'; DROP TABLE visit; --",
    "../../etc/passwd",
    "=1+1",
    [],
    {},
    [[[[[[[[[[]]]]]]]]]],
    {"a": {"b": {"c": {"d": {"e": {"f": {"g": {"h": 1}}}}}}}},
)
"""Values that fit some fields and break others."""


def small_document() -> dict[str, Json]:
    """A few records of every table, and all that those refer to: the sample's, and two it has none of."""
    document: dict[str, Json] = json.loads((sample_folder() / "sample.json").read_text(encoding="utf-8"))
    tables: Tables = document["records"]
    tables["own_frame"].append(
        {"id": "ours", "name": "Ours", "inside_width_mm": 340, "inside_height_mm": 210}
    )
    tables["sheet"].append(_sheet(tables["visit"][0]))
    wanted = {(name, record["id"]) for name in tables for record in tables[name][:_MOST_OF_A_TABLE]}
    by_id = {(name, record["id"]): record for name in tables for record in tables[name]}
    waiting = list(wanted)
    while waiting:
        for found in _referred(waiting[-1][0], by_id[waiting.pop()]):
            if found not in wanted:
                wanted.add(found)
                waiting.append(found)
    document["records"] = {
        name: [record for record in records if (name, record["id"]) in wanted]
        for name, records in tables.items()
    }
    return document


def _sheet(visit: dict[str, Json]) -> dict[str, Json]:
    known = {"colony_id": visit["colony_id"], "visit_id": visit["id"], "day": visit["day"]}
    return {"id": 1, "code": "ACDE7", "revision": 1, "pages": 2, "paper": "A4", "field_map": "{}", **known}


def _referred(table: str, record: dict[str, Json]) -> Iterator[tuple[str, Json]]:
    for field, target in _REFERENCES[table].items():
        if record.get(field) is not None:
            yield _TABLE_OF[target], record[field]


def spoiled_value(document: dict[str, Json], dice: Random) -> bytes:
    """The document with one to three values changed, taken away, doubled or exchanged."""
    spoiled = copy.deepcopy(document)
    for _ in range(dice.choice((1, 1, 2, 3))):
        tables = list(_tables(spoiled)) or [spoiled]
        holder = dice.choice(tables)
        if isinstance(holder, list) and holder and dice.random() < 0.9:
            holder = dice.choice(holder)
        if isinstance(holder, dict | list):
            dice.choice(_WAYS)(holder, dice)
    return json.dumps(spoiled, ensure_ascii=dice.random() < 0.5).encode("utf-8", "surrogatepass")


def _tables(document: Json) -> Iterable[Json]:
    records = document.get("records") if isinstance(document, dict) else None
    held = (
        [*records.values()] if isinstance(records, dict) else [*records] if isinstance(records, list) else []
    )
    return [table for table in held if isinstance(table, dict | list)]


def _places(holder: Json) -> list[Any]:
    return list(holder) if isinstance(holder, dict) else list(range(len(holder)))


def _replace(holder: Json, dice: Random) -> None:
    places = _places(holder)
    if places:
        holder[dice.choice(places)] = copy.deepcopy(dice.choice(NASTY))


def _take_away(holder: Json, dice: Random) -> None:
    places = _places(holder)
    if places:
        del holder[dice.choice(places)]


def _double(holder: Json, dice: Random) -> None:
    places = _places(holder)
    if places and isinstance(holder, list):
        holder.insert(dice.randrange(len(holder) + 1), copy.deepcopy(holder[dice.choice(places)]))
    elif places:
        holder[f"{dice.choice(places)}{dice.choice('s _')}"] = 1


def _exchange(holder: Json, dice: Random) -> None:
    places = _places(holder)
    if len(places) > 1:
        one, other = dice.sample(places, 2)
        holder[one], holder[other] = holder[other], holder[one]


def _nudge(holder: Json, dice: Random) -> None:
    """A number a little off: an id that leads elsewhere, a place that is taken."""
    numbers = [place for place in _places(holder) if type(holder[place]) in {int, float}]
    if numbers:
        holder[dice.choice(numbers)] += dice.choice((-2, -1, 1, 2, 0.5))


_WAYS: Final[tuple[Callable[[Json, Random], None], ...]] = (
    _replace,
    _replace,
    _take_away,
    _double,
    _exchange,
    _nudge,
)


def spoiled_bytes(document: bytes, dice: Random) -> bytes:
    """The document with one to four spots damaged: bytes changed, put in, taken away, doubled, or cut off."""
    spoiled = bytearray(document)
    for _ in range(dice.randint(1, 4)):
        at = dice.randrange(len(spoiled) + 1)
        length = dice.choice((1, 1, 2, 5, 40, 400))
        way = dice.randrange(6)
        if way == 0:
            spoiled[at : at + 1] = bytes((dice.randrange(256),))
        elif way == 1:
            spoiled[at:at] = dice.choice(_BITS)
        elif way == 2:
            del spoiled[at : at + length]
        elif way == 3:
            spoiled[at:at] = spoiled[at : at + length]
        elif way == 4:
            digits = dice.choice((b"9", b"0", b"1e"))
            spoiled[at : at + 1] = digits * dice.choice((1, 20, 5000))
        elif dice.random() < 0.3:
            del spoiled[at:]
    return bytes(spoiled)


_BITS: Final = (
    b'"',
    b"\\",
    b"{",
    b"}",
    b"[",
    b"]",
    b",",
    b":",
    b"null",
    b"NaN",
    b"-Infinity",
    b"\\ud800",
    b"\\u0000",
    b"\xef\xbb\xbf",
    b"\xc3",
    b"\xed\xa0\x80",
    b"\xf4\x90\x80\x80",
    b"\x00",
    b"[" * 2000,
    b'{"a":' * 2000,
    b" " * 70_000,
)
"""What breaks a document: signs, half escapes, half characters, a byte order mark, a chunk of nothing."""
