"""A keeper who does anything: whatever is done can all be undone, done again, and found after reopening."""

import shutil
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from beeworkbook.colony.records import (
    RECORD_TYPES,
    Apiary,
    Colony,
    Due,
    DueKind,
    Event,
    EventKind,
    Feed,
    Frame,
    FrameMake,
    FrameStay,
    Hive,
    Level,
    Mark,
    Part,
    PartKind,
    Question,
    Record,
    Sheet,
    Side,
    Stand,
    Visit,
    VisitId,
    Way,
)
from beeworkbook.comb.codec import unpack
from beeworkbook.comb.contents import CellKind, Content, Face, MarkKind
from beeworkbook.comb.side import CellPatch, blank_cells
from beeworkbook.workbook import edits
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.place import Edit
from beeworkbook.workbook.workbook import Workbook
from tests.workbook.keeping import CAME, LATER, NOW, NUCLEUS, Keeping

Draw = Callable[[st.SearchStrategy[Any]], Any]
Tables = dict[type[Record], tuple[Record, ...]]

DAYS = st.integers(-3, 40).map(lambda days: CAME + timedelta(days=days))
TYPED = st.sampled_from(
    ["", "E1O2S4H1", "S4 / S2O2", "F", "=", "?", "-", "S2W5Q", "E1KC", ".", "H4Q/KS", "W3", "Q"]
)
ANSWERS = st.sampled_from(["", "y", "n", "-", "8", "3", "4-6"])
WORDS = st.sampled_from(["", "a note", "ąę – ü", "x" * 300])


