"""The Round: an afternoon's lines, a row a colony as they stand, and the read-back of what was noted.

It puts the head, the sheet and the read-back together, keeps finished fields, and follows the desk.
"""

from datetime import date
from typing import Final

from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from beeworkbook.colony.hive import HiveDay
from beeworkbook.colony.records import (
    Apiary,
    ApiaryId,
    Colony,
    ColonyId,
    Housing,
    Queen,
    Round,
    Setting,
    Stand,
)
from beeworkbook.colony.sentences import Field, Target
from beeworkbook.comb.contents import Face
from beeworkbook.qt.desk import Desk, View
from beeworkbook.qt.desk import Spot as DeskSpot
from beeworkbook.qt.palette import Palette
from beeworkbook.rounds.field import TARGETS, FieldError, field_hint, field_moves, shown
from beeworkbook.rounds.head import RoundHead
from beeworkbook.rounds.read_back import ReadBack
from beeworkbook.rounds.row import Row, read_row
from beeworkbook.rounds.sheet import RoundSheet
from beeworkbook.rounds.untaken import Untaken
from beeworkbook.rounds.walk import Spot, Step, first_spot, nearest_spot
from beeworkbook.rounds.writing import keep
from beeworkbook.words import say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.errors import RefusedError

_WHOLE: Final = (Apiary, Stand, Colony, Housing, Round, Setting, Queen)
"""A change of one of these may change every line."""
_LEAST_READ_BACK: Final = 116


