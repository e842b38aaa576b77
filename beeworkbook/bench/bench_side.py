"""One side on the bench with what is written round it: which way it faces, how it came to be, its numbers."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, QPointF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QHelpEvent, QPainter, QPaintEvent, QPolygonF, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QToolTip, QVBoxLayout, QWidget

from beeworkbook.bench.canvas import SideCanvas
from beeworkbook.bench.hand import Hand
from beeworkbook.bench.numbers import side_numbers, tally_of
from beeworkbook.bench.on_show import CombOnShow, SideOnShow
from beeworkbook.bench.quiet_label import QuietLabel
from beeworkbook.bench.viewport import highest
from beeworkbook.colony.records import Way
from beeworkbook.comb.contents import Face
from beeworkbook.comb.eighths import read_back, whole_eighths
from beeworkbook.comb.names import content_short
from beeworkbook.comb.orientation import EntranceMark, entrance_mark, entrance_words, faces
from beeworkbook.comb.side import SideTally
from beeworkbook.qt import theme
from beeworkbook.qt.marks import mark_name
from beeworkbook.qt.palette import Palette
from beeworkbook.words import number, say

HEAD_PX: Final = 26
COUNT_MS: Final = 60
"""The numbers follow a stroke at this pace: the eye reads no faster, and the brush must not wait."""


class Arrow(QWidget):
    """A small triangle that points to the entrance's end; drawn, since the fonts lack it."""

    def __init__(self, *, left: bool) -> None:
        """An arrow to the left or to the right."""
        super().__init__()
        self._left = left
        self.colour = QColor()
        self.setFixedSize(QSize(11, 11))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the triangle."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.colour)
        tip, tail = (1.0, 9.0) if self._left else (10.0, 2.0)
        painter.drawPolygon(QPolygonF([QPointF(tip, 5.5), QPointF(tail, 1.0), QPointF(tail, 10.0)]))
        painter.end()


