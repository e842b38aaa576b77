import json
from datetime import UTC, date, datetime, time, timedelta, timezone
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import (
    RECORD_TYPES,
    Answer,
    AnswerId,
    OwnFrame,
    Question,
    Reply,
    Round,
    RoundId,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.resources import resource
from beeworkbook.workbook.exchange_form import (
    MOST_CHARACTERS,
    MOST_WHOLE,
    TABLE_NAMES,
    FieldError,
    form_of,
    json_schema,
    plain,
)


def _read(cls: type, name: str, value: object) -> object:
    return form_of(cls)[name].read(value)


def test_every_table_has_a_name_in_the_order_of_the_records() -> None:
    assert list(TABLE_NAMES) == list(RECORD_TYPES)
    assert TABLE_NAMES[OwnFrame] == "own_frame"
    assert len(set(TABLE_NAMES.values())) == len(RECORD_TYPES)


def test_what_is_as_by_default_is_left_out() -> None:
    assert plain(Answer(AnswerId(3), VisitId(1), Question.EGGS, "y", Reply.YES)) == {
        "id": 3,
        "visit_id": 1,
        "question": "eggs",
        "typed": "y",
        "reply": "yes",
    }
    held = plain(Round(RoundId(1), 2, date(2026, 5, 16), time(14, 30), temperature_c=18))  # type: ignore[arg-type]
    assert held == {"id": 1, "apiary_id": 2, "day": "2026-05-16", "at": "14:30:00", "temperature_c": 18.0}
    assert isinstance(held["temperature_c"], float)


def test_a_moment_is_written_in_utc() -> None:
    moment = datetime(2026, 5, 16, 20, 0, tzinfo=timezone(timedelta(hours=2)))
    form = form_of(Visit)["saved_utc"]
    assert form.write(moment) == "2026-05-16T18:00:00Z"
    assert form.read("2026-05-16T18:00:00Z") == moment.astimezone(UTC)


@given(st.dates(date(1000, 1, 1), date(8999, 12, 31)) | st.times().map(lambda at: at.replace(fold=0)))
def test_days_and_times_are_read_as_they_are_written(moment: date | time) -> None:
    name = "day" if isinstance(moment, date) else "at"
    form = form_of(Visit)[name]
    assert form.read(form.write(moment)) == moment


@pytest.mark.parametrize(
    ("cls", "name", "value"),
    [
        (Visit, "id", True),
        (Visit, "id", 1.0),
        (Visit, "id", "1"),
        (Visit, "id", None),
        (Visit, "id", MOST_WHOLE + 1),
        (Visit, "id", 10**4000),
        (Visit, "day", "2026-02-30"),
        (Visit, "day", "20260516"),
        (Visit, "day", "2026-W20-6"),
        (Visit, "day", 20260516),
        (Visit, "day", "0999-12-31"),
        (Visit, "day", "9000-01-01"),
        (Visit, "at", "14:30"),
        (Visit, "at", "14:30:00+02:00"),
        (Visit, "at", "25:00:00"),
        (Visit, "saved_utc", "2026-05-16T18:00:00"),
        (Visit, "saved_utc", "2026-05-16T20:00:00+02:00"),
        (Visit, "saved_utc", "2026-05-16"),
        (Visit, "level", "thorough"),
        (Visit, "level", 1),
        (Visit, "note", 3),
        (Visit, "note", None),
        (Visit, "note", "x" * (MOST_CHARACTERS + 1)),
        (Visit, "note", "\ud800"),
        (Side, "drone_cells", 1),
        (Side, "drone_cells", "yes"),
        (Side, "covered", float("nan")),
        (Side, "covered", float("inf")),
        (Side, "covered", 10**400),
        (Side, "covered", True),
        (Side, "covered", "5"),
        (Answer, "number", 1e13),
    ],
)
def test_what_a_field_cannot_hold_is_refused_with_a_reason(cls: type, name: str, value: object) -> None:
    with pytest.raises(FieldError) as refusal:
        _read(cls, name, value)
    assert str(refusal.value)


def test_what_a_field_can_hold_is_read() -> None:
    from decimal import Decimal

    assert _read(Side, "covered", 5) == 5.0
    assert _read(Side, "covered", Decimal("4.5")) == 4.5
    assert _read(Side, "covered", None) is None
    assert _read(Side, "drone_cells", value=True) is True
    assert _read(Answer, "question", "eggs") is Question.EGGS
    assert _read(Visit, "note", "\u0105 \U0001f33b\n") == "\u0105 \U0001f33b\n"


def test_the_schema_that_ships_is_that_of_the_records() -> None:
    shipped = json.loads(resource("schema", "exchange.schema.json").read_text(encoding="utf-8"))
    assert shipped == json_schema()


def test_the_schema_is_a_schema() -> None:
    import jsonschema

    jsonschema.Draft202012Validator.check_schema(json_schema())
    tables: Any = json_schema()["properties"]
    assert list(tables["records"]["properties"]) == list(TABLE_NAMES.values())
