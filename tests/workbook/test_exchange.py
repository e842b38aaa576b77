import io
import json
import tempfile
from collections.abc import Callable
from dataclasses import replace
from datetime import time
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.colony.records import (
    RECORD_TYPES,
    Colony,
    EventKind,
    Question,
    Sheet,
    SheetId,
    VisitId,
)
from beeworkbook.comb.contents import CellFate, CellKind, Content, Face, MarkKind
from beeworkbook.resources import resource, sample_folder
from beeworkbook.workbook.edits import (
    AddEvent,
    AddMark,
    AddOwnFrame,
    BeginRound,
    BeginVisit,
    ChangeRecord,
    KeepSheet,
    LayOutComb,
    SetAnswer,
    SetFeedLeft,
    SetHeft,
    SetNext,
    SetNote,
    SetSetting,
)
from beeworkbook.workbook.errors import NotKeptError
from beeworkbook.workbook.exchange import StoppedError, export_book, import_book, write_document
from beeworkbook.workbook.exchange_read import ExchangeError
from beeworkbook.workbook.workbook import Workbook
from tests.workbook.keeping import LATER, LOOK, NOW, Keeping, as_int, days_on


def _fill(keeping: Keeping) -> None:
    """Something in every table."""
    book, visit, five = keeping.book, keeping.visit, keeping.frame(5)
    keeping.paint(5, Face.A, Content.SEALED, 100, 700)
    book.do(LayOutComb(visit, keeping.frame(6), "E1O2S4H1W3Q / S2KC"))
    book.do(
        AddMark(
            visit, MarkKind.QUEEN_CELL, five, Face.A, 17, CellKind.SEALED, CellFate.KNOCKED_DOWN, "zażółć"
        )
    )
    book.do(SetAnswer(visit, Question.BROOD, "7/4.2"))
    book.do(SetNote(visit, 'two lines\n"quoted" \\ ąęλж 🌻\u2028'))
    book.do(SetNext(visit, LATER, "why"))
    book.do(SetHeft(keeping.colony, LOOK, 14.1, 0.1 + 0.2))
    book.do(SetFeedLeft(book.read.feeds(keeping.colony)[0].id, "0.5", LOOK, visit))
    book.do(BeginRound(book.read.apiaries()[0].id, LOOK, time(14, 30), "fine", 18.5))
    book.do(AddOwnFrame("Ours", 340, 210))
    book.do(SetSetting("hemisphere", "south"))
    book.do(AddEvent(keeping.colony, LOOK, EventKind.NOTE, "x" * 3000))
    book.do(KeepSheet(Sheet(SheetId(0), "ACDE7", keeping.colony, LATER, 1, 2, "A4", visit, '{"a": 1}', NOW)))
    later = as_int(book.do(BeginVisit(keeping.colony, LATER)))
    book.do(LayOutComb(later, five, "= / S3"))  # type: ignore[arg-type]
    book.do(LayOutComb(later, keeping.frame(6), "?"))  # type: ignore[arg-type]
    daughter = keeping.another()
    colony = book.read.get(Colony, daughter)
    assert colony is not None
    book.do(ChangeRecord(replace(colony, mother_id=keeping.colony)))
    first = book.read.get(Colony, keeping.colony)
    assert first is not None
    book.do(ChangeRecord(replace(first, mother_id=daughter)))


def _exported(book: Workbook) -> bytes:
    stream = io.BytesIO()
    write_document(book.read, stream)
    return stream.getvalue()


def _imported(tmp_path: Path, document: bytes, name: str = "in.beebook") -> Workbook:
    source = tmp_path / "document.json"
    source.write_bytes(document)
    import_book(source, tmp_path / name)
    return Workbook.open(tmp_path / name, today=LATER)


def test_out_in_and_out_again_is_the_same_to_the_byte(keeping: Keeping, tmp_path: Path) -> None:
    _fill(keeping)
    document = _exported(keeping.book)
    assert all(keeping.book.read.find(cls) for cls in RECORD_TYPES)
    with _imported(tmp_path, document) as book:
        assert {cls: book.read.find(cls) for cls in RECORD_TYPES} == keeping.everything()
        assert _exported(book) == document
        totals = book.read.visit_totals(keeping.visit)
    assert totals == keeping.book.read.visit_totals(keeping.visit)


def test_an_export_keeps_to_the_schema_that_ships(keeping: Keeping) -> None:
    _fill(keeping)
    schema = json.loads(resource("schema", "exchange.schema.json").read_text(encoding="utf-8"))
    document = json.loads(_exported(keeping.book))
    jsonschema.Draft202012Validator(schema).validate(document)
    document["records"]["visit"][0]["level"] = "thorough"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.Draft202012Validator(schema).validate(document)


