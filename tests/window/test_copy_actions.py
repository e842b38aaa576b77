"""Mirroring a side and copying it from another visit, by the keys of the menu and a form."""

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from beeworkbook.colony.records import FrameId, Side, VisitId
from beeworkbook.comb.contents import Face, Origin
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.form import Choice, Form
from beeworkbook.window.main_window import MainWindow
from beeworkbook.workbook.edits import BeginVisit, LayOutComb
from tests.window.conftest import ALT, CTRL, Answerer, press
from tests.workbook.keeping import CAME, LATER, LOOK, Keeping, as_int


@pytest.fixture
def orchard(tmp_path: Path) -> Path:
    """A book with a nucleus looked at twice: comb 5 was drawn on both days, the second time on A alone."""
    path = tmp_path / "nucleus.beebook"
    with Keeping(path) as kept:
        kept.book.do(LayOutComb(kept.visit, kept.frame(5), "E1O2S3P1H1 / S4H4"))
        second = VisitId(as_int(kept.book.do(BeginVisit(kept.colony, LATER))))
        kept.book.do(LayOutComb(second, kept.frame(5), "S6H2 / -"))
    return path


def _at_comb_5(window: MainWindow) -> FrameId:
    desk = window.desk
    window.go_to(View.BENCH)
    box = desk.box()
    assert box is not None
    frame = box.frames[4].frame
    assert frame is not None
    desk.go(day=LATER, frame_id=frame.id, face=Face.A)
    return frame.id


def _side(window: MainWindow, face: Face) -> Side | None:
    spot = window.desk.spot
    assert spot.visit_id is not None
    assert spot.frame_id is not None
    return window.desk.book.read.side(spot.visit_id, spot.frame_id, face)


def _choice(form: QWidget, label: str) -> Choice:
    assert isinstance(form, Form)
    return next(field for field in form.fields if isinstance(field, Choice) and field.label == label)


def test_a_side_is_mirrored_by_its_key_and_undone(window: MainWindow) -> None:
    _at_comb_5(window)
    before = _side(window, Face.A)
    press(Qt.Key.Key_B, CTRL | ALT)
    mirrored = _side(window, Face.A)
    assert before is not None
    assert mirrored is not None
    assert mirrored.cells != before.cells
    assert window.desk.book.undo_label == "mirror 5A"
    press(Qt.Key.Key_Z, CTRL)
    assert _side(window, Face.A) == before


def test_without_a_drawing_there_is_nothing_to_mirror_and_it_is_said(window: MainWindow) -> None:
    _at_comb_5(window)
    window.desk.go(day=CAME.replace(day=20))
    assert window.desk.spot.visit_id is None
    window.commands.do("mirror_side")
    assert window.told_line.sentence == "No drawing lies open."


def test_both_sides_are_copied_from_another_day_as_coarse_as_they_were(
    window: MainWindow, answer: Answerer
) -> None:
    frame_id = _at_comb_5(window)
    earlier = next(v for v in window.desk.visits() if v.day == LOOK)
    old = {side.face: side for side in window.desk.book.read.find(Side, visit_id=earlier.id)}
    assert {side.frame_id for side in old.values()} == {frame_id}

    def fill(form: QWidget) -> None:
        assert "8 May 2026: E1 O2 S3 P1 H1 / S4 H4" in _choice(form, "As on").combo.itemText(0)
        _choice(form, "What").choose(tuple(Face))
        press(Qt.Key.Key_Return)

    answer(fill)
    press(Qt.Key.Key_F, CTRL | ALT)
    for face in Face:
        side = _side(window, face)
        assert side is not None
        assert side.cells == old[face].cells
        assert (side.origin, side.grain, side.copied_from) == (
            Origin.UNCHANGED,
            Origin.EIGHTHS,
            old[face].id,
        )
    assert window.desk.book.undo_label == "copy the comb as it was on 8 May"
    press(Qt.Key.Key_Z, CTRL)
    assert _side(window, Face.B) is None


def test_a_side_that_was_not_looked_at_that_day_is_refused_in_the_form(
    window: MainWindow, answer: Answerer
) -> None:
    _at_comb_5(window)
    window.desk.go(day=LOOK, face=Face.B)
    seen: list[str] = []

    def fill(form: QWidget) -> None:
        assert isinstance(form, Form)
        press(Qt.Key.Key_Return)
        seen.append(form.wrong.text())
        form.reject()

    answer(fill)
    window.commands.do("copy_side")
    assert seen == ["That side was not looked at on that day."]


def test_a_comb_seen_on_no_other_day_says_so(window: MainWindow) -> None:
    _at_comb_5(window)
    box = window.desk.box()
    assert box is not None
    assert box.frames[5].frame is not None
    window.desk.go(frame_id=box.frames[5].frame.id)
    window.commands.do("copy_side")
    assert window.told_line.sentence == "This comb was not looked at on any other day."
