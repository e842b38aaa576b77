"""Rounds and visits: begun, answered field by field, passed over, and what is next."""

from dataclasses import dataclass, replace
from datetime import date, time

from beeworkbook.colony.questions import QuestionError, heading, parse_answer
from beeworkbook.colony.records import (
    Answer,
    AnswerId,
    Apiary,
    ApiaryId,
    Colony,
    ColonyId,
    Due,
    DueId,
    DueKind,
    DueState,
    Level,
    Question,
    Reply,
    Round,
    RoundId,
    Side,
    Visit,
    VisitId,
)
from beeworkbook.store.transaction import Transaction
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.looking import raise_level, set_level
from beeworkbook.workbook.errors import NotReadableError, RefusedError
from beeworkbook.workbook.found import held, the
from beeworkbook.workbook.place import Done, Place, SingleEdit


@dataclass(frozen=True)
class BeginRound(SingleEdit):
    """An afternoon in one apiary. A round of that day and apiary is gone on with."""

    apiary_id: ApiaryId
    day: date
    at: time | None = None
    weather: str = ""
    temperature_c: float | None = None
    who: str = ""
    flowering: str = ""
    left_out: str = ""

    def apply(self, tx: Transaction) -> Done:
        """Gives the RoundId. Errors: GoneError."""
        apiary = the(tx, Apiary, self.apiary_id)
        label = say("begin the round of {day} in {apiary}", day=date_words(self.day), apiary=apiary.name)
        present = tx.find(Round, apiary_id=self.apiary_id, day=self.day)
        if present:
            return Done(present[0].id, label)
        made = tx.add(
            Round(
                RoundId(0),
                self.apiary_id,
                self.day,
                self.at,
                self.weather,
                self.temperature_c,
                self.who,
                self.flowering,
                left_out=self.left_out,
            )
        )
        return Done(made.id, label)


@dataclass(frozen=True)
class ChangeRound:
    """What is asked once in a round, as it is now to be; `field` is the one being typed."""

    round: Round
    field: str = ""

    @property
    def merge_key(self) -> str | None:
        """One field of one round."""
        return f"round:{self.round.id}:{self.field}" if self.field else None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if another round of that day is there."""
        before = the(tx, Round, self.round.id)
        twins = tx.find(Round, apiary_id=self.round.apiary_id, day=self.round.day)
        if any(twin.id != self.round.id for twin in twins):
            raise RefusedError(say("There is a round of that day in this apiary already."))
        if before != self.round:
            tx.put(self.round)
        return Done(None, say("change the round of {day}", day=date_words(self.round.day)))


def begin_visit(
    tx: Transaction,
    colony_id: ColonyId,
    day: date,
    *,
    round_id: RoundId | None = None,
    level: Level = Level.ONE_LINE,
    at: time | None = None,
    who: str = "",
) -> Visit:
    """The visit to a colony on a day, made if there is none; one without a round joins this one."""
    present = next(iter(tx.find(Visit, colony_id=colony_id, day=day)), None)
    if present is None:
        return tx.add(Visit(VisitId(0), colony_id, day, level, round_id, at, who))
    if round_id is not None and present.round_id is None:
        present = replace(present, round_id=round_id)
        tx.put(present)
    return present


@dataclass(frozen=True)
class BeginVisit(SingleEdit):
    """A look at one colony on one day. That day's visit, if there is one, is gone on with."""

    colony_id: ColonyId
    day: date
    round_id: RoundId | None = None
    level: Level = Level.ONE_LINE
    at: time | None = None
    who: str = ""

    def apply(self, tx: Transaction) -> Done:
        """Gives the VisitId. Errors: GoneError."""
        colony = the(tx, Colony, self.colony_id)
        if self.round_id is not None:
            the(tx, Round, self.round_id)
        visit = begin_visit(
            tx,
            self.colony_id,
            self.day,
            round_id=self.round_id,
            level=self.level,
            at=self.at,
            who=self.who,
        )
        label = say("begin the visit to {colony} on {day}", colony=colony.name, day=date_words(self.day))
        return Done(visit.id, label, visit_place(visit))


def visit_place(visit: Visit) -> Place:
    """The place of a visit as a whole."""
    return Place(colony_id=visit.colony_id, visit_id=visit.id, day=visit.day)


