import pytest
from pytestqt.qtbot import QtBot

from beeworkbook.bench.cell_cursor import CellCursor, CursorState
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.side_at_work import SideAtWork
from beeworkbook.bench.tools.base import ToolName, Work
from beeworkbook.comb.contents import Content, Origin


@pytest.fixture
def side(work: Work, qtbot: QtBot) -> SideAtWork:
    del qtbot
    made = SideAtWork(Hand())
    made.hand.take_content(Content.EGGS)
    made.show(work.lattice, work.cells, Origin.PAINTED, bare=False)
    return made


@pytest.fixture
def cursor(side: SideAtWork) -> CellCursor:
    return CellCursor(side)


def test_it_begins_where_it_is_told_and_goes_from_cell_to_cell(cursor: CellCursor, work: Work) -> None:
    start = work.lattice.cell(8, 10)
    cursor.go("right", 1, start, painting=False)
    assert cursor.cell == work.lattice.cell(8, 11)
    cursor.go("down", 3, start, painting=False)
    assert work.lattice.row_and_column(cursor.cell or 0)[0] == 11


def test_a_stroke_goes_on_until_shift_is_lifted(
    cursor: CellCursor, side: SideAtWork, work: Work, qtbot: QtBot
) -> None:
    start = work.lattice.cell(10, 8)
    with qtbot.assertNotEmitted(side.painted):
        for _ in range(6):
            cursor.go("right", 1, start, painting=True)
    assert str(cursor.state) == "stroking"
    with qtbot.waitSignal(side.painted) as told:
        cursor.shift_lifted()
    assert cursor.state is CursorState.RESTING
    x = work.lattice.centres[told.args[0].indices, 0]
    assert x.max() - x.min() > 6 * work.lattice.pitch_x_mm


def test_space_dabs_with_a_brush(cursor: CellCursor, side: SideAtWork, qtbot: QtBot) -> None:
    with qtbot.waitSignal(side.painted):
        cursor.space(300)
    assert cursor.state is CursorState.RESTING


def test_space_begins_and_ends_what_is_stretched(
    cursor: CellCursor, side: SideAtWork, work: Work, qtbot: QtBot
) -> None:
    side.hand.take_tool(ToolName.ELLIPSE)
    start = work.lattice.cell(12, 18)
    cursor.space(start)
    assert cursor.state is CursorState.STROKING
    cursor.go("right", 6, start, painting=False)
    cursor.go("down", 5, start, painting=False)
    cursor.shift_lifted()
    assert cursor.state is CursorState.STROKING
    with qtbot.waitSignal(side.painted) as told:
        cursor.space(start)
    assert len(told.args[0].indices) > 40


def test_dropping_forgets_the_stroke(cursor: CellCursor, side: SideAtWork, qtbot: QtBot) -> None:
    cursor.go("right", 2, 300, painting=True)
    side.drop()
    cursor.drop()
    with qtbot.assertNotEmitted(side.painted):
        cursor.shift_lifted()


def test_it_says_where_it_stands(cursor: CellCursor, work: Work) -> None:
    assert cursor.words == ""
    cursor.put(work.lattice.cell(0, 4))
    assert cursor.words == "row 1, cell 5: sealed stores"


def test_without_a_comb_it_goes_nowhere(qtbot: QtBot) -> None:
    del qtbot
    cursor = CellCursor(SideAtWork(Hand()))
    cursor.go("right", 1, 0, painting=True)
    cursor.dab(0, ToolName.BRUSH)
    assert cursor.cell is None
    with pytest.raises(ValueError, match="no comb"):
        cursor.centre_of(3)
