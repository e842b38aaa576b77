import sqlite3
from contextlib import closing
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path

import pytest

from beeworkbook.colony.records import Colony, Level, Setting, VisitId
from beeworkbook.store.errors import DiskFullError
from beeworkbook.store.link import Link
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.edits import RenameRecord, SetLevel, SetNote, SetSetting
from beeworkbook.workbook.errors import (
    AlreadyOpenError,
    NotKeptError,
    ReadOnlyError,
    RefusedError,
    StoreError,
)
from beeworkbook.workbook.place import Done, Place, SingleEdit
from beeworkbook.workbook.workbook import FILE_ENDING, Workbook, restore_copy
from tests.workbook.keeping import CAME, LATER, LOOK, NOW, Keeping


def test_a_new_workbook_has_its_title_and_the_day_it_was_given(tmp_path: Path) -> None:
    path = tmp_path / f"mine{FILE_ENDING}"
    with Workbook.create(path, "Home apiary", today=LATER) as book:
        assert (book.title, book.path, book.today) == ("Home apiary", path, LATER)
        assert (book.read_only, book.is_sample, book.last_saved) == (False, False, None)
        assert (book.undo_label, book.redo_label) == (None, None)
        assert book.undo() is None
        assert book.redo() is None
    with pytest.raises(StoreError, match="already a file"):
        Workbook.create(path, "Again", today=LATER)


def test_today_may_be_told_anew_each_time(tmp_path: Path) -> None:
    day = [CAME]
    with Workbook.create(tmp_path / "a.beebook", "A", today=lambda: day[0]) as book:
        assert book.today == CAME
        day[0] = LATER
        assert book.today == LATER


def test_a_file_without_a_title_is_called_by_its_name(tmp_path: Path) -> None:
    with Workbook.create(tmp_path / "orchard.beebook", "", today=LATER) as book:
        assert book.title == "orchard"
        book.do(SetSetting("sample", "yes"))
        assert book.is_sample


def test_a_step_goes_to_its_place_and_back(keeping: Keeping) -> None:
    keeping.book.do(SetNote(keeping.visit, "quiet"))
    assert (keeping.book.undo_label, keeping.book.redo_label) == ("write the note", None)
    assert keeping.book.undo() == Place(colony_id=keeping.colony, visit_id=keeping.visit, day=LOOK)
    assert keeping.book.redo_label == "write the note"
    assert keeping.noted().note == ""
    keeping.book.redo()
    assert keeping.noted().note == "quiet"


def test_visits_are_stamped_in_utc_when_they_are_written_and_undo_brings_the_stamp_back(
    tmp_path: Path,
) -> None:
    kept = Keeping(tmp_path / "trial.beebook")
    before = kept.noted().saved_utc
    zone = timezone(timedelta(hours=2))
    kept.book._now = lambda: datetime(2026, 5, 16, 20, 0, 0, 5, tzinfo=zone)
    kept.book.do(SetNote(kept.visit, "x"))
    assert kept.noted().saved_utc == datetime(2026, 5, 16, 18, 0, tzinfo=UTC)
    assert kept.book.last_saved == datetime(2026, 5, 16, 18, 0, tzinfo=UTC)
    kept.book.undo()
    assert kept.noted().saved_utc == before == NOW
    kept.book.close()


def test_listeners_hear_after_it_is_on_the_disk_and_once(keeping: Keeping) -> None:
    seen: list[str] = []

    def listen(changes: Changes) -> None:
        with closing(sqlite3.connect(f"file:{keeping.book.path}?mode=ro", uri=True)) as other:
            (note,) = other.execute("SELECT note FROM visit WHERE id = ?", (keeping.visit,)).fetchone()
        seen.append(f"{note}:{len(changes.steps)}")

    stop = keeping.book.subscribe(listen)
    keeping.book.do(SetNote(keeping.visit, "quiet"))
    assert seen == ["quiet:1"]
    stop()
    stop()
    keeping.book.do(SetNote(keeping.visit, "more"))
    assert len(seen) == 1


def test_an_edit_that_changes_nothing_is_heard_by_nobody(keeping: Keeping) -> None:
    heard: list[Changes] = []
    keeping.book.subscribe(heard.append)
    steps = len(keeping.book._history)
    keeping.book.do(SetNote(keeping.visit, ""))
    assert heard == []
    assert len(keeping.book._history) == steps


def test_a_face_that_fails_loses_no_change(keeping: Keeping, caplog: pytest.LogCaptureFixture) -> None:
    heard: list[Changes] = []

    def fail(_changes: Changes) -> None:
        raise RuntimeError("a slip of a face")

    keeping.book.subscribe(fail)
    keeping.book.subscribe(heard.append)
    keeping.book.do(SetNote(keeping.visit, "kept"))
    assert keeping.noted().note == "kept"
    assert keeping.book.undo_label == "write the note"
    assert len(heard) == 1
    assert "a slip of a face" in caplog.text


