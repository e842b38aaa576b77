"""What is due: added, moved, dropped, done, and open again."""

from dataclasses import dataclass, replace
from datetime import date

from beeworkbook.colony.records import (
    ApiaryId,
    ColonyId,
    Due,
    DueId,
    DueKind,
    DueState,
    Visit,
    VisitId,
)
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import date_words, say
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.found import the
from beeworkbook.workbook.place import Done, Place, SingleEdit


@dataclass(frozen=True)
class AddDue(SingleEdit):
    """Something to do on a day, and why."""

    kind: DueKind
    day: date
    reason: str
    colony_id: ColonyId | None = None
    apiary_id: ApiaryId | None = None
    until: date | None = None
    visit_id: VisitId | None = None

    def apply(self, tx: Transaction) -> Done:
        """Gives the DueId. Errors: RefusedError if it ends before it begins."""
        if self.until is not None and self.until < self.day:
            raise RefusedError(say("This ends before it begins: give a later last day."))
        due = Due(
            DueId(0),
            self.kind,
            self.day,
            self.reason,
            self.colony_id,
            self.apiary_id,
            self.until,
            self.visit_id,
        )
        label = say("put down for {day}: {what}", day=date_words(self.day), what=self.reason)
        return Done(tx.add(due).id, label, _place(due))


@dataclass(frozen=True)
class MoveDue(SingleEdit):
    """What was due is due on another day; a range keeps its length."""

    due_id: DueId
    day: date

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError. The next look noted in a visit moves along."""
        due = the(tx, Due, self.due_id)
        until = due.until + (self.day - due.day) if due.until is not None else None
        if due.day != self.day:
            tx.put(replace(due, day=self.day, until=until))
            _move_next(tx, due, self.day)
        label = say("move to {day}: {what}", day=date_words(self.day), what=due.reason)
        return Done(None, label, _place(due))


@dataclass(frozen=True)
class DropDue(SingleEdit):
    """It will not be done."""

    due_id: DueId

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        due = _put_state(tx, self.due_id, DueState.DROPPED)
        return Done(None, say("drop: {what}", what=due.reason), _place(due))


@dataclass(frozen=True)
class DoDue(SingleEdit):
    """The keeper says that it was done; what a visit notes ticks its dues off by itself."""

    due_id: DueId

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        due = _put_state(tx, self.due_id, DueState.DONE)
        return Done(None, say("done: {what}", what=due.reason), _place(due))


@dataclass(frozen=True)
class UndoDue(SingleEdit):
    """It is open again."""

    due_id: DueId

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        due = _put_state(tx, self.due_id, DueState.OPEN)
        return Done(None, say("open again: {what}", what=due.reason), _place(due))


def _place(due: Due) -> Place:
    return Place(colony_id=due.colony_id, visit_id=due.visit_id)


def _put_state(tx: Transaction, due_id: DueId, state: DueState) -> Due:
    due = the(tx, Due, due_id)
    after = replace(due, state=state, done_visit_id=None)
    if after != due:
        tx.put(after)
    return after


def _move_next(tx: Transaction, due: Due, day: date) -> None:
    if due.kind is not DueKind.LOOK or due.visit_id is None:
        return
    visit = the(tx, Visit, due.visit_id)
    if visit.next_day == due.day and day > visit.day:
        tx.put(replace(visit, next_day=day))
