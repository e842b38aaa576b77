"""The line of a round: what is typed into it, with the round and the visit begun on the way, as one step.

A line nobody writes into makes no visit. How far the look went follows from what is noted.
"""

from dataclasses import dataclass, replace
from datetime import date
from typing import Any, Final

from beeworkbook.colony.questions import QuestionError, parse_answer
from beeworkbook.colony.records import (
    Answer,
    ApiaryId,
    ColonyId,
    Due,
    Event,
    Feed,
    Level,
    Mark,
    Question,
    Reply,
    RoundId,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.store.transaction import Transaction
from beeworkbook.workbook.edits.in_visit import with_visit
from beeworkbook.workbook.edits.looking import raise_level
from beeworkbook.workbook.edits.mend import RemoveVisit
from beeworkbook.workbook.edits.visit import BeginRound, SetAnswer, begin_visit, visit_place
from beeworkbook.workbook.found import the
from beeworkbook.workbook.place import Done, Edit

SEEN_INSIDE: Final = frozenset(
    {
        Question.EGGS,
        Question.YOUNG,
        Question.BROOD,
        Question.SEAMS,
        Question.STORES,
        Question.CELLS,
        Question.QUEEN,
        Question.DRAWN,
    }
)
"""What nobody can answer without opening the hive."""
_HANGS_ON: Final[tuple[type[Any], ...]] = (Answer, Side, Mark, Event, Feed, Due)


@dataclass(frozen=True)
class OnLine:
    """An edit of a visit that may not have begun; its `visit_id` is filled in, and it gives the VisitId.

    Begun by feed, a note or a next day alone, a visit is a look that did not open the hive, so that the
    looks that are due stay due.
    """

    apiary_id: ApiaryId
    colony_id: ColonyId
    day: date
    edits: tuple[Edit, ...]
    left_out: str = ""

    @property
    def merge_key(self) -> str | None:
        """One field of one line."""
        keys = [edit.merge_key for edit in self.edits]
        return f"line:{self.colony_id}:{self.day}:{keys[0]}" if len(keys) == 1 and keys[0] else None

    def apply(self, tx: Transaction) -> Done:
        """Gives the VisitId. Errors: as the edits on the line."""
        round_id = BeginRound(self.apiary_id, self.day, left_out=self.left_out).apply(tx).value
        visit = begin_visit(
            tx, self.colony_id, self.day, round_id=RoundId(int(str(round_id))), level=Level.NOT_OPENED
        )
        label, place = "", visit_place(visit)
        for edit in self.edits:
            done = with_visit(edit, visit.id).apply(tx)
            label, place = done.label, done.place
            _follow(tx, visit.id, edit)
        place = replace(place, colony_id=self.colony_id, visit_id=visit.id, day=visit.day)
        return Done(visit.id, label, place)


@dataclass(frozen=True)
class ClearOnLine:
    """An edit that empties a field; a visit in which nothing is left noted goes with it."""

    visit_id: VisitId
    edit: Edit

    @property
    def merge_key(self) -> str | None:
        """The field that is emptied."""
        return self.edit.merge_key

    def apply(self, tx: Transaction) -> Done:
        """Gives the VisitId, or None if the visit went. Errors: as the edit."""
        done = with_visit(self.edit, self.visit_id).apply(tx)
        visit = the(tx, Visit, self.visit_id)
        if _holds_something(tx, visit):
            return Done(visit.id, done.label, done.place)
        RemoveVisit(visit.id).apply(tx)
        return Done(None, done.label, replace(done.place, day=visit.day))


def _holds_something(tx: Transaction, visit: Visit) -> bool:
    if visit.note or visit.next_day or visit.level is Level.PASSED_OVER:
        return True
    hanging = any(tx.find(cls, visit_id=visit.id) for cls in _HANGS_ON)
    return hanging or bool(tx.find(Feed, left_visit_id=visit.id))


def _follow(tx: Transaction, visit_id: VisitId, edit: Edit) -> None:
    """What can only be seen inside says that the hive was opened."""
    if not isinstance(edit, SetAnswer) or edit.question not in SEEN_INSIDE:
        return
    try:
        reply = parse_answer(edit.question, edit.typed).reply
    except QuestionError:
        return
    opened = next(iter(tx.find(Answer, visit_id=visit_id, question=Question.OPENED)), None)
    if reply in {Reply.YES, Reply.NO} and (opened is None or opened.reply is not Reply.NO):
        raise_level(tx, the(tx, Visit, visit_id), Level.ONE_LINE)
