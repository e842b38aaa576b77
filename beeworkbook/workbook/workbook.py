"""The open workbook: what a face reads from and does edits to.

One finished action is one transaction is one undo step. Listeners hear of a change after it is on
the disk, never before, and cannot undo it by failing.
"""

import logging
import time
from collections.abc import Callable, Mapping
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Final, Self

from beeworkbook.colony.records import Setting, Side, SideId, Visit, VisitId
from beeworkbook.comb.lattice import CellIndices
from beeworkbook.store import database
from beeworkbook.store.copies import Copy, CopyShelf
from beeworkbook.store.database import Database
from beeworkbook.store.errors import StoreError
from beeworkbook.store.form import FILE_ENDING
from beeworkbook.store.reader import Reader
from beeworkbook.store.transaction import Step, Transaction
from beeworkbook.workbook.changes import Changes, changes_of
from beeworkbook.workbook.errors import NotKeptError, ReadOnlyError
from beeworkbook.workbook.history import History, HistoryStep, do_again, take_back
from beeworkbook.workbook.place import Done, Edit, Place

__all__ = ["FILE_ENDING", "Copy", "Workbook", "restore_copy"]

Clock = Callable[[], datetime]
Listener = Callable[[Changes], None]

TITLE: Final = "title"
HEMISPHERE: Final = "hemisphere"
SAMPLE: Final = "sample"

_log = logging.getLogger(__name__)


