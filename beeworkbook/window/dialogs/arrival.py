"""Bees have come: where, into which hive, what came, the queen, the feed. One form, one step of undo."""

from typing import Final

from PySide6.QtWidgets import QGroupBox, QLabel, QVBoxLayout, QWidget

from beeworkbook.colony.feeding import FeedError, parse_feed
from beeworkbook.colony.plans import arrival_plan
from beeworkbook.colony.queens import MARK_COLOURS, mark_words
from beeworkbook.colony.records import Arrival, ColonyId, PartKind, Way
from beeworkbook.comb.contents import Content
from beeworkbook.comb.hives import HIVE_KINDS
from beeworkbook.qt.desk import Desk
from beeworkbook.window.dialogs.form import (
    Choice,
    DayLine,
    FieldError,
    Form,
    NumberLine,
    TextLine,
    Tick,
)
from beeworkbook.words import date_words, say
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony, nucleus_combs
from beeworkbook.workbook.edits.events import QueenSpec

ARRIVALS: Final = (
    ("a nucleus on its combs", Arrival.NUCLEUS),
    ("a package of bees", Arrival.PACKAGE),
    ("a swarm", Arrival.SWARM),
    ("a whole hive, bought", Arrival.BOUGHT),
    ("a split of my own", Arrival.SPLIT),
    ("it was here before the book", Arrival.UNKNOWN),
)
WITH_COMBS: Final = frozenset({Arrival.NUCLEUS, Arrival.BOUGHT, Arrival.SPLIT, Arrival.UNKNOWN})
USUAL_NUCLEUS: Final = 5
"""Combs of a usual nucleus: common practice, no source; the keeper changes it."""


