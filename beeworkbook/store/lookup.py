"""Records by id and by the values of their fields: what transactions and readers share."""

from collections.abc import Iterable, Mapping

from beeworkbook.colony.records import OwnFrame
from beeworkbook.comb.frames import FRAME_TYPES, FrameType, own_frame
from beeworkbook.store.errors import DamagedWorkbookError, NoSuchRecordError
from beeworkbook.store.link import Link, Row
from beeworkbook.store.rows import R, form_of
from beeworkbook.store.texts import find_text, text


def record_of(link: Link, cls: type[R], row: Row) -> R:
    """The record of a row. Errors: DamagedWorkbookError if it holds a value that is not known."""
    try:
        return form_of(cls).record(row)
    except (KeyError, ValueError) as error:
        raise DamagedWorkbookError(link.path, f"{cls.__name__}: {error}") from error


def find_one(link: Link, cls: type[R], its_id: object) -> R | None:
    """The record with this id, or None."""
    row = link.row(text(f"get {form_of(cls).table}"), (its_id,))
    return None if row is None else record_of(link, cls, row)


def find(link: Link, cls: type[R], equals: Mapping[str, object]) -> tuple[R, ...]:
    """The records whose fields have these values, by id; None asks for a blank.

    Errors: KeyError if there is no such field.
    """
    form = form_of(cls)
    values = {name: form.value(name, value) for name, value in equals.items()}
    blank = frozenset(name for name, value in values.items() if value is None)
    asked = tuple(value for value in values.values() if value is not None)
    return records_of(link, cls, link.rows(find_text(form.table, tuple(values), blank), asked))


def records_of(link: Link, cls: type[R], rows: Iterable[Row]) -> tuple[R, ...]:
    """The records of these rows. Errors: DamagedWorkbookError if one holds a value that is not known."""
    return tuple(record_of(link, cls, row) for row in rows)


def any_with(link: Link, cls: type[R], name: str, value: object) -> bool:
    """Whether any record has this value in this field."""
    form = form_of(cls)
    asked = find_text(form.table, (name,), frozenset())
    return link.row(asked, (form.value(name, value),)) is not None


def frame_type(link: Link, its_id: str) -> FrameType:
    """A shipped frame type or one of the keeper's own. Errors: NoSuchRecordError if it is neither."""
    shipped = FRAME_TYPES.get(its_id)
    if shipped is not None:
        return shipped
    own = find_one(link, OwnFrame, its_id)
    if own is None:
        raise NoSuchRecordError(FrameType, its_id)
    return own_type(own)


def own_type(own: OwnFrame) -> FrameType:
    """The keeper's own frame as a frame type."""
    return own_frame(
        own.id,
        own.name,
        own.inside_width_mm,
        own.inside_height_mm,
        cells_per_dm2=own.cells_per_dm2,
        drone_cells_per_dm2=own.drone_cells_per_dm2,
    )