class BenchSide(QWidget):
    """A side with its heading above and its numbers below."""

    numbers_changed = Signal()
    """The tally is another one now."""

    def __init__(self, face: Face, hand: Hand, palette: Palette, *, with_comb: bool) -> None:
        """Side A or B; with_comb puts the comb's own name before it."""
        super().__init__()
        self.face = face
        self.canvas = SideCanvas(hand, palette, self)
        self._shown: SideOnShow | None = None
        self._drone_cells = False
        self.tally: SideTally | None = None
        self._comb_label = QLabel()
        self._comb_label.setObjectName("head")
        self._faces_label = QLabel()
        self._word_label = QuietLabel(fills=False)
        self._hint = QuietLabel()
        self._hint.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._numbers = QuietLabel()
        self._left, self._right = Arrow(left=True), Arrow(left=False)
        self._entrance = QLabel()
        self._entrance.setFont(theme.sans(theme.LABEL_PX, bold=True))
        self._count = QTimer(self)
        self._count.setSingleShot(True)
        self._count.setInterval(COUNT_MS)
        self._count.timeout.connect(self.count_now)
        self.canvas.side.counted.connect(self._count_soon)
        self.canvas.installEventFilter(self)
        self._lay_out()
        self._asks = False
        self.show_comb_name(shown=with_comb)  # in its place by now: alone it would be a window
        self.set_palette(palette)

    def _lay_out(self) -> None:
        band = QWidget()
        band.setFixedHeight(HEAD_PX)
        head = QHBoxLayout(band)
        head.setContentsMargins(0, 0, 0, 0)
        head.setSpacing(10)
        head.addWidget(self._comb_label)
        head.addWidget(self._faces_label)
        head.addWidget(self._word_label)
        head.addWidget(self._hint, 1)
        self._foot = QHBoxLayout()
        self._foot.setSpacing(5)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(1)
        whole.addWidget(band)
        whole.addWidget(self.canvas, 1)
        whole.addLayout(self._foot)
        whole.addStretch(0)
        right = self.face is Face.B
        self._numbers.setAlignment(
            (Qt.AlignmentFlag.AlignLeft if right else Qt.AlignmentFlag.AlignRight)
            | Qt.AlignmentFlag.AlignVCenter
        )
        row: list[QWidget] = [self._left, self._entrance, self._right, self._numbers]
        if right:
            row = [self._numbers, self._left, self._entrance, self._right]
        for widget in row:
            self._foot.addWidget(widget, 1 if widget is self._numbers else 0)

    def show_comb(self, comb: CombOnShow, places: int, way: Way) -> None:
        """Show this side of a comb; only what differs from what is shown already is drawn again."""
        shown = comb.sides[self.face]
        mark = entrance_mark(way.value, self.face)
        self._comb_label.setText(say("Comb {place}", place=comb.place))
        self._faces_label.setText(
            say("side {face}, {faces}", face=self.face.value, faces=faces(comb.place, places, self.face))
        )
        self._word_label.say(", ".join(words_beside(comb, self.face)))
        self._entrance.setText(entrance_words(way.value, self.face))
        self._left.setVisible(mark is EntranceMark.LEFT)
        self._right.setVisible(mark is EntranceMark.RIGHT)
        self._drone_cells = (
            shown.side.drone_cells if shown.side else bool(comb.frame and comb.frame.drone_cells)
        )
        lattice = shown.frame_type.lattice
        same = self._shown is not None and _may_patch(self._shown, shown)
        self._shown = shown
        if same:
            self.canvas.store_cells(shown.cells)
            self.canvas.show_marks(comb.on_side(self.face))
        else:
            self.canvas.show_side(
                lattice,
                shown.cells,
                shown.look,
                bare=shown.is_blank,
                blank_word=shown.word,
                marks=comb.on_side(self.face),
                entrance=mark,
            )
        self._hold_low()
        self._name_it(comb, shown)
        self.count_now()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """A mark that is pointed at says what it is, and a note what it says."""
        if watched is self.canvas and isinstance(event, QHelpEvent):
            words = self.canvas.marks.words(self.canvas.marks.at(QPointF(event.pos())))
            QToolTip.showText(event.globalPos(), words, self.canvas)
            return True
        return super().eventFilter(watched, event)

    def show_comb_name(self, *, shown: bool) -> None:
        """Whether the comb's name stands before the side's."""
        self._with_comb = shown
        self._comb_label.setVisible(shown and not self._asks)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The canvas is no higher than its comb, so that the numbers stand right below it."""
        super().resizeEvent(event)
        self._hold_low()

    def _hold_low(self) -> None:
        lattice = self.canvas.side.lattice
        if lattice is not None:
            self.canvas.setMaximumHeight(highest(lattice, self.width()))

    def forget(self) -> None:
        """The next comb is another one, or lies in another visit: show all of it."""
        self._shown = None

    def say_hint(self, text: str) -> None:
        """What stands at the right above the side."""
        self._show_question(asks=False)
        self._hint.say(text)

    def ask(self, question: str) -> None:
        """A question takes the whole heading until it is answered."""
        self._show_question(asks=True)
        self._hint.say(question)

    def _show_question(self, *, asks: bool) -> None:
        if asks == self._asks:
            return
        self._asks = asks
        self.show_comb_name(shown=self._with_comb)
        self._faces_label.setVisible(not asks)
        self._word_label.setVisible(not asks)
        across = Qt.AlignmentFlag.AlignLeft if asks else Qt.AlignmentFlag.AlignRight
        self._hint.setAlignment(across | Qt.AlignmentFlag.AlignVCenter)

    def set_palette(self, palette: Palette) -> None:
        """Go light or dark."""
        self.canvas.set_palette(palette)
        for arrow in (self._left, self._right):
            arrow.colour = QColor(palette.ink)
            arrow.update()

    def count_now(self) -> None:
        """Bring the numbers up to what is shown."""
        self._count.stop()
        if self._shown is None:
            return
        self.tally = tally_of(self._shown.frame_type, self.canvas.side.counts, drone_cells=self._drone_cells)
        self._numbers.say(side_numbers(self.tally))
        self.numbers_changed.emit()

    def _count_soon(self) -> None:
        if not self._count.isActive():
            self._count.start()

    def _name_it(self, comb: CombOnShow, shown: SideOnShow) -> None:
        """What a screen reader says of the canvas: "comb 5 side A, eggs 1, open 2"."""
        eighths = whole_eighths(read_back(shown.frame_type, shown.cells))
        parts = [say("comb {place} side {face}", place=comb.place, face=self.face.value), shown.word]
        parts += [f"{content_short(content)} {number(count)}" for content, count in eighths.items()]
        self.canvas.setAccessibleName(", ".join(filter(None, parts)))


def words_beside(comb: CombOnShow, face: Face) -> list[str]:
    """What is known of a side beyond its cells: how it came to be, the bees on it, marks without a cell.

    A mark that belongs to the comb and to neither side stands beside side A, and says so.
    """
    shown = comb.sides[face]
    is_seen = any(mark.face is face for mark in comb.marks)
    word = say("nothing recorded") if shown.side is None and is_seen else shown.word
    words = [word] if word else []
    if shown.side is not None and shown.side.covered is not None:
        words.append(say("bees on {eighths}/8", eighths=number(shown.side.covered)))
    words += [mark_name(mark.kind, mark.cell_kind, mark.text) for mark in comb.without_cell(face)]
    if face is Face.A:
        words += [
            say("{mark} on this comb", mark=mark_name(mark.kind, mark.cell_kind, mark.text))
            for mark in comb.without_cell(None)
        ]
    return words


def _may_patch(before: SideOnShow, after: SideOnShow) -> bool:
    """Whether only cells can differ between the two."""
    return (
        before.frame_type == after.frame_type
        and before.look == after.look
        and before.is_blank == after.is_blank
        and before.face == after.face
    )
