"""Rounds, visits, events and feed: what the Visit menu does."""

from datetime import date
from typing import Final

from beeworkbook.colony.queens import MARK_COLOURS
from beeworkbook.colony.records import ENDINGS, Colony, ColonyId, EventKind, Feed, Visit
from beeworkbook.qt.desk import View
from beeworkbook.window.dialogs.form import Choice, DayLine, Form, NumberLine, TextLine
from beeworkbook.window.main_window import MainWindow
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.events import AddEvent, QueenSpec
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft, SetHeft
from beeworkbook.workbook.edits.mend import MoveVisit, RemoveVisit
from beeworkbook.workbook.edits.visit import BeginRound, BeginVisit

EVENT_WORDS: Final = (
    ("queen came", EventKind.QUEEN_CAME),
    ("queen seen", EventKind.QUEEN_SEEN),
    ("queen marked", EventKind.QUEEN_MARKED),
    ("queen gone", EventKind.QUEEN_GONE),
    ("swarmed", EventKind.SWARMED),
    ("split", EventKind.SPLIT),
    ("united with another", EventKind.UNITED),
    ("died", EventKind.DIED),
    ("sold", EventKind.SOLD),
    ("heft, left and right", EventKind.HEFT),
    ("something else", EventKind.NOTE),
)


def begin_round(window: MainWindow) -> None:
    """Ask the day of a round and open it; weather and the rest are asked in the round's own head."""
    desk = window.desk
    if desk.apiary is None:
        return
    form = Form(window, say("A round in {apiary}", apiary=desk.apiary.name), say("Begin"))
    day = form.add(DayLine(say("Day"), desk.today, desk.today))
    if form.ask() and desk.do(BeginRound(desk.apiary.id, day.day), source=window) is not None:
        desk.go(view=View.ROUND, day=day.day)
        window.focus_view()


def visit_on(window: MainWindow) -> None:
    """A look at this colony on a day that is asked."""
    desk = window.desk
    if desk.colony is None:
        return
    form = Form(window, say("A look at {colony}", colony=desk.colony.name), say("Open the page"))
    day = form.add(DayLine(say("Day"), desk.today, desk.today))
    if form.ask():
        made = desk.do(BeginVisit(desk.colony.id, day.day), source=window)
        if made is not None:
            desk.go(visit_id=made, view=View.BOX)
            window.focus_view()


def visit_earlier(window: MainWindow) -> None:
    """Leaf to the visit before."""
    window.desk.leaf(-1)


def visit_later(window: MainWindow) -> None:
    """Leaf to the visit after."""
    window.desk.leaf(1)


def add_event(window: MainWindow) -> None:
    """Note a dated line: what happened to this colony."""
    desk = window.desk
    colony = desk.colony
    if colony is None:
        return
    form = Form(window, say("Something happened to {colony}", colony=colony.name), say("Note it"))
    kind = form.add(Choice(say("What"), [(say(words), value) for words, value in EVENT_WORDS]))
    day = form.add(DayLine(say("Day"), desk.spot.day, desk.today))
    text = form.add(TextLine(say("In words")))
    others = [(say("none"), None), *((other.name, other.id) for other in _others(window, colony.id))]
    other = form.add(Choice(say("Other colony"), others, hint=say("united with, or split from")))
    colours = [(say("unmarked"), ""), *((say(colour), colour) for colour in MARK_COLOURS)]
    colour = form.add(Choice(say("Queen's mark"), colours, hint=say("for a queen that came or was marked")))
    year = form.add(NumberLine(say("Queen's year")))
    left = form.add(NumberLine(say("Left, kg"), hint=say("for a heft: the pull on each side")))
    right = form.add(NumberLine(say("Right, kg")))
    if not form.ask():
        return
    if kind.value is EventKind.HEFT:
        desk.do(SetHeft(colony.id, day.day, left.number, right.number), source=window)
        return
    came = kind.value in {EventKind.QUEEN_CAME, EventKind.QUEEN_MARKED}
    queen = QueenSpec(mark_colour=str(colour.value or ""), year=_whole(year.number)) if came else None
    edit = AddEvent(
        colony.id,
        day.day,
        EventKind(str(kind.value)),
        text.text,
        other_colony_id=ColonyId(other.value) if isinstance(other.value, int) else None,
        queen=queen,
    )
    desk.do(edit, source=window)
    if kind.value in ENDINGS:
        window.tell(
            say("{colony} no longer stands from the day after. Undo brings it back.", colony=colony.name)
        )


def give_feed(window: MainWindow) -> None:
    """Note feed as it is said, and what was left of the last."""
    desk = window.desk
    colony = desk.colony
    if colony is None:
        return
    last = _last_feed(window, colony.id, desk.spot.day)
    form = Form(window, say("Feed for {colony}", colony=colony.name), say("Note it"))
    day = form.add(DayLine(say("Day"), desk.spot.day, desk.today))
    left = None
    if last is not None:
        given = say("{what} on {day}", what=last.typed, day=date_words(last.day, "day"))
        left = form.add(TextLine(say("Left of it"), hint=given))
    typed = form.add(
        TextLine(
            say("Given now"),
            hint=say("as it is said: 2L 1:1, 2.5 kg fondant; sugar first, then water, by weight"),
        )
    )
    if not form.ask():
        return
    if last is not None and left is not None and left.text:
        desk.do(SetFeedLeft(last.id, left.text, day.day), source=window)
    if typed.text:
        desk.do(GiveFeed(colony.id, day.day, typed.text), source=window)


def move_visit(window: MainWindow) -> None:
    """The whole page belongs to another colony or another day."""
    desk = window.desk
    visit = desk.visit
    if visit is None:
        window.tell(say("No visit lies open to be moved."))
        return
    form = Form(
        window, say("Move this visit"), say("Move it"), say("Combs, marks, answers and feed go with it.")
    )
    options = [(colony.name, colony.id) for colony in _all_colonies(window)]
    colony = form.add(Choice(say("To colony"), options, visit.colony_id))
    day = form.add(DayLine(say("To day"), visit.day, desk.today))
    if form.ask() and colony.value is not None:
        made = desk.do(MoveVisit(visit.id, colony.value, day.day), source=window)  # type: ignore[arg-type]
        if made is not None:
            desk.go(visit_id=made)


def remove_visit(window: MainWindow) -> None:
    """Take the visit out; undo brings it back, so nothing is asked."""
    visit = window.desk.visit
    if visit is not None:
        window.desk.do(RemoveVisit(visit.id), source=window)
        window.tell(say("The visit of {day} is out. Undo brings it back.", day=date_words(visit.day, "day")))


def _all_colonies(window: MainWindow) -> list[Colony]:
    read = window.desk.book.read
    return sorted(read.find(Colony), key=lambda colony: colony.name)


def _others(window: MainWindow, colony_id: int) -> list[Colony]:
    return [colony for colony in _all_colonies(window) if colony.id != colony_id]


def _last_feed(window: MainWindow, colony_id: int, day: date) -> Feed | None:
    feeds = [feed for feed in window.desk.book.read.find(Feed, colony_id=colony_id) if feed.day <= day]
    open_feeds = [feed for feed in feeds if feed.left_day is None]
    return max(open_feeds, key=lambda feed: (feed.day, feed.id), default=None)


def _whole(number: float | None) -> int | None:
    return None if number is None else int(number)


def open_visit(window: MainWindow, visit: Visit) -> None:
    """Go to a visit and show its box."""
    window.desk.go(visit_id=visit.id, view=View.BOX)