class _Chooser:
    """Edits out of what is in the book, so that most of them mean something."""

    def __init__(self, book: Workbook, draw: Draw) -> None:
        self.book = book
        self.draw = draw

    def one(self, cls: type[Any]) -> Any:
        found = self.book.read.find(cls)
        return self.draw(st.sampled_from(found)) if found else None

    def day(self) -> date:
        day: date = self.draw(DAYS)
        return day

    def box(self) -> Any:
        return self.draw(st.sampled_from(self.book.read.find(Part, kind=PartKind.BROOD_BOX)))

    def noted(self) -> tuple[Any, Any]:
        """A comb something was noted of, and the visit."""
        side = self.one(Side)
        return side.visit_id, side.frame_id

    def face(self) -> Face:
        face: Face = self.draw(st.sampled_from(Face))
        return face

    def paint(self) -> Edit:
        visit, frame, face = self.one(Visit), self.one(Frame), self.face()
        lattice = self.book.read.frame_type(frame.frame_type).lattice
        side = self.book.read.side(visit.id, frame.id, face)
        cells = unpack(side.cells, cells=lattice.cells) if side else blank_cells(lattice)
        first = self.draw(st.integers(0, lattice.cells - 1))
        content = self.draw(st.sampled_from(Content))
        indices = np.arange(first, min(lattice.cells, first + 60))
        return edits.PaintCells(
            visit.id, frame.id, face, CellPatch.painting(cells, indices, content), content
        )

    def edit(self) -> Edit | None:
        """One edit, None if there is nothing it could be about."""
        try:
            made: Edit = self.draw(st.sampled_from(self.choices))()
        except (AttributeError, TypeError):  # one of the records it needs is not there
            return None
        return made

    @property
    def choices(self) -> list[Callable[[], Any]]:
        draw, one, day = self.draw, self.one, self.day
        return [
            self.paint,
            self.paint,
            lambda: edits.LayOutComb(one(Visit).id, one(Frame).id, draw(TYPED)),
            lambda: edits.LayOutComb(one(Visit).id, one(Frame).id, draw(TYPED)),
            lambda: edits.SetCovered(
                one(Visit).id, one(Frame).id, self.face(), draw(st.sampled_from([None, 0, 5]))
            ),
            lambda: edits.AsLastTime(one(Visit).id, one(Frame).id, self.face()),
            lambda: edits.InVisit(
                one(Colony).id, day(), edits.LayOutComb(VisitId(0), one(Frame).id, draw(TYPED))
            ),
            lambda: edits.InVisit(
                one(Colony).id, day(), edits.AddMark(VisitId(0), MarkKind.QUEEN, one(Frame).id)
            ),
            lambda: edits.ClearSide(one(Visit).id, one(Frame).id, self.face()),
            lambda: edits.CopySide(one(Visit).id, one(Frame).id, self.face(), one(Side).id),
            lambda: edits.AddMark(
                one(Visit).id, MarkKind.QUEEN, one(Frame).id, self.face(), draw(st.integers(0, 99))
            ),
            lambda: edits.AddMark(one(Visit).id, MarkKind.QUEEN_CELL, cell_kind=CellKind.CHARGED),
            lambda: edits.MoveMark(one(Mark).id, one(Frame).id, self.face(), draw(st.integers(0, 5000))),
            lambda: edits.ChangeMark(replace(one(Mark), text=draw(WORDS)), "text"),
            lambda: edits.RemoveMark(one(Mark).id),
            lambda: edits.SwapSides(*self.noted()),
            lambda: edits.MirrorDrawings(one(Visit).id, self.box().id),
            lambda: edits.MirrorSide(*self.noted(), self.face()),
            lambda: edits.MoveDrawing(*self.noted(), one(Frame).id, to_day=day()),
            lambda: edits.MoveDrawing(*self.noted(), one(Frame).id, to_visit_id=one(Visit).id),
            lambda: edits.MoveVisit(one(Visit).id, one(Colony).id, day()),
            lambda: edits.BeginVisit(one(Colony).id, day()),
            lambda: edits.BeginRound(one(Apiary).id, day(), weather=draw(WORDS)),
            lambda: edits.RemoveVisit(one(Visit).id),
            lambda: edits.SetAnswer(one(Visit).id, draw(st.sampled_from(Question)), draw(ANSWERS)),
            lambda: edits.SetAnswer(one(Visit).id, draw(st.sampled_from(Question)), draw(ANSWERS)),
            lambda: edits.SetNote(one(Visit).id, draw(WORDS)),
            lambda: edits.SetLevel(one(Visit).id, draw(st.sampled_from(Level))),
            lambda: edits.SetNext(one(Visit).id, draw(st.none() | DAYS), "why"),
            lambda: edits.PassOver(one(Colony).id, day(), reason=draw(WORDS)),
            lambda: edits.GiveFeed(
                one(Colony).id, day(), draw(st.sampled_from(["", "2L 1:1", "1 kg fondant"]))
            ),
            lambda: edits.SetFeedLeft(one(Feed).id, draw(st.sampled_from(["", "0", "0.5"])), day()),
            lambda: edits.SetHeft(one(Colony).id, day(), draw(st.sampled_from([None, 14.0])), 15.5),
            lambda: edits.AddEvent(one(Colony).id, day(), draw(st.sampled_from(EventKind))),
            lambda: edits.ChangeEvent(replace(one(Event), day=day())),
            lambda: edits.RemoveEvent(one(Event).id),
            lambda: edits.AddDue(DueKind.BRING, day(), "a super", one(Colony).id),
            lambda: edits.MoveDue(one(Due).id, day()),
            lambda: edits.DropDue(one(Due).id),
            lambda: edits.DoDue(one(Due).id),
            lambda: edits.UndoDue(one(Due).id),
            lambda: edits.AddPart(one(Hive).id, PartKind.EXCLUDER, day()),
            lambda: edits.AddPart(
                one(Hive).id,
                PartKind.SUPER,
                day(),
                frame_type="bs_shallow",
                places=4,
                new_frames=Content.FOUNDATION,
            ),
            lambda: edits.TakePart(one(Part).id, day()),
            lambda: edits.MovePart(one(Part).id, day(), draw(st.integers(0, 6)), one(Hive).id),
            lambda: edits.SetWay(one(Hive).id, draw(st.sampled_from(Way))),
            lambda: edits.AddFrame(self.box().id, draw(st.integers(1, 11)), day(), make=FrameMake.DUMMY),
            lambda: edits.TakeFrame(one(Frame).id, day()),
            lambda: edits.MoveFrame(one(Frame).id, self.box().id, draw(st.integers(1, 11)), day()),
            lambda: edits.TurnFrame(one(Frame).id, day()),
            lambda: edits.SetDroneCells(one(Frame).id, drone_cells=True, visit_id=one(Visit).id),
            lambda: edits.NumberFromOtherEnd(self.box().id, day()),
            lambda: edits.MoveColony(one(Colony).id, one(Stand).id, day()),
            lambda: edits.OrderFrames(
                self.box().id,
                tuple(frame.id for frame in draw(st.permutations(self.book.read.find(Frame)[:4]))),
                day(),
            ),
            lambda: edits.Together(
                (edits.SetWho(one(Visit).id, draw(WORDS)), edits.TurnFrame(one(Frame).id, day())), "both"
            ),
            lambda: edits.ReorderStands(
                one(Apiary).id, tuple(stand.id for stand in draw(st.permutations(self.book.read.find(Stand))))
            ),
            lambda: edits.ChangeRecord(replace(one(Colony), came_from=draw(WORDS)), field="came_from"),
            lambda: edits.RemoveRecord(Frame, one(Frame).id),
            lambda: edits.AddStand(one(Apiary).id, draw(WORDS)),
            lambda: edits.RenameRecord(Colony, one(Colony).id, draw(WORDS)),
            lambda: edits.RemoveRecord(
                cls := draw(st.sampled_from([Frame, FrameStay, Stand, Colony, Side, Part, Hive])), one(cls).id
            ),
            lambda: edits.ArriveColony(replace(NUCLEUS, name=draw(WORDS), came_on=day())),
        ]


