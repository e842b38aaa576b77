"""The box: all combs of one box in hive order, the hive's stack beside it, the other boxes folded.

It shows what the desk's spot says and tells the desk where the keeper goes; typing is handed on to the
key line. What a comb looks like is comb_row's, what the numbers say numbers'.
"""

from typing import Final

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import (
    QBoxLayout,
    QFrame,
    QHBoxLayout,
    QLabel,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from beeworkbook.bench.comb_row import CombRow, RowSizes
from beeworkbook.bench.folded_box import FOLDED_PX, FoldedBox
from beeworkbook.bench.last_comb import go_beyond
from beeworkbook.bench.numbers import box_numbers
from beeworkbook.bench.on_show import CombOnShow, comb_on_show, combs_on_show
from beeworkbook.bench.quiet_label import QuietLabel
from beeworkbook.bench.seen_face import SeenFace
from beeworkbook.bench.stack_strip import STRIP_PX, StackStrip
from beeworkbook.colony.box_names import box_title
from beeworkbook.colony.hive import HiveDay, PartDay
from beeworkbook.colony.records import FrameId, FrameMake, Mark, Side, Visit, Way
from beeworkbook.comb.contents import Face
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.palette import Palette
from beeworkbook.words import date_words, say
from beeworkbook.workbook.changes import Changes

_HEAD_PX: Final = 28
_HIGH_SHARE: Final = 0.085
"""Of the window's height, at most, for one small picture: a tall frame must not take the bench's room."""
_LEAST_HIGH: Final = 44
_LEAST_NAME: Final = 200
_PROPORTION: Final = 0.56
_ROOMY: Final = 760
"""A window at least so high has room for folded boxes beside a bench of full size."""


class BoxView(SeenFace):
    """The box the keeper looks into."""

    typing_started = Signal(str)
    """A comb begins to be typed, with this text."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The box of a desk."""
        super().__init__(parent)
        self.setObjectName("ground")
        self.desk = desk
        self.row = CombRow(desk.palette)
        self.stack = StackStrip(desk)
        self._folded: list[FoldedBox] = []
        self._name, self._about, self._numbers = QLabel(), QuietLabel(), QLabel()
        self._name.setObjectName("name")
        self._numbers.setObjectName("small")
        self._recount = QTimer(self)
        self._recount.setSingleShot(True)
        self._recount.setInterval(0)
        self._recount.timeout.connect(self._count_again)
        self._lay_out()
        self._listen()
        self.refresh()

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(12)
        head.addSpacing(STRIP_PX + 12)
        head.addWidget(self._name)
        head.addWidget(self._about, 1)
        head.addWidget(self._numbers)
        self._scroll = QScrollArea()
        self._scroll.setWidget(self.row)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._above, self._below = QVBoxLayout(), QVBoxLayout()
        for strips in (self._above, self._below):
            strips.setSpacing(0)
        combs = QVBoxLayout()
        combs.setSpacing(0)
        combs.addLayout(self._above)
        combs.addWidget(self._scroll)
        combs.addLayout(self._below)
        body = QHBoxLayout()
        body.setSpacing(12)
        body.addWidget(self.stack)
        body.addLayout(combs, 1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(12, 2, 12, 0)
        whole.setSpacing(0)
        whole.addLayout(head)
        whole.addLayout(body)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def _listen(self) -> None:
        self.desk.spot_changed.connect(lambda _spot: self.refresh_if_seen())
        self.desk.book_changed.connect(self._book_changed)
        self.desk.palette_changed.connect(self._palette_changed)
        self.row.chosen.connect(self._choose)
        self.row.opened.connect(self._open)
        self.row.typed.connect(self.typing_started)
        self.row.next_asked.connect(self._next)
        self.row.entered.connect(self._enter)

    def take_focus(self) -> None:
        """Put the keyboard on the combs."""
        self.row.setFocus(Qt.FocusReason.ShortcutFocusReason)

    # --- what is shown ----------------------------------------------------------------------------

    def refresh(self) -> None:
        """Show what the spot says, drawing again only what differs."""
        hive, box = self.desk.hive_day(), self.desk.box()
        colony = self.desk.colony
        self._say_name(colony.name if colony else "")
        if hive is None or box is None:
            self._about.say(say("No hive stands here on this day.") if colony else "")
            self._numbers.setText("")
            self.row.show_combs(())
            self._show_folded(None, None)
            self.stack.show_hive(None)
            return
        combs = combs_on_show(self.desk.book, box, self.desk.spot.visit_id)
        self._about.say(self._about_words(hive, box))
        self._numbers.setText(self._number_words(box))
        self.row.set_sizes(self._sizes(combs))
        self.row.show_combs(combs)
        self._show_folded(hive, box)
        self.stack.show_hive(hive)
        self._choose_spot(combs)
        self._fit_height()

    def _say_name(self, name: str) -> None:
        """The colony, cut where it would take more than half the line: no name widens the window."""
        room = max(_LEAST_NAME, self.width() // 2)
        shown = self._name.fontMetrics().elidedText(name, Qt.TextElideMode.ElideRight, room)
        self._name.setText(shown)
        self._name.setAccessibleName(name)
        self._name.setToolTip(name if shown != name else "")

    def _sizes(self, combs: tuple[CombOnShow, ...]) -> RowSizes:
        first = next((comb.sides[Face.A].frame_type for comb in combs if comb.is_comb), None)
        proportion = first.lattice.height_mm / first.lattice.width_mm if first else _PROPORTION
        most_high = max(_LEAST_HIGH, round(self.window().height() * _HIGH_SHARE))
        return RowSizes.fitted(self._room, len(combs), proportion, most_high)

    def _choose_spot(self, combs: tuple[CombOnShow, ...]) -> None:
        spot = self.desk.spot
        place = next((comb.place for comb in combs if comb.frame and comb.frame.id == spot.frame_id), None)
        self.row.choose(place, spot.face)
        if place is not None:
            column = self.row.column(place)
            self._scroll.ensureVisible(round(column.center().x()), 0, round(column.width()), 0)

    def _about_words(self, hive: HiveDay, box: PartDay) -> str:
        frames = sum(place.frame is not None and place.frame.make is FrameMake.FRAME for place in box.frames)
        way = (
            say("Cold way: comb 1 at the left as you look the way they fly.")
            if hive.hive.way is Way.COLD
            else say("Warm way: comb 1 at the entrance.")
        )
        return say(
            "{day}, {box} of {combs} combs. {way} Side A above side B.",
            day=date_words(self.desk.spot.day, "long"),
            box=box_title(hive, box.part.id),
            combs=frames,
            way=way,
        )

    def _number_words(self, box: PartDay) -> str:
        visit_id = self.desk.spot.visit_id
        if visit_id is None:
            return say("no visit on this day yet")
        combs = sum(place.frame is not None and place.frame.make is FrameMake.FRAME for place in box.frames)
        return box_numbers(self.desk.book.read.visit_totals(visit_id), box.part.id, combs)

    def _show_folded(self, hive: HiveDay | None, box: PartDay | None) -> None:
        visit_id = self.desk.spot.visit_id
        others = [
            (part, combs_on_show(self.desk.book, part, visit_id))
            for part in (hive.boxes if hive else ())
            if box is None or part.part.id != box.part.id
        ]
        if not self._is_roomy:
            # On a low screen a box of which nothing was noted is still in the stack beside the combs.
            others = [(part, combs) for part, combs in others if any(_is_noted(comb) for comb in combs)]
        while len(self._folded) > len(others):
            gone = self._folded.pop()
            gone.hide()  # at once: it would lie over the combs until the loop comes round
            gone.deleteLater()
        while len(self._folded) < len(others):
            made = FoldedBox(self.desk.palette)
            made.opened.connect(lambda part_id: self.desk.go(part_id=part_id, frame_id=None))
            self._folded.append(made)
        # On a low screen they share one strip; else each has its own, above or below as it stands.
        level = box.stay.level if box and self._is_roomy else -1
        across = QBoxLayout.Direction.TopToBottom if self._is_roomy else QBoxLayout.Direction.LeftToRight
        self._above.setDirection(across)
        for folded, (part, combs) in zip(self._folded, reversed(others), strict=True):
            (self._above if part.stay.level > level else self._below).addWidget(folded)
            folded.show_box(part, combs, box_title(hive, part.part.id) if hive else "")

    @property
    def _is_roomy(self) -> bool:
        return self.window().height() >= _ROOMY

    @property
    def _room(self) -> int:
        """How wide the combs may be; the scroll area itself may not be laid out yet."""
        return self.width() - 24 - STRIP_PX - 12

    def _fit_height(self) -> None:
        bar = 0
        if self.row.width() > self._room + 1:
            bar = self._scroll.horizontalScrollBar().sizeHint().height()
        self._scroll.setFixedHeight(self.row.height() + bar)
        strips = len(self._folded) if self._is_roomy else min(1, len(self._folded))
        self.setFixedHeight(_HEAD_PX + self.row.height() + bar + strips * FOLDED_PX + 4)

    def _book_changed(self, changes: Changes) -> None:
        spot = self.desk.spot
        if not changes.everything and spot.colony_id not in changes.colonies:
            return
        if self.waits():
            return
        box, frames = self.desk.box(), self._drawn_on(changes)
        here = {placed.frame.id for placed in box.frames if placed.frame} if box else set()
        if box is None or frames is None or frames - here:
            self.refresh()
            return
        for placed in box.frames:
            if placed.frame is not None and placed.frame.id in frames:
                self.row.show_comb(comb_on_show(self.desk.book, placed, spot.visit_id))
        self._recount.start()

    def _drawn_on(self, changes: Changes) -> set[FrameId] | None:
        """The combs a change drew on, if it did nothing else; None if all has to be read again."""
        if changes.everything or any(touched not in {Side, Visit, Mark} for touched, _ in changes.steps):
            return None
        found = [
            self.desk.book.read.get(touched, record_id)
            for touched, record_id in changes.steps
            if touched is not Visit
        ]
        frames = {held.frame_id for held in found if isinstance(held, (Side, Mark)) and held.frame_id}
        return None if None in found else frames

    def _count_again(self) -> None:
        box = self.desk.box()
        if box is not None:
            self._numbers.setText(self._number_words(box))

    def _palette_changed(self, palette: Palette) -> None:
        self.row.set_palette(palette)
        for folded in self._folded:
            folded.set_palette(palette)
        self.stack.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The combs take the room there is."""
        super().resizeEvent(event)
        combs = self.row.combs
        self._say_name(self._name.accessibleName())
        if combs and event.size().width() != event.oldSize().width():
            self.row.set_sizes(self._sizes(combs))
            self._fit_height()
            self._choose_spot(combs)

    # --- what is done -----------------------------------------------------------------------------

    def _choose(self, place: int, face: Face) -> None:
        frame = self.row.combs[place - 1].frame
        if frame is None:
            self.desk.tell(say("Nothing hangs in place {place}.", place=place))
        else:
            self.desk.go(frame_id=frame.id, face=face)

    def _open(self, place: int, face: Face) -> None:
        frame = self.row.combs[place - 1].frame
        if frame is not None:
            self.desk.go(frame_id=frame.id, face=face, view=View.BENCH)

    def _next(self) -> None:
        if not self.desk.step_comb(1):
            go_beyond(self.desk)

    def _enter(self) -> None:
        if self.desk.spot.view is View.BENCH:
            self.desk.go(view=View.BOX)


def _is_noted(comb: CombOnShow) -> bool:
    return any(side.side is not None for side in comb.sides.values())
