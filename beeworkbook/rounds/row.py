"""One line of a round as it stands in the book: what was noted that day, last time's line, what is offered.

Read anew after every change of its colony. Nothing here draws or writes.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Final

from beeworkbook.colony.dues import PlannedDue
from beeworkbook.colony.from_combs import CombsSay, from_combs
from beeworkbook.colony.records import (
    Answer,
    Colony,
    Due,
    DueKind,
    Event,
    EventKind,
    Feed,
    Level,
    Question,
    Reply,
    Stand,
    Visit,
)
from beeworkbook.colony.sentences import Phrase, VisitStory, read_back
from beeworkbook.colony.soft_notes import SoftNote, feed_notes, soft_notes
from beeworkbook.workbook.story import offered, situation, visit_story
from beeworkbook.workbook.workbook import Workbook

_BY_COMB: Final = frozenset({Level.BY_COMB, Level.BY_SIDE, Level.PAINTED})


@dataclass(frozen=True)
class Noted:
    """What one visit has in the fields of a line. `left` is a feed given before and looked at then.

    `combs` is what its combs say in the fields where nothing was typed or they say something else.
    """

    visit: Visit | None = None
    answers: Mapping[Question, Answer] = field(default_factory=dict)
    feed: Feed | None = None
    left: Feed | None = None
    heft: Event | None = None
    combs: Mapping[Question, CombsSay] = field(default_factory=dict)

    def reply(self, question: Question) -> Reply | None:
        """Yes, no, not looked, or None for blank."""
        answer = self.answers.get(question)
        return answer.reply if answer is not None else None


@dataclass(frozen=True)
class Row:
    """The line of one colony. `feed_before` is the feed whose left can be noted here."""

    colony: Colony
    stand: Stand
    day: date
    now: Noted = Noted()
    last: Noted = Noted()
    feed_before: Feed | None = None
    feed_look: Due | None = None
    said: tuple[Phrase, ...] = ()
    offers: tuple[PlannedDue, ...] = ()
    notes: tuple[SoftNote, ...] = ()

    @property
    def passed(self) -> bool:
        """Whether the colony was passed over."""
        return self.now.visit is not None and self.now.visit.level is Level.PASSED_OVER

    @property
    def shut(self) -> bool:
        """Whether the hive was not opened, as the keeper said: heft, flying and feed are left to ask."""
        return self.now.reply(Question.OPENED) is Reply.NO

    @property
    def by_comb(self) -> bool:
        """Whether combs were noted in the box."""
        visit = self.now.visit
        return visit is not None and visit.level in _BY_COMB


def read_row(book: Workbook, stand: Stand, colony: Colony, day: date) -> Row:
    """The line of a colony on a day."""
    read = book.read
    visits = read.visits(colony.id)
    visit = next((visit for visit in visits if visit.day == day), None)
    before = (v for v in reversed(visits) if v.day < day and v.level is not Level.PASSED_OVER)
    last = next(before, None)
    feeds = read.feeds(colony.id)
    events = read.events(colony.id)
    story = visit_story(read, visit.id) if visit is not None else None
    now = _noted(book, visit, feeds, events, story)
    row = Row(
        colony,
        stand,
        day,
        now,
        _noted(book, last, feeds, events, _last_story(book, last)),
        feed_before=now.left or _feed_to_look_at(feeds, day),
    )
    return row if story is None else _told(book, row, story)


def _last_story(book: Workbook, visit: Visit | None) -> VisitStory | None:
    """Of last time only what its combs say is told, so that a line is enough where none were noted."""
    if visit is None or (visit.level not in _BY_COMB and not book.read.marks(visit.id)):
        return None
    return visit_story(book.read, visit.id)


def _noted(
    book: Workbook,
    visit: Visit | None,
    feeds: tuple[Feed, ...],
    events: tuple[Event, ...],
    story: VisitStory | None,
) -> Noted:
    if visit is None:
        return Noted()
    hefts = (event for event in events if event.kind is EventKind.HEFT and event.day == visit.day)
    return Noted(
        visit,
        book.read.answers(visit.id),
        next((feed for feed in feeds if feed.visit_id == visit.id), None),
        next((feed for feed in feeds if feed.left_visit_id == visit.id), None),
        next(hefts, None),
        from_combs(story) if story is not None else {},
    )


def _feed_to_look_at(feeds: tuple[Feed, ...], day: date) -> Feed | None:
    open_feeds = [feed for feed in feeds if feed.day < day and feed.left_day is None]
    return open_feeds[-1] if open_feeds else None


def _told(book: Workbook, row: Row, story: VisitStory) -> Row:
    looks = book.read.find(Due, visit_id=story.totals.visit.id, kind=DueKind.FEED_LOOK)
    return Row(
        row.colony,
        row.stand,
        row.day,
        row.now,
        row.last,
        row.feed_before,
        feed_look=looks[-1] if looks else None,
        said=read_back(story),
        offers=() if row.passed else offered(book, story),
        notes=_notes(book, story, row),
    )


def _notes(book: Workbook, story: VisitStory, row: Row) -> tuple[SoftNote, ...]:
    """Feed under a super is among the notes on the colony already, so it is not said of the feed again."""
    feed = row.now.feed
    return (*soft_notes(situation(book, story)), *(feed_notes(feed) if feed is not None else ()))
