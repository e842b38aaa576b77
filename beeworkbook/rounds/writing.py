"""A finished field is kept at once as one step, the round and the visit begun with it if need be."""

from beeworkbook.colony.records import ApiaryId, VisitId
from beeworkbook.colony.sentences import Target
from beeworkbook.rounds.field import wish
from beeworkbook.rounds.row import Row
from beeworkbook.workbook.edits.line import ClearOnLine, OnLine
from beeworkbook.workbook.edits.visit import PassOver
from beeworkbook.workbook.place import Edit
from beeworkbook.workbook.workbook import Workbook


def edit_of(row: Row, target: Target, typed: str, apiary_id: ApiaryId, left_out: str) -> Edit | None:
    """The one edit that keeps what was typed into a field; None if there is nothing to keep.

    Errors: FieldError.
    """
    asked = wish(row, target, typed)
    visit = row.now.visit
    if asked.passes:
        return OnLine(apiary_id, row.colony.id, row.day, (PassOver(row.colony.id, row.day),), left_out)
    if not asked.edits:
        return None
    if asked.clears:
        return ClearOnLine(visit.id, asked.edits[0]) if visit is not None else None
    return OnLine(apiary_id, row.colony.id, row.day, asked.edits, left_out)


def keep(  # noqa: PLR0917 - a field, its text and where it belongs
    book: Workbook,
    row: Row,
    target: Target,
    typed: str,
    apiary_id: ApiaryId,
    left_out: str,
    source: object = None,
) -> VisitId | None:
    """Keep what was typed; gives the visit it was kept in, None if nothing was to be kept or the visit went.

    Errors: FieldError and RefusedError, each a sentence; nothing is changed then.
    """
    edit = edit_of(row, target, typed, apiary_id, left_out)
    if edit is None:
        return row.now.visit.id if row.now.visit else None
    made = book.do(edit, source=source)
    book.end_merge()
    return None if made is None else VisitId(int(str(made)))
