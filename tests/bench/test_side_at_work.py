import numpy as np
import pytest
from PySide6.QtCore import QRect
from pytestqt.qtbot import QtBot

from beeworkbook.bench.hand import Hand
from beeworkbook.bench.side_at_work import SideAtWork
from beeworkbook.bench.tools.base import State, ToolName, Work
from beeworkbook.bench.viewport import Viewport
from beeworkbook.comb.contents import CONTENTS, Content, Origin
from beeworkbook.comb.side import blank_cells
from beeworkbook.qt.palette import LIGHT


@pytest.fixture
def side(work: Work, qtbot: QtBot) -> SideAtWork:
    del qtbot
    made = SideAtWork(Hand())
    made.hand.take_content(Content.EGGS)
    assert made.show(work.lattice, work.cells, Origin.PAINTED, bare=False)
    made.draw(Viewport.fitted(work.lattice, 500, 360, 1.0), LIGHT)
    return made


def counted(side: SideAtWork) -> list[int]:
    return [int(count) for count in np.bincount(side.cells, minlength=len(CONTENTS))]


def test_a_stroke_is_handed_on_when_it_is_lifted(side: SideAtWork, work: Work, qtbot: QtBot) -> None:
    side.press((100.0, 70.0))
    side.go_on((120.0, 80.0))
    assert side.state is State.PAINTING
    with qtbot.waitSignal(side.painted) as told:
        side.lift()
    patch, content = told.args
    assert content is Content.EGGS
    assert np.array_equal(patch.apply(work.cells), side.cells)
    assert not side.is_busy


def test_the_counts_follow_in_the_middle_of_a_stroke(side: SideAtWork) -> None:
    side.press((100.0, 70.0))
    side.go_on((140.0, 90.0))
    assert side.counts == counted(side)
    assert side.counts[Content.EGGS] > 40
    side.drop()
    assert side.counts == counted(side)
    assert side.counts[Content.EGGS] == 0


def test_dropping_leaves_the_cells_and_the_picture_as_they_were(
    side: SideAtWork, work: Work, qtbot: QtBot
) -> None:
    assert side.picture is not None
    before = side.picture.pixels.copy()
    for tool in (ToolName.BRUSH, ToolName.ELLIPSE, ToolName.BAND, ToolName.FILL):
        side.press((100.0, 70.0), tool)
        side.go_on((150.0, 100.0))
        assert not np.array_equal(side.picture.pixels, before)
        with qtbot.assertNotEmitted(side.painted):
            side.drop()
        assert np.array_equal(side.cells, work.cells)
        assert np.array_equal(side.picture.pixels, before)


def test_only_the_changed_part_of_the_picture_is_named(side: SideAtWork, qtbot: QtBot) -> None:
    with qtbot.waitSignal(side.changed) as told:
        side.press((100.0, 70.0))
    assert told.args[0].width() < 100


def test_the_first_stroke_on_a_bare_side_shows_all_of_it(work: Work, qtbot: QtBot) -> None:
    side = SideAtWork(Hand())
    side.show(work.lattice, blank_cells(work.lattice), Origin.PAINTED, bare=True)
    side.draw(Viewport.fitted(work.lattice, 500, 360, 1.0), LIGHT)
    with qtbot.waitSignal(side.changed) as told:
        side.press((100.0, 70.0))
    assert told.args == [QRect()]
    assert not side.is_bare


def test_a_refused_stroke_is_taken_back(side: SideAtWork, work: Work) -> None:
    side.press((100.0, 70.0))
    side.lift()
    assert not np.array_equal(side.cells, work.cells)
    side.revert()
    assert np.array_equal(side.cells, work.cells)


def test_what_is_stored_anew_replaces_a_stroke_in_hand(side: SideAtWork, work: Work) -> None:
    side.press((100.0, 70.0))
    stored = work.cells.copy()
    stored[:10] = Content.POLLEN
    side.store(stored, np.arange(10))
    assert not side.is_busy
    assert np.array_equal(side.cells, stored)
    assert side.counts == counted(side)


def test_picking_takes_up_a_content_and_paints_nothing(side: SideAtWork, qtbot: QtBot) -> None:
    with qtbot.waitSignal(side.picked) as told, qtbot.assertNotEmitted(side.painted):
        side.press((100.0, 70.0), ToolName.PICK)
        side.lift()
    assert told.args == [Content.SEALED]


def test_a_picture_is_made_anew_only_for_another_look_or_comb(side: SideAtWork, work: Work) -> None:
    assert not side.show(work.lattice, work.cells, Origin.PAINTED, bare=False)
    assert side.show(work.lattice, work.cells, Origin.EIGHTHS, bare=False)


def test_nothing_happens_without_a_comb(work: Work, qtbot: QtBot) -> None:
    del qtbot
    side = SideAtWork(Hand())
    side.press((1.0, 1.0))
    side.go_on((2.0, 2.0))
    side.lift()
    side.draw(Viewport.fitted(work.lattice, 100, 100, 1.0), LIGHT)
    assert side.picture is None
    assert side.shape_mm is None
