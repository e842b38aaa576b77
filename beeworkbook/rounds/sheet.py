"""The sheet of a round: a line a colony, one editor that moves along them, a sentence for what is refused.

It keeps nothing itself: what was typed is handed to `write`, and a text that was refused stays in its
field, marked, until it is mended.
"""

from collections.abc import Callable, Sequence
from typing import Final

from PySide6.QtCore import QEvent, QPoint, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QContextMenuEvent,
    QFocusEvent,
    QFontMetricsF,
    QHelpEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractScrollArea, QLabel, QToolTip, QWidget

from beeworkbook.colony.records import ColonyId
from beeworkbook.colony.sentences import Field, Target
from beeworkbook.qt.palette import Palette
from beeworkbook.rounds.columns import lay_columns
from beeworkbook.rounds.editor import FieldEditor
from beeworkbook.rounds.field import (
    TARGETS,
    combs_words,
    field_hint,
    field_moves,
    field_name,
    field_question,
    last_words,
    one_keys,
    shown,
    to_edit,
)
from beeworkbook.rounds.offers import TAKES, look_offered, offer_words
from beeworkbook.rounds.row import Row
from beeworkbook.rounds.row_painter import HEAD_HEIGHT, RowLook, RowPainter, notes_words, row_height
from beeworkbook.rounds.walk import Spot, Step, first_spot, nearest_spot, step_from
from beeworkbook.words import say

Write = Callable[[Row, Target, str], str]
"""Keeps what was typed into a field; gives the sentence of a refusal, or nothing."""

_EDITOR_HEIGHT: Final = 26
_WIDEST: Final = 300
_WIDEST_NOTE: Final = 520
_FOOT: Final = 12
_OUTSIDE: Final = 7
"""How far the editor's frame stands outside the text it covers."""