class Workbook:
    """One workbook file, open; made by `create` or `open`, and to be closed."""

    def __init__(
        self, base: Database, *, today: Callable[[], date], now: Clock, pause: Callable[[], float]
    ) -> None:
        self._base = base
        self._today = today
        self._now = now
        self._pause = pause
        self._history = History()
        self._listeners: list[Listener] = []
        self.last_saved: datetime | None = None
        """When the last change was on the disk, in UTC; None before the first one."""

    @classmethod
    def create(
        cls,
        path: Path,
        title: str,
        *,
        today: date | Callable[[], date],
        now: Clock | None = None,
        copies: Path | None = None,
        reach: str = "",
        pause: Callable[[], float] = time.monotonic,
    ) -> "Workbook":
        """A new workbook with a title, where nothing is yet, open.

        `today` is the day or tells it; `copies` is the folder for daily copies; `reach` says how this
        window is reached.
        Errors: StoreError with a sentence.
        """
        tells = today if callable(today) else lambda: today
        base = database.create(path, reach=reach, copies=copies, today=tells)
        book = cls(base, today=tells, now=now or _utc_now, pause=pause)
        with base.write() as tx:
            tx.put(Setting(TITLE, title))
        return book

    @classmethod
    def open(
        cls,
        path: Path,
        *,
        today: date | Callable[[], date],
        now: Clock | None = None,
        read_only: bool = False,
        copies: Path | None = None,
        reach: str = "",
        pause: Callable[[], float] = time.monotonic,
    ) -> "Workbook":
        """A workbook that is there; one that may not be written is open for looking only.

        Errors: StoreError with a sentence; the file is not touched.
        """
        tells = today if callable(today) else lambda: today
        base = database.open_database(path, read_only=read_only, reach=reach, copies=copies, today=tells)
        return cls(base, today=tells, now=now or _utc_now, pause=pause)

    # --- what it is ---------------------------------------------------------------------------

    @property
    def path(self) -> Path:
        """Where the file lies."""
        return self._base.path

    @property
    def read(self) -> Reader:
        """All reads, as frozen records."""
        return self._base.reader

    @property
    def today(self) -> date:
        """The day taken for today."""
        return self._today()

    @property
    def read_only(self) -> bool:
        """Whether it is open for looking only."""
        return self._base.read_only

    @property
    def warning(self) -> str | None:
        """A sentence about the risk of where the file lies, or None."""
        return self._base.warning

    @property
    def copy_trouble(self) -> str | None:
        """Why the copy of the day could not be made, in a sentence, or None."""
        return None if self._base.copy_trouble is None else str(self._base.copy_trouble)

    @property
    def title(self) -> str:
        """What the keeper calls it."""
        return self.setting(TITLE) or self.path.stem

    @property
    def is_sample(self) -> bool:
        """Whether it holds the invented apiary that ships with the program."""
        return self.setting(SAMPLE) == "yes"

    def setting(self, name: str, default: str = "") -> str:
        """One named value of the workbook."""
        return self.read.setting(name, default)

    # --- doing --------------------------------------------------------------------------------

    @property
    def undo_label(self) -> str | None:
        """What undo would take back, in words."""
        return self._history.undo_label

    @property
    def redo_label(self) -> str | None:
        """What redo would do again, in words."""
        return self._history.redo_label

    def do(self, edit: Edit, source: object = None) -> object:
        """Do an edit and keep it; gives the id of what it made, or None.

        Errors: RefusedError, and then the workbook and the history are as they were.
        """
        from beeworkbook.workbook.settling import settle_touched  # late: a start does no edit

        def apply(tx: Transaction) -> object:
            made = edit.apply(tx)
            settle_touched(tx)
            return made

        done, journal = self._write(apply, stamp=self._stamp())
        if not isinstance(done, Done):
            raise TypeError("an edit gives a Done")
        if journal:
            step = HistoryStep(done.label, done.place, journal, edit.merge_key, self._pause())
            self._history.keep(step)
            self._tell(journal, source, done.cells)
        return done.value

    def undo(self, source: object = None) -> Place | None:
        """Take the last step back; gives its place, or None if there is none.

        Errors: RefusedError, and then the workbook and the history are as they were.
        """
        step = self._history.next_undo
        if step is None:
            return None
        return self._turn(step, take_back, self._history.undone, source)

    def redo(self, source: object = None) -> Place | None:
        """Do the step again that was undone last; gives its place, or None if there is none.

        Errors: RefusedError, and then the workbook and the history are as they were.
        """
        step = self._history.next_redo
        if step is None:
            return None
        return self._turn(step, do_again, self._history.redone, source)

    def end_merge(self) -> None:
        """A field was left: what is typed next is a step of its own."""
        self._history.end_merge()

    def subscribe(self, listener: Listener) -> Callable[[], None]:
        """Hear of every change after it is kept; gives what stops it."""
        self._listeners.append(listener)

        def unsubscribe() -> None:
            if listener in self._listeners:
                self._listeners.remove(listener)

        return unsubscribe

    # --- the file -----------------------------------------------------------------------------

    def save_copy(self, path: Path) -> None:
        """A whole copy at a place where nothing is yet. Errors: NotKeptError."""
        try:
            self._base.copy_to(path)
        except StoreError as error:
            raise NotKeptError(str(error)) from error

    def copies(self) -> tuple[Copy, ...]:
        """The copies kept of this workbook, newest first."""
        return () if self._base.shelf is None else self._base.shelf.copies()

    def check(self) -> tuple[str, ...]:
        """What is wrong with it, a sentence each; nothing if it is in order. Every drawing is read."""
        from beeworkbook.store.check import check

        return tuple(finding.text for finding in check(self._base))

    def settle(self) -> None:
        """Bring the one file up to date while it is open, so that a copy of it alone is whole.

        For a pause: it is small work, but it waits for the disk. What the disk refuses is tried again later.
        """
        try:
            self._base.settle()
        except StoreError:
            _log.warning("the log could not be folded into the file; nothing is lost by that", exc_info=True)

    def say_reach(self, reach: str) -> None:
        """Let a second start on this file know how this window is reached."""
        self._base.say_reach(reach)

    def close(self) -> None:
        """Fold everything into the one file and let go of it. A second call does nothing."""
        self._listeners.clear()
        self._base.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *error: object) -> None:
        self.close()

    # --- within -------------------------------------------------------------------------------

    def _stamp(self) -> datetime:
        return self._now().astimezone(UTC).replace(microsecond=0)

    def _write(
        self, act: Callable[[Transaction], object], stamp: datetime | None
    ) -> tuple[object, tuple[Step, ...]]:
        """Do this in one transaction; gives what it gives and the journal."""
        if self.read_only:
            raise ReadOnlyError
        try:
            with self._base.write(stamp=stamp) as tx:
                value = act(tx)
        except StoreError as error:
            raise NotKeptError(str(error)) from error
        self.last_saved = stamp or self._stamp()
        return value, tuple(tx.journal)

    def _turn(
        self,
        step: HistoryStep,
        act: Callable[[Transaction, HistoryStep], None],
        turned: Callable[[], None],
        source: object,
    ) -> Place:
        _, journal = self._write(lambda tx: act(tx, step), stamp=None)
        turned()
        self._tell(journal, source)
        return step.place

    def _tell(
        self,
        journal: tuple[Step, ...],
        source: object,
        known: Mapping[SideId, CellIndices] | None = None,
    ) -> None:
        changes = changes_of(journal, self._visit, self._cells_of, source, known)
        for listener in tuple(self._listeners):
            try:
                listener(changes)
            except Exception:  # noqa: BLE001 - whatever a face does, the change is kept
                _log.exception("a face failed to hear of a change; the change itself is kept")

    def _visit(self, visit_id: VisitId) -> Visit | None:
        return self.read.get(Visit, visit_id)

    def _cells_of(self, side: Side) -> int:
        return self.read.frame_type(side.frame_type).lattice.cells


def restore_copy(path: Path, copy: Copy, copies: Path) -> None:
    """Put a copy in place of a workbook that is closed; what was there is kept as a copy first.

    Errors: NotKeptError with a sentence; the workbook is then as it was.
    """
    try:
        CopyShelf(copies, path).restore(copy)
    except StoreError as error:
        raise NotKeptError(str(error)) from error


def _utc_now() -> datetime:
    return datetime.now(UTC)
