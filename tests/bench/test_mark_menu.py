import pytest
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QInputDialog, QMenu
from pytestqt.qtbot import QtBot

from beeworkbook.bench.bench_view import BenchView
from beeworkbook.bench.mark_menu import fill_mark_menu
from beeworkbook.colony.records import Mark
from beeworkbook.comb.contents import CellFate, CellKind, Content, Face, MarkKind, Origin
from beeworkbook.qt.desk import Desk
from beeworkbook.workbook.edits.typed_combs import LayOutComb
from tests.workbook.keeping import Keeping


@pytest.fixture
def bench(desk: Desk, keeping: Keeping, qtbot: QtBot) -> BenchView:
    desk.go(frame_id=keeping.frame(5))
    made = BenchView(desk)
    qtbot.addWidget(made)
    return made


def marks(bench: BenchView) -> tuple[Mark, ...]:
    assert bench.desk.spot.visit_id is not None
    return bench.desk.book.read.marks(bench.desk.spot.visit_id)


def choose(bench: BenchView, text: str, mark: Mark | None = None) -> None:
    menu = QMenu(bench)
    fill_mark_menu(menu, bench, Face.B, 700, mark)
    found = [action for action in _all(menu) if action.text() == text]
    assert found, [action.text() for action in _all(menu)]
    found[0].trigger()


def _all(menu: QMenu) -> list[QAction]:
    made = []
    for action in menu.actions():
        inner = action.menu()
        made += _all(inner) if isinstance(inner, QMenu) else [action]
    return made


def test_the_queen_and_her_cells_are_marked_on_the_cell(bench: BenchView) -> None:
    choose(bench, "Queen seen here")
    choose(bench, "charged queen cell")
    assert [(mark.kind, mark.cell_kind, mark.face, mark.cell) for mark in marks(bench)] == [
        (MarkKind.QUEEN, None, Face.B, 700),
        (MarkKind.QUEEN_CELL, CellKind.CHARGED, Face.B, 700),
    ]


def test_what_a_cell_holds_is_taken_up_changed_or_kept_to(bench: BenchView) -> None:
    spot = bench.desk.spot
    assert spot.visit_id is not None
    assert spot.frame_id is not None
    bench.desk.do(LayOutComb(spot.visit_id, spot.frame_id, "H"))
    choose(bench, "Paint with sealed stores")
    assert bench.hand.content is Content.STORES
    bench.hand.take_content(Content.NECTAR)
    choose(bench, "Paint only over sealed stores")
    assert bench.hand.only is Content.STORES
    choose(bench, "Paint over everything")
    assert bench.hand.only is None
    choose(bench, "Change all sealed stores of this side to nectar or thin syrup")
    counts = bench.sides[Face.B].canvas.side.counts
    assert counts[Content.NECTAR] == sum(counts)
    assert bench.sides[Face.A].canvas.side.counts[Content.NECTAR] == 0
    assert bench.desk.book.undo_label == "change sealed stores to nectar or thin syrup on 5B"


def test_a_side_is_noted_as_last_time_by_the_menu(bench: BenchView) -> None:
    choose(bench, "This side looks as last time")
    spot = bench.desk.spot
    assert spot.visit_id is not None
    noted = {side.face: side.origin for side in bench.desk.book.read.sides(spot.visit_id)}
    assert noted == {Face.B: Origin.UNCHANGED}


def test_kind_and_fate_of_a_cell_are_changed_and_undone(bench: BenchView) -> None:
    choose(bench, "charged queen cell")
    choose(bench, "knocked down", marks(bench)[0])
    assert marks(bench)[0].fate is CellFate.KNOCKED_DOWN
    choose(bench, "torn down queen cell", marks(bench)[0])
    assert marks(bench)[0].cell_kind is CellKind.TORN_DOWN
    choose(bench, "not said", marks(bench)[0])
    assert marks(bench)[0].fate is None
    bench.desk.undo()
    assert str(marks(bench)[0].fate) == "knocked_down"


def test_a_mark_may_lose_its_place_or_go(bench: BenchView) -> None:
    choose(bench, "Queen seen here")
    choose(bench, "On this side, the cell not known", marks(bench)[0])
    assert (marks(bench)[0].face, marks(bench)[0].cell) == (Face.B, None)
    choose(bench, "Take it away", marks(bench)[0])
    assert marks(bench) == ()


def test_notes_are_written_and_rewritten(bench: BenchView, monkeypatch: pytest.MonkeyPatch) -> None:
    for answer, text in (
        (("chalk ", True), "Note here…"),
        (("", True), "Note here…"),
        (("x", False), "Note here…"),
    ):
        monkeypatch.setattr(QInputDialog, "getText", lambda *_a, answer=answer, **_k: answer)
        choose(bench, text)
    assert [mark.text for mark in marks(bench)] == ["chalk"]
    monkeypatch.setattr(QInputDialog, "getText", lambda *_a, **_k: ("wax moth", True))
    choose(bench, "Change the note…", marks(bench)[0])
    assert [mark.text for mark in marks(bench)] == ["wax moth"]
