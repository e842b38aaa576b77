"""What is known of a colony on a day, gathered for the sentences, the soft notes and the offers.

Screen and paper say the same because both are told from here. Nothing is written and nothing is worded.
"""

from collections.abc import Iterable
from datetime import date
from typing import Final

from beeworkbook.colony.box_names import box_of_frames
from beeworkbook.colony.dues import PlannedDue
from beeworkbook.colony.figures import VisitFigures, visit_figures
from beeworkbook.colony.from_combs import differences
from beeworkbook.colony.hive import HiveDay
from beeworkbook.colony.plans import is_settling, kinds_left, offers
from beeworkbook.colony.records import (
    Colony,
    ColonyId,
    Event,
    EventKind,
    Level,
    Queen,
    Question,
    Round,
    Visit,
    VisitId,
)
from beeworkbook.colony.seasons import Hemisphere
from beeworkbook.colony.sentences import VisitStory
from beeworkbook.colony.soft_notes import Situation
from beeworkbook.comb.frames import FrameType
from beeworkbook.store.reader import Reader
from beeworkbook.workbook.noted import is_noted
from beeworkbook.workbook.workbook import Workbook

SHUT: Final = frozenset({Level.NOT_OPENED, Level.PASSED_OVER})
"""The levels at which nobody looked inside."""


def hemisphere_of(book: Workbook) -> Hemisphere:
    """Which half of the world this workbook is kept on; the north until the keeper says otherwise."""
    south = book.setting("hemisphere") == Hemisphere.SOUTH.value
    return Hemisphere.SOUTH if south else Hemisphere.NORTH


def brood_frame(read: Reader, hive: HiveDay | None) -> FrameType | None:
    """The frame of the lowest brood box, so that what a line says of combs becomes an area."""
    boxes = hive.brood_boxes if hive is not None else ()
    kept = next((box.part.frame_type for box in boxes if box.part.frame_type), "")
    return read.frame_type(kept) if kept else None


def queen_on(read: Reader, colony_id: ColonyId, day: date) -> Queen | None:
    """The queen known in a colony on a day: the last that came, was marked or seen, and has not gone."""
    known: Queen | None = None
    for event in read.events(colony_id):
        if event.day > day:
            break
        if event.kind is EventKind.QUEEN_GONE:
            known = None
        elif event.queen_id is not None:
            known = read.get(Queen, event.queen_id) or known
    return known


def visit_story(read: Reader, visit_id: VisitId) -> VisitStory:
    """All that a visit's sentences are made of. Errors: NoSuchRecordError if there is no such visit."""
    totals = read.visit_totals(visit_id)
    visit = totals.visit
    hive = read.hive_day(visit.colony_id, visit.day)
    marks = read.marks(visit.id)
    held = ((mark.frame_id, hive.place_of(mark.frame_id)) for mark in marks if hive and mark.frame_id)
    feeds = read.feeds(visit.colony_id)
    return VisitStory(
        totals,
        visit_figures(totals, brood_frame(read, hive)),
        marks=marks,
        feeds=tuple(
            feed
            for feed in feeds
            if feed.visit_id == visit.id or (feed.visit_id is None and feed.day == visit.day)
        ),
        left=tuple(
            feed
            for feed in feeds
            if feed.left_visit_id == visit.id or (feed.left_visit_id is None and feed.left_day == visit.day)
        ),
        events=_of_visit(read.events(visit.colony_id), visit),
        queen=queen_on(read, visit.colony_id, visit.day),
        places={frame_id: found[1] for frame_id, found in held if found is not None},
        boxes=box_of_frames(hive),
    )


def _of_visit(events: Iterable[Event], visit: Visit) -> tuple[Event, ...]:
    return tuple(
        event
        for event in events
        if event.visit_id == visit.id or (event.visit_id is None and event.day == visit.day)
    )


def last_look(read: Reader, colony_id: ColonyId, day: date) -> Visit | None:
    """The last visit before a day at which the hive was opened."""
    opened = (visit for visit in read.visits(colony_id) if visit.day < day and visit.level not in SHUT)
    return max(opened, key=lambda visit: (visit.day, visit.id), default=None)


def situation(book: Workbook, story: VisitStory) -> Situation:
    """What is known of the colony on the day of this visit, for the soft notes."""
    read, visit = book.read, story.totals.visit
    colony = read.get(Colony, visit.colony_id)
    before = last_look(read, visit.colony_id, visit.day)
    its_round = read.get(Round, visit.round_id) if visit.round_id is not None else None
    return Situation(
        visit.day,
        hemisphere_of(book),
        today=book.today,
        hive=read.hive_day(visit.colony_id, visit.day),
        figures=story.figures,
        feeds=tuple(feed for feed in read.feeds(visit.colony_id) if feed.day <= visit.day),
        arrival=colony.arrival if colony else None,
        came_on=colony.came_on if colony else None,
        clipped=story.queen.clipped if story.queen else None,
        last_look=before.day if before else None,
        opened=visit.level not in SHUT,
        temperature_c=its_round.temperature_c if its_round else None,
        signs=story.answer(Question.SIGNS),
        differences=differences(story),
    )


def offered(book: Workbook, story: VisitStory) -> tuple[PlannedDue, ...]:
    """The next look this visit offers, and the look at its feed, each with its reason; earliest first."""
    visit = story.totals.visit
    before = last_look(book.read, visit.colony_id, visit.day)
    due = book.read.dues(colony_id=visit.colony_id)
    return offers(
        visit.day,
        hemisphere=hemisphere_of(book),
        clipped=story.queen.clipped if story.queen else None,
        cells=kinds_left(story.answer(Question.CELLS), story.marks),
        days_since_look=(visit.day - before.day).days if before else None,
        settling=_is_settling(book, story),
        feed=next((feed for feed in story.feeds if feed.visit_id == visit.id), None),
        due=tuple(held for held in due if held.visit_id != visit.id),
    )


def offered_next(book: Workbook, colony_id: ColonyId) -> PlannedDue | None:
    """What the last visit to a colony offers next, if nobody noted a next day there; None if nothing.

    A colony that was passed over was not visited.
    """
    last = next(
        (
            visit
            for visit in reversed(book.read.visits(colony_id))
            if visit.day <= book.today and visit.level is not Level.PASSED_OVER
        ),
        None,
    )
    if last is None or last.next_day is not None or not is_noted(book.read, last):
        return None
    return next(iter(offered(book, visit_story(book.read, last.id))), None)


def _is_settling(book: Workbook, story: VisitStory) -> bool:
    visit, figures = story.totals.visit, story.figures
    colony = book.read.get(Colony, visit.colony_id)
    if colony is None:
        return False
    seams = figures.bees.seams if figures.bees is not None else None
    return is_settling(colony.arrival, colony.came_on, visit.day, seams=seams, combs=figures.combs_in_hive)


def season_figures(
    read: Reader, colony_id: ColonyId, since: date, until: date
) -> tuple[tuple[Visit, VisitFigures], ...]:
    """Each visit of a colony with its figures, by day: from `since` on and before `until`."""
    made = []
    for totals in read.season((colony_id,), since, until):
        frame = brood_frame(read, read.hive_day(colony_id, totals.visit.day))
        made.append((totals.visit, visit_figures(totals, frame)))
    return tuple(made)
