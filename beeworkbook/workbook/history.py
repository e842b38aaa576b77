"""One history for the whole book: what was done, to be undone and done again without limit.

A step is the journal of its transaction: every record before and after. Undo puts the befores back
in reverse, redo the afters, each checked against what the store holds. Nothing here is written to
the workbook; records hold packed cells, so that a stroke is about a kilobyte.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final

from beeworkbook.colony.records import Record
from beeworkbook.store.transaction import Step, Transaction
from beeworkbook.workbook.errors import StaleStepError
from beeworkbook.workbook.place import Place

PAUSE_SECONDS: Final = 2.0
"""Typing that goes on within this time is one undo step. Common practice, no source."""


@dataclass(frozen=True)
class HistoryStep:
    """One finished action. `at` is a monotonic time in seconds."""

    label: str
    place: Place
    journal: tuple[Step, ...]
    merge_key: str | None = None
    at: float = 0.0

    @property
    def is_empty(self) -> bool:
        """Nothing came of it."""
        return not self.journal


class History:
    """Steps done and steps undone, newest last."""

    def __init__(self) -> None:
        self._done: list[HistoryStep] = []
        self._undone: list[HistoryStep] = []

    @property
    def undo_label(self) -> str | None:
        """What undo would take back."""
        return self._done[-1].label if self._done else None

    @property
    def redo_label(self) -> str | None:
        """What redo would do again."""
        return self._undone[-1].label if self._undone else None

    @property
    def next_undo(self) -> HistoryStep | None:
        """The step undo would take back."""
        return self._done[-1] if self._done else None

    @property
    def next_redo(self) -> HistoryStep | None:
        """The step redo would do again."""
        return self._undone[-1] if self._undone else None

    def __len__(self) -> int:
        """How many steps can be undone."""
        return len(self._done)

    def keep(self, step: HistoryStep) -> None:
        """Remember a finished action; what was undone before can no longer be done again."""
        self._undone.clear()
        last = self.next_undo
        if last is None or not _goes_on(last, step):
            self._done.append(step)
            return
        merged = folded((*last.journal, *step.journal))
        self._done.pop()
        if merged:
            self._done.append(replace(step, journal=merged))

    def end_merge(self) -> None:
        """What is typed next is a step of its own, e.g. since the field was left."""
        if self._done:
            self._done[-1] = replace(self._done[-1], merge_key=None)

    def undone(self) -> None:
        """The newest step was taken back."""
        self._undone.append(replace(self._done.pop(), merge_key=None))

    def redone(self) -> None:
        """The step undone last was done again."""
        self._done.append(self._undone.pop())

    def clear(self) -> None:
        """Forget all, as when another state of the workbook was brought back."""
        self._done.clear()
        self._undone.clear()


def _goes_on(last: HistoryStep, step: HistoryStep) -> bool:
    same = step.merge_key is not None and step.merge_key == last.merge_key
    return same and step.at - last.at <= PAUSE_SECONDS


def folded(journal: Iterable[Step]) -> tuple[Step, ...]:
    """The same change in fewer steps: changes of one record between which nothing came or went are one.

    Additions and removals keep their places, since other records may hang on them.
    """
    kept: list[Step] = []
    where: dict[tuple[type[Record], int | str], int] = {}
    for step in journal:
        at = where.get((step.cls, step.id))
        if at is not None and step.before is not None and step.after is not None:
            kept[at] = replace(kept[at], after=step.after)
            continue
        if step.after is None and at == len(kept) - 1 and kept[at].before is None:
            kept.pop()  # it came last and went again
            del where[step.cls, step.id]
            continue
        if step.before is None or step.after is None:
            where.clear()
        where[step.cls, step.id] = len(kept)
        kept.append(step)
    return tuple(step for step in kept if step.before != step.after)


def take_back(tx: Transaction, step: HistoryStep) -> None:
    """Put back what was before this step.

    Errors: StaleStepError if the store does not hold what the step left; the transaction rolls back.
    """
    for part in reversed(step.journal):
        _put(tx, step.label, part, part.after, part.before)


def do_again(tx: Transaction, step: HistoryStep) -> None:
    """Put again what was after this step.

    Errors: StaleStepError if the store does not hold what the step found.
    """
    for part in step.journal:
        _put(tx, step.label, part, part.before, part.after)


def _put(tx: Transaction, label: str, part: Step, held: Record | None, wanted: Record | None) -> None:
    if tx.find_one(part.cls, part.id) != held:
        raise StaleStepError(label)
    if wanted is None:
        tx.remove(part.cls, part.id)
    else:
        tx.put(wanted)