class RoundView(QWidget):
    """The round of the desk's apiary and day."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        """The round of this desk."""
        super().__init__(parent)
        self._desk = desk
        self._stale = True
        self._view = desk.spot.view
        self._came_up_from: ColonyId | None = None
        self._of: tuple[ApiaryId | None, date] | None = None
        self._refused: dict[tuple[ApiaryId | None, date], dict[Spot, tuple[str, str]]] = {}
        self.setObjectName("ground")
        self.head = RoundHead(desk)
        self.sheet = RoundSheet(desk.palette, self._keep)
        self.sheet.setAccessibleName(say("Lines of the round"))
        self.read_back = ReadBack(desk.palette)
        self._hint = QLabel()
        self._hint.setObjectName("small")
        self._hint.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self._keys = QLabel(say("Enter: next colony    Ctrl+Enter: comb by comb    blank is never a no"))
        self._keys.setObjectName("small")
        self._nobody = QLabel(say("No colony stood in this apiary on that day."))
        self._nobody.setContentsMargins(14, 10, 14, 10)
        self._lay_out()
        self.head.walked_on.connect(self._walked_in)
        self.sheet.spot_changed.connect(self._spot_in_hand)
        self.sheet.went_deeper.connect(self._deeper)
        self.sheet.walked_out.connect(self._walked_out)
        self.sheet.heading_menu.connect(self._heading_menu)
        self.read_back.chosen.connect(self.lead_to)
        desk.spot_changed.connect(self._spot_changed)
        desk.book_changed.connect(self._book_changed)
        desk.palette_changed.connect(self._dress)
        self.refill()

    def _lay_out(self) -> None:
        hints = QHBoxLayout()
        hints.setContentsMargins(14, 3, 14, 5)
        hints.addWidget(self._hint, 1)
        hints.addWidget(self._keys)
        head_rule = QFrame()
        head_rule.setObjectName("edge")
        rule = QFrame()
        rule.setObjectName("edge")
        below = QWidget()
        below.setObjectName("board")
        title = QLabel(say("Read back"))
        title.setObjectName("head")
        small = QLabel(say("each word leads to its field"))
        small.setObjectName("small")
        heading = QHBoxLayout()
        heading.setSpacing(10)
        heading.addWidget(title)
        heading.addWidget(small, 1)
        told = QVBoxLayout(below)
        told.setContentsMargins(14, 8, 14, 6)
        told.setSpacing(6)
        told.addLayout(heading)
        told.addWidget(self.read_back, 1)
        below.setMinimumHeight(_LEAST_READ_BACK)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        column.addWidget(head_rule)
        column.addWidget(self._nobody)
        column.addWidget(self.sheet, 2)
        column.addLayout(hints)
        column.addWidget(rule)
        column.addWidget(below, 1)

    # --- what it shows ----------------------------------------------------------------------------

    @property
    def rows(self) -> tuple[Row, ...]:
        """The lines as they are now."""
        return self.sheet.rows

    @property
    def targets(self) -> tuple[Target, ...]:
        """The columns of this round."""
        asked = self.head.asked
        return tuple(target for target in TARGETS if isinstance(target, Field) or target in asked)

    def refill(self) -> None:
        """Read the whole round anew."""
        self._stale = False
        spot = self._desk.spot
        whose = (spot.apiary_id, spot.day)
        in_hand, typing = self.sheet.spot, self.sheet.editor.hasFocus()
        if whose != self._of:
            self._of = whose
            self.sheet.put_away()
            self.sheet.refused = self._refused.setdefault(whose, {})
        self.head.refill()
        self.sheet.set_rows(self._read_rows(), self.targets)
        self._tell_rows()
        self._follow(spot, in_hand.target if in_hand else None, typing=typing)

    def _read_rows(self) -> list[Row]:
        spot, book = self._desk.spot, self._desk.book
        if spot.apiary_id is None:
            return []
        return [
            read_row(book, place.stand, place.colony, spot.day)
            for place in book.read.standing(spot.apiary_id, spot.day)
            if place.colony is not None
        ]

    def _tell_rows(self) -> None:
        self.read_back.set_rows(self.rows)
        self._nobody.setVisible(not self.rows)
        self.sheet.setVisible(bool(self.rows))
        self.sheet.setMaximumHeight(self.sheet.wanted_height())
        self.sheet.editor.setReadOnly(self._desk.book.read_only)

    def take_focus(self) -> None:
        """Put the keyboard back where it was in the round; on the first field of the colony otherwise.

        A round that has only just begun asks its weather first, and then the first stand.
        """
        self._refresh_if_stale()
        if self._just_begun and self.rows:
            first = first_spot(self.rows[0], self.targets)
            if first is not None:
                self.sheet.go(first, focus=False)
            self.head.weather.setFocus(Qt.FocusReason.ShortcutFocusReason)
            return
        self._follow(self._desk.spot)
        spot = self.sheet.spot
        if spot is not None:
            self.sheet.go(spot)
        else:
            self.sheet.setFocus(Qt.FocusReason.OtherFocusReason)

    @property
    def _just_begun(self) -> bool:
        """Whether this round is in the book, and nothing of it is written yet."""
        return self.head.is_blank and all(row.now.visit is None for row in self.rows)

    def finish(self) -> None:
        """Keep the field in hand, as before the window closes."""
        self.sheet.finish()

    @property
    def untaken(self) -> tuple[Untaken, ...]:
        """The texts that were refused and not mended since, of every round that was open."""
        return tuple(
            Untaken(apiary_id, day, spot, text, why)
            for (apiary_id, day), held in self._refused.items()
            for spot, (text, why) in held.items()
            if apiary_id is not None
        )

    def lead_back(self, untaken: Untaken) -> None:
        """Go to the field of a text that was not taken."""
        spot = untaken.spot
        self._desk.go(view=View.ROUND, apiary_id=untaken.apiary_id, colony_id=spot.colony_id, day=untaken.day)
        self._refresh_if_stale()
        self.sheet.go(spot)

    # --- keeping ----------------------------------------------------------------------------------

    def _keep(self, row: Row, target: Target, typed: str) -> str:
        """Keep a finished field; the sentence of a refusal, or nothing."""
        apiary_id = self._desk.spot.apiary_id if self._of is None else self._of[0]
        if apiary_id is None:
            return ""
        try:
            visit_id = keep(self._desk.book, row, target, typed, apiary_id, self.head.left_out, source=self)
        except (FieldError, RefusedError) as error:
            return str(error)
        spot = self._desk.spot
        here = (spot.colony_id, spot.day) == (row.colony.id, row.day)
        if here and visit_id is not None and spot.visit_id != visit_id:
            self._desk.go(visit_id=visit_id)
        return ""

    # --- going ------------------------------------------------------------------------------------

    def _spot_in_hand(self, spot: Spot) -> None:
        self.sheet.setMaximumHeight(self.sheet.wanted_height())
        row = self.sheet.row
        if row is None:
            return
        moves = field_moves(row, spot.target)
        self._hint.setText("    ".join(filter(None, (moves, field_hint(row, spot.target)))))
        self._hint.setToolTip(self._hint.text())
        self._make_room_for_hint()
        self.read_back.set_spot(spot)
        if self._desk.spot.colony_id != spot.colony_id:
            self._desk.go(colony_id=spot.colony_id)

    def _follow(self, spot: DeskSpot, target: Target | None = None, *, typing: bool = False) -> None:
        """The line of the desk's colony is the one being worked, in the column the hand was in."""
        in_hand = self.sheet.spot
        if spot.colony_id is None or (in_hand and in_hand.colony_id == spot.colony_id):
            return
        row = next((row for row in self.rows if row.colony.id == spot.colony_id), None)
        if row is None:
            return
        target = in_hand.target if in_hand is not None else target
        wanted = first_spot(row, self.targets) if target is None else nearest_spot(row, self.targets, target)
        if wanted is not None:
            typing = typing or self.sheet.editor.hasFocus()
            self.sheet.finish()
            self.sheet.go(wanted, focus=typing)

    def _deeper(self, row: Row) -> None:
        """Down to the box: to its first comb, unless the keeper has just come up from another one."""
        visit = row.now.visit
        where: dict[str, object] = {"visit_id": visit.id if visit is not None else None}
        if self._came_up_from != row.colony.id:
            where |= _first_comb(self._desk.book.read.hive_day(row.colony.id, row.day))
        self._desk.go(view=View.BOX, colony_id=row.colony.id, **where)

    def _walked_out(self, step: Step) -> None:
        if step is Step.BACK:
            self.head.flowering.setFocus(Qt.FocusReason.BacktabFocusReason)
        else:
            self.read_back.setFocus(Qt.FocusReason.TabFocusReason)

    def _walked_in(self) -> None:
        """From the head's last field to the first line's first; what is read back where nobody stands."""
        first = first_spot(self.rows[0], self.targets) if self.rows else None
        if first is None:
            self.read_back.setFocus(Qt.FocusReason.TabFocusReason)
            return
        # The spot first, then the keyboard: what was typed in the head is kept as it goes.
        self.sheet.finish()
        self.sheet.go(first, focus=False)
        self.sheet.editor.setFocus(Qt.FocusReason.TabFocusReason)

    def lead_to(self, spot: Spot) -> None:
        """Put the keyboard on a field of a line, or on the nearest that is asked."""
        row = self.sheet.row_of(spot)
        if row is not None:
            target = nearest_spot(row, self.targets, spot.target)
            if target is not None:
                self.sheet.go(target)

    def _heading_menu(self, _target: Target, place: QPoint) -> None:
        self.head.open_menu_at(place)

    # --- answers to signals -----------------------------------------------------------------------

    def _spot_changed(self, spot: DeskSpot) -> None:
        came_from, self._view = self._view, spot.view
        if came_from in {View.BOX, View.BENCH} and spot.view is View.ROUND:
            self._came_up_from = spot.colony_id
        elif spot.colony_id != self._came_up_from:
            self._came_up_from = None
        if spot.view is not View.ROUND:
            self.sheet.finish()
            return
        if (spot.apiary_id, spot.day) != self._of:
            self.sheet.finish()
            self.refill()
        else:
            # A word of the read-back belongs to another colony now: the keyboard comes to this one's line.
            self._follow(spot, typing=self.read_back.hasFocus())

    def _book_changed(self, changes: Changes) -> None:
        if not self.isVisible():
            self._stale = True
        elif changes.everything or any(changes.touches(kind) for kind in _WHOLE):
            self.refill()
        else:
            self._reread(changes)

    def _reread(self, changes: Changes) -> None:
        for row in self.rows:
            if row.colony.id in changes.colonies:
                fresh = read_row(self._desk.book, row.stand, row.colony, row.day)
                self.sheet.set_row(fresh)
                if changes.source is not self:
                    self._show_what_changed(row, fresh)
        self._tell_rows()

    def _show_what_changed(self, before: Row, after: Row) -> None:
        """Undo and redo go to the field they changed."""
        spot = self.sheet.spot
        if spot is None or spot.colony_id != after.colony.id or not self.sheet.editor.hasFocus():
            return
        changed = [target for target in self.targets if shown(before, target) != shown(after, target)]
        target = nearest_spot(after, self.targets, changed[0]) if changed else None
        if target is not None and target != spot and not self.sheet.editor.touched:
            self.sheet.go(target)

    def _dress(self, palette: Palette) -> None:
        self.sheet.set_palette(palette)
        self.read_back.set_palette(palette)

    def _refresh_if_stale(self) -> None:
        if self._stale:
            self.refill()

    def showEvent(self, event: QShowEvent) -> None:
        """What changed while nobody looked is read now."""
        super().showEvent(event)
        self._refresh_if_stale()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The reminder of keys goes before the hint is squeezed."""
        super().resizeEvent(event)
        self._make_room_for_hint()

    def _make_room_for_hint(self) -> None:
        wanted = self._hint.fontMetrics().horizontalAdvance(self._hint.text())
        self._keys.setVisible(wanted + self._keys.sizeHint().width() + 52 < self.width())


def _first_comb(hive: HiveDay | None) -> dict[str, object]:
    """The first comb of the lowest brood box, where a look through the combs begins."""
    boxes = (hive.brood_boxes or hive.boxes) if hive is not None else ()
    for box in boxes:
        for placed in box.frames:
            if placed.frame is not None:
                return {"part_id": box.part.id, "frame_id": placed.frame.id, "face": Face.A}
    return {}