class _Slip(SingleEdit):
    """An edit that writes and then fails, as a bug of ours would."""

    def apply(self, tx: object) -> Done:
        tx.put(Setting("title", "half done"))  # type: ignore[attr-defined]
        raise ZeroDivisionError


def test_a_slip_of_ours_rolls_back_and_is_not_hidden(keeping: Keeping) -> None:
    before, label = keeping.everything(), keeping.book.undo_label
    with pytest.raises(ZeroDivisionError):
        keeping.book.do(_Slip())
    assert keeping.everything() == before
    assert keeping.book.undo_label == label


class _NoDone(SingleEdit):
    def apply(self, _tx: object) -> object:
        return None


def test_an_edit_has_to_say_what_it_did(keeping: Keeping) -> None:
    with pytest.raises(TypeError):
        keeping.book.do(_NoDone())  # type: ignore[arg-type]


def test_a_full_disk_leaves_workbook_and_history_as_they_were(
    keeping: Keeping, monkeypatch: pytest.MonkeyPatch
) -> None:
    keeping.book.do(SetNote(keeping.visit, "safe"))
    before, steps = keeping.everything(), len(keeping.book._history)
    heard: list[Changes] = []
    keeping.book.subscribe(heard.append)

    def full(_link: Link) -> None:
        raise DiskFullError(keeping.book.path)

    with monkeypatch.context() as patched:
        patched.setattr(Link, "commit", full)
        with pytest.raises(NotKeptError, match="disk is full"):
            keeping.book.do(SetLevel(keeping.visit, Level.PAINTED))
        with pytest.raises(NotKeptError, match="disk is full"):
            keeping.book.undo()
    assert keeping.everything() == before
    assert (len(keeping.book._history), keeping.book.undo_label) == (steps, "write the note")
    assert heard == []
    keeping.book.undo()
    assert keeping.noted().note == ""


def test_a_book_for_looking_refuses_in_a_sentence(keeping: Keeping) -> None:
    keeping.book.close()
    with Workbook.open(keeping.book.path, today=LATER, read_only=True) as book:
        assert book.read_only
        assert book.read.get(Colony, keeping.colony) is not None
        with pytest.raises(ReadOnlyError, match="for looking only"):
            book.do(SetNote(keeping.visit, "x"))
        assert book.undo_label is None


def test_a_second_window_on_one_file_is_told_how_to_reach_the_first(keeping: Keeping) -> None:
    keeping.book.say_reach("window-7")
    with pytest.raises(AlreadyOpenError) as refusal:
        Workbook.open(keeping.book.path, today=LATER)
    assert refusal.value.reach == "window-7"


def test_closed_it_is_one_file_and_opens_as_it_was(keeping: Keeping) -> None:
    keeping.paint(5)
    before = keeping.everything()
    keeping.book.close()
    keeping.book.close()
    assert [path.name for path in keeping.book.path.parent.iterdir()] == ["trial.beebook"]
    with Workbook.open(keeping.book.path, today=LATER) as book:
        assert {cls: book.read.find(cls) for cls in before} == before


def test_a_copy_is_made_at_the_first_change_of_a_day_and_can_be_restored(tmp_path: Path) -> None:
    path, shelf = tmp_path / "a.beebook", tmp_path / "copies"
    day: list[date] = [CAME]
    book = Workbook.create(path, "First", today=lambda: day[0], copies=shelf)
    day[0] = LATER
    book.do(SetSetting("title", "Second"))
    book.do(SetSetting("title", "Third"))
    copies = book.copies()
    assert [copy.day for copy in copies] == [LATER, CAME]
    assert book.copy_trouble is None
    book.close()
    restore_copy(path, copies[0], shelf)
    with Workbook.open(path, today=LATER, copies=shelf) as again:
        assert again.title == "First"
        with pytest.raises(NotKeptError):
            restore_copy(path, copies[0], shelf)


def test_a_copy_is_saved_where_nothing_is(keeping: Keeping, tmp_path: Path) -> None:
    target = tmp_path / "copy.beebook"
    keeping.book.save_copy(target)
    with Workbook.open(target, today=LATER) as copy:
        assert copy.title == "Trial"
    with pytest.raises(NotKeptError):
        keeping.book.save_copy(target)
    assert keeping.book.copies() == ()
    assert keeping.book.warning is None


def test_a_whole_workbook_is_checked_in_sentences(keeping: Keeping) -> None:
    keeping.paint(5)
    assert keeping.book.check() == ()


def test_undo_has_no_limit(keeping: Keeping) -> None:
    before = keeping.everything()
    for number in range(120):
        keeping.book.do(RenameRecord(Colony, keeping.colony, f"Wall {number}"))
    for _ in range(120):
        assert keeping.book.undo() is not None
    assert keeping.everything() == before


def test_what_was_removed_since_is_refused(keeping: Keeping) -> None:
    with pytest.raises(RefusedError, match="This visit is no longer"):
        keeping.book.do(SetNote(VisitId(999), "x"))
