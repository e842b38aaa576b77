"""Every read the faces need, as frozen records. Neither rows nor the connection leave the room."""

from collections.abc import Iterable, Mapping
from contextlib import AbstractContextManager
from datetime import date
from typing import Any

from beeworkbook.colony.hive import HiveDay
from beeworkbook.colony.records import (
    Answer,
    Apiary,
    ApiaryId,
    ColonyId,
    Due,
    DueState,
    Event,
    Feed,
    FrameId,
    Hive,
    Housing,
    Mark,
    OwnFrame,
    Question,
    Round,
    Setting,
    Side,
    Stand,
    Visit,
    VisitId,
)
from beeworkbook.colony.totals import VisitTotals
from beeworkbook.comb.contents import Face
from beeworkbook.comb.frames import FRAME_TYPES, FrameType
from beeworkbook.store import looks, whereabouts
from beeworkbook.store import season as seasons
from beeworkbook.store.errors import NoSuchRecordError
from beeworkbook.store.link import Link
from beeworkbook.store.lookup import find, find_one, frame_type, own_type
from beeworkbook.store.rows import R
from beeworkbook.store.whereabouts import Standing


class Reader:
    """The workbook for looking: values only, each call one consistent state of the book."""

    def __init__(self, link: Link) -> None:
        self._link = link

    def at_one_moment(self) -> AbstractContextManager[None]:
        """For a `with`: all reads within see one state of the book, whatever is kept meanwhile elsewhere.

        The thread that does the edits does none within.
        """
        return self._link.reading()

    def get(self, cls: type[R], its_id: Any) -> R | None:
        """The record with this id, or None: a face may ask for what has just been taken away."""
        return find_one(self._link, cls, its_id)

    def find(self, cls: type[R], **equals: object) -> tuple[R, ...]:
        """The records whose fields have these values, by id; None asks for a blank.

        Errors: KeyError if there is no such field.
        """
        return find(self._link, cls, equals)

    def setting(self, name: str, default: str = "") -> str:
        """A named value of the workbook, or the default where it was never set."""
        found = find_one(self._link, Setting, name)
        return default if found is None else found.value

    def frame_type(self, its_id: str) -> FrameType:
        """A shipped frame type or one of the keeper's own. Errors: NoSuchRecordError if it is neither."""
        return frame_type(self._link, its_id)

    def frame_types(self) -> Mapping[str, FrameType]:
        """Every frame type there is, by id: the shipped ones, then the keeper's own."""
        return {**FRAME_TYPES, **{own.id: own_type(own) for own in self.find(OwnFrame)}}

    def hive_kinds(self) -> tuple[str, ...]:
        """The kinds of hive in this workbook, each once."""
        return tuple(dict.fromkeys(hive.hive_kind for hive in self.find(Hive) if hive.hive_kind))

    def apiaries(self) -> tuple[Apiary, ...]:
        """All apiaries, in their order."""
        return whereabouts.apiaries(self._link)

    def stands(self, apiary_id: ApiaryId) -> tuple[Stand, ...]:
        """The stands of an apiary, in the order of the walk."""
        return whereabouts.stands(self._link, apiary_id)

    def standing(self, apiary_id: ApiaryId, day: date) -> tuple[Standing, ...]:
        """Every stand of an apiary on a day and who stood on it, in the order of the walk."""
        return whereabouts.standing(self._link, apiary_id, day)

    def home(self, colony_id: ColonyId, day: date) -> Housing | None:
        """Where a colony lived on a day, or None."""
        return whereabouts.home(self._link, colony_id, day)

    def hive_day(self, colony_id: ColonyId, day: date) -> HiveDay | None:
        """The hive a colony lived in on a day, as it stood then, or None."""
        return whereabouts.hive_day(self._link, colony_id, day)

    def rounds(self, apiary_id: ApiaryId) -> tuple[Round, ...]:
        """The rounds of an apiary, by day."""
        return whereabouts.rounds(self._link, apiary_id)

    def visits(self, colony_id: ColonyId) -> tuple[Visit, ...]:
        """The visits to a colony, by day."""
        return looks.visits(self._link, colony_id)

    def visit_before(self, visit: Visit) -> Visit | None:
        """The visit to the same colony before this one, or None."""
        return looks.visit_before(self._link, visit)

    def visits_on(self, apiary_id: ApiaryId, day: date) -> tuple[Visit, ...]:
        """The visits of a day to colonies that stood in this apiary, in the order of the walk."""
        return looks.visits_on(self._link, apiary_id, day)

    def visit_totals(self, visit_id: VisitId) -> VisitTotals:
        """The stored totals of one visit. Errors: NoSuchRecordError if there is no such visit."""
        found = seasons.visit_totals(self._link, visit_id)
        if found is None:
            raise NoSuchRecordError(Visit, visit_id)
        return found

    def season(self, colony_ids: Iterable[ColonyId], since: date, until: date) -> tuple[VisitTotals, ...]:
        """The stored totals of these colonies' visits, by day: from `since` on and before `until`."""
        return seasons.season(self._link, colony_ids, since, until)

    def sides(self, visit_id: VisitId) -> tuple[Side, ...]:
        """The sides of a visit, by box, place and face."""
        return looks.sides(self._link, visit_id)

    def side(self, visit_id: VisitId, frame_id: FrameId, face: Face) -> Side | None:
        """What was noted of one side in a visit, or None."""
        return looks.side(self._link, visit_id, frame_id, face)

    def last_sides(self, frame_id: FrameId, before: VisitId, *, seen: bool = True) -> dict[Face, Side]:
        """What was last noted of each face of a frame before a visit, by its letter at that visit.

        A frame turned round since shows its other letter. `seen` leaves out what was only assumed.
        """
        with self._link.reading():
            visit = find_one(self._link, Visit, before)
            return {} if visit is None else looks.last_sides(self._link, frame_id, visit, seen=seen)

    def answers(self, visit_id: VisitId) -> Mapping[Question, Answer]:
        """The answers of a visit by question, in the order they are asked."""
        return looks.answers(self._link, visit_id)

    def marks(self, visit_id: VisitId) -> tuple[Mark, ...]:
        """The marks of a visit, in the order they were made."""
        return looks.marks(self._link, visit_id)

    def events(self, colony_id: ColonyId) -> tuple[Event, ...]:
        """What happened to a colony, by day."""
        return looks.events(self._link, colony_id)

    def feeds(self, colony_id: ColonyId) -> tuple[Feed, ...]:
        """What a colony was fed, by day."""
        return looks.feeds(self._link, colony_id)

    def dues(
        self,
        state: DueState | None = DueState.OPEN,
        apiary_id: ApiaryId | None = None,
        colony_id: ColonyId | None = None,
    ) -> tuple[Due, ...]:
        """What is due, by day; only of an apiary or a colony where one is given, in any state if None.

        A due of a colony belongs to the apiary the colony stands in on the day it is due.
        """
        return looks.dues(self._link, state, apiary_id, colony_id)
