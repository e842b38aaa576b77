from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from beeworkbook.colony.records import Setting
from beeworkbook.store.transaction import Step
from beeworkbook.workbook.edits import RenameRecord, SetNote
from beeworkbook.workbook.errors import StaleStepError
from beeworkbook.workbook.history import PAUSE_SECONDS, History, HistoryStep, do_again, folded, take_back
from beeworkbook.workbook.place import Place
from tests.workbook.keeping import Keeping


def _step(name: str, before: str | None, after: str | None) -> Step:
    return Step(
        Setting,
        name,
        None if before is None else Setting(name, before),
        None if after is None else Setting(name, after),
    )


def _done(label: str, *journal: Step, key: str | None = None, at: float = 0.0) -> HistoryStep:
    return HistoryStep(label, Place(), journal, key, at)


def test_a_new_step_ends_what_could_be_done_again() -> None:
    history = History()
    history.keep(_done("one", _step("a", None, "1")))
    history.undone()
    assert (history.undo_label, history.redo_label) == (None, "one")
    history.keep(_done("two", _step("b", None, "1")))
    assert (history.undo_label, history.redo_label) == ("two", None)
    assert len(history) == 1
    history.clear()
    assert history.next_undo is None
    assert history.next_redo is None


@given(st.floats(0, 5), st.booleans())
def test_steps_of_one_key_merge_within_a_pause_only(wait: float, same: bool) -> None:
    history = History()
    history.keep(_done("one", _step("a", "0", "1"), key="a", at=10.0))
    history.keep(_done("two", _step("a", "1", "2"), key="a" if same else "b", at=10.0 + wait))
    merged = same and 10.0 + wait - 10.0 <= PAUSE_SECONDS
    assert len(history) == (1 if merged else 2)
    step = history.next_undo
    assert step is not None
    assert step.journal == (_step("a", "0" if merged else "1", "2"),)


def test_a_step_undone_and_done_again_never_merges_with_what_is_typed_next() -> None:
    history = History()
    history.keep(_done("one", _step("a", "0", "1"), key="a"))
    history.undone()
    history.redone()
    history.keep(_done("two", _step("a", "1", "2"), key="a"))
    assert len(history) == 2


def test_steps_that_come_to_nothing_leave_no_step() -> None:
    history = History()
    history.keep(_done("one", _step("a", "0", "1"), key="a"))
    history.keep(_done("two", _step("a", "1", "0"), key="a"))
    assert len(history) == 0
    history.end_merge()
    assert _done("empty").is_empty


VALUES = st.sampled_from(["1", "2", "3", None])


@given(st.lists(st.tuples(st.sampled_from("abc"), VALUES), max_size=12))
def test_folded_steps_lead_from_the_same_to_the_same(turns: list[tuple[str, str | None]]) -> None:
    held: dict[str, str | None] = {"a": "0", "b": None, "c": "0"}
    start, journal = dict(held), []
    for name, value in turns:
        if held[name] != value:
            journal.append(_step(name, held[name], value))
            held[name] = value
    short = folded(journal)
    assert len(short) <= len(journal)
    found = dict(start)
    for step in short:
        assert found[str(step.id)] == (step.before.value if isinstance(step.before, Setting) else None)
        found[str(step.id)] = step.after.value if isinstance(step.after, Setting) else None
    assert found == held


def test_a_step_is_only_taken_back_from_what_it_left(keeping: Keeping) -> None:
    keeping.book.do(SetNote(keeping.visit, "one"))
    step = keeping.book._history.next_undo
    assert step is not None
    visit = keeping.noted()
    with keeping.book._base.write() as tx:
        tx.put(replace(visit, note="changed behind our back"))
    before = keeping.everything()
    with pytest.raises(StaleStepError, match="write the note"):
        keeping.book.undo()
    assert keeping.everything() == before
    assert keeping.book.undo_label == "write the note"
    with keeping.book._base.write() as tx:
        tx.put(visit)
        take_back(tx, step)
        with pytest.raises(StaleStepError):
            take_back(tx, step)
        do_again(tx, step)
        with pytest.raises(StaleStepError):
            do_again(tx, step)


def test_a_stroke_takes_little_memory(keeping: Keeping) -> None:
    keeping.paint(5)
    keeping.paint(5, first=300, count=500)
    step = keeping.book._history.next_undo
    assert step is not None
    held = sum(
        len(record.cells)
        for part in step.journal
        for record in (part.before, part.after)
        if record is not None and hasattr(record, "cells")
    )
    assert 0 < held < 3000


def test_steps_that_never_merge_stay_apart(keeping: Keeping) -> None:
    from beeworkbook.colony.records import Colony

    steps = len(keeping.book._history)
    for name in ("A", "B"):
        keeping.book.do(RenameRecord(Colony, keeping.colony, name))
    assert len(keeping.book._history) == steps + 2
