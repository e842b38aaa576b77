from datetime import date

import pytest

from beeworkbook.colony.records import Housing, Stand
from beeworkbook.workbook.edits.new_stand import MoveToNewStand
from beeworkbook.workbook.errors import RefusedError
from tests.workbook.keeping import LATER, Keeping


def test_the_stand_and_the_move_are_one_step(keeping: Keeping) -> None:
    before, read = keeping.everything(), keeping.book.read
    apiary = read.apiaries()[0]
    made = keeping.book.do(MoveToNewStand(keeping.colony, apiary.id, "By the wall", LATER))
    stand = read.stands(apiary.id)[-1]
    assert (stand.id, stand.name) == (made, "By the wall")
    home = read.home(keeping.colony, LATER)
    assert home is not None
    assert home.stand_id == stand.id
    keeping.book.undo()
    assert keeping.everything() == before


def test_a_move_that_cannot_be_leaves_no_stand_behind(keeping: Keeping) -> None:
    stands, homes = keeping.book.read.find(Stand), keeping.book.read.find(Housing)
    apiary = keeping.book.read.apiaries()[0]
    with pytest.raises(RefusedError):
        keeping.book.do(MoveToNewStand(keeping.colony, apiary.id, "By the wall", date(2020, 1, 1)))
    assert keeping.book.read.find(Stand) == stands
    assert keeping.book.read.find(Housing) == homes
