from dataclasses import fields, is_dataclass
from datetime import UTC, date, datetime, time, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import (
    RECORD_TYPES,
    ApiaryId,
    ColonyId,
    Level,
    Queen,
    QueenId,
    Round,
    RoundId,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.store.rows import TABLE_NAMES, form_of
from beeworkbook.store.schema import TABLES


def test_every_record_class_has_its_table() -> None:
    assert set(TABLES) == set(TABLE_NAMES) == set(RECORD_TYPES)
    assert [table.name for table in TABLES.values()] == list(TABLE_NAMES.values())


@pytest.mark.parametrize("cls", RECORD_TYPES)
def test_a_column_has_the_name_of_its_field(cls: type) -> None:
    assert is_dataclass(cls)
    form = form_of(cls)  # type: ignore[type-var]
    names = [field.name for field in fields(cls)]
    assert [column.name for column in TABLES[cls].columns] == [name for name in names if name != form.blob]
    assert form.blob == ("cells" if cls is Side else None)
    assert form_of(cls) is form  # type: ignore[type-var]


@given(
    at=st.none() | st.times(),
    degrees=st.none() | st.floats(allow_nan=False, allow_infinity=False),
    day=st.dates(),
    text=st.text(st.characters(exclude_categories=["Cs"])),
)
def test_a_round_survives_the_way_to_its_row_and_back(
    at: time | None, degrees: float | None, day: date, text: str
) -> None:
    record = Round(RoundId(1), ApiaryId(2), day, at, text, degrees)
    form = form_of(Round)
    row = form.row(record)
    assert all(isinstance(value, str | int | float | None) for value in row)
    assert form.record(row) == record


@given(st.datetimes(timezones=st.sampled_from([UTC, timezone(timedelta(hours=5, minutes=30))])))
def test_a_moment_is_kept_in_utc(moment: datetime) -> None:
    try:
        expected = moment.astimezone(UTC)
    except OverflowError:
        return
    record = Visit(VisitId(1), ColonyId(1), date(2026, 5, 1), Level.PAINTED, saved_utc=moment)
    row = form_of(Visit).row(record)
    assert str(row[-1]).endswith("Z")
    held = form_of(Visit).record(row).saved_utc
    assert held == expected
    assert held is not None
    assert held.tzinfo is UTC


def test_yes_no_and_blank_are_three_things() -> None:
    form = form_of(Queen)
    for clipped in (True, False, None):
        row = form.row(Queen(QueenId(1), clipped=clipped))
        assert row[5] == (None if clipped is None else int(clipped))
        assert form.record(row).clipped is clipped


def test_one_value_as_it_is_asked_for() -> None:
    form = form_of(Visit)
    assert form.value("day", date(2026, 5, 1)) == "2026-05-01"
    assert form.value("level", Level.PAINTED) == "painted"
    assert form.value("colony_id", 3) == 3
    assert form.value("at", None) is None
    with pytest.raises(KeyError):
        form.value("colour", 1)


def test_a_word_nobody_knows_is_refused() -> None:
    form = form_of(Visit)
    row = list(form.row(Visit(VisitId(1), ColonyId(1), date(2026, 5, 1), Level.PAINTED)))
    row[3] = "glanced"
    with pytest.raises(KeyError):
        form.record(row)
