from dataclasses import replace

import pytest

from beeworkbook.colony.records import ColonyId, Sheet, SheetId
from beeworkbook.workbook.edits import KeepSheet
from beeworkbook.workbook.errors import GoneError
from tests.workbook.keeping import LATER, NOW, Keeping


def test_a_printed_sheet_is_kept_with_its_fields_and_printed_again(keeping: Keeping) -> None:
    sheet = Sheet(SheetId(0), "ACDE7", keeping.colony, LATER, 1, 2, "a4", keeping.visit, '{"a": [1, 2]}', NOW)
    made = keeping.book.do(KeepSheet(sheet))
    kept = keeping.book.read.get(Sheet, made)
    assert kept == replace(sheet, id=made)  # type: ignore[arg-type]
    assert keeping.book.do(KeepSheet(replace(kept, revision=2))) == made
    assert [each.revision for each in keeping.book.read.find(Sheet)] == [2]
    assert keeping.book.undo_label == "keep the printed sheet of Wall"
    with pytest.raises(GoneError):
        keeping.book.do(KeepSheet(replace(sheet, colony_id=ColonyId(99))))
