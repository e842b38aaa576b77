"""Documents spoiled by the thousand: each is refused with its place or taken in whole, and leaves nothing."""

import json
import os
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from random import Random

import pytest

from beeworkbook.colony.records import Side
from beeworkbook.store import link
from beeworkbook.workbook.exchange import import_book, write_document
from beeworkbook.workbook.exchange_form import TABLE_NAMES
from beeworkbook.workbook.exchange_read import ExchangeError
from beeworkbook.workbook.workbook import Workbook
from tests.workbook.hostile import small_document, spoiled_bytes, spoiled_value
from tests.workbook.keeping import LATER

NUMBER = 600
"""Of each way of spoiling; a seed each, so that what fails can be made again."""


@pytest.fixture
def carefree_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nobody cuts the power in these tests, so that nothing waits for the disk."""
    pragmas = tuple(pragma.replace("FULL", "OFF") for pragma in link._PRAGMAS)
    monkeypatch.setattr(link, "_PRAGMAS", pragmas)
    monkeypatch.setattr(os, "fsync", lambda _handle: None)


@pytest.fixture(scope="module")
def document() -> dict[str, object]:
    return small_document()


def _taken_in(folder: Path, data: bytes) -> bool:
    """Whether a document was taken in. A refusal names a place and leaves nothing behind."""
    source, target = folder / "document.json", folder / "in.beebook"
    source.write_bytes(data)
    refusal = None
    try:
        import_book(source, target)
    except ExchangeError as error:
        refusal = error
    left = {path.name for path in folder.iterdir()}
    if refusal is None:
        assert left == {source.name, target.name}
        return True
    assert left == {source.name}
    assert refusal.place
    assert refusal.reason
    assert str(refusal).endswith("Nothing was taken in.")
    return False


def _is_whole(folder: Path, data: bytes) -> None:
    """Every record of the document is in the workbook, and it goes out and in again the same."""
    target, again = folder / "in.beebook", folder / "again.json"
    records = json.loads(data)["records"]
    with Workbook.open(target, today=LATER, read_only=True) as book:
        held = {name: len(book.read.find(cls)) for cls, name in TABLE_NAMES.items()}
        assert held == {name: len(found) for name, found in records.items()}
        with again.open("wb") as stream:
            write_document(book.read, stream)
    target.unlink()
    first = again.read_bytes()
    import_book(again, target)
    with Workbook.open(target, today=LATER, read_only=True) as book, again.open("wb") as stream:
        write_document(book.read, stream)
    assert again.read_bytes() == first
    again.unlink()
    target.unlink()


def _spoiled(document: dict[str, object], way: str) -> Iterator[bytes]:
    written = json.dumps(document, ensure_ascii=False).encode()
    for seed in range(NUMBER):
        dice = Random(seed)
        yield spoiled_value(document, dice) if way == "values" else spoiled_bytes(written, dice)


@pytest.mark.usefixtures("carefree_disk")
@pytest.mark.parametrize("way", ["values", "bytes"])
def test_a_spoiled_document_is_refused_with_its_place_or_taken_in_whole(
    document: dict[str, object], tmp_path: Path, way: str
) -> None:
    outcomes: Counter[bool] = Counter()
    for data in _spoiled(document, way):
        taken = _taken_in(tmp_path, data)
        outcomes[taken] += 1
        if not taken:
            continue
        if outcomes[True] % 10 == 1:
            _is_whole(tmp_path, data)
        else:
            (tmp_path / "in.beebook").unlink()
    # Else nothing was tried: most that is spoiled is refused, and some of it is still a document.
    assert outcomes[False] > NUMBER / 2
    assert outcomes[True] > NUMBER / 100


def test_the_document_itself_is_taken_in_whole(document: dict[str, object], tmp_path: Path) -> None:
    data = json.dumps(document).encode()
    assert all(records for records in json.loads(data)["records"].values())
    assert _taken_in(tmp_path, data)
    with Workbook.open(tmp_path / "in.beebook", today=LATER) as book:
        assert book.check() == ()
        assert book.read.find(Side)
    _is_whole(tmp_path, data)


WRITTEN = json.dumps(small_document(), ensure_ascii=False).encode()
HEAD = b'{"format": "beeworkbook-exchange", "version": 1, "records": '

HOSTILE = {
    "a hundred thousand lists": (b"[" * 100_000, "the start"),
    "a hundred thousand lists within": (HEAD + b"[" * 100_000, "records"),
    "a hundred thousand objects within a record": (
        WRITTEN.replace(b'"apiary": [{"id": 1', b'"apiary": [{"id": ' + b'{"id": ' * 100_000, 1),
        "records.apiary[0].id",
    ),
    "a number of five thousand digits": (
        WRITTEN.replace(b'"version": 1', b'"version": ' + b"1" * 5000, 1),
        "version",
    ),
    "an id of five thousand digits": (
        WRITTEN.replace(b'"apiary": [{"id": 1', b'"apiary": [{"id": ' + b"9" * 5000, 1),
        "records.apiary[0].id",
    ),
    "not a number": (
        WRITTEN.replace(b'"apiary": [{"id": 1', b'"apiary": [{"id": NaN', 1),
        "records.apiary[0].id",
    ),
    "endless": (
        WRITTEN.replace(b'"apiary": [{"id": 1', b'"apiary": [{"id": Infinity', 1),
        "records.apiary[0].id",
    ),
    "a key said twice": (
        WRITTEN.replace(b'"apiary": [{"id": 1', b'"apiary": [{"id": 1, "id": 1', 1),
        "records.apiary[0].id",
    ),
    "a table said twice": (WRITTEN.replace(b'"apiary": ', b'"apiary": [], "apiary": ', 1), "records.stand"),
    "an unknown table": (WRITTEN.replace(b'"apiary": ', b'"wishes": [], "apiary": ', 1), "records.apiary"),
    "a later version": (WRITTEN.replace(b'"version": 1', b'"version": 2', 1), "version"),
    "another format": (WRITTEN.replace(b"beeworkbook-exchange", b"something-else", 1), "format"),
    "half a character": (
        WRITTEN.replace(b'"apiary": [{"id": 1, "name": "', b'"apiary": [{"id": 1, "name": "\\udc00', 1),
        "records.apiary[0].name",
    ),
    "a byte order mark": (b"\xef\xbb\xbf" + WRITTEN, "the start"),
    "sixteen bits a letter": (WRITTEN.decode().encode("utf-16"), "the start"),
    "a letter that breaks off": (WRITTEN[:-400] + b"\xc3", "records."),
    "a list at the top": (b"[" + WRITTEN + b"]", "the start"),
    "a text at the top": (b'"' + b"x" * 1000 + b'"', "the start"),
    "nothing": (b"", "the start"),
    "zeroes": (b"\0" * 100_000, "the start"),
    "two documents": (WRITTEN + WRITTEN, "the end"),
    "half of it": (WRITTEN[: len(WRITTEN) // 2], "records"),
}


@pytest.mark.parametrize("case", HOSTILE)
def test_a_hostile_document_is_refused_with_its_place_and_leaves_nothing(tmp_path: Path, case: str) -> None:
    data, place = HOSTILE[case]
    assert data != WRITTEN
    source, target = tmp_path / "document.json", tmp_path / "in.beebook"
    source.write_bytes(data)
    with pytest.raises(ExchangeError) as refusal:
        import_book(source, target)
    assert refusal.value.place.startswith(place)
    assert {path.name for path in tmp_path.iterdir()} == {source.name}


@pytest.mark.parametrize(
    "run", ["1000000000S", "999999S", "12S1000000000S", "99999999999999999999S", "0S", "-5S"]
)
def test_a_run_that_claims_a_gigabyte_is_refused_before_it_is_written_out(tmp_path: Path, run: str) -> None:
    document = small_document()
    document["records"]["side"][0]["cells"] = run
    source, target = tmp_path / "document.json", tmp_path / "in.beebook"
    source.write_text(json.dumps(document))
    with pytest.raises(ExchangeError) as refusal:
        import_book(source, target)
    assert refusal.value.place == "records.side[0].cells"
    assert {path.name for path in tmp_path.iterdir()} == {source.name}
