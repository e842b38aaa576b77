import io
import json
from typing import Any

import pytest

from beeworkbook.colony.records import Apiary
from beeworkbook.workbook.exchange_form import TABLE_NAMES
from beeworkbook.workbook.exchange_read import ExchangeError, read_document


def _document(**tables: list[Any]) -> dict[str, Any]:
    records = {name: tables.get(name, []) for name in TABLE_NAMES.values()}
    return {"format": "beeworkbook-exchange", "version": 1, "records": records}


def _read(text: str | bytes) -> list[Any]:
    data = text.encode() if isinstance(text, str) else text
    return list(read_document(io.BytesIO(data), lambda _done: None))


def _refusal(text: str | bytes) -> ExchangeError:
    with pytest.raises(ExchangeError) as refusal:
        _read(text)
    assert str(refusal.value).endswith("Nothing was taken in.")
    return refusal.value


ORCHARD = {"id": 1, "name": "Orchard"}


def test_records_come_one_by_one_with_their_places() -> None:
    found = _read(json.dumps(_document(apiary=[ORCHARD, {"id": 2, "name": "Far", "position": 1}])))
    assert found == [
        (Apiary, "records.apiary[0]", ORCHARD),
        (Apiary, "records.apiary[1]", {"id": 2, "name": "Far", "position": 1}),
    ]


def test_the_bytes_read_are_told() -> None:
    told: list[int] = []
    text = json.dumps(_document(apiary=[{"id": number, "name": "x" * 900} for number in range(1, 300)]))
    list(read_document(io.BytesIO(text.encode()), told.append))
    assert told[-1] == len(text)
    assert len(set(told)) > 3


@pytest.mark.parametrize(
    ("change", "place"),
    [
        (lambda held: held | {"format": "something else"}, "format"),
        (lambda held: held | {"version": 2}, "version"),
        (lambda held: held | {"version": True}, "version"),
        (lambda held: held | {"more": 1}, "the end"),
        (lambda held: {"version": 1, "format": held["format"], "records": held["records"]}, "format"),
        (lambda held: {"format": held["format"], "records": held["records"]}, "version"),
        (lambda held: {"format": held["format"], "version": 1}, "records"),
        (lambda held: held | {"records": []}, "records"),
        (lambda held: held | {"records": {"apiary": []}}, "records.setting"),
        (lambda held: held | {"records": held["records"] | {"wishes": []}}, "records"),
        (lambda held: held | {"records": held["records"] | {"apiary": {}}}, "records.apiary"),
        (lambda held: held | {"records": held["records"] | {"apiary": [3]}}, "records.apiary[0]"),
    ],
)
def test_a_document_of_another_shape_is_refused_with_its_place(change: Any, place: str) -> None:
    assert _refusal(json.dumps(change(_document()))).place == place


@pytest.mark.parametrize(
    ("record", "place"),
    [
        ({"id": 1}, "records.apiary[1]"),
        (ORCHARD | {"colour": "green"}, "records.apiary[1]"),
        (ORCHARD | {"name": 7}, "records.apiary[1].name"),
        (ORCHARD | {"name": ["Orchard"]}, "records.apiary[1].name"),
        (ORCHARD | {"name": {"a": {}}}, "records.apiary[1].name"),
        (ORCHARD | {"id": True}, "records.apiary[1].id"),
        (ORCHARD | {"id": 1.5}, "records.apiary[1].id"),
        (ORCHARD | {"position": 10**30}, "records.apiary[1].position"),
    ],
)
def test_a_wrong_field_is_refused_with_its_place(record: dict[str, Any], place: str) -> None:
    assert _refusal(json.dumps(_document(apiary=[ORCHARD, record]))).place == place


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "[]",
        "null",
        '"beeworkbook"',
        "not json",
        "\ufeff{}",
        "[" * 200_000,
        '{"format": ' + "[" * 100_000,
        '{"format": ' + '{"a":' * 100_000,
        '{"format": "beeworkbook-exchange", "version": ' + "1" * 100_000,
        '{"format": "beeworkbook-exchange", "version": 1e999999999999, "records": {}}',
        '{"format": "beeworkbook-exchange", "version": NaN}',
        '{"format": "beeworkbook-exchange", "version": 1, "records": {"setting": [',
    ],
)
def test_what_is_no_such_document_is_refused(text: str) -> None:
    assert _refusal(text).reason


def test_bytes_that_are_no_text_are_refused() -> None:
    whole = json.dumps(_document(apiary=[ORCHARD])).encode()
    assert _refusal(whole.replace(b"Orchard", b"Orch\xff\xfeard")).reason
    assert _refusal(bytes(range(256))).reason


def test_a_field_said_twice_is_refused() -> None:
    text = json.dumps(_document(apiary=[ORCHARD])).replace('"name"', '"name": "a", "name"')
    assert _refusal(text).place == "records.apiary[0].name"


def test_anything_after_the_end_is_refused() -> None:
    whole = json.dumps(_document())
    assert _refusal(whole + "{}").place == "the end"
    assert _refusal(whole + " x").place == "the end"
    assert _read(whole + "\n \n") == []


def test_a_text_as_long_as_allowed_is_read() -> None:
    note = "ą" * 1_000_000
    assert (
        _read(json.dumps(_document(apiary=[ORCHARD | {"note": note}]), ensure_ascii=False))[0][2]["note"]
        == note
    )
    assert (
        _refusal(json.dumps(_document(apiary=[ORCHARD | {"note": note + "ą"}]))).place
        == "records.apiary[0].note"
    )


def test_half_a_character_is_refused() -> None:
    text = json.dumps(_document(apiary=[ORCHARD])).replace("Orchard", "\\ud83d")
    assert _refusal(text).place == "records.apiary[0].name"
