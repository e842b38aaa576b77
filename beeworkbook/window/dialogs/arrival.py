"""Bees have come: where, into which hive, what came, the queen, the feed. One form, one step of undo."""

from datetime import date
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGroupBox, QLabel, QVBoxLayout, QWidget

from beeworkbook.colony.feeding import FeedError, parse_feed
from beeworkbook.colony.queens import MARK_COLOURS, mark_words
from beeworkbook.colony.records import Arrival, ColonyId, PartKind, Way
from beeworkbook.comb.contents import Content
from beeworkbook.comb.hives import HIVE_KINDS, NUCLEUS_FRAMES
from beeworkbook.qt.desk import Desk
from beeworkbook.qt.typed_day import DayError
from beeworkbook.window.dialogs.arrival_notes import arrival_notes, plan_lines
from beeworkbook.window.dialogs.form import Choice, DayLine, FieldError, Form, NumberLine, TextLine, Tick
from beeworkbook.window.dialogs.frame_choice import frame_options
from beeworkbook.words import NumberError, say
from beeworkbook.workbook.edits.arrive import ArrivalSpec, ArriveColony, ArrivingComb, nucleus_combs
from beeworkbook.workbook.edits.events import QueenSpec
from beeworkbook.workbook.errors import RefusedError
from beeworkbook.workbook.story import hemisphere_of

ARRIVALS: Final = (
    ("a nucleus on its combs", Arrival.NUCLEUS),
    ("a package of bees", Arrival.PACKAGE),
    ("a swarm", Arrival.SWARM),
    ("a whole hive, bought", Arrival.BOUGHT),
    ("a split of my own", Arrival.SPLIT),
    ("it was here before the book", Arrival.UNKNOWN),
)
WITH_COMBS: Final = frozenset({Arrival.NUCLEUS, Arrival.BOUGHT, Arrival.SPLIT, Arrival.UNKNOWN})
SMALL: Final = frozenset({Arrival.NUCLEUS, Arrival.SPLIT})
"""Arrivals that usually bring fewer combs than the box holds."""
USUAL_NUCLEUS: Final = 5
"""Combs of a usual nucleus: common practice, no source; the keeper changes it."""
_MOST_PLACES: Final = 40
_MOST_SUPERS: Final = 6