def test_an_empty_workbook_goes_out_and_in(tmp_path: Path) -> None:
    with Workbook.create(tmp_path / "a.beebook", "Empty", today=LATER) as book:
        document = _exported(book)
    with _imported(tmp_path, document) as again:
        assert again.title == "Empty"
        assert _exported(again) == document


@settings(max_examples=15)
@given(
    st.lists(st.tuples(st.sampled_from(Content), st.integers(0, 2500), st.integers(1, 900)), max_size=8),
    st.text(),
)
def test_any_drawing_and_any_words_come_through(strokes: list[tuple[Content, int, int]], note: str) -> None:
    with tempfile.TemporaryDirectory() as folder, Keeping(Path(folder) / "trial.beebook") as kept:
        for content, first, count in strokes:
            kept.paint(4, Face.A, content, first, count)
        kept.book.do(SetNote(kept.visit, note))
        document = _exported(kept.book)
        with _imported(Path(folder), document) as book:
            assert {cls: book.read.find(cls) for cls in RECORD_TYPES} == kept.everything()
            assert _exported(book) == document


Change = Callable[[dict[str, Any]], object]


def _set(table: str, number: int, **fields: object) -> Change:
    return lambda records: records[table][number].update(fields)


def _cells(text: str) -> Change:
    return _set("side", 12, cells=text)


HOSTILE: dict[str, tuple[Change, str]] = {
    "a side of a billion cells": (_cells("1000000000S"), "records.side[12].cells"),
    "a row of a million cells": (_cells("999999S\n" * 40 + "S"), "records.side[12].cells"),
    "a side without rows": (_cells(""), "records.side[12].cells"),
    "no content": (_cells("12X"), "records.side[12].cells"),
    "a side of no known frame": (_set("side", 3, frame_type="nobody's"), "records.side[3].frame_type"),
    "a side of another frame": (_set("side", 3, frame_type="zander"), "records.side[3].cells"),
    "a visit that is not there": (_set("side", 3, visit_id=999), "records.side[3].visit_id"),
    "a comb that is not there": (_set("mark", 0, frame_id=999), "records.mark[0].frame_id"),
    "a source that is not there": (_set("side", 3, copied_from=9999), "records.side[3].copied_from"),
    "a mother that is not there": (_set("colony", 0, mother_id=9999), "records.colony[0].mother_id"),
    "an id twice": (_set("visit", 1, id=1), "records.visit[1].id"),
    "a face twice": (_set("side", 1, face="A"), "records.side[1].face"),
    "an answer twice": (
        lambda records: records["answer"].append(records["answer"][0] | {"id": 77}),
        "records.answer[1]",
    ),
    "an id of nought": (_set("visit", 0, id=0), "records.visit[0].id"),
    "an id below nought": (_set("visit", 0, id=-5), "records.visit[0].id"),
    "more than eight eighths of bees": (_set("side", 3, covered=9), "records.side[3].covered"),
    "an end before the beginning": (_set("frame_stay", 2, until="2000-01-01"), "records.frame_stay[2].until"),
    "a day that never was": (_set("visit", 0, day="2026-02-30"), "records.visit[0].day"),
    "an unknown word": (_set("visit", 0, level="thorough"), "records.visit[0].level"),
    "yes for a number": (_set("frame_stay", 2, place=True), "records.frame_stay[2].place"),
    "a frame as wide as a house": (
        _set("own_frame", 0, inside_width_mm=9e9),
        "records.own_frame[0].inside_width_mm",
    ),
    "a shipped frame made anew": (_set("own_frame", 0, id="bs_deep"), "records.own_frame[0].id"),
    "a cell beyond the comb": (_set("mark", 0, cell=10**9), "records.mark[0].cell"),
}


@pytest.mark.parametrize("case", HOSTILE)
def test_a_hostile_document_is_refused_whole_with_its_place(
    keeping: Keeping, tmp_path: Path, case: str
) -> None:
    change, place = HOSTILE[case]
    _fill(keeping)
    document = json.loads(_exported(keeping.book))
    change(document["records"])
    source, target = tmp_path / "hostile.json", tmp_path / "in.beebook"
    source.write_text(json.dumps(document), encoding="utf-8")
    with pytest.raises(ExchangeError) as refusal:
        import_book(source, target)
    assert refusal.value.place == place
    left = {path.name for path in tmp_path.iterdir() if path.name.startswith("in.")}
    assert left == set()


