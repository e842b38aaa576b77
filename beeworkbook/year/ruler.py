"""The ruler above the box: the season with a bar a visit; the date picker. Tall, it is a small chart."""

from datetime import date, timedelta
from typing import Final

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QShowEvent,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from beeworkbook.colony.records import Due
from beeworkbook.colony.seasons import season_bounds, season_year
from beeworkbook.qt.desk import Desk, Spot
from beeworkbook.qt.palette import Palette
from beeworkbook.words import date_words, say
from beeworkbook.workbook.changes import Changes
from beeworkbook.workbook.story import hemisphere_of
from beeworkbook.year.bands import Field
from beeworkbook.year.inks import Inks
from beeworkbook.year.kept_season import KeptSeason
from beeworkbook.year.ruler_bars import Bar, RulerModel, ruler_model, visit_words
from beeworkbook.year.ruler_paint import SIDE_PX, RulerLook, bar_width, paint_arrow, paint_ruler, ruler_field

HEIGHT: Final = 56
_NEAR_PX: Final = 7.0


class RulerView(QWidget):
    """The visits of one colony over the season of the day the keeper is at."""

    def __init__(self, desk: Desk) -> None:
        """The ruler of the desk."""
        super().__init__()
        self._desk = desk
        self._kept: KeptSeason | None = None
        self._model: RulerModel | None = None
        self._year = 0
        self._stale = True
        self._pointed: float | None = None
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setMinimumHeight(HEIGHT)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(say("Ruler: the visits of the season"))
        desk.spot_changed.connect(self._spot_changed)
        desk.book_changed.connect(self._book_changed)
        desk.palette_changed.connect(self._palette_changed)

    # --- what it shows ------------------------------------------------------------------------

    @property
    def model(self) -> RulerModel | None:
        """What lies on the ruler now; None without a colony."""
        if self._stale:
            self._refresh()
        return self._model

    def sizeHint(self) -> QSize:
        """Low; the window makes it tall where there is room."""
        return QSize(800, HEIGHT)

    def day_at(self, x: float) -> date | None:
        """The day under a pixel."""
        model = self.model
        if model is None:
            return None
        place = self._place(x)
        return model.axis.day_at(min(max(0.0, place), model.axis.days - 1.0))

    def bar_at(self, x: float) -> Bar | None:
        """The visit under a pixel."""
        model = self.model
        if model is None:
            return None
        field = self._field(model)
        return model.bar_at(self._place(x), max(_NEAR_PX, bar_width(field) / 2 + 1) / field.x_scale)

    def words_at(self, x: float) -> str:
        """What the tooltip says over a pixel: the visit's figures, or that a visit can be entered."""
        if x < SIDE_PX - 8:
            return say("The visit before (Left)")
        if x > self.width() - SIDE_PX + 8:
            return say("The visit after (Right)")
        bar = self.bar_at(x)
        if bar is not None:
            return self._visit_words(bar)
        day = self.day_at(x)
        if day is None:
            return ""
        return say("{day}: no visit. Click to go there.", day=date_words(day, "weekday_year"))

    # --- hearing --------------------------------------------------------------------------------

    def _spot_changed(self, spot: Spot) -> None:
        if self._kept is None or spot.colony_id != self._kept.colony_id or not self._reaches(spot.day):
            self._stale = True
        self._say()
        self.update()

    def _book_changed(self, changes: Changes) -> None:
        if self._kept is None or changes.everything or not self.isVisible():
            self._kept = None
            self._stale = True
        elif self._kept.take(changes) or changes.touches(Due):
            self._stale = True
        if self._stale:
            self.update()

    def _palette_changed(self, _palette: Palette) -> None:
        self.update()

    def _reaches(self, day: date) -> bool:
        return self._model is not None and self._model.axis.shows(day)

    # --- refreshing -----------------------------------------------------------------------------

    def _refresh(self) -> None:
        self._stale = False
        spot, book = self._desk.spot, self._desk.book
        if spot.colony_id is None:
            self._kept = self._model = None
            return
        hemisphere = hemisphere_of(book)
        self._year = season_year(spot.day, hemisphere)
        first, until = season_bounds(self._year, hemisphere)
        since = season_bounds(self._year - 1, hemisphere)[0]
        kept = self._kept
        if kept is None or (kept.colony_id, kept.since, kept.until) != (spot.colony_id, since, until):
            kept = self._kept = KeptSeason(book, spot.colony_id, since, until)
        dues = [due.day for due in book.read.dues(colony_id=spot.colony_id)]
        due = min(dues, default=None)
        self._model = ruler_model(
            self._year, hemisphere, kept.from_day(first), kept.before(first), (spot.day,), due
        )

    def _field(self, model: RulerModel) -> Field:
        return ruler_field(model, self.width(), self.height())

    def _place(self, x: float) -> float:
        model = self.model
        if model is None:
            return 0.0
        field = self._field(model)
        return (x - field.rect.left()) / field.x_scale

    def _visit_words(self, bar: Bar) -> str:
        kept = self._kept
        point = (
            next((point for point in kept.points if point.visit_id == bar.visit_id), None) if kept else None
        )
        return visit_words(point, kept.figures(bar.visit_id)) if kept and point else ""

    def _say(self) -> None:
        """Tell a screen reader where the ruler is; only asked of a ruler that has the keyboard."""
        if not self.hasFocus():
            return
        model, spot = self.model, self._desk.spot
        bar = next((bar for bar in model.bars if bar.visit_id == spot.visit_id), None) if model else None
        words = self._visit_words(bar) if bar else say("{day}, no visit", day=date_words(spot.day))
        self.setAccessibleDescription(words)

    # --- hands ------------------------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """An arrow leafs, a bar is its visit, an empty day is that day."""
        if event.button() != Qt.MouseButton.LeftButton:
            return
        x = event.position().x()
        bar, day = self.bar_at(x), self.day_at(x)
        if x < SIDE_PX - 8:
            self._desk.leaf(-1)
        elif x > self.width() - SIDE_PX + 8:
            self._desk.leaf(1)
        elif bar is not None:
            self._desk.go(visit_id=bar.visit_id)
        elif day is not None:
            self._desk.go(day=day)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show the day under the pointer."""
        x = event.position().x()
        beside = x < SIDE_PX - 8 or x > self.width() - SIDE_PX + 8
        bar = None if beside else self.bar_at(x)
        model = self.model
        pointed = None if beside or bar is not None or model is None else float(round(self._place(x)))
        if pointed is not None and model is not None and not 0 <= pointed < model.axis.days:
            pointed = None
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        if pointed != self._pointed:
            self._pointed = pointed
            self.update()

    def leaveEvent(self, _event: QEvent) -> None:
        """The pointer has gone."""
        self._pointed = None
        self.update()

    def event(self, event: QEvent) -> bool:
        """A tooltip says the day and its figures."""
        if event.type() == QEvent.Type.ToolTip and isinstance(event, QHelpEvent):
            QToolTip.showText(event.globalPos(), self.words_at(event.pos().x()), self)
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Left and right leaf; with Shift a day; Home and End go to the season's first and last visit."""
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        model = self.model
        if step is not None and event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self._desk.go(day=self._desk.spot.day + timedelta(days=step))
        elif step is not None:
            self._desk.leaf(step)
        elif event.key() in {Qt.Key.Key_Home, Qt.Key.Key_End}:
            if model is not None and model.bars:
                at = 0 if event.key() == Qt.Key.Key_Home else -1
                self._desk.go(visit_id=model.bars[at].visit_id)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show and say where the keyboard is."""
        self._say()
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The keyboard has gone elsewhere."""
        super().focusOutEvent(event)
        self.update()

    def showEvent(self, event: QShowEvent) -> None:
        """Come into sight as the book is now."""
        super().showEvent(event)
        self.update()

    # --- painting -----------------------------------------------------------------------------------

    def paintEvent(self, _event: QPaintEvent) -> None:
        """The season, the arrows, and a frame when it has the keyboard."""
        palette = self._desk.palette
        painter = QPainter(self)
        whole = QRectF(self.rect())
        painter.fillRect(whole, QColor(palette.ground))
        model = self.model
        if model is None:
            return
        look = RulerLook(self._desk.spot.visit_id, self._desk.spot.day, self._pointed)
        inks = Inks(palette, self.devicePixelRatioF())
        paint_ruler(painter, model, look, inks, whole.width(), whole.height())
        middle = self._field(model).rect.center().y() + 2
        for left in (True, False):
            x = 20.0 if left else whole.right() - 20
            arrow = QRectF(0, 0, 8, 9)
            arrow.moveCenter(QPointF(x, middle))
            paint_arrow(painter, arrow, QColor(palette.second_ink), left=left)
        if self.hasFocus():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(QPen(QColor(palette.focus), 2))
            painter.drawRect(whole.adjusted(1, 1, -1, -1))