class ArrivalForm(Form):
    """The form of an arrival. After it was agreed to, `colony_id` is the new colony."""

    def __init__(self, parent: QWidget | None, desk: Desk) -> None:
        """A form for the desk's book; a book without an apiary is asked for one."""
        super().__init__(parent, say("Bees have come"), say("They are in"))
        self.setMinimumWidth(620)
        self.colony_id: ColonyId | None = None
        self._desk = desk
        self._add_where()
        self._add_what()
        self._add_queen()
        self.plan = QLabel()
        self.plan.setWordWrap(True)
        self.plan.setObjectName("small")
        plan_box = QGroupBox(say("What will be due"))
        QVBoxLayout(plan_box).addWidget(self.plan)
        self.grid.addWidget(plan_box, self.grid.rowCount(), 0, 1, 3)
        self.add_check(self._combs_fit)
        self.add_check(self._feed_reads)
        self.what.on_change(self._what_changed)
        self.hive.on_change(self._hive_changed)
        self.day.line.textChanged.connect(self._show_plan)
        self.feed.line.textChanged.connect(self._show_plan)
        self._hive_changed()
        self._what_changed()
        self.name.line.setFocus()

    def agree(self) -> None:
        """Enter the colony if the form can be used."""
        before = self.result()
        super().agree()
        if self.result() == before:
            return
        made = self._desk.do(ArriveColony(self.spec()), source=self)
        if made is not None:
            self.colony_id = ColonyId(int(str(made)))

    def spec(self) -> ArrivalSpec:
        """What was entered."""
        arrival = Arrival(str(self.what.value))
        hive = HIVE_KINDS[str(self.hive.value)]
        nucleus_box = bool(self.small_box.on)
        places = int(self.places.number or hive.brood_frames)
        combs = int(self.combs.number or 0) if arrival in WITH_COMBS else 0
        flank = self.flank.value if isinstance(self.flank.value, Content) else None
        return ArrivalSpec(
            self.name.text,
            arrival,
            self.day.day,
            apiary_id=self._desk.spot.apiary_id,
            apiary_name="" if self._desk.spot.apiary_id else self.apiary.text,
            stand_id=self.stand.value,  # type: ignore[arg-type]
            stand_name=self.stand_name.text,
            hive_kind=hive.id,
            way=Way(str(self.way.value)),
            box_kind=PartKind.NUCLEUS_BOX if nucleus_box else PartKind.BROOD_BOX,
            frame_type=hive.brood_frame,
            places=places,
            combs=nucleus_combs(places, combs) if combs else (),
            flank=flank,
            queen=self._queen(),
            fed=self.feed.text,
            came_from=self.came_from.text,
        )

    # --- building -----------------------------------------------------------------------------------

    def _add_where(self) -> None:
        desk = self._desk
        self.name = self.add(TextLine(say("Name of the colony"), needed=True))
        self.day = self.add(DayLine(say("Came on"), desk.today, desk.today))
        self.apiary = TextLine(say("Apiary"), say("Home"))
        if desk.spot.apiary_id is None:
            self.add(self.apiary)
        free: list[tuple[str, object]] = []
        if desk.spot.apiary_id is not None:
            standing = desk.book.read.standing(desk.spot.apiary_id, desk.today)
            free = [(place.stand.name, place.stand.id) for place in standing if place.colony is None]
        self.stand = Choice(say("Stand"), [*free, (say("a new stand"), None)])
        if free:
            self.add(self.stand)
        self.stand_name = self.add(
            TextLine(say("New stand's name"), hint=say("left blank, it gets the next number"))
        )

    def _add_what(self) -> None:
        self.what = self.add(Choice(say("What came"), [(say(words), value) for words, value in ARRIVALS]))
        kinds: list[tuple[str, object]] = [(say(kind.name), kind.id) for kind in HIVE_KINDS.values()]
        held = self._desk.hive_day()
        self.hive = self.add(Choice(say("Hive and frames"), kinds, held.hive.hive_kind if held else None))
        ways = [
            (say("cold way: combs end-on to the entrance"), Way.COLD),
            (say("warm way: combs across the entrance"), Way.WARM),
        ]
        self.way = self.add(Choice(say("Combs hang"), ways, held.hive.way if held else Way.COLD))
        self.small_box = self.add(Tick(say("in a nucleus box")))
        self.places = self.add(NumberLine(say("Frame places")))
        self.combs = self.add(
            NumberLine(say("Combs that came"), hint=say("in the same order and the same way round"))
        )
        flanks = [
            (say("frames of foundation"), Content.FOUNDATION),
            (say("drawn comb"), Content.EMPTY),
            (say("nothing yet"), None),
        ]
        self.flank = self.add(Choice(say("The other places hold"), flanks))
        self.feed = self.add(TextLine(say("Feed given"), hint=say("as it is said: 2L 1:1; blank for none")))
        self.came_from = self.add(TextLine(say("Came from")))

    def _add_queen(self) -> None:
        colours = [
            (say("not known"), None),
            (say("unmarked"), ""),
            *((say(colour), colour) for colour in MARK_COLOURS),
        ]
        self.mark = self.add(Choice(say("Queen's mark"), colours))
        self.year = self.add(NumberLine(say("Queen's year")))
        clipped = [(say("not known"), None), (say("no"), False), (say("yes"), True)]
        self.clipped = self.add(Choice(say("Wing clipped"), clipped))
        self.mark_hint = QLabel()
        self.mark_hint.setObjectName("small")
        self.grid.addWidget(self.mark_hint, self.grid.rowCount(), 1)
        self.mark.on_change(self._mark_changed)

    # --- answering ------------------------------------------------------------------------------------

    def _what_changed(self) -> None:
        arrival = Arrival(str(self.what.value))
        with_combs = arrival in WITH_COMBS
        self.combs.widget.setEnabled(with_combs)
        if arrival is Arrival.NUCLEUS:
            self.combs.line.setText(str(USUAL_NUCLEUS))
        elif with_combs:
            self.combs.line.setText(self.places.text)
        else:
            self.combs.line.setText("")
        self._show_plan()

    def _hive_changed(self) -> None:
        hive = HIVE_KINDS[str(self.hive.value)]
        self.places.line.setText(str(hive.brood_frames))

    def _mark_changed(self) -> None:
        colour = str(self.mark.value or "")
        self.mark_hint.setText(mark_words(colour, self._desk.today.year) if colour else "")

    def _show_plan(self) -> None:
        try:
            day = self.day.day
            fed = parse_feed(self.feed.text) is not None
        except (FieldError, FeedError, ValueError):
            return
        arrival = Arrival(str(self.what.value))
        dues = arrival_plan(arrival, day, fed=fed)
        lines = [
            say("{day}: {reason}", day=date_words(due.day, "weekday"), reason=due.reason)
            if due.until is None
            else say(
                "{day} to {until}: {reason}",
                day=date_words(due.day, "weekday"),
                until=date_words(due.until, "day"),
                reason=due.reason,
            )
            for due in dues
        ]
        self.plan.setText("\n".join(lines) or say("nothing by itself; the first look sets the next"))

    def _queen(self) -> QueenSpec | None:
        year = self.year.number
        if self.mark.value is None and year is None and self.clipped.value is None:
            return None
        clipped = self.clipped.value if isinstance(self.clipped.value, bool) else None
        return QueenSpec(
            mark_colour=str(self.mark.value or ""), year=None if year is None else int(year), clipped=clipped
        )

    # --- checks ------------------------------------------------------------------------------------------

    def _combs_fit(self) -> None:
        places, combs = self.places.number or 0, self.combs.number or 0
        if not 1 <= places <= 40:
            raise FieldError(say("A box has between 1 and 40 frame places."))
        if combs > places:
            raise FieldError(say("More combs came than the box has places."))

    def _feed_reads(self) -> None:
        try:
            parse_feed(self.feed.text)
        except FeedError as error:
            raise FieldError(str(error)) from error
