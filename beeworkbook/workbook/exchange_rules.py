"""What records taken in from outside have to keep to, beyond the kind of each value.

A rule is checked against what is in the workbook already, so that a reference leads somewhere.
"""

from typing import Any, Final

from beeworkbook.colony.records import (
    BOXES,
    Colony,
    Due,
    Frame,
    FrameStay,
    Housing,
    Mark,
    OwnFrame,
    Part,
    PartStay,
    Record,
    Side,
    Visit,
)
from beeworkbook.comb.frames import FRAME_TYPES, FrameType, OwnFrameError, own_frame
from beeworkbook.store.errors import NoSuchRecordError
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import say
from beeworkbook.workbook.exchange_form import FieldError, form_of

MOST_LEVELS: Final = 10_000
"""Levels order the parts of a hive over all its years, so they rise above the parts of any day."""
MOST_PLACES: Final = 100
REFERENCES: Final[dict[str, str]] = {
    "mother_id": "Colony",
    "other_colony_id": "Colony",
    "copied_from": "Side",
    "left_visit_id": "Visit",
    "done_visit_id": "Visit",
}
"""Fields that refer to a record without bearing its name."""

LATER: Final[dict[type[Record], str]] = {Colony: "mother_id", Side: "copied_from"}
"""References within one table, which may lead to a record still to come."""

_BY_NAME: Final = {
    "apiary_id",
    "stand_id",
    "colony_id",
    "hive_id",
    "part_id",
    "frame_id",
    "queen_id",
    "round_id",
    "visit_id",
}


def references(cls: type) -> dict[str, str]:
    """The fields of a class that refer to another record, and that record's class by name."""
    named = {name: name.removesuffix("_id").capitalize() for name in form_of(cls) if name in _BY_NAME}
    return named | {name: target for name, target in REFERENCES.items() if name in form_of(cls)}


def check_record(tx: Transaction, record: Record) -> None:
    """Errors: FieldError whose text begins with the field, if the record breaks a rule."""
    number = record.id
    if isinstance(number, int) and number < 1:
        raise FieldError(say("{field}: it has to be at least 1", field="id"))
    if isinstance(number, str) and not number:
        raise FieldError(say("{field}: it cannot be empty", field="id"))
    check: Any = _RULES.get(type(record))
    if check is not None:
        check(tx, record)


def frame_type_in(tx: Transaction, field: str, frame_type: str) -> FrameType:
    """The frame type. Errors: FieldError if there is none."""
    try:
        return tx.frame_type(frame_type)
    except NoSuchRecordError as error:
        raise FieldError(
            say("{field}: there is no frame type {name}", field=field, name=repr(frame_type[:40]))
        ) from error


def _check_own_frame(_tx: Transaction, own: OwnFrame) -> None:
    if own.id in FRAME_TYPES:
        raise FieldError(say("{field}: this is a frame type that ships with the program", field="id"))
    try:
        own_frame(
            own.id,
            own.name,
            own.inside_width_mm,
            own.inside_height_mm,
            cells_per_dm2=own.cells_per_dm2,
            drone_cells_per_dm2=own.drone_cells_per_dm2,
        )
    except OwnFrameError as error:
        raise FieldError(f"{error.field}: {error}") from error


def _check_part(tx: Transaction, part: Part) -> None:
    if not 0 <= part.places <= MOST_PLACES:
        raise FieldError(say("{field}: a box has at most {most} places", field="places", most=MOST_PLACES))
    if part.kind in BOXES or part.frame_type:
        frame_type_in(tx, "frame_type", part.frame_type)


def _check_frame(tx: Transaction, frame: Frame) -> None:
    frame_type_in(tx, "frame_type", frame.frame_type)


def _check_stay(_tx: Transaction, stay: Housing | PartStay | FrameStay | Due) -> None:
    since = stay.day if isinstance(stay, Due) else stay.since
    if stay.until is not None and stay.until < since:
        raise FieldError(say("{field}: it ends before it begins", field="until"))
    if isinstance(stay, FrameStay) and not 1 <= stay.place <= MOST_PLACES:
        raise FieldError(say("{field}: a box has at most {most} places", field="place", most=MOST_PLACES))
    if isinstance(stay, PartStay) and not 0 <= stay.level <= MOST_LEVELS:
        raise FieldError(say("{field}: no hive is so high", field="level"))


def _check_side(tx: Transaction, side: Side) -> None:
    same = tx.find(Side, visit_id=side.visit_id, frame_id=side.frame_id, face=side.face)
    if any(other.id != side.id for other in same):
        raise FieldError(say("{field}: this side is there twice in one visit", field="face"))
    if side.covered is not None and not 0 <= side.covered <= 8:
        raise FieldError(say("{field}: bees cover from none to eight eighths", field="covered"))
    if not 1 <= side.place <= MOST_PLACES:
        raise FieldError(say("{field}: a box has at most {most} places", field="place", most=MOST_PLACES))


def _check_mark(tx: Transaction, mark: Mark) -> None:
    if mark.cell is None:
        return
    frame = None if mark.frame_id is None else tx.find_one(Frame, mark.frame_id)
    if frame is None or mark.face is None:
        raise FieldError(say("{field}: a cell needs its comb and face", field="cell"))
    if not 0 <= mark.cell < frame_type_in(tx, "cell", frame.frame_type).lattice.cells:
        raise FieldError(say("{field}: there is no such cell on this comb", field="cell"))


def _check_visit(_tx: Transaction, visit: Visit) -> None:
    if visit.next_day is not None and visit.next_day < visit.day:
        raise FieldError(say("{field}: it is before the visit", field="next_day"))


_RULES: Final[dict[type[Record], Any]] = {
    OwnFrame: _check_own_frame,
    Part: _check_part,
    Frame: _check_frame,
    Housing: _check_stay,
    PartStay: _check_stay,
    FrameStay: _check_stay,
    Due: _check_stay,
    Side: _check_side,
    Mark: _check_mark,
    Visit: _check_visit,
}