def test_progress_is_told_and_the_person_can_stop_either_way(keeping: Keeping, tmp_path: Path) -> None:
    target, document = tmp_path / "in.beebook", tmp_path / "out.json"
    told: list[tuple[int, int]] = []
    with pytest.raises(StoppedError):
        export_book(keeping.book.read, document, cancelled=lambda: True)
    assert not document.exists()
    export_book(keeping.book.read, document, progress=lambda done, whole: told.append((done, whole)))
    assert told[-1][0] == told[-1][1] > 0
    told.clear()
    with pytest.raises(StoppedError, match="Nothing was written"):
        import_book(document, target, cancelled=lambda: True)
    import_book(document, target, progress=lambda done, whole: told.append((done, whole)))
    assert told[-1] == (document.stat().st_size, document.stat().st_size)
    assert {path.name for path in tmp_path.iterdir()} == {
        "trial.beebook",
        "trial.beebook.lock",
        "in.beebook",
        "out.json",
    } | {path.name for path in tmp_path.iterdir() if path.name.startswith("trial.")}


def test_what_is_written_is_one_moment_of_a_workbook_that_goes_on(keeping: Keeping) -> None:
    _fill(keeping)
    before = _exported(keeping.book)
    written = io.BytesIO()

    def meanwhile(done: int, _whole: int) -> None:
        visit = as_int(keeping.book.do(BeginVisit(keeping.colony, days_on(LATER, done))))
        keeping.book.do(SetNext(VisitId(visit), days_on(LATER, done + 7), "later"))

    with Workbook.open(keeping.book.path, today=LATER, read_only=True) as looking:
        write_document(looking.read, written, progress=meanwhile)
    assert written.getvalue() == before
    assert _exported(keeping.book) != before


class _Stopping:
    """Progress that is heard until so much is done, and then wants to stop."""

    def __init__(self, share: float) -> None:
        self.share = share
        self.told = 0
        self.told_after = 0

    def progress(self, done: int, whole: int) -> None:
        self.told_after += self.wants_to_stop()
        self.told = max(self.told, done)
        self.whole = whole

    def wants_to_stop(self) -> bool:
        return bool(self.told) and self.told >= self.share * self.whole


@pytest.mark.parametrize("share", [0.0, 0.2, 0.6])
def test_the_person_can_stop_in_the_middle_and_is_heard_at_once(tmp_path: Path, share: float) -> None:
    sample = sample_folder() / "sample.json"
    going_in = _Stopping(share)
    with pytest.raises(StoppedError):
        import_book(
            sample,
            tmp_path / "in.beebook",
            progress=going_in.progress,
            cancelled=going_in.wants_to_stop,
        )
    assert share * going_in.whole <= going_in.told < going_in.whole
    assert going_in.told_after == 0
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("share", [0.0, 0.2, 0.6])
def test_writing_stops_in_the_middle_too_and_leaves_nothing(
    keeping: Keeping, tmp_path: Path, share: float
) -> None:
    _fill(keeping)
    going_out = _Stopping(share)
    with pytest.raises(StoppedError):
        export_book(
            keeping.book.read,
            tmp_path / "out.json",
            progress=going_out.progress,
            cancelled=going_out.wants_to_stop,
        )
    assert share * going_out.whole <= going_out.told < going_out.whole
    assert going_out.told_after == 0
    assert not [path.name for path in tmp_path.iterdir() if path.name.startswith("out")]


def test_nothing_is_ever_written_over(keeping: Keeping, tmp_path: Path) -> None:
    document = tmp_path / "out.json"
    export_book(keeping.book.read, document)
    before = document.read_bytes()
    with pytest.raises(NotKeptError, match="already a file"):
        export_book(keeping.book.read, document)
    with pytest.raises(NotKeptError, match="already a file"):
        import_book(document, keeping.book.path)
    assert document.read_bytes() == before
    with pytest.raises(NotKeptError, match="could not be written"):
        export_book(keeping.book.read, tmp_path / "nowhere" / "out.json")
    with pytest.raises(NotKeptError, match="cannot be read"):
        import_book(tmp_path / "none.json", tmp_path / "in.beebook")
    with pytest.raises(NotKeptError):
        import_book(document, tmp_path / "nowhere" / "in.beebook")


def test_what_a_killed_import_left_does_no_harm(keeping: Keeping, tmp_path: Path) -> None:
    document, target = tmp_path / "out.json", tmp_path / "in.beebook"
    export_book(keeping.book.read, document)
    for ending in ("", "-wal", "-shm", ".lock"):
        (tmp_path / f"in.beebook.part{ending}").write_bytes(b"half of something")
    import_book(document, target)
    assert {path.name for path in tmp_path.iterdir() if path.name.startswith("in.")} == {"in.beebook"}
    target.unlink()
    (tmp_path / "in.beebook-wal").write_bytes(b"the log of another workbook")
    with pytest.raises(NotKeptError, match=r"in\.beebook-wal"):
        import_book(document, target)
    assert not target.exists()


def test_the_document_is_a_record_a_line(keeping: Keeping) -> None:
    lines = _exported(keeping.book).decode().splitlines()
    frames = [line for line in lines if line.startswith('{"id"') and '"frame_type"' in line]
    assert all(json.loads(line.removesuffix(",")) for line in frames)
    assert len(frames) >= 11