@contextmanager
def _copy_of(start: Path) -> Iterator[Path]:
    with tempfile.TemporaryDirectory() as folder:
        yield Path(shutil.copy(start, Path(folder) / "trial.beebook"))


_START: list[Path] = []


def _start() -> Path:
    """A closed book with two colonies, made once."""
    if not _START:
        folder = Path(tempfile.mkdtemp())
        kept = Keeping(folder / "start.beebook")
        kept.another(flank=None)
        kept.paint(5)
        kept.paint(5, Face.B, Content.STORES)
        for place, typed in ((4, "E1O2S4H1"), (6, "S4 / S2O2Q"), (1, "="), (2, "?")):
            kept.book.do(edits.LayOutComb(kept.visit, kept.frame(place), typed))
        kept.book.close()
        _START.append(kept.book.path)
    return _START[0]


def _tables(book: Workbook) -> Tables:
    return {cls: book.read.find(cls) for cls in RECORD_TYPES}


def _open(path: Path) -> Workbook:
    return Workbook.open(path, today=LATER, now=lambda: NOW)


def _hangs_well(book: Workbook) -> None:
    """What must hold after any edit: no empty stay, and no frame in two places at once."""
    stays = book.read.find(FrameStay)
    assert all(stay.until is None or stay.since < stay.until for stay in stays)
    for one in stays:
        for other in stays:
            if one.id < other.id and one.frame_id == other.frame_id:
                assert (one.until is not None and one.until <= other.since) or (
                    other.until is not None and other.until <= one.since
                )


@settings(max_examples=30)
@given(st.data())
def test_any_edits_undone_leave_every_table_as_before_and_redone_as_after(data: st.DataObject) -> None:
    with _copy_of(_start()) as path, _open(path) as book:
        before = _tables(book)
        chooser = _Chooser(book, data.draw)
        for _ in range(data.draw(st.integers(1, 14))):
            present = _tables(book)
            edit = chooser.edit()
            if edit is None:
                continue
            try:
                book.do(edit)
            except RefusedError:
                assert _tables(book) == present
            else:
                _hangs_well(book)
        after = _tables(book)
        while book.undo() is not None:
            pass
        assert _tables(book) == before
        while book.redo() is not None:
            pass
        assert _tables(book) == after
        book.close()
        with _open(path) as again:
            assert _tables(again) == after


@settings(max_examples=15)
@given(st.data())
def test_undo_and_redo_at_any_point_lead_to_the_state_that_was_there(data: st.DataObject) -> None:
    with _copy_of(_start()) as path, _open(path) as book:
        chooser = _Chooser(book, data.draw)
        states, at = [_tables(book)], 0
        for _ in range(data.draw(st.integers(1, 12))):
            turn = data.draw(st.sampled_from(["do", "do", "do", "undo", "redo"]))
            if turn == "undo":
                at = at if book.undo() is None else at - 1
            elif turn == "redo":
                at = at if book.redo() is None else at + 1
            elif (edit := chooser.edit()) is not None:
                book.end_merge()
                with suppress(RefusedError):
                    book.do(edit)
                if len(book._history) > at:
                    states, at = [*states[: at + 1], _tables(book)], at + 1
            assert _tables(book) == states[at]


def test_a_sheet_is_undone_too(tmp_path: Path) -> None:
    kept = Keeping(tmp_path / "trial.beebook")
    before = kept.everything()
    kept.book.do(edits.KeepSheet(Sheet(0, "ACDE7", kept.colony, LATER, 1, 2, "a4", field_map="{}")))  # type: ignore[arg-type]
    assert kept.book.read.find(Sheet)[0].code == "ACDE7"
    kept.book.undo()
    assert kept.everything() == before
    kept.book.close()
