"""Records are values: frozen, each with an id of its own, blank where nothing was recorded."""

import re
from dataclasses import FrozenInstanceError, fields
from datetime import date
from typing import get_args

import pytest

from beeworkbook.colony.records import (
    RECORD_TYPES,
    Answer,
    AnswerId,
    OwnFrame,
    Question,
    Record,
    Visit,
    VisitId,
)
from beeworkbook.comb.lattice import DRONE_CELLS_PER_DM2, WORKER_CELLS_PER_DM2


def test_every_record_begins_with_its_id() -> None:
    for record in RECORD_TYPES:
        assert fields(record)[0].name == "id"


def test_the_list_of_types_is_whole() -> None:
    assert set(RECORD_TYPES) == set(get_args(Record))
    assert len(RECORD_TYPES) == len(set(RECORD_TYPES))


def test_each_type_refers_only_to_those_before_it() -> None:
    own_kind = {"mother_id", "copied_from"}
    seen: set[str] = set()
    for record in RECORD_TYPES:
        seen.add(f"{record.__name__}Id")
        for field in fields(record)[1:]:
            referred = re.findall(r"\w+Id\b", str(field.type))
            assert field.name in own_kind or set(referred) <= seen, f"{record.__name__}.{field.name}"


def test_a_record_cannot_be_changed() -> None:
    visit = Visit(VisitId(1), 1, date(2026, 5, 16), "one_line")  # type: ignore[arg-type]
    with pytest.raises(FrozenInstanceError):
        visit.note = "other"  # type: ignore[misc]


def test_what_was_not_recorded_is_none_and_not_nought() -> None:
    answer = Answer(AnswerId(1), VisitId(1), Question.STORES, "")
    assert answer.reply is None
    assert answer.number is None


def test_an_own_frame_has_the_densities_of_every_frame() -> None:
    frame = OwnFrame("own", "Own", 300.0, 200.0)
    densities = (frame.cells_per_dm2, frame.drone_cells_per_dm2)
    assert densities == (WORKER_CELLS_PER_DM2, DRONE_CELLS_PER_DM2)
