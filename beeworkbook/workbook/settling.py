"""What was due and what a visit noted: done by what answers it, open again when that is taken away.

An edit does not see to this itself: after each, the workbook has the visits it touched settled, within
the same transaction, so that it is one step with what was noted. What the keeper ticked off by hand
bears no visit and is left alone.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any, Final

from beeworkbook.colony.records import (
    Answer,
    Due,
    DueKind,
    DueState,
    Event,
    EventKind,
    Feed,
    Frame,
    Level,
    Mark,
    Question,
    Reply,
    Setting,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.colony.seasons import Hemisphere, Season, season_of
from beeworkbook.comb.contents import MarkKind, Origin
from beeworkbook.store.transaction import Step, Transaction
from beeworkbook.workbook.found import held

LOOKS: Final = frozenset({DueKind.LOOK, DueKind.FIRST_LOOK})
_SHUT: Final = frozenset({Level.NOT_OPENED, Level.PASSED_OVER})
_SAID: Final = frozenset({Reply.YES, Reply.NO})
_OF_HER: Final = frozenset({Question.QUEEN, Question.EGGS})
_IN_VISIT: Final = ("level", "day", "colony_id", "next_day")
"""The fields of a visit that decide what it does."""


@dataclass(frozen=True)
class _Noted:
    """What one visit noted, read when it is first asked for."""

    tx: Transaction
    visit: Visit

    @cached_property
    def answers(self) -> dict[Question, Answer]:
        return {answer.question: answer for answer in self.tx.find(Answer, visit_id=self.visit.id)}

    @cached_property
    def marks(self) -> tuple[Mark, ...]:
        return self.tx.find(Mark, visit_id=self.visit.id)

    @cached_property
    def is_hefted(self) -> bool:
        where = {"colony_id": self.visit.colony_id, "day": self.visit.day}
        return bool(self.tx.find(Event, kind=EventKind.HEFT, **where))

    @cached_property
    def feeds(self) -> tuple[Feed, ...]:
        return self.tx.find(Feed, colony_id=self.visit.colony_id)

    @cached_property
    def looked_inside(self) -> bool:
        """Somebody opened the hive and said or drew something; a page that was opened is no look."""
        if self.visit.level in _SHUT:
            return False
        sides = self.tx.find(Side, visit_id=self.visit.id)
        return bool(self.answers or self.marks or any(map(self._was_seen, sides)))

    def _was_seen(self, side: Side) -> bool:
        """Not only assumed, and not the foundation of a frame that was new that day."""
        if side.origin is Origin.ASSUMED:
            return False
        frame = self.tx.find_one(Frame, side.frame_id)
        return frame is None or frame.since != self.visit.day

    def does(self, due: Due) -> bool:
        """Whether this visit did what was due."""
        if self._is_replaced(due):
            return True
        if due.day > self.visit.day:
            return False
        if due.kind in LOOKS:
            return self.looked_inside or (due.kind is DueKind.LOOK and self._is_winter_look())
        if due.kind is DueKind.FEED_LOOK:
            return self._saw_to_feed()
        return due.kind is DueKind.QUEEN_CAGE and self._looked_for_her()

    def _is_replaced(self, due: Due) -> bool:
        """A next day takes the place of the one an earlier visit asked for; a plan's dues stay."""
        if due.kind is not DueKind.LOOK or due.visit_id is None or self.visit.next_day is None:
            return False
        asked_by = held(self.tx, Visit, due.visit_id)
        return asked_by is not None and asked_by.day <= self.visit.day

    def _is_winter_look(self) -> bool:
        """In winter a hive is hefted and not opened: that is the look."""
        kept = self.tx.find_one(Setting, "hemisphere")
        south = kept is not None and kept.value == Hemisphere.SOUTH.value
        season = season_of(self.visit.day, Hemisphere.SOUTH if south else Hemisphere.NORTH)
        return season is Season.WINTER and (self.is_hefted or self._said(Question.STORES))

    def _saw_to_feed(self) -> bool:
        """Feed was given, or what was left of it noted; where none was on, their stores will do."""
        day = self.visit.day
        if any(day in {feed.day, feed.left_day} for feed in self.feeds):
            return True
        waiting = any(feed.day < day and feed.left_day is None for feed in self.feeds)
        return not waiting and (self.is_hefted or self._said(Question.STORES))

    def _looked_for_her(self) -> bool:
        seen = any(mark.kind is MarkKind.QUEEN for mark in self.marks)
        return self.looked_inside and (seen or any(self._said(question) for question in _OF_HER))

    def _said(self, question: Question) -> bool:
        answer = self.answers.get(question)
        return answer is not None and answer.reply in _SAID


def settle(tx: Transaction, visit: Visit) -> None:
    """Bring what is due for a colony in step with what this visit noted."""
    noted = _Noted(tx, visit)
    mine = {"colony_id": visit.colony_id}
    for due in tx.find(Due, state=DueState.OPEN, **mine):
        if due.visit_id != visit.id and noted.does(due):
            tx.put(replace(due, state=DueState.DONE, done_visit_id=visit.id))
    for due in tx.find(Due, done_visit_id=visit.id, **mine):
        if due.state is DueState.DONE and not noted.does(due):
            tx.put(replace(due, state=DueState.OPEN, done_visit_id=None))


def settle_touched(tx: Transaction) -> None:
    """Settle every visit of which something was noted or taken away in this transaction."""
    for visit_id in dict.fromkeys(_touched(tx, tuple(tx.journal))):
        visit = held(tx, Visit, visit_id)
        if visit is not None:
            settle(tx, visit)


def _touched(tx: Transaction, journal: tuple[Step, ...]) -> Iterable[VisitId]:
    for step in journal:
        if _matters(step):
            for record in (step.before, step.after):
                yield from _visits_of(tx, record)


def _matters(step: Step) -> bool:
    """Whether a change can decide what was done; a stroke on a side that was noted already cannot."""
    before, after = step.before, step.after
    if isinstance(before, Side) and isinstance(after, Side):
        return (before.visit_id, before.origin) != (after.visit_id, after.origin)
    if isinstance(before, Visit) and isinstance(after, Visit):
        return any(getattr(before, name) != getattr(after, name) for name in _IN_VISIT)
    return step.cls in {Answer, Event, Feed, Mark, Side, Visit}


def _visits_of(tx: Transaction, record: Any) -> Iterable[VisitId]:
    if isinstance(record, Visit):
        yield record.id
    elif isinstance(record, (Answer, Side, Mark)):
        yield record.visit_id
    elif isinstance(record, (Event, Feed)):
        days = {record.day, record.left_day} if isinstance(record, Feed) else {record.day}
        for day in sorted(day for day in days if day is not None):
            yield from (visit.id for visit in tx.find(Visit, colony_id=record.colony_id, day=day))