class ArrivalForm(Form):
    """The form of an arrival. After it was agreed to, `colony_id` is the new colony."""

    def __init__(self, parent: QWidget | None, desk: Desk) -> None:
        """A form for the desk's book; a book without an apiary is asked for one."""
        super().__init__(parent, say("Bees have come"), say("They are in"))
        self.colony_id: ColonyId | None = None
        self._desk = desk
        self._add_where()
        self._add_what()
        self.next_column()
        self._add_hive()
        self._add_queen()
        self._add_foot()
        self.add_check(self._combs_fit)
        self.add_check(self._feed_reads)
        self._listen()
        self._hive_changed()
        self._what_changed()
        self.name.line.setFocus(Qt.FocusReason.OtherFocusReason)

    def ask_and_enter(self) -> bool:
        """Show the form; when it is agreed to, the colony is entered. A refusal stays in the form."""
        if not self.ask(lambda: self._desk.book.do(ArriveColony(self.spec()), source=self)):
            return False
        self.colony_id = ColonyId(int(str(self.made)))
        return True

    def spec(self) -> ArrivalSpec:
        """What was entered.

        Errors: FieldError, DayError or NumberError while a field cannot be read.
        """
        hive = HIVE_KINDS[str(self.hive.value)]
        places = self.places.whole or hive.brood_frames
        supers = self.supers.whole or 0
        return ArrivalSpec(
            self.name.text,
            self.arrival,
            self.day.day,
            apiary_id=self._desk.spot.apiary_id,
            apiary_name="" if self._desk.spot.apiary_id else self.apiary.text,
            stand_id=self.stand.value,  # type: ignore[arg-type]  # the options are stand ids or None
            stand_name=self.stand_name.text,
            hive_kind=hive.id,
            way=Way(str(self.way.value)),
            box_kind=PartKind.NUCLEUS_BOX if self.small_box.on else PartKind.BROOD_BOX,
            frame_type=str(self.frame_type.value),
            places=places,
            combs=self._combs(places),
            flank=self.flank.value if isinstance(self.flank.value, Content) else None,
            supers=supers,
            super_frame_type=hive.super_frame or hive.brood_frame,
            super_places=hive.super_frames or hive.brood_frames,
            excluder=self.excluder.on,
            queen=self._queen(),
            queenless=self.queenless.on and self.arrival in SMALL,
            cast=self._cast(),
            fed=self.feed.text,
            came_from=self.came_from.text,
        )

    @property
    def arrival(self) -> Arrival:
        """What came."""
        return Arrival(str(self.what.value))

    @property
    def draws_now(self) -> bool:
        """Whether the keeper likes to enter the combs that came at once."""
        return self.draw_now.on and self.arrival in WITH_COMBS

    # --- building -----------------------------------------------------------------------------------

    def _add_where(self) -> None:
        desk = self._desk
        self.name = self.add(TextLine(say("Name of the colony"), needed=True))
        self.day = self.add(DayLine(say("Came on"), desk.today, desk.today))
        self.apiary = TextLine(say("Apiary"), say("Home"), needed=True)
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
            TextLine(say("New stand’s name"), blank=say("left blank, it gets the next number"))
        )

    def _add_what(self) -> None:
        self.what = self.add(Choice(say("What came"), [(say(words), value) for words, value in ARRIVALS]))
        kinds = [(say("not known"), None), (say("a prime swarm"), False), (say("a cast"), True)]
        hint = say("a prime swarm has the old queen and lays at once; a cast has a virgin")
        self.swarm = self.add(Choice(say("Kind of swarm"), kinds, hint=hint))
        self.came_from = self.add(TextLine(say("Came from")))
        self.combs = self.add(
            NumberLine(say("Combs that came"), hint=say("in the same order and the same way round"))
        )
        self.first = self.add(
            NumberLine(say("First of them in place"), blank=say("left blank, they hang in the middle"))
        )
        flanks = [
            (say("frames of foundation"), Content.FOUNDATION),
            (say("drawn comb"), Content.EMPTY),
            (say("nothing yet"), None),
        ]
        self.flank = self.add(Choice(say("The other places hold"), flanks))
        self.feed = self.add(TextLine(say("Feed given"), hint=say("as it is said: 2L 1:1; blank for none")))

    def _add_hive(self) -> None:
        held = self._desk.hive_day()
        kinds: list[tuple[str, object]] = [(say(kind.name), kind.id) for kind in HIVE_KINDS.values()]
        self.hive = self.add(Choice(say("Hive"), kinds, held.hive.hive_kind if held else None))
        self.frame_type = self.add(Choice(say("Frames"), frame_options(self._desk.book)))
        self.frame_type.combo.setMaximumWidth(330)
        self.small_box = self.add(Tick(say("in a nucleus box")))
        self.places = self.add(NumberLine(say("Frame places")))
        ways = [
            (say("cold way: combs end-on to the entrance"), Way.COLD),
            (say("warm way: combs across the entrance"), Way.WARM),
        ]
        self.way = self.add(Choice(say("Combs hang"), ways, held.hive.way if held else Way.COLD))
        self.supers = self.add(NumberLine(say("Supers on it")))
        self.excluder = self.add(Tick(say("with an excluder")))

    def _add_queen(self) -> None:
        colours = [
            (say("not known"), None),
            (say("unmarked"), ""),
            *((say(colour), colour) for colour in MARK_COLOURS),
        ]
        self.mark = self.add(Choice(say("Queen’s mark"), colours, hint=" "))
        self.mark_hint = self._rows[self.mark][-1]
        self.year = self.add(NumberLine(say("Queen’s year")))
        clipped = [(say("not known"), None), (say("no"), False), (say("yes"), True)]
        self.clipped = self.add(Choice(say("Wing clipped"), clipped))
        self.queenless = self.add(Tick(say("without a laying queen: they raise their own")))

    def _add_foot(self) -> None:
        self.draw_now = Tick(say("then enter what was on the combs, one by one"))
        self.draw_now.box.setToolTip(say("The box opens at the first comb that came, ready to be typed"))
        self.add_below(self.draw_now.box)
        self.plan = QLabel()
        self.plan.setWordWrap(True)
        self.plan.setObjectName("small")
        plan_box = QGroupBox(say("What will be due"))
        QVBoxLayout(plan_box).addWidget(self.plan)
        self.foot.addWidget(plan_box)
        self.notes = self.add_notes()

    def _listen(self) -> None:
        self.what.on_change(self._what_changed)
        self.hive.on_change(self._hive_changed)
        self.mark.on_change(self._mark_changed)
        for tick in (self.small_box, self.excluder, self.queenless):
            tick.box.toggled.connect(lambda _on: self._foretell())
        self.small_box.box.toggled.connect(self._small_box_changed)
        for choice in (self.swarm, self.clipped):
            choice.on_change(self._foretell)
        for line in (self.day, self.feed, self.supers, self.places):
            line.line.textChanged.connect(lambda _text: self._foretell())

    # --- answering ------------------------------------------------------------------------------------

    def _what_changed(self) -> None:
        arrival = self.arrival
        with_combs = arrival in WITH_COMBS
        for field in (self.combs, self.first):
            self.show_field(field, shown=with_combs)
        self.show_field(self.swarm, shown=arrival is Arrival.SWARM)
        self.show_field(self.queenless, shown=arrival in SMALL)
        self.draw_now.box.setVisible(with_combs)
        self.draw_now.box.setChecked(arrival is Arrival.NUCLEUS)
        self.combs.line.setText(
            str(USUAL_NUCLEUS) if arrival in SMALL else self.places.text if with_combs else ""
        )
        self._foretell()

    def _hive_changed(self) -> None:
        hive = HIVE_KINDS[str(self.hive.value)]
        self.places.line.setText(str(hive.brood_frames))
        self.frame_type.choose(hive.brood_frame)
        if self.arrival in WITH_COMBS - SMALL:
            self.combs.line.setText(self.places.text)

    def _small_box_changed(self, on: bool) -> None:  # noqa: FBT001  # Qt's own signature
        hive = HIVE_KINDS[str(self.hive.value)]
        self.places.line.setText(str(max(NUCLEUS_FRAMES) if on else hive.brood_frames))

    def _mark_changed(self) -> None:
        colour = str(self.mark.value or "")
        words = mark_words(colour, self._desk.today.year) if colour else " "
        if isinstance(self.mark_hint, QLabel):
            self.mark_hint.setText(words)

    def _foretell(self) -> None:
        """Show the plan and the soft notes of what is entered so far, if it can be read."""
        try:
            spec = self.spec()
        except (DayError, FieldError, NumberError, RefusedError, ValueError):
            return
        self.plan.setText("\n".join(plan_lines(spec)))
        self.notes.show_notes(arrival_notes(spec, hemisphere_of(self._desk.book)))

    # --- reading --------------------------------------------------------------------------------------

    def _combs(self, places: int) -> tuple[ArrivingComb, ...]:
        combs = (self.combs.whole or 0) if self.arrival in WITH_COMBS else 0
        return nucleus_combs(places, combs, self.first.whole) if combs else ()

    def _queen(self) -> QueenSpec | None:
        year = self.year.whole
        if self.mark.value is None and year is None and self.clipped.value is None:
            return None
        clipped = self.clipped.value if isinstance(self.clipped.value, bool) else None
        return QueenSpec(mark_colour=str(self.mark.value or ""), year=year, clipped=clipped)

    def _cast(self) -> bool | None:
        kind = self.swarm.value
        return kind if self.arrival is Arrival.SWARM and isinstance(kind, bool) else None

    # --- checks ------------------------------------------------------------------------------------------

    def _combs_fit(self) -> None:
        places = self.places.whole or 0
        if not 1 <= places <= _MOST_PLACES:
            raise FieldError(
                say("A box has between 1 and {most} frame places.", most=_MOST_PLACES), self.places
            )
        if not 0 <= (self.supers.whole or 0) <= _MOST_SUPERS:
            raise FieldError(say("A hive bears between 0 and {most} supers.", most=_MOST_SUPERS), self.supers)
        year = self.year.whole
        if year is not None and not date.min.year <= year <= self._desk.today.year + 1:
            raise FieldError(say("Write the queen’s year in four digits, as 2026."), self.year)
        try:
            self._combs(places)
        except RefusedError as error:
            raise FieldError(str(error), self.combs) from error

    def _feed_reads(self) -> None:
        try:
            parse_feed(self.feed.text)
        except (FeedError, NumberError) as error:
            raise FieldError(str(error), self.feed) from error