class RoundSheet(QAbstractScrollArea):
    """All lines of a round."""

    spot_changed = Signal(object)
    """The walk.Spot being typed, or None."""
    went_deeper = Signal(object)
    """The Row whose box is asked for."""
    walked_out = Signal(object)
    """The Step that led out of the sheet, past its first or its last field."""
    heading_menu = Signal(object, object)
    """A Target and a global QPoint: the menu of a column."""

    def __init__(self, palette: Palette, write: Write, parent: QWidget | None = None) -> None:
        """An empty sheet."""
        super().__init__(parent)
        self._palette = palette
        self._write = write
        self.rows: tuple[Row, ...] = ()
        self.targets: tuple[Target, ...] = TARGETS
        self.spot: Spot | None = None
        self.refused: dict[Spot, tuple[str, str]] = {}
        """Texts that were not taken, each with the sentence that says why."""
        self._columns = lay_columns(self.targets, 1090)
        self.setFrameShape(QAbstractScrollArea.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.viewport().setObjectName("ground")
        self.editor = FieldEditor(self.viewport())
        self.editor.hide()
        self.trouble = QLabel(self.viewport())
        self.trouble.setMargin(4)
        self.trouble.hide()
        self.editor.stepped.connect(self._stepped)
        self.editor.put_back.connect(self._put_back)
        self.editor.went_deeper.connect(self._deeper)
        self.editor.went_back.connect(self._one_back)
        self.editor.was_left.connect(self._left)
        self.editor.textEdited.connect(self._typed)
        self._leaving = False
        self.set_palette(palette)

    # --- what it shows ----------------------------------------------------------------------------

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self._palette = palette
        self.trouble.setStyleSheet(
            f"background: {palette.board}; color: {palette.propolis}; border: 1px solid {palette.propolis};"
        )
        self.viewport().update()

    def set_rows(self, rows: Sequence[Row], targets: Sequence[Target]) -> None:
        """Show these lines and columns; the field in hand stays in hand if it is still there."""
        self.rows, self.targets = tuple(rows), tuple(targets)
        self._lay()
        if self.spot is not None and self.row_of(self.spot) is None:
            self.spot = None
            self.editor.hide()
        self._place_editor()
        self.viewport().update()

    def set_row(self, row: Row) -> None:
        """Show one line as it is now."""
        tall = self.wanted_height()
        self.rows = tuple(row if held.colony.id == row.colony.id else held for held in self.rows)
        if self.spot is not None and self.spot.colony_id == row.colony.id and not self.editor.touched:
            self._load(self.spot)
        self._set_ranges()
        self._place_editor()
        self._repaint(row.colony.id, whole=tall != self.wanted_height())

    def row_of(self, spot: Spot | None) -> Row | None:
        """The line of a field."""
        return next((row for row in self.rows if spot and row.colony.id == spot.colony_id), None)

    @property
    def row(self) -> Row | None:
        """The line being worked."""
        return self.row_of(self.spot)

    def wanted_height(self) -> int:
        """How tall the sheet is with all its lines."""
        across = self.horizontalScrollBar()
        bar = across.sizeHint().height() if across.maximum() > 0 else 0
        return HEAD_HEIGHT + sum(self._height(row) for row in self.rows) + bar + _FOOT

    # --- going ------------------------------------------------------------------------------------

    def go(self, spot: Spot, *, at_end: bool = False, focus: bool = True) -> None:
        """Put the editor on a field."""
        row = self.row_of(spot)
        if row is None:
            return
        self._leaving = True  # the field left was finished before; losing the keyboard is no second time
        before, tall = self.spot, self.wanted_height()
        self.spot = spot
        self._set_ranges()
        self._show(spot)
        self._load(spot, at_end=at_end)
        self._place_editor()
        self.editor.show()
        if focus:
            self.editor.setFocus(Qt.FocusReason.OtherFocusReason)
        self._leaving = False
        for touched in {spot.colony_id, before.colony_id if before else spot.colony_id}:
            self._repaint(touched, whole=tall != self.wanted_height())
        self.spot_changed.emit(spot)

    def put_away(self) -> None:
        """No field is in hand any more, as when another day is shown."""
        self._leaving = True
        self.spot = None
        self.editor.hide()
        self.trouble.hide()
        self._leaving = False

    def finish(self) -> bool:
        """Keep what is in hand; whether it was taken."""
        row = self.row
        if row is None or self.spot is None or not self.editor.isVisible():
            return True
        if not self.editor.touched and self.spot not in self.refused:
            return True
        return self._keep(self.spot, row, self.editor.text())

    def _keep(self, spot: Spot, row: Row, text: str) -> bool:
        known = self.refused.get(spot)
        trouble = self._write(row, spot.target, text)
        if trouble:
            self.refused[spot] = (text, trouble)
            self._show_trouble(trouble)
            # Told once; asked again with the same text, the hand may go on and mend it later.
            return known is not None and known[0] == text
        self.refused.pop(spot, None)
        self.trouble.hide()
        fresh = self.row_of(spot)
        if fresh is not None and self.spot == spot:
            self.editor.load(to_edit(fresh, spot.target), one_keys(fresh, spot.target), at_end=True)
        return True

    def _stepped(self, step: Step) -> None:
        spot, row = self.spot, self.row
        if spot is None or row is None:
            return
        if step is Step.NEXT_COLONY and spot.target is Field.NEXT and self._takes_offer(row):
            self.editor.setText(min(TAKES))
        passed = row.passed
        if not self.finish():
            self.viewport().update()
            return
        target = step_from(self.rows, self.targets, spot, step)
        fresh = self.row_of(spot)
        if step is Step.ON and fresh is not None and fresh.passed and not passed:
            target = Spot(spot.colony_id, Field.NOTE)  # why it was passed over, if the keeper cares to say
        if target is None:
            if step in {Step.ON, Step.BACK, Step.NEXT_COLONY}:
                self.walked_out.emit(step)
            return
        self.go(target)

    def _takes_offer(self, row: Row) -> bool:
        visit = row.now.visit
        empty = not self.editor.text().strip() and visit is not None and visit.next_day is None
        return empty and look_offered(row) is not None and not self.editor.isReadOnly()

    def _one_back(self) -> None:
        if self.spot is not None:
            target = step_from(self.rows, self.targets, self.spot, Step.BACK)
            if target is not None:
                self.go(target, at_end=True)

    def _put_back(self) -> None:
        if self.spot is not None:
            self.refused.pop(self.spot, None)
            self.trouble.hide()
            self._load(self.spot)
            self._place_editor()

    def _deeper(self) -> None:
        row = self.row
        if row is not None and self.finish():
            self.went_deeper.emit(self.row or row)

    def _left(self, covered: bool) -> None:  # noqa: FBT001 - Qt's signal
        if self._leaving or self.spot is None:
            return
        self.finish()
        if not covered:
            self.editor.hide()
            self.trouble.hide()
        self.viewport().update()

    def _typed(self, _text: str) -> None:
        QToolTip.hideText()  # it would lie over the lines below while they are typed
        held = self.refused.get(self.spot) if self.spot is not None else None
        if held is None or held[0] != self.editor.text():  # an answer of one key is refused as it is typed
            self.trouble.hide()
        self._place_editor()

    # --- the editor -------------------------------------------------------------------------------

    def _load(self, spot: Spot, *, at_end: bool = False) -> None:
        row = self.row_of(spot)
        if row is None:
            return
        held = self.refused.get(spot)
        keys = one_keys(row, spot.target)
        self.editor.load(to_edit(row, spot.target), keys, at_end=at_end)
        if held is not None:
            self.editor.setText(held[0])
            self._show_trouble(held[1])
        else:
            self.trouble.hide()
        self.editor.setAccessibleName(field_name(row, spot.target))
        question = field_question(row, spot.target)
        self.editor.setAccessibleDescription(
            " ".join(filter(None, (question, field_moves(row, spot.target), field_hint(row, spot.target))))
        )
        self.editor.setToolTip(field_hint(row, spot.target))

    def _place_editor(self) -> None:
        rect = self.field_rect(self.spot) if self.spot is not None else None
        if rect is None or self.spot is None:
            return
        widest = _WIDEST_NOTE if self.spot.target is Field.NOTE else _WIDEST
        wanted = QFontMetricsF(self.editor.font()).horizontalAdvance(self.editor.text()) + 22
        width = int(max(rect.width() + 4, min(wanted, widest)))
        left = min(rect.left() - _OUTSIDE, self.viewport().width() - width - 4)
        self.editor.setGeometry(int(left), rect.top() + 4, width, _EDITOR_HEIGHT)
        self.trouble.move(
            max(4, min(int(left), self.viewport().width() - self.trouble.width() - 6)),
            self.editor.geometry().bottom() + 3,
        )

    def _show_trouble(self, sentence: str) -> None:
        self.trouble.setText(sentence)
        self.trouble.setAccessibleName(sentence)
        self.trouble.adjustSize()
        self.trouble.show()
        self.trouble.raise_()
        self.editor.setAccessibleDescription(sentence)
        self._place_editor()

    def _repaint(self, colony_id: ColonyId, *, whole: bool) -> None:
        """One line is drawn anew; all of them when it grew or shrank."""
        at = next((i for i, row in enumerate(self.rows) if row.colony.id == colony_id), None)
        if whole or at is None:
            self.viewport().update()
        else:
            self.viewport().update(0, self._top(at), self.viewport().width(), self._height(self.rows[at]))

    # --- places -----------------------------------------------------------------------------------

    def field_rect(self, spot: Spot) -> QRect | None:
        """Where a field lies in the viewport."""
        column = self._columns.of(spot.target)
        at = next((i for i, row in enumerate(self.rows) if row.colony.id == spot.colony_id), None)
        if column is None or at is None:
            return None
        left = column.left - self.horizontalScrollBar().value()
        return QRect(int(left), self._top(at), int(column.width), self._height(self.rows[at]))

    def spot_at(self, place: QPoint) -> Spot | None:
        """The field at a place of the viewport; over the colony's name the first one."""
        for at, row in enumerate(self.rows):
            top = self._top(at)
            if place.y() > HEAD_HEIGHT and top <= place.y() < top + self._height(row):
                target = self._target_at(place)
                return nearest_spot(row, self.targets, target or self.targets[0])
        return None

    def _target_at(self, place: QPoint) -> Target | None:
        if place.x() < self._columns.frozen:
            return None
        return self._columns.at(place.x() + self.horizontalScrollBar().value())

    def _height(self, row: Row) -> int:
        chosen = self.spot is not None and row.colony.id == self.spot.colony_id
        return row_height(row, self.viewport().width(), chosen=chosen)

    def _top(self, at: int) -> int:
        above = sum(self._height(row) for row in self.rows[:at])
        return HEAD_HEIGHT + above - self.verticalScrollBar().value()

    def _lay(self) -> None:
        self._columns = lay_columns(self.targets, self.viewport().width())
        self._set_ranges()

    def _set_ranges(self) -> None:
        port = self.viewport()
        across, down = self.horizontalScrollBar(), self.verticalScrollBar()
        across.setPageStep(port.width())
        across.setRange(0, max(0, int(self._columns.width) - port.width()))
        down.setPageStep(port.height())
        down.setSingleStep(26)
        down.setRange(0, max(0, self._top(len(self.rows)) + down.value() - port.height()))

    def _show(self, spot: Spot) -> None:
        """Scroll as little as brings a field into sight."""
        rect = self.field_rect(spot)
        if rect is None:
            return
        down, across = self.verticalScrollBar(), self.horizontalScrollBar()
        if rect.top() < HEAD_HEIGHT:
            down.setValue(down.value() + rect.top() - HEAD_HEIGHT)
        elif rect.bottom() > self.viewport().height():
            down.setValue(down.value() + rect.bottom() - self.viewport().height() + 1)
        frozen = int(self._columns.frozen) + _OUTSIDE
        if rect.left() < frozen:
            across.setValue(across.value() + rect.left() - frozen)
        elif rect.right() > self.viewport().width():
            across.setValue(across.value() + rect.right() - self.viewport().width() + 8)

    # --- what Qt asks -----------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """The lines that are in sight, and the heading over them."""
        port = self.viewport()
        painter = QPainter(port)
        drawn = RowPainter(self._palette, self._columns, self.targets)
        shift, width = self.horizontalScrollBar().value(), float(port.width())
        painter.fillRect(event.rect(), QColor(self._palette.ground))
        editing = self.editor.isVisible()
        for at, row in enumerate(self.rows):
            rect = QRectF(0, self._top(at), width, self._height(row))
            if rect.bottom() < HEAD_HEIGHT or not event.rect().intersects(rect.toAlignedRect()):
                continue
            chosen = self.spot is not None and row.colony.id == self.spot.colony_id
            typing = self.spot.target if chosen and editing and self.spot is not None else None
            refused = {
                spot.target: held[0] for spot, held in self.refused.items() if spot.colony_id == row.colony.id
            }
            drawn.paint_row(painter, row, rect, shift, RowLook(chosen, typing, refused))
        drawn.paint_heading(painter, shift, width)
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The columns share the new width."""
        super().resizeEvent(event)
        self._lay()
        self._place_editor()

    def scrollContentsBy(self, _dx: int, _dy: int) -> None:
        """The editor goes with its field."""
        self._place_editor()
        self.viewport().update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """A click puts the editor on a field; what was in hand is finished first."""
        spot = self.spot_at(event.position().toPoint())
        if spot is not None and event.button() == Qt.MouseButton.LeftButton:
            self.finish()
            self.go(spot)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The menu of a column, over its heading or with the menu key in its field."""
        place = self.viewport().mapFromGlobal(event.globalPos())
        target = self._target_at(place)
        if place.y() <= HEAD_HEIGHT and target is not None:
            self.heading_menu.emit(target, event.globalPos())

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keyboard goes to the field it was in, or to the first."""
        super().focusInEvent(event)
        spot = self.spot if self.row is not None else None
        if spot is None and self.rows:
            spot = first_spot(self.rows[0], self.targets)
        if spot is not None:
            self.go(spot)

    def viewportEvent(self, event: QEvent) -> bool:
        """A tooltip says what a field asks, what it holds in full, and what may be typed."""
        if isinstance(event, QHelpEvent) and event.type() == QEvent.Type.ToolTip:
            words = self.tip_at(event.pos())
            QToolTip.showText(event.globalPos(), words, self.viewport())
            return True
        return super().viewportEvent(event)

    def tip_at(self, place: QPoint) -> str:
        """What there is to say about a place of the sheet."""
        spot = self.spot_at(place)
        row, target = self.row_of(spot), self._target_at(place)
        if row is None:
            heading = self._target_at(place) if place.y() <= HEAD_HEIGHT else None
            return field_question(self.rows[0], heading) if heading is not None and self.rows else ""
        if target is None:
            return "\n".join(filter(None, (row.colony.name, notes_words(row))))
        said = [field_question(row, target), shown(row, target) or combs_words(row, target)]
        if last_words(row, target):
            said.append(say("last time: {last}", last=last_words(row, target)))
        held = self.refused.get(Spot(row.colony.id, target))
        said += [held[1] if held else "", offer_words(row) if target is Field.NEXT else ""]
        said.append(field_hint(row, target))
        return "\n".join(filter(None, said))