@dataclass(frozen=True)
class SetAnswer:
    """One field of a visit as typed; an empty one is blank again, which is not no and not nought."""

    visit_id: VisitId
    question: Question
    typed: str

    @property
    def merge_key(self) -> str | None:
        """One field of one visit."""
        return f"answer:{self.visit_id}:{self.question}"

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; NotReadableError if the answer cannot be read."""
        visit = the(tx, Visit, self.visit_id)
        present = next(iter(tx.find(Answer, visit_id=visit.id, question=self.question)), None)
        if not self.typed.strip():
            if present is not None:
                tx.remove(Answer, present.id)
        else:
            self._answer(tx, visit, present)
        label = say("answer {question}", question=heading(self.question))
        return Done(None, label, replace(visit_place(visit), question=self.question))

    def _answer(self, tx: Transaction, visit: Visit, present: Answer | None) -> None:
        try:
            parsed = parse_answer(self.question, self.typed)
        except QuestionError as error:
            raise NotReadableError(str(error), getattr(error, "position", None)) from error
        answer = Answer(
            present.id if present else AnswerId(0),
            visit.id,
            self.question,
            self.typed,
            parsed.reply,
            parsed.number,
            parsed.second,
        )
        if present is None:
            tx.add(answer)
        elif present != answer:
            tx.put(answer)
        if self.question is Question.OPENED:
            _follow_opened(tx, visit, parsed.reply)


def _follow_opened(tx: Transaction, visit: Visit, reply: Reply | None) -> None:
    """The answer to "opened" says how far the look went, unless combs say more."""
    if reply is Reply.YES:
        raise_level(tx, visit, Level.ONE_LINE)
    elif reply is Reply.NO and not tx.find(Side, visit_id=visit.id):
        set_level(tx, visit, Level.NOT_OPENED)


@dataclass(frozen=True)
class SetLevel(SingleEdit):
    """How far the look went, as the keeper says."""

    visit_id: VisitId
    level: Level

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        visit = set_level(tx, the(tx, Visit, self.visit_id), self.level)
        return Done(None, say("set how far the look went"), visit_place(visit))


@dataclass(frozen=True)
class SetNote:
    """The keeper's own words about a visit."""

    visit_id: VisitId
    note: str

    @property
    def merge_key(self) -> str | None:
        """The note of one visit."""
        return f"note:{self.visit_id}"

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        return _change(tx, self.visit_id, say("write the note"), note=self.note)


@dataclass(frozen=True)
class SetWho:
    """Who looked."""

    visit_id: VisitId
    who: str

    @property
    def merge_key(self) -> str | None:
        """One field of one visit."""
        return f"who:{self.visit_id}"

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        return _change(tx, self.visit_id, say("say who looked"), who=self.who)


@dataclass(frozen=True)
class SetTime(SingleEdit):
    """When it was, if the keeper cares to say."""

    visit_id: VisitId
    at: time | None

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError."""
        return _change(tx, self.visit_id, say("set the time of the visit"), at=self.at)


def _change(tx: Transaction, visit_id: VisitId, label: str, **fields: object) -> Done:
    before = the(tx, Visit, visit_id)
    after = replace(before, **fields)  # type: ignore[arg-type] # the fields are named by the edits above
    if after != before:
        tx.put(after)
    return Done(None, label, visit_place(after))


@dataclass(frozen=True)
class SetNext:
    """When to look again and why; the due follows. None takes the day away.

    It takes the place of the look an earlier visit asked for. What a plan has put down stays.
    """

    visit_id: VisitId
    day: date | None
    reason: str = ""

    @property
    def merge_key(self) -> str | None:
        """The next day of one visit."""
        return f"next:{self.visit_id}"

    def apply(self, tx: Transaction) -> Done:
        """Errors: GoneError; RefusedError if the day is not after the visit."""
        visit = the(tx, Visit, self.visit_id)
        if self.day is not None and self.day <= visit.day:
            raise RefusedError(say("The next look comes after this one: give a later day."))
        visit = replace(visit, next_day=self.day, next_reason=self.reason if self.day else "")
        if visit != held(tx, Visit, visit.id):
            tx.put(visit)
        self._keep_due(tx, visit)
        label = (
            say("set the next look to {day}", day=date_words(self.day))
            if self.day
            else say("take the next look away")
        )
        return Done(None, label, visit_place(visit))

    def _keep_due(self, tx: Transaction, visit: Visit) -> None:
        dues = tx.find(Due, visit_id=visit.id, kind=DueKind.LOOK)
        due = next((due for due in dues if due.state is DueState.OPEN), None)
        if visit.next_day is None:
            if due is not None:
                tx.remove(Due, due.id)
            return
        reason = visit.next_reason or say("next look")
        if due is None:
            tx.add(Due(DueId(0), DueKind.LOOK, visit.next_day, reason, visit.colony_id, visit_id=visit.id))
        elif (due.day, due.reason) != (visit.next_day, reason):
            tx.put(replace(due, day=visit.next_day, reason=reason))


@dataclass(frozen=True)
class PassOver(SingleEdit):
    """A colony that was not looked at in a round, which is a fact worth keeping."""

    colony_id: ColonyId
    day: date
    round_id: RoundId | None = None
    reason: str = ""

    def apply(self, tx: Transaction) -> Done:
        """Gives the VisitId. Errors: GoneError; RefusedError if something was noted that day."""
        colony = the(tx, Colony, self.colony_id)
        visit = begin_visit(tx, self.colony_id, self.day, round_id=self.round_id, level=Level.PASSED_OVER)
        noted = bool(tx.find(Side, visit_id=visit.id))
        if noted or tx.find(Answer, visit_id=visit.id):
            raise RefusedError(say("Something was noted of this colony that day, so it was not passed over."))
        visit = set_level(tx, visit, Level.PASSED_OVER)
        if self.reason and visit.note != self.reason:
            tx.put(replace(visit, note=self.reason))
        return Done(visit.id, say("pass {colony} over", colony=colony.name), visit_place(visit))
