"""Feed as it is said: what was left of the last, what is given now; and a feed that is to be changed."""

from dataclasses import replace
from datetime import date

from PySide6.QtWidgets import QWidget

from beeworkbook.colony.feeding import FeedError, parse_feed, write_left
from beeworkbook.colony.records import Colony, Feed, PartKind, VisitId
from beeworkbook.colony.soft_notes import feed_notes
from beeworkbook.qt.desk import Desk
from beeworkbook.window.dialogs.form import DayLine, FieldError, Form, TextLine
from beeworkbook.words import NumberError, date_words, say
from beeworkbook.workbook.edits.feed import GiveFeed, SetFeedLeft
from beeworkbook.workbook.edits.place import ChangeRecord
from beeworkbook.workbook.edits.together import Together
from beeworkbook.workbook.place import Edit


def feed_on(desk: Desk, colony: Colony, day: date) -> Feed | None:
    """The last feed given on or before a day that nobody looked at since."""
    feeds = [feed for feed in desk.book.read.find(Feed, colony_id=colony.id) if feed.day <= day]
    waiting = [feed for feed in feeds if feed.left_day is None]
    return max(waiting, key=lambda feed: (feed.day, feed.id), default=None)


class FeedForm(Form):
    """Asks what was left and what is given, with soft notes while it is typed."""

    def __init__(self, parent: QWidget | None, desk: Desk, colony: Colony, feed: Feed | None = None) -> None:
        """A form for feed given now, or for a feed that is to be changed."""
        super().__init__(parent, say("Feed for {colony}", colony=colony.name), say("Note it"))
        self._desk, self._colony, self._feed = desk, colony, feed
        self._last = feed_on(desk, colony, desk.spot.day) if feed is None else None
        hive = desk.hive_day()
        self._supers_on = hive is not None and any(part.part.kind is PartKind.SUPER for part in hive.stack)
        self.day = self.add(DayLine(say("Day"), feed.day if feed else desk.spot.day, desk.today))
        if self._last is not None:
            given = say("{what} on {day}", what=self._last.typed, day=date_words(self._last.day, "day"))
            self.left = self.add(TextLine(say("Left of it"), hint=given))
        self.given = self.add(
            TextLine(
                say("Given"),
                feed.typed if feed else "",
                hint=say("as it is said: 2L 1:1, 2.5 kg fondant; sugar first, then water, by weight"),
            )
        )
        if feed is not None:
            self.left = self.add(TextLine(say("Left of it"), write_left(feed) if feed.left_day else ""))
            self.left_day = self.add(DayLine(say("Seen on"), feed.left_day or desk.spot.day, desk.today))
        self.notes = self.add_notes()
        self.given.line.textChanged.connect(lambda _text: self._note())
        self.add_check(self._reads)
        self._note()

    def ask_and_keep(self) -> bool:
        """Show the form; when it is agreed to, the feed is kept as one step."""
        return self.ask(self._keep)

    def _keep(self) -> object:
        edits = self._changing(self._feed) if self._feed is not None else self._giving()
        if not edits:
            return None
        label = say("feed {colony}", colony=self._colony.name)
        return self._desk.book.do(Together(edits, label), source=self)

    def _giving(self) -> tuple[Edit, ...]:
        edits: list[Edit] = []
        if self._last is not None and self.left.text:
            edits.append(SetFeedLeft(self._last.id, self.left.text, self.day.day))
        if self.given.text:
            edits.append(GiveFeed(self._colony.id, self.day.day, self.given.text, self._visit()))
        return tuple(edits)

    def _visit(self) -> VisitId | None:
        """The visit of that day, if its feed field is still blank: then the round shows it too."""
        read = self._desk.book.read
        visit = next((v for v in read.visits(self._colony.id) if v.day == self.day.day), None)
        return visit.id if visit is not None and not read.find(Feed, visit_id=visit.id) else None

    def _changing(self, feed: Feed) -> tuple[Edit, ...]:
        parsed = parse_feed(self.given.text)
        if parsed is None:
            raise FieldError(say("{field} is wanted.", field=self.given.label), self.given)
        after = replace(
            feed,
            day=self.day.day,
            kind=parsed.kind,
            given_litres=parsed.given_litres,
            given_kg=parsed.given_kg,
            sugar_parts=parsed.sugar_parts,
            water_parts=parsed.water_parts,
            typed=self.given.text,
        )
        return (ChangeRecord(after), SetFeedLeft(feed.id, self.left.text, self.left_day.day))

    def _note(self) -> None:
        try:
            parsed = parse_feed(self.given.text)
        except (FeedError, NumberError):
            return
        self.notes.show_notes(feed_notes(parsed, supers_on=self._supers_on) if parsed is not None else ())

    def _reads(self) -> None:
        try:
            parse_feed(self.given.text)
        except (FeedError, NumberError) as error:
            raise FieldError(str(error), self.given) from error
