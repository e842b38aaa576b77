"""The end of a round: a sentence a colony, every piece of it a link to the field it came from."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, QUrl, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QResizeEvent,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
)
from PySide6.QtWidgets import QTextBrowser, QWidget

from beeworkbook.colony.phrases import closed
from beeworkbook.colony.records import ColonyId, Question
from beeworkbook.colony.sentences import Field, Target
from beeworkbook.qt import theme
from beeworkbook.qt.palette import Palette
from beeworkbook.rounds.field import field_of
from beeworkbook.rounds.row import Row
from beeworkbook.rounds.walk import Spot
from beeworkbook.words import say

_SIZE: Final = 16
_BETWEEN: Final = 3


class ReadBack(QTextBrowser):
    """What was noted, read back; Tab goes from piece to piece, Enter leads to its field."""

    chosen = Signal(object)
    """The walk.Spot a piece leads to."""

    def __init__(self, palette: Palette, parent: QWidget | None = None) -> None:
        """An empty read-back."""
        super().__init__(parent)
        self._palette = palette
        self._rows: tuple[Row, ...] = ()
        self._spot: Spot | None = None
        self.setObjectName("board")
        self.setFrameShape(QTextBrowser.Shape.NoFrame)
        self.setOpenLinks(False)
        self.setAccessibleName(say("Read back"))
        self.setTextInteractionFlags(
            Qt.TextInteractionFlag.LinksAccessibleByMouse
            | Qt.TextInteractionFlag.LinksAccessibleByKeyboard
            | Qt.TextInteractionFlag.TextSelectableByMouse
        )
        self.document().setDocumentMargin(0)
        self.anchorClicked.connect(self._clicked)
        self.set_palette(palette)

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self._palette = palette
        self.setStyleSheet(
            f"QTextBrowser {{ background: {palette.board}; border: none; padding: 0;"
            f" selection-background-color: {palette.focus}; selection-color: {palette.board}; }}"
        )
        self._write()

    def set_rows(self, rows: Sequence[Row]) -> None:
        """Read these lines back; only those that say something else are written anew."""
        before, self._rows = self._rows, tuple(rows)
        if [row.colony.id for row in before] != [row.colony.id for row in self._rows]:
            self._write()
            return
        for at, (old, new) in enumerate(zip(before, self._rows, strict=True)):
            if (old.said, old.colony) != (new.said, new.colony):
                self._rewrite(at)
        self._show_in_hand()

    def set_spot(self, spot: Spot | None) -> None:
        """Light the piece that comes from the field being typed."""
        if spot == self._spot:
            return
        touched = {held.colony_id for held in (spot, self._spot) if held is not None}
        self._spot = spot
        for at, row in enumerate(self._rows):
            if row.colony.id in touched:
                self._rewrite(at)
        self._show_in_hand()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The keyboard comes to the first piece."""
        super().focusInEvent(event)
        if not self.textCursor().hasSelection() and event.reason() != Qt.FocusReason.MouseFocusReason:
            self.moveCursor(QTextCursor.MoveOperation.Start)
            self.focusNextPrevChild(True)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The line in hand stays in sight."""
        super().resizeEvent(event)
        self._show_in_hand()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter leads to the field of the piece that is chosen; Escape goes back to the field in hand."""
        if event.key() == Qt.Key.Key_Escape and self._spot is not None:
            self.chosen.emit(self._spot)
            return
        if event.key() in {Qt.Key.Key_Return, Qt.Key.Key_Enter}:
            cursor = self.textCursor()
            cursor.setPosition(max(cursor.selectionStart(), cursor.selectionEnd()))
            link = cursor.charFormat().anchorHref()
            if link:
                self._clicked(QUrl(link))
                return
        super().keyPressEvent(event)

    # --- within -----------------------------------------------------------------------------------

    def _clicked(self, link: QUrl) -> None:
        spot = spot_of(link.toString())
        if spot is not None:
            self.chosen.emit(spot)

    def _write(self) -> None:
        self.clear()
        cursor = self.textCursor()
        shape = QTextBlockFormat()
        shape.setLineHeight(108, QTextBlockFormat.LineHeightTypes.ProportionalHeight.value)
        shape.setBottomMargin(_BETWEEN)
        for at, row in enumerate(self._rows):
            if at:
                cursor.insertBlock()
            cursor.setBlockFormat(shape)
            self._write_row(cursor, row)
        self._show_in_hand()

    def _rewrite(self, at: int) -> None:
        """Write one line anew where it stands: a line is one block of the text."""
        scrolled = self.verticalScrollBar().value()
        cursor = QTextCursor(self.document().findBlockByNumber(at))
        cursor.movePosition(QTextCursor.MoveOperation.EndOfBlock, QTextCursor.MoveMode.KeepAnchor)
        cursor.removeSelectedText()
        self._write_row(cursor, self._rows[at])
        self.verticalScrollBar().setValue(scrolled)

    def _show_in_hand(self) -> None:
        """Scroll as little as shows the whole sentence of the line in hand."""
        spot = self._spot
        at = next((i for i, row in enumerate(self._rows) if spot and row.colony.id == spot.colony_id), None)
        if at is None or self.hasFocus():
            self.verticalScrollBar().setValue(0 if at is None else self.verticalScrollBar().value())
            return
        block = self.document().findBlockByNumber(at)
        lies = self.document().documentLayout().blockBoundingRect(block)
        bar, height = self.verticalScrollBar(), self.viewport().height()
        if lies.top() < bar.value() or lies.height() > height:
            bar.setValue(int(lies.top()))
        elif lies.bottom() > bar.value() + height:
            bar.setValue(int(lies.bottom() - height) + 1)

    def _write_row(self, cursor: QTextCursor, row: Row) -> None:
        p = self._palette
        told = bool(row.said)
        name = _format(p.ink if told else p.second_ink, bold=True)
        cursor.insertText(say("{colony}:", colony=row.colony.name), name)
        plain = _format(p.ink if told else p.second_ink)
        cursor.insertText(" ", plain)
        if not told:
            cursor.insertText(say("nothing noted yet."), plain)
            return
        for at, phrase in enumerate(row.said):
            if at:
                cursor.insertText(", ", plain)
            cursor.insertText(phrase.text, self._link(row, phrase.target))
        in_hand = self._spot is not None and self._spot.colony_id == row.colony.id
        cursor.insertText(" …" if in_hand else closed(row.said[-1].text)[len(row.said[-1].text) :], plain)

    def _link(self, row: Row, target: Target) -> QTextCharFormat:
        p = self._palette
        made = _format(p.ink)
        spot = Spot(row.colony.id, field_of(target))
        made.setAnchor(True)
        made.setAnchorHref(link_to(spot))
        made.setUnderlineStyle(QTextCharFormat.UnderlineStyle.DotLine)
        made.setUnderlineColor(QColor(p.edge))
        if spot == self._spot:
            made.setBackground(QColor(p.selection))
            made.setUnderlineStyle(QTextCharFormat.UnderlineStyle.SingleUnderline)
            made.setUnderlineColor(QColor(p.focus))
        return made


def link_to(spot: Spot) -> str:
    """A field as the address of a link."""
    return f"field:{spot.colony_id}/{spot.target.value}"


def spot_of(link: str) -> Spot | None:
    """The field a link leads to, None if it is no such link."""
    colony, _, name = link.removeprefix("field:").partition("/")
    targets: dict[str, Target] = {target.value: target for target in (*Question, *Field)}
    if not colony.isdigit() or name not in targets:
        return None
    return Spot(ColonyId(int(colony)), targets[name])


def _format(colour: str, *, bold: bool = False) -> QTextCharFormat:
    made = QTextCharFormat()
    made.setFont(theme.serif(_SIZE, bold=bold))
    made.setForeground(QColor(colour))
    return made
